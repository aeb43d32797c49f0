import fc from 'fast-check'
import { expect, test } from 'vitest'
import { OpenSheet } from '../../../src/app/open/open-sheet.ts'
import { idsOnExamples } from '../../../src/worksheet/analysis/provenance.ts'
import { type Given, withMeasured } from '../../../src/worksheet/index.ts'
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

test('what rests on examples is as if found out anew after any edit', () => {
  const example = (name: string, value: string) => given(name, value, { from: { kind: 'example', text: value } })
  const cells = [
    example('a', '1'),
    example('b', '2'),
    given('c', '3'),
    result('d', 'a + c'),
    result('e', 'd + b'),
    result('f', 'c + 1'),
  ]
  const given1 = fc.record({
    name: fc.constantFrom('a', 'b', 'c'),
    value: fc.constantFrom('1', '2', '3', '', 'no number'),
    own: fc.boolean(),
  })
  const result1 = fc.record({
    name: fc.constantFrom('d', 'e', 'f'),
    formula: fc.constantFrom('a + 1', 'b * c', 'c', 'no_such'),
    measured: fc.constantFrom('', '4'),
  })
  fc.assert(
    fc.property(fc.array(fc.oneof(given1, result1, fc.constant('undo' as const))), (edits) => {
      const open = new OpenSheet(sheetOf(cells))
      const { sheet } = open
      for (const edit of edits) {
        if (edit === 'undo') sheet.undo()
        else {
          const cell = sheet.named(edit.name)
          if (cell?.kind === 'given' && 'value' in edit) {
            const { from, ...own } = cell
            const next: Given = edit.own ? own : { ...own, ...(from ? { from } : {}) }
            sheet.apply({ do: 'replace', cell: { ...next, value: edit.value } })
          } else if (cell?.kind === 'result' && 'formula' in edit) {
            const { formula } = edit
            if (!formula.includes(cell.name))
              sheet.apply({ do: 'replace', cell: withMeasured({ ...cell, formula }, edit.measured) })
          }
        }
        expect([...open.resting].sort()).toEqual([...idsOnExamples(sheet)].sort())
      }
      open.close()
    }),
    { numRuns: 60 },
  )
})
