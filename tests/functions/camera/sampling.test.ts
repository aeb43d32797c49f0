import { describe, expect, it } from 'vitest'
import { call, MM } from '../call.ts'

const PPI = 1 / 0.0254

describe('sampling', () => {
  it('and the pixels needed are each other’s inverse', () => {
    expect(call('pixels_needed', 0.42, call('sampling', 6000, 0.42))).toBeCloseTo(6000, 9)
  })

  it('carries one line pair on two pixels', () => {
    // A pattern at the limit changes sign from each pixel to the next.
    const limit = call('sampling_limit', 300 * PPI)
    const pixel = 1 / (300 * PPI)
    expect(Math.cos(2 * Math.PI * limit * pixel)).toBeCloseTo(-1, 12)
  })

  it('is spread thinner by enlargement, as if the field were that much larger', () => {
    expect(call('enlargement_sampling', 600 * PPI, 3)).toBeCloseTo(200 * PPI, 9)
  })

  it('at the original is the sensor’s, times the magnification', () => {
    const pitch = call('pixel_pitch', 36 * MM, 7200)
    const m = 0.1
    expect(call('sampling', 7200, call('field_size', 36 * MM, m))).toBeCloseTo(m / pitch, 6)
  })
})

describe('tiles', () => {
  it('are not one more by rounding', () => {
    expect(call('tile_count', 2, 0.9, 0.8)).toBe(12)
    expect(call('tile_count', 0.7, 0.1, 0)).toBe(7)
    expect(call('tile_count', 0.7001, 0.1, 0)).toBe(8)
  })

  it('are the fewest that reach across', () => {
    for (let span = 0.3; span < 3; span += 0.0371)
      for (const overlap of [0, 0.05, 0.2]) {
        const reach = (count: number) => count * (0.45 - overlap) + overlap
        const count = call('tile_count', span, 0.45, overlap)
        expect(reach(count)).toBeGreaterThanOrEqual(span - 1e-9)
        if (count > 1) expect(reach(count - 1)).toBeLessThan(span)
      }
  })

  it('lie flush with both edges, evenly, and overlap at least as asked', () => {
    for (const span of [0.5, 1, 1.37, 2]) {
      const centres = call<number[]>('tile_positions', span, 0.45, 0.1)
      expect(centres).toHaveLength(call('tile_count', span, 0.45, 0.1))
      expect((centres[0] as number) - 0.225).toBeCloseTo(0, 12)
      expect((centres.at(-1) as number) + 0.225).toBeCloseTo(span, 12)
      const steps = centres.slice(1).map((centre, i) => centre - (centres[i] as number))
      for (const step of steps) {
        expect(step).toBeCloseTo(steps[0] as number, 12)
        expect(0.45 - step).toBeGreaterThanOrEqual(0.1 - 1e-9)
      }
    }
  })

  it('are in the middle when there is one', () => {
    expect(call('tile_positions', 0.3, 0.45, 0.1)).toEqual([0.15])
  })

  it('are refused where they never advance, or never end', () => {
    expect(() => call('tile_count', 2, 0.1, 0.1)).toThrow('smaller than the tile')
    expect(() => call('tile_positions', 2, 0.1, 0.2)).toThrow('smaller than the tile')
    expect(() => call('tile_positions', 100, 0.1, 0.0999)).toThrow('a row has')
  })
})
