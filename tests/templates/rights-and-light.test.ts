import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open } from './open.ts'

const HOUR = 3600

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('rights-and-light')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
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
    pop_dose: '600',
    pops_fired: '10',
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
    expect(sheet.state('within_year')).toBe('close')
  })

  test('has by flash 6000 lx s, 1.667 lx h, a 480th of a session', () => {
    expect(sheet.number('flash_total') / HOUR).toBeCloseTo(6000 / 3600, 9)
    expect(sheet.number('flash_ratio')).toBeCloseTo(6000 / 3600 / 800, 12)
  })
})

test('an original that fades in no light has had none of a limit', () => {
  expect(open('rights-and-light', { responsivity: 'none' }).number('year_share')).toBe(0)
})

test('no time under the lamps is refused in its own field', () => {
  expect(open('rights-and-light', { minutes: '0' }).troubles[0]).toBe('minutes: This must be at least 0.1 min.')
})

test('its check holds and fails, and says so in full', () => {
  expectRendered(open('rights-and-light'), open('rights-and-light', { display_days: '60' }), 'within_year')
  expect(open('rights-and-light').checks).toEqual(['within_year'])
})
