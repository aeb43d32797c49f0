import { LIBRARY } from '../../src/functions/index.ts'
import { FORMAT, type Run, Sheet } from '../../src/worksheet/index.ts'
import { planRun } from '../../src/worksheet/run/plan.ts'
import { runOf } from '../../src/worksheet/run/sheet-run.ts'
import { mapCells, mapRows } from '../worksheet/maps.ts'
import { median, ms, timed } from './measure.ts'

/** Of long lists fewer rounds: a single one takes seconds. */
const ROUNDS: readonly (readonly [count: number, rounds: number])[] = [
  [340, 5],
  [20_000, 3],
  [100_000, 1],
]

/** The run of a list of maps, from the rows of a sheet, and the planner alone. */
export function run(): void {
  for (const [count, rounds] of ROUNDS) {
    const sheet = new Sheet({ format: FORMAT, version: 2, title: '', cells: mapCells(mapRows(count)) }, LIBRARY)
    const cell = sheet.cell('run') as Run
    const { feed, plan } = runOf(sheet, cell)
    if (!feed.rig) throw new Error('The run has no camera.')
    const rig = feed.rig
    const whole = median(Array.from({ length: rounds }, () => timed(() => void runOf(sheet, cell))))
    const alone = median(Array.from({ length: rounds }, () => timed(() => void planRun(feed.list, rig))))
    console.log(
      `The run of ${count} maps in ${plan?.setups.length} set-ups: from the sheet ${ms(whole)}, the planner alone ${ms(alone)}`,
    )
  }
}
