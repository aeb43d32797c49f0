import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { compare } from '../../../src/worksheet/analysis/compare.ts'
import type { Cell } from '../../../src/worksheet/index.ts'
import { check, given, note, result, sheetOf } from '../make.ts'

const reported = (before: readonly Cell[], after: readonly Cell[]): string[] =>
  compare(sheetOf(before), sheetOf(after)).map(
    ({ part, label, was, is }) => `${part}: ${label}: ${was ?? '(nothing)'} → ${is ?? '(nothing)'}`,
  )

const SHEET = [
  given('width', '420 mm', { label: 'Width' }),
  result('m', '36 mm / width', { label: 'Magnification', unit: '1:' }),
  check('small', 'm <= 1:10', { label: 'Small enough' }),
  note('n', 'Mind the edges.'),
]
const [width, m, small, words] = SHEET as [Cell, Cell, Cell, Cell]

describe('what differs', () => {
  it('is nothing between a sheet and itself', () => {
    expect(reported(SHEET, SHEET)).toEqual([])
  })

  it('is reported by label: the given, the results and checks it changed', () => {
    expect(reported(SHEET, [given('width', '300 mm', { label: 'Width' }), m, small, words])).toEqual([
      'givens: Width: 420 mm → 300 mm',
      'results: Magnification: 1:11.7 → 1:8.33',
      'checks: Small enough: passes → fails',
    ])
  })

  it('is a given emptied, and those who wait for it', () => {
    expect(reported(SHEET, [given('width', '', { label: 'Width' }), m, small, words])).toEqual([
      'givens: Width: 420 mm → empty',
      'results: Magnification: 1:11.7 → needs more figures',
      'checks: Small enough: passes → needs more figures',
    ])
  })

  it('is a formula, even where the result is the same', () => {
    const other = result('m', '72 mm / (2 * width)', { label: 'Magnification', unit: '1:' })
    expect(reported(SHEET, [width, other, small, words])).toEqual([
      'formulas: Magnification: 36 mm / width → 72 mm / (2 * width)',
    ])
  })

  it('is a result that was measured, and not how it is set up', () => {
    const under = (text: string) => ({ text, figures: { width: '420 mm' }, by: 'R.S.' })
    const measured = (text: string): Cell => ({ ...m, measured: text, measured_under: under(text) }) as Cell
    expect(reported(SHEET, [width, measured('1:9'), small, words])).toEqual([
      'results: Magnification: 1:11.7 → 1:9',
      'checks: Small enough: passes → fails',
    ])
    expect(reported([width, measured('1:11.7')], [width, measured('1:11.70')])).toEqual([
      'results: Magnification: 1:11.7 → 1:11.70',
    ])
  })

  it('is a cell that came, with what it says, and one that went', () => {
    const added = result('twice', 'width * 2', { label: 'Twice', unit: 'mm' })
    expect(reported(SHEET, [width, m, small, added])).toEqual([
      'results: Twice: (nothing) → 840 mm',
      'notes: Note: Mind the edges. → (nothing)',
    ])
  })

  it('is a new label, a note, the order', () => {
    const renamed = given('width', '420 mm', { label: 'Width of the map' })
    expect(reported(SHEET, [m, renamed, small, note('n', 'Mind the corners.')])).toEqual([
      'notes: Note: Mind the edges. → Mind the corners.',
      'cells: Width of the map: called Width → called Width of the map',
      'cells: Order: earlier order → changed order',
    ])
  })

  it('finds a cell by its name where ids were made anew', () => {
    const anew = SHEET.map((cell) => ({ ...cell, id: `new-${cell.id}` }))
    expect(reported(SHEET.slice(0, 3), anew.slice(0, 3))).toEqual([])
  })
})

