import { describe, expect, it } from 'vitest'
import { frameReport, openFrame, readAreas } from '../../src/frame/index.ts'
import { gama, type Made, make, png } from './files.ts'

/** The error function to 1.2e-7 (Abramowitz and Stegun’s rational form as in Numerical Recipes, from memory; checked below). */
function erf(x: number): number {
  const t = 1 / (1 + Math.abs(x) / 2)
  const series = [
    1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587, -0.82215223, 0.17087277,
  ]
  const power = series.reduceRight((sum, term) => term + t * sum, 0)
  const y = t * Math.exp(-x * x - 1.26551223 + t * power)
  return x >= 0 ? 1 - y : y - 1
}

interface Drawn {
  readonly degrees: number
  /** Standard deviation of the blur, px; 0 is an ideal edge seen through square pixels. */
  readonly sigma: number
  readonly width?: number
  readonly height?: number
  readonly lying?: boolean
  readonly mirrored?: boolean
  readonly noise?: number
  readonly dark?: number
  readonly bright?: number
}

/** An edge blurred by a Gaussian along its normal, in light. */
function drawn({
  degrees,
  sigma,
  width = 100,
  height = 100,
  lying = false,
  mirrored = false,
  noise = 0,
  dark = 0.1,
  bright = 0.7,
}: Drawn): Made {
  const t = (degrees * Math.PI) / 180
  let state = 7
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return (state + 1) / 4294967297
  }
  return make(width, height, 1, 16, (column, row) => {
    const [x, y] = [column + 0.5 - width / 2 + 0.237, row + 0.5 - height / 2]
    const off = (mirrored ? -1 : 1) * (lying ? y * Math.cos(t) + x * Math.sin(t) : x * Math.cos(t) + y * Math.sin(t))
    const share = (1 + erf(off / sigma / Math.SQRT2)) / 2
    const grain = noise > 0 ? noise * Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random()) : 0
    return 65535 * (dark + (bright - dark) * share + grain)
  })
}

const linear = (made: Made): Uint8Array => png(made, { chunks: [gama(1)] })

interface Edge {
  readonly angle: number
  readonly sfr: [number, number][]
  readonly mtf50: number | null
  readonly mtf10: number | null
  readonly efficiency: number
  readonly greatest: number
  readonly warnings?: string[]
}
function measure(file: Uint8Array, box?: number[]): Edge {
  const frame = openFrame(file)
  const { width, height } = frame.pixels
  const report = frameReport(frame, readAreas([{ kind: 'edge', name: 'a', box: box ?? [0, 0, width, height] }]))
  return (report as unknown as { areas: { a: Edge } }).areas.a
}

/** The Fourier transform of a Gaussian. */
const response = (sigma: number, frequency: number): number => Math.exp(-2 * (Math.PI * sigma * frequency) ** 2)
const falls = (sigma: number, level: number): number => Math.sqrt(Math.log(1 / level) / 2) / (Math.PI * sigma)

