import { describe, expect, test } from 'vitest'
import { comparedOf } from '../../src/app/stand/setting.ts'
import { adviseSheet } from '../../src/worksheet/advice/advise.ts'
import type { Given, Result } from '../../src/worksheet/index.ts'
import { expectRendered, expectSettled, open } from './open.ts'

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('load-and-stand')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

describe('four LED lamps on a 120 V, 15 A circuit, a heavy camera on a long arm', () => {
  const sheet = open('load-and-stand', {
    voltage: '120',
    rating: '15',
    lamp_count: '4',
    lamp_power: '300',
    other_power: '180',
    power_factor: '0.9',
    head_mass: '5',
    reach: '700',
    stand_mass: '20',
    stand_arm: '100',
    ballast_arm: '250',
    ballast: '10',
    safety: '2',
  })

  test('draws 1200/(120 × 0.9) + 180/120 A', () => {
    expect(sheet.number('current')).toBeCloseTo(11.1111111 + 1.5, 6)
    expect(sheet.number('circuit_load')).toBeCloseTo(12.6111111 / 15, 6)
    expect(sheet.state('load_ok')).toBe('fail')
  })

  test('warms the room by every watt it draws', () => {
    expect(sheet.number('heat')).toBeCloseTo(1380, 9)
  })

  test('tips with 5 kg × g × 0.7 m', () => {
    expect(sheet.number('moment')).toBeCloseTo(5 * 9.80665 * 0.7, 9)
  })

  test('is held twice over by the stand’s 20 kg at 0.1 m and 20 kg more at 0.25 m', () => {
    // In kg m, g falling out: 2 × 3.5 = 7; the stand gives 2; the other 5 take 20 kg at 0.25 m.
    expect(sheet.number('ballast_needed')).toBeCloseTo(20, 9)
    expect(sheet.state('stands_firm')).toBe('fail')
    expect(sheet.message('stands_firm')).toContain('20 kg is needed, 10 kg is laid on')
  })
})

test('a stand that is heavy enough needs no ballast, and none will do', () => {
  const sheet = open('load-and-stand', { stand_mass: '40', ballast: '0' })
  expect(sheet.number('ballast_needed')).toBe(0)
  expect(sheet.state('stands_firm')).toBe('pass')
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['load_ok', {}, { lamp_count: '4' }],
    ['stands_firm', {}, { reach: '900' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('load-and-stand', held), open('load-and-stand', failed), check)
  })
})

test('a number of lamps is a plain number, which its own field says', () => {
  const { sheet } = open('load-and-stand', { lamp_count: '12 kg' })
  const outcome = sheet.outcome(sheet.named('lamp_count')?.id ?? '')
  expect(outcome.state === 'error' && outcome.diagnostics[0]?.message).toBe(
    'This is a mass; the field takes a plain number.',
  )
})

test('with too little ballast laid on, the stand aims at what is needed, and more is suggested', () => {
  const { sheet } = open('load-and-stand', { reach: '900', ballast: '1.5' })
  expect(comparedOf(sheet, sheet.named('ballast') as Given)).toMatchObject({ target: undefined, typed: '1.5' })
  expect(comparedOf(sheet, sheet.named('ballast_needed') as Result).target).toMatchObject({ unit: 'kg' })
  const plans = adviseSheet(sheet).checks.get('stands_firm')?.plans ?? []
  expect(plans.flatMap(({ changes }) => changes.map(({ given }) => given))).toContain('ballast')
})
