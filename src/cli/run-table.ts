import type { Original, PlannedSetup, RunPlan, UnreadableOriginal } from '../worksheet/run/plan.ts'
import { meansText } from '../worksheet/run/plan-text.ts'
import { planHeads as heads, no as NO, planStates as states, yes as YES } from './words.ts'

type Field = keyof typeof heads
type Row = Partial<Record<Field, string>>

const FIELDS = Object.keys(heads) as readonly Field[]

const MB = 8e6
const figure = (value: number, digits: number): string => `${Number(value.toFixed(digits))}`

const inOrder = (row: Row): string[] => FIELDS.map((field) => row[field] ?? '')

function plannedRows(setup: PlannedSetup, at: number, remarks: ReadonlyMap<number, string>): string[][] {
  const means = meansText(setup.means)
  const magnification = `${Number((1 / setup.magnification).toPrecision(6))}`
  return setup.originals.map(({ original, tiles, height, frames, time, data, tiled }) =>
    inOrder({
      setUp: `${at + 1}`,
      original: original.title,
      row: `${original.row + 1}`,
      exposure: original.exposure,
      magnification,
      means,
      column: height === undefined ? '' : figure(height * 1e3, 1),
      across: `${tiles.across}`,
      down: `${tiles.down}`,
      turned: tiles.turned ? YES : NO,
      frames: `${frames}`,
      time: figure(time / 60, 3),
      data: figure(data / MB, 1),
      state: original.done ? states.done : states.planned,
      why: [tiled ?? '', remarks.get(original.row) ?? ''].filter(Boolean).join(' '),
    }),
  )
}

const other = ({ row, title }: Original | UnreadableOriginal, state: string, why = ''): string[] =>
  inOrder({ original: title, row: `${row + 1}`, state, why })

/** The plan as a table: every original once, in the order of work, then what is done and what cannot be planned. */
export const tableOf = ({ setups, leftOut, unplanned }: RunPlan, remarks: ReadonlyMap<number, string>): string[][] => [
  FIELDS.map((field) => heads[field]),
  ...setups.flatMap((setup, at) => plannedRows(setup, at, remarks)),
  ...leftOut.map((one) => other(one, states.done, remarks.get(one.row))),
  ...unplanned.map((one) =>
    other(one as UnreadableOriginal, one.done ? states.doneUnplanned : states.notPlanned, one.why),
  ),
]
