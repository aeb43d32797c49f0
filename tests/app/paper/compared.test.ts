import { expect, test } from 'vitest'
import { htmlText } from '../../../src/app/paper/html-text.ts'
import { rowsOf } from '../../../src/app/paper/rows.ts'
import type { Cell } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../../worksheet/make.ts'

const CELLS: readonly Cell[] = [
  given('a', '2', { unit: 'mm', label: 'Gap' }),
  result('b', 'a * 2', { label: 'Twice' }),
  { kind: 'range', id: 'r', of: 'a', from: '1', to: '3', count: 2, results: ['b'] },
  { kind: 'variants', id: 'v', title: 'Two gaps', sets: [{ title: 'More', values: { a: '5' } }], results: ['b'] },
  { kind: 'range', id: 'q', title: 'Not filled in', results: [] },
  { kind: 'range', id: 'bad', title: 'A bad end', of: 'a', from: '1 kg', to: 'three', results: ['b'] },
]
const written = rowsOf(sheetOf(CELLS), CELLS, {}).map(htmlText).join('\n')

test('a range is printed as its plot and its table, the present value marked', () => {
  expect(written).toMatch(/<svg[^>]*class="drawing"/)
  expect(written.replace(/<[^>]*>/g, '|')).toMatch(/1 mm\|+2 mm\|+2 mm, now\|+4 mm\|+3 mm\|+6 mm/)
})

test('variants are printed side by side with what differs', () => {
  expect(written.replace(/<[^>]*>/g, '|')).toMatch(/Twice\|+4 mm\|+10 mm, 6 mm over/)
})

test('a range that is not filled in says what is missing', () => {
  expect(written).toContain('Not filled in: Choose the given')
})

test('a range with an end that cannot be read says which, and the rest is printed', () => {
  expect(written.replace(/<[^>]*>/g, '|')).toMatch(/A bad end: Where the range begins cannot be read: /)
  expect(written).not.toMatch(/Error|undefined|\[object/)
})
