import { describe, expect, it } from 'vitest'
import { htmlText } from '../../../src/app/paper/html-text.ts'
import { runOnPaper } from '../../../src/app/paper/run.ts'
import type { Run, Sheet } from '../../../src/worksheet/index.ts'
import { ratioText } from '../../../src/worksheet/run/plan-text.ts'
import { runOf } from '../../../src/worksheet/run/sheet-run.ts'
import { sheetOf } from '../../worksheet/make.ts'
import { mapCells, mapRows } from '../../worksheet/maps.ts'

const onPaper = (sheet: Sheet, more: Partial<Run> = {}): string =>
  htmlText(runOnPaper(sheet, { ...(sheet.cell('run') as Run), ...more }))

describe('the run on paper', () => {
  const rows = mapRows(60).map((row, at) => (at < 7 ? row.with(5, 'yes').with(6, '5') : row))
  const sheet = sheetOf(mapCells([...rows, ['Odd', 'wide', '200', 'matt', '', '', '']]))

  it('is a table by set-up that names every original', () => {
    const text = onPaper(sheet)
    const { plan } = runOf(sheet, sheet.cell('run') as Run)
    for (const { magnification, frames } of plan?.setups ?? []) {
      expect(text).toContain(`<b>${ratioText(magnification)}</b>`)
      expect(text).toContain(`<td>${frames}</td>`)
    }
    for (const [title] of rows) expect(text).toContain(title as string)
    expect(text).toContain('Odd, row 61: Width of the original')
    expect(text).toContain('7 of 60')
  })

  it('of what is left names only that', () => {
    const text = onPaper(sheet, { left: true })
    expect(text).toContain('The run: remaining')
    for (const [at, [title]] of rows.entries()) expect(new RegExp(`${title}\\b`).test(text), title).toBe(at >= 7)
  })

  it('that waits says for what', () => {
    const waiting = sheetOf(mapCells(rows).filter(({ id }) => id !== 'sensor'))
    expect(onPaper(waiting)).toContain('Not planned: Width of the sensor')
  })
})
