import { afterEach, describe, expect, it, test } from 'vitest'
import { result, seen, sheetOf } from '../worksheet/make.ts'
import { diagnosed } from './make.ts'

const before = Object.getOwnPropertyNames(Object.prototype)

afterEach(() => {
  expect(Object.getOwnPropertyNames(Object.prototype)).toEqual(before)
})

const ABSURD: readonly (readonly [string, string])[] = [
  ['50,000 brackets', '('.repeat(50_000)],
  ['50,000 closed brackets', `${'('.repeat(50_000)}1${')'.repeat(50_000)}`],
  ['a sum of 200,000 terms', Array(200_000).fill('1').join('+')],
  ['a list of 100,000', `{${Array(100_000).fill('1').join(', ')}}`],
  ['nine to the nine to the nine to the nine', '9^9^9^9'],
  ['a tower of a thousand nines', Array(1000).fill('9').join('^')],
  ['a very long name', 'a'.repeat(100_000)],
  ['a name as long as a formula may be', 'a'.repeat(2000)],
  ['a call a hundred and one deep', `${'sqrt('.repeat(101)}4${')'.repeat(101)}`],
  ['a null character', '1\u0000 + 2'],
  ['a lone surrogate', '1 + \ud800'],
  ['a mark of direction', '1 \u202e+ 2'],
  ['a pair of surrogates', '1 + \u{1f4f7}'],
  ['only spaces', ' '.repeat(1999)],
  ['only signs', '+*/^'.repeat(400)],
  ['only colons', '1:'.repeat(900)],
  ['only points', '.'.repeat(1900)],
  ['only quotes', '"'.repeat(1901)],
  ['only opening brackets of units', '1 ['.repeat(90)],
  ['only limits', '1 ± '.repeat(300)],
  ['dots of a record', `sensor${'.width'.repeat(300)}`],
  ['comparisons in a row', Array(400).fill('1').join(' < ')],
  ['__proto__', '__proto__'],
  ['__proto__ as a part', 'x.__proto__.polluted'],
  ['constructor called', 'constructor("return 1")'],
  ['hasOwnProperty called', 'hasOwnProperty("x")'],
  ['toString', 'toString'],
  ['an assignment', 'x = y = 3'],
  ['a function’s definition', 'f(x) = x'],
]

describe('absurd text is an error in its cell, reported promptly, and the rest of the sheet goes on:', () => {
  test.each(ABSURD)('%s', (_, text) => {
    const start = performance.now()
    const sheet = sheetOf([result('odd', text), result('user', 'odd + 1'), result('a', '2 mm'), result('b', 'a * 2')])
    const outcome = sheet.outcome('odd')
    expect(performance.now() - start).toBeLessThan(10_000)
    expect(outcome.state === 'error' || text.trim() === '').toBe(true)
    expect(sheet.outcome('user').state).not.toBe('value')
    expect(seen(sheet, 'b')).toBe('4 mm')
    if (outcome.state === 'error')
      for (const { message, from, to } of outcome.diagnostics) {
        expect(message.length).toBeLessThan(3000)
        expect(from).toBeLessThanOrEqual(to)
        expect(to).toBeLessThanOrEqual(text.length)
      }
  })
})

describe('deep but not absurd', () => {
  it.each([
    ['nested brackets', `${'('.repeat(100)}1${')'.repeat(100)}`],
    ['signs', `${'-'.repeat(1998)}1`],
    ['negations', `${'not '.repeat(400)}yes`],
    ['a sum', Array(1000).fill('1').join('+')],
    ['differences of a cell', `x${'-x'.repeat(900)}`],
    ['signs before a cell', `${'-'.repeat(1500)}x`],
    ['powers of a cell', Array(900).fill('x').join('^')],
    ['outcomes of when', `${'when(yes, 1, '.repeat(60)}1${')'.repeat(60)}`],
  ])('%s give a value or an error, never a crash', (_, text) => {
    const sheet = sheetOf([result('x', '1'), result('odd', text)])
    expect(sheet.outcome('odd').state).toMatch(/value|error/)
    diagnosed(text)
  })
})

it('a text that looks like code is a text', () => {
  expect(seen(sheetOf([result('a', '"); process.exit(1); ("')]), 'a')).toBe('); process.exit(1); (')
})

it('refuses brackets by what is outside texts', () => {
  const sheet = sheetOf([result('a', `"${'('.repeat(200)}" = "x"`)])
  expect(seen(sheet, 'a')).toBe('no')
})
