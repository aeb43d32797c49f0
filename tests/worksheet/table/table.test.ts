import { describe, expect, it, test } from 'vitest'
import type { Column, Sheet, TableCell } from '../../../src/worksheet/index.ts'
import { rowsComputed } from '../../../src/worksheet/table/row-status.ts'
import { check, given, result, seen, sheetOf } from '../make.ts'

const originals = (
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  name = 'originals',
): TableCell => ({
  kind: 'table',
  id: name,
  name,
  columns: [...columns],
  rows: rows.map((row) => [...row]),
})

const WIDTH: Column = { name: 'width', label: 'Width', unit: 'mm' }
const HEIGHT: Column = { name: 'height', label: 'Height', unit: 'mm' }
const TITLE: Column = { name: 'title', entry: 'text' }

/** Types one field of a table anew. */
function type(sheet: Sheet, id: string, row: number, column: number, text: string): void {
  const cell = sheet.cell(id) as TableCell
  sheet.apply({
    do: 'replace',
    cell: { ...cell, rows: cell.rows.with(row, (cell.rows[row] as string[]).with(column, text)) },
  })
}

const leftOut = (sheet: Sheet, id = 'originals') => {
  const outcome = sheet.outcome(id)
  return outcome.state === 'value' ? outcome.leftOut : undefined
}

describe('a table', () => {
  const rows = [
    ['420', '300', 'Town plan'],
    ['42 cm', '31,5 cm', 'Harbour'],
    ['1 ft', '8 in', 'Coast'],
  ]
  it('is to formulas how many rows it has and each column as a list', () => {
    const sheet = sheetOf([
      originals([WIDTH, HEIGHT, TITLE], rows),
      result('n', 'originals.count'),
      result('widest', 'greatest(originals.width)'),
      result('all', 'sum(originals.height)'),
      result('titles', 'count(originals.title)'),
      result('last', 'item(originals.title, 3)'),
    ])
    expect(seen(sheet, 'originals')).toBe('3 rows')
    expect(seen(sheet, 'n')).toBe('3')
    expect(seen(sheet, 'widest')).toBe('420 mm')
    expect(seen(sheet, 'all')).toBe('818 mm')
    expect(seen(sheet, 'titles')).toBe('3')
    expect(seen(sheet, 'last')).toBe('Coast')
  })

  it('feeds a function that takes lists', () => {
    const sheet = sheetOf([
      originals(
        [WIDTH, HEIGHT],
        [
          ['360', '240'],
          ['450', '300'],
        ],
      ),
      result('plan', 'setups_for(originals.width, originals.height, {300 ppi}, 36 mm, 24 mm, 5 [um/px]).count'),
    ])
    expect(seen(sheet, 'plan')).toBe('1')
  })

  it('without columns or rows has no rows', () => {
    const sheet = sheetOf([originals([], []), result('n', 'originals.count')])
    expect(seen(sheet, 'n')).toBe('0')
    expect(seen(sheet, 'originals')).toBe('0 rows')
  })

  it('without rows keeps what cannot do without them waiting for it', () => {
    const sheet = sheetOf([
      originals([WIDTH, HEIGHT, TITLE], []),
      result('widest', 'greatest(originals.width)'),
      result('twice', '2 * widest'),
      result('n', 'originals.count'),
    ])
    const outcome = (name: string) => sheet.outcome(sheet.named(name)?.id ?? '')
    expect(outcome('widest')).toEqual({ state: 'waiting', on: ['originals'] })
    expect(outcome('twice')).toEqual({ state: 'waiting', on: ['originals'] })
    expect(seen(sheet, 'n')).toBe('0')
    const [table] = sheet.cells
    if (table?.kind !== 'table') throw new Error('The table is gone.')
    sheet.apply({ do: 'replace', cell: { ...table, rows } })
    expect(seen(sheet, 'widest')).toBe('420 mm')
    sheet.apply({ do: 'replace', cell: { ...table, rows: [] } })
    expect(outcome('twice')).toEqual({ state: 'waiting', on: ['originals'] })
    // A mistake in a formula stays one.
    const wrong = sheetOf([originals([WIDTH], []), result('a', 'greatest(originals.width) + 1 s')])
    expect(wrong.outcome(wrong.named('a')?.id ?? '').state).toBe('error')
  })

  it('follows what is typed into a field', () => {
    const sheet = sheetOf([originals([WIDTH, HEIGHT, TITLE], rows), result('widest', 'greatest(originals.width)')])
    type(sheet, 'originals', 0, 0, '900')
    expect(seen(sheet, 'widest')).toBe('900 mm')
    sheet.undo()
    expect(seen(sheet, 'widest')).toBe('420 mm')
  })

  it('says what a part that is no column might be', () => {
    const sheet = sheetOf([originals([WIDTH], []), result('a', 'sum(originals.widht)')])
    expect(seen(sheet, 'a')).toMatch(/A table has no part “widht”. Its parts are count and width/)
  })
})

