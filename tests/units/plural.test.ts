import fc from 'fast-check'
import { expect, test } from 'vitest'
import { agree, anyOf, clock, count, day, dayAndTime, listText, plural, shortList } from '../../src/units/plural.ts'

test('a count agrees with its noun', () => {
  expect(plural(0, 'check')).toBe('0 checks')
  expect(plural(1, 'working day')).toBe('1 working day')
  expect(plural(2, 'working day')).toBe('2 working days')
  expect(plural(3, 'lens', 'lenses')).toBe('3 lenses')
  expect(agree(1, 'fails', 'fail')).toBe('fails')
  expect(agree(0, 'fails', 'fail')).toBe('fail')
})

test('large counts are grouped as figures are', () => {
  expect(count(1200)).toBe('1200')
  expect(count(12_000)).toBe('12\u202f000')
  expect(plural(1_000_000, 'row')).toBe('1\u202f000\u202f000 rows')
})

test('a count and its noun agree as the tables of the language have it', () => {
  const numbers = new Intl.NumberFormat('en-GB', { useGrouping: 'min2' })
  const rules = new Intl.PluralRules('en-GB')
  fc.assert(
    fc.property(fc.oneof(fc.integer({ min: -3, max: 20_000 }), fc.maxSafeInteger()), (n) => {
      expect(count(n)).toBe(numbers.format(n).replaceAll(',', '\u202f'))
      expect(agree(n, 'one', 'other')).toBe(rules.select(n))
    }),
  )
})

test('lists read as English sentences', () => {
  expect(listText([])).toBe('')
  expect(listText(['A'])).toBe('A')
  expect(listText(['A', 'B', 'C'])).toBe('A, B and C')
  expect(shortList(['A', 'B', 'C'])).toBe('A, B and C')
  expect(shortList(['A', 'B', 'C', 'D'])).toBe('A, B and 2 more')
})

test('a choice of names reads as one', () => {
  expect(anyOf(['A', 'B', 'C'])).toBe('A, B or C')
})

test('days and times read as British English', () => {
  const at = new Date(2026, 2, 4, 9, 5)
  expect(day(at)).toBe('4 March 2026')
  expect(clock(at)).toBe('09:05')
  expect(dayAndTime(at)).toBe('4 March 2026, 09:05')
})

test('names are listed and counts agree as the language has it', () => {
  const names = fc.array(fc.string({ maxLength: 5 }), { maxLength: 6 })
  const [and, or] = (['conjunction', 'disjunction'] as const).map((type) => new Intl.ListFormat('en-GB', { type }))
  const rules = new Intl.PluralRules('en-GB')
  fc.assert(
    fc.property(names, fc.oneof(fc.integer({ min: -3, max: 3 }), fc.double({ noNaN: true })), (names, n) => {
      expect(listText(names)).toBe(and?.format(names))
      expect(anyOf(names)).toBe(or?.format(names))
      expect(agree(n, 'one', 'other')).toBe(rules.select(n))
    }),
  )
})
