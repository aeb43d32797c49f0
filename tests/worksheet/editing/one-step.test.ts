import { expect, test } from 'vitest'
import { asOwn } from '../../../src/cells/shared/given-origin.ts'
import { homecoming, takenOver } from '../../../src/storage/exchange/take-over.ts'
import type { Given, Sheet, TableCell } from '../../../src/worksheet/index.ts'
import { readTable } from '../../../src/worksheet/table/csv.ts'
import { matchTable, takeTable } from '../../../src/worksheet/table/match-import.ts'
import { given, result, sheetOf } from '../make.ts'

const list: TableCell = {
  kind: 'table',
  id: 't',
  name: 'originals',
  columns: [
    { name: 'mark', entry: 'text' },
    { name: 'width', unit: 'mm' },
  ],
  rows: [['A 1', '10']],
}

const sheet = (): Sheet =>
  sheetOf([
    given('focal', '60', { unit: 'mm', from: { kind: 'example', text: '60' } }),
    given('border', '5', { unit: 'mm', from: { kind: 'example', text: '5' } }),
    list,
    result('height', '10 * focal', { unit: 'mm' }),
    { kind: 'steps', id: 's', steps: [{ text: 'Level the camera' }] },
  ])

/** A copy of the sheet as it comes back from the stand. */
const measured = (here: Sheet): Sheet['worksheet'] => ({
  ...here.worksheet,
  cells: here.cells.map((cell) => {
    if (cell.kind === 'steps') return { ...cell, steps: cell.steps.map((step) => ({ ...step, done: true })) }
    if (cell.kind === 'table') return { ...cell, rows: [['A 1', '12']] }
    return cell.id === 'height' ? { ...cell, measured: '610' } : cell
  }),
})

const ACTS: Readonly<Record<string, (sheet: Sheet) => void>> = {
  'the import of a table with a new column': (now) => {
    const { rows } = readTable('Mark;Width;Colour\r\nB 1;20;red\r\nB 2;30;blue\r\n')
    now.apply({ do: 'replace', cell: takeTable(list, rows, matchTable(list.columns, rows), 'below') })
  },
  'a suggestion of several changes': (now) =>
    now.apply({
      do: 'several',
      changes: ['80', '90'].map((value, at) => ({ do: 'replace', cell: { ...(now.cells[at] as Given), value } })),
    }),
  'confirming every example figure': (now) =>
    now.apply({
      do: 'several',
      changes: now.cells.flatMap((cell) => (cell.kind === 'given' ? [{ do: 'replace', cell: asOwn(cell) }] : [])),
    }),
  'taking over what was measured and ticked in a copy': (now) => {
    const copy = measured(now)
    const { differences } = homecoming(now.worksheet, copy, now.worksheet)
    expect(differences).toHaveLength(3)
    now.become(takenOver(now.worksheet, copy, new Set(differences.map(({ key }) => key))))
  },
}

test.each(Object.entries(ACTS))('%s is one step of undo, and one of redo', (_, act) => {
  const now = sheet()
  const before = now.worksheet
  act(now)
  const after = now.worksheet
  expect(after).not.toEqual(before)
  expect(now.steps).toEqual({ undo: [before], redo: [] })
  expect(now.undo()).toBe(true)
  expect(now.worksheet).toBe(before)
  expect(now.canUndo).toBe(false)
  expect(now.redo()).toBe(true)
  expect(now.worksheet).toBe(after)
  expect(now.canRedo).toBe(false)
})
