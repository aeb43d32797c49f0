import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open, proposed } from './open.ts'

test('at its defaults it computes, with the sampling alone failing, on purpose', () => {
  const sheet = open('transparencies')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['sharp_enough'])
})

test('the bare panel of 1000 cd/m², base 0.1, 2.32 stops above mid-tone, is exposed at 10.31 EV', () => {
  // ISO 2720 with K = 12.5: log2(100 × 1000 × 10^−0.1/12.5) = 12.634, less 2.32.
  const sheet = open('transparencies', { panel_luminance: '1000', base_density: '0.1', placement: '2.32' })
  expect(sheet.number('light_value')).toBeCloseTo(10.3136, 4)
})

describe('a roll of 6 × 9 negatives on a 100-megapixel sensor', () => {
  const sheet = open('transparencies', {
    film_format: '6x9',
    film_kind: 'colour negative',
    border: '2',
    wanted_sampling: '3000',
    sensor: '53.4 x 40',
    sensor_pixels: '11656 x 8742',
    focal: '120',
    original_thickness: '95',
    panel: '240 x 180',
    panel_gap: '45',
    panel_edge: '12',
    panel_luminance: '2000',
    base_density: '0.45',
    aperture: 'f/5',
    speed: '64',
    readings: '6300, 6420, 6350, 6500, 6610, 6480, 6330, 6440, 6290',
  })
  // The picture on 6 × 9 film measures 84 × 56 mm by the published table; with 2 mm round it 88 × 60 mm.
  const m = Math.min(53.4 / 88, 40 / 60)

  test('is framed by the length of the picture, not by the name of the format', () => {
    expect(sheet.value('gate')).toEqual({ width: 0.084, height: 0.056 })
    expect(sheet.number('magnification')).toBeCloseTo(m, 12)
    expect(sheet.number('ppi') * 0.0254).toBeCloseTo((11656 / 88) * 25.4, 6)
  })

  test('has the column at f (2 + m + 1/m) above the film', () => {
    expect(sheet.mm('carriage')).toBeCloseTo(120 * (2 + m + 1 / m) + 95, 9)
    expect(sheet.mm('room')).toBeCloseTo(120 * (1 + 1 / m) - 35, 9)
  })

  test('needs panel out to where the ray from the far rim of the lens past the film’s edge meets it', () => {
    const u = 120 * (1 / m + 1)
    const rim = -120 / 5 / 2
    // 240 × 180 mm reach past 84 × 56 mm by 78 and 62 mm: less along the shorter side, though less is needed there too.
    const meets = rim + ((28 - rim) * (u + 45)) / u
    expect(sheet.mm('margin_needed')).toBeCloseTo(meets - 28 + 12, 6)
    expect(sheet.mm('panel_spare')).toBeCloseTo(62, 9)
  })

  test('blurs dust on the panel over the cone of light that a point there sends into the lens, where it crosses the film', () => {
    const u = 120 * (1 / m + 1)
    const across = ((120 / 5) * 45) / (u + 45)
    expect(sheet.number('dust_blur')).toBeCloseTo((across * m) / (53.4 / 11656), 6)
  })

  test('is exposed for its clear base, a white page above mid-tone, the lens standing out counted', () => {
    // t = N² K/(L S) × 10^D × 2^2.3 × (1 + m)².
    const seconds = ((5 ** 2 * 12.5) / (2000 * 64)) * 10 ** 0.45 * 2 ** 2.3 * (1 + m) ** 2
    expect(sheet.number('time')).toBeCloseTo(seconds, 9)
  })

  test('holds 2 N c (1 + m)/m² sharp, near enough; its diffraction spot is 2.44 λ N (1 + m)', () => {
    const pitch = 53.4 / 11656
    expect(sheet.mm('depth')).toBeCloseTo((2 * 5 * 2 * pitch * (1 + m)) / m ** 2, 4)
    expect(sheet.number('diffraction')).toBeCloseTo((2.44 * 550e-6 * 5 * (1 + m)) / pitch, 9)
  })

  test('spreads by the greatest reading over the least', () => {
    expect(sheet.number('measured_spread')).toBeCloseTo(Math.log2(6610 / 6290), 9)
    expect(sheet.failing).toEqual([])
  })
})

test('a reading through the lens is not corrected twice', () => {
  const sheet = open('transparencies', { through_lens: 'yes' })
  expect(sheet.number('lens_added')).toBe(0)
  const byHand = open('transparencies')
  expect(byHand.number('time') / sheet.number('time')).toBeCloseTo((1 + byHand.number('magnification')) ** 2, 9)
})

test('what a failing check proposes makes it hold', () => {
  const bowed = { unevenness: '1.3' }
  const stopped = proposed(open('transparencies', bowed).message('depth_holds'), /which takes (f\/[\d.]+)/)
  expect(open('transparencies', { ...bowed, aperture: stopped }).failing).not.toContain('depth_holds')
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['sharp_enough', { wanted_sampling: '1500' }, {}],
    ['lens_focuses', {}, { lens_greatest: '1:4' }],
    ['column_reaches', {}, { column_reach: '500' }],
    ['room_enough', {}, { focal: '28', principal_inset: '50' }],
    ['pixels_match', {}, { sensor_pixels: '4000 x 6000' }],
    ['panel_reaches', {}, { film_format: '8x10 in' }],
    ['dust_gone', {}, { panel_gap: '3' }],
    ['masked_close', {}, { masked_to: '40' }],
    ['points_enough', {}, { readings: '2350, 2410' }],
    ['measured_even', {}, { readings: '2350, 2410, 2360, 2440, 2680' }],
    ['renders_well', {}, { panel_rendering: '82' }],
    ['released_untouched', {}, { hands_off: 'no' }],
    ['base_fits', {}, { film_kind: 'colour negative' }],
    ['depth_holds', {}, { unevenness: '2' }],
    ['aperture_resolves', {}, { aperture: 'f/11' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('transparencies', held), open('transparencies', failed), check)
  })
})
