import { expect, test } from 'vitest'
import { sectionsOf, spreadsOf } from '../../../src/app/open/sections.ts'
import type { Cell } from '../../../src/worksheet/index.ts'

const heading = (id: string): Cell => ({ kind: 'note', id, role: 'heading', text: id })
const given = (id: string, exact = false): Cell => ({
  kind: 'given',
  id,
  name: id,
  value: '',
  ...(exact ? { more_exact: true } : {}),
})
const drawing = (id: string): Cell => ({ kind: 'drawing', id, drawing: 'set-up', from: {} })

test('a heading opens a section; what is before the first has a section of its own', () => {
  const sections = sectionsOf([given('a'), heading('Frame'), given('b'), heading('Light'), given('c')])
  expect(sections.map(({ id, rows }) => [id, rows.map((row) => row.id)])).toEqual([
    ['start', ['a']],
    ['Frame', ['b']],
    ['Light', ['c']],
  ])
})

test('drawings go to the margin and what is seldom known is folded away', () => {
  const [section] = sectionsOf([heading('Frame'), drawing('d'), given('a', true), given('b')])
  expect(section?.rows.map(({ id }) => id)).toEqual(['b'])
  expect(section?.exact.map(({ id }) => id)).toEqual(['a'])
  expect(section?.drawings.map(({ id }) => id)).toEqual(['d'])
})

test('one drawing is beside every section; a second starts a spread of its own', () => {
  const one = sectionsOf([heading('A'), heading('B'), drawing('d'), heading('C')])
  expect(spreadsOf(one).map((spread) => spread.map(({ id }) => id))).toEqual([['A', 'B', 'C']])
  const two = sectionsOf([heading('A'), drawing('d'), heading('B'), heading('C'), drawing('e'), heading('D')])
  expect(spreadsOf(two).map((spread) => spread.map(({ id }) => id))).toEqual([
    ['A', 'B'],
    ['C', 'D'],
  ])
})

test('an empty sheet has no sections', () => {
  expect(spreadsOf(sectionsOf([]))).toEqual([])
})
