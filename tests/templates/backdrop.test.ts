import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { adviseSheet } from '../../src/worksheet/advice/advise.ts'
import { luxAt, spreadOver } from './light.ts'
import { expectRendered, expectSettled, open, proposed } from './open.ts'

test('at its defaults it computes, and the evenness alone fails, on purpose', () => {
  const sheet = open('backdrop')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['back_even'])
})

const bust = {
  original: '400 x 600',
  border: '0',
  sensor: '36 x 24',
  focal: '80',
  backdrop_gap: '2000',
  backdrop: '2700 x 2500',
  back_out: '1600',
  back_off: '1500',
  back_aim: '500',
  back_beam: '120',
  illuminance: '500',
  back_light: '250',
  back_reflectance: '18',
  back_tone: 'dark grey',
  power_step: '1/2',
} as const

describe('a bust of 400 × 600 mm before a grey wall', () => {
  const sheet = open('backdrop', bust)

  test('fills the sensor upright: 36 mm for 600', () => {
    expect(sheet.value('turned')).toBe(true)
    expect(sheet.number('magnification')).toBeCloseTo(0.06, 12)
    expect(sheet.mm('field_width')).toBeCloseTo(400, 9)
    // f (1/m + 1) = 80 × 17.667 = 1413.3 mm, for a lens of pupil ratio 1.
    expect(sheet.mm('lens_height')).toBeCloseTo(80 * (1 / 0.06 + 1), 9)
  })

  test('has before it, by similar triangles from the entrance pupil, (1413.3 + 2000)/1413.3 times the field', () => {
    const times = (80 * (1 / 0.06 + 1) + 2000) / (80 * (1 / 0.06 + 1))
    expect(sheet.mm('seen_width')).toBeCloseTo(400 * times, 9)
    expect(sheet.mm('seen_height')).toBeCloseTo(600 * times, 9)
    // At the lamps, 1500 mm nearer: 200 × 1913.3/1413.3.
    expect(sheet.mm('view_there')).toBeCloseTo((200 * (80 * (1 / 0.06 + 1) + 500)) / (80 * (1 / 0.06 + 1)), 9)
  })

  test('is lit as computed point by point', () => {
    const light = (x: number, y: number): number =>
      luxAt([-1.6, 0, 1.5], [0.5, 0], 1, 1, x, y) + luxAt([1.6, 0, 1.5], [-0.5, 0], 1, 1, x, y)
    const [w, h] = [sheet.number('seen_width') / 2, sheet.number('seen_height') / 2]
    expect(sheet.number('back_spread')).toBeCloseTo(spreadOver(w, h, light), 3)
  })

  test('comes out a stop under a grey card with half its light, and has another stop to go', () => {
    expect(sheet.number('tone_now')).toBeCloseTo(-1, 12)
    expect(sheet.number('back_change')).toBeCloseTo(-1, 12)
    expect(sheet.value('back_steps')).toBe(-2)
    expect(sheet.state('tone_right')).toBe('fail')
  })
})

test('white paper in the object’s own light is log2(90/18) = 2.32 stops over mid grey', () => {
  const sheet = open('backdrop', { back_reflectance: '90', back_light: '900', illuminance: '900' })
  expect(sheet.number('tone_now')).toBeCloseTo(Math.log2(5), 12)
  expect(sheet.state('tone_right')).toBe('pass')
})

describe('a figure taller than one pair lights evenly', () => {
  const tall = { original: '900 x 1800', backdrop: '2700 x 3000', backdrop_gap: '2500' }

  test('is reported so, and two lamps on each side do it', () => {
    const one = open('backdrop', { ...tall, back_out: '2000', back_off: '1900', back_aim: '800' })
    expect(one.message('back_even')).toContain('set two on each side, one above the other')
    const two = { ...tall, back_out: '2000', back_off: '1900', back_aim: '800', back_spacing: '2600' }
    expect(open('backdrop', two).number('back_spread')).toBeLessThan(one.number('back_spread') / 2)
  })

  test('is lit by the four as computed point by point', () => {
    const four = open('backdrop', { ...bust, back_spacing: '1200' })
    const light = (x: number, y: number): number =>
      [-1, 1].reduce(
        (sum, side) =>
          sum +
          luxAt([side * 1.6, 0.6, 1.5], [-side * 0.5, 0.6], 1, 1, x, y) +
          luxAt([side * 1.6, -0.6, 1.5], [-side * 0.5, -0.6], 1, 1, x, y),
        0,
      )
    const [w, h] = [four.number('seen_width') / 2, four.number('seen_height') / 2]
    expect(four.number('back_spread')).toBeCloseTo(spreadOver(w, h, light), 3)
  })
})

