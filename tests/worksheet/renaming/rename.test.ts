import { describe, expect, it, test } from 'vitest'
import { ChangeRefused, freeName } from '../../../src/worksheet/index.ts'
import { check, given, note, result, seen, sheetOf } from '../make.ts'

const cells = [
  given('width', '600 mm'),
  result('double', 'width * 2'),
  check('fits', 'double <= 2 * width', {
    message: 'it is {width} wide, {2 * width} wanted; width is a word here',
    passes: '{width} fits',
  }),
  { kind: 'drawing' as const, id: 'd', drawing: 'set-up' as const, from: { distance: 'width / 2', note: '' } },
  note('n', 'The width is measured, {width}.'),
]

describe('a new name', () => {
  it('follows into formulas, conditions, messages and drawings, and nowhere else', () => {
    const sheet = sheetOf(cells)
    sheet.apply({ do: 'rename', id: 'width', name: 'w' })
    expect(sheet.cell('width')).toMatchObject({ name: 'w' })
    expect(sheet.cell('double')).toMatchObject({ formula: 'w * 2' })
    expect(sheet.cell('fits')).toMatchObject({
      condition: 'double <= 2 * w',
      message: 'it is {w} wide, {2 * w} wanted; width is a word here',
      passes: '{w} fits',
    })
    expect(sheet.cell('d')).toMatchObject({ from: { distance: 'w / 2', note: '' } })
    expect(sheet.cell('n')).toMatchObject({ text: 'The width is measured, {width}.' })
    expect(seen(sheet, 'double')).toBe('1200 mm')
    expect(sheet.named('w')?.id).toBe('width')
    expect(sheet.named('width')).toBeUndefined()
    sheet.undo()
    expect(sheet.worksheet.cells).toEqual(cells)
  })

  it('that reads otherwise in a formula does not change what the formula means', () => {
    const sheet = sheetOf([given('a', '4 mm'), result('b', 'a/8'), result('c', '10 mm/a')])
    sheet.apply({ do: 'rename', id: 'a', name: 'f' })
    expect(seen(sheet, 'b')).toBe('0.5 mm')
    sheet.apply({ do: 'rename', id: 'a', name: 'm' })
    expect(seen(sheet, 'c')).toBe('2.5')
  })

  test.each(['', '2nd', 'with space', 'and', 'when', 'infinity', 'double', '__proto__', 'é', 'a'.repeat(65)])(
    '“%s” is refused in words, with nothing changed',
    (name) => {
      const sheet = sheetOf(cells)
      expect(() => sheet.apply({ do: 'rename', id: 'width', name })).toThrow(ChangeRefused)
      expect(sheet.worksheet.cells).toEqual(cells)
    },
  )

  it('the same as before changes nothing', () => {
    const sheet = sheetOf(cells)
    sheet.apply({ do: 'rename', id: 'width', name: 'width' })
    expect(sheet.worksheet.cells).toEqual(cells)
  })
})

describe('a new name in cells that list names', () => {
  const listing = [
    given('width', '600 mm'),
    result('double', 'width * 2'),
    { ...given('lens', ''), entry: 'kit' as const, sort: 'lens' as const, fills: { focal: 'width', reach: 'double' } },
    { kind: 'steps' as const, id: 's', steps: [{ text: 'Read the width', reading: 'width' }, { text: 'width' }] },
    { kind: 'range' as const, id: 'r', of: 'width', results: ['double'] },
    {
      kind: 'variants' as const,
      id: 'v',
      sets: [{ title: 'width', values: { width: '1 mm', lens: '2' } }],
      results: ['double'],
    },
    {
      kind: 'table' as const,
      id: 'sch',
      name: 'originals',
      columns: [
        { name: 'tall', label: 'width' },
        {
          name: 'part',
          formula: 'tall / width',
          foot: [{ figure: 'count' as const, where: 'tall > width' }],
        },
      ],
      rows: [['width', '']],
    },
    { kind: 'run' as const, id: 'run', of: 'originals', from: { width: 'width - tall' } },
  ]

  it('follows into readings, ranges, variants, tables, runs and what a piece of kit fills in', () => {
    const sheet = sheetOf(listing)
    sheet.apply({ do: 'rename', id: 'width', name: 'w' })
    expect(sheet.cell('lens')).toMatchObject({ fills: { focal: 'w', reach: 'double' } })
    expect(sheet.cell('s')).toMatchObject({ steps: [{ text: 'Read the width', reading: 'w' }, { text: 'width' }] })
    expect(sheet.cell('r')).toMatchObject({ of: 'w', results: ['double'] })
    expect(sheet.cell('v')).toMatchObject({ sets: [{ title: 'width', values: { w: '1 mm', lens: '2' } }] })
    expect(sheet.cell('sch')).toMatchObject({
      columns: [
        { name: 'tall', label: 'width' },
        { name: 'part', formula: 'tall / w', foot: [{ where: 'tall > w' }] },
      ],
      rows: [['width', '']],
    })
    expect(sheet.cell('run')).toMatchObject({ of: 'originals', from: { width: 'w - tall' } })
    sheet.apply({ do: 'rename', id: 'sch', name: 'maps' })
    expect(sheet.cell('run')).toMatchObject({ of: 'maps' })
    sheet.undo()
    sheet.undo()
    expect(sheet.worksheet.cells).toEqual(listing)
  })

  it('leaves alone what means a column of the table', () => {
    const sheet = sheetOf([...listing, given('tall', '1 mm')])
    sheet.apply({ do: 'rename', id: 'tall', name: 'high' })
    expect(sheet.cell('sch')).toMatchObject({ columns: [{ name: 'tall' }, { formula: 'tall / width' }] })
    expect(sheet.cell('run')).toMatchObject({ from: { width: 'width - tall' } })
  })

  it('leaves a step whose reading is removed with what it said', () => {
    const sheet = sheetOf(listing)
    sheet.apply({ do: 'remove', id: 'width' })
    expect(sheet.cell('s')).toMatchObject({ steps: [{ text: 'Read the width', reading: 'width' }, { text: 'width' }] })
  })
})

test('a free name is found beside taken ones', () => {
  expect(freeName('width', cells)).toBe('width_2')
  expect(freeName('width', [...cells, given('width_2', '')])).toBe('width_3')
  expect(freeName('and', cells)).toBe('cell')
  expect(freeName('height', cells)).toBe('height')
})
