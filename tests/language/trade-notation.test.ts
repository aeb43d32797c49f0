import { describe, expect, test } from 'vitest'
import { computed, expectRefused, fixed, pointed, shown, WITH_F, warningsOf } from './make.ts'

describe('the trade’s notation', () => {
  test.each([
    ['f/8', 'f/8'],
    ['f/5.6', 'f/5.6'],
    ['1/125 s', '1/125 s'],
    ['1/90 s', '1/90 s'],
    ['9/10 s', '0.9 s'],
    ['1.5/3 s', '0.5 s'],
    ['1/2\tstop', '0.5 stop'],
    ['1/2 [stop]', '0.5 stop'],
    ['2/3 stop', '0.67 stop'],
    ['1:4', '1:4'],
    ['2:1', '2:1'],
    ['1 : 4', '1:4'],
    ['+2 dpt', '2 dpt'],
    ['5600 K', '5600 K'],
    ['−131 mired', '−131 mired'],
    ['300 ppi', '300 ppi'],
    ['12 EV', '12 EV'],
  ])('%s shows as %s', (text, expected) => {
    expect(shown(text)).toBe(expected)
  })

  test('a ratio binds tightest and is a plain number', () => {
    expect(computed('1:4^2').value).toBe(0.0625)
    expect(computed('2 * 1:4 + 1').value).toBe(1.5)
    expect(shown('width * 1:4')).toBe('150 mm')
  })

  test('below zero has no mark', () => {
    expect(shown('-f/8')).toBe('−8')
    expect(shown('-1:4')).toBe('−0.25')
  })

  test.each([
    ['1./2 s', '1.', ['1.0/2 s']],
    ['1/.5 s', '.5', ['1/0.5 s']],
    ['1:x', '1:x', ['1/x']],
    ['1:0', '1:0', []],
    ['f/2 mm', 'f/2 mm', ['f/2']],
    ['f / 8', 'f / 8', ['f/8']],
  ] as const)('%s is refused at “%s”', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  test('a division that reads like a shutter time warns', () => {
    const [warning] = warningsOf('1 / 125 s')
    expect(warning?.message).toMatch(/gives a frequency. The exposure time is written 1\/125 s/)
    expect(warning && fixed('1 / 125 s', warning)).toEqual(['1/125 s'])
    expect(shown('1 / 125 s')).toBe('0.008 Hz')
    expect(warningsOf('1 / (125 s)')).toEqual([])
    expect(warningsOf('1/125 s')).toEqual([])
  })
})

describe('with a cell named f', () => {
  test.each(['f/8', '2 * f/8', 'sqrt(f/8)', '{f/8}'])('%s warns that it is the f-number', (text) => {
    const warnings = warningsOf(text, WITH_F)
    expect(warnings.map((warning) => pointed(text, warning))).toEqual(['f/8'])
    expect(warnings[0]?.message).toMatch(/f-number. To divide the cell “f”, put spaces/)
    expect(warnings[0] && fixed(text, warnings[0], WITH_F)).toEqual([text.replace('f/8', 'f / 8')])
  })

  test('f/8 = 2 warns, and is not made a comparison of a length with a number', () => {
    const [warning] = warningsOf('f/8 = 2', WITH_F)
    expect(warning && fixed('f/8 = 2', warning, WITH_F)).toEqual([])
  })

  test.each(['f / 8', 'f /8', 'f/ 8'])('%s divides it, and warns', (text) => {
    expect(shown(text, WITH_F)).toBe('7.5 mm')
    expect(warningsOf(text, WITH_F)[0]?.message).toMatch(/divides the cell “f”. The f-number is written f\/8/)
  })

  test('f/x divides it without a word', () => {
    expect(shown('f/x', WITH_F)).toBe('20 mm')
    expect(warningsOf('f/x', WITH_F)).toEqual([])
  })

  test('f/2 mm offers the division too', () => {
    expectRefused('f/2 mm', 'f/2 mm', ['f / (2 mm)', 'f/2'], WITH_F)
  })
})

test('without a cell named f, f/8 needs no warning', () => {
  expect(warningsOf('2 * f/8')).toEqual([])
})
