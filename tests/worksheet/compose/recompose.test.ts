import { describe, expect, it } from 'vitest'
import { readJob } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { composeJob, type Job, partsOfJob } from '../../../src/worksheet/compose/job.ts'
import { isComposed, withParts } from '../../../src/worksheet/compose/recompose.ts'
import { type Given, isNamed, readDocument, Sheet, writeDocument } from '../../../src/worksheet/index.ts'
import { result } from '../make.ts'
import { PARTS, set } from './sets.ts'

const job = (name: string): Job => readJob(name) as Job
const opened = (name: string): Sheet => new Sheet(composeJob(PARTS, job(name)), LIBRARY)

function added(sheet: Sheet, name: string): ReturnType<typeof withParts> {
  const next = withParts(PARTS, sheet.worksheet, partsOfJob(job(name)))
  if (next.change) sheet.apply(next.change)
  return next
}

describe('adding parts to a composed sheet', () => {
  it('makes one sheet whichever job came first, but for what was filled in', () => {
    const names = (sheet: Sheet): string[] => sheet.cells.filter(isNamed).map(({ name }) => name)
    const [one, other] = [opened('flat-sheet'), opened('in-tiles')]
    added(one, 'in-tiles')
    added(other, 'flat-sheet')
    expect(names(one)).toEqual(names(other))
  })

  it('keeps givens by name and says what it asks and what gives way', () => {
    const sheet = opened('flat-sheet')
    const { asks, replaced } = added(sheet, 'in-tiles')
    expect(sheet.named('original')).toMatchObject({ value: '420 x 297' })
    expect(replaced).toEqual([{ part: 'one-frame', by: 'tiles' }])
    expect(asks.map(({ name }) => name)).toEqual(expect.arrayContaining(['travel_reach', 'free_table']))
    // A section that is added brings no examples.
    for (const { value } of asks) expect(value).toBe('')
  })

  it('is one step of undo and of redo, also where a section replaces one, and adding the same again changes nothing', () => {
    const sheet = opened('flat-sheet')
    const before = sheet.worksheet
    expect(added(sheet, 'in-tiles').replaced).toEqual([{ part: 'one-frame', by: 'tiles' }])
    const after = sheet.worksheet
    expect(added(sheet, 'in-tiles').change).toBeUndefined()
    expect(sheet.steps).toEqual({ undo: [before], redo: [] })
    sheet.undo()
    expect(sheet.worksheet).toBe(before)
    expect(sheet.canUndo).toBe(false)
    sheet.redo()
    expect(sheet.worksheet).toBe(after)
  })

  it('has added cells, edits, measured values and what was removed stay as they are', () => {
    const sheet = opened('flat-sheet')
    const at = sheet.cells.findIndex(({ id }) => id === 'ppi')
    sheet.apply({ do: 'add', at: at + 1, cell: { ...result('my_own', '2 * focal'), id: 'own_cell' } })
    sheet.apply({ do: 'replace', cell: { ...(sheet.cell('border') as Given), label: 'My border' } })
    sheet.apply({
      do: 'replace',
      cell: { ...(sheet.cell('carriage') as never as object), measured: '920 mm' } as never,
    })
    sheet.apply({ do: 'remove', id: 'pixels_match' })
    added(sheet, 'in-tiles')
    const ids = sheet.cells.map(({ id }) => id)
    expect(ids.indexOf('own_cell')).toBe(ids.indexOf('ppi') + 1)
    expect(sheet.named('border')).toMatchObject({ label: 'My border' })
    expect(sheet.named('carriage')).toMatchObject({ measured: '920 mm' })
    expect(sheet.named('pixels_match')).toBeUndefined()
  })

  it('remembers a given that a part computes, through a file', () => {
    const sheet = new Sheet(composeJob(PARTS, job('two-lamps')), LIBRARY)
    expect(sheet.named('lens_height')).toMatchObject({ kind: 'given' })
    added(sheet, 'flat-sheet')
    expect(sheet.named('lens_height')).toMatchObject({ kind: 'result' })
    const read = readDocument(writeDocument(sheet.worksheet))
    expect(read.given?.lens_height).toMatchObject({ value: '1200', from: 'example' })
    expect(isComposed(read)).toBe(true)
  })

  it('does nothing to a sheet that has the parts', () => {
    const sheet = opened('flat-sheet')
    expect(withParts(PARTS, sheet.worksheet, set('pair', 'lux')).change).toBeUndefined()
  })
})
