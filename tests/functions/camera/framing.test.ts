import { describe, expect, it } from 'vitest'
import { call, MM } from '../call.ts'

const LENSES = [35, 60, 105].map((f) => f * MM)
const MAGNIFICATIONS = [0.02, 0.1, 0.25, 0.7, 1]
const PUPILS = [0.6, 1, 1.7]

describe('distances of a lens', () => {
  it('satisfy the lens equation', () => {
    for (const f of LENSES)
      for (const m of MAGNIFICATIONS) {
        const u = call('lens_to_original', f, m)
        const v = call('lens_to_sensor', f, m)
        expect(1 / u + 1 / v).toBeCloseTo(1 / f, 9)
        expect(v / u).toBeCloseTo(m, 12)
        expect(call('original_to_sensor', f, m, 4 * MM)).toBeCloseTo(u + v + 4 * MM, 12)
        expect(call('magnification_at', f, u)).toBeCloseTo(m, 12)
      }
  })

  it('are found back from the column', () => {
    for (const f of LENSES)
      for (const m of MAGNIFICATIONS)
        for (const gap of [-10 * MM, 0, 12 * MM]) {
          const track = call('original_to_sensor', f, m, gap)
          // At life size the distance is stationary, so half the digits are lost.
          expect(call('magnification_from_track', f, track, gap)).toBeCloseTo(m, m === 1 ? 6 : 10)
        }
  })

  it('keep their digits where the camera is far off', () => {
    expect(call('magnification_from_track', 50 * MM, 5000) / ((50 * MM) / 5000)).toBeCloseTo(1, 4)
  })

  it('are shortest at life size', () => {
    const at = (m: number) => call('original_to_sensor', 60 * MM, m)
    expect(at(1)).toBeCloseTo(240 * MM, 12)
    expect(at(0.99)).toBeGreaterThan(at(1))
    expect(at(1.01)).toBeGreaterThan(at(1))
  })

  it('are refused where no image can form', () => {
    expect(() => call('magnification_from_track', 60 * MM, 239 * MM)).toThrow('240 mm')
    expect(() => call('magnification_at', 60 * MM, 59 * MM)).toThrow('no real image')
    expect(() => call('clear_distance', 60 * MM, 1, 121 * MM)).toThrow('1 mm')
  })
})

describe('distances of perspective', () => {
  it('are the pupils’ own places by the lens equation', () => {
    for (const f of LENSES)
      for (const m of MAGNIFICATIONS)
        for (const p of PUPILS) {
          // A pupil pair is an object and its upright image: m = −p in 1/u + 1/v = 1/f.
          const entranceInFront = f * (1 - 1 / p)
          const exitBehind = f * (1 - p)
          expect(call('entrance_distance', f, m, p)).toBeCloseTo(call('lens_to_original', f, m) - entranceInFront, 12)
          expect(call('exit_pupil_distance', f, m, p)).toBeCloseTo(call('lens_to_sensor', f, m) - exitBehind, 12)
        }
  })

  it('show a size on the sensor under the angle of the original', () => {
    for (const p of PUPILS) {
      const onSensor = (10 * MM) / call('exit_distance', 60 * MM, 0.25, p)
      const onOriginal = (40 * MM) / call('entrance_distance', 60 * MM, 0.25, p)
      expect(onSensor).toBeCloseTo(onOriginal, 12)
    }
  })

  it('make a raised part larger by the nearer distance', () => {
    const u = call('entrance_distance', 60 * MM, 0.25)
    expect(call('scale_change', 10 * MM, u)).toBeCloseTo(u / (u - 10 * MM), 12)
    expect(call('scale_change', 0, u)).toBe(1)
    expect(() => call('scale_change', u, u)).toThrow('entrance pupil')
  })
})

describe('fit_magnification', () => {
  it('fills one side of the sensor and overfills none', () => {
    for (const [w, h] of [
      [0.6, 0.45],
      [0.45, 0.6],
      [0.2, 0.9],
    ] as const) {
      const m = call('fit_magnification', w, h, 36 * MM, 24 * MM, 5 * MM, false)
      const sides = [((w + 10 * MM) * m) / (36 * MM), ((h + 10 * MM) * m) / (24 * MM)]
      expect(Math.max(...sides)).toBeCloseTo(1, 12)
    }
  })

  it('turns the original where that is larger, and only then', () => {
    const lying = call('fit_magnification', 0.6, 0.4, 36 * MM, 24 * MM)
    const upright = call('fit_magnification', 0.4, 0.6, 36 * MM, 24 * MM)
    expect(upright).toBe(lying)
    expect(call('fit_magnification', 0.4, 0.6, 36 * MM, 24 * MM, 0, false)).toBeLessThan(lying)
  })
})

describe('measuring a lens', () => {
  it('finds the focal length from two frames of a rule', () => {
    const f = 58 * MM
    const field = (u: number) => (36 * MM) / call('magnification_at', f, u)
    expect(call('focal_from_fields', field(1.3), field(0.8), 0.5, 36 * MM)).toBeCloseTo(f, 12)
  })

  it('takes an equivalent on the equivalent’s own sensor as it is', () => {
    expect(call('focal_from_equivalent', 50 * MM, Math.hypot(36, 24) * MM)).toBeCloseTo(50 * MM, 5)
  })

  it('scales a rule up to the whole frame', () => {
    expect(call('field_from_ruler', 0.3, 4000, 8000)).toBeCloseTo(0.6, 12)
  })

  it('adds up the column', () => {
    expect(call('column_height', 0.375, -0.05, 0.012)).toBeCloseTo(0.337, 12)
    expect(() => call('column_height', 0.375, -0.5)).toThrow('125 mm')
  })
})
