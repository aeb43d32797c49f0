import { element, type Node } from '../../drawings/canvas/tree.ts'
import type { Given, Outcome, Result } from '../../worksheet/index.ts'

/** A figure longer than this takes the place of its unit as well, or a line of its own. */
const LONG_FIGURE = 16
const LONGEST_FIGURE = 44

export interface Figure {
  readonly figure: string
  readonly unit: string
}

/** The figure and, where there is one figure, its unit apart. */
export function figureOf(cell: Given | Result, outcome: Outcome): Figure {
  if (outcome.state !== 'value') return { figure: cell.kind === 'given' ? cell.value : '', unit: '' }
  const { kind } = outcome.type
  const { figure, unit, text } = outcome.shown
  if (kind === 'list') return { figure: text.replace(/^\{|\}$/g, '').replaceAll('_', ' '), unit: '' }
  if (kind !== 'record') return { figure, unit }
  const size = /^([\d.,\s]+×[\d.,\s]+\d)\s(\S+)$/.exec(outcome.readAs ?? '')
  return size ? { figure: size[1] as string, unit: size[2] as string } : { figure: text.replaceAll('_', ' '), unit: '' }
}

/** The cells of a row that hold the figure. */
export function figureCells({ figure, unit }: Figure): Node[] {
  if (figure.length > LONGEST_FIGURE) return []
  if (figure.length > LONG_FIGURE && unit === '') return [element('td', { class: 'long', colspan: 2 }, figure)]
  // What is not filled in yet is a line to write on.
  const empty = figure === '' ? ' empty' : ''
  return [element('td', { class: `figure${empty}` }, figure), element('td', { class: 'unit' }, unit)]
}