describe('a column with a formula', () => {
  const area: Column = { name: 'area', unit: 'cm^2', formula: 'width * height' }
  it('is worked out for each row, from columns left and right of it and from the sheet', () => {
    const sheet = sheetOf([
      given('border', '10 mm', { unit: 'mm' }),
      originals(
        [
          area,
          WIDTH,
          HEIGHT,
          { name: 'whole', formula: 'outer * outer' },
          { name: 'outer', formula: 'width + 2 * border' },
        ],
        [['', '100', '200', '', '']],
      ),
      result('areas', 'sum(originals.area)'),
      result('wholes', 'sum(originals.whole)'),
    ])
    expect(seen(sheet, 'areas')).toBe('200 cm²')
    expect(seen(sheet, 'wholes')).toBe('144 cm²')
    sheet.apply({ do: 'replace', cell: given('border', '50 mm', { unit: 'mm' }) })
    expect(seen(sheet, 'wholes')).toBe('400 cm²')
  })

  it('means the column where the sheet has a cell of that name, whether above or below', () => {
    const cells = [given('width', '5 mm', { unit: 'mm' }), given('height', '7 mm', { unit: 'mm' })]
    const sheet = sheetOf([
      ...cells,
      originals([WIDTH, { name: 'area', formula: 'width * height' }], [['100', '']]),
      result('areas', 'sum(originals.area)'),
    ])
    expect(seen(sheet, 'areas')).toBe('7 cm²')
  })

  it('that does not fit its unit is reported once, by the column', () => {
    const sheet = sheetOf([
      originals(
        [WIDTH, { name: 'area', label: 'Area', unit: 'mm', formula: 'width * width' }],
        [
          ['1', ''],
          ['2', ''],
        ],
      ),
      result('areas', 'sum(originals.area)'),
    ])
    const outcome = sheet.outcome('originals')
    expect(outcome).toMatchObject({ state: 'error' })
    expect(outcome.state === 'error' && outcome.diagnostics).toHaveLength(1)
    expect(seen(sheet, 'originals')).toMatch(
      /In the column “Area”: The cell declares mm, a length; the formula gives an area/,
    )
    expect(seen(sheet, 'areas')).toMatch(/Fix “originals” first/)
    expect(sheet.checkSummary.errors).toBe(1)
  })

  it('may give a yes or no, a text, a list or a record', () => {
    const sheet = sheetOf([
      originals(
        [
          WIDTH,
          { name: 'large', formula: 'width > 200 mm' },
          { name: 'word', formula: 'when(large, "large", "small")' },
          { name: 'both', formula: '{width, 2 * width}' },
        ],
        [
          ['100', '', '', ''],
          ['300', '', '', ''],
        ],
      ),
      result('second', 'item(originals.word, 2)'),
      result('twice', 'item(item(originals.both, 1), 2)'),
    ])
    expect(seen(sheet, 'second')).toBe('large')
    expect(seen(sheet, 'twice')).toBe('200 mm')
  })

  it('waits with its sheet, and is in error with it', () => {
    const sheet = sheetOf([
      given('border', '', { unit: 'mm' }),
      originals([WIDTH, { name: 'outer', formula: 'width + border' }], [['100', '']]),
      result('most', 'greatest(originals.outer)'),
    ])
    expect(seen(sheet, 'most')).toBe('waits for border')
    sheet.apply({ do: 'replace', cell: given('border', 'wide', { unit: 'mm' }) })
    expect(seen(sheet, 'originals')).toMatch(/Fix “border” first/)
    sheet.apply({ do: 'replace', cell: given('border', '1', { unit: 'mm' }) })
    expect(seen(sheet, 'most')).toBe('101 mm')
  })

  it('carries limits of the sheet on into what is made of the list', () => {
    const sheet = sheetOf([
      given('border', '10 ± 1', { unit: 'mm' }),
      originals(
        [WIDTH, { name: 'outer', formula: 'width + 2 * border' }],
        [
          ['100', ''],
          ['200', ''],
        ],
      ),
      result('all', 'sum(originals.outer)'),
    ])
    expect(sheet.outcome('all')).toMatchObject({ tolerance: expect.closeTo(0.004, 9) })
  })

  it('with limits of its own gets a warning that a list has none', () => {
    const sheet = sheetOf([originals([WIDTH, { name: 'a', formula: 'width ± 1 mm' }], [['5', '']])])
    const outcome = sheet.outcome('originals')
    expect(outcome.state === 'value' && outcome.warnings[0]?.message).toMatch(/no limits/)
  })
})

