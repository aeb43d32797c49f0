import { checkFormula } from '../../language/index.ts'
import { day } from '../../units/plural.ts'
import type { Sheet } from '../../worksheet/editing/sheet.ts'
import { type ByKind, byKind } from '../../worksheet/kinds/index.ts'
import type { Cell, Check, Drawing, Result, Worksheet } from '../../worksheet/schema/document.ts'
import { rangeFigures, variantsFigures } from './compared-figures.ts'
import { literal, WAYS } from './literal.ts'
import { runFigures } from './run-figures.ts'
import { tableFigures } from './table-figures.ts'
import { FIGURES_WORDS as WORDS } from './words.ts'

/** Set in a sheet whose results are figures, not formulas; other programs preserve it as a key they do not know. */
const MARK = 'figures_only'

/** Whether a worksheet has figures in the place of its formulas, as `figuresOnly` makes it. */
export const isFiguresOnly = (worksheet: Worksheet): boolean => (worksheet as Record<string, unknown>)[MARK] === true

const NOTHING_TO_PUT_IN = /[{}]/g

function result(sheet: Sheet, cell: Result): Cell {
  const outcome = sheet.outcome(cell.id)
  if (outcome.state !== 'value') return asText(cell, '')
  const { type, tolerance, shown, measured } = outcome
  // What was measured stays beside what was computed.
  const figure = literal(measured?.computed?.value ?? outcome.value, type)
  if (figure === undefined) return asText(cell, shown.text)
  const limits = tolerance !== undefined && type.kind === 'number' && !measured ? literal(tolerance, type) : undefined
  const each = type.kind === 'list' ? type.of : type
  const unit = cell.unit ?? (each.kind === 'number' && each.notation ? WAYS[each.notation] : undefined)
  return { ...cell, ...(unit === undefined ? {} : { unit }), formula: limits ? `${figure} ± ${limits}` : figure }
}

/** What no formula can write becomes a text. */
const asText = ({ id, name, label, hint, more_exact, stand }: Result, value: string): Cell => ({
  kind: 'given',
  id,
  name,
  label,
  hint,
  more_exact,
  stand,
  entry: 'text',
  value,
})

/** Conditions that pass, are marginal and fail for any givens. */
const CONDITIONS = { pass: 'yes', marginal: '1 <= 1', fail: 'no' } as const

function check(sheet: Sheet, cell: Check): Cell {
  const { state, message } = sheet.check(cell.id)
  // The figures in braces have been put in; a brace left would be read as a place to fill.
  const said = message.replace(NOTHING_TO_PUT_IN, '')
  if (state === 'waiting' || state === 'error')
    return { kind: 'note', id: cell.id, text: WORDS.notJudged(cell.label || cell.name, said) }
  const { margin: _, ...rest } = cell
  return { ...rest, condition: CONDITIONS[state], message: said, passes: said }
}

function drawing(sheet: Sheet, cell: Drawing): Cell {
  const { values } = sheet.drawing(cell.id)
  const scope = sheet.scopeFor()
  const { moves: _, ...rest } = cell
  const from = Object.entries(cell.from).flatMap(([input, formula]) => {
    // The result it names is a figure by now.
    const named = sheet.named(formula.trim())
    if (named?.kind === 'result' && result(sheet, named).kind === 'result') return [[input, formula] as const]
    const type = checkFormula(formula, scope).root?.type
    const value = values[input]
    const figure = type && value !== undefined ? literal(value, type) : undefined
    return figure === undefined ? [] : [[input, figure] as const]
  })
  return { ...rest, from: Object.fromEntries(from) }
}

const unchanged = (cell: Cell): Cell => cell

/** A cell with its figures in the place of its formulas, by its kind. */
const FROZEN: ByKind<[Sheet], Cell> = {
  given: unchanged,
  result: (cell, sheet) => result(sheet, cell),
  check: (cell, sheet) => check(sheet, cell),
  note: unchanged,
  drawing: (cell, sheet) => drawing(sheet, cell),
  steps: unchanged,
  table: (cell, sheet) => tableFigures(sheet, cell),
  range: (cell, sheet) => rangeFigures(sheet, cell),
  variants: (cell, sheet) => variantsFigures(sheet, cell),
  run: (cell, sheet) => runFigures(sheet, cell),
  frame: unchanged,
  function: unchanged,
}

function freeId(cells: readonly Cell[]): string {
  const taken = new Set(cells.map(({ id }) => id))
  for (let at = 0; ; at++) if (!taken.has(`figures-${at}`)) return `figures-${at}`
}

/** The sheet with its results as figures in the place of formulas; givens, notes and what the checks found stay. */
export function figuresOnly(sheet: Sheet, at = new Date()): Worksheet {
  // Without its formulas a sheet is composed of nothing any more, and no job of the shelf.
  const { parts: _, setups: _setups, given: _given, shelf: _shelf, ...worksheet } = sheet.worksheet
  const note: Cell = {
    kind: 'note',
    id: freeId(worksheet.cells),
    role: 'caution',
    text: WORDS.figuresOnly(day(at)),
  }
  return {
    ...worksheet,
    [MARK]: true,
    // By its id a cell is known again in a link that carries only what differs from a job.
    cells: [note, ...worksheet.cells.map((cell) => byKind(FROZEN, cell, sheet))],
  }
}
