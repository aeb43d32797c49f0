import { describe, expect, test } from 'vitest'
import { checkFormula, fitsDeclared } from '../../src/language/index.ts'
import { ILLUMINANCE, LENGTH } from '../../src/units/index.ts'
import { computed, errorOf, expectRefused, SCOPE, shown } from './make.ts'

describe('arithmetic', () => {
  test.each([
    ['-2^2', -4],
    ['(-2)^2', 4],
    ['2^3^2', 512],
    ['2^-1', 0.5],
    ['2^-2^2', 2 ** -4],
    ['-2^-2', -0.25],
    ['2/3^2', 2 / 9],
    ['2 / 3 * 6', 4],
    ['2 - 3 - 4', -5],
    ['8 / 4 / 2', 1],
    ['2 + 3 * 4', 14],
    ['2 × 3 ÷ 4 · 5', 7.5],
    ['--2', 2],
    ['2 - -3', 5],
    ['1/2', 0.5],
    ['2*pi', 2 * Math.PI],
  ])('%s is %d', (text, value) => {
    expect(computed(text).value).toBeCloseTo(value, 12)
  })

  test('follows the units', () => {
    expect(shown('width * 2')).toBe('1200 mm')
    expect(shown('width^2')).toBe('0.36 m²')
    expect(shown('(width^2)^0.5')).toBe('600 mm')
    expect(shown('width^(1/2)^2')).toBe(shown('width^0.25'))
    expect(shown('width / wait')).toBe('0.3 m/s')
  })

  test.each([
    ['width^(1 + 1)', 2],
    ['width^(3 - 1)', 2],
    ['width^(4 * 0.5)', 2],
    ['width^(6 / 3)', 2],
    ['width^(2^1)', 2],
    ['width^-(1 + 1)', -2],
    ['width^(1/4)', 0.25],
    ['width^(-(2 - 3) * 2)', 2],
    ['width^100', 100],
  ])('%s has the unit of the power %d of a length', (text, power) => {
    const type = checkFormula(text, SCOPE).root?.type
    expect(type?.kind === 'number' && type.dimension).toBe(LENGTH.power(power))
  })

  test.each(['width^(lit + 1)', 'width^(x + 1)', 'width^(2 * x)', 'width^-x'])('%s has none', (text) => {
    expect(checkFormula(text, SCOPE).root).toBeUndefined()
  })

  test.each([
    ['width + wait', 'width + wait', []],
    ['width + 1', 'width + 1', ['width + 1 mm']],
    ['5 - width', '5 - width', ['5 mm - width']],
    ['width + lit', 'lit', []],
    ['-profile', 'profile', []],
    ['width^0.1', '0.1', []],
    ['width^(1/0)', '(1/0)', []],
    ['width^(9^9^9)', '(9^9^9)', []],
    ['width^x', 'x', []],
    ['2^(1 mm)', '(1 mm)', []],
    ['x²', 'x²', ['x^2']],
    ['2**3', '**', ['2^3']],
    ['(1)(2)', ')(', ['(1) * (2)']],
    ['x (2)', 'x', ['x * (2)']],
    ['width m', 'width m', ['width * m']],
    ['sqrt x', 'sqrt x', ['sqrt(x)']],
    ['1 +', '+', []],
    ['((1)', '(', ['((1))']],
    ['1)', ')', ['1', '(1)']],
    ['{1)', '{1)', ['{1}']],
    ['5 @ 2', '@', []],
    ['', '', []],
  ] as const)('%s is refused at “%s”', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  test.each([
    ['1/0', /Division by zero/],
    ['1/(1/0)', /Division by zero/],
    ['0^-1', /power below zero/],
    ['(-8)^(1/3)', /below zero has no such power/],
    ['9^9^9^9', /too large/],
    ['sqrt(-1)', /must be at least 0 in sqrt; here it is −1/],
    ['ln(0)', /must be above 0/],
  ])('%s is refused while computing', (text, says) => {
    expect(() => computed(text)).toThrow(says)
  })
})

describe('a declared unit', () => {
  const misfit = (text: string, dimension: typeof LENGTH, symbol: string) => {
    const type = checkFormula(text, SCOPE).root?.type
    return type && fitsDeclared(type, text, { dimension, symbol, factor: 1, offset: 0 })
  }

  test('is checked against the formula', () => {
    expect(misfit('2 * width', LENGTH, 'mm')).toBeUndefined()
    expect(misfit('{1 mm, 2 mm}', LENGTH, 'mm')).toBeUndefined()
    expect(misfit('wait', LENGTH, 'mm')?.message).toBe('The cell declares mm, a length; the formula gives a time.')
    expect(misfit('lit', LENGTH, 'mm')?.message).toMatch(/the formula gives yes or no/)
  })

  test('of illuminance from a candela hints at the steradian', () => {
    const text = 'intensity / width^2'
    const found = misfit(text, ILLUMINANCE, 'lx')
    expect(found?.message).toMatch(/Multiply by 1 sr/)
    const fix = found?.fixes[0]
    expect(fix?.insert).toBe('(intensity / width^2) * 1 sr')
    expect(misfit(fix?.insert as string, ILLUMINANCE, 'lx')).toBeUndefined()
  })

  test('does not hint at it in a sum of lux and candela per area, which is refused', () => {
    expect(errorOf('bright + intensity / width^2').message).toMatch(/cannot be added/)
  })
})
