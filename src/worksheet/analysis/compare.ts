import { labelOf, titleOf } from '../document/label.ts'
import { isNamed } from '../document/names.ts'
import { UNTITLED_SHEET } from '../document/words.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Outcome } from '../engine/outcome.ts'
import { asMade, without } from '../kinds/filled-in.ts'
import { isSame } from '../schema/content.ts'
import type { Cell, Given, NamedCell, Note, TableCell, Worksheet } from '../schema/document.ts'
import { holdSame, placesOf } from './places.ts'
import * as words from './words.ts'

/** What kind of thing differs, in the order it is listed. */
export type Part = keyof typeof words.parts
const PARTS = Object.keys(words.parts) as readonly Part[]

/** One thing that differs between two states of a sheet: by label, as one reads it there. */
export interface Difference {
  readonly part: Part
  readonly label: string
  /** Absent where the cell came only later. */
  readonly was?: string
  /** Absent where the cell is gone. */
  readonly is?: string
}

const LONGEST = 160
const shortened = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text)

const outcomeText = (outcome: Outcome): string => {
  if (outcome.state === 'value') return outcome.shown.text
  return outcome.state === 'waiting' ? words.states.waiting : words.states.error
}

const filled = (value: string): string => (value.trim() === '' ? words.empty : value)

/** A given as it was understood, unit and all; as typed where it was not. */
function readAs(sheet: Sheet, { id, value }: Given): string {
  const outcome = sheet.outcome(id)
  return outcome.state === 'value' ? outcome.shown.text : filled(value)
}

/** A difference within a cell, by the label of the cell where it has none of its own. */
type Unlabelled = Omit<Difference, 'label'> & { readonly label?: string }

/** How the cells of one kind are compared. */
interface Comparison<C extends Cell> {
  readonly part: Part
  /** What the cell is called. */
  called(cell: C): string
  /** What it says in short, where it comes or goes as a whole. */
  summary(sheet: Sheet, cell: C): string
  /** What differs between two states of it besides its name and how it is set up. */
  differences?(before: Sheet, was: C, after: Sheet, is: C): Iterable<Unlabelled>
}

const titled = (part: Part): Comparison<Exclude<Cell, NamedCell | Note>> => ({
  part,
  called: titleOf,
  summary: (_, cell) => titleOf(cell),
})

const named = (part: Part): Comparison<NamedCell> => ({ part, called: labelOf, summary: (_, cell) => labelOf(cell) })

/** A difference where two texts differ. */
const between = (part: Part, was: string, is: string): Omit<Difference, 'label'>[] =>
  was === is ? [] : [{ part, was, is }]

const SET_UP_OTHERWISE: Unlabelled = { part: 'cells', was: words.setUpThen, is: words.setUpNow }

/** So many fields of a table are listed one by one. */
const MOST_FIELDS = 12

/** What differs in the places that are filled in at work. */
function placed(part: Part, was: Cell, is: Cell): Unlabelled[] {
  const [before, after] = [was, is].map((cell) => new Map(placesOf(cell).map((place) => [place.key, place])))
  return [...new Map([...(before ?? []), ...(after ?? [])])].flatMap(([key, { label }]) => {
    const [old, now] = [before?.get(key), after?.get(key)]
    // A step that says something else is another step, and part of how the cell is set up.
    if (holdSame(old, now) || (is.kind === 'steps' && !(old && now))) return []
    const [one, other] = [filled(old?.text ?? ''), filled(now?.text ?? '')]
    return [{ part, label, was: one, is: one === other ? words.measuredAgain(other) : other }]
  })
}

function fieldsOf(was: TableCell, is: TableCell): Unlabelled[] {
  const found = placed('tables', was, is)
  if (found.length <= MOST_FIELDS) return found
  return [{ part: 'tables', was: words.rows(was.rows.length), is: words.rowsThen(is.rows.length, found.length) }]
}

