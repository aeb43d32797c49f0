import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open } from './open.ts'

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('accept-light')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

describe('a 16-bit file of gamma 2.2, a white card of 50 %', () => {
  const sheet = open('accept-light', {
    readings: '1200, 1140, 1170, 1230, 1180',
    even_limit: '0.15',
    code_r: '46000',
    code_g: '47000',
    code_b: '47500',
    card_reflectance: '50',
    full_scale: '65535',
    encoding: 'gamma 2.2',
    morning: '1200',
    now: '1260',
  })
  const linear = (code: number): number => (code / 65535) ** 2.2
  /** CIE 1976 lightness of a share of white above 0.0089. */
  const lightness = (y: number): number => 116 * Math.cbrt(y) - 16

  test('spreads log2(1230/1140)', () => {
    expect(sheet.number('measured_spread')).toBeCloseTo(Math.log2(1230 / 1140), 12)
    expect(sheet.number('least_reading')).toBe(1140)
    expect(sheet.number('greatest_reading')).toBe(1230)
  })

  test('is off by log2 of the linear code over the card', () => {
    expect(sheet.number('exposure_off')).toBeCloseTo(Math.log2(linear(47000) / 0.5), 9)
    expect(sheet.number('lightness_off')).toBeCloseTo(lightness(linear(47000)) - lightness(0.5), 6)
  })

  test('needs gains that bring red and blue to green', () => {
    const gains = [linear(47000) / linear(46000), 1, linear(47000) / linear(47500)]
    const found = sheet.value('gains') as number[]
    for (const [i, gain] of found.entries()) expect(gain).toBeCloseTo(gains[i] as number, 9)
    expect(sheet.number('cast')).toBeCloseTo(Math.max(...gains.map((gain) => Math.abs(gain - 1))), 9)
  })

  test('finds the light at the original among the readings, and says where both cannot be right', () => {
    expect(sheet.state('readings_agree')).toBe('pass')
    // 2^(1/3) = 1.26: a third of a stop outside the readings, in round figures.
    const of = (now: string): string =>
      open('accept-light', { readings: '1140, 1200, 1230, 1180, 1170', now }).state('readings_agree')
    expect([of('1530'), of('1540'), of('915'), of('910')]).toEqual(['pass', 'fail', 'pass', 'fail'])
    expect(of('12.8 EV')).toBe('fail')
  })

  test('has drifted by log2(1260/1200)', () => {
    expect(sheet.number('moved')).toBeCloseTo(Math.log2(1.05), 12)
    expect(sheet.state('steady')).toBe('fail')
  })
})

test('an 8-bit sRGB code of 118 is 18.1 % of white, by IEC 61966-2-1', () => {
  expect(open('accept-light').number('grey_g')).toBeCloseTo(((118 / 255 + 0.055) / 1.055) ** 2.4, 12)
})

test('the change of exposure that a message asks for brings the card home', () => {
  const bright = open('accept-light', { code_g: '130' })
  const asked = Number(/Change the exposure by −([\d.]+) stop/.exec(bright.message('exposed_right'))?.[1])
  expect(bright.number('grey_g') / 2 ** asked).toBeCloseTo(0.18, 2)
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['points_enough', {}, { readings: '870, 862, 851' }],
    ['measured_even', {}, { readings: '870, 862, 851, 866, 790' }],
    ['codes_fit', {}, { code_r: '255' }],
    ['exposed_right', {}, { code_g: '130' }],
    ['neutral', {}, { code_b: '100' }],
    ['steady', {}, { now: '800' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('accept-light', held), open('accept-light', failed), check)
  })

  test('a 16-bit code against 8 bits is reported by its check', () => {
    expect(open('accept-light', { code_g: '30000' }).state('codes_fit')).toBe('fail')
  })
})
