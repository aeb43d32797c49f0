import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import type { Column, TableCell } from '../../../src/worksheet/index.ts'
import { readTable, TableError, writeTable } from '../../../src/worksheet/table/csv.ts'
import { exportRows } from '../../../src/worksheet/table/export.ts'
import { matchTable, pasteAt, readHeading, takeTable } from '../../../src/worksheet/table/match-import.ts'
import { given, result, seen, sheetOf } from '../make.ts'

const COLUMNS: readonly Column[] = [
  { name: 'title', label: 'Title', entry: 'text' },
  { name: 'original_width', label: 'Width', unit: 'mm' },
  { name: 'height', label: 'Height', unit: 'mm' },
  { name: 'area', label: 'Area', formula: 'original_width * height' },
]
const table = (rows: readonly (readonly string[])[] = [], columns = COLUMNS): TableCell => ({
  kind: 'table',
  id: 's',
  name: 'originals',
  columns: [...columns],
  rows: rows.map((row) => [...row]),
})

/** Text pasted into a table with nothing chosen by hand. */
function pasted(text: string, cell = table(), how: 'below' | 'instead' = 'below'): TableCell {
  const { rows } = readTable(text)
  return takeTable(cell, rows, matchTable(cell.columns, rows), how)
}

test.each([
  ['Width [mm]', 'Width', 'mm'],
  ['width (cm)', 'width', 'cm'],
  ['width, in', 'width', 'in'],
  ['Width / mm', 'Width', 'mm'],
  ['Sampling [px/mm]', 'Sampling', 'px/mm'],
  ['Heat [W/(m² K)]', 'Heat', 'W/(m² K)'],
  ['Width', 'Width', undefined],
  ['Width (outer)', 'Width (outer)', undefined],
  ['Remark, in ink', 'Remark, in ink', undefined],
  ['', '', undefined],
])('the heading “%s” is “%s” in %s', (heading, label, unit) => {
  expect(readHeading(heading)).toEqual({ label, unit })
})

