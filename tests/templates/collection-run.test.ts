import { describe, expect, test } from 'vitest'
import type { Run } from '../../src/worksheet/index.ts'
import type { RunPlan } from '../../src/worksheet/run/plan.ts'
import { runOf } from '../../src/worksheet/run/sheet-run.ts'
import { expectRendered, expectSettled, type Filled, open, proposed } from './open.ts'
import { openRows } from './rows.ts'

function planOf({ sheet }: Filled): RunPlan {
  const { plan, feed } = runOf(sheet, sheet.cells.find(({ kind }) => kind === 'run') as Run)
  if (!plan) throw new Error(feed.missing.map(({ input, why }) => `${input.name}: ${why}`).join('; '))
  return plan
}

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('collection-run')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

test('the figures of the sheet are those of the plan', () => {
  const sheet = open('collection-run')
  const { setups, unplanned, total } = planOf(sheet)
  expect(unplanned).toEqual([])
  expect(setups.length).toBe(sheet.number('run_setups'))
  expect(total.frames).toBe(sheet.number('run_frames'))
  expect(total.all).toBeCloseTo(sheet.number('run_hours'), 6)
  expect(total.days).toBeCloseTo(sheet.number('run_days'), 9)
  expect(total.data / 3).toBeCloseTo(sheet.number('run_set'), 3)
  const marks = setups.map(({ heights }) => heights?.most ?? 0)
  expect(Math.max(...marks)).toBeCloseTo(sheet.number('highest_mark'), 9)
})

/**
 * A sensor of 50 × 40 mm with 10 000 × 8000 pixels of 5 µm, no border: an original of w × h mm asked for at s ppi
 * allows magnifications from s × 5 µm (s/5080) to min(50/w, 40/h), the sensor turned where that gives more.
 */
const camera = {
  sensor: '50 x 40',
  sensor_pixels: '10000 x 8000',
  focal: '100',
  border: '0',
  overlap: '20',
  column_reach: '2600',
  per_frame: '30',
  per_original: '60',
  setup_takes: '20',
  spell: '60',
  break_takes: '15',
  hours_a_day: '6',
  days_left: '1',
  bits: '8',
  copies: '2',
  currency: 'CHF',
  hour_rate: '90',
}
const list = [
  ['A', '500', '400', '0', 'matt', '254', '1'], // from 0.05 to 0.1
  ['B', '400', '320', '0', 'matt', '508', '2'], // from 0.1 to 0.125
  ['C', '250', '200', '2', 'matt', '762', '1'], // from 0.15 to 0.2
  ['D', '200', '250', '1', 'matt', '457.2', '3'], // from 0.09 to 0.2, turned
  ['E', '500', '400', '0', 'glossy', '254', '1'], // from 0.05 to 0.1, by itself
  ['F', '980', '400', '3', 'matt', '508', '1'], // two frames of 500 × 400 at 0.1
] as const

