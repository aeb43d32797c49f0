import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open } from './open.ts'

test('at its defaults it computes, and the pale ceiling alone fails, on purpose', () => {
  const sheet = open('glossy')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['ceiling_clear'])
})

test('the mask fixes the default', () => {
  expect(open('glossy', { masked: 'yes' }).failing).toEqual([])
})

describe('a varnished panel of 800 × 600 mm, its mask at the level of the lens', () => {
  const sheet = open('glossy', {
    original: '800 x 600',
    lens_height: '1600',
    original_thickness: '0',
    lamp_out: '1500',
    lamp_height: '1200',
    lamp_radius: '200',
    opposite_distance: '2400',
    opposite: 'something lit',
    wall: 'pale',
    wall_distance: '900',
    masked: 'yes',
    mask: '1600 x 1200',
    mask_height: '1600',
    lens_rim: '82',
    glazed: 'no',
    plain_time: '1/30',
    lamp_filter: '50',
    lens_filter: '50',
    aperture: 'f/11',
  })

  test('mirrors, by similar triangles, 400 (1 + 1200/1600) = 700 mm from the centre at the lamps', () => {
    expect(sheet.mm('mirror_edge')).toBeCloseTo(700, 9)
    expect(sheet.mm('lamp_clearance')).toBeCloseTo(600, 9)
  })

  test('mirrors of the ceiling its own size (1 + 2400/1600) over', () => {
    expect(sheet.mm('ceiling_width')).toBeCloseTo(2000, 9)
    expect(sheet.mm('ceiling_length')).toBeCloseTo(1500, 9)
  })

  test('needs at the lens a mask of twice its size, with a hole for the lens alone', () => {
    expect(sheet.mm('mask_width')).toBeCloseTo(1600, 9)
    expect(sheet.mm('mask_length')).toBeCloseTo(1200, 9)
    expect(sheet.mm('hole_width')).toBeCloseTo(82, 9)
    expect(
      ['mask_fits', 'mask_out_of_light', 'ceiling_clear', 'wall_clear'].filter((one) => sheet.state(one) === 'fail'),
    ).toEqual([])
  })

  test('pays two stops for ideal polarisers: half the light at each sheet', () => {
    expect(sheet.number('polariser_stops')).toBeCloseTo(2, 12)
    expect(sheet.number('gloss_stops')).toBeCloseTo(2, 12)
    expect(sheet.number('crossed_time')).toBeCloseTo(4 / 30, 12)
    expect(sheet.number('crossed_aperture')).toBeCloseTo(5.5, 12)
    expect(sheet.number('times_the_light')).toBeCloseTo(4, 12)
  })

  test('a mask halfway down has to be 1.5 times its size, and its hole lets half the field through', () => {
    const half = open('glossy', {
      original: '800 x 600',
      lens_height: '1600',
      original_thickness: '0',
      mask_height: '800',
      lens_rim: '82',
    })
    expect(half.mm('mask_width')).toBeCloseTo(1200, 9)
    expect(half.mm('hole_width')).toBeCloseTo(82 + 820 / 2, 9)
  })
})

test('glass loses 4.26 % at each of four surfaces, by Fresnel’s ((n − 1)/(n + 1))², and brings focus nearer by t (1 − 1/n)', () => {
  const sheet = open('glossy', { polarised: 'no', glass_thickness: '3' })
  const left = (1 - (0.52 / 2.52) ** 2) ** 4
  expect(sheet.number('glass_stops')).toBeCloseTo(-Math.log2(left), 9)
  expect(sheet.number('crossed_time')).toBeCloseTo(1 / 15 / left, 9)
  expect(sheet.mm('focus_nearer')).toBeCloseTo(3 * (1 - 1 / 1.52), 9)
})

test('edges that tilt by 3° turn the mirrored ray by 6°', () => {
  // At the lamps, 1100 mm less 30 mm of frame up: 250 + 1070 tan(atan(250/1500) + 6°).
  const degrees = Math.PI / 180
  expect(open('glossy', { curl: '3', original_thickness: '30' }).mm('mirror_edge')).toBeCloseTo(
    250 + 1070 * Math.tan(Math.atan(250 / 1500) + 6 * degrees),
    6,
  )
})

test('a coloured wall counts from where the ray of the longer side meets it', () => {
  // The zone at the ceiling, 2100 mm up, along the longer side: 325 (1 + 2100/1500) = 780 mm.
  expect(open('glossy', { wall_distance: '785' }).state('wall_clear')).toBe('marginal')
  const near = open('glossy', { wall_distance: '770' })
  expect(near.state('wall_clear')).toBe('fail')
  expect(near.message('wall_clear')).toContain('a wall that is coloured')
  expect(open('glossy', { wall_distance: '770', wall: 'black or grey' }).state('wall_clear')).toBe('pass')
})

test('a low mask cuts the lamps’ light where its edge crosses the innermost ray', () => {
  // From the lamp’s inner edge, 1100 mm out and 1070 mm up, to the far edge 250 mm past the centre; at 470 mm up it is
  // at 1350 × 470/1070 − 250 = 343 mm.
  const low = { masked: 'yes', mask_height: '500', original_thickness: '30' }
  const sheet = open('glossy', { ...low, mask: '660 x 860' })
  expect(sheet.mm('lamp_line')).toBeCloseTo((1350 * 470) / 1070 - 250, 9)
  expect(sheet.state('mask_out_of_light')).toBe('pass')
  expect(open('glossy', { ...low, mask: '700 x 860' }).state('mask_out_of_light')).toBe('fail')
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['lamps_clear', {}, { lamp_out: '500' }],
    ['lamps_low', {}, { lamp_height: '1400' }],
    ['ceiling_clear', { opposite: 'dark cloth' }, { opposite: 'something lit' }],
    ['wall_clear', {}, { wall_distance: '600' }],
    ['mask_fits', {}, { masked: 'yes', mask: '600 x 600' }],
    ['mask_out_of_light', {}, { masked: 'yes', mask_height: '500' }],
    ['crossed_released', {}, { hands_off: 'no' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('glossy', held), open('glossy', failed), check)
  })
})
