import { describe, expect, test } from 'vitest'
import { checkFormula } from '../../src/language/index.ts'
import { computed, errorOf, expectRefused, SCOPE } from './make.ts'

describe('limits of error', () => {
  test.each([
    ['600 mm ± 2 mm', 0.6, false],
    ['600 mm +/- 2 mm', 0.6, false],
    ['600 mm ± 0.5 %', 0.6, true],
    ['width ± play', 0.6, false],
    ['100 mm + 20 mm ± 1 mm', 0.12, false],
    ['50 % ± 2 %', 0.5, false],
  ])('%s are beside the value', (text, value, relative) => {
    expect(computed(text).value).toBeCloseTo(value, 12)
    expect(checkFormula(text, SCOPE).limits?.relative).toBe(relative)
  })

  test.each([
    ['600 mm +- 2 mm', '+-', ['600 mm ± 2 mm']],
    ['600 mm -+ 2 mm', '-+', ['600 mm ± 2 mm']],
    ['600 mm ± 2', '2', ['600 mm ± 2 mm']],
    ['600 mm ± 2 s', '2 s', []],
    ['width ± play ± play', 'width ± play', []],
    ['width ± play < 3 mm', 'width ± play', []],
    ['2 * (width ± play)', 'width ± play', []],
    ['lit ± 1', 'lit ± 1', []],
  ] as const)('%s are refused at “%s”', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  test('bind looser than a sum and tighter than a comparison', () => {
    expect(errorOf('1 < 2 + 3 ± 1').message).toMatch(/written once/)
    expect(checkFormula('1 + 2 ± 1 + 1', SCOPE).limits?.of).toMatchObject({ op: 'binary', sign: '+' })
  })
})
