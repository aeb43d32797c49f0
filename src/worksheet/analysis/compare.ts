import { labelOf, titleOf } from '../document/label.ts'
import { isNamed } from '../document/names.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { CheckOutcome, Outcome } from '../engine/outcome.ts'
import type { Cell, Given, Worksheet } from '../schema/document.ts'

/** What kind of thing differs, in the order it is listed. */
export const PARTS = [
  'Title and job',
  'Givens',
  'Results',
  'Checks',
  'Formulas',
  'Tables',
  'Notes and drawings',
  'Cells',
] as const
export type Part = (typeof PARTS)[number]

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

const calledOf = (cell: Cell): string => {
  if (cell.kind === 'note') return cell.role === 'heading' ? 'Heading' : cell.role === 'caution' ? 'Caution' : 'Note'
  return isNamed(cell) ? labelOf(cell) : titleOf(cell)
}

const outcomeText = (outcome: Outcome): string => {
  if (outcome.state === 'value') return outcome.shown.text
  return outcome.state === 'waiting' ? 'waits for givens' : 'cannot be computed'
}

const STATE_TEXT: Readonly<Record<CheckOutcome['state'], string>> = {
  pass: 'passes',
  marginal: 'marginal',
  fail: 'fails',
  waiting: 'waits for givens',
  error: 'cannot be computed',
}

const filled = (value: string): string => (value.trim() === '' ? 'empty' : value)

/** A given as it was understood, unit and all; as typed where it was not. */
function readAs(sheet: Sheet, { id, value }: Given): string {
  const outcome = sheet.outcome(id)
  return outcome.state === 'value' ? outcome.shown.text : filled(value)
}

/** What a cell is called and says in short, where it comes or goes as a whole. */
function summary(sheet: Sheet, cell: Cell): string {
  if (cell.kind === 'given') return readAs(sheet, cell)
  if (cell.kind === 'result') return outcomeText(sheet.outcome(cell.id))
  if (cell.kind === 'check') return STATE_TEXT[sheet.check(cell.id).state]
  return cell.kind === 'note' ? shortened(cell.text) : calledOf(cell)
}

const PART_OF: Readonly<Record<Cell['kind'], Part>> = {
  given: 'Givens',
  result: 'Results',
  check: 'Checks',
  note: 'Notes and drawings',
  drawing: 'Notes and drawings',
  steps: 'Notes and drawings',
  table: 'Tables',
  range: 'Tables',
  variants: 'Tables',
  run: 'Tables',
  frame: 'Notes and drawings',
  function: 'Formulas',
}

/** The keys of a cell compared one by one below; the others count together as how the cell is set up. */
const COMPARED_ALONE = new Set(['id', 'value', 'formula', 'condition', 'text'])
const setUp = (cell: Cell): string =>
  JSON.stringify(
    Object.entries(cell)
      .filter(([key]) => !COMPARED_ALONE.has(key))
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  )

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
  const part = PART_OF[is.kind]
  if (was.kind === 'given' && is.kind === 'given' && was.value !== is.value) {
    const [then, now] = [readAs(before, was), readAs(after, is)]
    // Where both are read as the same, the difference is in how it was typed.
    yield then === now
      ? { part, label, was: filled(was.value), is: filled(is.value) }
      : { part, label, was: then, is: now }
  }
  if (was.kind === 'result' && is.kind === 'result') {
    if (was.formula !== is.formula) yield { part: 'Formulas', label, was: was.formula, is: is.formula }
    const [then, now] = [outcomeText(before.outcome(was.id)), outcomeText(after.outcome(is.id))]
    if (then !== now) yield { part, label, was: then, is: now }
  }
  if (was.kind === 'check' && is.kind === 'check') {
    if (was.condition !== is.condition) yield { part: 'Formulas', label, was: was.condition, is: is.condition }
    const [then, now] = [STATE_TEXT[before.check(was.id).state], STATE_TEXT[after.check(is.id).state]]
    if (then !== now) yield { part, label, was: then, is: now }
  }
  if (was.kind === 'note' && is.kind === 'note' && was.text !== is.text)
    yield { part, label, was: shortened(filled(was.text)), is: shortened(filled(is.text)) }
  if (calledOf(was) !== label) yield { part: 'Cells', label, was: `called ${calledOf(was)}`, is: `called ${label}` }
  else if (setUp(was) !== setUp(is)) yield { part: 'Cells', label, was: 'set up in one way', is: 'set up in another' }
}

function* differencesOf(before: Sheet, after: Sheet): Generator<Difference> {
  const [was, is] = [before.worksheet, after.worksheet]
  const called = (title: string) => title || 'Untitled worksheet'
  if (was.title !== is.title)
    yield { part: 'Title and job', label: 'Title', was: called(was.title), is: called(is.title) }
  if ((was.job ?? '') !== (is.job ?? ''))
    yield { part: 'Title and job', label: 'Job', was: filled(was.job ?? ''), is: filled(is.job ?? '') }
  const later = counterparts(was, is)
  const earlier = new Map([...later].map(([a, b]) => [b, a]))
  for (const cell of is.cells) {
    const old = earlier.get(cell)
    if (old) yield* ofCell(before, old, after, cell)
    else yield { part: PART_OF[cell.kind], label: calledOf(cell), is: summary(after, cell) }
  }
  for (const cell of was.cells)
    if (!later.has(cell)) yield { part: PART_OF[cell.kind], label: calledOf(cell), was: summary(before, cell) }
  const order = was.cells.flatMap((cell) => later.get(cell) ?? [])
  const now = is.cells.filter((cell) => earlier.has(cell))
  if (order.some((cell, at) => cell !== now[at]))
    yield { part: 'Cells', label: 'Order', was: 'in one order', is: 'in another' }
}

/** What differs between two states of a sheet, in the order of its parts. */
export function compare(before: Sheet, after: Sheet): readonly Difference[] {
  const found = [...differencesOf(before, after)]
  return PARTS.flatMap((part) => found.filter((one) => one.part === part))
}
