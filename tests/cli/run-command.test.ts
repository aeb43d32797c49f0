import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { mapCells, mapRows } from '../worksheet/maps.ts'
import { evenfield, file, inTerminal, json, worksheet } from './run.ts'

const HEADINGS = 'Map;Width [cm];Height [cm];surface;Sides;Done;Time taken (min)'
const sheet = worksheet('maps.json', mapCells(mapRows(3)))
const outPath = (name: string): string => join(sheet, '..', name)

/** The same maps as another program writes them: centimetres, decimal comma, semicolons. */
const listOf = (count: number): string =>
  [
    HEADINGS,
    ...mapRows(count).map(([title, width, height, ...rest]) => [title, comma(width), comma(height), ...rest].join(';')),
  ].join('\r\n')
const comma = (mm = ''): string => `${Number(mm) / 10}`.replace('.', ',')

interface Row {
  readonly [heading: string]: string
}
const read = (path: string): Row[] =>
  Papa.parse<Row>(readFileSync(path, 'utf8'), { header: true, skipEmptyLines: true }).data

describe('the run in a terminal', () => {
  it('plans a list in the place of the table’s rows, one line an original', async () => {
    const out = outPath('plan.csv')
    const ran = await evenfield('run', sheet, '--originals', file('list.csv', listOf(340)), '--out', out)
    expect(ran.err).toBe('')
    expect(ran.code).toBe(0)
    expect(ran.out).toMatch(/^Planned: 340 originals in \d+ set-ups, \d+ frames, /)
    expect(ran.out).toContain(`Written: ${out}`)
    const rows = read(out)
    expect(rows).toHaveLength(340)
    expect(new Set(rows.map((row) => row['Row of the list'])).size).toBe(340)
    // In the order of work: the set-ups ascend, and the magnification that all in one share serves each.
    const numbers = rows.map((row) => Number(row['Set-up']))
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b))
    const maps = mapRows(340)
    for (const row of rows) {
      const [title, width, height, surface] = maps[Number(row['Row of the list']) - 1] as string[]
      expect(row.Original).toBe(title)
      expect(row.Exposure).toBe(surface)
      const m = 1 / Number(row['Magnification [1:]'])
      // 300 ppi at 43.8 mm over 11648 px.
      expect(m).toBeGreaterThanOrEqual((300 / 25.4) * (43.8 / 11648) * (1 - 1e-5))
      if (row.Frames === '1') {
        const [long, short] = [Number(width), Number(height)].sort((a, b) => b - a) as [number, number]
        expect((long + 10) * m).toBeLessThanOrEqual(43.8 * (1 + 1e-5))
        expect((short + 10) * m).toBeLessThanOrEqual(32.9 * (1 + 1e-5))
      }
      expect(Number(row['Column height [mm]'])).toBeLessThanOrEqual(1900)
    }
    // 1 h 5 min in all is reported as it is added up: every line has its own share.
    const minutes = rows.reduce((sum, row) => sum + Number(row['Time [min]']), 0)
    const frames = rows.reduce((sum, row) => sum + Number(row.Frames), 0)
    expect(minutes).toBeCloseTo((340 * 90 + frames * 35) / 60, 0)
  })

  it('gives the same to programs', async () => {
    const ran = await evenfield('run', sheet, '--originals', file('list.csv', listOf(340)), '--json')
    expect(ran.code).toBe(0)
    const data = json(ran) as {
      setups: { magnification: number; originals: number }[]
      total: { count: number; setups: number; frames: number }
      unplanned: unknown[]
    }
    expect(data.total).toMatchObject({ count: 340, setups: data.setups.length })
    expect(data.setups.reduce((sum, { originals }) => sum + originals, 0)).toBe(340)
    expect(data.unplanned).toEqual([])
  })

  it('plans the sheet’s own rows where no list is given', async () => {
    const ran = await evenfield('run', sheet)
    expect(ran.code).toBe(0)
    expect(ran.out).toMatch(/^Planned: 3 originals in /)
  })

  it('keeps what cannot be planned in the table with why, and says so by its exit', async () => {
    const list = [HEADINGS, 'Alder;30;20;matt;;;', 'Brack;wide;20;matt;;;', ';;;;;;', 'Cole;30;20;silky;;;'].join('\n')
    const out = outPath('some.csv')
    const ran = await evenfield('run', sheet, '--originals', file('some-list.csv', list), '--out', out)
    expect(ran.code).toBe(1)
    expect(ran.out).toContain('Not planned: 2 originals')
    expect(ran.out).toContain('row 2, Brack: Width of the original: Width: ')
    expect(read(out).map((row) => [row.Original, row['Row of the list'], row.State])).toEqual([
      ['Alder', '1', 'planned'],
      ['Brack', '2', 'not planned'],
      ['Cole', '4', 'not planned'],
    ])
    expect(read(out)[1]?.Why).toContain('Width')
  })

  it('plans what is left, and loses nothing of what is done', async () => {
    const list = [HEADINGS, 'Alder;30;20;matt;;yes;4', 'Brack;30;20;matt;;;', 'Cole;60;40;matt;;x;5'].join('\n')
    const out = outPath('left.csv')
    const ran = await evenfield('run', sheet, '--originals', file('left-list.csv', list), '--out', out, '--left')
    expect(ran.code).toBe(0)
    expect(ran.out).toMatch(/^Planned: 1 original in 1 set-up/)
    expect(ran.out).toContain('Done: 2 of 3')
    expect(read(out).map((row) => [row.Original, row['Set-up'], row.State])).toEqual([
      ['Brack', '1', 'planned'],
      ['Alder', '', 'done'],
      ['Cole', '', 'done'],
    ])
  })

  it('says what a plan waits for', async () => {
    const ran = await evenfield('run', sheet, '--set', 'sensor=')
    expect(ran.code).toBe(1)
    expect(ran.out).toContain('Width of the sensor: needs Sensor')
  })

  it.each([
    ['no such list', ['run', sheet, '--originals', '/nowhere/list.csv'], /\/nowhere\/list\.csv: there is no such file/],
    [
      'an empty list',
      ['run', sheet, '--originals', file('empty.csv', ' \n')],
      /empty\.csv: There is no table in this text/,
    ],
    [
      'a list that is a workbook',
      ['run', sheet, '--originals', file('list.xlsx', 'PK\x03\x04')],
      /list\.xlsx: This is a workbook\. Save its sheet as CSV/,
    ],
    [
      'a list without the columns',
      ['run', sheet, '--originals', file('other.csv', 'Town,Breadth\nAlder,3')],
      /other\.csv: no heading is “Width” or “Height”; its first line has “Town”, “Breadth”/,
    ],
    ['a sheet without a run', ['run', worksheet('bare.json', [])], /bare\.json: there is no run in this worksheet/],
    ['an option there is not', ['run', sheet, '--orignals', 'x'], /Unknown option '--orignals'/],
    ['two sheets', ['run', sheet, sheet], /run takes one worksheet, found 2/],
    ['a folder that is not there', ['run', sheet, '--out', '/nowhere/plan.csv'], /plan\.csv: there is no such folder/],
    ['the sheet itself as what to write', ['run', sheet, '--out', sheet], /replace one of its own input files/],
  ])('stops at %s with one line', async (_, args, line) => {
    const ran = await evenfield(...args)
    expect(ran.code).toBe(2)
    expect(ran.out).toBe('')
    expect(ran.err).toMatch(line)
    expect(ran.err.trim().split('\n')).toHaveLength(1)
    expect(existsSync(sheet)).toBe(true)
  })

  it('plans a hundred thousand originals', () => {
    const out = outPath('many.csv')
    const ran = inTerminal(
      '',
      'run',
      sheet,
      '--originals',
      file('many-list.csv', listOf(100_000)),
      '--out',
      out,
      '--json',
    )
    expect(ran.err).toBe('')
    expect(ran.code).toBe(0)
    expect((json(ran) as { total: { count: number } }).total.count).toBe(100_000)
    expect(read(out)).toHaveLength(100_000)
    // About 5 s of work; a busy machine may take its time.
  }, 300_000)
})
