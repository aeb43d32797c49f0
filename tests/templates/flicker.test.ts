import { describe, expect, test } from 'vitest'
import type { Given } from '../../src/worksheet/index.ts'
import { expectRendered, expectSettled, open } from './open.ts'

/** The light 1 + M cos(2πFt), added up over a time from many starts: the most and the least there is. */
function extremes(time: number, frequency: number, modulation: number): { most: number; least: number } {
  const starts = 800
  const slices = 500
  let most = Number.NEGATIVE_INFINITY
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < starts; i++) {
    let light = 0
    for (let j = 0; j < slices; j++) {
      const at = i / starts / frequency + ((j + 0.5) / slices) * time
      light += 1 + modulation * Math.cos(2 * Math.PI * frequency * at)
    }
    most = Math.max(most, light / slices)
    least = Math.min(least, light / slices)
  }
  return { most, least }
}

/** The sRGB encoding of IEC 61966-2-1, into 16 bits. */
const code = (linear: number): number => Math.round(65535 * (1.055 * linear ** (1 / 2.4) - 0.055))

test('at its defaults it computes, with the swing alone failing, on purpose', () => {
  const sheet = open('flicker')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['no_flicker'])
  expect(sheet.message('no_flicker')).toContain('Set 1/50 s, with f/9 or with less light at f/8')
})

describe('lamps on 60 Hz mains that swing by 35 %, photographed at 1/90 s', () => {
  const sheet = open('flicker', { flicker: '120', modulation: '35', time: '1/90', readout: '1/20' })

  test('differ by what light added up over the shutter’s time gives', () => {
    const { most, least } = extremes(1 / 90, 120, 0.35)
    expect(sheet.number('ripple')).toBeCloseTo(Math.log2(most / least), 4)
  })

  test('are as likely taken at 1/80.6 s, the third of a stop that the mark 1/80 means', () => {
    // Of the marks, 1/80 (2^(−19/3) s) is nearest to 1/90, by stops: 0.16 against 0.18 to 1/100 (2^(−20/3) s).
    const real = 2 ** (-19 / 3)
    const { most, least } = extremes(real, 120, 0.35)
    expect(1 / sheet.number('real_time')).toBeCloseTo(1 / real, 9)
    expect(sheet.number('ripple_marked')).toBeCloseTo(Math.log2(most / least), 4)
  })

  test('hide their swing in whole 1/120 s', () => {
    expect(sheet.value('steady_list')).toEqual([1, 2, 3, 4, 5, 6].map((n) => expect.closeTo(n / 120, 12)))
    expect(sheet.number('whole_periods')).toBeCloseTo(1 / 120, 12)
  })

  test('are not hidden by a shutter that runs 1/128 s at 1/125: a longer time is proposed', () => {
    const { most, least } = extremes(1 / 128, 120, 0.35)
    expect(Math.log2(most / least)).toBeGreaterThan(0.05)
    // Three periods, which the mark 1/40 runs as 2.98.
    const longer = extremes(2 ** (-16 / 3), 120, 0.35)
    expect(Math.log2(longer.most / longer.least)).toBeLessThan(0.05)
    expect(sheet.number('steady_time')).toBeCloseTo(1 / 40, 9)
    expect(sheet.shown('steady_aperture').mark).toBe('f/13')
  })

  test('and at the time proposed, as at any longer one, no two frames differ by more than is allowed', () => {
    for (let time = sheet.number('sure_time'); time < 0.3; time *= 1.03) {
      const { most, least } = extremes(time, 120, 0.35)
      expect(Math.log2(most / least), `${time} s`).toBeLessThanOrEqual(0.05)
    }
  })

  test('band a frame that is read out in 1/20 s six times', () => {
    expect(sheet.number('bands')).toBeCloseTo(6, 9)
  })
})

describe('test frames at 1/1250 s of a card that reflects 18 %, developed to 16 bits', () => {
  const { most, least } = extremes(1 / 1250, 100, 0.42)
  const givens = {
    test_time: '1/1250',
    code_brightest: String(code(0.18 * most)),
    code_darkest: String(code(0.18 * least)),
    full_scale: '65535',
  }

  test('give back the swing they were computed from', () => {
    const sheet = open('flicker', givens)
    expect(sheet.number('modulation_seen')).toBeCloseTo(0.42, 4)
    expect(sheet.number('frames_swing')).toBeCloseTo(Math.log2(most / least), 3)
    expect(sheet.state('swing_known')).toBe('fail')
    expect(open('flicker', { ...givens, modulation: '42.1' }).failing).not.toContain('swing_known')
  })

  test('of one brightness swing by nothing', () => {
    expect(open('flicker', { code_brightest: '118', code_darkest: '118' }).number('modulation_seen')).toBe(0)
  })
})

test.each([
  ['50 Hz mains', '100', '20', '1/60'],
  ['60 Hz mains', '120', '20', '1/100'],
  ['60 Hz mains, deeply', '120', '60', '1/50'],
  ['a dimmed LED', '400', '95', '1/250'],
  ['a slow beat', '7', '10', '1/15'],
])('the time proposed for %s hides it, as typed and as the shutter runs it', (_, flicker, modulation, time) => {
  const givens = { flicker, modulation, time }
  const { mark, text } = open('flicker', givens).shown('steady_time')
  const after = open('flicker', { ...givens, time: (mark ?? text).replace(' s', '') })
  expect(after.failing).not.toContain('no_flicker')
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['test_short', {}, { test_time: '1/250' }],
    ['card_in_range', {}, { code_brightest: '255' }],
    ['swing_known', {}, { code_darkest: '90' }],
    ['no_flicker', { time: '1/50' }, {}],
    ['released_untouched', {}, { time: '1/25', hands_off: 'no' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('flicker', held), open('flicker', failed), check)
  })
})

test('the aperture of the work, asked after the test frames, leaves their codes as read', () => {
  const { sheet } = open('flicker')
  const type = (name: string, value: string): void =>
    sheet.apply({ do: 'replace', cell: { ...(sheet.named(name) as Given), value } })
  type('code_brightest', '121')
  type('aperture', 'f/5.6')
  expect(sheet.checkState(sheet.named('swing_known')?.id ?? '')).not.toBe('waiting')
  type('test_time', '1/2000')
  expect(sheet.checkState(sheet.named('swing_known')?.id ?? '')).toBe('waiting')
})

test('where the mark of one period is too far off, the shortest of a few periods that holds is to be set', () => {
  const deep = { flicker: '120', modulation: '35', time: '1/250', aperture: 'f/5.6', ripple_limit: '0.03' }
  const sheet = open('flicker', { ...deep, readout: '1/30' })
  // 1/125 runs as 1/128, 0.94 periods; 1/40 as 1/40.3, 2.98 periods.
  expect(sheet.message('no_flicker')).toContain(
    'Set 1/40 s, with f/14 or with less light at f/5.6. Any time from 1/10 s',
  )
  const { least, most } = extremes(2 ** (-16 / 3), 120, 0.35)
  expect(Math.log2(most / least)).toBeLessThan(0.03)
  expect(open('flicker', { ...deep, time: '1/40' }).state('no_flicker')).toMatch(/pass|marginal/)
})

test('a time that hides the flicker is the one to be set, though no whole periods', () => {
  const sheet = open('flicker', { time: '1/15', modulation: '10' })
  expect(sheet.state('no_flicker')).toMatch(/pass|marginal/)
  expect(sheet.number('steady_time')).toBe(sheet.number('time'))
  expect(sheet.number('steady_time')).not.toBe(sheet.number('whole_periods'))
})
