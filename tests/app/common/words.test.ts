import { expect, test } from 'vitest'
import { checkSummaryText, when } from '../../../src/app/common/words.ts'
import { foldedText } from '../../../src/app/summary/words.ts'

const none = { pass: 0, marginal: 0, fail: 0, waiting: 0, errors: 0 }

test('the check summary names the worst first', () => {
  expect(checkSummaryText({ ...none, errors: 1, fail: 2, marginal: 1, waiting: 3, pass: 9 })).toBe(
    '1 cell has an error. 2 checks fail. 1 check is marginal. 3 checks need more figures.',
  )
})

test('a summary without problems is short', () => {
  expect(checkSummaryText(none)).toBe('No checks yet.')
  expect(checkSummaryText({ ...none, pass: 1 })).toBe('The check passes.')
  expect(checkSummaryText({ ...none, pass: 4 })).toBe('All 4 checks pass.')
})

test('a time is given as the day it was', () => {
  const now = new Date(2026, 10, 25, 12, 0)
  expect(when(new Date(2026, 10, 25, 10, 42), now)).toBe('today 10:42')
  expect(when(new Date(2026, 10, 24, 9, 5), now)).toBe('yesterday 09:05')
  expect(when(new Date(2026, 9, 3), now)).toBe('3 October 2026')
})

test('the checks of a folded section are counted by state', () => {
  expect(foldedText({ ...none, pass: 2, marginal: 1 }, 9)).toBe('Checks: 1 marginal, 2 pass.')
  expect(foldedText({ ...none, fail: 1, errors: 1, waiting: 2 }, 9)).toBe('Checks: 1 error, 1 fail, 2 waiting.')
  expect(foldedText(none, 1)).toBe('1 row, no checks.')
})
