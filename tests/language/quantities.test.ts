import { describe, expect, test } from 'vitest'
import { computed, errorOf, expectRefused, shown } from './make.ts'

describe('a quantity', () => {
  test.each([
    ['85 mm', '85 mm'],
    ['3 m^2', '3 m²'],
    ['3 m²', '3 m²'],
    ['(3 m)^2', '9 m²'],
    ['3 m⁻¹', '3 dpt'],
    ['2 s^-1', '2 Hz'],
    ['500 [cd/m^2]', '500 cd/m²'],
    ['50 [lx h]', '50 lx h'],
    ['40 [lp/mm]', '40 1/mm'],
    ['10 mm / 2 mm', '5'],
    ['50 % * width', '300 mm'],
    ['5 ‰ * 1 m', '5 mm'],
    ['2/3 stop', '0.67 stop'],
    ['1/4 [s]', '1/4 s'],
    ['1/2.5 s', '1/2.5 s'],
    ['90°', '90°'],
    ['30′', '0.5°'],
  ])('%s is %s', (text, expected) => {
    expect(shown(text)).toBe(expected)
  })

  test('has its signs alike whichever of two code points they are typed with', () => {
    expect(computed('5 \u00b5m').value).toBe(computed('5 \u03bcm').value)
    expect(computed('5 \u2126').value).toBe(computed('5 \u03a9').value)
    expect(computed('5 \u212a').value).toBe(computed('5 K').value)
  })

  test('of watts per square metre and kelvin may have parentheses below its line', () => {
    expect(computed('1 [W/(m^2 K)]').value).toBe(1)
    expect(errorOf('1 [W/m^2/K]').message).toMatch(/at most one “\/”/)
  })

  test.each([
    ['2 sqrt(x)', '2 sqrt(', ['2 * sqrt(x)']],
    ['2 lx h', '2 lx h', ['2 [lx h]']],
    ['5 ft 3 in', '5 ft 3 in', ['5 ft + 3 in']],
    ['1 1/3 stop', '1 1/3 stop', ['1 stop + 1/3 stop']],
    ['1°30′', '1°30′', ['1 ° + 30 ′']],
    ['10 mm/m', '10 mm/m', ['10 [mm/m]']],
    ['100 cd/m^2', '100 cd/m^2', ['100 [cd/m^2]']],
    ['2^3 mm', '3 mm', ['(2^3) * 1 mm']],
    ['(2^3) mm', ') mm', ['(2^3) * 1 mm']],
    ['3 m^x', '3 m^x', ['(3 m)^x']],
    ['3 m^2^3', '3 m^2^3', ['(3 m^2)^3']],
    ['3 m2', 'm2', ['3 m^2']],
    ['2/1/125 s', '1/125 s', ['2/(1/125 s)']],
    ['4^1/2 stop', '1/2 stop', ['4^(1/2)']],
    ['5 mx', 'mx', ['5 mm', '5 m', '5 ms']],
    ['5 [lx hh]', 'hh', ['5 [lx h]']],
    ['2 x', 'x', ['2 * x']],
    ["5' + 3 in", "'", ['5 ft + 3 in']],
    ['12"', '12"', ['12 in']],
    ['1 [mm', '[', ['1 [mm]']],
    ['1/0 s', '1/0', []],
  ] as const)('written %s is refused at “%s”', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  test.each([
    ['20 °C', '°C', ['293.15 K']],
    ['20 ℃', '℃', ['293.15 K']],
    ['−10 °C + 3 K', '°C', ['−283.15 K + 3 K']],
  ] as const)('in degrees Celsius, %s, belongs in a given', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  test('divided by a cell with spaces uses the cell', () => {
    expect(shown('10 mm / m')).toBe('40 mm')
    expect(shown('3 * m')).toBe('0.75')
    expect(shown('3 m')).toBe('3000 mm')
  })

  test('fixes a compound unit with more than one line only with what is a unit', () => {
    for (const text of ['1 [W/m/K]', '1 [W/m K]'])
      for (const { insert } of errorOf(text).fixes) expect(insert).not.toContain('/m W/')
  })
})
