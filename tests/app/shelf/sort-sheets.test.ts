import { expect, test } from 'vitest'
import { ORDERS, sortedSheets } from '../../../src/app/shelf/sort-sheets.ts'
import type { Summary } from '../../../src/storage/store/types.ts'

const sheet = (id: string, more: Partial<Summary>): Summary => ({
  id,
  title: 'A flat sheet',
  changed: 1,
  cells: 3,
  ...more,
})
const counts = (fail: number, waiting: number) => ({ pass: 1, marginal: 0, fail, waiting })
const SHEETS = [
  sheet('a', { job: 'Box 10', changed: 5, checks: counts(0, 2) }),
  sheet('b', { job: 'Box 9', changed: 7, checks: counts(3, 0) }),
  sheet('c', { title: 'Äcker', changed: 2 }),
  sheet('d', { job: 'box 9', changed: 9, checks: counts(0, 0) }),
]
const ids = (order: (typeof ORDERS)[number]) => sortedSheets(SHEETS, order).map(({ id }) => id)

test('thirty jobs are sorted by time, by name as people count, and by what fails', () => {
  expect(ids('saved')).toEqual(['d', 'b', 'a', 'c'])
  expect(ids('job')).toEqual(['c', 'd', 'b', 'a'])
  expect(ids('checks')).toEqual(['b', 'a', 'd', 'c'])
  for (const order of ORDERS) expect([...ids(order)].sort()).toEqual(['a', 'b', 'c', 'd'])
})
