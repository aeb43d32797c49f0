import { describe, expect, test } from 'vitest'
import type { NoPlan, Plan, PlannedChange } from '../../../src/worksheet/advice/plan.ts'
import {
  consequenceText,
  labelNamed,
  noPlanText,
  planText,
  wholePlanText,
} from '../../../src/worksheet/advice/plan-text.ts'
import type { Cell, Given } from '../../../src/worksheet/index.ts'
import { check, given, note, result, sheetOf } from '../make.ts'

const free = (more: object = {}) => ({ change: 'freely' as const, ...more })

const CELLS: readonly Cell[] = [
  given('height', '1000', { unit: 'mm', label: 'Height', advice: free() }),
  given('lamps', '1000', {
    unit: 'mm',
    label: 'Both lamps',
    advice: free({ with: 'right', more: 'Raise both lamps to {}', less: 'Lower both lamps to {}' }),
  }),
  given('right', '1000', { unit: 'mm', label: 'Right lamp', advice: free() }),
  given('aperture', 'f/8', { unit: 'f/', label: 'Aperture', advice: free() }),
  given('scale', '1:10', { unit: '1:', label: 'Scale', advice: free() }),
  given('time', '1/60 s', { unit: ' 1/ s', label: 'Time', advice: free() }),
  given('glazed', 'yes', { entry: 'yes or no', label: 'Glazed', advice: free() }),
  given('cloth', 'no', {
    entry: 'yes or no',
    label: 'Cloth',
    advice: free({ more: 'Hang a cloth', less: 'Take the cloth away' }),
  }),
  given('way', 'near', { entry: 'choice', options: ['near', 'far'], label: 'Way', advice: free({ to: 'Work {}' }) }),
  given('sampling', '300', { unit: 'ppi', label: 'Sampling', advice: { change: 'agree' } }),
  given('focal', '60', { unit: 'mm', label: 'Focal length', advice: { change: 'by kit' } }),
  given('lens', '60 mm lens', {
    entry: 'kit',
    sort: 'lens',
    label: 'Lens',
    piece: { focal: '60 mm' },
    fills: { focal: 'focal' },
  }),
  given('column', '1200', {
    unit: 'mm',
    label: 'Column',
    fixed: true,
    advice: { change: 'never', otherwise: 'a column that reaches {}' },
  }),
  given('table', '800', { unit: 'mm', label: 'Table', fixed: true }),
  given('plain', '5', { unit: 'mm' }),
  result('reach', 'column + 1 mm', { label: 'Reach' }),
  check('high', 'height <= column', { label: 'High enough' }),
  check('wide', 'height <= table', { label: 'Wide enough' }),
  note('n', 'A note'),
]
const SHEET = sheetOf(CELLS)

/** A change of one given from what it is. */
const change = (name: string, text: string): PlannedChange => ({
  given: name,
  before: (SHEET.named(name) as Given | undefined)?.value ?? '1',
  text,
})
const plan = (changes: readonly PlannedChange[], more: Partial<Plan> = {}): Plan => ({
  changes,
  cells: [],
  level: 'setting',
  passes: [],
  marginal: [],
  breaks: [],
  again: { readings: [], checks: [] },
  cost: 1,
  ...more,
})

describe('a change', () => {
  test.each<[string, string, string]>([
    ['height', '1200', 'Increase Height from 1000 mm to 1200 mm.'],
    ['height', '80 cm', 'Reduce Height from 1000 mm to 800 mm.'],
    ['lamps', '1200', 'Raise both lamps to 1200 mm.'],
    ['lamps', '800', 'Lower both lamps to 800 mm.'],
    ['aperture', 'f/11', 'Set Aperture to f/11.'],
    ['scale', '1:12', 'Set Scale to 1:12.'],
    ['time', '1/30 s', 'Set Time to 1/30 s.'],
    ['glazed', 'no', 'Set Glazed to no.'],
    ['cloth', 'yes', 'Hang a cloth.'],
    ['way', 'far', 'Work far.'],
    ['sampling', '400', 'Agree on Sampling 400 ppi instead of 300 ppi.'],
    ['focal', '90', 'Use other equipment: Focal length of about 90 mm instead of 60 mm.'],
    ['lens', '90 mm lens', 'Choose 90 mm lens as Lens.'],
    ['plain', '7', 'Agree on plain 7 mm instead of 5 mm.'],
    ['table', '900', 'Increase Table from 800 mm to 900 mm.'],
    ['nowhere', '900', 'Set nowhere to 900.'],
    ['height', 'nix', 'Set Height to nix.'],
  ])('of %s to %s is said: %s', (name, text, sentence) => {
    expect(planText(SHEET, plan([change(name, text)]))).toBe(sentence)
  })

  test('that takes a cloth away is said so', () => {
    const sheet = sheetOf([
      ...CELLS.filter((cell) => cell.id !== 'cloth'),
      { ...(SHEET.cell('cloth') as Given), value: 'yes' },
    ])
    expect(planText(sheet, plan([{ given: 'cloth', before: 'yes', text: 'no' }]))).toBe('Take the cloth away.')
  })
})

