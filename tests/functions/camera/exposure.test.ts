import { describe, expect, it } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { number, type Type } from '../../../src/language/index.ts'
import { LIGHT_DOSE, NONE, STOP } from '../../../src/units/index.ts'
import { advice, call, MM } from '../call.ts'

describe('the ledger of stops', () => {
  it('gives back the settings it was made from', () => {
    for (const n of [2.8, 8, 22])
      for (const t of [1 / 500, 1 / 30, 4])
        for (const s of [64, 100, 1600]) {
          const ev = call('exposure_value', n, t, s)
          expect(call('time_for', ev, n, s) / t).toBeCloseTo(1, 12)
          expect(call('aperture_for', ev, t, s) / n).toBeCloseTo(1, 12)
        }
  })

  it('rises by one stop for each doubling of light, and of time cut in half', () => {
    expect(call('exposure_value_from_lux', 2000) - call('exposure_value_from_lux', 1000)).toBeCloseTo(1, 12)
    expect(call('exposure_value', 8, 1 / 60) - call('exposure_value', 8, 1 / 30)).toBeCloseTo(1, 12)
  })

  it('takes a positive shift as more exposure on either ring', () => {
    const ev = call('exposure_value', 8, 1 / 60)
    const shift = 1.7
    expect(call('exposure_value', 8, call('shift_time', 1 / 60, shift))).toBeCloseTo(ev - shift, 12)
    expect(call('exposure_value', call('shift_aperture', 8, shift), 1 / 60)).toBeCloseTo(ev - shift, 12)
  })

  it('adds shifts as factors multiply', () => {
    const all = call('total_shift', [call('filter_shift', 3), call('filter_shift', 5), -1])
    expect(2 ** all).toBeCloseTo(7.5, 12)
    expect(call('total_shift', [])).toBe(0)
  })

  it('meters a grey card of 15.7 % alike by its light and by its luminance', () => {
    const illuminance = 1000
    const reflectance = (Math.PI * 12.5) / 250
    const luminance = (reflectance * illuminance) / Math.PI
    expect(reflectance).toBeCloseTo(0.157, 3)
    expect(call('exposure_value_from_luminance', luminance)).toBeCloseTo(
      call('exposure_value_from_lux', illuminance),
      12,
    )
    const card = call('exposure_value_from_luminance', (0.18 * illuminance) / Math.PI)
    expect(card - call('exposure_value_from_lux', illuminance)).toBeCloseTo(0.197, 3)
  })

  it('advises where a constant is none of a meter’s', () => {
    expect(advice('exposure_value_from_lux', 1000, 250)).toBeUndefined()
    expect(advice('exposure_value_from_lux', 1000, 25)).toContain('240')
    expect(advice('exposure_value_from_luminance', 100, 12.5)).toBeUndefined()
    expect(advice('exposure_value_from_luminance', 100, 125)).toContain('13.4')
  })

  it('opens up when the white page was metered for a grey card', () => {
    expect(call('reflectance_shift', 0.9, 0.18)).toBeCloseTo(Math.log2(5), 12)
  })
})

describe('extension', () => {
  it('thins the light by the square of the aperture at work', () => {
    for (const m of [0, 0.1, 1, 3])
      for (const p of [0.7, 1, 1.5]) {
        const factor = call('extension_factor', m, p)
        expect(factor).toBeCloseTo((call('effective_aperture', 8, m, p) / 8) ** 2, 12)
        expect(2 ** call('extension_shift', m, p)).toBeCloseTo(factor, 12)
      }
  })

  it('is the solid angle of the exit pupil, near and far', () => {
    const [f, n, m, p] = [60 * MM, 8, 0.5, 0.8]
    const pupil = (p * f) / n
    const cone = (magnification: number) => (pupil / call('exit_pupil_distance', f, magnification, p)) ** 2
    expect(call('extension_factor', m, p)).toBeCloseTo(cone(0) / cone(m), 12)
  })
})

describe('filters', () => {
  it('agree whichever way they are marked', () => {
    expect(call('filter_shift', 8)).toBe(3)
    expect(call('transmittance_shift', 1 / 8)).toBe(3)
    expect(call('density_shift', Math.log10(8))).toBeCloseTo(3, 12)
  })

  it('cost two stops as ideal crossed polarisers over a surface that depolarises all', () => {
    expect(call('crossed_polariser_shift')).toBe(2)
    expect(call('crossed_polariser_shift', 0.42, 0.42)).toBeCloseTo(2.503, 3)
    expect(call('crossed_polariser_shift', 0.5, 0.5, 0.5)).toBe(3)
    expect(() => call('crossed_polariser_shift', 0.5, 0.5, 0, 0)).toThrow('no light')
  })

  it('shift mired alike in each direction', () => {
    expect(call('mired_shift', 3200, 5500)).toBeCloseTo(-call('mired_shift', 5500, 3200), 15)
    expect(call('mired', 3200) + call('mired_shift', 3200, 5500)).toBeCloseTo(call('mired', 5500), 15)
  })
})

