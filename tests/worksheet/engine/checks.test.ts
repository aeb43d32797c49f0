import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { NONE } from '../../../src/units/index.ts'
import { UNITS } from '../../../src/units/table.ts'
import { DEFAULT_MARGIN_TEXT, readMargin } from '../../../src/worksheet/engine/margin.ts'
import type { Cell } from '../../../src/worksheet/index.ts'
import { check, given, result, sheetOf } from '../make.ts'

const stand = (condition: string, more = {}, cells: Cell[] = [given('a', '100 mm'), given('n', '0')]) =>
  sheetOf([...cells, check('k', condition, more)]).check('k')

describe('a check', () => {
  test.each([
    ['a <= 200 mm', 'pass'],
    ['a <= 105 mm', 'marginal'],
    ['a <= 110 mm', 'marginal'],
    ['a <= 112 mm', 'pass'],
    ['a <= 100 mm', 'marginal'],
    ['a < 100 mm', 'fail'],
    ['a >= 95 mm', 'marginal'],
    ['a >= 50 mm', 'pass'],
    ['not a > 105 mm', 'marginal'],
    ['a > 50 mm and a < 105 mm', 'marginal'],
    ['a > 99 mm or a > 10 mm', 'pass'],
    ['a = 100 mm', 'pass'],
    ['n >= 0', 'pass'],
    ['n = 0 or 1/n < 3', 'pass'],
    ['not (n > 0 and 1/n > 3)', 'pass'],
    ['not n > 0', 'pass'],
    ['when(n = 0, a < 200 mm, no)', 'pass'],
  ])('%s %s', (condition, state) => {
    expect(stand(condition).state).toBe(state)
  })

  test.each([
    ['1 %', 'pass'],
    ['5 %', 'marginal'],
    ['5', 'marginal'],
    ['4', 'pass'],
    ['0.05', 'pass'],
    ['500 %', 'marginal'],
    ['0 %', 'pass'],
    ['', 'marginal'],
  ])('with a margin of %s, 5 %% short of its limit, %s', (margin, state) => {
    expect(stand('a <= 105 mm', { margin }).state).toBe(state)
  })

  it('passes at its limit where it has no margin', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (limit) => {
        const cells = [given('a', `${limit} mm`), given('b', `${limit} mm`)]
        for (const condition of ['a <= b', 'a >= b']) {
          expect(stand(condition, { margin: '0 %' }, cells).state).toBe('pass')
          expect(stand(condition, { margin: '1 %' }, cells).state).toBe('marginal')
        }
      }),
    )
  })

  it('waits for its givens and tells which', () => {
    expect(stand('a < 5 mm', {}, [given('a', '', { unit: 'mm' })])).toMatchObject({
      state: 'waiting',
      message: 'needs a.',
    })
  })

  it('in error says why, and where it came from', () => {
    expect(stand('a < 5 s')).toMatchObject({ state: 'error', message: expect.stringMatching(/cannot be compared/) })
    expect(stand('a')).toMatchObject({ state: 'error', message: expect.stringMatching(/must be true or false/) })
    expect(stand('1/n > 3').message).toBe('Division by zero.')
    expect(stand('b > 1', {}, [given('n', '0'), result('b', '1/n')]).message).toContain('“b”')
  })

  it('is counted where it is', () => {
    const sheet = sheetOf([
      given('a', '100 mm'),
      given('w', ''),
      check('one', 'a < 1 m'),
      check('two', 'a < 101 mm'),
      check('three', 'a < 1 mm'),
      check('four', 'w > 1'),
      check('five', 'a'),
    ])
    expect(sheet.checkSummary).toEqual({ pass: 1, marginal: 1, fail: 1, waiting: 1, errors: 1 })
  })

  it('can be used in other formulas as yes or no', () => {
    const sheet = sheetOf([given('a', '100 mm'), check('k', 'a < 1 m'), result('r', 'when(k, 1, 2)')])
    expect(sheet.outcome('r')).toMatchObject({ value: 1 })
  })
})

describe('its message', () => {
  it('has its figures put in, marks and dashes where due', () => {
    const message = '{a}, {2 * a}, {aperture}, { a }, {nothing}, {1/n}, {w}, {toString}, {}'
    const cells = [
      given('a', '100 mm'),
      given('n', '0'),
      given('w', '', { unit: 'mm' }),
      result('aperture', 'f/8 * 1', { unit: 'f/' }),
    ]
    expect(stand('a < 1 mm', { message }, cells).message).toBe('100 mm, 200 mm, f/8, 100 mm, —, —, —, —, —')
  })

  it('is what it says when it holds, or its label', () => {
    expect(stand('a < 1 m', { passes: '{a} is enough' }).message).toBe('100 mm is enough')
    expect(stand('a < 1 m', { label: 'Wide enough' }).message).toBe('Wide enough')
  })
})

describe('a warning margin', () => {
  it('is a percentage, whose unit may be left out', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), (thousandths) => {
        const percent = thousandths / 1000
        expect(readMargin(`${percent}`).share).toBeCloseTo(percent / 100, 12)
        expect(readMargin(`${percent} %`)).toEqual(readMargin(`${percent}`))
      }),
    )
  })

  it('is 10 % where there is none, as its field says', () => {
    expect(readMargin(undefined)).toEqual({ share: 0.1 })
    expect(readMargin(' ')).toEqual(readMargin(DEFAULT_MARGIN_TEXT))
  })

  it.each(UNITS.flatMap(({ symbol, dimension }) => (dimension === NONE ? [] : [symbol])))(
    'in %s is refused',
    (unit) => {
      expect(readMargin(`10 ${unit}`).error, unit).toMatch(
        /^Warning margin: .* Write a share of the limit, such as 5 %\.$/,
      )
    },
  )

  it.each(['ten', '10 mm', 'f/8', '1:10', '-5 %', '5 ± 1 %', '5 % of it', '1e400'])(
    '%s is refused, not read as 10 %%',
    (margin) => {
      const sheet = sheetOf([given('a', '100 mm'), check('k', 'a <= 200 mm', { margin })])
      expect(sheet.check('k')).toMatchObject({ state: 'error', message: expect.stringMatching(/^Warning margin: /) })
      expect(sheet.checkSummary.errors).toBe(1)
    },
  )

  it('never throws, and reads a share or says why not', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 12 }), (text) => {
        const { share, error } = readMargin(text)
        expect(share).toBeGreaterThanOrEqual(0)
        if (error !== undefined) expect(share).toBe(0.1)
      }),
    )
  })
})
