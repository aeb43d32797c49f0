import type { Contender } from './contender.ts'
import { HandWritten } from './hand-written.ts'
import { Hyperformula } from './hyperformula.ts'
import { MathjsUnits } from './mathjs.ts'
import { heap, median, ms, timed } from './measure.ts'
import { Ours, reachOf } from './ours.ts'

const SIZE = 10_000
const ROUNDS = 7
/** How many edits each makes in a round: the quick ones more, for a steadier median. */
const EDITS = { ours: 12, handWritten: 12, hyperformula: 1, mathjs: 1 }

export interface Ratios {
  readonly mathjs_units: number
  readonly hyperformula: number
  readonly hand_written: number
}

interface Runner {
  readonly contender: Contender
  readonly edits: number
  readonly times: number[]
}

/** A chain of result cells, the first given edited, all recomputed: ours, two peers, and a plain loop. */
export function chain(): Ratios {
  const before = heap()
  const worksheet = new Ours()
  const opened = timed(() => worksheet.prepare(SIZE))
  const memory = heap() - before
  const ours: Runner = { contender: worksheet, edits: EDITS.ours, times: [] }
  const handWritten: Runner = { contender: new HandWritten(), edits: EDITS.handWritten, times: [] }
  const hyperformula: Runner = { contender: new Hyperformula(), edits: EDITS.hyperformula, times: [] }
  const mathjs: Runner = { contender: new MathjsUnits(), edits: EDITS.mathjs, times: [] }
  const runners = [ours, handWritten, hyperformula, mathjs]
  for (const { contender } of runners.slice(1)) contender.prepare(SIZE)

  const reach = checkAll(runners, worksheet)
  for (let round = 0; round < ROUNDS; round++)
    // Each round starts with another, so that none is always the one after the collector's work.
    for (let k = 0; k < runners.length; k++) time(runners[(round + k) % runners.length] as Runner, round)

  console.log(`A chain of ${SIZE} result cells, the given typed into, all recomputed (medians of ${ROUNDS} rounds):`)
  for (const { contender, times } of runners) console.log(`  ${contender.name.padEnd(28)} ${ms(median(times))}`)
  console.log(`  opening the worksheet: ${ms(opened)}; its memory: ${memory.toFixed(0)} MB`)
  console.log(`  typed from one number to another, an edit reaches ${reach} cells: past those nothing changes`)
  const time1 = (runner: Runner): number => median(runner.times)
  return {
    mathjs_units: time1(mathjs) / time1(ours),
    hyperformula: time1(hyperformula) / time1(ours),
    hand_written: time1(ours) / time1(handWritten),
  }
}

function time({ contender, edits, times }: Runner, round: number): void {
  globalThis.gc?.()
  for (let k = 0; k < edits; k++) {
    contender.unset()
    times.push(timed(() => contender.edit(100 + round + k / 10)))
  }
}

/** That all give the same figure, and that ours computes every cell. Also lets each warm up. */
function checkAll(runners: readonly Runner[], worksheet: Ours): number {
  for (const value of [120, 100]) {
    const results = runners.map(({ contender, edits }) => {
      for (let k = 0; k < 3 * edits; k++) {
        contender.unset()
        contender.edit(value + k)
      }
      contender.unset()
      return contender.edit(value)
    })
    const [first] = results as [number]
    if (!results.every((result) => Math.abs(result / first - 1) < 1e-9))
      throw new Error(`The contenders differ: ${results.join(', ')}.`)
  }
  worksheet.unset()
  const all = reachOf(worksheet.sheet, '100 mm')
  if (all !== SIZE + 1) throw new Error(`The edit computed ${all} cells, not all ${SIZE + 1}.`)
  return reachOf(worksheet.sheet, '120 mm')
}
