import { readFileSync } from 'node:fs'
import { readSheetOrJob } from '../../src/cli/part-files.ts'
import { drawEvenness } from '../../src/drawings/evenness/evenness.ts'
import { drawSetUp } from '../../src/drawings/set-up/set-up.ts'
import { LIBRARY } from '../../src/functions/index.ts'
import { type Change, type Drawing, LampDragSolver, Sheet } from '../../src/worksheet/index.ts'
import { median, ms, timed } from './measure.ts'

const FRAME_MS = 16.7
const ROUNDS = 101
const OPTIONS = { width: 417, enlarged: 1.15, quick: true }
const DRAW = { 'set-up': drawSetUp, evenness: drawEvenness } as const

/**
 * One move of a lamp being dragged on the flat sheet, all that happens before the browser lays out: the givens found,
 * the sheet computed, its set-up and the field of its light drawn. As a share of a frame of 60 a second.
 */
export function drag(): number {
  const text = readFileSync(new URL('../../templates/flat-sheet.json', import.meta.url), 'utf8')
  const sheet = new Sheet(readSheetOrJob(text), LIBRARY)
  const drawings = sheet.cells.filter((cell): cell is Drawing => cell.kind === 'drawing' && cell.drawing in DRAW)
  const mover = new LampDragSolver(sheet, drawings.find(({ drawing }) => drawing === 'set-up') as Drawing)
  const steps: number[] = []
  for (let round = 0; round < ROUNDS; round++) {
    const to = { x: 0.9 + 0.003 * (round % 50), z: 0.8 + 0.002 * (round % 70) }
    steps.push(
      timed(() => {
        sheet.apply(mover.to(2, to) as Change, { merge: 'drag' })
        for (const { id, drawing } of drawings) DRAW[drawing as keyof typeof DRAW](sheet.drawing(id).values, OPTIONS)
      }),
    )
  }
  const share = median(steps) / FRAME_MS
  console.log(
    `A lamp dragged on the flat sheet, ${drawings.length} drawings redrawn: ${ms(median(steps))}, ${(100 * share).toFixed(0)} % of a frame (wanted: at most 100)`,
  )
  return share
}