describe('what a failing check proposes makes it hold', () => {
  test('the place for the lamps, whatever the object, the lamps and the distance', () => {
    let placed = 0
    fc.assert(
      fc.property(
        fc.record({
          original: fc
            .tuple(fc.integer({ min: 60, max: 700 }), fc.integer({ min: 60, max: 500 }))
            .map((both) => both.join(' x ')),
          backdrop_gap: fc.constantFrom('600', '1500', '3000'),
          back_beam: fc.constantFrom('60', '100'),
          back_radius: fc.constantFrom('50', '150'),
          back_limit: fc.constantFrom('0.2', '0.3', '0.5'),
          back_out: fc.constant('700'),
        }),
        (givens) => {
          const message = open('backdrop', givens).message('back_even')
          if (!message.includes('set a pair')) return
          placed++
          const [back_out, back_off, back_aim] = [
            /set a pair (\d+) mm to each side/,
            /and (\d+) mm in front/,
            /aimed (\d+) mm/,
          ].map((pattern) => proposed(message, pattern)) as [string, string, string]
          const short = message.includes('mm short of the middle') ? '-' : ''
          const typed = open('backdrop', { ...givens, back_out, back_off, back_aim: `${short}${back_aim}` })
          for (const check of ['back_even', 'lamps_unseen', 'no_spill'])
            expect(typed.state(check), `${typed.message(check)} ${message}`).not.toBe('fail')
        },
      ),
      { numRuns: 12 },
    )
    expect(placed).toBeGreaterThan(1)
  })

  test('the distance of a backdrop that is too small', () => {
    const small = { backdrop: '800 x 500' }
    const gap = proposed(open('backdrop', small).message('backdrop_fills'), /within (\d+) mm of the object/)
    const near = { ...small, backdrop_gap: String(Number(gap) - 1) }
    expect(open('backdrop', near).failing).not.toContain('backdrop_fills')
  })

  test('steps of the dial', () => {
    const dim = open('backdrop', { back_light: '300' })
    const steps = dim.number('back_steps')
    expect(dim.state('tone_right')).toBe('fail')
    expect(open('backdrop', { back_light: String(300 * 2 ** (steps / 3)) }).state('tone_right')).toBe('pass')
  })
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['backdrop_fills', {}, { backdrop: '700 x 1600' }],
    ['back_even', { back_aim: '450' }, {}],
    ['lamps_unseen', {}, { back_out: '380' }],
    ['no_spill', {}, { back_off: '1600' }],
    ['tone_right', {}, { back_tone: 'black' }],
    ['back_points', {}, { back_readings: '700, 720' }],
    ['back_measured_even', {}, { back_readings: '600, 738, 704, 760, 820' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('backdrop', held), open('backdrop', failed), check)
  })
})

test('no suggestion moves the backdrop’s lamps out of the room there is', () => {
  const narrow = {
    original: '120 x 180',
    border: '20',
    focal: '85',
    backdrop_gap: '700',
    back_out: '500',
    back_off: '500',
  }
  const sheet = open('backdrop', { ...narrow, back_aim: '0', back_beam: '80', back_limit: '0.2', back_reach: '800' })
  expect(sheet.state('back_even')).toBe('fail')
  // The upper edge of the lamp, 600 mm in front, is higher than 45°, which a computed place is not.
  const { spread } = sheet.value('back_place') as { readonly spread: number }
  expect(spread).toBeGreaterThan(0.2)
  expect(sheet.message('back_even')).toContain('The most even pair at 45° or lower is')
  const moved = (adviseSheet(sheet.sheet).checks.get('back_even')?.plans ?? []).map(({ changes }) =>
    Object.fromEntries(changes.map(({ given, text }) => [given, Number.parseFloat(text)])),
  )
  expect(moved.length).toBeGreaterThan(0)
  for (const { back_out = 500, back_off = 500 } of moved)
    expect(Math.hypot(back_out, back_off)).toBeLessThanOrEqual(810)
})

test.each([
  ['300', 'up', 'bring them nearer'],
  ['3000', 'down', 'move it away from the object’s own lamps'],
])('a black backdrop at %s lx has its lamps turned %s', (back_light, way, otherwise) => {
  const sheet = open('backdrop', { back_light, back_reflectance: '4', back_tone: 'black', illuminance: '2200' })
  const steps = Math.abs(sheet.number('back_steps'))
  expect(sheet.message('tone_right')).toContain(
    `Turn its lamps ${way} (steps of the dial: ${steps}); where that is not enough, ${otherwise} or`,
  )
})
