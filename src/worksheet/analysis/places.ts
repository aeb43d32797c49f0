import { labelOf } from '../document/label.ts'
import { entryFilledAs, filledAs } from '../kinds/filled-in.ts'
import type { Cell, Given, Result, Steps, TableCell } from '../schema/document.ts'
import { placeWords as words } from './words.ts'

/** A place in a cell that is filled in at work, with its text and how it takes another cell's. */
export interface Place<C extends Cell = Cell> {
  readonly key: string
  readonly label: string
  readonly text: string
  take(into: C, from: C): C
}

const given = (cell: Given): Place<Given>[] => [
  { key: 'value', label: labelOf(cell), text: cell.value, take: filledAs },
]

const result = (cell: Result): Place<Result>[] => [
  { key: 'measured', label: words.measuredOf(labelOf(cell)), text: cell.measured ?? '', take: filledAs },
]

const steps = (cell: Steps): Place<Steps>[] =>
  cell.steps.map((step, at) => ({
    key: `step ${at} ${step.text}`,
    label: words.step(at + 1, step.text),
    text: step.done ? words.ticked : step.taken ? words.framesTaken(step.taken) : words.notTicked,
    take: (into, from) => ({
      ...into,
      steps: into.steps.map((one, i) => (i === at ? entryFilledAs(one, from.steps[at] ?? one, 'steps', 'steps') : one)),
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
              label: words.field(labelOf(cell), at + 1, column.label || column.name),
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

/** The places of a cell that are filled in at work. */
export function placesOf(cell: Cell): Place[] {
  if (cell.kind === 'given') return given(cell) as Place[]
  if (cell.kind === 'result') return result(cell) as Place[]
  if (cell.kind === 'steps') return steps(cell) as Place[]
  return cell.kind === 'table' ? (table(cell) as Place[]) : []
}
