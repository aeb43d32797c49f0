import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import type { Frame, Sheet } from '../../../src/worksheet/index.ts'
import { FullSheet } from '../../../src/worksheet/renaming/full-sheet.ts'
import { composed, READ, set } from './sets.ts'

const pixels = { width: 900, height: 700, bits: 16, channels: 3, encoding: 'sRGB' }

/** A sheet of one part, its frames filled in as if measured. */
function measured(
  part: string,
  readings: Readonly<Record<string, Frame['readings']>>,
  series: Readonly<Record<string, NonNullable<Frame['series']>>> = {},
): Sheet {
  const { cells, ...rest } = composed(set(part), READ)
  return new FullSheet(
    {
      ...rest,
      cells: cells.map((cell) =>
        cell.kind === 'frame' && readings[cell.name]
          ? {
              ...cell,
              picture: { name: 'a.tif', size: 1, digest: 'ab', pixels, taken: null },
              readings: readings[cell.name] as NonNullable<Frame['readings']>,
              ...(series[cell.name] ? { series: series[cell.name] as NonNullable<Frame['series']> } : {}),
            }
          : cell,
      ),
    },
    LIBRARY,
  )
}

const named = (sheet: Sheet, name: string): string => sheet.named(name)?.id ?? expect.unreachable(name)
function value(sheet: Sheet, name: string): unknown {
  const outcome = sheet.outcome(named(sheet, name))
  return outcome.state === 'value' ? outcome.value : expect.unreachable(`${name}: ${JSON.stringify(outcome)}`)
}
const state = (sheet: Sheet, name: string): string => sheet.check(named(sheet, name)).state

