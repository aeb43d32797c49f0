import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open } from './open.ts'

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('exposure-ledger')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

describe('a matt map read off a grey card by hand meter, a filter of factor 4, no polarisers', () => {
  const sheet = open('exposure-ledger', {
    reading: '9',
    metered_reflectance: '18',
    polarised: 'no',
    magnification: '1:2',
    pupil_ratio: '0.8',
    filter: '4',
    speed: '200',
    aperture: 'f/8',
    flicker: '120',
    modulation: '20',
  })
  // 0 for the card, 2 log2(1 + 0.5/0.8) = 1.4009 for the lens, log2 4 = 2 for the filter.
  const lens = 2 * Math.log2(1.625)

  test('adds up line by line', () => {
    expect(sheet.number('surface_stops')).toBeCloseTo(0, 12)
    expect(sheet.number('lens_stops')).toBeCloseTo(lens, 12)
    expect(sheet.number('filter_stops')).toBeCloseTo(2, 12)
    expect(sheet.number('polarisers_added')).toBe(0)
    expect(sheet.number('total_stops')).toBeCloseTo(lens + 2, 12)
    expect(sheet.number('set_value')).toBeCloseTo(7 - lens, 12)
  })

  test('is set by t = N²/2^EV × 100/S', () => {
    const seconds = 64 / 2 ** (7 - lens) / 2
    expect(sheet.number('set_time')).toBeCloseTo(seconds, 12)
    expect(sheet.shown('set_time').mark).toBe('0.6 s')
  })

  test('flickers by log2((1 + a)/(1 − a)), a = M |sin πFt|/(πFt)', () => {
    const phase = Math.PI * 120 * sheet.number('set_time')
    const a = (0.2 * Math.abs(Math.sin(phase))) / phase
    expect(sheet.number('set_ripple')).toBeCloseTo(Math.log2((1 + a) / (1 - a)), 12)
  })

  test('by flash, two heads at 45° count for sqrt 2 of one, its light falling as the sine of its elevation', () => {
    // E = 2 sin 45° of one head face on; N goes as sqrt E. Then ISO 200, the lens standing out, and two stops of filter.
    const number = 22 * Math.sqrt(2 * Math.sin(Math.PI / 4))
    const marked = ((number / 1.2) * Math.sqrt(2)) / 1.625 / 2
    expect(sheet.number('flash_aperture')).toBeCloseTo(marked, 9)
    expect(sheet.value('pops')).toBe(1)
  })
})

describe('what the reading holds already is not counted again', () => {
  // Filters of 42 %, by crossed sheets over a surface that depolarises: −log2(0.42²) = 2.503; over the lens alone 1.2515.
  test.each([
    ['none', 'no', -2 * Math.log2(0.42)],
    ['over the lamps', 'no', -Math.log2(0.42)],
    ['over lamps and lens', 'yes', 0],
  ])('polarisers read with %s; through the lens: %s', (polarisers_read, through_lens, stops) => {
    const sheet = open('exposure-ledger', { polarisers_read, through_lens })
    expect(sheet.number('polarisers_added')).toBeCloseTo(stops, 9)
    expect(sheet.state('not_twice')).toBe('pass')
  })

  test('a reading through the lens includes extension and filter', () => {
    const sheet = open('exposure-ledger', { through_lens: 'yes', filter: '4', polarised: 'no' })
    expect(sheet.number('lens_added')).toBe(0)
    expect(sheet.number('filter_added')).toBe(0)
    // Off 90 % white against 18 % grey: log2 5.
    expect(sheet.number('total_stops')).toBeCloseTo(Math.log2(5), 12)
  })

  test('a meter that reads the light itself asks for no surface', () => {
    const sheet = open('exposure-ledger', { read_with: 'flat receptor', polarised: 'no', magnification: '1:9' })
    expect(sheet.number('surface_stops')).toBe(0)
    expect(sheet.number('total_stops')).toBeCloseTo(2 * Math.log2(10 / 9), 12)
  })

  test('and cannot have been read through the lens', () => {
    const odd = { read_with: 'flat receptor', through_lens: 'yes', polarisers_read: 'over lamps and lens' }
    expect(open('exposure-ledger', odd).state('not_twice')).toBe('fail')
    expect(open('exposure-ledger', odd).message('not_twice')).toContain('counted twice')
  })

  test('a reading through the lens is said to include lens and filter', () => {
    const sheet = open('exposure-ledger', { through_lens: 'yes', polarised: 'no' })
    expect(sheet.message('not_twice')).toBe(
      'the reading through the lens includes lens and filter: they are not added again.',
    )
  })

  test('flash counts filter and polarisers whatever the meter saw', () => {
    const seen = { through_lens: 'yes', polarisers_read: 'over lamps and lens', filter: '2' }
    const unseen = { filter: '2' }
    expect(open('exposure-ledger', seen).number('flash_aperture')).toBeCloseTo(
      open('exposure-ledger', unseen).number('flash_aperture'),
      12,
    )
  })
})

test('pops double with every stop that is wanting', () => {
  // f/7.33 by one pop; f/22 is 2 log2(22/7.33) = 3.17 stops smaller: 2^3.17 = 9.01, so ten.
  const one = open('exposure-ledger').number('flash_aperture')
  const sheet = open('exposure-ledger', { aperture: 'f/22' })
  expect(sheet.value('pops')).toBe(Math.ceil((22 / one) ** 2))
})

test('a flash on top of the original is refused in its own field', () => {
  expect(open('exposure-ledger', { flash_distance: '0' }).problems[0]).toBe(
    'flash_distance: This must be at least 0.01 m.',
  )
})

describe('each check holds and fails, and says so in full', () => {
  const bright = { reading: '15', aperture: 'f/2.8', polarised: 'no', metered_reflectance: '18' }
  test.each([
    ['not_twice', {}, { through_lens: 'yes' }],
    ['reading_flat', {}, { read_with: 'dome up' }],
    ['set_no_flicker', {}, bright],
    ['set_released', {}, { hands_off: 'no' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('exposure-ledger', held), open('exposure-ledger', failed), check)
  })

  test('a short time may be released by hand', () => {
    expect(open('exposure-ledger', { ...bright, hands_off: 'no' }).state('set_released')).toBe('pass')
  })

  test('a hand meter cannot have read through the lens’s filter', () => {
    expect(open('exposure-ledger', { polarisers_read: 'over lamps and lens' }).state('not_twice')).toBe('fail')
  })
})

test('a whole number of periods is proposed against flicker', () => {
  const bright = { reading: '15', aperture: 'f/2.8', polarised: 'no', metered_reflectance: '18' }
  expect(open('exposure-ledger', bright).message('set_no_flicker')).toContain('such as 1 × 1/100 s')
})
