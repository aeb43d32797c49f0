import { labelOf } from '../../cells/shared/cell-view.ts'
import { STATE_LABELS } from '../../cells/shared/check-sign.ts'
import { series } from '../../drawings/canvas/text-figures.ts'
import { element, type Node } from '../../drawings/canvas/tree.ts'
import { LATER_KIND_TEXT } from '../../worksheet/document/label.ts'
import type { Measured } from '../../worksheet/engine/outcome.ts'
import type { Cell, Check, Given, Note, Outcome, Result, Sheet } from '../../worksheet/index.ts'
import { checkShape } from './check-shapes.ts'
import { rangeOnPaper, variantsOnPaper } from './compared.ts'
import { figureCells, figureOf } from './figures.ts'
import { runOnPaper } from './run.ts'
import { stepsTable } from './steps.ts'
import { tableOnPaper } from './table.ts'
import { workingOf } from './working.ts'

const MOST_NAMES = 4

const small = (text: string): Node => element('span', { class: 'small' }, text)

const measuredInWords = ({ computed, difference }: Measured): string =>
  ['measured', computed ? `computed ${computed.shown.text}` : '', difference].filter(Boolean).join('; ')

/** Why there is no figure, and what else is to be said beside one. */
function remarks(sheet: Sheet, cell: Given | Result, outcome: Outcome): string[] {
  if (outcome.state === 'value') {
    const { measured } = outcome
    const { mark } = outcome.shown
    return [
      ...(mark ? [`nearest mark ${mark}`] : []),
      ...(measured ? [measuredInWords(measured)] : []),
      ...outcome.warnings.map(({ message }) => `Caution: ${message}`),
    ]
  }
  if (cell.kind === 'given')
    return cell.value.trim() === ''
      ? []
      : [`Cannot be read: ${outcome.state === 'error' ? outcome.diagnostics[0]?.message : ''}`]
  if (outcome.state === 'error') return [`Not computed: ${outcome.diagnostics[0]?.message ?? ''}`]
  const names = outcome.on.map((name) => {
    const on = sheet.named(name)
    return on ? labelOf(on) : name
  })
  const more = names.length - MOST_NAMES
  return names.length > 0
    ? [`waits for ${series(more > 0 ? [...names.slice(0, MOST_NAMES), `${more} more`] : names)}`]
    : []
}

/** A given or a result: what it is, its figure on its unit, and what is to be said of it; its working below. */
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
        ),
      ),
    )
  }
  return element('tbody', {}, ...rows)
}

function checkRow(sheet: Sheet, cell: Check, withWorking: boolean): Node {
  const { state, message } = sheet.check(cell.id)
  const words = element('b', {}, `${STATE_LABELS[state]}:`)
  return element(
    'div',
    { class: 'check' },
    checkShape(state),
    element(
      'div',
      {},
      element('p', {}, words, ` ${message || labelOf(cell)}`),
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
          ? element('p', {}, element('b', {}, 'Caution:'), ` ${part}`)
          : element('p', {}, part),
      ),
  )

/** The rows of a section in their order; givens and results that follow each other share a table. */
export function rowsOf(sheet: Sheet, cells: readonly Cell[], withWorking: boolean): Node[] {
  const rows: Node[] = []
  let figures: Node[] = []
  const close = (): void => {
    if (figures.length > 0) rows.push(element('table', {}, ...figures))
    figures = []
  }
  for (const cell of cells) {
    // A piece of kit nobody chose is no line to write on.
    if (cell.kind === 'given' && cell.entry === 'kit' && cell.value.trim() === '') continue
    if (cell.kind === 'given' || cell.kind === 'result') {
      figures.push(figureRow(sheet, cell, withWorking))
      continue
    }
    close()
    if (cell.kind === 'check') rows.push(checkRow(sheet, cell, withWorking))
    else if (cell.kind === 'note') rows.push(noteRow(cell))
    else if (cell.kind === 'steps') rows.push(stepsTable(sheet, cell))
    else if (cell.kind === 'range') rows.push(...rangeOnPaper(sheet, cell))
    else if (cell.kind === 'variants') rows.push(variantsOnPaper(sheet, cell))
    else if (cell.kind === 'run') rows.push(runOnPaper(sheet, cell))
    else if (cell.kind === 'table') rows.push(...tableOnPaper(sheet, cell))
    else if (cell.kind === 'frame' || cell.kind === 'function')
      rows.push(element('p', {}, `${labelOf(cell)}: ${LATER_KIND_TEXT}`))
  }
  close()
  return rows
}

/** What may harm a person or an original, each said once with the rows it is about. */
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
      element('p', {}, element('b', {}, 'Caution:'), ` ${caution} `, small(`(${series([...labels])})`)),
    ),
  )
}
