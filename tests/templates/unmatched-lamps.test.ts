import { describe, expect, test } from 'vitest'
import { luxAt, spreadOver } from './light.ts'
import { expectRendered, expectSettled, open } from './open.ts'

test('at its defaults it computes, and the dial alone is too coarse, on purpose', () => {
  const sheet = open('unmatched-lamps')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['brought_even'])
  // log2(614/424) = 0.534 stop: two thirds are the nearest on the dial, and 0.667 − 0.534 is left.
  expect(sheet.value('steps_down')).toBe(2)
  expect(sheet.number('balance_left')).toBeCloseTo(2 / 3 - Math.log2(614 / 424), 9)
  expect(sheet.number('left_power')).toBeCloseTo(2 ** (-2 / 3), 9)
})

const odd = {
  original: '420 x 300',
  left_out: '1500',
  left_height: '1300',
  right_out: '1300',
  right_height: '1100',
  aim_past: '250',
  left_shadow: '300',
  right_shadow: '480',
  ambient: '20',
  right_beam: '90',
  way: 'move it out',
  left_colour: '5500',
  right_colour: '3200',
  right_rendering: '82',
} as const

describe('a diffuse lamp on the left and a narrower, warmer one on the right, which is moved out', () => {
  const sheet = open('unmatched-lamps', odd)
  const farther = Math.sqrt(460 / 280)

  test('the right one is stronger by log2(460/280), the room taken off both', () => {
    expect(sheet.value('stronger')).toBe('right')
    expect(sheet.number('difference')).toBeCloseTo(Math.log2(460 / 280), 12)
  })

  test('moves along its own ray as far as the inverse square asks, to the millimetre', () => {
    expect(sheet.mm('right_to')).toBeCloseTo(Math.round(1300 * farther), 9)
    expect(sheet.mm('right_up_to')).toBeCloseTo(Math.round(1100 * farther), 9)
    expect(sheet.mm('left_to')).toBe(1500)
    expect(sheet.number('right_power')).toBe(1)
  })

  test('leaves the two as strong, so that the centre has 280 lx of each and 20 lx of the room', () => {
    expect(sheet.number('balance_left')).toBeLessThan(0.003)
    expect(sheet.number('mended_centre')).toBeCloseTo(580, 0)
  })

  test('spreads as computed point by point, each lamp as strong as its shadow says', () => {
    // 120° between half intensities is n = 1; 90° is n = 2, for cos² 45° is a half.
    const left = 280 / luxAt([-1.5, 0, 1.3], [0.25, 0], 1, 1, 0, 0)
    const right = 460 / luxAt([1.3, 0, 1.1], [-0.25, 0], 1, 2, 0, 0)
    const light = (x: number, y: number): number =>
      luxAt([-1.5, 0, 1.3], [0.25, 0], left, 1, x, y) +
      luxAt([1.3 * farther, 0, 1.1 * farther], [-0.25 * farther, 0], right, 2, x, y)
    expect(sheet.number('left_by_shadow')).toBeCloseTo(left, 6)
    expect(sheet.number('right_by_shadow')).toBeCloseTo(right, 6)
    expect(sheet.number('mended_spread')).toBeCloseTo(spreadOver(0.21, 0.15, light), 3)
  })

  test('wants the −131 mired of the blue filter sold for 3200 K to 5500 K (its mark: from memory)', () => {
    expect(sheet.shown('match_filter').text).toBe('−131 mired')
    expect(sheet.number('colour_apart') * 1e6).toBeCloseTo(1e6 / 3200 - 1e6 / 5500, 9)
    expect(sheet.message('colours_match')).toContain('a filter of −131 mired over the right lamp')
  })

  test('gets a message that a lamp renders colours poorly', () => {
    expect(sheet.state('lamps_render')).toBe('fail')
    expect(sheet.message('lamps_render')).toContain('colour rendering is 82')
  })
})

test('a dial in tenths brings the lamps within half a step', () => {
  const sheet = open('unmatched-lamps', { power_step: '1/10' })
  expect(sheet.value('steps_down')).toBe(5)
  expect(sheet.failing).toEqual([])
})

test('moving instead of turning down fixes the default', () => {
  expect(open('unmatched-lamps', { way: 'move it out' }).failing).toEqual([])
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['lamps_low', {}, { right_height: '1250' }],
    ['room_dark', {}, { ambient: '60' }],
    ['brought_even', { way: 'move it out' }, { way: 'leave it' }],
    ['mended_even', {}, { way: 'leave it' }],
    ['colours_match', {}, { right_colour: '4300' }],
    ['lamps_render', {}, { left_rendering: '80' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('unmatched-lamps', held), open('unmatched-lamps', failed), check)
  })
})

test('lamps in balance are not to be brought into balance first', () => {
  const near = { left_out: '600', left_height: '550', right_out: '600', right_height: '550', lamp_aim: '0' }
  const sheet = open('unmatched-lamps', { ...near, left_shadow: '1200', right_shadow: '1200' })
  expect(sheet.state('brought_even')).toBe('pass')
  expect(sheet.message('even_enough')).toContain('allowed. Move both lamps out, or aim them')
  const uneven = open('unmatched-lamps', { ...near, left_shadow: '1500', right_shadow: '1200', power_step: '1' })
  expect(uneven.state('brought_even')).toBe('fail')
  expect(uneven.message('even_enough')).toContain('allowed. Bring the lamps into balance first; then move both out,')
})
