import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import type { RangeTable } from '../../../src/worksheet/analysis/followed.ts'
import { rangeTable } from '../../../src/worksheet/analysis/range-table.ts'
import { RangeInputError } from '../../../src/worksheet/analysis/range-values.ts'
import type { Range, Sheet } from '../../../src/worksheet/index.ts'
import { check, given, notifiedBy, result, seen, sheetOf } from '../make.ts'

const range = (more: Partial<Range>): Range => ({ kind: 'range', id: 'r', results: [], ...more }) as Range

const lens = () =>
  sheetOf([
    given('focal', '60 mm', { unit: 'mm', least: '10 mm', most: '400 mm' }),
    given('magnification', '1:4', { unit: '1:' }),
    given('aperture', 'f/8', { unit: 'f/' }),
    given('lens', '60', { unit: 'mm', options: ['35', '55', '60', '90'] }),
    result('extension', 'focal * magnification', { unit: 'mm' }),
    result('shift', 'log2((1 + magnification)^2)'),
    result('effective', 'aperture * (1 + magnification)', { unit: 'f/' }),
    result('inverse', '1 / (focal - 100 mm)'),
    check('short_enough', 'extension <= 30 mm'),
  ])

const table = (sheet: Sheet, more: Partial<Range>): RangeTable => rangeTable(sheet, range(more))
const problemOf = (sheet: Sheet, more: Partial<Range>): string => {
  try {
    table(sheet, more)
  } catch (error) {
    if (error instanceof RangeInputError) return error.message
    throw error
  }
  return ''
}

describe('a range', () => {
  it('follows results over even steps of a given', () => {
    const { shown, followed } = table(lens(), {
      of: 'focal',
      from: '20',
      to: '100 mm',
      count: 4,
      results: ['extension', 'short_enough'],
    })
    expect(shown).toEqual(['20 mm', '40 mm', '60 mm', '80 mm', '100 mm'])
    expect(followed[0]?.shown).toEqual(['5 mm', '10 mm', '15 mm', '20 mm', '25 mm'])
    expect(followed[0]?.figures).toEqual([5, 10, 15, 20, 25].map((one) => expect.closeTo(one, 9)))
    expect(followed[1]?.shown).toEqual(['yes', 'yes', 'yes', 'yes', 'yes'])
  })

  it('marks the present value, and leaves the sheet as it is', () => {
    const sheet = lens()
    const { present, presentAt } = table(sheet, {
      of: 'focal',
      from: '20',
      to: '100',
      count: 4,
      results: ['extension'],
    })
    expect([present, presentAt]).toEqual([expect.closeTo(60, 9), 2])
    expect(seen(sheet, 'extension')).toBe('15 mm')
    expect(
      table(sheet, { of: 'focal', from: '20', to: '90', count: 1, results: ['extension'] }).presentAt,
    ).toBeUndefined()
  })

  it('steps a ratio evenly in the n of 1:n', () => {
    const { values, shown } = table(lens(), {
      of: 'magnification',
      from: '1:2',
      to: '1:10',
      count: 4,
      results: ['shift'],
    })
    expect(shown).toEqual(['1:2', '1:4', '1:6', '1:8', '1:10'])
    expect(values.map(({ text }) => text)).toEqual(['1:2', '1:4', '1:6', '1:8', '1:10'])
  })

  it('steps by stops: factors of √2 in f-numbers, halves and thirds of a stop where asked', () => {
    const whole = table(lens(), { of: 'aperture', from: 'f/4', to: 'f/16', by: 'stops', results: ['effective'] })
    expect(whole.figures.map((one) => Number(one.toFixed(3)))).toEqual([4, 5.657, 8, 11.314, 16])
    expect(whole.byFactors).toBe(true)
    expect(
      table(lens(), { of: 'aperture', from: '4', to: '16', by: 'stops', count: 3, results: ['effective'] }).values,
    ).toHaveLength(13)
  })

  it('steps a figure in stops by differences, from below zero to above', () => {
    const sheet = sheetOf([
      given('shift', '0 stop', { unit: 'stop' }),
      given('light', '10 EV', { unit: 'EV' }),
      result('set_light', 'light - shift', { unit: 'EV' }),
    ])
    const shifts = table(sheet, { of: 'shift', from: '-1 stop', to: '1 stop', by: 'stops', results: ['set_light'] })
    expect(shifts.shown).toEqual(['−1 stop', '0 stop', '1 stop'])
    expect(shifts.byFactors).toBe(false)
    const light = table(sheet, { of: 'light', from: '8', to: '11', by: 'stops', results: ['set_light'] })
    expect(light.figures).toEqual([8, 9, 10, 11])
  })

  it('takes the marks of a lens, or the options the given has', () => {
    const { values } = table(lens(), { of: 'aperture', from: 'f/5.6', to: 'f/11', by: 'marks', results: ['effective'] })
    expect(values.map(({ text }) => text)).toEqual(['f/5.6', 'f/6.3', 'f/7.1', 'f/8', 'f/9', 'f/10', 'f/11'])
    const lenses = table(lens(), { of: 'lens', by: 'marks', results: ['extension'] })
    expect(lenses.shown).toEqual(['35 mm', '55 mm', '60 mm', '90 mm'])
  })

  it('shows a dash where a result does not compute, and goes on', () => {
    const { followed } = table(lens(), {
      of: 'focal',
      from: '50',
      to: '150',
      count: 2,
      results: ['inverse', 'extension'],
    })
    expect(followed[0]?.figures[1]).toBeUndefined()
    expect(followed[0]?.shown[1]).toBe('–')
    expect(followed[1]?.figures.every((one) => one !== undefined)).toBe(true)
  })

  it('says of a measured result that it does not follow', () => {
    const sheet = sheetOf([
      given('a', '1 mm', { unit: 'mm' }),
      result('b', '2 * a', { measured: '5 mm' }),
      result('c', 'a + b'),
    ])
    const { followed } = table(sheet, { of: 'a', from: '1', to: '3', count: 2, results: ['b', 'c'] })
    expect(followed.map(({ measured, shown }) => [measured, shown])).toEqual([
      [true, ['5 mm', '5 mm', '5 mm']],
      [false, ['6 mm', '7 mm', '8 mm']],
    ])
  })

  it('keeps within what the given allows', () => {
    expect(table(lens(), { of: 'focal', from: '0', to: '40', count: 4, results: ['extension'] }).shown[0]).toBe('10 mm')
  })

  it('also follows while the given itself is empty', () => {
    const sheet = sheetOf([given('a', '', { unit: 'mm' }), result('b', '2 * a')])
    const { followed, present } = table(sheet, { of: 'a', from: '1', to: '2', count: 1, results: ['b'] })
    expect(followed[0]?.shown).toEqual(['2 mm', '4 mm'])
    expect(present).toBeUndefined()
  })

  it('says what is missing or wrong, and how to fix it', () => {
    const sheet = lens()
    expect(problemOf(sheet, {})).toContain('Choose the given')
    expect(problemOf(sheet, { of: 'nothing' })).toContain('no cell “nothing”')
    expect(problemOf(sheet, { of: 'extension' })).toContain('not a given')
    expect(problemOf(sheet, { of: 'focal', from: '10', to: '20' })).toContain('Choose the results')
    expect(problemOf(sheet, { of: 'magnification', to: '20', results: ['shift'] })).toContain(
      'Fill in where the range begins',
    )
    expect(problemOf(sheet, { of: 'focal', from: 'x', to: '20', results: ['shift'] })).toContain('cannot be read')
    expect(problemOf(sheet, { of: 'focal', from: '2 s', to: '20', results: ['shift'] })).toContain('This is a time')
    expect(problemOf(sheet, { of: 'focal', from: '500', to: '600', results: ['shift'] })).toContain(
      'No value lies in this range',
    )
    expect(problemOf(sheet, { of: 'focal', from: '10', to: '20', results: ['gone'] })).toContain('no cell “gone”')
    expect(problemOf(sheet, { of: 'focal', by: 'marks', results: ['shift'] })).toContain('options')
  })
})

