import { beforeEach, describe, expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { type Result, readDocument, Sheet, withMeasured, writeDocument } from '../../../src/worksheet/index.ts'
import { readTemplate } from '../../templates/open.ts'

let sheet: Sheet
beforeEach(() => {
  sheet = new Sheet(readTemplate('flat-sheet'), LIBRARY)
})

const result = (name: string): Result => sheet.named(name) as Result
const measure = (name: string, text: string): void =>
  sheet.apply({ do: 'replace', cell: withMeasured(result(name), text) }, { when: '2026-03-02T14:02:00Z' })
function fill(name: string, value: string): void {
  const cell = sheet.named(name)
  if (cell?.kind !== 'given') throw new Error(`${name} is no given.`)
  sheet.apply({ do: 'replace', cell: { ...cell, value } })
}
function measured(name: string) {
  const outcome = sheet.outcome(result(name).id)
  return outcome.state === 'value' ? outcome.measured : undefined
}
function changedSince(name: string) {
  const outcome = sheet.outcome(sheet.named(name)?.id ?? '')
  return outcome.state === 'value' ? outcome.before : undefined
}
const check = (name: string) => sheet.check(sheet.named(name)?.id ?? '')

describe('a measured value', () => {
  test('is shown beside the computed one, with the difference and what to do about it', () => {
    measure('carriage', '919 mm')
    expect(measured('carriage')).toMatchObject({ adjust: expect.stringMatching(/^Lower the carriage by 2(\.\d)? mm$/) })
    expect(measured('carriage')?.computed?.shown.text).toBe('917 mm')
    expect(check('column_reaches').state).toBe('pass')
    measure('carriage', '912 mm')
    expect(measured('carriage')?.adjust).toMatch(/^Raise the carriage by 5(\.\d)? mm$/)
  })

  test('stores when it was read, and the figures it depended on', () => {
    measure('carriage', '919 mm')
    const { measured_under } = result('carriage')
    expect(measured_under).toMatchObject({ text: '919 mm', when: '2026-03-02T14:02:00Z' })
    expect(measured_under?.figures).toMatchObject({ focal: '60', border: '10 mm', original: '420 x 297' })
    // The lamps have nothing to do with the height of the camera.
    expect(measured_under?.figures).not.toHaveProperty('lamp_out')
    measure('carriage', '')
    expect(result('carriage')).not.toHaveProperty('measured_under')
  })

  test('was measured before the change when a figure beneath it changes, and its checks wait', () => {
    measure('carriage', '919 mm')
    fill('lamp_out', '1300')
    expect(changedSince('carriage')).toBeUndefined()
    fill('focal', '80')
    expect(changedSince('carriage')).toEqual(['focal'])
    expect(check('column_reaches').state).toBe('waiting')
    expect(check('column_reaches').message).toContain('Set the column to')
    expect(sheet.checkSummary.waiting).toBeGreaterThan(0)
    // Checks that do not use it stand as before.
    expect(check('room_enough').state).not.toBe('waiting')
    sheet.undo()
    expect(changedSince('carriage')).toBeUndefined()
    expect(check('column_reaches').state).toBe('pass')
  })

  test('is as good as before when a figure is only spelt otherwise', () => {
    measure('carriage', '919 mm')
    fill('focal', '6 cm')
    expect(changedSince('carriage')).toBeUndefined()
  })

  test('holds again when it is read again, or confirmed', () => {
    measure('carriage', '919 mm')
    fill('focal', '80')
    measure('carriage', '1100 mm')
    expect(changedSince('carriage')).toBeUndefined()
    fill('focal', '60')
    expect(changedSince('carriage')).toEqual(['focal'])
    measure('carriage', '1100 mm')
    expect(changedSince('carriage')).toBeUndefined()
    expect(check('column_reaches').state).not.toBe('waiting')
  })

  test('that a later one is computed from counts as a figure beneath it', () => {
    measure('sensor_height', '921 mm')
    measure('carriage', '925 mm')
    expect(result('carriage').measured_under?.figures).toMatchObject({ sensor_height: '921 mm' })
    measure('sensor_height', '930 mm')
    expect(changedSince('carriage')).toEqual(['sensor_height'])
    expect(changedSince('sensor_height')).toBeUndefined()
  })

  test('is saved with its figures, and an older one without them says nothing of changes', () => {
    measure('carriage', '919 mm')
    fill('focal', '80')
    sheet = new Sheet(readDocument(writeDocument(sheet.worksheet)), LIBRARY)
    expect(changedSince('carriage')).toEqual(['focal'])
    const { measured_under: _, ...old } = result('carriage')
    sheet = new Sheet(
      { ...sheet.worksheet, cells: sheet.cells.map((cell) => (cell.id === old.id ? (old as Result) : cell)) },
      LIBRARY,
    )
    expect(changedSince('carriage')).toBeUndefined()
  })
})
