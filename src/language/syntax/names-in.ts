import { findUnit } from '../../units/index.ts'
import { type ParsedFormula, parsed } from './parsed-formula.ts'

export interface NameSpan {
  readonly name: string
  readonly from: number
  readonly to: number
}

/**
 * Every word in a formula that may be a cell's name, with its place; the names of functions, arguments and parts are
 * left out. Works on broken formulas too.
 */
export function namesIn(formula: string | ParsedFormula): NameSpan[] {
  const { text, tree } = parsed(formula)
  const spans: NameSpan[] = []
  tree?.iterate({
    enter(node) {
      if (node.name !== 'Name') return
      const parent = node.node.parent
      const isFunction = parent?.name === 'Call' && parent.firstChild?.from === node.from
      if (!isFunction) spans.push({ name: text.slice(node.from, node.to), from: node.from, to: node.to })
    },
  })
  return spans
}

/**
 * A name replaced by another. Spaces keep a division a division: `a/8` must not become the f-number `f/8`,
 * nor `10 mm/a` the broken unit `10 mm/m`.
 */
function replaced(text: string, { from, to }: NameSpan, name: string): string {
  const before = text.slice(0, from)
  const after = text.slice(to)
  const apart = before.endsWith('/') && findUnit(name) ? ' ' : ''
  return before + apart + name + (name === 'f' && after.startsWith('/') ? ' ' : '') + after
}

/** The formula with every use of some cells' names replaced by others, all at once. */
export function renameAllIn(text: string, names: ReadonlyMap<string, string>): string {
  let renamed = text
  for (const span of namesIn(text).reverse()) {
    const to = names.get(span.name)
    if (to !== undefined) renamed = replaced(renamed, span, to)
  }
  return renamed
}

/** The formula with every use of one cell's name replaced by another. */
export const renameIn = (text: string, from: string, to: string): string =>
  text.includes(from) ? renameAllIn(text, new Map([[from, to]])) : text

/** The formula with every use of one part of a cell's record, `originals.width`, under another name: `originals.breadth`. */
export function renamePartIn(text: string, cell: string, from: string, to: string): string {
  if (!text.includes(from)) return text
  const spans: NameSpan[] = []
  parsed(text).tree?.iterate({
    enter({ name, node }) {
      const part = name === 'Part' ? node.getChild('PartName') : null
      const of = part && node.firstChild
      if (part && of?.name === 'Name' && text.slice(of.from, of.to) === cell && text.slice(part.from, part.to) === from)
        spans.push({ name: from, from: part.from, to: part.to })
    },
  })
  return spans.reverse().reduce((renamed, span) => renamed.slice(0, span.from) + to + renamed.slice(span.to), text)
}
