import { labelOf } from '../document/label.ts'
import { asMade, entryFilledAs, filledAs, without } from '../kinds/filled-in.ts'
import { isSame } from '../schema/content.ts'
import type { Cell, Frame, Given, Result, Steps, TableCell } from '../schema/document.ts'
import { placeWords as words } from './words.ts'

/** A place in a cell that is filled in at work, with its text and how it takes another cell's. */
export interface Place<C extends Cell = Cell> {
  readonly key: string
  readonly label: string
  readonly text: string
  /** What is there, where the text does not say all of it. */
  readonly content?: unknown
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

/** The picture that was measured, with the areas marked on it. */
const frame = (cell: Frame): Place<Frame>[] => {
  const { picture, readings = {}, series, areas } = cell
  return [
    {
      key: 'picture',
      label: words.pictureOf(labelOf(cell)),
      text: picture ? words.areasMeasured(picture.name, Object.keys(readings).length) : '',
      content: picture && { picture: without(picture, ['preview']), readings, series, areas },
      take: (into, from) => {
        const next: Frame = { ...filledAs(into, from), ...(from.areas ? { areas: from.areas } : {}) }
        const preview = next.picture?.preview ?? into.picture?.preview
        const isKnown = preview !== undefined && next.picture?.digest === into.picture?.digest
        return next.picture && isKnown ? { ...next, picture: { ...next.picture, preview } } : next
      },
    },
  ]
}

/** Whether two places hold the same. */
export const holdSame = (a: Place | undefined, b: Place | undefined): boolean =>
  (a?.text ?? '') === (b?.text ?? '') && isSame(a?.content, b?.content)

/** Whether a cell can take what another one holds: a picture needs each area the frame has, as formulas may read any. */
export function canTake(into: Cell, from: Cell): boolean {
  if (into.kind !== 'frame' || from.kind !== 'frame') return into.kind === from.kind
  const theirs = (asMade(from) as Frame).areas ?? []
  return ((asMade(into) as Frame).areas ?? []).every((area) => theirs.some((one) => isSame(one, area)))
}

/** The places of a cell that are filled in at work. */
export function placesOf(cell: Cell): Place[] {
  if (cell.kind === 'given') return given(cell) as Place[]
  if (cell.kind === 'result') return result(cell) as Place[]
  if (cell.kind === 'steps') return steps(cell) as Place[]
  if (cell.kind === 'frame') return frame(cell) as Place[]
  return cell.kind === 'table' ? (table(cell) as Place[]) : []
}
