import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open } from './open.ts'

const HOUR = 3600

test('at its defaults it computes, with copying alone over what the custodian granted, on purpose', () => {
  const sheet = open('rights-and-light')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['copying_within'])
  // 4 % of 15 000 lx h is 600 lx h; two sessions at 1800 lx are 3600 lx h an hour.
  expect(sheet.number('lit_longest')).toBeCloseTo((600 / 3600) * HOUR, 6)
  expect(open('rights-and-light', { minutes: '10' }).failing).toEqual([])
})

describe('a print of medium sensitivity, a year on display and three sessions', () => {
  const sheet = open('rights-and-light', {
    illuminance: '2400',
    minutes: '20',
    sessions: '3',
    display_light: '50',
    display_days: '365',
    display_hours: '8',
    responsivity: 'medium',
    copy_budget: '2',
    pop_dose: '600',
    pops_fired: '10',
    modelling: '150',
    modelling_minutes: '6',
  })

  test('has 2400 lx for a third of an hour in a session: 800 lx h', () => {
    expect(sheet.number('session_dose') / HOUR).toBeCloseTo(800, 9)
  })

  test('has 50 lx for 2920 hours on display: 146 000 lx h', () => {
    expect(sheet.number('display_dose') / HOUR).toBeCloseTo(146000, 6)
  })

  test('is within 150 000 lx h a year, the limit of CIE 157:2004 for medium, by little', () => {
    // 146 000 + 3 × 800 = 148 400.
    expect(sheet.number('year_dose') / HOUR).toBeCloseTo(148400, 6)
    expect(sheet.number('year_share')).toBeCloseTo(148400 / 150000, 9)
    expect(sheet.number('copying_share')).toBeCloseTo(2400 / 150000, 9)
    expect(sheet.state('within_year')).toBe('marginal')
  })

  test('may be lit for 25 minutes a session: 2 % of the limit, 3000 lx h, is three times 1000 at 2400 lx', () => {
    expect(sheet.number('lit_longest') / 60).toBeCloseTo(25, 9)
  })

  test('has from the pops 6000 lx s, 1.667 lx h, and nine times that from the modelling lamps', () => {
    // 150 lx for a tenth of an hour are 15 lx h.
    expect(sheet.number('flash_total') / HOUR).toBeCloseTo(6000 / 3600 + 15, 9)
    expect(sheet.number('flash_ratio')).toBeCloseTo((6000 / 3600 + 15) / 800, 12)
    expect(sheet.number('modelling_part')).toBeCloseTo(0.9, 12)
  })
})

test('an original that fades in no light has had none of a limit', () => {
  expect(open('rights-and-light', { responsivity: 'none' }).number('year_share')).toBe(0)
})

test('no time under the lamps is refused in its own field', () => {
  expect(open('rights-and-light', { minutes: '0' }).problems).toContain('minutes: This must be at least 0.1 min.')
})

test('what fades in no light may be lit all day', () => {
  const sheet = open('rights-and-light', { responsivity: 'none' })
  expect(sheet.number('lit_longest')).toBe(24 * HOUR)
  expect(sheet.failing).toEqual([])
})

test('a term counts from the death of the last maker, in whole years', () => {
  // Seventy years after 1955 end with 2025: free from 1 January 2026, Berne Convention, article 7 (5).
  const over = { rights: 'term over', author_died: '1955', term: '70' }
  expect(open('rights-and-light', { ...over, copy_year: '2026' }).state('term_over')).toBe('pass')
  expect(open('rights-and-light', { ...over, copy_year: '2025' }).state('term_over')).toBe('fail')
  expect(open('rights-and-light', { ...over, copy_year: '2025' }).message('term_over')).toContain('the end of 2025')
})

test('a permission that covers any use covers each', () => {
  for (const use_wanted of ['study', 'print', 'online', 'any use'])
    expect(open('rights-and-light', { use_wanted, use_allowed: 'any use' }).state('use_covered')).toBe('pass')
})

test.each(['not known', 'asked'])('rights that are “%s” stop the job', (rights) => {
  expect(open('rights-and-light', { rights }).message('rights_clear')).toContain(`“${rights}” is not enough`)
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['rights_clear', {}, { rights: 'not known' }],
    ['term_over', {}, { rights: 'term over', author_died: '1990' }],
    ['use_covered', {}, { use_wanted: 'print' }],
    ['people_asked', {}, { people: 'not asked' }],
    ['film_safe', {}, { made_of: 'unknown film' }],
    ['face_sound', {}, { surface_state: 'powdery' }],
    ['mould_apart', { mould: 'old and dry' }, { mould: 'live, or smells' }],
    ['flat_unforced', {}, { lies_flat: 'no' }],
    ['noted_first', {}, { condition_noted: 'no' }],
    ['uv_low', {}, { uv: '160' }],
    ['within_year', {}, { display_days: '60' }],
    ['copying_within', { copy_budget: '10' }, {}],
    ['flash_gentler', {}, { modelling_minutes: '240' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('rights-and-light', held), open('rights-and-light', failed), check)
  })
})
