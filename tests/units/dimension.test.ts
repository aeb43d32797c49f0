import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BASES, Dimension } from '../../src/units/dimension.ts'
import * as D from '../../src/units/index.ts'

describe('a dimension', () => {
  test('is called by its name, or by the powers of its bases', () => {
    expect([D.LENGTH, D.ILLUMINANCE, D.NONE].map(D.nameOf)).toEqual(['length', 'illuminance', 'dimensionless'])
    expect(D.nameOf(D.LENGTH.power(4))).toBe('length^4')
    expect(D.nameOf(D.LENGTH.over(D.STOP))).toBe('length stop^-1')
    expect(D.nameOf(D.MASS.times(D.TIME.power(1 / 3)))).toBe('mass time^0.333')
    expect(D.nameOf(Dimension.base('amount').times(Dimension.base('current')))).toBe('current amount')
  })

  test('has the article that its name calls for', () => {
    expect([D.aKind(D.LENGTH), D.aKind(D.AREA), D.aKind(D.ILLUMINANCE)]).toEqual([
      'a length',
      'an area',
      'an illuminance',
    ])
    expect([D.NONE, D.TIME, D.STOP, D.PIXEL, D.DATA].map((one) => D.aKind(one))).toEqual([
      'a plain number',
      'a time',
      'a number of stops',
      'a number of pixels',
      'an amount of data',
    ])
    expect(D.aKind(D.LENGTH.power(4))).toBe('a length^4')
  })

  test('is one object however it is reached: products, quotients, powers and roots', () => {
    const any = fc
      .array(fc.integer({ min: -4, max: 4 }), { minLength: BASES.length, maxLength: BASES.length })
      .map(Dimension.of)
    fc.assert(
      fc.property(any, any, fc.constantFrom(1, 2, 3, 4), (one, other, n) => {
        expect(one.times(other).over(other)).toBe(one)
        expect(one.over(one)).toBe(D.NONE)
        expect(one.power(1 / n).power(n)).toBe(one)
        expect(one.times(other)).toBe(other.times(one))
        expect(one.power(2)).toBe(one.times(one))
      }),
    )
  })
})
