import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { drawRange } from '../../../src/drawings/range/range-plot.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { rangeTable } from '../../../src/worksheet/analysis/range-table.ts'
import { RangeInputError } from '../../../src/worksheet/analysis/range-values.ts'
import {
  type Column,
  type Range,
  readDocument,
  type Sheet,
  type TableCell,
  writeDocument,
} from '../../../src/worksheet/index.ts'
import { FullSheet } from '../../../src/worksheet/renaming/full-sheet.ts'
import { clashes, pathsOf, texts } from '../../drawings/reading.ts'
import { given, result, sheetOf } from '../make.ts'

const range = (more: Partial<Range>): Range => ({ kind: 'range', id: 'r', results: [], ...more }) as Range
const table = (columns: readonly Column[], rows: readonly (readonly string[])[]): TableCell => ({
  kind: 'table',
  id: 't',
  name: 'originals',
  label: 'Originals',
  columns: [...columns],
  rows: rows.map((row) => [...row]),
})

const READINGS = table(
  [
    { name: 'day', label: 'Read on', entry: 'date' },
    { name: 'light', label: 'Light', unit: 'lx' },
    { name: 'double', formula: 'light * 2', unit: 'lx' },
    { name: 'note', entry: 'text', may_be_empty: true },
  ],
  [
    ['2026-03-01', '500', '', ''],
    ['2026-03-11', '480', '', 'lamp changed'],
    ['not a date', '470', '', ''],
    ['2026-04-20', '450', '', ''],
  ],
)
const SIZES = table(
  [
    { name: 'width', unit: 'mm' },
    { name: 'height', unit: 'mm' },
  ],
  [
    ['420', '297'],
    ['210', '297'],
    ['594', '841'],
    ['420', '594'],
  ],
)

const problemOf = (sheet: Sheet, more: Partial<Range>): string => {
  try {
    rangeTable(sheet, range(more))
  } catch (error) {
    if (error instanceof RangeInputError) return error.message
    throw error
  }
  return ''
}

