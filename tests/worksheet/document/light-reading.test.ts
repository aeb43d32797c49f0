import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { readGiven } from '../../../src/worksheet/document/read-given.ts'
import type { Given } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../make.ts'

const inUnit = (unit: string, value: string, more: Partial<Given> = {}): Given => ({
  kind: 'given',
  id: 'light',
  name: 'light',
  unit,
  value,
  ...more,
})

describe('a reading of light', () => {
  // ISO 2720:1974: E S/C = N²/t and L S/K = N²/t; at ISO 100, C = 250 and K = 12.5 give E = 2.5 lx × 2^EV and
  // L = 0.125 cd/m² × 2^EV, as tables of exposure values have it: EV 10 is 2560 lx, and 128 cd/m².
  test.each([
    ['lx', '10 EV', 2560, 'C = 250'],
    ['lx', '8 EV', 640, 'C = 250'],
    ['EV', '640 lx', 8, 'C = 250'],
    ['EV', '0.64 klx', 8, 'C = 250'],
    ['cd/m^2', '10 EV', 128, 'K = 12.5'],
    ['EV', '128 cd/m²', 10, 'K = 12.5'],
    ['EV', '128 nit', 10, 'K = 12.5'],
  ])('in a field of %s: %s', (unit, text, value, by) => {
    const read = readGiven(inUnit(unit, text))
    expect(read.error).toBeUndefined()
    expect(read.value).toBeCloseTo(value, 9)
    expect(read.by).toBe(by)
  })

  test.each([
    ['lx', '640'],
    ['lx', '640 lx'],
    ['EV', '12.8'],
    ['EV', '12.8 EV'],
    ['mm', '12 mm'],
    ['stop', '1 stop'],
  ])('is left as it is in a field of %s: %s', (unit, text) => {
    const read = readGiven(inUnit(unit, text))
    expect(read.error).toBeUndefined()
    expect(read.by).toBeUndefined()
  })

  it('comes back the same', () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 20, noNaN: true }), fc.constantFrom('lx', 'cd/m^2'), (ev, unit) => {
        const there = readGiven(inUnit(unit, `${ev.toFixed(6)} EV`)).value as number
        const back = readGiven(inUnit('EV', `${there.toFixed(12)} ${unit === 'lx' ? 'lx' : 'cd/m²'}`)).value
        expect(back).toBeCloseTo(Number(ev.toFixed(6)), 6)
      }),
    )
  })

  it('agrees with the functions of the same standard', () => {
    const sheet = sheetOf([
      given('lit', '12.8 EV', { unit: 'lx' }),
      result('back', 'exposure_value_from_lux(lit)', { unit: 'EV' }),
      given('off', '12.8 EV', { unit: 'cd/m^2' }),
      result('back_off', 'exposure_value_from_luminance(off)', { unit: 'EV' }),
    ])
    for (const name of ['back', 'back_off']) {
      const cell = sheet.named(name)
      const outcome = cell && sheet.outcome(cell.id)
      expect(outcome?.state === 'value' && outcome.value).toBeCloseTo(12.8, 9)
    }
    const lit = sheet.outcome(sheet.named('lit')?.id ?? '')
    expect(lit).toMatchObject({ state: 'value', by: 'C = 250' })
  })

  it('carries its limits, and is held to the range of its field', () => {
    expect(readGiven(inUnit('lx', '10 EV ± 0.1 EV')).tolerance).toBeCloseTo(2560 * Math.LN2 * 0.1, 6)
    expect(readGiven(inUnit('lx', '10 EV', { most: '1000 lx' })).error?.message).toMatch(/at most 1000 lx/)
  })

  it('is refused where light on a surface is asked as light off it', () => {
    expect(readGiven(inUnit('lx', '900 cd/m²')).error?.message).toMatch(/depends on the surface/)
    expect(readGiven(inUnit('cd/m^2', '2430 lx')).error?.message).toMatch(/depends on the surface/)
    expect(readGiven(inUnit('lx', '3 stop')).error).toBeDefined()
    expect(readGiven(inUnit('EV', '0 lx')).error).toBeDefined()
  })

  it('is taken in a list, each by itself', () => {
    const read = readGiven(inUnit('lx', '8 EV, 650 lx, 640', { entry: 'list' }))
    expect(read.error).toBeUndefined()
    expect((read.value as readonly number[]).map((one) => Math.round(one))).toEqual([640, 650, 640])
  })
})
