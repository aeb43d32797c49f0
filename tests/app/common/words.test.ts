import { expect, test } from 'vitest'
import { checkSummaryText, foldedText, listed, when } from '../../../src/app/common/words.ts'

const standing = { holds: 0, close: 0, fails: 0, waits: 0, errors: 0 }

test('the standing is said worst first', () => {
  expect(checkSummaryText({ ...standing, errors: 1, fails: 2, close: 1, waits: 3, holds: 9 })).toBe(
    'One cell needs mending. Two checks do not hold. One check is close. Three checks wait for givens.',
  )
})

test('where all is well it is said in a few words', () => {
  expect(checkSummaryText(standing)).toBe('No checks yet.')
  expect(checkSummaryText({ ...standing, holds: 1 })).toBe('The one check holds.')
  expect(checkSummaryText({ ...standing, holds: 4 })).toBe('All four checks hold.')
  expect(checkSummaryText({ ...standing, holds: 40 })).toBe('All 40 checks hold.')
})

test('when a sheet was kept is said as one would say it today', () => {
  const now = new Date(2026, 10, 25, 12, 0)
  expect(when(new Date(2026, 10, 25, 10, 42), now)).toBe('today 10:42')
  expect(when(new Date(2026, 10, 24, 9, 5), now)).toBe('yesterday 09:05')
  expect(when(new Date(2026, 9, 3), now)).toBe('3 October 2026')
})

test('how a folded section stands is said in one sentence', () => {
  expect(foldedText({ ...standing, holds: 2, close: 1 }, 9)).toBe('Two checks hold, one is close.')
  expect(foldedText({ ...standing, holds: 1, fails: 2, waits: 1 }, 9)).toBe(
    'One check holds, two do not hold, one waits for givens.',
  )
  expect(foldedText({ ...standing, fails: 1, errors: 1 }, 9)).toBe('One check does not hold. One cell needs mending.')
  expect(foldedText(standing, 1)).toBe('One row, no check.')
})

test('words in a row', () => {
  expect(listed([])).toBe('')
  expect(listed(['a'])).toBe('a')
  expect(listed(['a', 'b', 'c'])).toBe('a, b and c')
})