describe('what differs in what is filled in at work', () => {
  const steps = (more: object, text = 'Level the stand'): Cell => ({
    kind: 'steps',
    id: 's',
    steps: [{ text, ...more }],
  })
  const table = (...values: readonly string[]): Cell => ({
    ...{ kind: 'table', id: 't', name: 't', label: 'Readings', columns: [{ name: 'light', unit: 'lx' }] },
    rows: values.map((value) => [value]),
  })
  const pixels = { width: 600, height: 400, bits: 8, channels: 3, encoding: 'sRGB' }
  const frame = (digest: string, name = 'card.tif'): Cell => ({
    ...{ kind: 'frame', id: 'f', name: 'f', label: 'Plain card' },
    picture: { name, size: 9, digest, pixels, taken: null },
    readings: { grey: {} },
  })

  it('is nothing where a value only came from somewhere else', () => {
    const from = { kind: 'kit' as const, text: '420 mm' }
    expect(reported([width], [{ ...width, from } as Cell])).toEqual([])
    expect(reported([table('1')], [{ ...table('1'), from: { kind: 'typed', text: '' } } as Cell])).toEqual([])
  })

  it('is a piece of kit with other figures', () => {
    const lens = (focal: string): Cell => given('lens', 'A lens', { entry: 'kit', sort: 'lens', piece: { focal } })
    expect(reported([lens('60 mm')], [lens('60 mm')])).toEqual([])
    expect(reported([lens('60 mm')], [lens('80 mm')])).toEqual(['cells: lens: earlier settings → changed settings'])
  })

  it('is a step that was ticked, or frames that were counted', () => {
    expect(reported([steps({})], [steps({ done: true })])).toEqual([
      'notes: Step 1: Level the stand: not ticked → ticked',
    ])
    expect(reported([steps({ taken: 1 })], [steps({ taken: 2 })])).toEqual([
      'notes: Step 1: Level the stand: 1 frame taken → 2 frames taken',
    ])
    expect(reported([steps({})], [steps({ done: true }, 'Level the column')])).toEqual([
      'cells: Steps: earlier settings → changed settings',
    ])
  })

  it('is each field of a table, or how many there are', () => {
    expect(reported([table('1', '2')], [table('1', '3', '4')])).toEqual([
      'tables: Readings, row 2, light: 2 → 3',
      'tables: Readings, row 3, light: empty → 4',
    ])
    expect(reported([table('1')], [table(...'abcdefghijklm')])).toEqual([
      'tables: Readings: 1 row → 13 rows, 13 fields changed',
    ])
  })

  it('is a picture that was measured, also where the file has the same name', () => {
    expect(reported([frame('a')], [frame('b', 'next.tif')])).toEqual([
      'notes: Plain card, picture: card.tif, 1 area measured → next.tif, 1 area measured',
    ])
    expect(reported([frame('a')], [frame('b')])).toEqual([
      'notes: Plain card, picture: card.tif, 1 area measured → card.tif, 1 area measured again',
    ])
  })
})

test('the formula of a function of the sheet differs', () => {
  const own = (formula: string): Cell => ({ kind: 'function', id: 'g', name: 'twice', arguments: [], formula })
  expect(reported([own('2')], [own('3')])).toEqual(['formulas: twice: 2 → 3'])
})

test('compared one way and the other, the same things differ', () => {
  const value = fc.constantFrom('', '100 mm', '200 mm', 'nonsense')
  const cells = fc
    .tuple(value, value, fc.constantFrom('a + b', 'a * 2', 'a / b'), fc.boolean())
    .map(([a, b, formula, withNote]) => [
      given('a', a),
      given('b', b),
      result('r', formula),
      ...(withNote ? [note('n', 'x')] : []),
    ])
  fc.assert(
    fc.property(cells, cells, (one, other) => {
      const there = compare(sheetOf(one), sheetOf(other))
      const back = compare(sheetOf(other), sheetOf(one))
      const written = (label: string, was?: string, is?: string) => `${label}: ${was} → ${is}`
      expect(there.map(({ label, was, is }) => written(label, was, is)).sort()).toEqual(
        back.map(({ label, was, is }) => written(label, is, was)).sort(),
      )
      for (const { was, is } of there) expect(was).not.toBe(is)
    }),
    { numRuns: 100 },
  )
})
