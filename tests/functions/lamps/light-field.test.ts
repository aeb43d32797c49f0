import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  diffuserPoints,
  evennessOf,
  illuminanceAt,
  type LampNumbers,
  mapField,
  spreadPower,
} from '../../../src/functions/lamps/light-field.ts'
import { evenWidth } from '../../../src/functions/light/even-width.ts'

const DEGREE = Math.PI / 180
const lamp = (more: Partial<LampNumbers> = {}): LampNumbers => ({
  x: 0,
  y: 0,
  z: 1,
  aim_x: 0,
  aim_y: 0,
  intensity: 1000,
  beam_angle: 120 * DEGREE,
  ...more,
})

/** The same sum written out from angles, as one would by hand. */
function byHand(lamps: readonly LampNumbers[], x: number, y: number): number {
  return lamps.reduce((sum, { x: lx, y: ly, z, aim_x, aim_y, intensity, beam_angle }) => {
    const ray = [x - lx, y - ly, -z]
    const axis = [aim_x - lx, aim_y - ly, -z]
    const d = Math.hypot(...ray)
    const dot = ray.reduce((total, part, i) => total + part * (axis[i] as number), 0)
    const theta = Math.acos(Math.min(1, dot / d / Math.hypot(...axis)))
    if (theta >= Math.PI / 2) return sum
    const n = Math.log(0.5) / Math.log(Math.cos(beam_angle / 2))
    return sum + (intensity * Math.cos(theta) ** n * (z / d)) / d ** 2
  }, 0)
}

const someLamp = fc.record({
  x: fc.double({ min: -3, max: 3, noNaN: true }),
  y: fc.double({ min: -3, max: 3, noNaN: true }),
  z: fc.double({ min: 0.1, max: 3, noNaN: true }),
  aim_x: fc.double({ min: -1, max: 1, noNaN: true }),
  aim_y: fc.double({ min: -1, max: 1, noNaN: true }),
  intensity: fc.double({ min: 1, max: 1e5, noNaN: true }),
  beam_angle: fc.double({ min: 10 * DEGREE, max: 175 * DEGREE, noNaN: true }),
})
const coordinate = fc.double({ min: -1, max: 1, noNaN: true })

describe('the field of point lamps', () => {
  it('is the point-by-point sum, whatever the lamps', () => {
    fc.assert(
      fc.property(fc.array(someLamp, { minLength: 1, maxLength: 4 }), coordinate, coordinate, (lamps, x, y) => {
        const expected = byHand(lamps, x, y)
        expect(Math.abs(illuminanceAt(lamps, x, y) - expected)).toBeLessThanOrEqual(1e-9 * expected + 1e-12)
      }),
      { seed: 7 },
    )
  })

  it('falls to half its intensity at half the beam angle', () => {
    for (const beam of [20, 60, 90, 120, 150]) {
      const run = Math.tan((beam / 2) * DEGREE)
      const bare = 1000 / (1 + run ** 2) ** 1.5
      expect(illuminanceAt([lamp({ beam_angle: beam * DEGREE })], run, 0)).toBeCloseTo(bare / 2, 8)
    }
  })

  it('maps onto a grid the values that hold point by point, row by row from the lower left', () => {
    const lamps = [
      lamp({ x: 1, y: 0.3, aim_x: -0.2 }),
      lamp({ x: -1.2, z: 0.8, beam_angle: 70 * DEGREE }),
      lamp({ x: 0.2, z: 0.2, aim_x: 4 }),
    ]
    const map = mapField(lamps, 0.6, 0.4, 7, 5)
    for (let row = 0; row < 5; row++)
      for (let column = 0; column < 7; column++)
        expect(map[row * 7 + column]).toBeCloseTo(illuminanceAt(lamps, -0.3 + column * 0.1, -0.2 + row * 0.1), 9)
  })

  it('leaves dark what lies behind a lamp', () => {
    const grazing = lamp({ x: 0, z: 0.1, aim_x: 5 })
    expect(illuminanceAt([grazing], -1, 0)).toBe(0)
    expect(evennessOf([grazing], 2, 1).spread).toBe(Number.POSITIVE_INFINITY)
  })
})

describe('spread power', () => {
  it('is exactly one for a diffuser’s 120° and two for 90°', () => {
    expect(spreadPower(120 * DEGREE)).toBe(1)
    expect(spreadPower(90 * DEGREE)).toBe(2)
  })
})

