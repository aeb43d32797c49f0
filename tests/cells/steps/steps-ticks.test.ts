import { expect, test } from 'vitest'
import { withLock } from '../../../src/cells/shared/locked.ts'
import { doneText, hasReadings, startedOver, ticked, withoutReadings } from '../../../src/cells/steps/steps-ticks.ts'
import { type Result, readDocument, type Steps, writeDocument } from '../../../src/worksheet/index.ts'
import { given, result, seen, sheetOf } from '../../worksheet/make.ts'

const steps: Steps = {
  kind: 'steps',
  id: 's',
  later: 'kept',
  steps: [
    { text: 'Level', done: true },
    { text: 'Left', reading: 'left', done: true, colour: 'kept' },
    { text: 'Distance', reading: 'far' },
    { text: 'Left again', reading: 'left' },
    { text: 'Gone', reading: 'gone' },
  ],
}

test('progress is given in words', () => {
  expect(doneText([])).toBe('No steps yet')
  expect(doneText(steps.steps)).toBe('2 of 5 done')
  expect(doneText([{ text: '', done: true }])).toBe('1 of 1 done')
  expect(doneText(steps.steps.map((step) => ({ ...step, done: true })))).toBe('All 5 done')
})

test('a tick is set and taken away, and all else is saved', () => {
  expect(ticked(steps, 2, true).steps[2]).toEqual({ text: 'Distance', reading: 'far', done: true })
  expect(ticked(steps, 1, false).steps[1]).toEqual({ text: 'Left', reading: 'left', colour: 'kept' })
  expect(ticked(ticked(steps, 2, true), 2, false)).toEqual(steps)
})

test('a new session begins without ticks, in one step of undo, and the readings stay', () => {
  const sheet = sheetOf([given('left', '400 lx'), result('far', '600 mm', { measured: '604 mm' }), steps])
  sheet.apply({ do: 'replace', cell: startedOver(steps) })
  const over = sheet.cell('s') as Steps
  expect(over.steps.some((step) => 'done' in step)).toBe(false)
  expect(over).toMatchObject({ later: 'kept' })
  expect(seen(sheet, 'left')).toBe('400 lx')
  sheet.undo()
  expect(sheet.cell('s')).toBe(steps)
  expect(sheet.canUndo).toBe(false)
})

test('asked for, the readings go too, in one step of undo', () => {
  const sheet = sheetOf([given('left', '400 lx'), result('far', '600 mm', { measured: '604 mm' }), steps])
  expect(hasReadings(steps, sheet)).toBe(true)
  sheet.apply(withoutReadings(steps, sheet))
  expect(sheet.cell('left')).toMatchObject({ value: '' })
  expect(seen(sheet, 'far')).toBe('600 mm')
  expect(hasReadings(steps, sheet)).toBe(false)
  sheet.undo()
  expect(seen(sheet, 'left')).toBe('400 lx')
  expect(seen(sheet, 'far')).toBe('604 mm')
  expect(sheet.canUndo).toBe(false)
})

test('a reading that is locked stays, and one of several locks is one step of undo', () => {
  const sheet = sheetOf([given('left', '400 lx'), result('far', '600 mm', { measured: '604 mm' }), steps])
  sheet.apply({ do: 'replace', cell: withLock(sheet.cell('far') as Result, true) })
  sheet.apply(withoutReadings(steps, sheet))
  expect(sheet.cell('left')).toMatchObject({ value: '' })
  expect(seen(sheet, 'far')).toBe('604 mm')
  sheet.undo()
  sheet.undo()
  expect(sheet.cell('far')).not.toHaveProperty('locked')
  expect(sheet.canUndo).toBe(false)
})

test('a lock is written with its cell, and a cell unlocked is as it was before', () => {
  const cell = given('left', '400 lx')
  const locked = withLock(cell, true)
  const opened = readDocument(writeDocument(sheetOf([locked]).worksheet))
  expect(JSON.stringify(opened)).toContain('"locked":true')
  expect(withLock(locked, false)).toEqual(cell)
})
