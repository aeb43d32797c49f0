import { describe, expect, test } from 'vitest'
import { applyFix } from '../../src/language/index.ts'
import { computed, errorOf, expectRefused } from './make.ts'

describe('a number', () => {
  test.each([
    ['1e3', 1000],
    ['1.5E-3', 0.0015],
    ['1e−3', 0.001],
    ['1\u2009000\u2009000', 1e6],
    ['12\u202f500.25', 12500.25],
    ['1\u00a0000', 1000],
    ['−3', -3],
    ['0.5', 0.5],
  ])('%s reads as %d', (text, value) => {
    expect(computed(text).value).toBeCloseTo(value, 12)
  })

  test.each([
    ['.5', '.5', ['0.5']],
    ['.5 mm', '.5', ['0.5 mm']],
    ['5.', '5.', ['5.0']],
    ['5. mm', '5.', ['5.0 mm']],
    ['2 * 5. + 1', '5.', ['2 * 5.0 + 1']],
    ['1 200 mm', '1 200', ['1200 mm']],
    ['2 * 1 200 000', '1 200 000', ['2 * 1200000']],
    ['2–1', '–', ['2-1']],
    ['1e400', '1e400', []],
  ] as const)('written %s is refused at “%s”', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  test.each([
    ['max(1,5 mm, 2 mm)', '1,5', ['max(1.5 mm, 2 mm)']],
    ['1,5 mm', '1,5', ['1.5 mm']],
    ['1,200 mm', '1,200', ['1.200 mm', '1200 mm']],
    ['1,200,000', '1,200,000', ['1200000']],
    ['{1,2,3}', '1,2,3', ['{1, 2, 3}']],
  ] as const)('with a comma in it, %s, may be two things and is asked about', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  const SPACES = ['\t', '\n', '\u00a0', '\u2002', '\u2007', '\u2009', '\u202f', '\u3000']
  test.each(SPACES.map((space) => [`U+${space.charCodeAt(0).toString(16).padStart(4, '0')}`, space]))(
    'and its unit mean the same whichever space is between them: %s',
    (_, space) => {
      for (const text of [
        '1/125 s',
        '1/3 stop',
        '1/2 [mm]',
        '5 mm',
        '1 / 2',
        'width / 2 mm',
        '2 * 1/125 s',
        '12\u202f000 mm',
      ])
        expect(computed(text.replaceAll(' ', space)), text).toEqual(computed(text))
    },
  )

  test.each([
    ['1\u00a01/3 stop', '1 1/3 stop', ['1 stop + 1/3 stop']],
    ['5\u00a0ft\u00a03\u00a0in', '5 ft 3 in', ['5 ft + 3 in']],
    ['12\u202f0001', '0001', []],
    ['1\u00a0000\u00a00', '0', []],
    ['1\u00a02', '2', []],
  ] as const)('has no digits joined by a space that groups no three of them: %s', (text, at, fixes) => {
    const { from, to } = errorOf(text)
    expect(text.slice(from, to).replace(/\s/g, ' ')).toBe(at)
    expect(errorOf(text).fixes.map((fix) => applyFix(text, fix))).toEqual(fixes)
  })

  test('does not change the spaces in a text', () => {
    expect(computed('"a\u00a0b"').value).toBe('a\u00a0b')
    expect(computed('profile = "wide\u00a0" or profile = "wide"').value).toBe(true)
    expect(computed('profile = "wide\u00a0"').value).toBe(false)
  })

  test('too large on the way is refused where it happens, not lost in a later step', () => {
    for (const text of ['1e308 * 10', 'min(1e308 * 10, 5)', '1e308 + 1e308 > 5', 'min(1e200^2, 5)', '1/(1e308*10)'])
      expect(() => computed(text), text).toThrow(/too large/)
  })
})
