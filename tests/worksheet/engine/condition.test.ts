import { describe, expect, test } from 'vitest'
import { ComputeError, type Condition, type Value } from '../../../src/language/index.ts'
import { robustnessOf, slackOf } from '../../../src/worksheet/engine/condition.ts'
import type { Node } from '../../../src/worksheet/engine/node.ts'
import { check, given, result, seen, sheetOf } from '../make.ts'

const conditionOf = (condition: string): Condition => {
  const { engine } = sheetOf([given('a', '1'), given('b', '1'), given('n', '1'), check('k', condition)])
  return (engine.node('k') as Node).compiled?.condition() as Condition
}
const cells =
  (figures: Readonly<Record<string, number>>) =>
  (name: string): Value => {
    const value = figures[name]
    if (value === undefined) throw new Error(`“${name}” has no figure.`)
    return value
  }
const slack = (condition: string, figures: Readonly<Record<string, number>>): number =>
  slackOf(conditionOf(condition)).of(cells(figures))

describe('the slack of a condition', () => {
  test.each([
    ['a <= 100', { a: 80 }, 0.2],
    ['a <= 100', { a: 130 }, -0.3],
    ['a >= 100', { a: 80 }, -0.2],
    ['a >= -100', { a: -80 }, 0.2],
    ['not a < 100', { a: 130 }, 0.3],
    ['a <= 100 and b <= 100', { a: 80, b: 90 }, 0.1],
    ['a <= 100 and b <= 100', { a: 90, b: 80 }, 0.1],
    ['a <= 100 or b <= 100', { a: 80, b: 90 }, 0.2],
    ['not (a > 100 or b > 100)', { a: 80, b: 90 }, 0.1],
    // A limit of zero has no shares, and what compares no order has no slack: it holds or not.
    ['a >= 0', { a: 3 }, Number.POSITIVE_INFINITY],
    ['a >= 0', { a: -3 }, Number.NEGATIVE_INFINITY],
    ['a = 3', { a: 3 }, Number.POSITIVE_INFINITY],
    ['a != 3', { a: 3 }, Number.NEGATIVE_INFINITY],
    // The second of two need not compute.
    ['n = 0 or 1 / n < 3', { n: 0 }, Number.POSITIVE_INFINITY],
    ['a <= 100 and 1 / n < 3', { a: 80, n: 0 }, 0.2],
  ])('%s with %o is %d', (condition, figures, expected) => {
    expect(slack(condition, figures as Record<string, number>)).toBeCloseTo(expected, 12)
  })

  test('depends on the cells of all its parts', () => {
    const names = (condition: string): string[] => [...slackOf(conditionOf(condition)).names].sort()
    expect(names('a + n <= 2')).toEqual(['a', 'n'])
    expect(names('a <= 2 and (b > 1 or not n = a)')).toEqual(['a', 'b', 'n'])
    expect(names('1 < 2')).toEqual([])
  })

  test('says where the first of two does not compute, and hides no error of ours', () => {
    expect(() => slack('1 / n < 3 and a <= 100', { a: 80, n: 0 })).toThrow(ComputeError)
    expect(() => slack('a <= 100 and b <= 100', { a: 80 })).toThrow('“b” has no figure.')
    const condition = conditionOf('a <= 100 and b <= 100')
    expect(() => robustnessOf(condition, { value: cells({ a: 80 }), spread: () => undefined })).toThrow('“b”')
  })

  test('over limits is as far as they reach, and depends on them from there on where it fails', () => {
    const at = (low: number) =>
      robustnessOf(conditionOf('a <= 100'), {
        value: cells({ a: 80 }),
        spread: (names) => ({
          low,
          high: 40,
          likely: 1,
          nonlinear: false,
          contributions: names.map((name) => ({ name, amount: 1 })),
        }),
      })
    expect(at(10)).toEqual({ slack: 0.2, worst: 0.1 })
    // A thousand-millionth is rounding.
    expect(at(-5e-8)).toEqual({ slack: 0.2, worst: expect.closeTo(-5e-10, 15) })
    expect(at(-10)).toEqual({ slack: 0.2, worst: -0.1, hangsOn: ['a'] })
  })
})

test('a message shows the mark a figure is nearest to, with spaces round its name or without', () => {
  const sheet = sheetOf([
    given('time', '0.0168 s', { unit: '1/ s' }),
    result('half', 'time * 1.02', { unit: '1/ s' }),
    check('k', 'half > 1 s', { message: '{half}, { half }' }),
  ])
  const { mark } = (sheet.outcome('half') as { shown: { mark?: string } }).shown
  expect(mark).toBeDefined()
  expect(mark).not.toBe(seen(sheet, 'half'))
  expect(sheet.check('k').message).toBe(`${mark}, ${mark}`)
})
