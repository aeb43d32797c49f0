import { describe, expect, test } from 'vitest'
import { luxAt, spreadOver } from './light.ts'
import { expectRendered, expectSettled, open } from './open.ts'

test('at its defaults it computes, and the arms alone do not cover, on purpose', () => {
  const sheet = open('fixed-arms')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['arms_cover'])
  expect(sheet.value('lay_it')).toBe('in parts')
})

test('turning the lamps across fixes the default', () => {
  const sheet = open('fixed-arms', { lamp_aim: '150' })
  expect(sheet.failing).toEqual([])
  expect(sheet.value('lay_it')).toBe('as it is')
})

test('the readings are those of the lamps so turned', () => {
  // Nine points of the original, from two lamps on each arm, n = ln 0.5/ln cos 30°.
  const n = Math.log(0.5) / Math.log(Math.cos(Math.PI / 6))
  const light = (x: number, y: number): number =>
    [-1, 1].reduce(
      (sum, side) =>
        sum +
        luxAt([side * 0.72, 0.2, 0.6], [-side * 0.15, 0.2], 1, n, x, y) +
        luxAt([side * 0.72, -0.2, 0.6], [-side * 0.15, -0.2], 1, n, x, y),
      0,
    )
  const corner = Math.log2(light(0, 0) / light(0.21, 0.1485))
  const readings = open('fixed-arms').value('readings') as number[]
  expect(Math.log2((readings[4] as number) / (readings[0] as number))).toBeCloseTo(corner, 1)
})

describe('one lamp on each arm, 90° wide, over a playbill of 300 × 240 mm', () => {
  const givens = {
    lamp_out: '850',
    lamp_height: '700',
    lamp_aim: '200',
    lamp_spacing: '0',
    beam_angle: '90',
    original: '300 x 240',
    even_limit: '0.15',
    lens_height: '1000',
    original_thickness: '20',
    lamp_radius: '80',
  }
  const sheet = open('fixed-arms', givens)
  // n = 2, for cos² 45° is a half; the lamps are 680 mm over the face of the original.
  const light = (x: number, y: number): number =>
    luxAt([-0.85, 0, 0.68], [0.2, 0], 1, 2, x, y) + luxAt([0.85, 0, 0.68], [-0.2, 0], 1, 2, x, y)

  test('covers the rectangle of its shape that spreads by the limit', () => {
    // Halving the interval on the half-width until the spread over w × 0.8 w is 0.15 stop.
    let [low, high] = [0.05, 0.5]
    for (let i = 0; i < 40; i++) {
      const half = (low + high) / 2
      if (spreadOver(half, half * 0.8, light) <= 0.15) low = half
      else high = half
    }
    expect(sheet.mm('lit_width')).toBeCloseTo(Math.floor(2000 * low), 0)
    expect(sheet.mm('lit_height')).toBeCloseTo(Math.floor(1600 * low), 0)
  })

  test('spreads as computed point by point, and its correction gains and adds noise by as much', () => {
    const spread = spreadOver(0.15, 0.12, light)
    expect(sheet.number('spread')).toBeCloseTo(spread, 3)
    expect(sheet.number('gain')).toBeCloseTo(2 ** spread, 3)
    expect(sheet.number('noise')).toBeCloseTo(2 ** (spread / 2), 3)
  })

  test('clears a glossy one of 2 (850 − 80)/(1 + 680/1000) mm, by similar triangles', () => {
    expect(sheet.mm('glossy_width')).toBeCloseTo(1540 / 1.68, 9)
    expect(sheet.mm('mirror_edge')).toBeCloseTo(150 * 1.68, 9)
    const widest = { ...givens, glossy: 'yes', original: '916 x 240' }
    expect(open('fixed-arms', widest).state('lamps_clear')).not.toBe('fail')
    expect(open('fixed-arms', { ...widest, original: '918 x 240' }).state('lamps_clear')).toBe('fail')
  })

  test('is at atan((680 + 80)/850) with its upper edge', () => {
    expect(sheet.number('elevation')).toBeCloseTo(Math.atan(760 / 850), 12)
  })
})

test('an original that fits one way round only is turned', () => {
  // Across the arms the light falls off more slowly than along them, or the other way about: find one that turns.
  const upright = open('fixed-arms', { original: '240 x 400', lamp_aim: '150', even_limit: '0.08' })
  const lying = open('fixed-arms', { original: '400 x 240', lamp_aim: '150', even_limit: '0.08' })
  expect([upright.value('lay_it'), lying.value('lay_it')].sort()).toEqual(['as it is', 'turned by 90°'])
})

test('a larger one is taken in parts that fit the light', () => {
  const sheet = open('fixed-arms', { original: '900 x 600', lamp_aim: '150', overlap: '20' })
  const [w, h] = [sheet.mm('lit_width'), sheet.mm('lit_height')]
  const across = (width: number, height: number): number =>
    Math.ceil((900 - 20) / (width - 20)) * Math.ceil((600 - 20) / (height - 20))
  expect(sheet.value('parts')).toBe(Math.min(across(w, h), across(h, w)))
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['arms_cover', { lamp_aim: '150' }, {}],
    ['lamps_low', {}, { lamp_height: '800' }],
    ['lamps_clear', { glossy: 'yes' }, { glossy: 'yes', original: '820 x 297' }],
    ['points_enough', {}, { readings: '850, 851' }],
    ['measured_even', {}, { readings: '800, 851, 853, 903, 900' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('fixed-arms', held), open('fixed-arms', failed), check)
  })
})

test('an original far larger than the arms light is not said to be agreed on as it lies', () => {
  const sheet = open('fixed-arms', { original: '594 x 841', lamp_spacing: '0', even_limit: '0.15' })
  const least = Math.min(sheet.number('spread'), sheet.number('spread_turned'))
  expect(sheet.message('arms_cover')).toContain(`over which the light differs by ${least.toFixed(2)} stop.`)
})
