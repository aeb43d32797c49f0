import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open } from './open.ts'

const RADIANS = Math.PI / 180

test('at its defaults it computes; what the glass mirrors fails, on purpose', () => {
  const sheet = open('upright-original')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['room_clear'])
  expect(sheet.message('faces_dark')).toContain('black cloth of 1050 mm by 690 mm or more')
})

describe('a portrait of 700 × 1000 mm on a wall, its top leaning 3° towards the camera', () => {
  const sheet = open('upright-original', {
    original: '700 x 1000',
    wanted_sampling: '280',
    sensor: '53.4 x 40',
    sensor_pixels: '11656 x 8742',
    focal: '120',
    centre_height: '1600',
    lean: '-3',
    floor_free: '4000',
    lamp_out: '2500',
    lamp_height: '2340',
    lamp_aim: '550',
    opposite: 'dark cloth',
    cloth_distance: '3000',
    frame_depth: '25',
    frame_gap: '40',
  })
  // With 10 mm all round, 720 × 1020 mm; upright on 40 × 53.4 mm: 53.4/1020 = 0.052353 binds, 40/720 = 0.055556 does not.
  const m = 53.4 / 1020
  const distance = 120 * (1 / m + 1)

  test('is framed upright, by its height', () => {
    expect(sheet.value('turned')).toBe(true)
    expect(sheet.number('magnification')).toBeCloseTo(m, 12)
    expect(sheet.mm('field_height')).toBeCloseTo(1020, 9)
    expect(sheet.mm('field_width')).toBeCloseTo(40 / m, 9)
    expect(sheet.number('ppi') * 0.0254).toBeCloseTo((11656 / 1020) * 25.4, 9)
  })

  test('has the lens on the line square to its face, through its centre', () => {
    // The face runs up along (−sin lean, cos lean), level distance first; the way to the lens is square to it and as long as the distance.
    const lean = -3 * RADIANS
    const face = [-Math.sin(lean), Math.cos(lean)] as const
    const way = [sheet.mm('camera_out'), sheet.mm('camera_height') - 1600] as const
    expect(way[0] * face[0] + way[1] * face[1]).toBeCloseTo(0, 0)
    expect(Math.hypot(...way)).toBeCloseTo(distance, 0)
    expect(sheet.mm('camera_height')).toBeLessThan(1600)
    expect(sheet.shown('camera_tilt').text).toBe('−3°')
  })

  test('keystones by the pixels allowed at the tilt allowed', () => {
    // The nearer edge of a field tilted by θ comes out (D + y sin θ)/(D − y sin θ) times as long, y half the short side.
    const rise = (sheet.mm('field_width') / 2) * Math.sin(sheet.number('allowed_tilt'))
    expect((11656 * 2 * rise) / (distance - rise)).toBeCloseTo(6, 6)
  })

  test('has its lamps on the axis, up and out with it', () => {
    expect(sheet.mm('lamp_floor')).toBeCloseTo(1600 - 2340 * Math.sin(3 * RADIANS), 0)
    expect(sheet.mm('lamp_level')).toBeCloseTo(2340 * Math.cos(3 * RADIANS), 0)
  })

  test('spreads by what two diffuse lamps give, computed point by point', () => {
    // 120° between half intensities is a cosine off the axis; E = I cos θ cos i/d².
    const from = (side: number, x: number, y: number): number => {
      const [lx, lz, aim] = [side * 2500, 2340, -side * 550]
      const d = Math.hypot(x - lx, y, lz)
      const cosine = ((x - lx) * (aim - lx) + lz * lz) / (d * Math.hypot(aim - lx, lz))
      return (cosine * (lz / d)) / d ** 2
    }
    const light: number[] = []
    for (let i = -30; i <= 30; i++)
      for (let j = -30; j <= 30; j++)
        light.push(from(-1, (i * 350) / 30, (j * 500) / 30) + from(1, (i * 350) / 30, (j * 500) / 30))
    expect(sheet.number('spread')).toBeCloseTo(Math.log2(Math.max(...light) / Math.min(...light)), 3)
  })

  test('mirrors what a ray from the lens meets after its edge', () => {
    // The ray to the edge at 350 mm leaves the glass at the angle it came in by: 350/u more for each millimetre out.
    expect(sheet.mm('mirror_edge')).toBeCloseTo(350 + (2340 * 350) / distance, 6)
    const half = (edge: number) => edge + (3000 * edge) / distance
    expect(sheet.mm('cloth_width')).toBe(Math.ceil((2 * half(350)) / 10) * 10)
    expect(sheet.mm('cloth_height')).toBe(Math.ceil((2 * half(500)) / 10) * 10)
  })

  test('has the frame’s shadow as long as the lamps are low', () => {
    // From the frame's own edge, 350 + 40 mm from the centre, and its front, 25 mm above the picture.
    expect(sheet.mm('frame_shadow')).toBeCloseTo((25 * (2500 - 350 - 40)) / (2340 - 25), 9)
    expect(sheet.failing).toEqual([])
  })
})

test('a camera tilted otherwise, as measured, is reported', () => {
  const sheet = open('upright-original', { camera_tilt: '6.8' })
  expect(sheet.state('camera_square')).toBe('fail')
  expect(sheet.message('camera_square')).toContain('the camera tilts by 6.8°, the original by 6°')
})

test('a dull original minds no wall behind the camera', () => {
  expect(open('upright-original', { glossy: 'no' }).failing).toEqual([])
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['sharp_enough', {}, { wanted_sampling: '400' }],
    ['pixels_match', {}, { sensor_pixels: '4000 x 6000' }],
    ['tripod_reaches', {}, { centre_height: '1900' }],
    ['room_behind', {}, { floor_free: '1900' }],
    ['lens_long_enough', {}, { focal: '35' }],
    ['even_enough', {}, { lamp_aim: '-500' }],
    ['lamps_low', {}, { lamp_height: '1300' }],
    ['lamps_clear', {}, { lamp_out: '450' }],
    ['faces_dark', { opposite: 'a dark room' }, { opposite: 'something coloured' }],
    ['frame_clear', {}, { frame_depth: '45' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('upright-original', held), open('upright-original', failed), check)
  })
})