describe('a slanted edge', () => {
  it('the tests’ error function is right', () => {
    // DLMF, table 7.23.
    expect(erf(0.5)).toBeCloseTo(0.5204998778, 6)
    expect(erf(1)).toBeCloseTo(0.8427007929, 6)
    expect(erf(-2)).toBeCloseTo(-0.995322265, 6)
  })

  for (const sigma of [0.5, 0.8, 1.5, 3])
    it(`blurred by ${sigma} px gives the transform of its blur at low and high angles`, () => {
      for (const degrees of [1.2, 2, 5, 10, 20, 33, 44])
        for (const lying of [false, true]) {
          const { angle, sfr, mtf50, mtf10, efficiency, greatest } = measure(linear(drawn({ degrees, sigma, lying })))
          const say = `${degrees}°, ${lying ? 'lying' : 'upright'}`
          expect(angle, say).toBeCloseTo(degrees, 2)
          for (const [frequency, value] of sfr)
            if (frequency <= 0.5)
              expect(Math.abs(value - response(sigma, frequency)), `${say} at ${frequency}`).toBeLessThan(0.003)
          expect(Math.abs((mtf50 as number) - falls(sigma, 0.5)), say).toBeLessThan(0.001)
          expect(mtf10, say).toBeCloseTo(falls(sigma, 0.1), 2)
          expect(efficiency).toBeCloseTo(Math.min(1, falls(sigma, 0.1) / 0.5), 2)
          expect(greatest).toBeCloseTo(1, 3)
        }
    })

  it('whose tilt repeats few places, as 1 in 2, 3 or 4 does, is measured within 2 %', () => {
    for (const ratio of [2, 3, 4]) {
      const degrees = (Math.atan(1 / ratio) * 180) / Math.PI
      const { mtf50 } = measure(linear(drawn({ degrees, sigma: 0.8 })))
      expect(Math.abs((mtf50 as number) / falls(0.8, 0.5) - 1)).toBeLessThan(0.02)
    }
  })

  it('is the same whichever side is dark and however strong it is', () => {
    const usual = measure(linear(drawn({ degrees: 5, sigma: 0.8 })))
    for (const other of [
      { mirrored: true },
      { dark: 0.4, bright: 0.5 },
      { dark: 0.02, bright: 0.9 },
      { degrees: -5 },
    ]) {
      const { mtf50, angle } = measure(linear(drawn({ degrees: 5, sigma: 0.8, ...other })))
      expect(mtf50).toBeCloseTo(usual.mtf50 as number, 3)
      expect(angle).toBeCloseTo(5, 2)
    }
  })

  it('lists the response from 0, where it is 1, by hundredths to at least 0.5', () => {
    const { sfr } = measure(linear(drawn({ degrees: 5, sigma: 0.8 })))
    expect(sfr[0]).toEqual([0, 1])
    expect(sfr.slice(0, 51).map(([frequency]) => frequency)).toEqual(Array.from({ length: 51 }, (_, i) => i / 100))
  })

  it('in noise is measured within 3 %', () => {
    for (const degrees of [3, 5, 15]) {
      const { mtf50, angle } = measure(linear(drawn({ degrees, sigma: 0.8, noise: 0.006 })))
      expect(Math.abs((mtf50 as number) / falls(0.8, 0.5) - 1)).toBeLessThan(0.03)
      expect(Math.abs(angle - degrees)).toBeLessThan(0.05)
    }
  })

  it('is measured on linear light: the same edge encoded as sRGB in 16 bits gives the same figures', () => {
    const made = drawn({ degrees: 5, sigma: 0.8 })
    const encode = (light: number): number => (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055)
    const encoded = make(
      made.width,
      made.height,
      3,
      16,
      (x, y) => 65535 * encode((made.samples[y * made.width + x] as number) / 65535),
    )
    expect(measure(png(encoded)).mtf50).toBeCloseTo(measure(linear(made)).mtf50 as number, 4)
  })

  it('of an ideal edge through square pixels gives their response, and null where it never falls so far', () => {
    // The share of each pixel that an edge of 4° covers, by 32 × 32 points.
    const t = (4 * Math.PI) / 180
    const made = make(80, 80, 1, 16, (column, row) => {
      let covered = 0
      for (let i = 0; i < 32; i++)
        for (let j = 0; j < 32; j++)
          if ((column - 40.2 + (i + 0.5) / 32) * Math.cos(t) + (row - 40 + (j + 0.5) / 32) * Math.sin(t) > 0) covered++
      return 65535 * (0.1 + (0.6 * covered) / 1024)
    })
    const { sfr, mtf50, mtf10, efficiency } = measure(linear(made))
    const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x))
    for (const [f, value] of sfr)
      if (f <= 0.5) expect(Math.abs(value - Math.abs(sinc(f * Math.cos(t)) * sinc(f * Math.sin(t))))).toBeLessThan(0.01)
    // sin(πf) = πf/2 at 0.6034.
    expect(mtf50).toBeCloseTo(0.6034, 1)
    expect(mtf10 === null || mtf10 > 0.85).toBe(true)
    expect(efficiency).toBe(1)
  })

  it('that was sharpened says so', () => {
    const soft = drawn({ degrees: 5, sigma: 1, dark: 0.3, bright: 0.6 })
    const at = (x: number, y: number): number => soft.samples[y * 100 + Math.min(99, Math.max(0, x))] as number
    const sharpened = make(100, 100, 1, 16, (x, y) => at(x, y) + 1.2 * (at(x, y) - (at(x - 2, y) + at(x + 2, y)) / 2))
    const { greatest, warnings } = measure(linear(sharpened))
    expect(greatest).toBeGreaterThan(1.1)
    expect(warnings?.[0]).toMatch(/sharpened/)
  })

  it('is refused where there is none, where it is too square, and where it is clipped', () => {
    const refused =
      (made: Made, box?: number[]): (() => Edge) =>
      () =>
        measure(linear(made), box)
    const flat = make(60, 60, 1, 16, () => 30000)
    expect(refused(flat)).toThrow(/no edge in “a”/)
    expect(refused(drawn({ degrees: 5, sigma: 0.8, dark: 0.4, bright: 0.4, noise: 0.02 }))).toThrow(/edge in “a”/)
    expect(refused(make(60, 60, 1, 16, (x, y) => 10000 + 300 * x + 20 * y))).toThrow(/edge in “a”/)
    expect(refused(make(60, 60, 1, 16, (x) => (Math.abs(x - 30) < 5 ? 10000 : 40000)))).toThrow(/edge/)
    expect(refused(drawn({ degrees: 0, sigma: 0.8 }))).toThrow(/too square.*tilt it/)
    expect(refused(drawn({ degrees: 0.3, sigma: 0.8, lying: true }))).toThrow(/too square/)
    expect(refused(drawn({ degrees: 45, sigma: 0.8 }))).toThrow(/repeat/)
    expect(refused(drawn({ degrees: 5, sigma: 0.8, bright: 1.2 }))).toThrow(/clipped.*full scale.*expose less/)
    expect(refused(drawn({ degrees: 5, sigma: 0.8, dark: -0.1 }))).toThrow(/clipped.*black/)
    expect(refused(drawn({ degrees: 5, sigma: 0.8 }), [0, 0, 8, 8])).toThrow(/too small/)
    expect(refused(drawn({ degrees: 5, sigma: 0.8 }), [70, 0, 30, 100])).toThrow(/edge/)
  })
})
