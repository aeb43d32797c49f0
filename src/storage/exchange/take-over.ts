import { labelOf } from '../../worksheet/document/label.ts'
import { isSame } from '../../worksheet/schema/content.ts'
import type { Cell, Given, Result, Steps, TableCell, Worksheet } from '../../worksheet/schema/document.ts'
import { withoutPreviews } from './previews.ts'
import { COPY_WORDS as WORDS } from './words.ts'

/** One measurement or tick that a copy has otherwise than the sheet here. */
export interface Difference {
  /** Names the place: the same in both sheets. */
  readonly key: string
  readonly label: string
  readonly here: string
  readonly there: string
  /** As it was when the copy was made; undefined where that is not known. */
  readonly before: string | undefined
  /** It was changed here as well since then. */
  readonly isClash: boolean
}

/** What a copy brings back. */
export interface Homecoming {
  /** What can be taken over. */
  readonly differences: readonly Difference[]
  /** How many measurements and ticks were changed here alone; they stay. */
  readonly stays: number
  /** How many cells differ in something else; they stay as they are here. */
  readonly others: number
}

/** A place in a cell that is filled in at work, with its text and how it takes another cell's. */
interface Place<C extends Cell = Cell> {
  readonly key: string
  readonly label: string
  readonly text: string
  take(into: C, from: C): C
}

/** What is filled in at work, with what it was measured under and by whom. */
const GIVEN_KEYS = ['value', 'piece', 'from', 'measured_under']
const RESULT_KEYS = ['measured', 'measured_under']
const STEP_KEYS = ['done', 'taken']

const without = (cell: object, keys: readonly string[]): object =>
  Object.fromEntries(Object.entries(cell).filter(([key]) => !keys.includes(key)))

/** Something with some keys of another in the place of its own. */
const withKeysOf = <T extends object>(into: T, from: T, keys: readonly string[]): T =>
  Object.assign(
    without(into, keys),
    Object.fromEntries(Object.entries(from).filter(([key]) => keys.includes(key))),
  ) as T

const given = (cell: Given): Place<Given>[] => [
  { key: 'value', label: labelOf(cell), text: cell.value, take: (into, from) => withKeysOf(into, from, GIVEN_KEYS) },
]

const result = (cell: Result): Place<Result>[] => [
  {
    key: 'measured',
    label: `${labelOf(cell)}, ${WORDS.measured}`,
    text: cell.measured ?? '',
    take: (into, from) => withKeysOf(into, from, RESULT_KEYS),
  },
]

const steps = (cell: Steps): Place<Steps>[] =>
  cell.steps.map((step, at) => ({
    key: `step ${at} ${step.text}`,
    label: WORDS.step(at + 1, step.text),
    text: step.done ? WORDS.ticked : step.taken ? WORDS.framesTaken(step.taken) : WORDS.notTicked,
    take: (into, from) => ({
      ...into,
      steps: into.steps.map((one, i) => (i === at ? withKeysOf(one, from.steps[at] ?? one, STEP_KEYS) : one)),
    }),
  }))

/** The fields of a table that are filled in, and whole rows that were added. */
const table = (cell: TableCell): Place<TableCell>[] =>
  cell.rows.flatMap((row, at) =>
    cell.columns.flatMap((column, c) =>
      column.formula !== undefined
        ? []
        : [
            {
              key: `row ${at} ${column.name}`,
              label: WORDS.field(labelOf(cell), at + 1, column.label || column.name),
              text: row[c] ?? '',
              take: (into: TableCell, from: TableCell): TableCell => {
                const to = into.columns.findIndex(({ name }) => name === column.name)
                const text = from.rows[at]?.[from.columns.findIndex(({ name }) => name === column.name)] ?? ''
                if (to < 0) return into
                const rows = [...into.rows]
                while (rows.length <= at) rows.push(into.columns.map(() => ''))
                rows[at] = into.columns.map((_, i) => (i === to ? text : (rows[at]?.[i] ?? '')))
                return { ...into, rows }
              },
            },
          ],
    ),
  )

function placesOf(cell: Cell): Place[] {
  if (cell.kind === 'given') return given(cell) as Place[]
  if (cell.kind === 'result') return result(cell) as Place[]
  if (cell.kind === 'steps') return steps(cell) as Place[]
  return cell.kind === 'table' ? (table(cell) as Place[]) : []
}

/** The cell without what is filled in at work. */
function asMade(cell: Cell): object {
  if (cell.kind === 'given') return without(cell, GIVEN_KEYS)
  if (cell.kind === 'result') return without(cell, RESULT_KEYS)
  if (cell.kind === 'steps') return { ...cell, steps: cell.steps.map((step) => without(step, STEP_KEYS)) }
  return cell.kind === 'table' ? { ...cell, rows: [] } : cell
}

const byId = (worksheet: Worksheet | undefined): Map<string, Cell> =>
  new Map(worksheet?.cells.map((cell) => [cell.id, cell]))

/** What a copy has otherwise than the sheet here; `before` is the sheet as it was when the copy was made. */
export function homecoming(here: Worksheet, there: Worksheet, before: Worksheet | undefined): Homecoming {
  const differences: Difference[] = []
  const earlier = byId(before)
  const own = byId(withoutPreviews(here))
  const sent = byId(there)
  let stays = 0
  let others = here.cells.filter(({ id }) => !sent.has(id)).length
  for (const theirs of there.cells) {
    const ours = own.get(theirs.id)
    if (ours?.kind !== theirs.kind) {
      others++
      continue
    }
    if (!isSame(asMade(ours), asMade(theirs))) others++
    const old = earlier.get(theirs.id)
    const ourPlaces = new Map(placesOf(ours).map((place) => [place.key, place.text]))
    const oldPlaces =
      old?.kind === theirs.kind ? new Map(placesOf(old).map((place) => [place.key, place.text])) : undefined
    for (const { key, label, text } of placesOf(theirs)) {
      // A step with another text is another step; a row that is not here is one that was added.
      if (!ourPlaces.has(key) && theirs.kind === 'steps') continue
      const now = ourPlaces.get(key) ?? ''
      if (now === text) continue
      const was = oldPlaces && (oldPlaces.get(key) ?? '')
      if (was === text) stays++
      else
        differences.push({
          key: `${theirs.id} ${key}`,
          label,
          here: now,
          there: text,
          before: was,
          isClash: was !== undefined && was !== now,
        })
    }
  }
  return { differences, stays, others }
}

/** The sheet here with the measurements and ticks of a copy in the places chosen by their keys. */
export function takenOver(here: Worksheet, there: Worksheet, keys: ReadonlySet<string>): Worksheet {
  const theirs = byId(there)
  const cells = here.cells.map((cell) => {
    const from = theirs.get(cell.id)
    if (from?.kind !== cell.kind) return cell
    return placesOf(from)
      .filter(({ key }) => keys.has(`${cell.id} ${key}`))
      .reduce((into, place) => place.take(into, from), cell)
  })
  return { ...here, cells }
}
