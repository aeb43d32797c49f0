import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open } from './open.ts'
import { openRows } from './rows.ts'

const HOUR = 3600
const GB = 8e9

test('at its defaults it computes, with the time alone failing, on purpose', () => {
  const sheet = open('intake-quote')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['in_time'])
  expect(sheet.message('in_time')).toContain('working days needed: 6.2, available: 6')
})

/** A currency without decimals, and a lot that is taken in two frames lying the other way. */
const prints = {
  sensor_pixels: '6000 x 4000',
  border: '5',
  overlap: '30',
  bits: '8',
  per_frame: '30',
  retakes: '5',
  setups: '2',
  setup_takes: '30',
  finish: '60',
  around: '3',
  hours_a_day: '6',
  days_left: '6',
  copies: '2',
  disk: '0.5',
  kept_free: '10',
  currency: 'JPY',
  hour_rate: '7000',
  disk_price: '12000',
  other_outlay: '20000',
  reserve: '5',
  tax: '10',
  round_up: '1000',
  deposit_share: '40',
}
const lots = [
  ['Prints', '40', '1', '500', '400', '300', '3'],
  ['Cards', '300', '2', '148', '105', '400', '0.5'],
] as const

describe('40 prints and 300 cards, both sides, quoted in yen', () => {
  const sheet = openRows('intake-quote', 'came_in', lots, prints)

  test('are 640 pictures in 680 frames', () => {
    // At 300 ppi a frame is 508 × 338.7 mm. A print with its border is 510 × 410 mm: four frames as it lies, two turned.
    // A card with its border, 158 × 115 mm, is within 381 × 254 mm, a frame at 400 ppi.
    expect(sheet.number('items_in')).toBe(340)
    expect(sheet.number('pictures_quoted')).toBe(640)
    expect(sheet.number('frames_quoted')).toBe(40 * 2 + 600)
  })

  test('are 11 h 27 min at the stand and 10 h 40 min at the screen', () => {
    // 40 × 3 min + 300 × 0.5 min of handling, 680 × 1.05 frames of 30 s, two set-ups of 30 min.
    expect(sheet.number('stand_time') / HOUR).toBeCloseTo(2 + 2.5 + (680 * 1.05 * 30) / 3600 + 1, 9)
    expect(sheet.number('screen_time') / HOUR).toBeCloseTo(640 / 60, 9)
    expect(sheet.number('work_days')).toBeCloseTo((11.45 + 640 / 60 + 3) / 6, 9)
    expect(sheet.state('in_time')).toBe('pass')
  })

  test('take 8.4 GB: three bytes for each pixel of the pictures', () => {
    const print = (500 / 25.4) * 300 * (400 / 25.4) * 300 * 3
    const card = (148 / 25.4) * 400 * (105 / 25.4) * 400 * 3
    expect(sheet.number('quoted_data') / GB).toBeCloseTo((40 * print + 600 * card) / 1e9, 9)
    expect(sheet.number('disks')).toBe(2)
  })

  test('cost what the lines add up to, rounded up to a thousand, tax on top', () => {
    const hours = 11.45 + 640 / 60 + 3
    const lines = hours * 7000 + 2 * 12000 + 20000
    const price = Math.ceil((lines * 1.05) / 1000) * 1000
    expect(sheet.value('cost_all')).toEqual({ amount: expect.closeTo(lines * 1.05, 6), currency: 'JPY' })
    expect(sheet.value('price')).toEqual({ amount: price, currency: 'JPY' })
    expect(sheet.value('to_pay')).toEqual({ amount: expect.closeTo(price * 1.1, 6), currency: 'JPY' })
    expect(sheet.value('price_picture')).toEqual({ amount: expect.closeTo(price / 640, 9), currency: 'JPY' })
    const deposit = Math.ceil((0.4 * price * 1.1) / 1000) * 1000
    expect(sheet.value('deposit')).toEqual({ amount: deposit, currency: 'JPY' })
    expect(sheet.value('rest')).toEqual({ amount: expect.closeTo(price * 1.1 - deposit, 6), currency: 'JPY' })
  })

  test('are shown in yen, which has no decimals', () => {
    expect(sheet.shown('price').text).toMatch(/^JPY \d{3}\u202f000$/)
    expect(open('intake-quote').shown('price').text).toMatch(/^EUR \d+\.00$/)
  })
})

test('more disks are bought where a set does not go on one', () => {
  // 298 GB on disks that give 90 GB each: four for each of three sets.
  expect(open('intake-quote', { disk: '0.1' }).number('disks')).toBe(12)
})

test('a currency is its three letters; anything else is reported where it is used', () => {
  expect(open('intake-quote', { currency: 'Euro' }).problems[0]).toMatch(/cost_stand: .*ISO 4217/)
})

test('a lot with a field left empty waits to be counted, and the rest is quoted', () => {
  const sheet = openRows('intake-quote', 'came_in', [...lots, ['Rolls', '', '1', '2000', '300', '300', '10']], prints)
  expect(sheet.number('items_in')).toBe(340)
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['trial_done', {}, { trial_timed: 'no' }],
    ['day_bearable', {}, { hours_a_day: '10' }],
    ['in_time', { days_left: '9' }, {}],
    ['sets_enough', {}, { copies: '1' }],
    ['deposit_covers', {}, { deposit_share: '5' }],
    ['files_wait', {}, { keep_days: '7' }],
    ['quote_ends', {}, { valid_days: '365' }],
    ['insurance_said', {}, { insured: 'no' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('intake-quote', held), open('intake-quote', failed), check)
  })
})
