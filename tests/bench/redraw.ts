import { toSvgText } from '../../src/drawings/canvas/tree.ts'
import { drawEvenness } from '../../src/drawings/evenness/evenness.ts'
import { drawSetUp } from '../../src/drawings/set-up/set-up.ts'
import { median, ms, timed } from './measure.ts'

const FRAME = 1000 / 60
const ROUNDS = 41

const pairAt = (out: number) =>
  [-1, 1].map((side) => ({
    x: side * out,
    y: 0,
    z: 0.97,
    aim_x: side * -0.21,
    aim_y: 0,
    intensity: 1000,
    beam_angle: (2 * Math.PI) / 3,
  }))

const SHEET = { original_width: 0.42, original_height: 0.297, limit: 0.1 }
const STAND = { ...SHEET, field_width: 0.476, field_height: 0.317, original_to_sensor: 0.917, lens_to_original: 0.853 }

function report(what: string, draw: (out: number) => unknown): void {
  for (let round = 0; round < ROUNDS; round++) draw(1 + round * 0.002)
  const times = Array.from({ length: ROUNDS }, (_, round) => timed(() => draw(1.1 + round * 0.002)))
  // The slow one in twenty is the one that is seen to stutter.
  const slow = [...times].sort((a, b) => a - b)[Math.floor(0.95 * ROUNDS)] as number
  const share = (time: number) => `${((100 * time) / FRAME).toFixed(0)} %`
  console.log(
    `${what}: ${ms(median(times))}, ${share(median(times))} of a frame of 16.7 ms; the slow one in twenty ${share(slow)}`,
  )
}

/** What dragging a lamp redraws, as a share of the frame it has to come in. */
export function redraw(): void {
  report('The light over an original redrawn at 64 × 64', (out) =>
    toSvgText(drawEvenness({ ...SHEET, lamps: pairAt(out) }, { width: 417, quick: true }).node),
  )
  report('The same, settled', (out) => toSvgText(drawEvenness({ ...SHEET, lamps: pairAt(out) }, { width: 417 }).node))
  report('The set-up redrawn', (out) =>
    toSvgText(drawSetUp({ ...STAND, lamps: pairAt(out) }, { width: 417, quick: true }).node),
  )
}
