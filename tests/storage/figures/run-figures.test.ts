import { describe, expect, it } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { fromLink, toLink } from '../../../src/storage/exchange/link.ts'
import { figuresOnly } from '../../../src/storage/figures/figures-only.ts'
import { type Run, Sheet, type TableCell } from '../../../src/worksheet/index.ts'
import { runOf } from '../../../src/worksheet/run/sheet-run.ts'
import { sheetOf } from '../../worksheet/make.ts'
import { mapCells, mapRows } from '../../worksheet/maps.ts'

describe('a run as figures only', () => {
  it('is a table of its set-ups that follows nothing', async () => {
    const sheet = sheetOf(mapCells(mapRows(340).with(7, ['Odd', 'wide', '200', 'matt', '', '', ''])))
    const { plan } = runOf(sheet, sheet.cell('run') as Run)
    const figures = new Sheet(await fromLink(await toLink(figuresOnly(sheet))), LIBRARY)
    expect(figures.cells.some(({ kind }) => kind === 'run')).toBe(false)
    const table = figures.cells.at(-1) as TableCell
    expect(table).toMatchObject({ kind: 'table', label: 'The run' })
    expect(table.columns.every(({ formula }) => formula === undefined)).toBe(true)
    const setups = plan?.setups ?? []
    expect(table.rows).toHaveLength(setups.length + 2)
    expect(table.rows.map((row) => row[5])).toEqual([
      ...setups.map(({ frames }) => `${frames}`),
      '',
      `${plan?.total.frames}`,
    ])
    const named = table.rows.slice(0, -2).flatMap((row) => (row[4] as string).split('; '))
    expect(named).toHaveLength(339)
    expect(table.rows.at(-2)?.[4]).toContain('Odd: Width of the original')
    expect(figures.outcome(table.id)).toMatchObject({ state: 'value' })
  })

  it('that waits is a note', () => {
    const cells = mapCells(mapRows(3)).filter(({ id }) => id !== 'sensor')
    const frozen = figuresOnly(sheetOf(cells)).cells.at(-1)
    expect(frozen).toMatchObject({ kind: 'note', text: 'The run: not planned.' })
  })
})
