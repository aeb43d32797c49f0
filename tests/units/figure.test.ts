import { describe, expect, test } from 'vitest'
import { decimalsOf, showFigure } from '../../src/units/figure.ts'
import { showStops, signedStops, stopsText } from '../../src/units/stops.ts'

const plain = (text: string): string => text.replaceAll('\u202f', ' ')

describe('a figure', () => {
  test.each([
    [0, '0'],
    [-0, '0'],
    [1, '1'],
    [0.1234, '0.123'],
    [9.994, '9.99'],
    [9.996, '10.0'],
    [99.96, '100'],
    [123.4, '123'],
    [1234.5, '1235'],
    [9999, '9999'],
    [12345, '12 345'],
    [123456, '123 456'],
    [1234567, '1 234 567'],
    [-5.25, '−5.25'],
    [0.5, '0.5'],
    [0.12, '0.12'],
    [100, '100'],
    // Powers of ten from a thousand million on, and below a ten-thousandth.
    [999_999_999, '999 999 999'],
    [999_999_999.5, '1.00e9'],
    [999_999_999.6, '1.00e9'],
    [1e9, '1e9'],
    [1.5e12, '1.5e12'],
    [1.2345e12, '1.23e12'],
    [1e-4, '0.0001'],
    [0.00009999, '0.000100'],
    [0.0000999, '9.99e-5'],
    [1.234e-7, '1.23e-7'],
    [2e-7, '2e-7'],
    [-2e-7, '−2e-7'],
    // The noise of a double is not shown.
    [0.1 + 0.2, '0.3'],
    [Number.NaN, 'not a number'],
    [Number.POSITIVE_INFINITY, '∞'],
    [Number.NEGATIVE_INFINITY, '−∞'],
  ])('%d is shown as %s', (value, shown) => {
    expect(plain(showFigure(value))).toBe(shown)
  })

  test('has the decimals it is given, zeros too, and no minus before nothing', () => {
    expect(showFigure(1.5, 3)).toBe('1.500')
    expect(showFigure(1, 0)).toBe('1')
    expect(plain(showFigure(12345.678, 1))).toBe('12 345.7')
    expect(showFigure(-0.001, 2)).toBe('0.00')
    expect(showFigure(-0.01, 2)).toBe('−0.01')
  })

  test('has its usual decimals where they say more, and needless zeros go', () => {
    expect(showFigure(1.333, undefined, 2)).toBe('1.33')
    expect(showFigure(1.5, undefined, 2)).toBe('1.5')
    expect(showFigure(2, undefined, 2)).toBe('2')
    expect(showFigure(123.456, undefined, 2)).toBe('123.46')
    expect(showFigure(200, undefined, 0)).toBe('200')
  })
})

describe('the decimals that a tolerance leaves', () => {
  test.each([
    [0.5, 1],
    [0.2, 1],
    [0.15, 2],
    [0.1949, 2],
    [0.196, 1],
    [1.95, 0],
    // Exactly one of its digit has one digit.
    [0.1, 1],
    [1, 0],
    [1.5, 1],
    [5, 0],
    [20, 0],
    [15, 0],
    [100, 0],
    [0.003, 3],
    [0.0012, 4],
    [1e-20, 12],
  ])('of %d are %d', (tolerance, decimals) => {
    expect(decimalsOf(tolerance)).toBe(decimals)
  })
})

describe('stops', () => {
  test.each([
    [1 / 3, '0.33'],
    [0.1, '0.1'],
    [0.101, '0.10'],
    [2, '2'],
    [0, '0'],
    [0.004, '0.00'],
    [-0.004, '0.00'],
    [0.005, '0.01'],
    [-1.25, '−1.25'],
  ])('%d are shown as %s', (stops, shown) => {
    expect(showStops(stops, undefined)).toBe(shown)
    expect(stopsText(stops)).toBe(`${shown} stop`)
  })

  test('with limits have the decimals that these leave, at most two', () => {
    expect(showStops(1.234, 0.1)).toBe('1.2 ± 0.1')
    expect(showStops(1.234, 0.05)).toBe('1.23 ± 0.05')
    expect(showStops(1.234, 0.012)).toBe('1.23 ± 0.01')
    // Less than half a hundredth is none.
    expect(showStops(1.234, 0.004)).toBe('1.23')
    expect(showStops(1.234, 0.005)).toBe('1.23 ± 0.01')
    expect(showStops(-0.001, 0.1)).toBe('0.0 ± 0.1')
  })

  test('have a sign, but not where they are nothing', () => {
    expect([signedStops(0.5), signedStops(-0.5), signedStops(0.004), signedStops(-0.004)]).toEqual([
      '+0.50',
      '−0.50',
      '0.00',
      '0.00',
    ])
    expect(signedStops(1, 0)).toBe('+1')
    expect(signedStops(-0.26, 1)).toBe('−0.3')
  })
})
