import { expect, test } from 'vitest'
import { OpenSheet } from '../../../src/app/open/open-sheet.ts'
import { JOBS, open as openJob } from '../../templates/open.ts'
import { given, result, sheetOf } from '../../worksheet/make.ts'

test('a signal never shows a cell of another kind, whichever sheet the sheet becomes', () => {
  const worksheets = JOBS.map((job) => openJob(job).sheet.worksheet)
  const open = new OpenSheet(openJob(JOBS[0] as (typeof JOBS)[number]).sheet)
  let changes = 0
  for (const next of [...worksheets.slice(1), ...worksheets.toReversed()]) {
    const seen = open.sheet.cells.map((cell) => ({ kind: cell.kind, view: open.view(cell) }))
    open.sheet.become(next)
    for (const { kind, view } of seen) expect(view.get().cell.kind).toBe(kind)
    for (const cell of open.sheet.cells) {
      const before = seen.find(({ view }) => view.get().cell.id === cell.id)
      if (before && before.kind !== cell.kind) changes++
      expect(open.view(cell).get().cell).toBe(cell)
    }
  }
  // Some cells are typed in one job and computed in another.
  expect(changes).toBeGreaterThan(0)
})

test('a cell that becomes another kind lays the page out again', () => {
  const open = new OpenSheet(sheetOf([given('a', '1'), result('b', 'a + 1')]))
  const view = open.view(open.sheet.named('a') as never)
  const before = open.laidOut.get()
  const { id } = view.get().cell
  open.sheet.apply({ do: 'replace', cell: { kind: 'result', id, name: 'a', formula: '2' } })
  expect(open.laidOut.get()).toBeGreaterThan(before)
  expect(view.get().cell.kind).toBe('given')
  expect(open.view(open.sheet.named('a') as never).get().cell.kind).toBe('result')
})
