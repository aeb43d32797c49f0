import { describe, expect, test } from 'vitest'
import { grouped, withField, withFilledDown, withRow, withRowMoved } from '../../../src/cells/table/row-edits.ts'
import { applyFix } from '../../../src/language/index.ts'
import type { Column, TableCell } from '../../../src/worksheet/index.ts'
import { filteredRows, groupsOf } from '../../../src/worksheet/table/footer.ts'
import { matchTable, missingColumns, takeTable, withDefaults } from '../../../src/worksheet/table/match-import.ts'
import { sortedTable } from '../../../src/worksheet/table/sort.ts'
import { countingLibrary, given, result, seen, sheetOf } from '../make.ts'

const COLUMNS: Column[] = [
  { name: 'shelf', entry: 'text' },
  { name: 'width', unit: 'mm' },
  { name: 'height', unit: 'mm', may_be_empty: true },
  { name: 'seen', entry: 'date', may_be_empty: true },
]
const table = (rows: readonly (readonly string[])[], columns = COLUMNS): TableCell => ({
  kind: 'table',
  id: 't',
  name: 'originals',
  columns: [...columns],
  rows: rows.map((row) => [...row]),
})
const ROWS = [
  ['B 10', '420', '300', '2026-11-25'],
  ['B 9', '42 in', '', '25.11.2025'],
  ['A 1', '50 cm', '200', ''],
  ['B 10', '100', '100', '2026-01-02'],
]
const opened = (cell: TableCell) => {
  const sheet = sheetOf([cell, result('area', 'sum(originals.width * originals.height)')])
  const node = sheet.engine.node('t')
  if (!node) throw new Error('There is no table.')
  return { sheet, node, engine: sheet.engine }
}

describe('whole columns', () => {
  test('are computed row by row, also where a row has nothing in one of them', () => {
    const { sheet } = opened(table(ROWS))
    // 420 × 300 + 500 × 200 + 100 × 100 mm²; the second row has no height.
    expect(seen(sheet, 'area')).toBe('0.236 m²')
  })

  test('with gaps in different rows are never paired with the wrong one', () => {
    const columns: Column[] = [
      { name: 'a', may_be_empty: true },
      { name: 'b', may_be_empty: true },
    ]
    const sheet = sheetOf([
      table(
        [
          ['1', ''],
          ['2', '10'],
          ['', '100'],
        ],
        columns,
      ),
      result('both', 'sum(originals.a * originals.b)'),
      result('thrice', 'sum(originals.a * originals.b + originals.a)'),
    ])
    expect(seen(sheet, 'both')).toBe('20')
    expect(seen(sheet, 'thrice')).toBe('22')
  })
})

describe('the default of a column', () => {
  const columns: Column[] = [
    { name: 'shelf', entry: 'text' },
    { name: 'width', unit: 'mm', default: '400' },
  ]
  test('is what an empty field of a filled row takes, and a blank row stays blank', () => {
    const sheet = sheetOf([
      table(
        [
          ['A', ''],
          ['B', '100'],
          ['', ''],
        ],
        columns,
      ),
      result('all', 'sum(originals.width)'),
    ])
    expect(seen(sheet, 't')).toBe('2 rows')
    expect(seen(sheet, 'all')).toBe('500 mm')
  })

  test('answers for a column that a pasted table does not have, in one question', () => {
    const match = matchTable(COLUMNS, [
      ['shelf', 'height'],
      ...Array.from({ length: 339 }, (_, at) => [`A ${at}`, '100']),
    ])
    expect(missingColumns(COLUMNS, match)).toEqual([1])
    const rows = [['shelf', 'height'], ...Array.from({ length: 339 }, (_, at) => [`A ${at}`, '100'])]
    const taken = takeTable(withDefaults(table([]), new Map([[1, '420']])), rows, match, 'instead')
    const { sheet } = opened(taken)
    expect(seen(sheet, 't')).toBe('339 rows')
  })
})

describe('dates and times', () => {
  test.each([
    ['date', ['2026-11-25', '2026-01-02']],
    ['time', ['10:30', '09:15']],
    ['time', ['7:05', '23:59:30']],
    ['date and time', ['2026-11-25 10:30', '2026-11-26']],
    [undefined, ['1:4', '1:12']],
    [undefined, ['400', '300']],
  ] as const)('a pasted column of %s is known by its fields', (entry, fields) => {
    const { sources } = matchTable([], [['a', 'b'], ...fields.map((field) => [field, 'x'])], true)
    expect(sources[0]?.asNew.entry).toBe(entry)
  })

  test('sort by when they are', () => {
    const { engine, node } = opened(table(ROWS))
    expect(sortedTable(engine, node, 3).rows.map((row) => row[3])).toEqual([
      '25.11.2025',
      '2026-01-02',
      '2026-11-25',
      '',
    ])
  })
})

