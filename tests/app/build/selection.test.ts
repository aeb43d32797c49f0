import { expect, test } from 'vitest'
import { NO_SELECTION, picked, type Selection, still, toggled, upTo } from '../../../src/app/build/selection.ts'
import { given } from '../../worksheet/make.ts'

const cells = ['a', 'b', 'c', 'd', 'e'].map((name) => given(name, ''))
const ids = (picks: Selection): string =>
  picked(cells, picks)
    .map(({ id }) => id)
    .join('')

test('cells are selected and left out again one by one', () => {
  const two = toggled(toggled(NO_SELECTION, 'd'), 'b')
  expect(ids(two)).toBe('bd')
  expect(ids(toggled(two, 'd'))).toBe('b')
})

test('by keys a selection grows from where it began, and shrinks on the way back', () => {
  const down = upTo(cells, upTo(cells, NO_SELECTION, 'b', 'c'), 'c', 'd')
  expect(ids(down)).toBe('bcd')
  expect(ids(upTo(cells, down, 'd', 'c'))).toBe('bc')
  expect(ids(upTo(cells, down, 'd', 'a'))).toBe('ab')
})

test('what has gone from the sheet is no longer selected', () => {
  const picks = { ids: new Set(['b', 'x']) }
  expect([...still(cells, picks).ids]).toEqual(['b'])
  const whole = { ids: new Set(['b']) }
  expect(still(cells, whole)).toBe(whole)
})
