import { calledIn, labelOf } from '../../cells/shared/cell-view.ts'
import { ORIGIN_LABELS, STATE_LABELS } from '../../cells/shared/words.ts'
import { element, type Node } from '../../drawings/canvas/tree.ts'
import { listText } from '../../units/plural.ts'
import { functionOutcomeOf, functionSignature } from '../../worksheet/analysis/function-outcome.ts'
import { shownFigure } from '../../worksheet/document/shown-figure.ts'
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
import { isOfExample } from '../examples/examples.ts'
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

/** What is printed of a sheet: its working or not, in two columns or not. */
interface PaperOptions {
  readonly working?: boolean | undefined
  readonly paged?: boolean | undefined
}

const small = (text: string): Node => element('span', { class: 'small' }, text)

const measuredText = ({ computed, difference }: Measured, cell: Given | Result): string =>
  words.measured(readingText(cell) ?? words.read, computed?.shown.text ?? '', difference ?? '')

/** The remarks on a figure, or why there is none. */
function remarks(sheet: Sheet, cell: Given | Result, outcome: Outcome): string[] {
  if (outcome.state === 'value') {
    const { measured, before } = outcome
    const read = readingText(cell)
    const { mark, exactly } = shownFigure(cell, outcome.shown)
    return [
      ...(exactly ? [words.exactFigure(exactly)] : mark ? [words.nearestMark(mark)] : []),
      ...(measured ? [measuredText(measured, cell), ...(measured.contradicts ?? [])] : read && !before ? [read] : []),
      ...(before
        ? [
            words.measuredBefore(
              before.map((name) => calledIn(sheet, name)),
              measured ? undefined : read,
            ),
          ]
        : []),
      ...outcome.warnings.map(({ message }) => words.cautionAbout(message)),
    ]
  }
  if (cell.kind === 'given')
    return cell.value.trim() === ''
      ? []
      : [words.cannotRead(outcome.state === 'error' ? (outcome.diagnostics[0]?.message ?? '') : '')]
  if (outcome.state === 'error') return [words.notComputed(outcome.diagnostics[0]?.message ?? '')]
  const names = outcome.on.map((name) => calledIn(sheet, name))
  return names.length > 0 ? [words.needs(names)] : []
}

/** The row of a given or a result: its label, figure, unit and remarks, with its working below. */
function figureRow(sheet: Sheet, cell: Given | Result, { working, paged }: PaperOptions): Node {
  const outcome = sheet.outcome(cell.id)
  const figure = figureOf(cell, outcome)
  const cells = figureCells(figure)
  const origin = isOfExample(cell) ? ORIGIN_LABELS.example : ''
  const what = element(
    'th',
    { scope: 'row', ...(cells.length === 0 ? { colspan: 3 } : {}) },
    labelOf(cell),
    ...(origin ? [' ', element('span', { class: 'origin' }, origin)] : []),
    ...(cells.length === 0 ? [small(figure.figure)] : []),
    ...remarks(sheet, cell, outcome).map(small),
    ...(cell.hint && cell.kind === 'result' && !(paged && !working) ? [small(cell.hint)] : []),
  )
  const rows = [element('tr', { class: origin ? `${cell.kind} of-example` : cell.kind }, what, ...cells)]
  if (working && cell.kind === 'result' && cell.formula.trim() !== '') {
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

function checkRow(sheet: Sheet, cell: Check, { working }: PaperOptions): Node {
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
      ...(working ? [element('code', {}, cell.condition)] : []),
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
const ON_PAPER: ByKind<[Sheet, PaperOptions], OnPaper> = {
  given: (cell, sheet, options) =>
    // An unchosen piece of kit gets no line to write on.
    cell.entry === 'kit' && cell.value.trim() === '' ? { blocks: [] } : { row: figureRow(sheet, cell, options) },
  result: (cell, sheet, options) => ({ row: figureRow(sheet, cell, options) }),
  check: (cell, sheet, options) => ({ blocks: [checkRow(sheet, cell, options)] }),
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

/** A fine adjustment or result about which nothing is to be said but its figure. */
const isPlainFine = (sheet: Sheet, cell: Cell): cell is Given | Result =>
  (cell.kind === 'given' || cell.kind === 'result') &&
  cell.more_exact === true &&
  remarks(sheet, cell, sheet.outcome(cell.id)).length === 0

/** Fine adjustments or results of a section one after the other, as they are folded to a line on the screen. */
function inLine(sheet: Sheet, label: string, all: readonly (Given | Result)[], kind: 'given' | 'result'): Node[] {
  const cells = all.filter((cell) => cell.kind === kind && !(cell.kind === 'given' && cell.value.trim() === ''))
  if (cells.length === 0) return []
  const texts = cells.map((cell) => {
    const outcome = sheet.outcome(cell.id)
    const isOne = outcome.state !== 'value' || (outcome.type.kind !== 'list' && outcome.type.kind !== 'record')
    const figure = isOne ? (outcome.state === 'value' ? outcome.shown.text : '–') : figureOf(cell, outcome).figure
    return words.inLine(labelOf(cell), figure, isOfExample(cell) ? ORIGIN_LABELS.example : '')
  })
  return [element('p', { class: 'fine' }, element('b', {}, `${label}:`), ` ${texts.join('; ')}`)]
}

/** The passing checks of a section in one line, as on the screen. */
const passing = (checks: readonly Check[]): Node[] =>
  checks.length === 0
    ? []
    : [
        element(
          'div',
          { class: 'check' },
          checkShape('pass'),
          element('p', {}, element('b', {}, words.checksPass(checks.length)), ` ${listText(checks.map(labelOf))}`),
        ),
      ]

/** The rows of a section in their order; givens and results that follow each other share a table. */
export function rowsOf(sheet: Sheet, all: readonly Cell[], options: PaperOptions): Node[] {
  // On pages without the working, checks follow the figures, and those that pass share a line.
  const isShort = options.paged === true && options.working !== true
  const checks = isShort ? all.filter((cell): cell is Check => cell.kind === 'check') : []
  const passed = checks.filter(({ id }) => sheet.checkState(id) === 'pass')
  const others = checks.filter((cell) => !passed.includes(cell))
  const fine = isShort ? all.filter((cell) => isPlainFine(sheet, cell)) : []
  const cells = isShort
    ? [...all.filter((cell) => cell.kind !== 'check' && !fine.includes(cell as Given | Result)), ...others]
    : all
  const rows: Node[] = []
  let figures: Node[] = []
  const close = (): void => {
    if (figures.length > 0) rows.push(element('table', {}, ...figures))
    figures = []
  }
  for (const cell of cells) {
    const printed = byKind(ON_PAPER, cell, sheet, options)
    if ('row' in printed) {
      figures.push(printed.row)
      continue
    }
    if (printed.blocks.length > 0 || !isNamed(cell)) close()
    rows.push(...printed.blocks)
  }
  close()
  return [
    ...rows,
    ...inLine(sheet, words.fineAdjustments, fine, 'given'),
    ...inLine(sheet, words.moreResults, fine, 'result'),
    ...passing(passed),
  ]
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