describe('a table with headings', () => {
  it('finds the columns by label or name, in whatever order, and leaves what is worked out here', () => {
    const { rows } = pasted('height;ORIGINAL WIDTH;title;Area\n300;420;Town;9\n')
    expect(rows).toEqual([['Town', '420', '300', '']])
  })

  it('has its units understood: bare figures take them where they differ', () => {
    const cell = pasted('Title\tWidth [cm]\theight (mm)\nTown\t42,5\t300\nHarbour\t400 mm\t2')
    expect(cell.rows).toEqual([
      ['Town', '42,5 cm', '300', ''],
      ['Harbour', '400 mm', '2', ''],
    ])
    expect(seen(sheetOf([cell, result('widest', 'greatest(originals.original_width)')]), 'widest')).toBe('425 mm')
  })

  test.each([
    ['Title?\tWidth in cm\theight_cm', '42.5 cm', '30 cm'],
    ['TITLE:\tWidth mm\tHEIGHT cm', '42.5', '30 cm'],
    ['title.\toriginal_width_in_in\tHeight*', '42.5 in', '30'],
  ])('has them understood as people write them: “%s”', (headings, width, height) => {
    expect(pasted(`${headings}\nTown\t42.5\t30`).rows).toEqual([['Town', width, height, '']])
  })

  it('keeps what only ends like a unit: a column of another name, or a unit of another kind', () => {
    const { columns } = pasted('Title\tBox m\tWidth kg\nTown\t3\t4')
    expect(columns.slice(COLUMNS.length).map(({ label, unit }) => [label, unit])).toEqual([
      ['Box m', undefined],
      ['Width kg', undefined],
    ])
  })

  it('of another kind is saved as it is and reported by the field', () => {
    const cell = pasted('Title,Width [kg]\nTown,5\n')
    expect(cell.rows).toEqual([['Town', '5 kg', '', '']])
    expect(seen(sheetOf([cell]), 's')).toBe('0 of 1 rows')
  })

  it('brings columns of its own along, each as what it holds', () => {
    const cell = pasted(
      'Title,Depth [mm],Seen,Bound,Copies,Note\nTown,5,2026-11-25,yes,2,torn\nCoast,,25.11.2026,no,3,\n',
      table([['Old', '1', '2', '']]),
    )
    expect(cell.columns.slice(4)).toEqual([
      { name: 'depth', label: 'Depth', unit: 'mm', may_be_empty: true },
      { name: 'seen', label: 'Seen', entry: 'date', may_be_empty: true },
      { name: 'bound', label: 'Bound', entry: 'tick' },
      { name: 'copies', label: 'Copies', may_be_empty: true },
      { name: 'note', label: 'Note', entry: 'text', may_be_empty: true },
    ])
    expect(cell.rows[0]).toEqual(['Old', '1', '2', ''])
    expect(cell.rows[2]).toEqual(['Coast', '', '', '', '', '25.11.2026', 'no', '3', ''])
  })

  it('makes a table that has no columns yet', () => {
    const cell = pasted('Title;Width [mm];Town (K)\nA;420;Bath\nB;300;Wells\n', table([], []))
    expect(cell.columns).toEqual([
      { name: 'title', label: 'Title', entry: 'text' },
      { name: 'width', label: 'Width', unit: 'mm' },
      { name: 'town_k', label: 'Town (K)', entry: 'text' },
    ])
    expect(cell.rows).toHaveLength(2)
  })

  it('may have a heading twice, a heading named count, and headings of prototypes', () => {
    const cell = pasted('Width,Width,count,__proto__,constructor\n1,2,3,4,5\n')
    expect(cell.columns.map(({ name }) => name)).toEqual([
      ...COLUMNS.map(({ name }) => name),
      'width',
      'number',
      'proto',
      'constructor',
    ])
    expect(cell.rows).toEqual([['', '1', '', '', '2', '3', '4', '5']])
    expect(seen(sheetOf([cell]), 's')).not.toMatch(/error/)
    expect('polluted' in {}).toBe(false)
  })
})

describe('a table without headings', () => {
  it('fills the columns in their order', () => {
    expect(pasted('Town\t420\t300\nCoast\t200\t100').rows).toEqual([
      ['Town', '420', '300', ''],
      ['Coast', '200', '100', ''],
    ])
  })
  it('may be reported to have them after all', () => {
    const { rows } = readTable('a,b,c\nTown,420,300')
    expect(matchTable(COLUMNS, rows).hasHeadings).toBe(true)
    expect(takeTable(table(), rows, matchTable(COLUMNS, rows, false), 'below').rows).toHaveLength(2)
  })
})

it('put in the place of the rows there are, or below them without the blank ones', () => {
  const cell = table([
    ['Old', '1', '2', ''],
    ['', '', '', ''],
  ])
  expect(pasted('New,3,4', cell, 'instead').rows).toEqual([['New', '3', '4', '']])
  expect(pasted('New,3,4', cell).rows).toEqual([
    ['Old', '1', '2', ''],
    ['New', '3', '4', ''],
  ])
})

test('nothing is dropped: what cannot be read stays in its field', () => {
  const cell = pasted('Title,Width\nTown,wide\nCoast,<script>\nHill,=1+1\n')
  expect(cell.rows.map((row) => row[1])).toEqual(['wide', '<script>', '=1+1'])
  expect(seen(sheetOf([cell]), 's')).toBe('0 of 3 rows')
})

describe('what is too large is refused in words', () => {
  test.each([
    ['x'.repeat(20_001), /one field has 20\D001 characters/],
    [`${'1\n'.repeat(20_001)}`, /20\D001 rows; a table has at most 20\D000/],
    [`${'a,'.repeat(60)}a\n`, /columns; a table has at most 60/],
    [`${`${'x'.repeat(900)}\n`.repeat(8000)}`, /too large for a worksheet/],
  ])('%#', (text, words) => {
    const take = () => pasted(text)
    expect(take).toThrow(TableError)
    expect(take).toThrow(words)
  })
})

