import type { HtmlTagDescriptor, Plugin, Rolldown } from 'vite'

/** The typeface of everything that is seen first. */
const FIRST_TYPE = /-next-latin-(400|700)-normal[^/]*\.woff2$/

/** The scripts that a chunk imports, each before those that import it. */
function importsOf(chunk: Rolldown.OutputChunk, bundle: Rolldown.OutputBundle): Set<string> {
  const found = new Set<string>()
  const look = ({ imports }: Rolldown.OutputChunk): void => {
    for (const name of imports) {
      const imported = bundle[name]
      if (imported?.type !== 'chunk' || found.has(name)) continue
      look(imported)
      found.add(name)
    }
  }
  look(chunk)
  return found
}

const link = (attrs: Readonly<Record<string, string | true>>): HtmlTagDescriptor => ({
  tag: 'link',
  attrs: { ...attrs, crossorigin: true },
  injectTo: 'head',
})

/**
 * Has the page name all that it begins with, its scripts and its typeface, so that they are fetched together: a browser
 * would find each only in the one before.
 */
export function namedInPage(): Plugin {
  return {
    name: 'evenfield-named-in-page',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler(_, { bundle = {}, chunk }) {
        if (!chunk) throw new Error('index.html names no script.')
        const fonts = Object.keys(bundle).filter((name) => FIRST_TYPE.test(name))
        if (fonts.length === 0) throw new Error('The typeface of the page is not among its files.')
        return [
          ...[...importsOf(chunk, bundle)].map((name) => link({ rel: 'modulepreload', href: `./${name}` })),
          ...fonts.map((name) => link({ rel: 'preload', as: 'font', type: 'font/woff2', href: `./${name}` })),
        ]
      },
    },
  }
}
