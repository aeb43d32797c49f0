import { expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { figuresOnly } from '../../../src/storage/figures/figures-only.ts'
import { Sheet, type TableCell } from '../../../src/worksheet/index.ts'
import { given, result, seen, sheetOf } from '../../worksheet/make.ts'

const cell: TableCell = {
  kind: 'table',
  id: 's',
  name: 'originals',
  columns: [
    { name: 'width', unit: 'mm' },
    { name: 'area', formula: 'width * width + border * border', foot: [{ figure: 'sum' }] },
    { name: 'scale', formula: '1:8' },
    { name: 'stop', unit: 'f/', formula: 'when(wide, f/8, f/5.6)' },
    { name: 'time', unit: '1/ s', formula: '1/125 s * 2' },
    { name: 'wide', formula: 'width > 200 mm' },
    { name: 'word', formula: 'when(wide, "wide", "narrow")' },
    { name: 'inverse', formula: '1 m / (width - 1 mm)' },
  ],
  rows: [['420'], ['torn'], ['1'], [''], ['15 cm']].map((row) => [...row, '', '', '', '', '', '', '']),
}
const results = ['area', 'scale', 'stop', 'time', 'inverse'].map((name) =>
  result(`sum_of_${name}`, `sum(originals.${name})`),
)

test('a table of figures holds what its formulas gave, to the last digit that counts', () => {
  const sheet = sheetOf([
    given('border', '10', { unit: 'mm' }),
    cell,
    ...results,
    result('words', 'item(originals.word, 2)'),
  ])
  const frozen = figuresOnly(sheet).cells.find((one): one is TableCell => one.kind === 'table') as TableCell
  expect(frozen.columns.every(({ formula }) => formula === undefined)).toBe(true)
  expect(frozen.rows).toEqual([
    ['420', '0.1765', '1:8', '8', '0.016', 'yes', 'wide', '2.38663484487'],
    ['torn', '', '1:8', '', '0.016', '', '', ''],
    ['1', '0.000101', '1:8', '5.6', '0.016', 'no', 'narrow', ''],
    ['', '', '', '', '', '', '', ''],
    ['15 cm', '0.0226', '1:8', '5.6', '0.016', 'no', 'narrow', '6.71140939597'],
  ])
  // Made of the figures alone, everything gives the same.
  const again = new Sheet({ ...sheet.worksheet, cells: [frozen, ...results] }, LIBRARY)
  expect(again.outcome(frozen.id)).toMatchObject({ shown: { text: '2 of 4 rows' } })
  for (const { id } of results) expect(seen(again, id)).toBe(seen(sheet, id))
})

test('a table without formulas stays as it is', () => {
  const plain = { ...cell, columns: [{ name: 'width', unit: 'mm' }], rows: [['torn']] }
  expect(figuresOnly(sheetOf([plain])).cells[1]).toEqual(plain)
})