describe('cover_glass', () => {
  const glass = call<{ nearer: number; shift: number }>('cover_glass', 3 * MM)

  it('brings the original nearer as Snell’s law does for steep rays', () => {
    const angle = 1e-4
    const inside = Math.asin(Math.sin(angle) / 1.52)
    const nearer = 3 * MM * (1 - Math.tan(inside) / Math.tan(angle))
    expect(glass.nearer / nearer).toBeCloseTo(1, 7)
  })

  it('loses about 4.3 % at each of four surfaces', () => {
    const reflected = (0.52 / 2.52) ** 2
    expect(2 ** -glass.shift).toBeCloseTo((1 - reflected) ** 4, 12)
  })

  it('does nothing as air', () => {
    expect(call('cover_glass', 3 * MM, 1)).toEqual({ nearer: 0, shift: 0 })
  })
})

describe('natural_falloff', () => {
  it('is the fourth power of the cosine at which the lens sees the original', () => {
    for (const p of [0.7, 1, 1.4]) {
      const [f, m, r] = [50 * MM, 0.2, 18 * MM]
      const angle = Math.atan(r / m / call('entrance_distance', f, m, p))
      expect(call('natural_falloff', r, call('exit_distance', f, m, p))).toBeCloseTo(
        -4 * Math.log2(Math.cos(angle)),
        12,
      )
    }
  })
})

describe('flash', () => {
  it('needs the aperture at work that its guide number gives', () => {
    const n = call('guide_aperture', 32, 2, 200, 0.5, 0.8)
    expect(call('effective_aperture', n, 0.5, 0.8)).toBeCloseTo((32 / 2) * Math.SQRT2, 12)
  })

  it('doubles its light with its energy', () => {
    expect(call('flash_energy_shift', 150, 600)).toBe(2)
    expect(call('flash_energy_shift', 600, 150)).toBe(-2)
  })

  it('pops as often as the shift takes, not once more by rounding', () => {
    for (let pops = 1; pops <= 1000; pops++) expect(call('flash_pops', Math.log2(pops))).toBe(pops)
    expect(call('flash_pops', Math.log2(5.01))).toBe(6)
    expect(call('flash_pops', -3)).toBe(1)
  })

  it('shows what the room adds', () => {
    const { share, shift } = call<{ share: number; shift: number }>('ambient_share', 10, 80)
    expect(share).toBe(0.125)
    // With the room dark, that shift more exposure gives the same frame.
    expect(70 * 2 ** shift).toBeCloseTo(80, 12)
    expect(call('ambient_share', 0, 80)).toEqual({ share: 0, shift: 0 })
    expect(() => call('ambient_share', 80, 80)).toThrow('adds nothing')
  })

  it('warns where the room is read in f-numbers or stops, which do not add', () => {
    const warning = (type: Type) => LIBRARY.get('ambient_share')?.warn?.([type, type])
    expect(warning(number(NONE, 'f-number'))).toContain('linear')
    expect(warning(number(STOP))).toContain('linear')
    expect(warning(number(LIGHT_DOSE))).toBeUndefined()
  })
})

describe('time', () => {
  it('grows past the film’s threshold without a step', () => {
    expect(call('reciprocity_time', 0.5, 1.3)).toBe(0.5)
    expect(call('reciprocity_time', 1, 1.3)).toBe(1)
    expect(call('reciprocity_time', 8, 1.3, 2)).toBeCloseTo(2 * 4 ** 1.3, 12)
  })

  it('ripples as two frames of a swinging light may differ', () => {
    const [t, f, modulation] = [1 / 60, 100, 0.4]
    const frames = Array.from({ length: 400 }, (_, start) => {
      const steps = 2000
      let light = 0
      for (let i = 0; i < steps; i++)
        light += 1 + modulation * Math.cos(2 * Math.PI * (f * t * ((i + 0.5) / steps) + start / 400))
      return light / steps
    })
    const worst = Math.log2(Math.max(...frames) / Math.min(...frames))
    expect(call('flicker_ripple', t, f, modulation)).toBeCloseTo(worst, 4)
  })

  it('does not ripple over whole periods, and ripples fully in an instant', () => {
    for (const time of call<number[]>('steady_times', 100, 1)) expect(call('flicker_ripple', time, 100, 0.9)).toBe(0)
    for (const time of call<number[]>('steady_times', 120, 1)) expect(call('flicker_ripple', time, 120, 0.9)).toBe(0)
    expect(call('flicker_ripple', 1e-12, 100, 0.5)).toBeCloseTo(Math.log2(3), 9)
  })

  it('lists the steady times up to the longest, that one included', () => {
    expect(call<number[]>('steady_times', 100, 0.3)).toHaveLength(30)
    expect(call<number[]>('steady_times', 120, 0.1)).toHaveLength(12)
    expect(() => call('steady_times', 100, 0.009)).toThrow('1/100 s')
    expect(() => call('steady_times', 25_000, 1)).toThrow('1000')
  })
})