describe('a part that takes a frame in the place of readings', () => {
  test('waits for the frame, and for no reading', () => {
    for (const part of ['evenness-frame', 'grey-frame', 'chart-frame', 'square-frame', 'edge-frame', 'start-of-day']) {
      const sheet = measured(part, {})
      for (const cell of sheet.cells)
        if (cell.kind === 'check') expect(sheet.check(cell.id).state, cell.name).toBe('waiting')
    }
  })

  test('evenness and flat field: a spread of one stop needs a gain of two, and costs √2 in photon noise', () => {
    const sheet = measured('evenness-frame', {
      card_frame: { field: { light: [[1, 0.5]], spread: 1, uniformity: 0.667, corner: [0, -1, -1, 0] } },
    })
    expect(value(sheet, 'greatest_gain')).toBeCloseTo(2, 9)
    expect(value(sheet, 'noise_cost')).toBeCloseTo(Math.SQRT2, 9)
    expect(state(sheet, 'frame_even')).toBe('fail')
    expect(state(sheet, 'gain_small')).toBe('fail')
  })

  test('grey card: an 18 % card that measures 0.18 is right, and light that doubled in two hours changed by a stop', () => {
    const grey = (light: number, red = light) => ({
      grey: { code: [0.46, 0.46, 0.46], light: [red, light, light], lab: [49.5, 0, 0], noise: 0.4 },
    })
    const over = [0.09, 0.18].map((light, i) => ({
      name: `${i}`,
      digest: `${i}`,
      when: `2026-03-04T${8 + 2 * i < 10 ? '0' : ''}${8 + 2 * i}:00:00`,
      readings: grey(light),
    }))
    const right = measured('grey-frame', { grey_frame: grey(0.18) }, { grey_frame: over })
    expect(value(right, 'exposure_off')).toBeCloseTo(0, 9)
    expect(value(right, 'moved')).toBeCloseTo(1, 9)
    expect(value(right, 'moved_hourly')).toBeCloseTo(0.5, 9)
    expect([value(right, 'moved_colour'), state(right, 'steady_colour')]).toEqual([0, 'pass'])
    expect([state(right, 'exposed_right'), state(right, 'neutral'), state(right, 'steady')]).toEqual([
      'pass',
      'pass',
      'fail',
    ])
    const red = measured('grey-frame', { grey_frame: grey(0.18, 0.2) })
    expect(value(red, 'cast')).toBeCloseTo(0.1, 9)
    expect(state(red, 'neutral')).toBe('fail')
  })

  test('colour: the class comes from all differences of the chart', () => {
    const chart = (differences: readonly number[]) => ({
      chart: {
        patches: differences.map((delta_e_2000, i) => ({ name: `p${i}`, lab: [50, 0, 0], delta_e_2000 })),
        mean: differences.reduce((sum, one) => sum + one, 0) / differences.length,
        percentile_90: Math.max(...differences),
        worst: Math.max(...differences),
        worst_name: `p${differences.indexOf(Math.max(...differences))}`,
      },
    })
    const sheet = measured('chart-frame', { target_frame: chart([0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 8, 8]) })
    expect(value(sheet, 'class')).toBe('2 star')
    expect(value(sheet, 'worst_patch')).toBe('p8')
    expect([state(sheet, 'mean_passes'), state(sheet, 'worst_passes')]).toEqual(['pass', 'fail'])
  })

  test('square: keystone against what is allowed, and sampling against what is required', () => {
    const outline = (keystone_across: number, sampling: number) => ({
      outline: {
        keystone_across,
        keystone_down: 2,
        rotation: 0.1,
        sampling_across: sampling,
        sampling_down: sampling * 1.01,
        skew: 0.05,
      },
    })
    const [fine, out] = [outline(3, 400 / 0.0254), outline(30, 200 / 0.0254)].map((one) =>
      measured('square-frame', { outline_frame: one }),
    ) as [Sheet, Sheet]
    expect([state(fine, 'frame_square'), state(fine, 'frame_samples')]).toEqual(['pass', 'pass'])
    expect([state(out, 'frame_square'), state(out, 'frame_samples')]).toEqual(['fail', 'fail'])
  })

  test('sharpness: the worse of middle and corner counts, and a response above one is sharpening', () => {
    const edge = (efficiency: number, greatest = 1) => ({ angle: 5, mtf50: 0.3, mtf10: 0.45, efficiency, greatest })
    const sheet = measured('edge-frame', { edge_frame: { middle: edge(0.9), corner: edge(0.6, 1.3) } })
    expect([state(sheet, 'edge_sharp'), state(sheet, 'not_sharpened')]).toEqual(['fail', 'fail'])
    const fine = measured('edge-frame', { edge_frame: { middle: edge(0.95), corner: edge(0.9) } })
    expect([state(fine, 'edge_sharp'), state(fine, 'not_sharpened')]).toEqual(['pass', 'pass'])
  })

  describe('the start of the day', () => {
    const target = (light: number, mtf50: number, spread = 0.1, lab: readonly number[] = [50, 0, 0]) => ({
      grey: { code: [0.5, 0.5, 0.5], light: [light, light, light], lab: [...lab], noise: 0.4 },
      field: { spread, uniformity: 0.99, corner: [0, 0, 0, 0] },
      edge: { angle: 5, mtf50, mtf10: 0.45, efficiency: 0.9, greatest: 1 },
    })
    type Target = ReturnType<typeof target>
    /** One frame a day, the last of them today’s. */
    const days = (...targets: readonly Target[]): Sheet =>
      measured(
        'start-of-day',
        { day_frame: targets.at(-1) as Target },
        {
          day_frame: targets.map((readings, i) => ({
            name: `${i}.tif`,
            digest: `${i}`,
            when: `2026-03-0${i + 1}T08:00:00`,
            readings,
          })),
        },
      )
    const checks = ['day_light', 'day_colour', 'day_even', 'day_sharp']
    const states = (sheet: Sheet) => checks.map((name) => state(sheet, name))

    test('passes a frame like those of the days before, and waits for a second day', () => {
      expect(states(days(target(0.2, 0.3), target(0.2, 0.3), target(0.2, 0.3)))).toEqual(checks.map(() => 'pass'))
      expect(states(days(target(0.2, 0.3)))).toEqual(checks.map(() => 'waiting'))
    })

    test('fails each of light, colour, evenness and sharpness alone where it changed since yesterday', () => {
      const before = [target(0.2, 0.3), target(0.2, 0.3)]
      expect(states(days(...before, target(0.1, 0.3)))).toEqual(['fail', 'pass', 'pass', 'pass'])
      expect(states(days(...before, target(0.2, 0.3, 0.1, [50, 5, 0])))).toEqual(['pass', 'fail', 'pass', 'pass'])
      expect(states(days(...before, target(0.2, 0.3, 0.3)))).toEqual(['pass', 'pass', 'fail', 'pass'])
      expect(states(days(...before, target(0.2, 0.2)))).toEqual(['pass', 'pass', 'pass', 'fail'])
    })

    test('finds a slow change that no day’s step shows, against the usual and over a week', () => {
      // Light falls by 0.04 stop a day, less than the 0.05 allowed; sharpness by 4 %.
      const slow = days(...[0, 1, 2, 3, 4].map((i) => target(0.2 * 2 ** (-0.04 * i), 0.3 * 0.96 ** i)))
      expect(value(slow, 'day_moved')).toBeCloseTo(-0.04, 9)
      // The usual is the median of 0, −0.04, −0.08 and −0.12.
      expect(value(slow, 'day_moved_usual')).toBeCloseTo(-0.1, 9)
      expect(value(slow, 'day_trend')).toBeCloseTo(-0.28, 9)
      expect(value(slow, 'day_sharpness')).toBeCloseTo(0.96, 9)
      expect(value(slow, 'day_sharpness_usual')).toBeCloseTo(0.96 ** 4 / ((0.96 + 0.96 ** 2) / 2), 9)
      expect(states(slow)).toEqual(['fail', 'pass', 'pass', 'marginal'])
    })
  })
})

