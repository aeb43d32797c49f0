import { labelOf } from '../../cells/shared/cell-view.ts'
import { STATE_LABELS } from '../../cells/shared/check-sign.ts'
import { element, type Node } from '../../drawings/canvas/tree.ts'
import { functionOutcomeOf, functionSignature } from '../../worksheet/engine/function-outcome.ts'
import type { Measured } from '../../worksheet/engine/outcome.ts'
import {
  type Cell,
  type Check,
  type FunctionCell,
  type Given,
  isNamed,
  type Note,
  type Outcome,
  type Result,
  readingText,
  type Sheet,
} from '../../worksheet/index.ts'
import { type ByKind, byKind } from '../../worksheet/kinds/index.ts'
import { checkShape } from './check-shapes.ts'
import { rangeOnPaper, variantsOnPaper } from './compared.ts'
import { figureCells, figureOf } from './figures.ts'
import { frameOnPaper } from './frame-on-paper.ts'
import { runOnPaper } from './run.ts'
import { simulatedOnPaper } from './simulated.ts'
import { stepsTable } from './steps.ts'
import { tableOnPaper } from './table.ts'
import { paperWords as words } from './words.ts'
import { workingOf } from './working.ts'

const small = (text: string): Node => element('span', { class: 'small' }, text)

const measuredText = ({ computed, difference }: Measured, cell: Given | Result): string =>
  words.measured(
    (cell.kind === 'result' ? readingText(cell) : undefined) ?? words.read,
    computed?.shown.text ?? '',
    difference ?? '',
  )

/** The remarks on a figure, or why there is none. */
function remarks(sheet: Sheet, cell: Given | Result, outcome: Outcome): string[] {
  if (outcome.state === 'value') {
    const { measured } = outcome
    const { mark } = outcome.shown
    return [
      ...(mark ? [words.nearestMark(mark)] : []),
      ...(measured ? [measuredText(measured, cell), ...(measured.contradicts ?? [])] : []),
      ...outcome.warnings.map(({ message }) => words.cautionAbout(message)),
    ]
  }
  if (cell.kind === 'given')
    return cell.value.trim() === ''
      ? []
      : [words.cannotRead(outcome.state === 'error' ? (outcome.diagnostics[0]?.message ?? '') : '')]
  if (outcome.state === 'error') return [words.notComputed(outcome.diagnostics[0]?.message ?? '')]
  const names = outcome.on.map((name) => {
    const on = sheet.named(name)
    return on ? labelOf(on) : name
  })
  return names.length > 0 ? [words.needs(names)] : []
}

/** The row of a given or a result: its label, figure, unit and remarks, with its working below. */
function figureRow(sheet: Sheet, cell: Given | Result, withWorking: boolean): Node {
  const outcome = sheet.outcome(cell.id)
  const figure = figureOf(cell, outcome)
  const cells = figureCells(figure)
  const what = element(
    'th',
    { scope: 'row', ...(cells.length === 0 ? { colspan: 3 } : {}) },
    labelOf(cell),
    ...(cells.length === 0 ? [small(figure.figure)] : []),
    ...remarks(sheet, cell, outcome).map(small),
    ...(cell.hint && cell.kind === 'result' ? [small(cell.hint)] : []),
  )
  const rows = [element('tr', { class: cell.kind }, what, ...cells)]
  if (withWorking && cell.kind === 'result' && cell.formula.trim() !== '') {
    const { formula, filled } = workingOf(sheet, cell)
    rows.push(
      element(
        'tr',
        { class: 'working' },
        element(
          'td',
          { colspan: 3 },
          element('code', {}, `= ${formula}`),
          ...(filled === formula ? [] : [element('code', {}, `= ${filled}`)]),
          ...simulatedOnPaper(sheet, cell, outcome),
        ),
      ),
    )
  }
  return element('tbody', {}, ...rows)
}

function checkRow(sheet: Sheet, cell: Check, withWorking: boolean): Node {
  const { state, message } = sheet.check(cell.id)
  const verdict = element('b', {}, `${STATE_LABELS[state]}:`)
  return element(
    'div',
    { class: 'check' },
    checkShape(state),
    element(
      'div',
      {},
      element('p', {}, verdict, ` ${message || labelOf(cell)}`),
      ...(withWorking ? [element('code', {}, cell.condition)] : []),
    ),
  )
}

