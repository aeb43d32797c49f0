import { describe, expect, it } from 'vitest'
import { adviseSheet } from '../../../src/worksheet/advice/advise.ts'
import type { NoPlan } from '../../../src/worksheet/advice/plan.ts'
import { noPlanText } from '../../../src/worksheet/advice/plan-text.ts'
import type { FullSheet } from '../../../src/worksheet/renaming/full-sheet.ts'
import { check, given, result, sheetOf } from '../make.ts'

const reasonOf = (sheet: FullSheet, name: string): string => {
  const none = adviseSheet(sheet).checks.get(name)?.none
  return noPlanText(sheet, none as NoPlan)
}

describe('a check without a plan', () => {
  it('says how near it comes in its own unit, and which equipment would do', () => {
    const sheet = sheetOf([
      given('column_reach', '1200', {
        unit: 'mm',
        label: 'Column',
        fixed: true,
        advice: { change: 'never', otherwise: 'a column that reaches {}' },
      }),
      given('face', '143', { unit: 'mm', label: 'Face', fixed: true }),
      result('carriage', '1200 mm + face', { unit: 'mm' }),
      check('reaches', 'carriage <= column_reach', { margin: '0 %' }),
    ])
    expect(reasonOf(sheet, 'reaches')).toBe(
      'Nothing that may be changed has an effect on this check. It is 143 mm over its limit of 1200 mm. It would pass with a column that reaches 1400 mm.',
    )
  })

  it('names what it cannot get past where nothing may be decided', () => {
    const sheet = sheetOf([
      given('opens_safely', '110', { unit: '°', label: 'Opening allowed by the keeper', fixed: true }),
      given('opened_to', '130', { unit: '°', label: 'Opened to', fixed: true }),
      check('gently', 'opened_to <= opens_safely'),
    ])
    expect(reasonOf(sheet, 'gently')).toBe(
      'Nothing that may be changed has an effect on this check. It is 20° over its limit of 110°. What limits it: Opened to 130°; Opening allowed by the keeper 110°.',
    )
  })

  it('shows marks and ratios themselves, not a difference of them', () => {
    const sheet = sheetOf([
      given('widest', 'f/16', { unit: 'f/', label: 'Smallest aperture', fixed: true }),
      given('set', 'f/22', { unit: 'f/', label: 'Aperture', fixed: true }),
      check('on_lens', 'set <= widest'),
    ])
    expect(reasonOf(sheet, 'on_lens')).toContain('It is f/22, and its limit is f/16.')
  })

  it('of a limit of zero comes nearer step by step, and says what is left', () => {
    const sheet = sheetOf([
      given('out', '300', {
        unit: 'mm',
        label: 'Lamps',
        advice: { change: 'freely', step: 10, least: 100, most: 500 },
      }),
      given('zone', '520', { unit: 'mm', label: 'Mirror zone', fixed: true }),
      given('glossy', 'yes', { entry: 'yes or no', label: 'Glossy', fixed: true }),
      result('clearance', 'out - zone', { unit: 'mm' }),
      check('clear', 'not glossy or clearance > 0 mm'),
    ])
    expect(reasonOf(sheet, 'clear')).toBe(
      'Not within reach. The nearest is 20 mm short of the 0 mm required: increase Lamps from 300 mm to 500 mm. What limits it: Glossy yes; Mirror zone 520 mm.',
    )
  })

  it('of two quantities that have to be both within their limits gives the one that is farther off', () => {
    const sheet = sheetOf([
      given('board', '100 x 80', { entry: 'size', unit: 'mm', label: 'Board', fixed: true }),
      given('original', '110 x 120', { entry: 'size', unit: 'mm', label: 'Original', fixed: true }),
      check('fits', 'original.width <= board.width and original.height <= board.height'),
      check('fits_turned', 'original.width <= board.width or original.height <= board.height'),
    ])
    expect(reasonOf(sheet, 'fits')).toContain('It is 40 mm over its limit of 80 mm.')
    expect(reasonOf(sheet, 'fits_turned')).toContain('It is 10 mm over its limit of 100 mm.')
  })
})
