import { describe, expect, test } from 'vitest'
import { computed, expectRefused, shown } from './make.ts'

describe('a condition', () => {
  test.each([
    ['x = 3', true],
    ['x != 3', false],
    ['x ≠ 4', true],
    ['width >= 600 mm', true],
    ['width ≤ 0.6 m', true],
    ['0.1 + 0.2 = 0.3', true],
    ['0.1 + 0.2 > 0.3', false],
    ['not x < 3', true],
    ['not lit and lit', false],
    ['lit or no and no', true],
    ['profile = "wide"', true],
    ['lit = yes', true],
    ['1 + 1 < 3 and 2 > 1', true],
    ['x = 3 or 1/0 > 1', true],
    ['x = 4 and 1/0 > 1', false],
  ])('%s gives %s', (text, value) => {
    expect(computed(text).value).toBe(value)
  })

  test.each([
    ['1 < x < 5', '1 < x < 5', ['1 < x and x < 5']],
    ['1 < 2 < x < 4', '1 < 2 < x < 4', ['1 < 2 and 2 < x and x < 4']],
    ['x == 3', '==', ['x = 3']],
    ['x <> 3', '<>', ['x ≠ 3']],
    ['lit && lit', ' && ', ['lit and lit']],
    ['lit||lit', '||', ['lit or lit']],
    ['width < wait', 'width < wait', []],
    ['width = 3', 'width = 3', ['width = 3 mm']],
    ['profile < "b"', 'profile', []],
    ['{1} = {1}', '{1}', []],
    ['x and lit', 'x', []],
    ['not x', 'x', []],
    ['profile = “wide”', '“wide”', ['profile = "wide"']],
    ["profile = 'wide'", "'wide'", ['profile = "wide"']],
    ['profile = "wide', '"wide', ['profile = "wide"']],
  ] as const)('%s is refused at “%s”', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  test.each(['and', 'or', 'not', 'and + 1', 'x * or'])('%s is no use of a reserved word', (text) => {
    expect(() => computed(text)).toThrow(/does not fit here|Something is missing/)
  })
})

describe('when', () => {
  test('computes only the outcome it chooses', () => {
    expect(shown('when(x > 2, 1 mm, 1 mm / 0)')).toBe('1 mm')
    expect(shown('when(x < 2, 1 mm / 0, 2 mm)')).toBe('2 mm')
    expect(shown('when(lit, when(no, 1, 2), 3) + 1')).toBe('3')
  })

  test.each([
    ['when(x, 1, 2)', 'x', []],
    ['when(lit, 1 mm, 2)', '2', ['when(lit, 1 mm, 2 mm)']],
    ['when(lit, 1)', 'when(lit, 1)', []],
    ['when(condition: lit, 1, 2)', 'when(condition: lit, 1, 2)', []],
  ] as const)('%s is refused at “%s”', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })
})
