import { expect, test } from 'vitest'
import { countExamples, examplesOf, nextOf } from '../../../src/app/examples/examples.ts'
import { exampleWords } from '../../../src/app/examples/words.ts'
import { asOwn } from '../../../src/cells/shared/given-origin.ts'
import { rowsMark } from '../../../src/worksheet/document/rows-mark.ts'
import type { Sheet, TableCell } from '../../../src/worksheet/index.ts'
import { given, sheetOf } from '../../worksheet/make.ts'

const rows = [['12'], ['20']]
const table: TableCell = {
  kind: 'table',
  id: 'sizes',
  name: 'sizes',
  columns: [{ name: 'width', unit: 'mm' }],
  rows,
  from: { kind: 'example', text: rowsMark(rows) },
}
const example = given('focal', '60', { unit: 'mm', from: { kind: 'example', text: '60' } })
const counted = (sheet: Sheet) => countExamples(examplesOf(sheet))

test('rows of an example are counted, gone to and taken over, as its figures are', () => {
  const sheet = sheetOf([example, given('height', '900', { unit: 'mm' }), table])
  expect(counted(sheet)).toEqual([1, 1])
  expect(exampleWords.stillExample(...counted(sheet))).toBe('1 figure and 1 table are still the example’s.')
  expect(exampleWords.useAllAsk(...counted(sheet))).toBe('Use 1 example figure and 1 example table?')
  expect(nextOf(sheet, examplesOf(sheet), 'focal')?.id).toBe('sizes')
  expect(nextOf(sheet, examplesOf(sheet), 'sizes')?.id).toBe('focal')

  sheet.apply({ do: 'replace', cell: { ...example, value: '90' } })
  expect(exampleWords.stillExample(...counted(sheet))).toBe('1 table is still the example’s.')
  expect(exampleWords.useAllAsk(...counted(sheet))).toBe('Use this example table?')
  sheet.apply({ do: 'replace', cell: asOwn(sheet.cell('sizes') as TableCell) })
  expect(counted(sheet)).toEqual([0, 0])
  expect(sheet.cell('sizes')).toMatchObject({ rows })
})

test('rows that were changed are no example’s any more', () => {
  const sheet = sheetOf([table])
  sheet.apply({ do: 'replace', cell: { ...table, rows: [['12'], ['21']] } })
  expect(counted(sheet)).toEqual([0, 0])
})
