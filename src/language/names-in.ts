import { LONGEST_FORMULA, oneSign } from './lookalikes.ts'
import { parser } from './parser.ts'

export interface NameSpan {
  readonly name: string
  readonly from: number
  readonly to: number
}

/**
 * Every word in a formula that may stand for a cell, with its place; the names of functions, arguments and parts are
 * left out. Works on broken formulas too.
 */
export function namesIn(text: string): NameSpan[] {
  if (text.length > LONGEST_FORMULA) return []
  const spans: NameSpan[] = []
  parser.parse(oneSign(text)).iterate({
    enter(node) {
      if (node.name !== 'Name') return
      const parent = node.node.parent
      const isFunction = parent?.name === 'Call' && parent.firstChild?.from === node.from
      if (!isFunction) spans.push({ name: text.slice(node.from, node.to), from: node.from, to: node.to })
    },
  })
  return spans
}

/** The formula with every use of one cell's name replaced by another. */
export function renameIn(text: string, from: string, to: string): string {
  let renamed = text
  for (const span of namesIn(text).reverse())
    if (span.name === from) renamed = renamed.slice(0, span.from) + to + renamed.slice(span.to)
  return renamed
}
