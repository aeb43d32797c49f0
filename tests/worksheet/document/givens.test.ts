import { describe, expect, it, test } from 'vitest'
import type { Given } from '../../../src/worksheet/index.ts'
import { given, result, seen, sheetOf } from '../make.ts'

const read = (value: string, more: Partial<Given>) => sheetOf([given('x', value, more)]).outcome('x')
const shown = (value: string, more: Partial<Given>) => seen(sheetOf([given('x', value, more)]), 'x')

describe('a given', () => {
  it('takes its unit for a bare number, and says how it was read', () => {
    expect(read('60', { unit: 'mm' })).toMatchObject({ state: 'value', value: 0.06, readAs: '60 mm' })
    expect(read('8', { unit: 'f/' })).toMatchObject({ value: 8, readAs: 'f/8' })
    expect(read('125', { unit: '1/ s' })).toMatchObject({ offers: [{ text: '1/125 s' }] })
  })

  it('is not offered what its range refuses: a frame that takes 40 s is no 1/40 s', () => {
    expect(read('40', { unit: 's', least: '0.1 s' })).toMatchObject({ value: 40, offers: [] })
    expect(read('40', { unit: 's' })).toMatchObject({ value: 40, offers: [{ text: '1/40 s' }] })
  })

  it('understands a decimal comma and shows it back', () => {
    expect(read('1,5', { unit: 'mm' })).toMatchObject({ value: 0.0015, readAs: '1.5 mm' })
  })

  it('takes degrees Celsius', () => {
    expect(read('20 °C', {})).toMatchObject({ value: 293.15 })
  })

  it('keeps its limits of error', () => {
    expect(read('600 mm ± 2 mm', { unit: 'mm' })).toMatchObject({ tolerance: 0.002, shown: { text: '600 ± 2 mm' } })
    expect(read('600 ± 1 %', { unit: 'mm' })).toMatchObject({ tolerance: 0.006 })
  })

  it('in another kind of quantity than its unit is refused', () => {
    expect(shown('5 s', { unit: 'mm' })).toMatch(/error: This is a time; the field takes a length/)
  })

  it('without a unit is of the kind that is typed', () => {
    expect(read('5 s', {})).toMatchObject({ value: 5, type: { kind: 'number' } })
    expect(read('5', {})).toMatchObject({ value: 5 })
  })
})

describe('a list', () => {
  const values = (text: string) => {
    const outcome = read(text, { entry: 'list', unit: 'mm' })
    return outcome.state === 'value' ? (outcome.value as number[]).map((v) => Math.round(v * 1e6) / 1e3) : outcome.state
  }

  test.each([
    ['12, 20, 36', [12, 20, 36]],
    ['12,20,36', [12, 20, 36]],
    ['12; 20; 36', [12, 20, 36]],
    ['12,5; 20', [12.5, 20]],
    ['12,5, 20', [12.5, 20]],
    ['12 mm, 2 cm', [12, 20]],
    ['12', [12]],
    ['12,5', [12.5]],
    ['12, 20,36,40', [12, 20, 36, 40]],
    ['12,20,36, 40', [12, 20, 36, 40]],
    ['12 mm,20 mm', [12, 20]],
    ['12,5 mm, 20,5 mm', [12.5, 20.5]],
    ['12,\n20,\n36', [12, 20, 36]],
    ['12,', [12]],
  ])('%s', (text, expected) => expect(values(text)).toEqual(expected))

  it('of one comma is a decimal comma, and offers the two values that may have been meant', () => {
    expect(read('12,20', { entry: 'list', unit: 'mm' })).toMatchObject({
      readAs: '12.2 mm',
      offers: [{ text: '12, 20', label: 'two values' }],
    })
  })

  it('says that its values take no limits, which would be lost', () => {
    for (const text of ['60 ± 2', '60 mm ± 2', '12, 20 ± 1'])
      expect(shown(text, { entry: 'list', unit: 'mm' })).toMatch(/take no ± limits/)
  })

  it('says where a value cannot be read', () => {
    expect(read('12, abc', { entry: 'list', unit: 'mm' })).toMatchObject({
      state: 'error',
      diagnostics: [{ message: '“abc” is not a number.', from: 4, to: 7 }],
    })
  })
})

