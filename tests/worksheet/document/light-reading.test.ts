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

/** A sheet with a light reading of each sort, and the functions that use it with the same constant. */
const metered = (value: string, unit: string, constants: { C?: string; K?: string }, by = '250') =>
  sheetOf([
    given('reading', value, { unit, constants }),
    given('own', by),
    result(
      'there',
      unit === 'cd/m^2' ? 'exposure_value_from_luminance(reading, own)' : 'exposure_value_from_lux(reading, own)',
      {
        unit: 'EV',
      },
    ),
  ])

const figureOf = (sheet: ReturnType<typeof sheetOf>, name: string): number => {
  const outcome = sheet.outcome(sheet.named(name)?.id ?? '')
  if (outcome.state !== 'value') throw new Error(`${name}: ${JSON.stringify(outcome)}`)
  return outcome.value as number
}

describe('a reading of light through the meter’s own constant', () => {
  it('gives the exposure value back, whatever the constant, as the functions of ISO 2720 do', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 18, noNaN: true }),
        fc.integer({ min: 9, max: 600 }),
        fc.constantFrom(['lx', 'C'] as const, ['cd/m^2', 'K'] as const),
        (ev, constant, [unit, sign]) => {
          const typed = Number(ev.toFixed(4))
          const sheet = metered(`${typed} EV`, unit, { [sign]: 'own' }, `${constant}`)
          expect(figureOf(sheet, 'there')).toBeCloseTo(typed, 9)
          // E = C/100 × 2^EV.
          expect(figureOf(sheet, 'reading') / ((constant / 100) * 2 ** typed)).toBeCloseTo(1, 12)
          expect(sheet.outcome('reading')).toMatchObject({ by: `${sign} = ${constant}` })
        },
      ),
    )
  })

  it('follows the constant as it is typed, and the text as it is', () => {
    const sheet = metered('8 EV', 'lx', { C: 'own' })
    const put = (name: string, value: string): void => {
      const cell = sheet.named(name)
      if (cell?.kind === 'given') sheet.apply({ do: 'replace', cell: { ...cell, value } })
    }
    expect(figureOf(sheet, 'reading')).toBeCloseTo(640, 9)
    put('own', '320')
    expect(figureOf(sheet, 'reading')).toBeCloseTo(819.2, 9)
    expect(sheet.outcome('reading')).toMatchObject({ by: 'C = 320', readAs: '819.2 lx' })
    put('reading', '640')
    expect(figureOf(sheet, 'reading')).toBe(640)
    put('own', '250')
    expect(figureOf(sheet, 'reading')).toBe(640)
    put('reading', '9 EV ± 0.1 EV')
    expect(sheet.outcome('reading')).toMatchObject({ value: 1280, by: 'C = 250' })
    put('own', '500')
    const doubled = sheet.outcome('reading')
    expect(doubled.state === 'value' && doubled.tolerance).toBeCloseTo(2560 * Math.LN2 * 0.1, 6)
  })

  it('is held to its range as converted, waits for nothing it does not need, and needs no constant cell', () => {
    const ranged = (most: string, by: string) =>
      sheetOf([given('reading', '8 EV', { unit: 'lx', constants: { C: 'own' }, most }), given('own', by)]).outcome(
        'reading',
      )
    expect(ranged('700 lx', '250')).toMatchObject({ state: 'value' })
    expect(ranged('700 lx', '320')).toMatchObject({
      state: 'error',
      diagnostics: [{ message: expect.stringMatching(/700 lx/) }],
    })
    expect(ranged('1000 lx', '320')).toMatchObject({ state: 'value' })
    // The range fits the converted value, not what it would be with the usual constant.
    expect(
      sheetOf([
        given('reading', '8 EV', { unit: 'lx', constants: { C: 'own' }, least: '700 lx' }),
        given('own', '320'),
      ]).outcome('reading'),
    ).toMatchObject({ state: 'value' })
    expect(
      sheetOf([given('reading', '8 EV', { unit: 'lx', constants: { C: 'gone' } })]).outcome('reading'),
    ).toMatchObject({
      state: 'value',
      by: 'C = 250',
    })
    expect(
      sheetOf([given('reading', '640', { unit: 'lx', constants: { C: 'own' } }), given('own', '')]).outcome('reading'),
    ).toMatchObject({
      value: 640,
    })
  })

  it('says a constant that is computed from the reading itself is a cycle', () => {
    const sheet = sheetOf([
      given('reading', '8 EV', { unit: 'lx', constants: { C: 'own' } }),
      result('own', 'reading / 1 lx'),
    ])
    expect(sheet.outcome('reading').state).toBe('error')
  })

  it('converts each item of a list, from light on the original and off it', () => {
    const sheet = sheetOf([
      given('readings', '8 EV, 650 lx', { unit: 'lx', entry: 'list', constants: { C: 'own' } }),
      given('own', '320'),
      given('values', '819.2 lx, 128 cd/m²', { unit: 'EV', entry: 'list', constants: { C: 'own', K: 'spot' } }),
      given('spot', '12.8'),
    ])
    const list = (name: string) => figureOf(sheet, name) as unknown as number[]
    expect(list('readings').map((one) => Math.round(one * 10) / 10)).toEqual([819.2, 650])
    expect(list('values')[0]).toBeCloseTo(8, 9)
    // L = K/100 × 2^EV.
    expect(list('values')[1]).toBeCloseTo(Math.log2(12800 / 12.8), 9)
    expect(sheet.outcome('values')).toMatchObject({ by: 'C = 320, K = 12.8' })
  })

  it('takes the constant that is there, and the usual one for another that is not', () => {
    const list = (constants: Given['constants'], ...cells: Parameters<typeof sheetOf>[0]) => {
      const sheet = sheetOf([
        given('values', '819.2 lx, 128 cd/m²', { unit: 'EV', entry: 'list', ...(constants ? { constants } : {}) }),
        ...cells,
      ])
      const outcome = sheet.outcome('values')
      return (
        outcome.state === 'value' && [
          (outcome.value as readonly number[]).map((one) => Number(one.toFixed(6))),
          outcome.by,
        ]
      )
    }
    const usual = Number(Math.log2((100 * 819.2) / 250).toFixed(6))
    expect(list({ C: 'own' }, given('own', '320'))).toEqual([[8, 10], 'C = 320, K = 12.5'])
    expect(list({ C: 'own', K: 'gone' }, given('own', '320'))).toEqual([[8, 10], 'C = 320, K = 12.5'])
    expect(list({ K: 'own' }, given('own', '12.8'))).toEqual([
      [usual, Number(Math.log2(1000).toFixed(6))],
      'C = 250, K = 12.8',
    ])
    expect(list({}, given('own', '12.8'))).toEqual([[usual, 10], 'C = 250, K = 12.5'])
  })

  it.each([
    ['a length', given('own', '320 mm')],
    ['a text', given('own', '320', { entry: 'text' })],
    ['an empty cell of no known kind', given('own', '')],
    ['a list', given('own', '320', { entry: 'list', unit: '1' })],
  ])('is read with the usual one where the cell of its own is %s', (_, own) => {
    const sheet = sheetOf([given('reading', '8 EV', { unit: 'lx', constants: { C: 'own' } }), own])
    expect(sheet.outcome('reading')).toMatchObject({ value: 640, by: 'C = 250', readAs: '640 lx' })
  })

  it('waits for a constant that is still to be filled in', () => {
    const sheet = sheetOf([
      given('reading', '8 EV', { unit: 'lx', constants: { C: 'own' } }),
      given('own', '', { unit: '1' }),
    ])
    expect(sheet.outcome('reading')).toEqual({ state: 'waiting', on: ['own'] })
  })

  it('says in the whole of its text that it is out of range', () => {
    const sheet = sheetOf([
      given('reading', '8 EV', { unit: 'lx', constants: { C: 'own' }, most: '700 lx' }),
      given('own', '320'),
    ])
    expect(sheet.outcome('reading')).toMatchObject({ diagnostics: [{ from: 0, to: 4 }] })
  })

  it('converts what was measured for a result as well, and follows as it is typed', () => {
    const sheet = sheetOf([
      given('own', '320', { unit: '1' }),
      result('lit', '600 lx', { unit: 'lx', measured: '8 EV', constants: { C: 'own' } }),
      result('twice', '2 * lit', { unit: 'lx' }),
    ])
    expect(figureOf(sheet, 'twice')).toBeCloseTo(2 * 819.2, 9)
    expect(sheet.outcome('lit')).toMatchObject({ by: 'C = 320', readAs: '819 lx' })
    sheet.apply({ do: 'replace', cell: given('own', '250', { unit: '1' }) })
    expect(figureOf(sheet, 'twice')).toBeCloseTo(2 * 640, 9)
    sheet.apply({ do: 'replace', cell: given('own', '400', { unit: '1' }) })
    expect(figureOf(sheet, 'lit')).toBeCloseTo(1024, 9)
    sheet.apply({ do: 'replace', cell: given('own', '', { unit: '1' }) })
    expect(figureOf(sheet, 'lit')).toBeCloseTo(640, 9)
    sheet.apply({ do: 'remove', id: 'own' })
    expect(figureOf(sheet, 'twice')).toBeCloseTo(2 * 640, 9)
    sheet.apply({
      do: 'replace',
      cell: result('lit', '600 lx', { unit: 'lx', measured: '640', constants: { C: 'own' } }),
    })
    expect(figureOf(sheet, 'lit')).toBe(640)
  })
})
