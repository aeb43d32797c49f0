import { describe, expect, it } from 'vitest'
import { type Cell, ChangeRefused, type TableCell } from '../../../src/worksheet/index.ts'
import { check, given, result, seen, sheetOf } from '../make.ts'

const originals: TableCell = {
  kind: 'table',
  id: 'originals',
  name: 'originals',
  columns: [
    { name: 'width', unit: 'mm', foot: [{ figure: 'count', where: 'width > border' }] },
    { name: 'outer', formula: 'width + 2 * border' },
  ],
  rows: [['100', '']],
}
const cells: readonly Cell[] = [
  given('border', '10', { unit: 'mm' }),
  originals,
  {
    ...originals,
    id: 'others',
    name: 'others',
    columns: [
      { name: 'width', unit: 'mm' },
      { name: 'share', formula: 'width / sum(originals.width)' },
    ],
  },
  result('all', 'sum(originals.width) + sum(others.width)'),
  check('fits', 'greatest(originals.width) < 1 m', { message: '{sum(originals.width)} in width' }),
  { kind: 'run', id: 'run', of: 'originals', from: { width: 'width + border', height: 'originals.count * width' } },
]
const columnsOf = (cell: unknown) => (cell as TableCell).columns

describe('a column’s new name', () => {
  it('follows into its own table, into its parts elsewhere and into runs, and nowhere else', () => {
    const sheet = sheetOf(cells)
    const before = seen(sheet, 'all')
    sheet.apply({ do: 'rename column', id: 'originals', column: 0, name: 'w' })
    expect(columnsOf(sheet.cell('originals'))).toMatchObject([
      { name: 'w', foot: [{ where: 'w > border' }] },
      { formula: 'w + 2 * border' },
    ])
    expect(columnsOf(sheet.cell('others'))).toMatchObject([{ name: 'width' }, { formula: 'width / sum(originals.w)' }])
    expect(sheet.cell('all')).toMatchObject({ formula: 'sum(originals.w) + sum(others.width)' })
    expect(sheet.cell('fits')).toMatchObject({
      condition: 'greatest(originals.w) < 1 m',
      message: '{sum(originals.w)} in width',
    })
    expect(sheet.cell('run')).toMatchObject({ from: { width: 'w + border', height: 'originals.count * w' } })
    expect(seen(sheet, 'all')).toBe(before)
    sheet.undo()
    expect(sheet.worksheet.cells).toEqual(cells)
  })

  it.each(['', 'count', 'and', 'outer', 'two words', 'border'])('“%s” is refused in words', (name) => {
    const sheet = sheetOf(cells)
    expect(() => sheet.apply({ do: 'rename column', id: 'originals', column: 0, name })).toThrow(ChangeRefused)
    expect(sheet.worksheet.cells).toEqual(cells)
  })
})

describe('a cell’s new name', () => {
  it('follows into the formulas of columns and the conditions at their foot', () => {
    const sheet = sheetOf(cells)
    sheet.apply({ do: 'rename', id: 'border', name: 'rim' })
    expect(columnsOf(sheet.cell('originals'))).toMatchObject([
      { foot: [{ where: 'width > rim' }] },
      { formula: 'width + 2 * rim' },
    ])
  })
  it('does not follow where a column bears the old one', () => {
    const sheet = sheetOf([given('width', '1 m'), originals, given('border', '1', { unit: 'mm' })])
    sheet.apply({ do: 'rename', id: 'width', name: 'breadth' })
    expect(sheet.cell('originals')).toBe(originals)
  })
  it('is refused where a column would be meant under it', () => {
    const sheet = sheetOf(cells)
    expect(() => sheet.apply({ do: 'rename', id: 'border', name: 'width' })).toThrow(
      /a column there is already named “width”/,
    )
  })
  it('of the table follows to its parts', () => {
    const sheet = sheetOf(cells)
    sheet.apply({ do: 'rename', id: 'originals', name: 'maps' })
    expect(seen(sheet, 'all')).toBe('200 mm')
    expect(sheet.cell('run')).toMatchObject({ of: 'maps', from: { height: 'maps.count * width' } })
  })
})