describe('a part about a risk', () => {
  test('carries its caution', () => {
    for (const [part, about] of [
      ['raking', /heat/],
      ['ultraviolet', /goggles/],
      ['vacuum-board', /fall on people/],
      ['warped', /conservator/],
      ['crossed-flash', /dangerous charge/],
    ] as const) {
      const notes = composed(set(part)).cells.flatMap((cell) =>
        cell.kind === 'note' && cell.role === 'caution' ? [cell.text] : [],
      )
      expect(
        notes.some((text) => about.test(text)),
        part,
      ).toBe(true)
    }
  })

  // ICNIRP's guidelines on ultraviolet, 2004, as quoted: 10 000 J/m² of UV-A (315 nm to 400 nm) at the unprotected eye in eight
  // hours (manualshive.com/en/manual/uv-light-technology/uv3w-led/1065810, page 7; ARPANSA RPS 12, schedule 1, says the same).
  test('ultraviolet of 10 W/m² at the eye is over its limit after 1000 s', () => {
    const { cells, ...rest } = composed(
      set('ultraviolet'),
      new Map([...READ, ['uv_at_person', { value: '10', from: 'typed' }]]),
    )
    const sheet = new FullSheet({ ...rest, cells }, LIBRARY)
    expect(value(sheet, 'uv_eye_time')).toBeCloseTo(1000, 6)
  })
})

test('a printed screen of 150 lines an inch at 400 ppi repeats after 8 pixels, which is 3 lines: 0.508 mm', () => {
  const { cells, ...rest } = composed(set('halftone'), READ)
  const filled = (ruling: string, sampling: string): Sheet =>
    new FullSheet(
      {
        ...rest,
        cells: cells.map((cell) =>
          cell.kind === 'given' && cell.name === 'screen_ruling'
            ? { ...cell, value: ruling }
            : cell.kind === 'given' && cell.name === 'wanted_sampling'
              ? { ...cell, value: sampling }
              : cell,
        ),
      },
      LIBRARY,
    )
  // The least number of pixels after which pixels and lines meet again: 8/400 in = 3/150 in.
  const sheet = filled('150', '400 ppi')
  expect(value(sheet, 'moire_period')).toBeCloseTo((8 / 400) * 0.0254, 9)
  expect(value(sheet, 'screen_pixels')).toBeCloseTo(8 / 3, 9)
  expect(state(sheet, 'screen_resolved')).toBe('fail')
  expect(value(sheet, 'screen_sampling')).toBeCloseTo((4 * 150) / 0.0254, 6)
  expect(state(filled('150', '700 ppi'), 'screen_resolved')).toBe('pass')
})