const noteRow = ({ role, text }: Note): Node =>
  element(
    'div',
    { class: role === 'caution' ? 'note caution' : 'note' },
    ...text
      .split(/\n\s*\n/)
      .map((part, at) =>
        role === 'caution' && at === 0
          ? element('p', {}, element('b', {}, words.caution), ` ${part}`)
          : element('p', {}, part),
      ),
  )

/** A row of a table of figures, or blocks of their own. */
type OnPaper = { readonly row: Node } | { readonly blocks: readonly Node[] }

/** A function with its formula, and what its examples give. */
function functionOnPaper(sheet: Sheet, cell: FunctionCell): Node {
  const examples = functionOutcomeOf(sheet.engine, cell.id)?.examples ?? []
  return element(
    'div',
    { class: 'note' },
    element('p', {}, element('b', {}, labelOf(cell)), cell.about ? ` ${cell.about}` : ''),
    element('p', {}, `${functionSignature(cell)} = ${cell.formula ?? ''}`),
    ...examples.map(({ formula, shown }) => element('p', {}, `${formula} = ${shown || '–'}`)),
  )
}

/** A cell on paper, by its kind. */
const ON_PAPER: ByKind<[Sheet, boolean], OnPaper> = {
  given: (cell, sheet, withWorking) =>
    // An unchosen piece of kit gets no line to write on.
    cell.entry === 'kit' && cell.value.trim() === '' ? { blocks: [] } : { row: figureRow(sheet, cell, withWorking) },
  result: (cell, sheet, withWorking) => ({ row: figureRow(sheet, cell, withWorking) }),
  check: (cell, sheet, withWorking) => ({ blocks: [checkRow(sheet, cell, withWorking)] }),
  note: (cell) => ({ blocks: [noteRow(cell)] }),
  // Drawings are printed beside the rows of their section.
  drawing: () => ({ blocks: [] }),
  steps: (cell, sheet) => ({ blocks: [stepsTable(sheet, cell)] }),
  table: (cell, sheet) => ({ blocks: tableOnPaper(sheet, cell) }),
  range: (cell, sheet) => ({ blocks: rangeOnPaper(sheet, cell) }),
  variants: (cell, sheet) => ({ blocks: [variantsOnPaper(sheet, cell)] }),
  run: (cell, sheet) => ({ blocks: [runOnPaper(sheet, cell)] }),
  frame: (cell) => ({ blocks: frameOnPaper(cell) }),
  function: (cell, sheet) => ({ blocks: [functionOnPaper(sheet, cell)] }),
}

/** The rows of a section in their order; givens and results that follow each other share a table. */
export function rowsOf(sheet: Sheet, cells: readonly Cell[], withWorking: boolean): Node[] {
  const rows: Node[] = []
  let figures: Node[] = []
  const close = (): void => {
    if (figures.length > 0) rows.push(element('table', {}, ...figures))
    figures = []
  }
  for (const cell of cells) {
    const printed = byKind(ON_PAPER, cell, sheet, withWorking)
    if ('row' in printed) {
      figures.push(printed.row)
      continue
    }
    if (printed.blocks.length > 0 || !isNamed(cell)) close()
    rows.push(...printed.blocks)
  }
  close()
  return rows
}

/** The cautions about people and originals, each once with the labels of its rows. */
export function cautionsOf(sheet: Sheet, cells: readonly Cell[]): Node[] {
  const about = new Map<string, Set<string>>()
  for (const cell of cells) {
    const outcome = cell.kind === 'result' ? sheet.outcome(cell.id) : undefined
    if (outcome?.state !== 'value') continue
    for (const caution of outcome.safety) about.set(caution, (about.get(caution) ?? new Set()).add(labelOf(cell)))
  }
  return [...about].map(([caution, labels]) =>
    element(
      'div',
      { class: 'note caution' },
      element('p', {}, element('b', {}, words.caution), ` ${caution} `, small(words.about([...labels]))),
    ),
  )
}
