import { describe, expect, test } from 'vitest'
import { checkFormula } from '../../src/language/index.ts'
import { LENGTH } from '../../src/units/index.ts'
import { computed, diagnosed, errorOf, expectRefused, SCOPE, scopeOf, WITH_F } from './make.ts'

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

  test.each([
    ['lit ± 1', 'Only a number or a quantity can have limits.'],
    ['1 ± lit', 'Only a number or a quantity can have limits.'],
    ['width ± 2 s', 'The value is a length, but its limits are a time.'],
    ['width ± 2', 'The value is a length, but its limits are a plain number.'],
    ['x ± 2 mm', 'The value is a plain number, but its limits are a length.'],
    ['2 * (width ± play)', '“±” is written once, at the end of the whole formula.'],
  ])('%s: %s', (text, message) => {
    expect(errorOf(text).message).toBe(message)
  })

  test('bind looser than a sum and tighter than a comparison', () => {
    expect(errorOf('1 < 2 + 3 ± 1').message).toMatch(/written once/)
    expect(checkFormula('1 + 2 ± 1 + 1', SCOPE).limits?.of).toMatchObject({ op: 'binary', sign: '+' })
  })
})

describe('what is said of a formula', () => {
  const said = (text: string, cells = WITH_F): { errors: number; doubts: number } => {
    const found = diagnosed(text, cells)
    const errors = found.filter(({ severity }) => severity === 'error').length
    return { errors, doubts: found.length - errors }
  }

  test('is twenty errors at most, and twenty doubts', () => {
    expect(said(Array(20).fill('nothing').join(' + '))).toEqual({ errors: 20, doubts: 0 })
    expect(said(Array(25).fill('nothing').join(' + '))).toEqual({ errors: 20, doubts: 0 })
    expect(said(Array(25).fill('f/8').join(' + '))).toEqual({ errors: 0, doubts: 20 })
  })

  test('is never doubts alone where it is wrong as well', () => {
    expect(said(`${'f/8 + '.repeat(25)}nothing`)).toEqual({ errors: 1, doubts: 20 })
    const scaled = `${'f/8 + '.repeat(25)}2 EV * 2 / 1 EV`
    expect(said(scaled)).toEqual({ errors: 1, doubts: 20 })
    expect(checkFormula(scaled, scopeOf(WITH_F)).root).toBeUndefined()
  })
})

test('a tree too deep for the stack is refused in words', () => {
  const deep = (count: number): string => `${'-'.repeat(count)}x`
  expect(diagnosed(deep(1000))).toEqual([])
  expect(diagnosed(deep(1060)).map(({ message }) => message)).toEqual([
    'This is nested too deeply. Split the formula over several cells.',
  ])
})

test('limits are those of a whole formula that is sound', () => {
  const limits = (text: string) => checkFormula(text, SCOPE).limits
  expect(limits('width ± 2 mm')?.of.type).toMatchObject({ kind: 'number', dimension: LENGTH })
  expect(limits('width ± 2 %')).toMatchObject({ relative: true })
  expect(limits('width ± 2 ‰')).toMatchObject({ relative: true })
  expect(limits('x ± 2 %')).toMatchObject({ relative: false })
  expect(limits('width')).toBeUndefined()
  expect(limits('2 EV * 2 ± 1 stop')).toBeUndefined()
  expect(limits('width ± x')).toBeUndefined()
})

test('a function that may give an infinite result lets the whole formula be infinite', () => {
  const infinite = (text: string): boolean => checkFormula(text, SCOPE).mayBeInfinite
  expect(infinite('depth_of_field(f/8, 12 um, 1:4, 60 mm).total')).toBe(true)
  expect(infinite('sqrt(x)')).toBe(false)
  expect(infinite('x +')).toBe(false)
  expect(infinite('x;')).toBe(false)
})

test('the functions a formula calls are named once, and none where it cannot be read', () => {
  const calls = (text: string): string[] => checkFormula(text, SCOPE).calls.map(({ name }) => name)
  expect(calls('sqrt(x) + sqrt(2) * max(1, 2)')).toEqual(['sqrt', 'max'])
  expect(calls('sqrt(x;)')).toEqual([])
  expect(checkFormula('sqrt(x;)', SCOPE)).toMatchObject({ uses: [], nameSpans: [] })
})
