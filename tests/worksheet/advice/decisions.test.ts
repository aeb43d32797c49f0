import { describe, expect, it } from 'vitest'
import { decisionsFor, withChanges } from '../../../src/worksheet/advice/decisions.ts'
import type { PlannedChange } from '../../../src/worksheet/advice/plan.ts'
import type { Cell, Given, Sheet } from '../../../src/worksheet/index.ts'
import type { Advice } from '../../../src/worksheet/schema/document.ts'
import { check, given, result, sheetOf } from '../make.ts'

const otherwise: Advice = { change: 'never', otherwise: 'one of {}' }
const equipment = (name: string, value: string, more: Partial<Given> = {}): Given =>
  given(name, value, { unit: 'mm', fixed: true, advice: otherwise, ...more })

/** What somebody might decide so that a check passes, of all the cells it may depend on. */
function decided(cells: readonly Cell[], name: string, nearest: readonly PlannedChange[] = []): string[] {
  const sheet = sheetOf(cells)
  const upstream = sheet.engine.layout.order.filter(({ cell }) => cell.kind !== 'check')
  return decisionsFor(sheet, name, upstream, nearest).map(({ given: of, before, text }) => `${of}: ${before} → ${text}`)
}

const reaches = check('reaches', 'reach >= 1 m', { margin: '0 %' })