describe('a plot of columns', () => {
  it('has the rows that count, computed columns too, over dates at their distances', () => {
    const plot = rangeTable(sheetOf([READINGS]), range({ of: 'originals.day', columns: ['light', 'double'] }))
    expect(plot.shown).toEqual(['2026-03-01', '2026-03-11', '2026-04-20'])
    expect(plot.figures.map((seconds) => (seconds - (plot.figures[0] as number)) / 86_400)).toEqual([0, 10, 50])
    expect(plot.followed.map(({ figures }) => figures)).toEqual([
      [500, 480, 450],
      [1000, 960, 900],
    ])
    const drawn = drawRange(plot, { width: 500 })
    const [a, b, c] = pathsOf(drawn, 'thick', 'followed')
      .flat()
      .map(({ x }) => x) as [number, number, number]
    expect((b - a) / (c - a)).toBeCloseTo(0.2, 2)
    expect(texts(drawn).map(({ text }) => text)).toContain('Read on')
    expect(texts(drawn).some(({ text }) => /\d (Mar|Apr)/.test(text))).toBe(true)
  })

  it('joins rows by a line only where they are in order', () => {
    const drawn = (rows: string[][]) =>
      drawRange(rangeTable(sheetOf([{ ...SIZES, rows }]), range({ of: 'originals.width', columns: ['height'] })), {
        width: 400,
      })
    expect(pathsOf(drawn(SIZES.rows), 'followed')).toHaveLength(0)
    expect(pathsOf(drawn(SIZES.rows), 'followed-at').length).toBeGreaterThan(3)
    const inOrder = [...SIZES.rows.slice(1, 2), ...SIZES.rows.slice(0, 1), ...SIZES.rows.slice(2, 3)]
    expect(pathsOf(drawn(inOrder), 'followed')).toHaveLength(1)
  })

  it('of times of day has the hours on its axis', () => {
    const times = table(
      [
        { name: 'at', entry: 'time' },
        { name: 'light', unit: 'lx' },
      ],
      [
        ['08:00', '1'],
        ['12:30', '2'],
        ['17:45', '3'],
      ],
    )
    const plot = rangeTable(sheetOf([times]), range({ of: 'originals.at', columns: ['light'] }))
    expect(plot.figures).toEqual([28_800, 45_000, 63_900])
    expect(texts(drawRange(plot, { width: 500 })).map(({ text }) => text)).toContain('12:00')
  })

  it('says what is missing', () => {
    const sheet = sheetOf([READINGS])
    expect(problemOf(sheet, { of: 'originals' })).toMatch(/choose one of its columns/)
    expect(problemOf(sheet, { of: 'originals.day' })).toMatch(/columns of “Originals” to plot/)
    expect(problemOf(sheet, { of: 'originals.gone', columns: ['light'] })).toMatch(/no column “gone”/)
    expect(problemOf(sheet, { of: 'originals.note', columns: ['light'] })).toMatch(/no figures to plot over/)
    expect(problemOf(sheetOf([{ ...READINGS, rows: [] }]), { of: 'originals.day', columns: ['light'] })).toMatch(
      /no filled-in rows/,
    )
  })

  it('of any numbers puts no text over another, and every distinct place once', () => {
    const numbers = fc.array(fc.tuple(fc.integer({ min: -1e6, max: 1e6 }), fc.integer({ min: -1e6, max: 1e6 })), {
      minLength: 1,
      maxLength: 40,
    })
    fc.assert(
      fc.property(numbers, fc.integer({ min: 240, max: 700 }), (rows, width) => {
        const sheet = sheetOf([{ ...SIZES, rows: rows.map((row) => row.map(String)) }])
        const drawn = drawRange(rangeTable(sheet, range({ of: 'originals.width', columns: ['height'] })), { width })
        expect(clashes(drawn)).toEqual([])
      }),
      { numRuns: 60 },
    )
  })

  it('of twenty thousand rows draws no more marks than the plot has places', () => {
    const rows = Array.from({ length: 20_000 }, (_, at) => [`${(at * 7919) % 20_011}`, `${(at * 104_729) % 1009}`])
    const sheet = sheetOf([{ ...SIZES, rows }])
    const plot = rangeTable(sheet, range({ of: 'originals.width', columns: ['height'] }))
    expect(plot.figures).toHaveLength(20_000)
    expect(JSON.stringify(drawRange(plot, { width: 620 }).node).length).toBeLessThan(2_000_000)
  })

  it('leaves out what is no moment, and draws no figure that is not finite', () => {
    const moments = table(
      [
        { name: 'text', entry: 'text' },
        { name: 'day', formula: 'text', entry: 'date' },
        { name: 'width', unit: 'mm' },
      ],
      [
        ['2026-03-01', '', '1'],
        ['soon', '', '2'],
        ['2026-03-03', '', '3'],
      ],
    )
    const plot = rangeTable(sheetOf([moments]), range({ of: 'originals.day', columns: ['width'] }))
    expect(plot.followed[0]?.figures).toEqual([1, 3])
    expect(JSON.stringify(drawRange(plot, { width: 400 }).node)).not.toMatch(/NaN|Infinity|null/)
  })

  it('follows a table and a column that are renamed', () => {
    const { worksheet } = sheetOf([READINGS, range({ of: 'originals.day', columns: ['light'] })])
    const sheet = new FullSheet(worksheet, LIBRARY)
    sheet.apply({ do: 'rename', id: 't', name: 'readings' })
    sheet.apply({ do: 'rename column', id: 't', column: 1, name: 'illuminance' })
    sheet.apply({ do: 'rename column', id: 't', column: 0, name: 'date' })
    expect(sheet.cell('r')).toMatchObject({ of: 'readings.date', columns: ['illuminance'] })
  })

  it('opens from a file as it was saved', () => {
    const sheet = sheetOf([READINGS, range({ of: 'originals.day', columns: ['light'] })])
    const opened = readDocument(writeDocument(sheet.worksheet))
    expect(JSON.stringify(opened)).toContain('"columns":["light"]')
  })
})

describe('a range through the values of a column', () => {
  const sheet = () =>
    sheetOf([
      SIZES,
      given('side', '100', { unit: 'mm' }),
      given('time', '1 s'),
      result('area', 'side * side', { unit: 'cm^2' }),
    ])

  it('has each of them once, in order of size', () => {
    const { shown, followed, values } = rangeTable(
      sheet(),
      range({ of: 'side', values: 'originals.width', results: ['area'] }),
    )
    expect(shown).toEqual(['210 mm', '420 mm', '594 mm'])
    expect(followed[0]?.figures).toEqual([441, 1764, 3528.36].map((one) => expect.closeTo(one, 6)))
    expect(values.map(({ text }) => text)).toEqual(['210', '420', '594'])
  })

  it('asks for a column of the same quantity', () => {
    expect(problemOf(sheet(), { of: 'time', values: 'originals.width', results: ['area'] })).toMatch(/another kind/)
    expect(problemOf(sheet(), { of: 'side', values: 'nothing.width', results: ['area'] })).toMatch(/no table/)
  })
})
