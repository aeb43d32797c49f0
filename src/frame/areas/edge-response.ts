import type { EdgeProfile } from './edge-profile.ts'

/** Pairs of a frequency, cycles/px, and the response there. */
export type Response = readonly (readonly [number, number])[]

/** The share of the window on either side of the middle that is flat. */
const FLAT = 0.6
const FREQUENCIES = Array.from({ length: 101 }, (_, i) => i / 100)

/** The modulus of the Fourier transform of the profile’s derivative, 1 at 0, freed of what derivative and bins take away. */
export function responseOf({ values, step, scatter }: EdgeProfile): Response {
  const changes = Float64Array.from(
    { length: values.length - 1 },
    (_, i) => (values[i + 1] as number) - (values[i] as number),
  )
  const middle = (changes.length - 1) / 2
  const windowed = changes.map((change, i) => change * taper(Math.abs(i - middle) / (middle + 0.5)))
  const at = (frequency: number): number => {
    let [real, imaginary] = [0, 0]
    for (let i = 0; i < windowed.length; i++) {
      const phase = 2 * Math.PI * frequency * step * (i - middle)
      real += (windowed[i] as number) * Math.cos(phase)
      imaginary += (windowed[i] as number) * Math.sin(phase)
    }
    return Math.hypot(real, imaginary)
  }
  const whole = at(0)
  return FREQUENCIES.map((frequency) => [
    frequency,
    frequency === 0 ? 1 : at(frequency) / whole / lost(frequency, step, scatter),
  ])
}

const taper = (place: number): number =>
  place <= FLAT ? 1 : (1 + Math.cos((Math.PI * (place - FLAT)) / (1 - FLAT))) / 2

/** What is left of a frequency by the difference over a step, and by pixels scattered within their bins. */
function lost(frequency: number, step: number, scatter: number): number {
  const x = Math.PI * frequency * step
  return (Math.sin(x) / x) * Math.exp(-2 * Math.PI ** 2 * frequency ** 2 * scatter)
}
