import { type ESTree, type Plugin, parseSync } from 'vite'

const FOLDER = /[\\/]src[\\/](app|cells)[\\/].*\.ts$/

type Node = ESTree.Node

const isNode = (value: unknown): value is Node => typeof (value as Node | null)?.type === 'string'

/** Styles without comments, and without the space that only their reader needs. */
const tightStyle = (text: string): string =>
  text
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\s+/g, ' ')
    .replace(/ ?([{};]) ?/g, '$1')
    .replace(/([,:]) /g, '$1')
    .replaceAll(' > ', '>')
    .replaceAll(';}', '}')
    .replace(/(?<![\w.#])0\.(?=\d)/g, '.')

/** A line's indentation is nothing to a page; a break stays a break. */
const tightMarkup = (text: string): string => text.replace(/\n\s+/g, '\n')

const TIGHTER: Readonly<Record<string, (text: string) => string>> = {
  css: tightStyle,
  html: tightMarkup,
  svg: tightMarkup,
}

/** Takes needless space out of the styles and the markup of a module. */
export function tightened(code: string, file: string): string {
  if (!/\b(css|html|svg)`/.test(code)) return code
  const { program, errors } = parseSync(file, code, { lang: 'ts' })
  if (errors[0]) throw new Error(`${file}: ${errors[0].message}`)
  const texts: { readonly start: number; readonly end: number; readonly tighter: (text: string) => string }[] = []
  const look = (node: Node): void => {
    if (node.type === 'TaggedTemplateExpression' && node.tag.type === 'Identifier') {
      const tighter = TIGHTER[node.tag.name]
      if (tighter)
        for (const { start, value } of node.quasi.quasis) {
          // The parser counts the backtick, or the brace of what is put in, as part of the text.
          const from = code.startsWith(value.raw, start + 1) ? start + 1 : start
          texts.push({ start: from, end: from + value.raw.length, tighter })
        }
    }
    for (const child of Object.values(node).flat()) if (isNode(child)) look(child)
  }
  look(program)
  texts.sort((a, b) => b.start - a.start)
  return texts.reduce(
    (made, { start, end, tighter }) => made.slice(0, start) + tighter(made.slice(start, end)) + made.slice(end),
    code,
  )
}

/** The page's styles and markup as they are sent: their layout is only for readers of the source. */
export function tighten(): Plugin {
  return {
    name: 'evenfield-tighten',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      return FOLDER.test(id) ? { code: tightened(code, id), map: null } : undefined
    },
  }
}