describe('six originals on a sensor of 80 million pixels', () => {
  const sheet = openRows('collection-run', 'originals', list, camera)

  test('take three set-ups: A, B and F at 1:10, C and D at 1:5, and E in its own light', () => {
    expect(sheet.number('run_setups')).toBe(3)
    const found = planOf(sheet).setups.map(({ magnification, exposure, originals }) => [
      exposure,
      Math.round(1 / magnification),
      originals
        .map(({ original }) => original.title)
        .sort()
        .join(''),
    ])
    expect(found).toEqual([
      ['matt', 5, 'CD'],
      ['matt', 10, 'ABF'],
      ['glossy', 10, 'E'],
    ])
  })

  test('no two set-ups would do: no magnification serves both A and C, and E shares its light with none', () => {
    const matt = [
      [0.05, 0.1],
      [0.1, 0.125],
      [0.15, 0.2],
      [0.09, 0.2],
      [0.1, 0.1],
    ]
    const serves = (m: number): boolean =>
      matt.every(([least = 0, most = 0]) => m >= least - 1e-12 && m <= most + 1e-12)
    expect(matt.flat().some(serves)).toBe(false)
  })

  test('are 1 + 2 + 1 + 3 + 1 + 2 frames, the last in two parts of 500 mm that share 20 mm', () => {
    expect(sheet.number('run_frames')).toBe(10)
    const [last] = planOf(sheet)
      .setups.flatMap(({ originals }) => originals)
      .filter(({ tiles }) => tiles.count > 1)
    expect(last?.original.title).toBe('F')
    expect(last?.tiles).toMatchObject({ across: 2, down: 1, count: 2 })
  })

  test('have the column at 100 × (2 + 0.1 + 10) mm and the thickest of them on top', () => {
    expect(sheet.mm('highest_mark')).toBeCloseTo(1210 + 3, 9)
  })

  test('take 10 × 30 s, 6 × 60 s and 3 × 20 min, and a break after the first hour', () => {
    expect(sheet.number('run_work') / 60).toBeCloseTo(5 + 6 + 60, 9)
    expect(sheet.number('run_hours') / 60).toBeCloseTo(71 + 15, 9)
    expect(sheet.number('run_days')).toBeCloseTo(86 / 60 / 6, 9)
    expect(planOf(sheet).total.all).toBeCloseTo(86 * 60, 6)
  })

  test('leave 2.4 GB a set, and cost an hour and 26 minutes at 90', () => {
    expect(sheet.number('run_set') / 8).toBeCloseTo(10 * 240e6, 3)
    expect(sheet.value('run_cost')).toEqual({ amount: expect.closeTo((86 / 60) * 90, 9), currency: 'CHF' })
    expect(sheet.shown('run_cost').text).toBe('CHF 129.00')
  })
})

test('for each original in hand the column is where the plan has it', () => {
  const rows = planOf(open('collection-run')).setups.flatMap(({ originals }) => originals)
  expect(rows).toHaveLength(15)
  for (const { original, height, frames } of rows) {
    const sheet = open('collection-run', { row_in_hand: String(original.row + 1) })
    expect(sheet.value('title_in_hand')).toBe(original.title)
    expect(sheet.number('mark_in_hand'), original.title).toBeCloseTo(height ?? 0, 9)
    expect(sheet.number('frames_in_hand')).toBe(frames)
  }
})

test('what is ticked off is out of the plan of what is left', () => {
  const { sheet } = open('collection-run')
  const { plan } = runOf(sheet, sheet.cells.find(({ kind }) => kind === 'run') as Run, { left: true })
  expect(plan?.leftOut).toHaveLength(5)
  expect(plan?.progress.done.count).toBe(5)
  // The five took 3.5 + 3 + 2.5 + 6 + 16 = 31 minutes.
  expect(plan?.progress.done.timed.actual).toBeCloseTo(31 * 60, 6)
  expect(plan?.progress.expected).toBeDefined()
})

test('an original too small for the lens alone goes on tubes', () => {
  // 20 × 15 mm on 36 × 24 mm with 10 mm round it fits at 24/35, past 1:2: 12 mm of tube reach 0.5 + 12/60 = 0.7.
  const sheet = openRows('collection-run', 'originals', [['Seal', '20', '15', '3', 'matt', '3800', '1']])
  expect(planOf(sheet).setups[0]?.means).toMatchObject({ kind: 'tubes', pieces: [0.012] })
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['run_reaches', {}, { focal: '105' }],
    ['parts_few', {}, { sensor_pixels: '2400 x 1600' }],
    ['overlap_small', {}, { overlap: '80' }],
    ['run_in_time', {}, { days_left: '0.5' }],
    ['run_disk_holds', {}, { disk: '0.01' }],
    ['row_listed', {}, { row_in_hand: '16' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('collection-run', held), open('collection-run', failed), check)
  })

  test('the lens proposed for a column too short reaches all', () => {
    const short = { focal: '105' }
    const lens = proposed(open('collection-run', short).message('run_reaches'), /A lens of (\d+) mm/)
    expect(open('collection-run', { focal: lens }).failing).not.toContain('run_reaches')
  })
})
