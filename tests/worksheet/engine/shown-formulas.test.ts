import { describe, expect, test } from 'vitest'
import type { FunctionCell } from '../../../src/worksheet/index.ts'
import { given, result, seen, sheetOf } from '../make.ts'

const kindOf = (sheet: ReturnType<typeof sheetOf>, formula: string) => {
  const shown = sheet.engine.compileShown(formula)
  return shown?.errors[0]?.message ?? JSON.stringify(shown?.meaning?.computable.type)
}

describe('a formula shown in a text', () => {
  const cells = [given('a', '5', { unit: 'mm' }), given('b', '2')]

  test('is compiled once, as long as the types that it uses stay', () => {
    const sheet = sheetOf(cells)
    const first = sheet.engine.compileShown('a * b')
    sheet.apply({ do: 'replace', cell: given('b', '3') })
    sheet.apply({ do: 'insert', cells: [result('c', '2 * a')], at: 2 })
    expect(sheet.engine.compileShown('a * b')).toBe(first)
  })

  test('is compiled again once a cell it names is of another type', () => {
    const sheet = sheetOf(cells)
    const length = kindOf(sheet, 'a * b')
    sheet.apply({ do: 'replace', cell: given('a', '5', { unit: 's' }) })
    expect(kindOf(sheet, 'a * b')).not.toBe(length)
    sheet.apply({ do: 'replace', cell: given('a', '5', { unit: 'mm' }) })
    expect(kindOf(sheet, 'a * b')).toBe(length)
  })

  test('that names nothing there is compiled again after each edit, and not before', () => {
    const sheet = sheetOf(cells)
    const wrong = sheet.engine.compileShown('later + b')
    expect(wrong?.errors).toHaveLength(1)
    expect(sheet.engine.compileShown('later + b')).toBe(wrong)
    sheet.apply({ do: 'insert', cells: [given('latter', '4')], at: 2 })
    const renewed = sheet.engine.compileShown('later + b')
    expect(renewed).not.toBe(wrong)
    expect(JSON.stringify(renewed?.errors)).toContain('latter')
    sheet.apply({ do: 'insert', cells: [given('later', '4')], at: 3 })
    expect(sheet.engine.compileShown('later + b')?.errors).toEqual([])
  })
})

describe('the fast way of an edit', () => {
  test('is left where the cell is new, or of another kind or name', () => {
    const { engine } = sheetOf([given('a', '5'), result('b', '2 * a')])
    expect(engine.replace(given('new', '1'))).toBeUndefined()
    expect(engine.replace({ ...result('a', '3') })).toBeUndefined()
    expect(engine.replace({ ...given('a', '5'), name: 'other' })).toBeUndefined()
    expect(engine.replace(given('a', '6'))).toBeDefined()
  })
})

describe('the functions of a sheet', () => {
  const own = (name: string, formula: string): FunctionCell => ({
    kind: 'function',
    id: name,
    name,
    arguments: [{ name: 'x' }],
    formula,
  })
  const cells = [own('twice', '2 * x'), own('thrice', '3 * x'), given('a', '5'), result('b', 'twice(a) + thrice(a)')]

  test('stay as they are while other cells come and go', () => {
    const sheet = sheetOf(cells)
    const before = sheet.engine.ownFunctions
    sheet.apply({ do: 'insert', cells: [given('c', '1')], at: 4 })
    expect(sheet.engine.ownFunctions).toBe(before)
  })

  test('are defined again where one of several changes or goes', () => {
    const sheet = sheetOf(cells)
    expect(seen(sheet, 'b')).toBe('25')
    sheet.apply({ do: 'replace', cell: own('thrice', '4 * x') })
    expect(seen(sheet, 'b')).toBe('30')
    sheet.apply({ do: 'remove', id: 'thrice' })
    expect(seen(sheet, 'b')).toContain('no function “thrice”')
    expect(sheet.engine.ownFunctions.map(({ cell }) => cell.name)).toEqual(['twice'])
  })
})
