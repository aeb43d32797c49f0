import { describe, expect, it } from 'vitest'
import type { Run, Sheet, TableCell } from '../../../src/worksheet/index.ts'
import { RUN_INPUTS } from '../../../src/worksheet/run/inputs.ts'
import { runFedByName } from '../../../src/worksheet/run/inputs-by-name.ts'
import { runOf } from '../../../src/worksheet/run/sheet-run.ts'
import { given, sheetOf } from '../make.ts'
import { MAP_COLUMNS, MAP_FROM, MAP_GIVENS, mapCells, mapRows, mapRun, mapTable } from '../maps.ts'

const run = (sheet: Sheet, id = 'run'): Run => sheet.cell(id) as Run
const whole = (sheet: Sheet) => runOf(sheet, run(sheet))

describe('a run cell', () => {
  it('plans 340 maps', () => {
    const { feed, plan } = whole(sheetOf(mapCells(mapRows(340))))
    expect(feed.missing).toEqual([])
    expect(feed.without).toEqual([])
    expect(feed.list).toHaveLength(340)
    expect(plan?.unplanned).toEqual([])
    expect(plan?.total.count).toBe(340)
    // Both surfaces, and of each the small ones and the large ones.
    expect(new Set(plan?.setups.map(({ exposure }) => exposure))).toEqual(new Set(['matt', 'glossy']))
    expect(plan?.setups.length).toBeLessThan(12)
    expect(plan?.setups.some(({ originals }) => originals.some(({ tiled }) => tiled))).toBe(true)
    expect(plan?.total.data).toBe((plan?.total.frames ?? 0) * 11648 * 8736 * 48 * 2)
  })

  it('sees a row’s own columns before the sheet’s cells, and the sheet where a row has none', () => {
    const cells = mapCells([
      ['Alder', '300', '200', 'matt', '', '', ''],
      ['Brack', '300', '200', 'matt', '', '', ''],
    ])
    const finer = mapRun({ from: { ...MAP_FROM, sampling: 'when(title = "Brack", 2, 1) * wanted_sampling' } })
    const sheet = sheetOf([...cells.slice(0, -1), finer])
    const { list } = whole(sheet).feed
    expect(list.map((one) => 'sampling' in one && one.sampling * 25.4e-3)).toEqual([300, 600])
  })

  it('uses columns with a formula', () => {
    const table = mapTable([['Alder', '300', '200', 'matt', '', '', '', '']])
    table.columns.push({ name: 'fine', formula: 'when(width < 400 mm, 600 ppi, 300 ppi)' })
    const sheet = sheetOf([...MAP_GIVENS, table, mapRun({ from: { ...MAP_FROM, sampling: 'fine' } })])
    expect(whole(sheet).feed.list[0]).toMatchObject({ sampling: 600 / 25.4e-3 })
  })

  it('keeps what cannot be planned, with what is wrong, and plans the rest', () => {
    const { plan } = whole(
      sheetOf(
        mapCells([
          ['Alder', '300', '200', 'matt', '', '', ''],
          ['Brack', '', '200', 'matt', '', '', ''],
          ['', '', '', '', '', '', ''],
          ['Cole', 'wide', '200', 'matt', '', '', ''],
          ['Dunmere', '-5', '200', 'matt', '', '', ''],
          ['Esker', '300', '200', 'shiny', '', '', ''],
          ['Fallow', '300', '200', 'matt', '1.5', '', ''],
          ['Grane', '2', '2', 'matt', '', '', ''],
        ]),
      ),
    )
    expect(plan?.total.count).toBe(2)
    expect(plan?.unplanned.map(({ row, title, why }) => [row, title, why.slice(0, 80)])).toEqual([
      [1, 'Brack', 'Width of the original: nothing is filled in.'],
      [3, 'Cole', expect.stringContaining('Width of the original: Width: ')],
      [4, 'Dunmere', 'Width of the original: it must be more than 0.'],
      [5, 'Esker', expect.stringContaining('This is not one of the options. Choose “matt”')],
      [6, 'Fallow', 'Pages or sides to take of each: it must be a whole number from 1 to a million.'],
    ])
  })

  it('lets a slip in what was noted keep nothing out of the plan, and says so', () => {
    const { feed, plan } = whole(sheetOf(mapCells([['Alder', '300', '200', 'matt', '', 'x', 'soon']])))
    expect(plan?.total.count).toBe(1)
    expect(feed.list[0]).toMatchObject({ done: true, actualTime: undefined })
    expect(feed.remarks.get(0)).toContain('Time it took: Time taken: ')
  })

  it('says what it waits for, and plans once it is there', () => {
    const without = mapCells(mapRows(3)).map((cell) =>
      'name' in cell && cell.name === 'sensor' ? { ...cell, value: '' } : cell,
    )
    const sheet = sheetOf(without as typeof MAP_GIVENS)
    const { feed, plan } = whole(sheet)
    expect(plan).toBeUndefined()
    expect(feed.missing.map(({ input, why }) => `${input.name} ${why}`)).toEqual([
      'sensor_width needs Sensor',
      'sensor_height needs Sensor',
      'pitch needs Sensor',
    ])
    sheet.apply({ do: 'replace', cell: given('sensor', '36 x 24', { unit: 'mm', entry: 'size' }) })
    expect(whole(sheet).plan?.total.count).toBe(3)
  })

  it('goes without what gives nothing, and says so', () => {
    const from = { ...MAP_FROM, focal: 'wanted_sampling', spell: 'nowhere', thickness: 'thick', setup_time: '-1 min' }
    const { feed, plan } = whole(sheetOf([...MAP_GIVENS, mapTable(mapRows(3)), mapRun({ from })]))
    expect(plan?.total.count).toBe(3)
    expect(plan?.setups[0]?.means).toBeUndefined()
    expect(feed.without.map(({ input, why }) => `${input.name}: ${why}`)).toEqual([
      expect.stringMatching(/^thickness: .*thick/),
      'focal: must be a length; “wanted_sampling” is not',
      expect.stringMatching(/^spell: .*nowhere/),
      'setup_time: must not be less than 0',
    ])
  })

  it('tells of a table that is not there', () => {
    const { feed, plan } = whole(sheetOf([...MAP_GIVENS, mapRun({ of: 'elsewhere' })]))
    expect(plan).toBeUndefined()
    expect(feed.table).toBeUndefined()
  })

  it('plans what is left, with nothing of what is done lost', () => {
    const rows = mapRows(60).map((row, i) => (i % 3 === 0 ? row.with(5, 'yes').with(6, '4') : row))
    const sheet = sheetOf(mapCells(rows))
    const { plan } = runOf(sheet, { ...run(sheet), left: true })
    expect(plan?.total.count).toBe(40)
    expect(plan?.leftOut.map(({ row }) => row)).toEqual(rows.flatMap((_, i) => (i % 3 === 0 ? [i] : [])))
    expect(plan?.progress.done).toMatchObject({ count: 20, timed: { count: 20, actual: 20 * 240 } })
    expect(plan?.progress.expected?.count).toBe(40)
    expect((sheet.cell('maps') as TableCell).rows).toEqual(rows)
  })
})

describe('what feeds a run at first', () => {
  it('goes by the usual names, columns before cells', () => {
    const fed = runFedByName(
      MAP_COLUMNS.map(({ name }) => name),
      MAP_GIVENS.map(({ id }) => id),
    )
    expect(fed).toEqual({ ...MAP_FROM, sampling: 'wanted_sampling', frame_data: undefined, copies: undefined })
  })

  it('has each input once, and names each by a name of its own', () => {
    expect(new Set(RUN_INPUTS.map(({ name }) => name)).size).toBe(RUN_INPUTS.length)
    expect(new Set(RUN_INPUTS.map(({ label }) => label)).size).toBe(RUN_INPUTS.length)
  })
})
