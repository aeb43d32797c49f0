import { element, type Node } from '../../drawings/canvas/tree.ts'
import { shownFigure } from '../../worksheet/document/shown-figure.ts'
import type { Given, Outcome, Result } from '../../worksheet/index.ts'

/** The number of characters above which a figure also takes the column of its unit, or a separate line. */
const LONG_FIGURE = 16
const LONGEST_FIGURE = 44

export interface Figure {
  readonly figure: string
  readonly unit: string
}

/** The figure of a cell, with its unit apart where it has only one. */
export function figureOf(cell: Given | Result, outcome: Outcome): Figure {
  if (outcome.state !== 'value') return { figure: cell.kind === 'given' ? cell.value : '', unit: '' }
  const { kind } = outcome.type
  const { figure, unit, text } = shownFigure(cell, outcome.shown)
  if (kind === 'list') return { figure: text.replace(/^\{|\}$/g, '').replaceAll('_', ' '), unit: '' }
  if (kind !== 'record') return { figure, unit }
  const size = /^([\d.,\s]+×[\d.,\s]+\d)\s(\S+)$/.exec(outcome.readAs ?? '')
  return size ? { figure: size[1] as string, unit: size[2] as string } : { figure: text.replaceAll('_', ' '), unit: '' }
}

/** The table cells for a figure. */
export function figureCells({ figure, unit }: Figure): Node[] {
  if (figure.length > LONGEST_FIGURE) return []
  if (figure.length > LONG_FIGURE && unit === '') return [element('td', { class: 'long', colspan: 2 }, figure)]
  // An empty figure is a line to write on.
  const empty = figure === '' ? ' empty' : ''
  return [element('td', { class: `figure${empty}` }, figure), element('td', { class: 'unit' }, unit)]
}