describe('a circle is named', () => {
  test.each([
    [
      [
        { name: 'a', formula: 'b' },
        { name: 'b', formula: 'c' },
        { name: 'c', formula: 'a' },
      ],
      /a → b → c → a/,
    ],
    [[{ name: 'a', formula: 'a + 1' }], /a → a/],
  ])('among the columns: %j', (columns, way) => {
    expect(seen(sheetOf([originals(columns, [])]), 'originals')).toMatch(way)
  })

  it('through the sheet, and back to life once it is broken', () => {
    const sheet = sheetOf([
      originals(
        [WIDTH, { name: 'share', formula: 'width / total' }],
        [
          ['100', ''],
          ['300', ''],
        ],
      ),
      result('total', 'sum(originals.width)'),
      result('shares', 'sum(originals.share)'),
    ])
    expect(seen(sheet, 'total')).toMatch(/depend on each other in a cycle: total → originals → total/)
    sheet.apply({ do: 'replace', cell: result('total', '400 mm') })
    expect(seen(sheet, 'shares')).toBe('1')
  })
})

test.each([
  [[{ name: 'a' }, { name: 'a' }], /Another column is already named “a”/],
  [[{ name: 'count' }], /“count” is the number of rows/],
  [[{ name: 'and' }], /the formula language uses the word/],
  [[{ name: 'a', unit: 'mmm' }], /In the column “a”: The unit of this cell cannot be read/],
])('the columns %j are refused in words', (columns, words) => {
  expect(seen(sheetOf([originals(columns, [])]), 'originals')).toMatch(words)
})

test('names of prototypes are names like any other', () => {
  const names = ['constructor', 'toString', 'hasOwnProperty', 'valueOf']
  const sheet = sheetOf([
    originals(
      names.map((name) => ({ name })),
      [['1', '2', '3', '4']],
    ),
    ...names.map((name) => result(`of_${name}`, `sum(originals.${name})`)),
    result('none', 'originals.isPrototypeOf'),
  ])
  expect(names.map((name) => seen(sheet, `of_${name}`))).toEqual(['1', '2', '3', '4'])
  expect(seen(sheet, 'none')).toMatch(/has no part/)
})

