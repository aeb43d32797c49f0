import { expect, test } from 'vitest'
import { sectionMoved } from '../../../src/app/build/move-section.ts'
import type { Cell, Sheet } from '../../../src/worksheet/index.ts'
import { note, sheetOf } from '../../worksheet/make.ts'

const heading = (id: string): Cell => ({ kind: 'note', id, role: 'heading', text: id })
const CELLS = [note('0', ''), heading('A'), note('a', ''), heading('B'), heading('C'), note('c1', ''), note('c2', '')]
const order = (sheet: Sheet): string => sheet.cells.map(({ id }) => id).join(' ')

test.each([
  ['C', -1, '0 A a C c1 c2 B'],
  ['A', 1, '0 B A a C c1 c2'],
  ['B', 1, '0 A a C c1 c2 B'],
  ['B', -1, '0 B A a C c1 c2'],
] as const)('section %s by %s', (id, by, then) => {
  const sheet = sheetOf(CELLS)
  const change = sectionMoved(sheet.cells, id, by)
  if (change) sheet.apply(change)
  expect(order(sheet)).toBe(then)
  sheet.undo()
  expect(order(sheet)).toBe('0 A a B C c1 c2')
})

test.each([
  ['A', -1],
  ['C', 1],
  ['a', 1],
  ['nowhere', 1],
] as const)('%s by %s: there is nothing to pass', (id, by) => {
  expect(sectionMoved(CELLS, id, by)).toBeUndefined()
})
