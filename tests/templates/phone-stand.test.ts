import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open } from './open.ts'

test('at its defaults it computes; the finger on the phone fails, on purpose', () => {
  const sheet = open('phone-stand')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['released_untouched'])
})

describe('a phone made up for the test: f = 6.9 mm, f/1.9, 10 mm of sensor in 4000 pixels', () => {
  const focal = 6.9
  /** What a thin lens at u takes in: S (u − f)/f. */
  const field = (u: number, sensor: number) => (sensor * (u - focal)) / focal
  const pixels = (length: number, u: number) => (length / field(u, 10)) * 4000
  const [first, raised] = [350, 80]
  const givens = {
    rule_length: '200',
    rule_pixels: String(pixels(200, first)),
    moved_up: String(raised),
    rule_pixels_up: String(pixels(200, first + raised)),
    sensor_pixels: '4000 x 3000',
    sensor: '10 x 7.5',
    original: '148 x 210',
    border: '5',
    aperture: 'f/1.9',
    illuminance: '800',
    speed: '64',
    hands_off: 'yes',
  }
  const sheet = open('phone-stand', givens)

  test('is found again, height and focal length, from two photographs of a rule', () => {
    expect(sheet.mm('focal')).toBeCloseTo(focal, 6)
    expect(sheet.mm('lens_now')).toBeCloseTo(first, 6)
    expect(sheet.mm('long_field')).toBeCloseTo(field(first, 10), 6)
    expect(sheet.mm('short_field')).toBeCloseTo(field(first, 7.5), 6)
  })

  test('is set where the original with its border just fills the frame, the phone turned', () => {
    // 158 × 220 mm; upright, the long side takes 220 mm and the short one 165 mm: the long side binds.
    expect(sheet.value('turned')).toBe(true)
    const u = (220 * focal) / 10 + focal
    expect(sheet.mm('lens_height')).toBeCloseTo(u, 6)
    expect(field(u, 10)).toBeCloseTo(220, 9)
    expect(sheet.number('magnification')).toBeCloseTo(10 / 220, 9)
    expect(sheet.number('ppi') * 0.0254).toBeCloseTo((4000 / 220) * 25.4, 6)
  })

  test('holds sharp what its fixed aperture gives', () => {
    const m = 10 / 220
    const k = (1.9 * 2 * 0.0025) / (m * focal)
    const u = focal * (1 / m + 1)
    expect(sheet.mm('depth')).toBeCloseTo((u * k) / (1 + k) + (u * k) / (1 - k), 6)
  })

  test('is exposed by time and speed: N² C/(E S), ISO 2720', () => {
    // 1.9² × 250/(800 × 64) s.
    expect(sheet.number('time')).toBeCloseTo((1.9 ** 2 * 250) / (800 * 64), 9)
  })

  test('goes higher where it is measured higher, and samples less', () => {
    const higher = open('phone-stand', { ...givens, lens_height: '200' })
    expect(higher.number('ppi') * 0.0254).toBeCloseTo((4000 / field(200, 10)) * 25.4, 6)
  })
})

test('frames taken in the wrong order are reported by a check, not by an error', () => {
  const sheet = open('phone-stand', { rule_pixels: '2280', rule_pixels_up: '2860' })
  expect(sheet.failing).toContain('went_up')
  expect(sheet.problems).toEqual([])
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['went_up', {}, { rule_pixels_up: '2900' }],
    ['rule_fills', {}, { rule_pixels: '1000', rule_pixels_up: '800' }],
    ['right_lens', {}, { phone_lens: 'close-up by itself' }],
    ['sharp_enough', {}, { wanted_sampling: '400' }],
    ['not_too_near', {}, { original: '60 x 40', border: '2' }],
    ['stand_reaches', {}, { original: '594 x 420' }],
    ['pixels_match', {}, { sensor_pixels: '3024 x 4032' }],
    ['depth_holds', {}, { unevenness: '30' }],
    ['covers_flicker', {}, { illuminance: '9000' }],
    ['released_untouched', { hands_off: 'yes' }, {}],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('phone-stand', held), open('phone-stand', failed), check)
  })
})
