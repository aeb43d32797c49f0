import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import type { Cell, Sheet } from '../../../src/worksheet/index.ts'
import { check, given, notifiedBy, result, sheetOf } from '../make.ts'

/** Tests run on busy machines: no limits are left out for taking long. */
function patient(cells: readonly Cell[]): Sheet {
  const sheet = sheetOf(cells)
  sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
  return sheet
}

function limitsOf(sheet: Sheet, id: string) {
  const outcome = sheet.outcome(id)
  if (outcome.state !== 'value' || !outcome.limits) throw new Error(`“${id}” has no limits.`)
  return { value: outcome.value as number, ...outcome.limits }
}

describe('the limits of a result', () => {
  it('add up in the worst case and by squares when likely', () => {
    const { value, low, high, likely, contributions, nonlinear } = limitsOf(
      patient([given('a', '30 mm ± 3 mm'), given('b', '40 mm ± 4 mm'), result('sum', 'a + b')]),
      'sum',
    )
    expect([value, low, high, likely].map((x) => x * 1000)).toEqual([
      expect.closeTo(70, 9),
      expect.closeTo(63, 9),
      expect.closeTo(77, 9),
      expect.closeTo(5, 9),
    ])
    expect(contributions).toEqual([
      { name: 'b', amount: expect.closeTo(0.004, 12) },
      { name: 'a', amount: expect.closeTo(0.003, 12) },
    ])
    expect(nonlinear).toBe(false)
  })

  it('count a shared given once, through whatever chain', () => {
    const sheet = patient([
      given('a', '100 mm ± 1 mm'),
      result('twice', 'a + a'),
      result('less', 'twice - a'),
      result('none', 'less - a'),
      result('double', 'less + a'),
    ])
    expect(limitsOf(sheet, 'none')).toMatchObject({
      low: expect.closeTo(0, 12),
      high: expect.closeTo(0, 12),
      likely: 0,
    })
    expect(limitsOf(sheet, 'double').high * 1000).toBeCloseTo(202, 9)
  })

  test.each([
    ['1 / x', 1 / 25],
    ['x ^ 2', 10],
    ['sqrt(x)', 1 / (2 * Math.sqrt(5))],
    ['log2(x)', 1 / (5 * Math.LN2)],
    ['3 * x - x / 2', 2.5],
  ])('of %s follow its derivative', (formula, slope) => {
    const limit = 0.001
    const { likely, contributions } = limitsOf(patient([given('x', `5 ± ${limit}`), result('y', formula)]), 'y')
    expect(likely / limit).toBeCloseTo(slope, 6)
    expect((contributions[0]?.amount ?? 0) / limit).toBeCloseTo(slope, 6)
  })

  it('count both sides of a size', () => {
    const sheet = patient([
      given('s', '600 x 400 mm ± 2 mm', { entry: 'size' }),
      result('round', '2 * (s.width + s.height)'),
    ])
    const { value, high, likely } = limitsOf(sheet, 'round')
    expect((high - value) * 1000).toBeCloseTo(8, 9)
    expect(likely * 1000).toBeCloseTo(4 * Math.SQRT2, 9)
  })

  it('take in what a formula says of its own limits', () => {
    const sheet = patient([given('a', '100 mm ± 1 mm'), result('b', 'a ± 2 %'), result('c', '2 * b')])
    const { value, high } = limitsOf(sheet, 'c')
    expect((high - value) * 1000).toBeCloseTo(6, 9)
  })

  it('are not there where nothing carries any', () => {
    const outcome = patient([given('a', '5 mm'), given('b', '1 ± 0.1'), result('c', '2 * a')]).outcome('c')
    expect(outcome).not.toHaveProperty('limits')
    expect(outcome).not.toHaveProperty('tolerance')
  })

  it('are shown behind the figure', () => {
    const outcome = patient([given('a', '855 mm ± 2 mm'), result('b', 'a + 2 mm', { unit: 'mm' })]).outcome('b')
    expect(outcome).toMatchObject({ shown: { figure: '857 ± 2', unit: 'mm' } })
  })

  it('are notified again all the way down when they change, though no value does', () => {
    const sheet = patient([given('a', '5 mm'), result('b', '2 * a'), result('c', 'b + 1 mm'), result('d', '3')])
    const limited: Cell = given('a', '5 mm ± 1 mm')
    expect(notifiedBy(sheet, () => sheet.apply({ do: 'replace', cell: limited }))).toEqual(['a', 'b', 'c'])
    expect(notifiedBy(sheet, () => sheet.apply({ do: 'replace', cell: given('a', '5 mm') }))).toEqual(['a', 'b', 'c'])
  })

  test.each(['(x - 5) ^ 2', 'round(x)', 'abs(x - 5)', 'x ^ 40'])('of %s are said to bend', (formula) => {
    const { nonlinear, low, high, value } = limitsOf(patient([given('x', '5 ± 0.6'), result('y', formula)]), 'y')
    expect(nonlinear).toBe(true)
    expect(high).toBeGreaterThan(value)
    expect(low).toBeLessThanOrEqual(value)
  })

  it('see what two givens do together', () => {
    const { nonlinear, high } = limitsOf(patient([given('x', '0 ± 1'), given('y', '0 ± 1'), result('z', 'x * y')]), 'z')
    expect(nonlinear).toBe(true)
    expect(high).toBeCloseTo(1, 9)
  })

  test.each([
    ['sqrt(x)', '0 ± 0.01', 0, 0.1],
    ['sqrt(-x)', '0 ± 0.01', 0, 0.1],
    ['-sqrt(x)', '0 ± 0.01', -0.1, 0],
  ])('of %s at %s, where one side does not compute, are those of the other', (formula, value, low, high) => {
    const limits = limitsOf(patient([given('x', value), result('y', formula)]), 'y')
    expect(limits.nonlinear).toBe(true)
    expect(limits.likely).toBeGreaterThan(0)
    // The slope at the value itself is steeper than the end is far.
    expect(limits.low).toBeLessThanOrEqual(low + 1e-12)
    expect(limits.high).toBeGreaterThanOrEqual(high - 1e-12)
  })

  it('are left out where there is no time to look for them', () => {
    const sheet = sheetOf([given('x', '5 ± 1'), result('y', '2 * x')])
    sheet.engine.limitsBudget = -1
    expect(sheet.outcome('y')).not.toHaveProperty('limits')
  })

  it('of zero are none', () => {
    const sheet = patient([given('x', '5 ± 0'), given('z', '1 ± 0.1'), result('y', 'x * z')])
    expect(limitsOf(sheet, 'y').contributions.map(({ name }) => name)).toEqual(['z'])
  })

  it('say so where an end cannot be computed', () => {
    expect(limitsOf(patient([given('x', '0.1 ± 0.2'), result('y', 'sqrt(x)')]), 'y').nonlinear).toBe(true)
  })
})

