import { type LampNumbers, mapField } from '../../src/functions/lamps/light-field.ts'
import { median, ms, timed } from './measure.ts'

const SIZE = 256
const ROUNDS = 41
const WIDTH = 0.6
const HEIGHT = 0.45

const lampsOf = (beamAngle: number): LampNumbers[] =>
  [0, 1, 2, 3].map((k) => ({
    x: 1.4 * Math.cos(0.8 + (k * Math.PI) / 2),
    y: 1.4 * Math.sin(0.8 + (k * Math.PI) / 2),
    z: 1.3,
    aim_x: 0.05 * k,
    aim_y: -0.02 * k,
    intensity: 1000 + 100 * k,
    beam_angle: beamAngle,
  }))

/** The map as one would write it by hand for this one purpose: typed arrays, nothing looked up inside the loop. */
function byHand(lamps: readonly LampNumbers[], n: number, into: Float64Array): void {
  const places = Float64Array.from(
    lamps.flatMap(({ x, y, z, aim_x, aim_y, intensity }) => {
      const length = Math.hypot(aim_x - x, aim_y - y, z)
      return [x, y, z, (aim_x - x) / length, (aim_y - y) / length, -z / length, intensity]
    }),
  )
  for (let row = 0, at = 0; row < SIZE; row++) {
    const y = HEIGHT * (row / (SIZE - 1) - 0.5)
    for (let column = 0; column < SIZE; column++, at++) {
      const x = WIDTH * (column / (SIZE - 1) - 0.5)
      let sum = 0
      for (let k = 0; k < places.length; k += 7) {
        const dx = x - (places[k] as number)
        const dy = y - (places[k + 1] as number)
        const z = places[k + 2] as number
        const square = dx * dx + dy * dy + z * z
        const d = Math.sqrt(square)
        const cosine =
          (dx * (places[k + 3] as number) + dy * (places[k + 4] as number) - z * (places[k + 5] as number)) / d
        if (cosine > 0) sum += ((places[k + 6] as number) * (n === 1 ? cosine : cosine ** n) * z) / (square * d)
      }
      into[at] = sum
    }
  }
}

function compare(degrees: number): number {
  const beam = (degrees * Math.PI) / 180
  const n = degrees === 120 ? 1 : Math.log(0.5) / Math.log(Math.cos(beam / 2))
  const lamps = lampsOf(beam)
  const ours = new Float64Array(SIZE * SIZE)
  const hand = new Float64Array(SIZE * SIZE)
  const times: { ours: number[]; hand: number[] } = { ours: [], hand: [] }
  for (let round = 0; round < ROUNDS; round++) {
    times.ours.push(timed(() => mapField(lamps, WIDTH, HEIGHT, SIZE, SIZE, ours)))
    times.hand.push(timed(() => byHand(lamps, n, hand)))
  }
  if (ours.some((value, i) => Math.abs(value / (hand[i] as number) - 1) > 1e-9)) throw new Error('The maps differ.')
  const ratio = median(times.ours) / median(times.hand)
  console.log(
    `A map of ${SIZE} × ${SIZE} points, four lamps of ${degrees}°: ${ms(median(times.ours))}, by hand ${ms(median(times.hand))}, ratio ${ratio.toFixed(2)} (wanted: at most 3)`,
  )
  return ratio
}

/** The field of light against a loop written for it: the worse of a plain lamp and one with a narrower beam. */
export const field = (): number => Math.max(compare(120), compare(80))
