import { describe, expect, test } from 'vitest'
import { adviseSheet } from '../../src/worksheet/advice/advise.ts'
import { expectRendered, expectSettled, open } from './open.ts'

/** Illuminance in lx of a lamp at (x, 0, z), aimed at (aim, 0, 0), at the point (px, py); cosine power n. Metres and cd. */
function lux(x: number, z: number, aim: number, cd: number, n: number, px: number, py: number): number {
  const d = Math.hypot(px - x, py, z)
  const axis = Math.hypot(aim - x, z)
  const off = ((px - x) * (aim - x) + z * z) / (d * axis)
  return (cd * off ** n * (z / d)) / d ** 2
}

/** The spread in stops over a field of 2 w × 2 h, looked at every hundredth of it. */
function spreadOver(w: number, h: number, light: (x: number, y: number) => number): number {
  const seen: number[] = []
  for (let i = -50; i <= 50; i++) for (let j = -50; j <= 50; j++) seen.push(light((w * i) / 50, (h * j) / 50))
  return Math.log2(Math.max(...seen) / Math.min(...seen))
}

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('two-lamps')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

describe('a bound ledger lit by two unlike lamps of 90°', () => {
  const sheet = open('two-lamps', {
    original: '480 x 360',
    lens_height: '800',
    glossy: 'no',
    beam_angle: '90',
    left_out: '1300',
    left_height: '1200',
    right_out: '1250',
    right_height: '1100',
    aim_past: '120',
    left_intensity: '1500',
    right_intensity: '1400',
    left_shadow: '520',
    right_shadow: '420',
    ambient: '20',
    readings: '900, 930, 910, 960, 940',
    even_limit: '0.15',
  })
  // 90° between half intensities: cos² of 45° is a half, so n = 2.
  const light = (x: number, y: number): number =>
    lux(-1.3, 1.2, 0.12, 1500, 2, x, y) + lux(1.25, 1.1, -0.12, 1400, 2, x, y)

  test('has at its centre the sum of both, point by point', () => {
    expect(sheet.number('centre')).toBeCloseTo(light(0, 0), 6)
  })

  test('spreads as computed at ten thousand points', () => {
    expect(sheet.number('spread')).toBeCloseTo(spreadOver(0.24, 0.18, light), 3)
  })

  test('has the upper edges of its lamps, 100 mm above their middles, at atan(height/out)', () => {
    expect(sheet.number('left_elevation')).toBeCloseTo(Math.atan(13 / 13), 12)
    expect(sheet.number('right_elevation')).toBeCloseTo(Math.atan(120 / 125), 12)
  })

  test('mirrors, by similar triangles through the lens, 240 (1 + 1200/800) = 600 mm at the left lamp', () => {
    expect(sheet.mm('left_mirror')).toBeCloseTo(600, 9)
    expect(sheet.mm('right_mirror')).toBeCloseTo(240 * (1 + 1100 / 800), 9)
    expect(sheet.mm('mirror_edge')).toBeCloseTo(600, 9)
  })

  test('has the left lamp stronger by log2(500/400), fixed by moving it sqrt(1.25) farther', () => {
    expect(sheet.value('stronger')).toBe('left')
    expect(sheet.number('difference')).toBeCloseTo(Math.log2(500 / 400), 12)
    expect(sheet.mm('move_out')).toBeCloseTo(1300 * Math.sqrt(1.25), 6)
    expect(sheet.mm('move_up')).toBeCloseTo(1200 * Math.sqrt(1.25), 6)
    expect(sheet.message('balanced')).toContain('turn it down to 80 %')
  })

  test('measures log2(960/900) over five readings', () => {
    expect(sheet.number('measured_spread')).toBeCloseTo(Math.log2(960 / 900), 12)
  })
})

describe('the place worked out', () => {
  test.each([
    ['a varnished panel', { original: '600 x 450', lens_height: '1200' }, 0.3, 0.225],
    ['an estate map', { original: '1200 x 900', lens_height: '2880', lamp_reach: '5000' }, 0.6, 0.45],
    ['a small print', { original: '300 x 200', lens_height: '700', even_limit: '0.05' }, 0.15, 0.1],
  ])('serves when set to whole centimetres: %s', (_, givens, w, h) => {
    const sheet = open('two-lamps', givens)
    expect(['pass', 'marginal']).toContain(sheet.state('a_place_found'))
    const [x, z, aim] = [sheet.number('advised_out'), sheet.number('advised_height'), sheet.number('advised_aim')]
    const spread = spreadOver(w, h, (px, py) => lux(x, z, -aim, 1, 1, px, py) + lux(-x, z, aim, 1, 1, px, py))
    expect(spread).toBeLessThanOrEqual(sheet.number('even_limit') * 1.001)
    // At or under 45° with its upper edge, and clear of the mirror zone with its inner edge.
    expect(z + 0.1).toBeLessThanOrEqual(x + 1e-9)
    expect(x - 0.1).toBeGreaterThanOrEqual(w * (1 + z / sheet.number('lens_height')) - 1e-9)
  })

  test('is not to be had in a room too small, and what rules it out is named', () => {
    const sheet = open('two-lamps', { lamp_reach: '1500' })
    expect(sheet.state('a_place_found')).toBe('fail')
    expect(sheet.message('a_place_found')).toContain('no pair within 1500 mm is even enough')
    expect(sheet.message('a_place_found')).toContain('reach')
  })
})