describe('sorting, filling and grouping', () => {
  test('quantities sort by size whatever their unit, text by its numbers, and equal rows keep their order', () => {
    const { engine, node } = opened(table(ROWS))
    expect(sortedTable(engine, node, 1).rows.map((row) => row[1])).toEqual(['100', '420', '50 cm', '42 in'])
    expect(sortedTable(engine, node, 0).rows.map((row) => `${row[0]} ${row[1]}`)).toEqual([
      'A 1 50 cm',
      'B 9 42 in',
      'B 10 420',
      'B 10 100',
    ])
    expect(sortedTable(engine, node, 1, true).rows.map((row) => row[1])).toEqual(['42 in', '50 cm', '420', '100'])
  })

  test('a row without a value comes last both ways', () => {
    const { engine, node } = opened(table(ROWS))
    for (const descending of [false, true])
      expect(sortedTable(engine, node, 2, descending).rows.at(-1)?.[0]).toBe('B 9')
  })

  test('a field fills the empty ones below it, as far as the next that is filled in', () => {
    const cell = table([
      ['A', '1'],
      ['', '2'],
      ['', '3'],
      ['B', '4'],
      ['', '5'],
    ])
    const { cell: filled, filled: count } = withFilledDown(cell, 0, 0)
    expect(count).toBe(2)
    expect(filled.rows.map(([shelf]) => shelf)).toEqual(['A', 'A', 'A', 'B', ''])
    expect(withFilledDown(cell, 3, 1).filled).toBe(0)
    expect(withFilledDown(cell, 1, 0).filled).toBe(0)
  })

  test('groups have their counts and totals', () => {
    const { engine, node } = opened(grouped(table(ROWS), 'shelf'))
    const seenGroups = groupsOf(engine, node).map(({ label, count, feet }) => [label, count, feet[1]?.[0]?.shown])
    expect(seenGroups).toEqual([
      ['B 10', 2, '520 mm'],
      ['B 9', 1, '1067 mm'],
      ['A 1', 1, '500 mm'],
    ])
    expect(
      groupsOf(
        ...(Object.values(opened(table(ROWS)))
          .slice(1)
          .reverse() as Parameters<typeof groupsOf>),
      ),
    ).toEqual([])
  })

  test('a filter is a text or a condition on the row', () => {
    const { engine, node } = opened(table(ROWS))
    expect(filteredRows(engine, node, ' ')).toBeUndefined()
    expect(filteredRows(engine, node, 'b 1')).toEqual([0, 3])
    expect(filteredRows(engine, node, 'width > 45 cm')).toEqual([1, 2])
    expect(filteredRows(engine, node, '<')).toEqual([])
  })
})

test.each([
  ['sqrt(t.width * t.height)', /^“t\.width \* t\.height” has many values, and sqrt takes one\./],
  ['abs(t.width)', /^“t\.width” has many values, and abs takes one\./],
  ['t.width > 300 mm', /^“t\.width” has many values, and a comparison has two\./],
  ['300 mm < t.width', /^“t\.width” has many values/],
  ['t.width = t.height', /^“t\.width” has many values/],
])('%s says that a column has many values, and offers one figure of it', (formula, says) => {
  const sheet = sheetOf([
    {
      kind: 'table',
      id: 't',
      name: 't',
      columns: [
        { name: 'width', unit: 'mm' },
        { name: 'height', unit: 'mm' },
      ],
      rows: [['400', '300']],
    },
    result('r', formula),
  ])
  const outcome = sheet.outcome('r')
  const [error] = outcome.state === 'error' ? outcome.diagnostics : []
  expect(error?.message).toMatch(says)
  const fixed = (error?.fixes ?? []).map((one) => applyFix(formula, one))
  expect(fixed.length > 0).toBe(!formula.includes(' = '))
  for (const text of fixed) {
    sheet.apply({ do: 'replace', cell: result('r', text) })
    expect(seen(sheet, 'r')).not.toMatch(/^error/)
  }
})

test('an edit of one row among thousands computes that row alone, and a change of the sheet all of them', () => {
  const { library, calls } = countingLibrary()
  const cell: TableCell = {
    kind: 'table',
    id: 't',
    name: 'originals',
    columns: [
      { name: 'width', unit: 'mm' },
      { name: 'outer', formula: 'counted(width + border)', unit: 'mm' },
    ],
    rows: Array.from({ length: 19_999 }, (_, at) => [`${(at * 7919) % 20_011}`, '']),
  }
  const sheet = sheetOf([given('border', '1', { unit: 'mm' }), cell, result('all', 'sum(originals.outer)')], library)
  seen(sheet, 'all')
  expect(calls).toHaveLength(19_999)
  const computedBy = (act: () => void): number => {
    calls.length = 0
    act()
    seen(sheet, 'all')
    return calls.length
  }
  const table = (): TableCell => sheet.cell('t') as TableCell
  const put = (next: TableCell) => () => sheet.apply({ do: 'replace', cell: next })
  const before = seen(sheet, 'all')
  expect(computedBy(put(withField(table(), 12_345, 0, '400')))).toBe(1)
  expect(seen(sheet, 'all')).not.toBe(before)
  expect(computedBy(put(withRow(table(), 7, ['300', ''])))).toBe(1)
  expect(computedBy(put(withRowMoved(table(), 9, 19_000)))).toBe(0)
  const node = sheet.engine.node('t')
  expect(node && computedBy(put(sortedTable(sheet.engine, node, 0)))).toBe(0)
  expect(computedBy(() => sheet.undo())).toBe(0)
  expect(computedBy(() => sheet.apply({ do: 'replace', cell: given('border', '2', { unit: 'mm' }) }))).toBe(20_000)
  // The figures are those of a sheet that never computed anything before.
  const cells = [
    given('border', '2', { unit: 'mm' }),
    { ...table(), columns: [...table().columns] },
    result('all', 'sum(originals.outer)'),
  ]
  expect(seen(sheet, 'all')).toBe(seen(sheetOf(cells, library), 'all'))
})