describe('a row is left out, and reported', () => {
  it('where a field cannot be read or is empty', () => {
    const sheet = sheetOf([
      originals(
        [WIDTH, HEIGHT],
        [
          ['100', '50'],
          ['4o', '50'],
          ['', '50'],
          ['', ''],
          ['200', '50'],
        ],
      ),
      result('n', 'originals.count'),
      result('all', 'sum(originals.width)'),
    ])
    expect(seen(sheet, 'n')).toBe('2')
    expect(seen(sheet, 'all')).toBe('300 mm')
    expect(seen(sheet, 'originals')).toBe('2 of 4 rows')
    expect(leftOut(sheet)).toMatchObject([
      { row: 1, column: 0 },
      { row: 2, column: 0, message: 'This field is empty.' },
    ])
    const outcome = sheet.outcome('originals')
    expect(outcome.state === 'value' && outcome.warnings[0]?.message).toBe(
      '2 rows are left out: 2 and 3. The first, row 2: Width: “o” is not a known unit. Did you mean “oz”?',
    )
    type(sheet, 'originals', 1, 0, '40')
    expect(seen(sheet, 'all')).toBe('340 mm')
  })

  it('where its formula does not compute', () => {
    const sheet = sheetOf([
      originals(
        [WIDTH, { name: 'ratio', label: 'Ratio', formula: '1 mm / width' }],
        [
          ['1', ''],
          ['0', ''],
          ['2', ''],
        ],
      ),
      result('all', 'sum(originals.ratio)'),
    ])
    expect(seen(sheet, 'all')).toBe('1.5')
    expect(leftOut(sheet)).toEqual([{ row: 1, column: 1, message: 'Division by zero.' }])
  })

  it('for nothing that may be empty: the list holds only the values there are', () => {
    const note: Column = { name: 'depth', label: 'Depth', unit: 'mm', may_be_empty: true }
    const sheet = sheetOf([
      originals(
        [WIDTH, note, { name: 'reach', formula: 'width + depth', may_be_empty: true }],
        [
          ['100', '5', ''],
          ['200', '', ''],
        ],
      ),
      result('n', 'originals.count'),
      result('depths', 'count(originals.depth)'),
      result('reaches', 'sum(originals.reach)'),
    ])
    expect(['n', 'depths', 'reaches'].map((id) => seen(sheet, id))).toEqual(['2', '1', '105 mm'])
    const cell = sheet.cell('originals') as TableCell
    const { may_be_empty: _, ...expected } = cell.columns[2] as Column
    sheet.apply({ do: 'replace', cell: { ...cell, columns: cell.columns.with(2, expected) } })
    expect(seen(sheet, 'n')).toBe('1')
    expect(leftOut(sheet)).toEqual([
      { row: 1, column: 2, message: '“Depth” is empty in this row, and this formula needs it.' },
    ])
  })

  it('and many are counted, not listed', () => {
    const sheet = sheetOf([
      originals(
        [WIDTH],
        Array.from({ length: 30 }, (_, i) => [i % 2 === 0 ? '1' : 'x']),
      ),
    ])
    const outcome = sheet.outcome('originals')
    expect(outcome.state === 'value' && outcome.warnings[0]?.message).toMatch(
      /^15 rows are left out: 2, 4, 6, 8, 10 and 10 more\. The first, row 2: Width:/,
    )
  })
})

test('a check over a list holds or not, and shows figures of it', () => {
  const sheet = sheetOf([
    originals([WIDTH], [['100'], ['300']]),
    check('fits', 'greatest(originals.width) < 200 mm', {
      message: '{greatest(originals.width)} of {originals.count}',
    }),
  ])
  expect(sheet.check('fits')).toMatchObject({ state: 'fail', message: '300 mm of 2' })
})

test('typing tells of nothing but what it reaches', () => {
  const sheet = sheetOf([
    originals([WIDTH], [['100'], ['300']]),
    originals([WIDTH], [['1']], 'others'),
    result('all', 'sum(originals.width)'),
    result('other', 'sum(others.width)'),
  ])
  const reported: unknown[] = []
  sheet.watch((changed) => reported.push(changed === 'all' ? changed : [...changed].sort()))
  type(sheet, 'originals', 1, 0, '200')
  expect(reported).toEqual([['all', 'originals']])
})

test('what its rows gave stays when other cells come, go and move', () => {
  const sheet = sheetOf([
    given('border', '10', { unit: 'mm' }),
    originals(
      [WIDTH, { name: 'outer', formula: 'width + border' }],
      [
        ['100', ''],
        ['x', ''],
      ],
    ),
  ])
  const figures = () => rowsComputed(sheet.engine, sheet.engine.node('originals') as never)?.figures.get(1)
  expect(figures()).toEqual([0.11, undefined])
  sheet.apply({ do: 'add', cell: given('other', '1'), at: 0 })
  expect(figures()).toEqual([0.11, undefined])
  expect(seen(sheet, 'originals')).toBe('1 of 2 rows')
  sheet.apply({ do: 'remove', id: 'other' })
  expect(figures()).toEqual([0.11, undefined])
})
