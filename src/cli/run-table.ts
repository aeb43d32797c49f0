import type { Original, PlannedSetup, RunPlan, UnreadableOriginal } from '../worksheet/run/plan.ts'
import { meansText } from '../worksheet/run/plan-text.ts'

const HEADINGS = [
  'Set-up',
  'Original',
  'Row of the list',
  'Exposure',
  'Magnification [1:]',
  'Means',
  'Column height [mm]',
  'Frames across',
  'Frames down',
  'Frame turned',
  'Frames',
  'Time [min]',
  'Data [MB]',
  'State',
  'Why',
] as const
type Field = (typeof HEADINGS)[number]
type Row = Partial<Record<Field, string>>

const MB = 8e6
const figure = (value: number, digits: number): string => `${Number(value.toFixed(digits))}`

const inOrder = (row: Row): string[] => HEADINGS.map((heading) => row[heading] ?? '')

function plannedRows(setup: PlannedSetup, at: number, remarks: ReadonlyMap<number, string>): string[][] {
  const means = meansText(setup.means)
  const magnification = `${Number((1 / setup.magnification).toPrecision(6))}`
  return setup.originals.map(({ original, tiles, height, frames, time, data, tiled }) =>
    inOrder({
      'Set-up': `${at + 1}`,
      Original: original.title,
      'Row of the list': `${original.row + 1}`,
      Exposure: original.exposure,
      'Magnification [1:]': magnification,
      Means: means,
      'Column height [mm]': height === undefined ? '' : figure(height * 1e3, 1),
      'Frames across': `${tiles.across}`,
      'Frames down': `${tiles.down}`,
      'Frame turned': tiles.turned ? 'yes' : 'no',
      Frames: `${frames}`,
      'Time [min]': figure(time / 60, 3),
      'Data [MB]': figure(data / MB, 1),
      State: original.done ? 'done' : 'planned',
      Why: [tiled ?? '', remarks.get(original.row) ?? ''].filter(Boolean).join(' '),
    }),
  )
}

const other = ({ row, title }: Original | UnreadableOriginal, State: string, Why = ''): string[] =>
  inOrder({ Original: title, 'Row of the list': `${row + 1}`, State, Why })

/** The plan as a table: every original once, in the order of work, then what is done and what cannot be planned. */
export const tableOf = ({ setups, leftOut, unplanned }: RunPlan, remarks: ReadonlyMap<number, string>): string[][] => [
  [...HEADINGS],
  ...setups.flatMap((setup, at) => plannedRows(setup, at, remarks)),
  ...leftOut.map((one) => other(one, 'done', remarks.get(one.row))),
  ...unplanned.map((one) =>
    other(one as UnreadableOriginal, one.done ? 'done, not in the plan' : 'not planned', one.why),
  ),
]