test('a high lamp far out and a low one near are each held to their own mirror zone', () => {
  // Left 2000 out and 1400 up: zone 300 (1 + 1400/1200) = 650. Right 600 out and 200 up: zone 300 (1 + 200/1200) = 350.
  const sheet = open('two-lamps', { left_out: '2000', left_height: '1400', right_out: '600', right_height: '200' })
  expect(sheet.mm('mirror_edge')).toBeCloseTo(650, 9)
  expect(sheet.state('lamps_clear')).toBe('pass')
})

test('a sheet without gloss does not mind lamps in the mirror zone', () => {
  const near = { left_out: '400', left_height: '390' }
  expect(open('two-lamps', near).state('lamps_clear')).toBe('fail')
  expect(open('two-lamps', { ...near, glossy: 'no' }).state('lamps_clear')).toBe('pass')
})

test('a lit ceiling and a coloured wall count for a glossy original alone', () => {
  const room = { opposite: 'something lit', wall: 'coloured' }
  expect(open('two-lamps', room).message('room_clear')).toContain(
    'it faces something lit, and has a wall beside it that is coloured',
  )
  expect(open('two-lamps', { ...room, glossy: 'no' }).state('room_clear')).toBe('pass')
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['a_place_found', {}, { lamp_reach: '1500' }],
    ['even_enough', {}, { aim_past: '-300' }],
    ['lamps_low', {}, { left_height: '1410' }],
    ['lamps_clear', {}, { right_out: '500', right_height: '490' }],
    ['room_dark', {}, { ambient: '6' }],
    ['room_clear', {}, { wall: 'coloured' }],
    ['balanced', {}, { right_shadow: '30' }],
    ['points_enough', {}, { readings: '410, 415, 420' }],
    ['measured_even', {}, { readings: '410, 415, 420, 460, 408' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('two-lamps', held), open('two-lamps', failed), check)
  })
})

describe('two large lamps in a room too small for them', () => {
  const small = { lens_height: '1500', beam_angle: '60', lamp_radius: '200', lamp_reach: '1200' }
  const sheet = open('two-lamps', {
    ...small,
    original: '1000 x 700',
    left_out: '1000',
    left_height: '1100',
    right_out: '1200',
    right_height: '1000',
    lamp_aim: '0',
  })

  test('are farther off than there is room for', () => {
    expect(sheet.state('lamps_reachable')).toBe('fail')
    expect(sheet.message('lamps_reachable')).toContain('1562 mm from the centre; there is room for 1200 mm')
  })

  test('are not sent to a place that is said to be better and is not', () => {
    const { spread } = sheet.value('advice') as { readonly spread: number }
    expect(spread).toBeGreaterThan(sheet.number('spread'))
    expect(sheet.message('even_enough')).toContain('the place computed above, no more even than this, is')
    expect(open('two-lamps', { left_height: '900' }).message('even_enough')).toContain('the place computed above is')
  })

  test('are moved by no suggestion out of the room there is', () => {
    const low = open('two-lamps', { ...small, original: '300 x 200', left_out: '700', left_height: '800' })
    expect(low.state('lamps_low')).toBe('fail')
    const plans = adviseSheet(low.sheet).checks.get('lamps_low')?.plans ?? []
    expect(plans.length).toBeGreaterThan(0)
    for (const { breaks } of plans) expect(breaks).toEqual([])
  })
})

test('at the stand the lamps go where the sheet has them, and are balanced by what is shown', () => {
  const { sheet } = open('two-lamps')
  const steps = sheet.cells.flatMap((cell) => (cell.kind === 'steps' ? cell.steps : []))
  // The computed place beside other figures to be measured would be two targets for one lamp.
  expect(steps.filter(({ sets = [] }) => sets.some((name) => name.startsWith('advised_')))).toEqual([])
  const balance = steps.find(({ sets = [] }) => sets.includes('stronger'))
  expect(balance?.sets).toEqual(['stronger', 'difference', 'move_out', 'move_up'])
})
