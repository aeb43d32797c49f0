import { expect, test } from 'vitest'
import { sectionsOf } from '../../../src/app/open/sections.ts'
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

test('drawings go to the margin, and fine adjustments are folded away', () => {
  const [section] = sectionsOf([heading('Frame'), drawing('d'), given('a', true), given('b')])
  expect(section?.rows.map(({ id }) => id)).toEqual(['b'])
  expect(section?.exact.map(({ id }) => id)).toEqual(['a'])
  expect(section?.drawings.map(({ id }) => id)).toEqual(['d'])
})

test('an empty sheet has no sections', () => {
  expect(sectionsOf([])).toEqual([])
})
