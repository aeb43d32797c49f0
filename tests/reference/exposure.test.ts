import { describe, expect, it } from 'vitest'
import { call } from '../functions/call.ts'

describe('ISO 2720', () => {
  it('its exposure equations hold for the settings found: N²/t = L S/K = E S/C', () => {
    const [speed, luminance, illuminance] = [400, 37, 900]
    const t = call('time_for', call('exposure_value_from_luminance', luminance), 8, speed)
    expect(64 / t).toBeCloseTo((luminance * speed) / 12.5, 9)
    const n = call('aperture_for', call('exposure_value_from_lux', illuminance, 340), 1 / 50, speed)
    expect(n ** 2 * 50).toBeCloseTo((illuminance * speed) / 340, 9)
  })

  it('EV 15 is f/16 at 1/125 s, and EV 0 f/1 at 1 s (the marks behind an exposure value, looked up)', () => {
    expect(call('exposure_value', call('exact_aperture', 16), call('exact_time', 1 / 125))).toBe(15)
    expect(call('exposure_value', 1, 1)).toBe(0)
  })
})

describe('ISO 517 and ISO 516', () => {
  it('full-stop f-numbers are powers of √2 (looked up: the marked series)', () => {
    const marks = [1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64]
    marks.forEach((mark, k) => {
      expect(call('exact_aperture', mark)).toBeCloseTo(Math.SQRT2 ** k, 10)
      expect(call('nearest_aperture_mark', Math.SQRT2 ** k)).toBe(mark)
    })
  })

  it('full-stop times are powers of 2 (looked up: nominal and precise values)', () => {
    const marks = [1, 2, 4, 8, 15, 30, 60, 125, 250, 500, 1000]
    marks.forEach((mark, k) => {
      expect(call('exact_time', 1 / mark)).toBeCloseTo(2 ** -k, 12)
      expect(call('nearest_time_mark', 2 ** -k)).toBe(1 / mark)
    })
  })
})

describe('exposure up close in print', () => {
  it('life size takes four times the exposure (a close-up handbook, looked up)', () => {
    expect(call('extension_factor', 1)).toBe(4)
  })
})

describe('ISO 1230', () => {
  it('guide number is f-number times distance at ISO 100, and grows as the root of the speed', () => {
    expect(call('guide_aperture', 36, 4.5)).toBeCloseTo(8, 12)
    expect(call('guide_aperture', 36, 4.5, 400)).toBeCloseTo(16, 12)
    expect(call('guide_aperture', 36, 9, 400)).toBeCloseTo(8, 12)
  })
})

describe('filters in print', () => {
  it('density 0.3 is a stop, 0.9 three, within 0.4 % (common practice)', () => {
    expect(call('density_shift', 0.3)).toBeCloseTo(1, 1.9)
    expect(call('density_shift', 0.9)).toBeCloseTo(3, 1.5)
  })
})
