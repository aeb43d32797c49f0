import { type Cell, isNamed, type Sheet } from '../../worksheet/index.ts'
import { type ByKind, byKind } from '../../worksheet/kinds/index.ts'
import { findWords } from './words.ts'

const { place } = findWords

/** A cell in which something was found. */
export interface Hit {
  readonly id: string
  /** The part of the cell it was found in: `formula`. */
  readonly place: string
}

type Text = readonly [place: string, text: string | undefined]

/** Texts are compared without case, accents and kinds of space. */
const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').replace(/\s+/g, ' ').toLowerCase()

/** Every cell that contains the words, in the order of the sheet, each with the first place they are found in. */
export function findIn(sheet: Sheet, words: string): Hit[] {
  const query = plain(words.trim())
  if (query === '') return []
  const holds = ([, text]: Text): boolean => text !== undefined && plain(text).includes(query)
  return sheet.cells.flatMap((cell) => {
    // Computing a figure costs most, so figures are searched last.
    const found = textsOf(cell).find(holds) ?? [figureOf(sheet, cell)].find(holds)
    return found ? [{ id: cell.id, place: found[0] }] : []
  })
}

function textsOf(cell: Cell): Text[] {
  const called: Text[] = [
    [place.label, isNamed(cell) ? cell.label : undefined],
    [place.title, 'title' in cell && typeof cell.title === 'string' ? cell.title : undefined],
    [place.name, isNamed(cell) ? cell.name : undefined],
  ]
  return [...called, ...byKind(OWN_TEXTS, cell)]
}

const lines = (...texts: readonly (string | undefined)[]): string => texts.filter(Boolean).join('\n')

const formulas = (from: Readonly<Record<string, string>>): Text[] =>
  Object.values(from).map((text) => [place.formulas, text])

/** The texts typed into a cell, by its kind. */
const OWN_TEXTS: ByKind<[], Text[]> = {
  given: ({ value, piece = {}, hint }) => [
    [place.value, value],
    [place.kit, lines(...Object.values(piece))],
    [place.hint, hint],
  ],
  result: ({ formula, measured, hint, measure }) => [
    [place.formula, formula],
    [place.measured, measured],
    [place.hint, hint],
    [place.measuring, measure],
  ],
  check: ({ condition, message, passes }) => [
    [place.condition, condition],
    [place.message, lines(message, passes)],
  ],
  note: ({ text, about }) => [[place.text, lines(text, about)]],
  drawing: ({ from }) => formulas(from),
  run: ({ of, from }) => [[place.table, of], ...formulas(from)],
  steps: ({ steps }) =>
    steps.flatMap(({ text, reading }, at): Text[] => [
      [place.step(at + 1), text],
      [place.reading(at + 1), reading],
    ]),
  table: ({ columns, rows }) => [
    ...columns.flatMap((column): Text[] => [
      [place.columnHeading, lines(column.label, column.name)],
      [place.columnFormula, column.formula],
    ]),
    ...rows.map((row, at): Text => [place.row(at + 1), lines(...row)]),
  ],
  range: ({ of, results }) => [[place.range, lines(of, ...results)]],
  variants: ({ sets, results }) => [
    ...sets.map(
      ({ title, values }): Text => [place.variant, lines(title, ...Object.keys(values), ...Object.values(values))],
    ),
    [place.compared, lines(...results)],
  ],
  frame: ({ hint, areas = [], picture }) => [
    [place.hint, hint],
    ...areas.map(({ name }): Text => [place.area, name]),
    [place.picture, picture?.name],
  ],
  function: ({ about, formula, examples = [] }) => [
    [place.text, about],
    [place.formula, formula],
    ...examples.map((example): Text => [place.formula, example.formula]),
  ],
}

/** What a cell shows in addition to what was typed into it. */
function figureOf(sheet: Sheet, cell: Cell): Text {
  if (cell.kind === 'check') return [place.message, sheet.check(cell.id).message]
  if (cell.kind !== 'given' && cell.kind !== 'result') return ['', undefined]
  const outcome = sheet.outcome(cell.id)
  if (outcome.state !== 'value') return ['', undefined]
  return [cell.kind === 'result' ? place.figure : place.value, lines(outcome.shown.text, outcome.shown.mark)]
}