const COMPARISONS: { readonly [K in Cell['kind']]: Comparison<Extract<Cell, { kind: K }>> } = {
  given: {
    part: 'givens',
    called: labelOf,
    summary: readAs,
    differences(before, was, after, is) {
      // The same piece of kit may have other figures.
      if (was.value === is.value) return isSame(was.piece, is.piece) ? [] : [SET_UP_OTHERWISE]
      const found = between('givens', readAs(before, was), readAs(after, is))
      // Where both are read as the same, the difference is in how it was typed.
      return found.length > 0 ? found : between('givens', filled(was.value), filled(is.value))
    },
  },
  result: {
    part: 'results',
    called: labelOf,
    summary: (sheet, { id }) => outcomeText(sheet.outcome(id)),
    differences(before, was, after, is) {
      const found = between('results', outcomeText(before.outcome(was.id)), outcomeText(after.outcome(is.id)))
      const measured = between('results', filled(was.measured ?? ''), filled(is.measured ?? ''))
      // Where both show the same, the difference is in what was measured.
      return [...between('formulas', was.formula, is.formula), ...(found.length > 0 ? found : measured)]
    },
  },
  check: {
    part: 'checks',
    called: labelOf,
    summary: (sheet, { id }) => words.states[sheet.check(id).state],
    differences: (before, was, after, is) => [
      ...between('formulas', was.condition, is.condition),
      ...between('checks', words.states[before.check(was.id).state], words.states[after.check(is.id).state]),
    ],
  },
  note: {
    part: 'notes',
    called: ({ role }) => words.noteTitles[role ?? 'prose'],
    summary: (_, { text }) => shortened(text),
    differences: (_, was, __, is) =>
      was.text === is.text ? [] : [{ part: 'notes', was: shortened(filled(was.text)), is: shortened(filled(is.text)) }],
  },
  drawing: titled('notes'),
  steps: { ...titled('notes'), differences: (_, was, __, is) => placed('notes', was, is) },
  table: { ...named('tables'), differences: (_, was, __, is) => fieldsOf(was, is) },
  range: titled('tables'),
  variants: titled('tables'),
  run: titled('tables'),
  frame: { ...named('notes'), differences: (_, was, __, is) => placed('notes', was, is) },
  function: {
    ...titled('formulas'),
    differences: (_, was, __, is) => between('formulas', filled(was.formula ?? ''), filled(is.formula ?? '')),
  },
}

const comparisonOf = (cell: Cell): Comparison<Cell> => COMPARISONS[cell.kind] as Comparison<Cell>

const calledOf = (cell: Cell): string => comparisonOf(cell).called(cell)

/** The keys compared one by one above, or not at all; the others count together as how the cell is set up. */
const COMPARED_ALONE = ['id', 'formula', 'condition', 'text']
const setUp = (cell: Cell): object => without(asMade(cell), COMPARED_ALONE)

/** The cell of one sheet that answers a cell of another: by its id, or its name where ids were made anew. */
function counterparts(from: Worksheet, to: Worksheet): ReadonlyMap<Cell, Cell> {
  const byId = new Map(to.cells.map((cell) => [cell.id, cell]))
  const byName = new Map(to.cells.filter(isNamed).map((cell) => [cell.name, cell as Cell]))
  const found = new Map<Cell, Cell>()
  const taken = new Set<Cell>()
  const pair = (cell: Cell, other: Cell | undefined): void => {
    if (!other || other.kind !== cell.kind || found.has(cell) || taken.has(other)) return
    found.set(cell, other)
    taken.add(other)
  }
  for (const cell of from.cells) pair(cell, byId.get(cell.id))
  for (const cell of from.cells) if (isNamed(cell)) pair(cell, byName.get(cell.name))
  return found
}

function* ofCell(before: Sheet, was: Cell, after: Sheet, is: Cell): Generator<Difference> {
  const label = calledOf(is)
  for (const one of comparisonOf(is).differences?.(before, was, after, is) ?? []) yield { label, ...one }
  if (calledOf(was) !== label) yield { part: 'cells', label, was: words.called(calledOf(was)), is: words.called(label) }
  else if (!isSame(setUp(was), setUp(is))) yield { label, ...SET_UP_OTHERWISE }
}

function* differencesOf(before: Sheet, after: Sheet): Generator<Difference> {
  const [was, is] = [before.worksheet, after.worksheet]
  const called = (title: string) => title || UNTITLED_SHEET
  if (was.title !== is.title)
    yield { part: 'title', label: words.titleLabel, was: called(was.title), is: called(is.title) }
  if ((was.job ?? '') !== (is.job ?? ''))
    yield { part: 'title', label: words.jobLabel, was: filled(was.job ?? ''), is: filled(is.job ?? '') }
  const later = counterparts(was, is)
  const earlier = new Map([...later].map(([a, b]) => [b, a]))
  for (const cell of is.cells) {
    const old = earlier.get(cell)
    if (old) yield* ofCell(before, old, after, cell)
    else yield { part: comparisonOf(cell).part, label: calledOf(cell), is: comparisonOf(cell).summary(after, cell) }
  }
  for (const cell of was.cells)
    if (!later.has(cell))
      yield { part: comparisonOf(cell).part, label: calledOf(cell), was: comparisonOf(cell).summary(before, cell) }
  const order = was.cells.flatMap((cell) => later.get(cell) ?? [])
  const now = is.cells.filter((cell) => earlier.has(cell))
  if (order.some((cell, at) => cell !== now[at]))
    yield { part: 'cells', label: words.orderLabel, was: words.orderThen, is: words.orderNow }
}

/** What differs between two states of a sheet, in the order of its parts. */
export function compare(before: Sheet, after: Sheet): readonly Difference[] {
  const found = [...differencesOf(before, after)]
  return PARTS.flatMap((part) => found.filter((one) => one.part === part))
}