describe('evenness', () => {
  it('finds the extremes and the mean of one lamp overhead', () => {
    // E = 1000/(1 + r²)²; its mean over the square by a fine midpoint sum.
    const cells = 400
    let mean = 0
    for (let i = 0; i < cells; i++)
      for (let j = 0; j < cells; j++) {
        const x = -1 + (2 * (i + 0.5)) / cells
        const y = -1 + (2 * (j + 0.5)) / cells
        mean += 1000 / (1 + x * x + y * y) ** 2 / cells ** 2
      }
    const found = evennessOf([lamp()], 2, 2)
    expect(found.greatest).toBeCloseTo(1000, 9)
    expect(found.least).toBeCloseTo(1000 / 9, 9)
    expect(found.mean / mean).toBeCloseTo(1, 5)
    expect(found.uniformity).toBeCloseTo(1000 / 9 / mean, 4)
    expect(found.plus_minus).toBeCloseTo(0.8, 12)
  })

  it('does not miss the spot of a lamp close above a wide field', () => {
    const peak = evennessOf([lamp({ x: 0.137, z: 0.1, aim_x: 0.137 })], 2, 2).greatest
    expect(peak / (1000 / 0.01)).toBeGreaterThan(0.97)
  })

  it('grows the even area until its corner spends the limit', () => {
    const width = evenWidth([lamp()], 0.5, 2)
    // log2 (1 + r²)² = 0.5 at the corner.
    expect(Math.hypot(width / 2, width / 4)).toBeCloseTo(Math.sqrt(2 ** 0.25 - 1), 5)
  })

  it('finds an area that passes, and none larger does, wherever the lamps are', () => {
    const limits = fc.double({ min: 0.01, max: 3, noNaN: true })
    const ratios = fc.double({ min: 0.3, max: 3, noNaN: true })
    fc.assert(
      fc.property(fc.array(someLamp, { minLength: 1, maxLength: 4 }), limits, ratios, (lamps, limit, ratio) => {
        const width = evenWidth(lamps, limit, ratio)
        const spread = (share: number) => evennessOf(lamps, share * width, (share * width) / ratio).spread
        if (width > 1e-6) expect(spread(1)).toBeLessThanOrEqual(limit)
        // Samples lie closer or wider with the width, so that a field barely larger may miss what a smaller one has.
        expect(spread(1.001)).toBeGreaterThan(limit)
      }),
    )
  })
})

describe('a diffuser', () => {
  const tilted = lamp({ x: 1, y: -0.5, z: 1.2, aim_x: 0.1, aim_y: 0.2 })
  const points = diffuserPoints(tilted, 0.6, 0.4, 4)

  it('shares the lamp’s intensity and keeps its middle', () => {
    const mean = (part: 'x' | 'y' | 'z') => points.reduce((sum, point) => sum + point[part], 0) / points.length
    expect(points.reduce((sum, { intensity }) => sum + intensity, 0)).toBeCloseTo(1000, 9)
    expect([mean('x'), mean('y'), mean('z')].map((value) => +value.toFixed(12))).toEqual([1, -0.5, 1.2])
  })

  it('is flat, square to the axis, of the size asked, its width level, its axes parallel', () => {
    const axis = [tilted.aim_x - tilted.x, tilted.aim_y - tilted.y, -tilted.z]
    for (const point of points) {
      const from = [point.x - tilted.x, point.y - tilted.y, point.z - tilted.z]
      expect(from.reduce((sum, part, i) => sum + part * (axis[i] as number), 0)).toBeCloseTo(0, 12)
      const own = [point.aim_x - point.x, point.aim_y - point.y, -point.z]
      const ratios = own.map((part, i) => part / (axis[i] as number))
      expect(ratios[0]).toBeCloseTo(ratios[2] as number, 12)
      expect(ratios[1]).toBeCloseTo(ratios[2] as number, 12)
    }
    const [first, second] = points as [LampNumbers, LampNumbers]
    expect(first.z).toBeCloseTo(second.z, 12)
    expect(Math.hypot(second.x - first.x, second.y - first.y)).toBeCloseTo(0.6 / 4, 12)
    const below = points[4] as LampNumbers
    expect(Math.hypot(below.x - first.x, below.y - first.y, below.z - first.z)).toBeCloseTo(0.4 / 4, 12)
  })
})
