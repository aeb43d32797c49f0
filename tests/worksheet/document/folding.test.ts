import { expect, it } from 'vitest'
import type { Cell } from '../../../src/worksheet/index.ts'
import { given, notifiedBy, seen, sheetOf } from '../make.ts'

const heading: Cell = { kind: 'note', id: 'h', role: 'heading', text: 'Frame' }
const open = () => sheetOf([heading, given('a', '1 mm')])
const type = (text: string) => ({ do: 'replace', cell: given('a', text) }) as const

it('a section is folded in the document, and out again without a trace', () => {
  const sheet = open()
  const before = sheet.worksheet
  sheet.fold('h', true)
  expect(sheet.cell('h')).toEqual({ ...heading, folded: true })
  sheet.fold('h', false)
  expect(sheet.worksheet).toEqual(before)
})

it('folding is reported, and is no step of undo', () => {
  const sheet = open()
  expect(notifiedBy(sheet, () => sheet.fold('h', true))).toBe('all')
  expect(sheet.canUndo).toBe(false)
  // What is so already, and what is no heading, is left alone.
  expect(notifiedBy(sheet, () => sheet.fold('h', true))).toEqual([])
  expect(notifiedBy(sheet, () => sheet.fold('a', true))).toEqual([])
})

it('undo and redo change what the sheet says, not what is folded', () => {
  const sheet = open()
  sheet.apply(type('2 mm'))
  sheet.fold('h', true)
  sheet.undo()
  expect(seen(sheet, 'a')).toBe('1 mm')
  expect(sheet.cell('h')).toMatchObject({ folded: true })
  sheet.fold('h', false)
  sheet.redo()
  expect(seen(sheet, 'a')).toBe('2 mm')
  expect(sheet.cell('h')).not.toHaveProperty('folded')
})

it('a section put back by undo is folded as it was then', () => {
  const sheet = open()
  sheet.fold('h', true)
  sheet.apply({ do: 'remove', id: 'h' })
  sheet.undo()
  expect(sheet.cell('h')).toMatchObject({ folded: true })
})

it('what is typed goes on merging though a section was folded meanwhile', () => {
  const sheet = open()
  sheet.apply(type('2'), { merge: 'a' })
  sheet.fold('h', true)
  sheet.apply(type('2 mm'), { merge: 'a' })
  sheet.undo()
  expect(seen(sheet, 'a')).toBe('1 mm')
  expect(sheet.canUndo).toBe(false)
})

it('another state of the document, as another tab saved it, comes with its own folds', () => {
  const sheet = open()
  const other = open()
  other.fold('h', true)
  sheet.become(other.worksheet)
  expect(sheet.worksheet).toBe(other.worksheet)
})