/** Formulas of a, b and c that curve no more than lenses and light do. */
const CURVED = [
  'a * b / c',
  'a / (b + c)',
  '1 / (1 / a - 1 / (b + a + c))',
  'sqrt(a^2 + b^2) / c',
  'log2(a / b) + c',
  'a * (1 + b / c)^2',
]

test('the worst case encloses what any givens within their limits give', () => {
  const size = fc.double({ min: 1, max: 100, noNaN: true })
  const share = fc.double({ min: 0.0001, max: 0.02, noNaN: true })
  const place = fc.double({ min: -1, max: 1, noNaN: true })
  const one = fc.record({ size, share, place })
  fc.assert(
    fc.property(fc.constantFrom(...CURVED), fc.tuple(one, one, one), (formula, givens) => {
      const names = ['a', 'b', 'c']
      const cells = (text: (i: number) => string): Cell[] => [
        ...names.map((name, i) => given(name, text(i))),
        result('f', formula),
      ]
      const at = (i: number) => givens[i] as (typeof givens)[number]
      const { low, high } = limitsOf(patient(cells((i) => `${at(i).size} ± ${at(i).size * at(i).share}`)), 'f')
      const sampled = patient(cells((i) => `${at(i).size * (1 + at(i).share * at(i).place)}`)).outcome('f')
      if (sampled.state !== 'value') return
      const slack = 1e-9 * (high - low) + 1e-12 * Math.abs(high)
      expect(sampled.value as number).toBeGreaterThanOrEqual(low - slack)
      expect(sampled.value as number).toBeLessThanOrEqual(high + slack)
    }),
    { numRuns: 60 },
  )
})

