import { expect, it } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { given, note, notifiedBy, result, seen, sheetOf } from '../make.ts'

const without = (name: string) => new Map([...LIBRARY].filter(([known]) => known !== name))

const CELLS = [
  given('x', '4'),
  result('root', 'sqrt(x)'),
  result('twice', '2 * root'),
  result('other', 'x + 1'),
  result('odd', 'no_such(x)'),
]

it('a function that comes later heals the cell that calls it, and those behind it', () => {
  const sheet = sheetOf(CELLS, without('sqrt'))
  expect(seen(sheet, 'root')).toMatch(/no function “sqrt”/)
  expect(seen(sheet, 'twice')).toMatch(/error/)
  expect([...notifiedBy(sheet, () => sheet.extend(LIBRARY))].sort()).toEqual(['odd', 'root', 'twice'])
  expect(['root', 'twice', 'other'].map((id) => seen(sheet, id))).toEqual(['2', '4', '5'])
  expect(seen(sheet, 'odd')).toMatch(/no function/)
})

it('a larger library touches nothing of a sound sheet but what shows the results of formulas in texts', () => {
  const cells = [given('x', '4'), result('twice', '2 * x'), note('told', 'It is {twice}.')]
  const sheet = sheetOf(cells, without('sqrt'))
  expect([...notifiedBy(sheet, () => sheet.extend(LIBRARY))]).toEqual(['told'])
  sheet.apply({ do: 'replace', cell: result('twice', 'sqrt(x)') })
  expect(seen(sheet, 'twice')).toBe('2')
})

it('a larger library is no step to undo, and stays when one is undone', () => {
  const sheet = sheetOf(CELLS, without('sqrt'))
  sheet.extend(LIBRARY)
  expect(sheet.canUndo).toBe(false)
  sheet.apply({ do: 'replace', cell: result('twice', '3 * root') })
  expect(seen(sheet, 'twice')).toBe('6')
  sheet.undo()
  expect(seen(sheet, 'twice')).toBe('4')
})
