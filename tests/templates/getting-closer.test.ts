import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open } from './open.ts'

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('getting-closer')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

describe('a seal of 22 × 18 mm with a 60 mm lens that focuses to 1:2', () => {
  const sheet = open('getting-closer', {
    original: '22 x 18',
    focal: '60',
    lens_greatest: '1:2',
    tubes: '10, 16, 21',
    aperture: 'f/5.6',
    powers: '4',
    both_tube: '16',
    both_power: '4',
  })
  // 26 × 22 mm with the border; 24/22 binds, 36/26 does not.
  const m = 24 / 22

  test('comes out larger than life', () => {
    expect(sheet.number('magnification')).toBeCloseTo(m, 12)
    expect(sheet.value('needs_help')).toBe(true)
  })

  test('needs m f of extension at infinity: 65.45 mm', () => {
    expect(sheet.mm('extension')).toBeCloseTo((24 / 22) * 60, 9)
  })

  test('takes 16 and 21 mm: 37 mm reaches 0.5 + 37/60 = 1.117, while 31 mm reaches 1.017 alone', () => {
    // All eight sums: 0, 10, 16, 21, 26, 31, 37, 47. Wanted 1.0909 − 0.5 = 0.5909 × 60 = 35.45 mm or more, 65.45 or less.
    expect(sheet.value('tubes_taken')).toEqual([0.016, 0.021])
    expect(sheet.mm('tube_length')).toBeCloseTo(37, 9)
    // What the tube leaves the lens to do: 1.0909 − 0.6167 = 0.4742, that is 1:2.11.
    expect(sheet.number('tube_focus')).toBeCloseTo(m - 37 / 60, 9)
    expect(sheet.shown('tube_focus').text).toBe('1:2.11')
  })

  test('costs 2 log2(1 + m) = 2.13 stops and works at 5.6 (1 + m)', () => {
    expect(sheet.number('tube_shift')).toBeCloseTo(2 * Math.log2(46 / 22), 9)
    expect(sheet.number('tube_aperture')).toBeCloseTo(5.6 * (46 / 22), 9)
    expect(sheet.shown('tube_aperture').mark).toBe('f/11')
  })

  test('leaves f (1 + 1/m) less the barrel: 115 − 25 = 90 mm', () => {
    expect(sheet.mm('tube_room')).toBeCloseTo(60 * (1 + 22 / 24) - 25, 9)
  })

  test('has 4 dpt bring 60/250 = 0.24 at infinity and (1.5 × 0.24) + 0.5 = 0.86 at its closest', () => {
    // The added lens of 250 mm collimates; the lens, set to m0, then images at f (1 + m0) what lies at −f/m0: m = m0 + f P (1 + m0).
    expect(sheet.mm('closeup_room')).toBeCloseTo(250, 9)
    expect(sheet.number('closeup_least')).toBeCloseTo(0.24, 9)
    expect(sheet.number('closeup_greatest')).toBeCloseTo(0.86, 9)
    expect(sheet.state('closeup_covers')).toBe('fails')
  })

  test('has 16 mm of tube and 4 dpt together cover 0.571 to 1.191, the lens set to 1:2.38', () => {
    const tube = 16 / 60
    const least = tube + 0.24 * (1 + tube)
    const greatest = tube + 0.5 + 0.24 * (1 + tube + 0.5)
    expect(sheet.number('both_least')).toBeCloseTo(least, 9)
    expect(sheet.number('both_greatest')).toBeCloseTo(greatest, 9)
    // m = (tube + m0) + 0.24 (1 + tube + m0), solved for m0.
    const set = (m - 0.24) / 1.24 - tube
    expect(sheet.number('both_focus')).toBeCloseTo(set, 9)
    expect(sheet.number('both_shift')).toBeCloseTo(2 * Math.log2(1 + tube + set), 9)
    expect(sheet.state('both_cover')).toBe('holds')
  })
})

test('two close-up lenses together come to the sum of their powers less a little for the gap', () => {
  // Ray by ray, thin lenses: P = P1 + P2 − d P1 P2 = 2 + 10 − 0.008 × 20 = 11.84 dpt;
  // the front focus lies (1 − d P2)/P = 0.92/11.84 = 77.70 mm before the first.
  const sheet = open('getting-closer')
  expect(sheet.mm('closeup_room')).toBeCloseTo((0.92 / 11.84) * 1000, 6)
  expect(sheet.number('closeup_least')).toBeCloseTo(0.055 * 11.84, 9)
  // Wanted 24/34: the lens is set to (m − f P)/(1 + f P), and only that costs light.
  const set = (24 / 34 - 0.6512) / 1.6512
  expect(sheet.number('closeup_focus')).toBeCloseTo(set, 9)
  expect(sheet.number('closeup_shift')).toBeCloseTo(2 * Math.log2(1 + set), 9)
  expect(sheet.number('stops_saved')).toBeCloseTo(2 * Math.log2(1 + 24 / 34) - 2 * Math.log2(1 + set), 9)
})

test('a slide copied at life size by tubes alone has twice the focal length on each side', () => {
  const sheet = open('getting-closer', { original: '36 x 24', border: '0', tubes: '12, 20, 36', focal: '55' })
  expect(sheet.number('magnification')).toBeCloseTo(1, 12)
  expect(sheet.mm('extension')).toBeCloseTo(55, 9)
  expect(sheet.mm('tube_sensor')).toBeCloseTo(220, 9)
  expect(sheet.number('tube_shift')).toBeCloseTo(2, 9)
})

test('what the lens reaches alone takes no tube and leaves the lens at its own mark', () => {
  const sheet = open('getting-closer', { original: '420 x 297' })
  expect(sheet.value('needs_help')).toBe(false)
  expect(sheet.value('tubes_taken')).toEqual([])
  expect(sheet.number('tube_focus')).toBeCloseTo(sheet.number('magnification'), 12)
  expect(sheet.state('tubes_reach')).toBe('holds')
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['pixels_match', {}, { sensor_pixels: '4000 x 6000' }],
    ['tubes_reach', {}, { tubes: '5' }],
    ['tubes_clear', {}, { focal: '28', principal_inset: '50' }],
    ['closeup_covers', {}, { powers: '3' }],
    ['stack_order', {}, { powers: '10, 2' }],
    ['both_cover', {}, { both_power: '1' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('getting-closer', held), open('getting-closer', failed), check)
  })

  test('a check is tried for every check there is', () => {
    expect(open('getting-closer').checks).toHaveLength(6)
  })
})
