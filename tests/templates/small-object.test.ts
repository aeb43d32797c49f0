import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open, proposed } from './open.ts'

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('small-object')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

describe('a thimble of 21 × 24 mm, 26 mm high, widest at the bottom, stated at 3:1', () => {
  const sheet = open('small-object', {
    original: '21 x 24',
    border: '14',
    print_scale: '3:1',
    print_sampling: '350',
    sensor: '35.6 x 23.8',
    sensor_pixels: '7008 x 4672',
    focal: '105',
    lens_greatest: '1:1',
    object_top: '26',
    outline_height: '2',
    scale_height: '10',
    aperture: 'f/11',
    principal_inset: '50',
    key_elevation: '65',
    perspective_limit: '10',
  })
  // With 14 mm all round, 49 × 52 mm; upright on 23.8 × 35.6 mm: 23.8/49 = 0.48571 binds, 35.6/52 = 0.68462 does not.
  const m = 23.8 / 49
  const pupil = 105 * (1 / m + 1)

  test('is framed upright', () => {
    expect(sheet.value('turned')).toBe(true)
    expect(sheet.number('magnification')).toBeCloseTo(m, 12)
    expect(sheet.mm('field_width')).toBeCloseTo(49, 9)
    expect(sheet.mm('field_height')).toBeCloseTo(35.6 / m, 9)
  })

  test('leaves a third of its sampling when printed three times as large', () => {
    // Along the height, where its pixels are a little farther apart than along the width.
    const atObject = (4672 / (23.8 / m)) * 25.4
    expect(sheet.number('ppi') * 0.0254).toBeCloseTo(atObject, 6)
    expect(sheet.number('at_print') * 0.0254).toBeCloseTo(atObject / 3, 6)
    expect(sheet.number('wanted_sampling') * 0.0254).toBeCloseTo(1050, 9)
    expect(sheet.mm('print_width')).toBeCloseTo(147, 9)
  })

  test('is focused halfway, 14 mm above the board, and the column set for that plane', () => {
    expect(sheet.mm('wanted_depth')).toBeCloseTo(24, 9)
    expect(sheet.mm('focus_height')).toBeCloseTo(14, 9)
    expect(sheet.mm('carriage')).toBeCloseTo(105 * (2 + m + 1 / m) + 14, 9)
    expect(sheet.mm('room')).toBeCloseTo(105 * (1 + 1 / m) - 50 - 12, 9)
  })

  test('has a scale that tells untrue by the ratio of the distances from which it and the outline are seen', () => {
    // Angles fall as the distance grows: what lies 8 mm lower looks that much smaller.
    const toOutline = pupil + 14 - 2
    const toScale = pupil + 14 - 10
    expect(sheet.number('scale_error')).toBeCloseTo(Math.abs(toScale / toOutline - 1), 9)
    expect(sheet.number('top_larger')).toBeCloseTo(toOutline / (toOutline - 24) - 1, 9)
    expect(sheet.number('bar_pixels')).toBeCloseTo(((10 * 4672) / (23.8 / m)) * (pupil / toScale), 6)
    expect(sheet.failing).toContain('scale_true')
    expect(sheet.message('scale_true')).toContain('Set its face 2 mm above the board.')
  })

  test('bears in print 0.2 mm of blur: a third at the object, times m at the sensor', () => {
    expect(sheet.mm('blur')).toBeCloseTo((0.2 / 3) * m, 9)
    const k = (11 * (0.2 / 3) * m) / (m * 105)
    expect(sheet.mm('depth')).toBeCloseTo((2 * pupil * k) / (1 - k * k), 6)
    expect(sheet.mm('spot')).toBeCloseTo(2.44 * 550e-6 * 11 * (1 + m), 9)
  })

  test('takes frames focused in steps where the depth does not hold', () => {
    const held = sheet.mm('depth')
    expect(held).toBeLessThan(24)
    expect(sheet.value('steps')).toBe(1 + Math.ceil((24 - held) / (held * 0.8)))
  })

  test('throws a shadow of 26/tan 65°', () => {
    expect(sheet.mm('object_shadow')).toBeCloseTo(26 / Math.tan((65 * Math.PI) / 180), 9)
  })
})

test('a scale laid at the height of the outline tells true', () => {
  expect(open('small-object', { scale_height: '6' }).number('scale_error')).toBeCloseTo(0, 12)
})

test('a flat object asks for next to no depth, and is in error nowhere', () => {
  const sheet = open('small-object', { object_top: '0', outline_height: '0', scale_height: '0' })
  expect(sheet.problems).toEqual([])
  expect(sheet.mm('wanted_depth')).toBeCloseTo(0.1, 9)
})

test('what a failing check proposes makes it hold', () => {
  const deep = { object_top: '22' }
  const stopped = proposed(open('small-object', deep).message('wanted_depth_holds'), /which takes (f\/[\d.]+)/)
  expect(open('small-object', { ...deep, aperture: stopped }).failing).not.toContain('depth_holds')

  const low = { key_elevation: '30' }
  const raised = proposed(open('small-object', low).message('shadow_inside'), /Raise the lamp to (\d+°)/)
  expect(open('small-object', { key_elevation: raised }).failing).not.toContain('shadow_inside')

  const large = { print_scale: '5:1' }
  const long = proposed(open('small-object', large).message('sharp_enough'), /a camera with (\d+) pixels/)
  const sensor_pixels = `${long} x ${Math.round(Number(long) / 1.5)}`
  expect(open('small-object', { ...large, sensor_pixels }).failing).not.toContain('sharp_enough')
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['sharp_enough', {}, { print_scale: '5:1' }],
    ['lens_focuses', {}, { lens_greatest: '1:8' }],
    ['pixels_match', {}, { sensor_pixels: '4000 x 6000' }],
    ['outline_lower', {}, { outline_height: '20' }],
    ['scale_true', {}, { scale_height: '0' }],
    ['perspective_small', {}, { object_top: '60' }],
    ['shadow_inside', {}, { key_elevation: '30' }],
    ['wanted_depth_holds', {}, { aperture: 'f/8' }],
    ['aperture_resolves', {}, { aperture: 'f/22' }],
    ['room_enough', {}, { focal: '35', principal_inset: '140' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('small-object', held), open('small-object', failed), check)
  })
})

test('the height to focus on is shown where one focuses, not where the scale is set', () => {
  const steps = open('small-object').sheet.cells.flatMap((cell) => (cell.kind === 'steps' ? cell.steps : []))
  const showing = steps.filter(({ sets = [] }) => sets.includes('face_height'))
  expect(showing.map(({ text }) => text)).toEqual(['Focus halfway from outline to top.'])
})