it('a range is notified of every change, also one its results do not show now', () => {
  const sheet = sheetOf([
    given('a', '1 mm', { unit: 'mm' }),
    given('b', '1 mm', { unit: 'mm' }),
    result('c', 'max(a, b, 10 mm)'),
    range({ of: 'a', from: '1', to: '5', results: ['c'] }),
  ])
  expect(notifiedBy(sheet, () => sheet.apply({ do: 'replace', cell: given('b', '3 mm', { unit: 'mm' }) }))).toContain(
    'r',
  )
})

const UNITS_OF_GIVENS = ['mm', 'm', '', '1:', 'f/', '1/ s', 's', 'stop', 'ppi', '°C', '°', '%', 'K', 'EV', undefined]
/** Ends as a technician types them, and as nobody does: below zero, without limit, too large, too small. */
const END = fc.oneof(
  fc.constantFrom(
    '0',
    '-3',
    '1:4',
    '4:1',
    '0:1',
    'f/8',
    '1/125',
    '1/125 s',
    '60 mm',
    '20 °C',
    '-1 m',
    '100 %',
    '1 stop',
  ),
  fc.constantFrom('1e308', '-1e308', '1e-320', '1:1e308', '1e308:1', 'f/1e308', '0.5 ± 1', 'x', '9'.repeat(300)),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
)

test('over any ends a range has values its given takes, or says what is wrong', () => {
  fc.assert(
    fc.property(
      fc.record({
        unit: fc.constantFrom(...UNITS_OF_GIVENS),
        value: END,
        from: END,
        to: END,
        by: fc.constantFrom<Range['by']>('even steps', 'stops', 'marks'),
        count: fc.integer({ min: 1, max: 40 }),
        options: fc.option(fc.array(END, { maxLength: 3 }), { nil: undefined }),
      }),
      ({ unit, value, options, ...ends }) => {
        const more = { ...(unit === undefined ? {} : { unit }), ...(options ? { options } : {}) }
        const sheet = sheetOf([given('a', value, more), result('b', '2 * a')])
        let values: RangeTable['values'] = []
        try {
          values = table(sheet, { of: 'a', results: ['b'], ...ends }).values
        } catch (error) {
          if (!(error instanceof RangeInputError)) throw error
          expect(error.message).not.toBe('')
          return
        }
        expect(values.length).toBeGreaterThan(0)
        for (const { text, value: read } of values) {
          expect(sheetOf([given('a', text, more)]).outcome('a')).toMatchObject({ state: 'value', value: read })
        }
      },
    ),
    { numRuns: 1500 },
  )
})