test('fields pasted at a field go right and down, past formulas, and add rows', () => {
  const cell = table([
    ['A', '1', '2', ''],
    ['B', '3', '4', ''],
  ])
  const next = pasteAt(
    cell,
    [
      ['30', '40', '50', '60'],
      ['31', '41'],
    ],
    1,
    1,
  )
  expect(next.rows).toEqual([
    ['A', '1', '2', ''],
    ['B', '30', '40', ''],
    ['', '31', '41', ''],
  ])
  expect(next.rows[0]).toBe(cell.rows[0])
})

describe('saved as CSV', () => {
  const columns: readonly Column[] = [
    ...COLUMNS.slice(0, 3),
    { name: 'area', label: 'Area', formula: 'original_width * height' },
    { name: 'stop', label: 'Stop', unit: 'f/' },
    { name: 'scale', label: 'Scale', unit: '1:' },
    { name: 'done', label: 'Done', entry: 'tick' },
  ]
  it('has units in the headings, figures in those units and formulas as computed', () => {
    const sheet = sheetOf([
      table(
        [
          ['Town "plan", old', '42 cm', '300,5', '', 'f/8', '1:4', 'x'],
          ['Coast', 'wide', '5', '', '8', '4', ''],
        ],
        [...columns],
      ),
    ])
    const rows = exportRows(sheet.engine, sheet.engine.node('s') as never)
    expect(rows).toEqual([
      ['Title', 'Width [mm]', 'Height [mm]', 'Area [m²]', 'Stop', 'Scale', 'Done'],
      ['Town "plan", old', '420', '300.5', '0.12621', '8', '1:4', 'yes'],
      ['Coast', 'wide', '5', '', '8', '1:4', 'no'],
    ])
    expect(writeTable(rows).split('\r\n')[1]).toBe('"Town ""plan"", old",420,300.5,0.12621,8,1:4,yes')
  })

  it('comes back to the same figures', () => {
    const row = fc.tuple(
      fc.string(),
      fc.double({ min: 1e-3, max: 1e6, noNaN: true }).map((n) => `${n} mm`),
      fc.constantFrom('42 cm', '1 ft 3 in', '7,5', '1e2', 'torn'),
      fc.constant(''),
      fc.constantFrom('f/8', '5.6', ''),
      fc.constantFrom('1:3', '2:1', '7'),
      fc.constantFrom('yes', '', 'x', 'perhaps'),
    )
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
        const sheet = sheetOf([table(rows, [...columns])])
        const text = writeTable(exportRows(sheet.engine, sheet.engine.node('s') as never))
        const back = sheetOf([pasted(text, table([], [...columns]))])
        const [a, b] = [sheet, back].map((one) => one.outcome('s'))
        expect(b?.state).toBe(a?.state)
        if (a?.state !== 'value' || b?.state !== 'value') return
        expect(b.shown.text).toBe(a.shown.text)
        const [was, is] = [a.value, b.value] as unknown as Record<string, readonly number[]>[]
        for (const part of ['original_width', 'height', 'area', 'stop', 'scale'])
          is?.[part]?.forEach((value, at) => {
            expect(value / (was?.[part]?.[at] as number)).toBeCloseTo(1, 10)
          })
        expect(is?.title).toEqual(was?.title)
        expect(is?.done).toEqual(was?.done)
      }),
      { numRuns: 300 },
    )
  })

  it('while the sheet waits, holds what is typed', () => {
    const sheet = sheetOf([
      given('border', '', { unit: 'mm' }),
      table(
        [['7', '']],
        [
          { name: 'a', unit: 'mm' },
          { name: 'b', formula: 'a + border' },
        ],
      ),
    ])
    expect(exportRows(sheet.engine, sheet.engine.node('s') as never)).toEqual([
      ['a [mm]', 'b [mm]'],
      ['7', ''],
    ])
  })
})
