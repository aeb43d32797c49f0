import { describe, expect, test } from 'vitest'
import { adviseSheet } from '../../src/worksheet/advice/advise.ts'
import type { Given } from '../../src/worksheet/index.ts'
import { expectRendered, expectSettled, open } from './open.ts'

const DEGREE = Math.PI / 180

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('square-and-level')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

describe('a large map under a 100-megapixel camera', () => {
  const sheet = open('square-and-level', {
    allowed_pixels: '8',
    sensor_pixels: '11656 x 8742',
    field: '920',
    lens_height: '2880',
    mirror_offset: '-4',
    sensitivity: '0.1',
    board_divisions: '-1',
    camera_divisions: '3',
    near_edge: '6000',
    far_edge: '5996',
    diagonal_a: '8490',
    diagonal_b: '8480',
    distortion: '0.2 %',
  })

  test('may lean by the tilt that makes one edge 8 px in 11 656 longer', () => {
    const tilt = sheet.number('allowed_tilt')
    // Near and far edges lie D − y sin θ and D + y sin θ away, y half the field.
    const [near, far] = [2880 - 460 * Math.sin(tilt), 2880 + 460 * Math.sin(tilt)]
    expect((far / near - 1) * 11656).toBeCloseTo(8, 6)
    expect(sheet.mm('allowed_depth')).toBeCloseTo(920 * Math.sin(tilt), 9)
  })

  test('leans, by mirror, by atan(4/2880), whichever way', () => {
    expect(sheet.number('by_mirror')).toBeCloseTo(Math.atan(4 / 2880), 12)
  })

  test('leans, by phone, by the difference of its two readings', () => {
    const phone = open('square-and-level', { phone_board: '-0.2', phone_camera: '0.3' })
    expect(phone.number('by_phone')).toBeCloseTo(0.5 * DEGREE, 12)
  })

  test('leans, by level, by four divisions of 0.1 mm/m', () => {
    expect(sheet.number('by_level')).toBeCloseTo(Math.atan(0.0003) + Math.atan(0.0001), 12)
  })

  test('tapers over the frame as the square does, 8742/6000 times as far and over 11 656 px', () => {
    expect(sheet.number('taper')).toBeCloseTo(4 / 5996, 12)
    expect(sheet.number('taper_pixels')).toBeCloseTo((4 / 5996) * (8742 / 6000) * 11656, 9)
    expect(sheet.state('frame_square')).toBe('fail')
  })

  test('is skewed by what makes the diagonals differ', () => {
    // A parallelogram of sides s leaning by σ: a² − b² = 4 s² sin σ.
    const skew = sheet.number('skew')
    expect(4 * 6000 ** 2 * Math.sin(skew)).toBeCloseTo(8490 ** 2 - 8480 ** 2, 3)
  })

  test('bows by the corner’s shift less the shift at the edge’s middle, across the edge', () => {
    // r′ = r (1 + δ r²/R²): the corner is moved outward across the edge by δ h/2, the middle by δ (h/2)³/R².
    const [w, h] = [11656 / 2, 8742 / 2]
    const r2 = w * w + h * h
    expect(sheet.number('bow')).toBeCloseTo(0.002 * h - (0.002 * h ** 3) / r2, 9)
  })
})

test('a tilt along the other side of the frame gives the same allowance', () => {
  // 317 mm over 4000 px beside 475.5 mm over 6000 px: the longer field has the shorter edge across it.
  const tilt = open('square-and-level').number('allowed_tilt')
  const q = 6 / 4000
  expect(Math.asin((2 * 853 * q) / (475.5 * (2 + q))) / DEGREE).toBeCloseTo(tilt / DEGREE, 4)
})

test('a square that fills half the frame shows half the taper', () => {
  const whole = open('square-and-level', { near_edge: '4004', far_edge: '4000' })
  const half = open('square-and-level', { near_edge: '2001', far_edge: '2000' })
  expect(half.number('taper_pixels') / whole.number('taper_pixels')).toBeCloseTo(1, 2)
})

test('the frame’s pixels are typed once, whichever way round', () => {
  expect(open('square-and-level', { sensor_pixels: '4000 x 6000' }).number('edge_pixels')).toBe(6000)
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['mirror_square', {}, { mirror_offset: '3' }],
    ['level_square', {}, { camera_divisions: '-12' }],
    ['frame_square', {}, { near_edge: '4008' }],
    ['edges_straight', {}, { distortion: '-1 %' }],
    ['phone_square', {}, { phone_camera: '-0.3' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('square-and-level', held), open('square-and-level', failed), check)
  })
})

test('a mirror read at one height says nothing of another: no suggestion moves the lens to make it pass', () => {
  const { sheet } = open('square-and-level', { field: '900', lens_height: '1900', allowed_pixels: '4' })
  const type = (name: string, value: string): void =>
    sheet.apply({ do: 'replace', cell: { ...(sheet.named(name) as Given), value } })
  type('mirror_offset', '9')
  const square = sheet.named('mirror_square')?.id ?? ''
  expect(sheet.checkState(square)).toBe('fail')
  const plans = adviseSheet(sheet).checks.get('mirror_square')?.plans ?? []
  expect(plans.flatMap(({ changes }) => changes.map(({ given }) => given))).not.toContain('lens_height')
  type('phone_board', '0.1')
  type('phone_camera', '0.9')
  expect(sheet.checkState(sheet.named('phone_square')?.id ?? '')).toBe('fail')
  const { plans: byPhone = [], none } = adviseSheet(sheet).checks.get('phone_square') ?? {}
  const moved = [...byPhone.flatMap(({ changes }) => changes), ...(none?.nearest ?? []), ...(none?.decisions ?? [])]
  // The field is as typed: with it, another distance would be another lens.
  expect(moved.map(({ given }) => given)).not.toContain('lens_height')
  type('lens_height', '2660')
  expect(sheet.checkState(square)).toBe('waiting')
})
