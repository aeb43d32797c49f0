import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { nearestFunction } from '../../src/language/checking/near-names.ts'
import type { Library } from '../../src/language/index.ts'
import * as op from '../../src/language/values/operations.ts'
import { BINARY, table, UNARY } from '../../src/language/values/operators.ts'
import { VALUE_WORDS as W } from '../../src/language/values/words.ts'

const INFINITE = Number.POSITIVE_INFINITY

describe('arithmetic that is refused where it happens', () => {
  test.each([
    ['a quotient by zero', () => op.divide(1, 0), W.divisionByZero],
    ['nothing by zero', () => op.divide(0, 0), W.divisionByZero],
    ['a quotient by something infinite', () => op.divide(1, INFINITE), W.divisionByInfinity],
    ['a quotient by something infinite below zero', () => op.divide(1, -INFINITE), W.divisionByInfinity],
    ['zero to a power below zero', () => op.power(0, -1), W.zeroToNegativePower],
    ['the root of a number below zero', () => op.power(-8, 0.5), W.noSuchRoot],
    ['a power of a number below zero that is too large', () => op.power(-10, 401), W.powerTooLarge],
    ['a power that is too large', () => op.power(10, 400), W.powerTooLarge],
    ['a square that is too large', () => op.power(1e200, 2), W.powerTooLarge],
    ['a sum that is too large', () => op.add(1.7e308, 1.7e308), W.tooLarge],
    ['a difference that is too large', () => op.subtract(-1.7e308, 1.7e308), W.tooLarge],
    ['a product that is too large', () => op.multiply(1e200, 1e200), W.tooLarge],
    ['the difference of two that are infinite', () => op.subtract(INFINITE, INFINITE), W.noFigure],
    ['nothing of something infinite', () => op.multiply(0, INFINITE), W.noFigure],
  ] as const)('%s', (_, compute, message) => {
    expect(compute).toThrow(op.ComputeError)
    expect(compute).toThrow(message)
  })

  test('is what it is elsewhere, and infinite where a function’s result was', () => {
    expect([op.divide(0, 5), op.divide(1, 4), op.divide(INFINITE, 2)]).toEqual([0, 0.25, INFINITE])
    expect([op.power(3, 2), op.power(2, 10), op.power(-2, 3), op.power(4, 0.5), op.power(0, 2)]).toEqual([
      9, 1024, -8, 2, 0,
    ])
    expect([op.add(INFINITE, 1), op.add(1, -INFINITE), op.multiply(INFINITE, 2), op.subtract(1, INFINITE)]).toEqual([
      INFINITE,
      -INFINITE,
      INFINITE,
      -INFINITE,
    ])
    expect([op.add(1, 2), op.subtract(1, 2), op.multiply(3, 2), op.negative(4)]).toEqual([3, -1, 6, -4])
  })
})

describe('comparing', () => {
  const far = [1, 1 + 1e-9] as const
  const near = [0.3, 0.1 + 0.2] as const

  test('takes figures that differ by rounding alone for the same', () => {
    for (const [a, b] of [near, [near[1], near[0]], [1, 1], [1e300, 1e300 * (1 + 1e-13)], [0, 0]] as const) {
      expect([op.equal(a, b), op.unequal(a, b)]).toEqual([true, false])
      expect([op.less(a, b), op.greater(a, b)]).toEqual([false, false])
      expect([op.atMost(a, b), op.atLeast(a, b)]).toEqual([true, true])
    }
  })

  test('and tells others apart, however small they are', () => {
    for (const [a, b] of [far, [-1, 1], [1e-30, 2e-30], [0, 1e-30], [-3e-20, -1e-20], [1, INFINITE]] as const) {
      expect([op.equal(a, b), op.unequal(a, b)]).toEqual([false, true])
      expect([op.less(a, b), op.less(b, a)]).toEqual([true, false])
      expect([op.greater(a, b), op.greater(b, a)]).toEqual([false, true])
      expect([op.atMost(a, b), op.atMost(b, a)]).toEqual([true, false])
      expect([op.atLeast(a, b), op.atLeast(b, a)]).toEqual([false, true])
    }
  })

  test('allows a million-millionth of the larger of the two, and no more', () => {
    expect(op.equal(1, 1 + 0.9e-12)).toBe(true)
    expect(op.equal(1, 1 + 1.2e-12)).toBe(false)
    expect(op.equal(1e6, 1e6 + 0.9e-6)).toBe(true)
    expect(op.equal(1e6, 1e6 + 1.2e-6)).toBe(false)
    expect(op.equal(1e-6, 1e-6 + 1.2e-18)).toBe(false)
  })

  test('takes texts and yes or no as they are', () => {
    expect([op.equal('a', 'a'), op.equal('a', 'b'), op.equal(true, true), op.equal(true, false)]).toEqual([
      true,
      false,
      true,
      false,
    ])
    expect([op.equal(1, '1'), op.equal('1', 1)]).toEqual([false, false])
    expect([op.not(true), op.not(false)]).toEqual([false, true])
  })

  test('of any two figures says one of less, same and greater', () => {
    const figure = fc.double({ noNaN: true, noDefaultInfinity: true })
    fc.assert(
      fc.property(figure, figure, (a, b) => {
        expect([op.less(a, b), op.equal(a, b), op.greater(a, b)].filter(Boolean)).toHaveLength(1)
        expect(op.atMost(a, b)).toBe(!op.greater(a, b))
        expect(op.atLeast(a, b)).toBe(!op.less(a, b))
      }),
    )
  })
})

describe('the tables of operators', () => {
  test('know the signs and no other name', () => {
    expect(Object.keys(BINARY)).toEqual(['+', '-', '*', '/', '^', '==', '!=', '<', '<=', '>', '>=', 'and', 'or'])
    expect(Object.keys(UNARY)).toEqual(['-', 'not'])
    expect(BINARY.constructor).toBeUndefined()
    expect(table({ a: 1 }).toString).toBeUndefined()
  })

  test('have and and or', () => {
    const [and, or] = [BINARY.and, BINARY.or] as unknown as ((a: boolean, b: boolean) => boolean)[]
    const pairs = [
      [true, true],
      [true, false],
      [false, true],
      [false, false],
    ] as const
    expect(pairs.map(([a, b]) => and?.(a, b))).toEqual([true, false, false, false])
    expect(pairs.map(([a, b]) => or?.(a, b))).toEqual([true, true, true, false])
  })
})

test('the function that is meant is looked for among a library’s, and among “when”, the second time too', () => {
  const library = new Map([['aperture_for', {}]]) as unknown as Library
  expect(nearestFunction(library, 'apertur_for')).toBe('aperture_for')
  expect(nearestFunction(library, 'wehn')).toBe('when')
  expect(nearestFunction(library, 'nothing_like_it')).toBeUndefined()
  expect(nearestFunction(library, 'apertur_for')).toBe('aperture_for')
  expect(nearestFunction(new Map() as unknown as Library, 'apertur_for')).toBeUndefined()
})
