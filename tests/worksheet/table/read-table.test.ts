import { describe, expect, it, test } from 'vitest'
import type { Column } from '../../../src/worksheet/index.ts'
import { rowReader } from '../../../src/worksheet/table/read-table.ts'

const column = (name: string, more: Partial<Column> = {}): Column => ({ name, ...more })

/** What a field of a column is read as, or what is said of it. */
function field(text: string, more: Partial<Column> = {}): unknown {
  const reading = rowReader([column('a', more), column('b', { entry: 'text' })]).read([text, 'x'])
  return reading.problems[0]?.message ?? reading.values[0]
}

describe('a field of a quantity', () => {
  test.each([
    ['420', 0.42],
    ['420,5', 0.4205],
    ['  7.5 ', 0.0075],
    ['42 cm', 0.42],
    ['4,2 cm', 0.042],
    ['−5', -0.005],
    ['1 ft 6 in', 0.4572],
    ['12 ± 1', 0.012],
  ])('“%s” in mm is %d m', (text, metres) => {
    expect(field(text, { unit: 'mm' })).toBeCloseTo(metres, 12)
  })

  it('reads the notations of the trade as a given does', () => {
    expect(field('8', { unit: 'f/' })).toBe(8)
    expect(field('f/8', { unit: 'f/' })).toBe(8)
    expect(field('1/125', { unit: 's' })).toBeCloseTo(0.008, 12)
    expect(field('4', { unit: '1:' })).toBe(0.25)
    expect(field('20', { unit: '°C' })).toBeCloseTo(293.15, 9)
  })

  it('of what is counted takes no fraction', () => {
    expect(field('12', { whole: true })).toBe(12)
    expect(field('2,5', { whole: true })).toMatch(/whole number, such as 2 or 3/)
    expect(field('2,5')).toBe(2.5)
  })

  it('of another kind is reported', () => {
    expect(field('3 kg', { unit: 'mm' })).toMatch(/length/)
    expect(field('3 mm')).toMatch(/no unit and takes plain numbers; this is a length/)
    expect(field('wide', { unit: 'mm' })).toMatch(/“wide” is not a number/)
    expect(field('1,234.5', { unit: 'mm' })).toMatch(/one decimal sign/)
  })
})

test.each([
  ['yes', true],
  ['TRUE', true],
  ['x', true],
  ['✓', true],
  ['', false],
  ['no', false],
  ['0', false],
])('“%s” in a column to tick is %s', (text, ticked) => {
  expect(field(text, { entry: 'tick' })).toBe(ticked)
})

test('what is neither is reported', () => {
  expect(field('perhaps', { entry: 'tick' })).toMatch(/yes or no/)
})

describe('a choice', () => {
  const options = ['Map', 'Print', '400 ppi']
  it('is one of what is offered, however it is capitalised', () => {
    expect(field('map ', { entry: 'choice', options })).toBe('Map')
    expect(field('Pint', { entry: 'choice', options })).toMatch(/Choose “Map”, “Print” or “400 ppi”/)
    expect(field('Map', { entry: 'choice' })).toMatch(/no options/)
  })
  it('with a unit is a quantity', () => {
    expect(field('400 ppi', { entry: 'choice', unit: 'ppi', options })).toBeCloseTo(400 / 0.0254, 9)
  })
})

test.each([
  ['2026-11-25', '2026-11-25'],
  ['2026-11-25T14:30', '2026-11-25 14:30'],
  ['2026-11-25 9.05', '2026-11-25 09:05'],
  ['25.11.2026, 14:30:05', '2026-11-25 14:30:05'],
  ['25/11/2026', '2026-11-25'],
  ['11/25/2026 8:00', '2026-11-25 08:00'],
  ['04/04/2026', '2026-04-04'],
])('the moment “%s” is %s', (text, moment) => {
  expect(field(text, { entry: 'date and time' })).toBe(moment)
})

test.each(['03/04/2026', '2026-02-30', '2026-11-25 25:00', '14:30', 'today', '31.02.2026'])(
  'the moment “%s” is refused in words',
  (text) => {
    expect(field(text, { entry: 'date and time' })).toMatch(/year/)
  },
)

describe('a row', () => {
  const columns = [
    column('width', { unit: 'mm' }),
    column('remark', { entry: 'text', may_be_empty: true }),
    column('area', { formula: 'width ^ 2' }),
  ]
  it('lacks a field that must not stay empty', () => {
    const reading = rowReader(columns).read(['', 'torn', ''])
    expect(reading.problems).toMatchObject([{ column: 0, empty: true }])
    expect(reading.values).toEqual([undefined, 'torn', undefined])
  })
  it('with nothing in it at all is blank, and no problem', () => {
    for (const row of [['', ' ', ''], []])
      expect(rowReader(columns).read(row)).toMatchObject({ isBlank: true, problems: [] })
  })
  it('shorter or longer than the columns is read as far as both go', () => {
    expect(rowReader(columns).read(['5']).values[0]).toBe(0.005)
    expect(rowReader(columns).read(['5', '', '', 'over']).problems).toEqual([])
  })
  it('is read once, whatever becomes of names and labels', () => {
    const row = ['5', '', '']
    const before = rowReader(columns).read(row)
    const renamed = columns.map((one) => ({ ...one, name: `${one.name}_2`, label: 'Other' }))
    expect(rowReader(renamed).read(row)).toBe(before)
    expect(rowReader(renamed).columns[0]?.column.label).toBe('Other')
    const inches = columns.map((one) => ({ ...one, ...(one.unit ? { unit: 'in' } : {}) }))
    expect(rowReader(inches).read(row).values[0]).toBeCloseTo(0.127, 12)
  })
})

test('what might be written instead is offered where it can be read', () => {
  const fixOf = (text: string) => rowReader([column('a', { unit: 'mm' })]).read([text]).problems[0]?.fix
  expect(fixOf('1,234.5')).toBe('1234.5')
  expect(fixOf('4o0')).toBeUndefined()
})

test('a column whose unit cannot be read says so and reads nothing', () => {
  const [read] = rowReader([column('a', { unit: 'mmm' })]).columns
  expect(read?.error?.message).toMatch(/mmm/)
  expect(read?.type).toBeUndefined()
})