describe('a plan', () => {
  test('is one sentence, without what follows by itself', () => {
    expect(planText(SHEET, plan([change('lamps', '1200'), change('right', '1200'), change('way', 'far')]))).toBe(
      'Raise both lamps to 1200 mm and work far.',
    )
    expect(
      planText(SHEET, plan([change('lens', '90 mm lens'), change('focal', '90 mm'), change('height', '900')])),
    ).toBe('Choose 90 mm lens as Lens and reduce Height from 1000 mm to 900 mm.')
    expect(planText(SHEET, plan([change('right', '1200')]))).toBe('Increase Right lamp from 1000 mm to 1200 mm.')
  })

  test('for the whole sheet names the checks first', () => {
    expect(wholePlanText(SHEET, plan([change('height', '900')], { passes: ['high', 'wide'] }))).toBe(
      'To make High enough and Wide enough pass: reduce Height from 1000 mm to 900 mm.',
    )
  })

  test('says what it does beside', () => {
    const said = (more: Partial<Plan>) => consequenceText(SHEET, plan([], more))
    expect(said({})).toBe('')
    expect(said({ gives: '5 mm' })).toBe('It gives 5 mm.')
    expect(said({ breaks: ['high'] })).toBe('High enough then fails.')
    expect(said({ breaks: ['high', 'wide'] })).toBe('High enough and Wide enough then fail.')
    expect(said({ marginal: ['wide'] })).toBe('Wide enough is then marginal.')
    expect(said({ gives: '5 mm', breaks: ['high'], marginal: ['wide', 'high'] })).toBe(
      'It gives 5 mm. High enough then fails. Wide enough and High enough are then marginal.',
    )
    expect(said({ again: { readings: ['reach'], checks: ['high'] } })).toBe(
      'Then measure again: Reach; until then, High enough waits.',
    )
    expect(said({ again: { readings: ['reach', 'table'], checks: ['high', 'wide'] } })).toBe(
      'Then measure again: Reach and Table; until then, High enough and Wide enough wait.',
    )
  })
})

describe('why there is no plan', () => {
  const said = (more: Partial<NoPlan>): string =>
    noPlanText(SHEET, {
      kind: 'out of reach',
      settings: [],
      short: undefined,
      nearest: [],
      against: undefined,
      limits: [],
      decisions: [],
      ...more,
    })
  const short = { is: '5 mm', limit: '3 mm', off: '2 mm', isOver: true }
  const limits = [
    { name: 'column', is: '1200 mm' },
    { name: 'table', is: '' },
  ]

  test('is its reason, and how near the nearest comes', () => {
    expect(said({ kind: 'fixed' })).toBe('No setting that a suggestion may change has an effect on this check.')
    expect(said({ kind: 'out of reach' })).toBe('Not within reach.')
    expect(said({ kind: 'not found', short })).toBe('No suggestion was found. It is 2 mm over its limit of 3 mm.')
    expect(said({ short: { ...short, isOver: false } })).toBe(
      'Not within reach. It is 2 mm short of the 3 mm required.',
    )
    expect(said({ short: { is: 'f/8', limit: 'f/5.6', isOver: true } })).toBe(
      'Not within reach. It is f/8, and its limit is f/5.6.',
    )
    const nearest = [change('lamps', '1200'), change('height', '900')]
    expect(said({ short, nearest })).toBe(
      'Not within reach. The nearest is 2 mm over its limit of 3 mm: Raise both lamps to 1200 mm and reduce Height from 1000 mm to 900 mm.',
    )
    expect(said({ nearest })).toBe('Not within reach.')
    expect(said({ nearest, against: 'wide' })).toBe(
      'Not within reach. The nearest is to raise both lamps to 1200 mm and reduce Height from 1000 mm to 900 mm. Wide enough would then fail.',
    )
    expect(said({ against: 'wide', againstShort: short })).toBe(
      'Not within reach. Wide enough would then fail: 2 mm over its limit of 3 mm.',
    )
  })

  test('is what limits it, where nothing may be decided', () => {
    expect(said({ limits })).toBe('Not within reach. What limits it: Column 1200 mm; Table.')
    const decisions = [change('column', '1400')]
    expect(said({ limits, decisions })).toBe('Not within reach. It would pass with a column that reaches 1400 mm.')
  })

  test('of what was measured is what to change before it is measured again', () => {
    expect(said({ kind: 'readings', settings: ['height', 'lamps'] })).toBe(
      'This check uses measured values: change Height or Both lamps, then measure again.',
    )
    expect(said({ kind: 'readings' })).toBe(
      'This check judges what you found, and no setting here changes that. Enter it again once it has changed.',
    )
    expect(said({ kind: 'readings', limits, short, decisions: [change('sampling', '200')] })).toBe(
      'This check judges what you found, and no setting here changes that. Enter it again once it has changed. ' +
        'It is 2 mm over its limit of 3 mm. It depends on Column 1200 mm and Table. ' +
        'It would pass if you agree on Sampling 200 ppi instead of 300 ppi.',
    )
  })

  test('is what somebody may decide: equipment first, then what was agreed', () => {
    const decided = (...decisions: PlannedChange[]) => said({ decisions }).replace('Not within reach. ', '')
    expect(decided(change('sampling', '200'), change('plain', '7'))).toBe(
      'It would pass if you agree on Sampling 200 ppi instead of 300 ppi or agree on plain 7 mm instead of 5 mm.',
    )
    expect(decided(change('column', '1400'), change('table', '900'))).toBe(
      'It would pass with a column that reaches 1400 mm or Table 900 mm.',
    )
    expect(decided(change('sampling', '200'), change('column', '1400'))).toBe(
      'It would pass with a column that reaches 1400 mm; or agree on Sampling 200 ppi instead of 300 ppi.',
    )
    expect(decided(change('nowhere', '1400'))).toBe('It would pass with nowhere 1400.')
  })
})

test('a cell is called by its label, or its name where it has none or is not there', () => {
  expect(['height', 'plain', 'high', 'nowhere'].map((name) => labelNamed(SHEET, name))).toEqual([
    'Height',
    'plain',
    'High enough',
    'nowhere',
  ])
})
