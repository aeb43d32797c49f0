import { describe, expect, it, test } from 'vitest'
import type { Column, TableCell } from '../../../src/worksheet/index.ts'
import { footerOf } from '../../../src/worksheet/table/footer.ts'
import { given, notifiedBy, result, sheetOf } from '../make.ts'

type Foot = NonNullable<Column['foot']>[number]

const tableWith = (foot: readonly Foot[], column: Partial<Column> = {}): TableCell => ({
  kind: 'table',
  id: 's',
  name: 's',
  columns: [
    { name: 'width', unit: 'mm', ...column, foot: [...foot] },
    { name: 'bound', entry: 'tick' },
    { name: 'depth', unit: 'mm', may_be_empty: true },
    { name: 'frames', formula: 'ceil(width / border)' },
  ],
  rows: [
    ['100', 'yes', '5', ''],
    ['20 cm', '', '', ''],
    ['300', 'x', '', ''],
    ['torn', 'yes', '', ''],
    ['', '', '', ''],
    ['400', '', '2', ''],
  ],
})
const border = given('border', '50', { unit: 'mm' })

/** What is under the first column: the figures, or what is said of them. */
function foot(figures: readonly Foot[], column: Partial<Column> = {}): (string | undefined)[] {
  const sheet = sheetOf([border, tableWith(figures, column)])
  const [first] = footerOf(sheet.engine, sheet.engine.node('s') as never)
  return (first ?? []).map(({ shown, diagnostics }) => diagnostics[0]?.message ?? shown)
}

test('the figures of a column, over the rows that count, in its unit', () => {
  expect(
    foot([{ figure: 'sum' }, { figure: 'mean' }, { figure: 'least' }, { figure: 'greatest' }, { figure: 'count' }]),
  ).toEqual(['1000 mm', '250 mm', '100 mm', '400 mm', '4'])
})

test('a percentile is of a share, 95 % where nothing is said', () => {
  expect(
    foot([
      { figure: 'percentile', share: '50 %' },
      { figure: 'percentile', share: '0.5' },
      { figure: 'percentile' },
      { figure: 'percentile', share: '95' },
      { figure: 'percentile', share: 'most' },
    ]),
  ).toEqual(['250 mm', '250 mm', '385 mm', expect.stringMatching(/from 0 % to 100 %/), expect.stringMatching(/“most”/)])
})

test('which rows a figure is of is said, but not below the column that says so itself', () => {
  const where = (name: string, entry: Partial<Column>, condition: string) => {
    const table = tableWith([])
    const columns = [...table.columns, { name, ...entry, foot: [{ figure: 'count', where: condition }] }] as Column[]
    const sheet = sheetOf([border, { ...table, columns }])
    return footerOf(sheet.engine, sheet.engine.node('s') as never).at(-1)?.[0]
  }
  expect(where('done', { entry: 'tick' }, 'done')).not.toHaveProperty('where')
  expect(where('done', { entry: 'tick' }, 'not done')).toMatchObject({ where: 'not done' })
  expect(where('done', { entry: 'tick' }, 'bound')).toMatchObject({ where: 'bound' })
})

describe('a figure of some rows', () => {
  it('is of those the condition holds for', () => {
    expect(
      foot([
        { figure: 'sum', where: 'bound' },
        { figure: 'count', where: 'width > 4 * border and not bound' },
        { figure: 'count', where: 'frames <= 4' },
        { figure: 'count', where: 'depth > 3 mm' },
        { figure: 'greatest', where: 'width > 2 * mean(s.width)' },
        { figure: 'sum', where: 'no' },
      ]),
    ).toEqual(['400 mm', '1', '2', '1', undefined, '0 mm'])
  })
  it('has its condition checked like any formula', () => {
    expect(
      foot([
        { figure: 'sum', where: 'width > 3' },
        { figure: 'sum', where: 'width' },
        { figure: 'sum', where: 'wide' },
      ]),
    ).toEqual([
      expect.stringMatching(/length/),
      expect.stringMatching(/true or false/),
      expect.stringMatching(/There is no cell named “wide”/),
    ])
  })
  it('follows the cells its condition uses, and is reported when they change', () => {
    const cells = [
      border,
      tableWith([{ figure: 'count', where: 'width < limit' }]),
      given('limit', '250 mm'),
      result('all', 'sum(s.width)'),
    ]
    const sheet = sheetOf(cells)
    const shown = () => footerOf(sheet.engine, sheet.engine.node('s') as never)[0]?.[0]?.shown
    expect(shown()).toBe('2')
    const reported = notifiedBy(sheet, () => sheet.apply({ do: 'replace', cell: given('limit', '350 mm') }))
    expect(reported).toEqual(['limit', 's'])
    expect(shown()).toBe('3')
    sheet.apply({ do: 'replace', cell: given('limit', '') })
    expect(shown()).toBeUndefined()
  })
})

test('a column that is ticked can be counted, and says so of what it cannot have', () => {
  const cell = tableWith([])
  const bound: Column = { name: 'bound', entry: 'tick', foot: [{ figure: 'count', where: 'bound' }, { figure: 'sum' }] }
  const sheet = sheetOf([border, { ...cell, columns: cell.columns.with(1, bound) }])
  const [count, sum] = footerOf(sheet.engine, sheet.engine.node('s') as never)[1] ?? []
  expect(count?.shown).toBe('2')
  expect(sum?.diagnostics[0]?.message).toMatch(/can be counted/)
})

test('a computed column has a foot as well', () => {
  const cell = tableWith([])
  const frames = { ...(cell.columns[3] as Column), foot: [{ figure: 'sum' as const }] }
  const sheet = sheetOf([border, { ...cell, columns: cell.columns.with(3, frames) }])
  expect(footerOf(sheet.engine, sheet.engine.node('s') as never)[3]?.[0]?.shown).toBe('20')
})
