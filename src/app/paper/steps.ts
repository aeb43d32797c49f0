import { labelOf } from '../../cells/shared/cell-view.ts'
import { unitSuffix } from '../../cells/shared/unit-suffix.ts'
import { doneText } from '../../cells/steps/steps-ticks.ts'
import { element, type Node } from '../../drawings/canvas/tree.ts'
import type { Sheet, Steps } from '../../worksheet/index.ts'
import { type Figure, figureCells, figureOf } from './figures.ts'
import { paperWords as words } from './words.ts'

type Step = Steps['steps'][number]

/** A box to tick by hand, ticked where the step is done in the sheet. */
const tickBox = (done: boolean): Node =>
  element(
    'svg',
    { class: 'sign', viewBox: '0 0 18 18', width: '4.2mm', height: '4.2mm' },
    element('rect', { x: 1, y: 1, width: 16, height: 16, fill: 'none', stroke: '#000', 'stroke-width': 1.5 }),
    ...(done
      ? [element('path', { d: 'M4 9.5 7.5 13.5 14.5 4.5', fill: 'none', stroke: '#000', 'stroke-width': 2.5 })]
      : []),
  )

/** The reading of a step and its figure, or a line to write on while there is none. */
function reading(sheet: Sheet, name: string): { readonly words: string; readonly figure?: Figure } {
  const cell = sheet.named(name)
  if (cell?.kind === 'given') {
    const figure = figureOf(cell, sheet.outcome(cell.id))
    return { words: labelOf(cell), figure: figure.figure === '' ? { figure: '', unit: unitSuffix(cell.unit) } : figure }
  }
  if (cell?.kind !== 'result') return { words: words.notInSheet(name) }
  const outcome = sheet.outcome(cell.id)
  const measured = outcome.state === 'value' ? outcome.measured : undefined
  const computed = measured ? measured.computed?.shown : outcome.state === 'value' ? outcome.shown : undefined
  return {
    words: words.asMeasured(labelOf(cell), computed?.text ?? ''),
    figure: measured ? figureOf(cell, outcome) : { figure: '', unit: unitSuffix(cell.unit) || (computed?.unit ?? '') },
  }
}

function stepRow(sheet: Sheet, step: Step, at: number): Node {
  const read = step.reading === undefined ? undefined : reading(sheet, step.reading)
  const cells = read?.figure ? figureCells(read.figure) : []
  const said = read
    ? [read.figure && cells.length === 0 ? words.figureAfter(read.words, read.figure.figure) : read.words]
    : []
  return element(
    'tr',
    {},
    element('td', { class: 'tick' }, tickBox(step.done === true)),
    element('td', { class: 'number' }, `${at + 1}`),
    element(
      'th',
      { scope: 'row', ...(cells.length === 0 ? { colspan: 3 } : {}) },
      step.text,
      ...said.map((text) => element('span', { class: 'small' }, text)),
    ),
    ...cells,
  )
}

const COLUMNS = element(
  'colgroup',
  {},
  ...['tick', 'number', 'said', 'figure', 'unit'].map((name) => element('col', { class: name })),
)

/** The steps on paper, numbered, each with a box to tick and a line for its reading. */
export function stepsTable(sheet: Sheet, cell: Steps): Node {
  const begun = cell.steps.some(({ done }) => done === true)
  return element(
    'div',
    { class: 'steps' },
    element('p', {}, element('b', {}, labelOf(cell)), begun ? `, ${doneText(cell.steps).toLowerCase()}` : ''),
    // Most steps have no figure, so the widths of the columns cannot be those of the first row.
    element('table', {}, COLUMNS, ...cell.steps.map((step, at) => element('tbody', {}, stepRow(sheet, step, at)))),
  )
}