describe('a size', () => {
  it('is a record of width and height', () => {
    const sheet = sheetOf([
      given('original', '420 x 297', { entry: 'size', unit: 'mm' }),
      result('h', 'original.height'),
    ])
    expect(sheet.outcome('original')).toMatchObject({ value: { width: 0.42, height: 0.297 }, readAs: '420 × 297 mm' })
    expect(seen(sheet, 'h')).toBe('297 mm')
  })

  test.each([
    ['420', /error/],
    ['420 x', /error/],
    ['0 x 297', /above zero/],
    ['420 mm x 297 s', /error/],
  ])('written %s is refused', (text, says) => {
    expect(shown(text, { entry: 'size', unit: 'mm' })).toMatch(says)
  })

  it('empty waits, its parts being known', () => {
    const sheet = sheetOf([
      given('o', '', { entry: 'size', unit: 'mm' }),
      result('w', 'o.width'),
      result('bad', 'o.depth'),
    ])
    expect(seen(sheet, 'w')).toBe('waits for o')
    expect(seen(sheet, 'bad')).toMatch(/no part “depth”/)
  })
})

describe('other entries', () => {
  it('yes or no', () => {
    expect(read('yes', { entry: 'yes or no' })).toMatchObject({ value: true })
    expect(read(' No ', { entry: 'yes or no' })).toMatchObject({ value: false })
    expect(shown('maybe', { entry: 'yes or no' })).toMatch(/Answer yes or no/)
  })

  it('a text, as typed', () => {
    expect(read(' as typed ', { entry: 'text' })).toMatchObject({ value: ' as typed ' })
  })

  it('a date that exists', () => {
    expect(read('2026-02-28', { entry: 'date' })).toMatchObject({ value: '2026-02-28' })
    for (const text of ['2026-02-29', '2026-13-01', '28.2.2026', '2026-2-8'])
      expect(shown(text, { entry: 'date' })).toMatch(/year-month-day/)
  })

  it('a choice, of texts or of quantities', () => {
    const options = ['sRGB', 'wide']
    expect(read('wide', { entry: 'choice', options })).toMatchObject({ value: 'wide' })
    expect(read('wyde', { entry: 'choice', options })).toMatchObject({
      state: 'error',
      diagnostics: [{ fixes: [{ insert: 'wide' }] }],
    })
    expect(read('300 ppi', { entry: 'choice', options: ['300 ppi', '400 ppi'], unit: 'ppi' })).toMatchObject({
      shown: { text: '300 ppi' },
    })
    expect(shown('toString', { entry: 'choice', options })).toMatch(/error/)
  })
})

describe('an allowed range', () => {
  const range = { unit: 'mm', least: '0.1 mm', most: '2 m' }

  test.each([
    ['0.1 mm', '0.1 mm'],
    ['100 µm', '0.1 mm'],
    ['2000', '2000 mm'],
  ])('holds %s', (text, expected) => {
    expect(shown(text, range)).toBe(expected)
  })

  it('refuses what is outside, in its own words', () => {
    expect(shown('0.09 mm', range)).toMatch(/at least 0.1 mm/)
    expect(shown('2001', range)).toMatch(/at most 2 m/)
  })

  it('of what is counted refuses a fraction, and says which whole numbers are near', () => {
    const count = { unit: '1', least: '1', most: '8', whole: true }
    expect(shown('2', count)).toBe('2')
    expect(read('6/3', count)).toMatchObject({ value: 2 })
    expect(shown('2.5', count)).toMatch(/whole number, such as 2 or 3/)
    expect(shown('0.5', count)).toMatch(/at least 1/)
    expect(shown('2, 2.5', { ...count, entry: 'list' })).toMatch(/whole number/)
    expect(shown('2.5', { ...count, whole: false })).toBe('2.5')
  })

  it('that cannot be read is reported as such, at a place inside the value', () => {
    const outcome = read('5', { unit: 'mm', least: 'nothing in particular' })
    expect(outcome).toMatchObject({ state: 'error', diagnostics: [{ from: 0, to: 1 }] })
    expect(shown('5', { unit: 'mm', least: 'nothing in particular' })).toMatch(/range of this cell cannot be read/)
  })
})
