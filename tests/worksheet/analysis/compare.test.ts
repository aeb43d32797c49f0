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