/**
 * JCGM 100:2008 (GUM), H.1: an end gauge against a standard, with the figures of H.1.3 and table H.1 as MSLNZ/GTC
 * works them in its example GUM_H1: l = lS + d − lS (δα θ + αS δθ), all uncorrelated, standard uncertainties for limits.
 */
test('JCGM 100:2008, H.1: the end gauge gives 50 000 838 nm with 32 nm', () => {
  const third = (half: number): number => half / Math.sqrt(3)
  const sheet = patient([
    given('standard', '50000623 nm ± 25 nm'),
    given('read', '215 nm ± 5.8 nm'),
    given('random', '0 nm ± 3.9 nm'),
    given('systematic', '0 nm ± 6.7 nm'),
    given('expansion', `${11.5e-6} ± ${third(2e-6)}`),
    given('expansion_off', `0 ± ${third(1e-6)}`),
    given('warmer', `0 ± ${third(0.05)}`),
    given('bench', '-0.1 ± 0.2'),
    given('cycle', `0 ± ${0.5 / Math.SQRT2}`),
    result('d', 'read + random + systematic'),
    result('off', 'bench + cycle'),
    result('gauge', 'standard + d - standard * (expansion_off * off + expansion * warmer)'),
  ])
  const { value, likely, contributions, nonlinear } = limitsOf(sheet, 'gauge')
  expect(value * 1e9).toBeCloseTo(50000838, 0)
  expect(Math.round(likely * 1e9)).toBe(32)
  const budget = Object.fromEntries(contributions.map(({ name, amount }) => [name, amount * 1e9]))
  expect(budget).toEqual({
    standard: expect.closeTo(25, 2),
    warmer: expect.closeTo(16.599, 2),
    systematic: expect.closeTo(6.7, 3),
    read: expect.closeTo(5.8, 3),
    random: expect.closeTo(3.9, 3),
    expansion_off: expect.closeTo(2.88679, 3),
  })
  // H.1.7: the products of two quantities near zero are missed by the first order.
  expect(nonlinear).toBe(true)
})

describe('a check over limits', () => {
  const stand = (condition: string, ...cells: Cell[]) => patient([...cells, check('k', condition)]).check('k')

  it('that holds for the values alone is close, and says on what it hangs', () => {
    const found = stand('a <= 120 mm', given('a', '100 mm ± 30 mm'))
    expect(found).toMatchObject({ state: 'marginal', hangsOn: ['a'] })
  })

  it('that holds over all limits holds', () => {
    const found = stand('a <= 120 mm', given('a', '100 mm ± 5 mm'))
    expect(found.state).toBe('pass')
    expect(found).not.toHaveProperty('hangsOn')
  })

  it('counts a given on both sides once', () => {
    expect(stand('a <= b', given('a', '100 mm ± 30 mm'), result('b', 'a + 20 mm')).state).toBe('pass')
  })

  it('that fails for the values fails', () => {
    expect(stand('a <= 90 mm', given('a', '100 mm ± 30 mm')).state).toBe('fail')
  })

  test.each([
    ['not a > 120 mm', 'marginal'],
    ['a < 120 mm and a > 10 mm', 'marginal'],
    ['a < 120 mm or a > 10 mm', 'pass'],
    ['not (a > 120 mm or a < 10 mm)', 'marginal'],
    ['when(a < 120 mm, yes, no)', 'marginal'],
    ['when(a < 140 mm, yes, no)', 'pass'],
  ])('judges %s: %s', (condition, state) => {
    expect(stand(condition, given('a', '100 mm ± 30 mm')).state).toBe(state)
  })
})
