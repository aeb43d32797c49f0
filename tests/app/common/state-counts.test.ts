import { expect, test } from 'vitest'
import { stateCounts } from '../../../src/app/common/state-counts.ts'
import { checkSummaryText, stateTexts } from '../../../src/app/common/words.ts'

test('the states there are come with the worst first, also in words', () => {
  const all = { pass: 1, marginal: 2, fail: 3, waiting: 4, errors: 5 }
  expect(stateCounts(all)).toEqual([
    ['error', 5],
    ['fail', 3],
    ['marginal', 2],
    ['waiting', 4],
    ['pass', 1],
  ])
  expect(stateTexts(all)).toEqual(['5 errors', '3 fail', '2 marginal', '4 waiting', '1 pass'])
  expect(stateTexts({ pass: 0, marginal: 0, fail: 1, waiting: 0 })).toEqual(['1 fail'])
  expect(checkSummaryText(all)).toBe(
    '5 cells have errors. 3 checks fail. 2 checks are marginal. 4 checks need more figures.',
  )
})
