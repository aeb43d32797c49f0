import type { Plugin } from 'vite'

/** Vite wraps each import in a call that lists what to fetch ahead, which is nothing, and in a copy of what it takes from the module. */
export const withPlainImports = (code: string): string =>
  code
    .replaceAll(/[\w$]+\(\(\)=>(import\([^;{}]*?),\[\],import\.meta\.url\)/g, '$1')
    .replaceAll(
      /[\w$]+\(async\(\)=>\{let\{[^{}]*\}=await (import\([^;{}]*?);return\{[^{}]*\}\},\[\],import\.meta\.url\)/g,
      '$1',
    )
    .replaceAll(',[],import.meta.url)', ')')

/** Modules are imported as browsers do it: what is wanted together stands in one file, so that no script lists what to fetch ahead. */
export const plainImports = (): Plugin => ({
  name: 'evenfield-plain-imports',
  apply: 'build',
  enforce: 'pre',
  load: (id) => (id.includes('vite/preload-helper') ? 'export const __vitePreload = (load) => load()' : undefined),
  generateBundle: {
    order: 'post',
    handler(_, bundle) {
      for (const file of Object.values(bundle)) if (file.type === 'chunk') file.code = withPlainImports(file.code)
    },
  },
})
