import { describe, expect, it } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import type { LampNumbers } from '../../../src/functions/lamps/light-field.ts'
import { list, number, type Type } from '../../../src/language/index.ts'
import { ILLUMINANCE, LENGTH, NONE, STOP } from '../../../src/units/index.ts'
import { advice, call, formula } from '../call.ts'

const DEGREE = Math.PI / 180
const record = (name: string) => {
  const found = LIBRARY.get(name)
  if (!found) throw new Error(name)
  return found
}
const forTypes = (name: string, ...types: Type[]) =>
  record(name).computeFor?.(types) as unknown as (...args: unknown[]) => number

describe('a lamp', () => {
  it('is at its distance, elevation and bearing from its aim', () => {
    const { x, y, z } = call<LampNumbers>('lamp_at', 2, 30 * DEGREE, 120 * DEGREE, 0.1, -0.2)
    expect(Math.hypot(x - 0.1, y + 0.2, z)).toBeCloseTo(2, 12)
    expect(Math.asin(z / 2)).toBeCloseTo(30 * DEGREE, 12)
    expect(Math.atan2(y + 0.2, x - 0.1)).toBeCloseTo(120 * DEGREE, 12)
  })

  it('over 45° is warned of', () => {
    expect(advice('lamp_at', 2, 50 * DEGREE, 0)).toContain('45°')
    expect(advice('lamp_at', 2, 45 * DEGREE, 0)).toBeUndefined()
    expect(advice('lamp_elevation', 1.1, 1)).toContain('45°')
  })

  it('read on its axis gives back the candela it was made with', () => {
    expect(
      formula('intensity_from_reading(illuminance_at({lamp(0 m, 0 m, 3 m, intensity: 2500 cd)}), 3 m)'),
    ).toBeCloseTo(2500, 9)
  })

  it('moved for a shift gives that much more light on its axis', () => {
    const d = call('lamp_distance_for_shift', 2, 0.7)
    expect(Math.log2((1 / d ** 2) * 2 ** 2)).toBeCloseTo(0.7, 12)
  })
})

describe('readings over the field', () => {
  it('are compared in stops, as lux or as stops', () => {
    expect(forTypes('evenness_stops', list(number(ILLUMINANCE)))([800, 1000])).toBeCloseTo(Math.log2(1.25), 12)
    expect(forTypes('evenness_stops', list(number(STOP)))([-1, 0.5])).toBe(1.5)
  })

  it('as f-numbers follow the square, and evenness_stops says so', () => {
    const { warn } = record('evenness_stops')
    expect(warn?.([list(number(NONE, 'f-number'))])).toContain('evenness_from_apertures')
    expect(warn?.([list(number(ILLUMINANCE))])).toBeUndefined()
    // Exact thirds: f/8 to f/8 and a third is a third of a stop.
    expect(call('evenness_from_apertures', [8, 8 * 2 ** (1 / 6)])).toBeCloseTo(1 / 3, 12)
  })

  it('with tenths read as a meter shows them', () => {
    const tenths = forTypes('meter_aperture', number(NONE), number(NONE))
    expect(tenths(8, 7)).toBeCloseTo(8 * 2 ** 0.35, 12)
    expect(tenths(8, 0.7)).toBeCloseTo(8 * 2 ** 0.35, 12)
    expect(forTypes('meter_aperture', number(NONE), number(STOP))(8, 0.7)).toBeCloseTo(8 * 2 ** 0.35, 12)
    expect(() => tenths(8, 2.5)).toThrow('whole number from 0 to 9')
    expect(() => forTypes('meter_aperture', number(NONE), number(LENGTH))(8, 2)).toThrow('stops')
  })

  it('may be a hundred thousand', () => {
    const many = Array.from({ length: 100_000 }, (_, i) => 1000 + (i % 7))
    expect(call('evenness_stops', many)).toBeCloseTo(Math.log2(1006 / 1000), 12)
  })

  it('must be there, and above zero', () => {
    expect(() => call('evenness_stops', [])).toThrow('“readings” is empty')
    expect(() => call('evenness_stops', [1, -1])).toThrow('above zero')
  })
})

describe('the two shadows of a peg', () => {
  it('show the stronger lamp, which moved out or turned down by the factors is even', () => {
    // Left lamp 900 cd, right 600 cd, both at 1.5 m; ambient 20 lx. Each shadow is lit by the lamp on its own side.
    const [left, right, ambient] = [900 / 2.25 + 20, 600 / 2.25 + 20, 20]
    const balance = call<{ shift: number; stronger: string; distance_factor: number; power_factor: number }>(
      'shadow_balance',
      left,
      right,
      ambient,
    )
    expect(balance.stronger).toBe('left')
    expect(balance.shift).toBeCloseTo(Math.log2(1.5), 12)
    expect(900 / (1.5 * balance.distance_factor) ** 2).toBeCloseTo(600 / 2.25, 9)
    expect(900 * balance.power_factor).toBeCloseTo(600, 9)
  })

  it('alike are neither’s', () => {
    expect(call<{ stronger: string }>('shadow_balance', 0.3, 0.3, 0).stronger).toBe('neither')
    expect(formula('shadow_balance(300 lx, 300 lx).distance_factor')).toBe(1)
  })
})

describe('a glossy original', () => {
  it('mirrors the edge ray of the lens out to the zone', () => {
    // From the lens at (0, h) to the mirror’s edge, turned by twice the curl, up to the lamp’s height.
    const [w, h, z, curl] = [0.4, 1.5, 0.9, 3 * DEGREE]
    const down = { x: w, z: -h }
    const normal = { x: Math.sin(curl), z: Math.cos(curl) }
    const dot = down.x * normal.x + down.z * normal.z
    const up = { x: down.x - 2 * dot * normal.x, z: down.z - 2 * dot * normal.z }
    expect(call('mirror_zone', w, h, z, curl)).toBeCloseTo(w + (z * up.x) / up.z, 12)
    expect(call('mirror_zone', w, h, z)).toBeCloseTo(w * (1 + z / h), 12)
  })

  it('is hidden from the ceiling by a mask as wide as twice the zone', () => {
    expect(call('mask_size', 0.8, 1.5, 1.2)).toBeCloseTo(2 * call('mirror_zone', 0.4, 1.5, 1.2), 12)
  })
})

describe('flat-field correction', () => {
  it('costs photon noise by the root of its gain', () => {
    expect(call('flat_field_gain', 0.5)).toBeCloseTo(Math.SQRT2, 12)
    expect(call('flat_field_noise', 0.5) ** 2).toBeCloseTo(Math.SQRT2, 12)
    expect(advice('flat_field_gain', 0.5)).toContain('noise')
  })
})

describe('soft boxes', () => {
  it('join with lamps into one list', () => {
    const joined = formula(
      'illuminance_at(all_lamps(softbox(lamp(1 m, 0 m, 1 m), 0.4 m, 0.4 m), softbox(lamp(-1 m, 0 m, 1 m), 0.4 m, 0.4 m)))',
    )
    const one = formula('illuminance_at(softbox(lamp(1 m, 0 m, 1 m), 0.4 m, 0.4 m))')
    expect(joined).toBeCloseTo(2 * (one as number), 9)
  })

  it('need a lamp, and light', () => {
    expect(() => call('illuminance_at', [], 0, 0)).toThrow('“lamps” is empty')
    expect(() => formula('field_evenness({lamp(0 m, 0 m, 1 m, intensity: 0 cd)}, 1 m, 1 m)')).toThrow('no light')
    expect(() => formula('even_area({lamp(1 m, 0 m, 0.1 m, aim_x: 9 m)})')).toThrow('do not light')
  })
})