describe('what somebody may decide so that a check passes', () => {
  it('is other equipment, the nearest that does', () => {
    expect(decided([equipment('reach', '900'), reaches], 'reaches')).toEqual(['reach: 900 → 1000'])
    // Within eight times what there is.
    expect(decided([equipment('reach', '130'), reaches], 'reaches')).toEqual(['reach: 130 → 1000'])
    expect(decided([equipment('reach', '120'), reaches], 'reaches')).toEqual([])
  })

  it('is what was agreed on, within three times', () => {
    const agreed = (value: string) => given('reach', value, { unit: 'mm', advice: { change: 'agree', within: 1.05 } })
    expect(decided([agreed('400'), reaches], 'reaches')).toEqual(['reach: 400 → 1000'])
    expect(decided([agreed('300'), reaches], 'reaches')).toEqual([])
    // What says nothing more is agreed on as well.
    expect(decided([given('reach', '900', { unit: 'mm' }), reaches], 'reaches')).toEqual(['reach: 900 → 1000'])
  })

  it.each<[string, Partial<Given>]>([
    ['a fact', { fixed: true }],
    ['a setting', { advice: { change: 'freely', within: 2 } }],
    ['a reading', { fixed: true, advice: otherwise, reading: true }],
    ['a fact of which nothing else may be had', { fixed: true, advice: { change: 'never' } }],
  ])('is not %s', (_, more) => {
    expect(decided([given('reach', '900', { unit: 'mm', ...more }), reaches], 'reaches')).toEqual([])
  })

  it('is not a text or a choice', () => {
    const chosen = given('kind', 'low', { entry: 'choice', options: ['low', 'tall'], advice: { change: 'agree' } })
    expect(decided([chosen, check('tall', 'kind = "tall"')], 'tall')).toEqual([])
    const ticked = given('lit', 'no', { entry: 'yes or no', fixed: true, advice: otherwise })
    expect(decided([ticked, check('bright', 'lit')], 'bright')).toEqual([])
  })

  it('is not what was measured in its place, nor what is not filled in', () => {
    const measured = result('reach', 'column', { unit: 'mm', measured: '900 mm' })
    expect(decided([equipment('column', '900'), measured, reaches], 'reaches')).toEqual([])
    expect(decided([equipment('reach', ''), reaches], 'reaches')).toEqual([])
    const board = given('board', '', { entry: 'size', unit: 'mm', fixed: true, advice: otherwise })
    expect(decided([board, check('fits', 'board.width >= 1 m')], 'fits')).toEqual([])
  })

  it('is no setting, though that would do where equipment does not', () => {
    const rise = given('rise', '100', { unit: 'mm', advice: { change: 'freely', step: 100, least: 100, most: 1000 } })
    expect(decided([equipment('reach', '30'), rise, check('high', 'reach + rise >= 900 mm')], 'high')).toEqual([])
  })

  it('makes nothing else fail', () => {
    const fits = check('fits', 'reach <= 1050 mm', { margin: '0 %' })
    expect(decided([equipment('reach', '900'), reaches, fits], 'reaches')).toEqual(['reach: 900 → 1000'])
    const low = check('low', 'reach < 990 mm', { margin: '0 %' })
    expect(decided([equipment('reach', '900'), reaches, low], 'reaches')).toEqual([])
  })

  it('is a larger board of the same shape', () => {
    const board = given('board', '100 x 80', { entry: 'size', unit: 'mm', fixed: true, advice: otherwise })
    const fits = check('fits', 'board.width >= 140 mm', { margin: '0 %' })
    expect(decided([board, fits], 'fits')).toEqual(['board: 100 x 80 → 141 x 113'])
    const narrow = check('narrow', 'board.height < 70 mm')
    expect(decided([board, narrow], 'narrow')).toEqual([])
    const huge = check('huge', 'board.width >= 790 mm', { margin: '0 %' })
    expect(decided([board, huge], 'huge')).toEqual(['board: 100 x 80 → 800 x 640'])
    // A size is larger in its own unit.
    const inches = given('board', '4 x 2 in', { entry: 'size', unit: 'in', fixed: true, advice: otherwise })
    expect(decided([inches, check('fits', 'board.width >= 5 in', { margin: '0 %' })], 'fits')).toEqual([
      'board: 4 x 2 in → 5.66 x 2.83',
    ])
    // A size agreed on is not another size.
    expect(decided([{ ...board, fixed: false, advice: { change: 'agree' } }, fits], 'fits')).toEqual([])
  })

  it('brings along what always takes the same text', () => {
    const left = equipment('reach', '900', { advice: { ...otherwise, with: 'other' } })
    const both = check('both', 'reach + other >= 2 m', { margin: '0 %' })
    expect(decided([left, equipment('other', '900', { advice: { change: 'never' } }), both], 'both')).toEqual([
      'reach: 900 → 1000',
    ])
  })

  it('is each alone, the nearest first, three at most', () => {
    const names = ['a', 'b', 'c', 'd']
    const cells = names.map((name, at) => equipment(name, `${500 + 100 * at}`))
    const far = check('far', 'a + b + c + d >= 3 m', { margin: '0 %' })
    // 2600 mm there are: 400 mm more of each, the least share of the longest.
    expect(decided([...cells, far], 'far')).toEqual(['d: 800 → 1200', 'c: 700 → 1100', 'b: 600 → 1000'])
  })

  it('is tried on top of the changes that come nearest, where nothing does by itself', () => {
    const rise = given('rise', '100', { unit: 'mm', advice: { change: 'freely', step: 100, least: 100, most: 300 } })
    const high = check('high', 'reach + rise >= 8 m', { margin: '0 %' })
    const nearest = [{ given: 'rise', before: '100', text: '1000' }]
    const cells = [equipment('reach', '900'), rise, high]
    expect(decided(cells, 'high')).toEqual([])
    expect(decided(cells, 'high', nearest)).toEqual(['reach: 900 → 7000'])
    // By itself it does: nothing else is changed.
    const near = check('high', 'reach + rise >= 2 m', { margin: '0 %' })
    expect(decided([equipment('reach', '900'), rise, near], 'high', nearest)).toEqual(['reach: 900 → 1900'])
    // What is changed already stays changed, and is not changed again.
    const agreed = given('rise', '100', { unit: 'mm', advice: { change: 'agree' } })
    const higher = check('higher', 'reach + rise >= 7450 mm', { margin: '0 %' })
    const changed = [{ given: 'rise', before: '100', text: '290' }]
    expect(decided([equipment('reach', '900'), agreed, higher], 'higher')).toEqual([])
    expect(decided([equipment('reach', '900'), agreed, higher], 'higher', changed)).toEqual(['reach: 900 → 7200'])
    expect(
      decided([equipment('reach', '900'), check('high', 'reach >= 9 m')], 'high', [
        { given: 'reach', before: '900', text: '5000' },
      ]),
    ).toEqual([])
  })
})

describe('a sheet with changes typed in', () => {
  it('is a copy with those texts in the givens named', () => {
    const sheet: Sheet = sheetOf([given('a', '1'), given('b', '2'), result('sum', 'a + b')])
    const trial = withChanges(sheet, [
      { given: 'a', before: '1', text: '5' },
      { given: 'sum', before: '', text: '9' },
    ])
    expect(trial.cells).toMatchObject([{ value: '5' }, { value: '2' }, { formula: 'a + b' }])
    expect(trial.cells[2]).toBe(sheet.cells[2])
    expect(trial.outcome('sum')).toMatchObject({ value: 7 })
    expect(sheet.outcome('sum')).toMatchObject({ value: 3 })
  })
})
