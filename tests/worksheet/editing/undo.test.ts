import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { type Cell, type Change, ChangeRefused, type Sheet } from '../../../src/worksheet/index.ts'
import { given, note, result, seen, sheetOf } from '../make.ts'

const typed = (text: string) => ({ do: 'replace', cell: given('a', text) }) as const

describe('undo', () => {
  it('takes typing that merges back in one step', () => {
    const sheet = sheetOf([given('a', '')])
    for (const text of ['6', '60', '60 mm']) sheet.apply(typed(text), { merge: 'a' })
    expect(seen(sheet, 'a')).toBe('60 mm')
    sheet.undo()
    expect(sheet.canUndo).toBe(false)
    expect(sheet.cell('a')).toMatchObject({ value: '' })
    sheet.redo()
    expect(seen(sheet, 'a')).toBe('60 mm')
    expect(sheet.canRedo).toBe(false)
  })

  it('does not merge one field with another', () => {
    const sheet = sheetOf([given('a', ''), given('b', '')])
    sheet.apply(typed('1 mm'), { merge: 'a' })
    sheet.apply({ do: 'replace', cell: given('b', '2 mm') }, { merge: 'b' })
    sheet.undo()
    expect(sheet.cell('b')).toMatchObject({ value: '' })
    expect(seen(sheet, 'a')).toBe('1 mm')
  })

  it('ends the merging: what was undone to is a step of its own', () => {
    const sheet = sheetOf([given('a', '')])
    sheet.apply(typed('1 mm'), { merge: 'a' })
    sheet.apply({ do: 'title', title: 'Another' })
    sheet.undo()
    sheet.apply(typed('2 mm'), { merge: 'a' })
    sheet.undo()
    expect(seen(sheet, 'a')).toBe('1 mm')
  })

  it('has nothing to take back on a fresh sheet, nor to do again after a change', () => {
    const sheet = sheetOf([given('a', '')])
    expect(sheet.undo()).toBe(false)
    sheet.apply(typed('1 mm'))
    sheet.undo()
    sheet.apply(typed('2 mm'))
    expect(sheet.redo()).toBe(false)
  })

  it('leaves nothing of a refused change, not even half of several', () => {
    const sheet = sheetOf([given('a', '1 mm'), given('b', '2 mm')])
    const before = sheet.worksheet
    const changes: Change[] = [typed('9 mm'), { do: 'rename', id: 'b', name: 'a' }]
    expect(() => sheet.apply({ do: 'several', changes })).toThrow(ChangeRefused)
    expect(sheet.worksheet).toBe(before)
    expect(sheet.canUndo).toBe(false)
    expect(seen(sheet, 'a')).toBe('1 mm')
  })
})

const NAMES = ['a', 'b', 'c', 'd', 'e']
const name = fc.constantFrom(...NAMES)
const formula = fc.oneof(
  fc.tuple(name, fc.constantFrom(' + 1 mm', ' * 2', ' ^ 2', ' / 0', ' +', '')).map((parts) => parts.join('')),
  fc.tuple(name, fc.constantFrom(' + ', ' * '), name).map((parts) => parts.join('')),
  fc.constantFrom('1 mm', '2 s', ''),
)
const value = fc.constantFrom('', '1 mm', '2 mm ± 1 mm', '3 s', 'nonsense', 'f/8')
const cell: fc.Arbitrary<Cell> = fc.oneof(
  fc.tuple(name, name, value).map(([id, cellName, text]) => ({ ...given(cellName, text), id })),
  fc.tuple(name, name, formula).map(([id, cellName, text]) => ({ ...result(cellName, text), id })),
  fc.tuple(name, fc.string()).map(([id, text]) => note(id, text)),
)
const change: fc.Arbitrary<Change> = fc.oneof(
  cell.map((one): Change => ({ do: 'replace', cell: one })),
  cell.map((one): Change => ({ do: 'replace', cell: one })),
  fc.tuple(cell, fc.nat(6)).map(([one, at]): Change => ({ do: 'add', cell: one, at })),
  name.map((id): Change => ({ do: 'remove', id })),
  fc.tuple(name, fc.nat(6)).map(([id, to]): Change => ({ do: 'move', id, to })),
  fc.tuple(name, name).map(([id, to]): Change => ({ do: 'rename', id, name: to })),
)

/** All a sheet says of its cells. */
const allOf = (sheet: Sheet): unknown =>
  sheet.cells.map(({ id, kind }) => (kind === 'note' ? id : [id, sheet.outcome(id)]))

describe('after any changes', () => {
  it('a circle is reported in the order of the sheet, also after cells have moved', () => {
    const sheet = sheetOf([given('a', '1 mm'), result('b', 'a + 1 mm')])
    sheet.apply({ do: 'move', id: 'a', to: 1 })
    sheet.apply({ do: 'replace', cell: result('a', 'b + a') })
    expect(allOf(sheet)).toEqual(allOf(sheetOf(sheet.cells)))
  })

  it('a sheet says what one freshly opened on the same document says', () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 12 }), (changes) => {
        const sheet = sheetOf([given('a', '1 mm'), result('b', 'a + 1 mm'), result('c', 'b'), given('d', '')])
        for (const one of changes) {
          try {
            sheet.apply(one)
          } catch (error) {
            if (!(error instanceof ChangeRefused)) throw error
          }
          expect(allOf(sheet)).toEqual(allOf(sheetOf(sheet.cells)))
        }
      }),
      { numRuns: 400 },
    )
  })

  it('undo goes back over every document, and redo forth, cells unchanged being the same objects', () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 12 }), (changes) => {
        const sheet = sheetOf([given('a', '1 mm'), result('b', 'a + 1 mm'), given('c', '')])
        const documents = [sheet.worksheet]
        for (const one of changes)
          try {
            sheet.apply(one)
            documents.push(sheet.worksheet)
          } catch (error) {
            if (!(error instanceof ChangeRefused)) throw error
          }
        const reported = allOf(sheet)
        for (let at = documents.length - 2; at >= 0; at--) {
          expect(sheet.undo()).toBe(true)
          expect(sheet.worksheet).toBe(documents[at])
        }
        expect(sheet.undo()).toBe(false)
        expect(allOf(sheet)).toEqual(allOf(sheetOf(sheet.cells)))
        for (let at = 1; at < documents.length; at++) {
          expect(sheet.redo()).toBe(true)
          expect(sheet.worksheet).toBe(documents[at])
        }
        expect(allOf(sheet)).toEqual(reported)
      }),
      { numRuns: 200 },
    )
  })
})

test('undo and redo go on from the steps of an earlier visit, and not over what was changed since', () => {
  const first = sheetOf([given('a', '1')])
  for (const job of ['one', 'two', 'three', 'four']) first.apply({ do: 'job', job })
  first.undo()
  first.undo()
  const steps = JSON.parse(JSON.stringify(first.steps))
  const again = sheetOf([given('a', '1')])
  again.become(first.worksheet)
  again.recallSteps(steps)
  expect(again.steps.undo).toHaveLength(1)

  const fresh = first.trial(first.cells)
  fresh.recallSteps(steps)
  expect(fresh.redo()).toBe(true)
  expect(fresh.worksheet.job).toBe('three')
  expect(fresh.redo()).toBe(true)
  expect(fresh.worksheet.job).toBe('four')
  expect(fresh.redo()).toBe(false)
  for (const job of ['three', 'two', 'one', undefined]) {
    expect(fresh.undo()).toBe(true)
    expect(fresh.worksheet.job).toBe(job)
  }
  expect(fresh.undo()).toBe(false)
})
