import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open, proposed } from './open.ts'

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('in-tiles')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

/** Frames laid side by side, each on the last by the overlap, until the span is covered. */
function laid(span: number, frame: number, overlap: number): number {
  let count = 1
  for (let reached = frame; reached < span - 1e-9; reached += frame - overlap) count++
  return count
}

describe('a wall map of 2 × 1.5 m at 400 ppi, on a 100-megapixel sensor, the board moving', () => {
  const sheet = open('in-tiles', {
    original: '2000 x 1500',
    border: '15',
    wanted_sampling: '400',
    sensor: '53.4 x 40',
    sensor_pixels: '11656 x 8742',
    focal: '90',
    overlap: '100',
    moves: 'the board',
    unevenness: '0.4',
    travel_reach: '1600 x 1200',
    free_table: '3600 x 2600',
  })
  // Two per cent above 400 ppi.
  const perMm = (400 * 1.02) / 25.4
  // The sensor is 53.4 × 40 mm: its shape is that of a frame.
  const [long, short] = [11656 / perMm, ((11656 / perMm) * 40) / 53.4]

  test('has frames of 725.6 × 543.6 mm', () => {
    expect(long).toBeCloseTo(725.64, 2)
    expect(sheet.mm('tile_long')).toBeCloseTo(long, 6)
    expect(sheet.mm('tile_short')).toBeCloseTo(short, 6)
  })

  test('takes the fewer of both ways round', () => {
    const asItLies = [laid(2030, long, 100), laid(1530, short, 100)] as const
    const turned = [laid(2030, short, 100), laid(1530, long, 100)] as const
    // Long side across: 4 × 4; upright: 5 × 3.
    expect([asItLies, turned]).toEqual([
      [4, 4],
      [5, 3],
    ])
    expect(sheet.value('turned')).toBe(true)
    expect([sheet.value('across'), sheet.value('down'), sheet.value('frames')]).toEqual([5, 3, 15])
  })

  test('has the first and the last frame flush with the border, each on its neighbour by the overlap or more', () => {
    const [first, step] = [sheet.mm('first_across'), sheet.mm('step_across')]
    // Steps are whole millimetres: the frames reach past the border, never short of it.
    expect(first - short / 2).toBeLessThanOrEqual(-15)
    expect(first + 4 * step + short / 2).toBeGreaterThanOrEqual(2015)
    expect(Math.abs(first + 4 * step + short / 2 - 2015)).toBeLessThan(2.5)
    expect(short - step).toBeGreaterThan(100)
    expect(Math.abs(sheet.mm('first_down') + 2 * sheet.mm('step_down') + long / 2 - 1515)).toBeLessThan(1.5)
  })

  test('has the table as large as the original and the way it goes', () => {
    expect(sheet.mm('table_across')).toBeCloseTo(2000 + 4 * sheet.mm('step_across'), 6)
    expect(sheet.mm('table_down')).toBeCloseTo(1500 + 2 * sheet.mm('step_down'), 6)
    // Where the board moves, the lamps are still over one frame.
    expect(sheet.mm('to_light_width')).toBeCloseTo(short, 6)
    expect(sheet.mm('to_light_height')).toBeCloseTo(long, 6)
  })

  test('shows what rises at two places, by rays from both places of the lens', () => {
    const height = 0.4
    const u = sheet.mm('lens_height')
    const onTheBoard = (x: number, lens: number) => lens + ((x - lens) * u) / (u - height)
    const [x, step] = [300, Math.max(sheet.mm('step_across'), sheet.mm('step_down'))]
    const apart = Math.abs(onTheBoard(x, 0) - onTheBoard(x, step))
    expect(sheet.number('mismatch')).toBeCloseTo(apart * perMm, 6)
  })

  test('has the column at f (2 + m + 1/m)', () => {
    const m = (53.4 / 11656) * perMm
    expect(sheet.mm('carriage')).toBeCloseTo(90 * (2 + m + 1 / m), 9)
  })

  test('joins to 32 609 × 24 577 px: 4.81 GB at 16 bits, past the 4.29 GB of classic TIFF', () => {
    const [width, height] = [2030 * perMm, 1530 * perMm]
    expect(sheet.number('joined_width')).toBe(Math.ceil(width))
    expect(sheet.shown('joined_data').text).toBe(`${((width * height * 6) / 1e9).toFixed(2)} GB`)
    expect(sheet.state('file_holds')).toBe('fail')
  })
})

test('a camera measured higher than computed takes in more, and is reported where that costs sampling', () => {
  const sheet = open('in-tiles', { ppi: '290' })
  expect(sheet.mm('tile_long')).toBeCloseTo((6000 / 290) * 25.4, 9)
  expect(sheet.state('sharp_enough')).toBe('fail')
})

test('a single row needs no step down', () => {
  const sheet = open('in-tiles', { original: '1300 x 300' })
  expect(sheet.problems).toEqual([])
  expect([sheet.value('down'), sheet.mm('step_down'), sheet.mm('first_down')]).toEqual([1, 0, 150])
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['one_frame', {}, { original: '297 x 210' }],
    ['overlap_fits', {}, { overlap: '200' }],
    ['overlap_enough', {}, { overlap: '20' }],
    ['pixels_match', {}, { sensor_pixels: '4000 x 6000' }],
    ['column_reaches', {}, { column_reach: '1200' }],
    ['lens_long_enough', {}, { focal: '35' }],
    ['travel_enough', {}, { travel_reach: '600 x 700' }],
    ['table_enough', {}, { moves: 'the board', free_table: '2000 x 1500' }],
    ['joins_well', {}, { unevenness: '4' }],
    ['file_holds', {}, { bits: '32', original: '2600 x 1800' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('in-tiles', held), open('in-tiles', failed), check)
  })
})

test('the lens proposed fits under the column', () => {
  const low = { column_reach: '1100' }
  const lens = proposed(open('in-tiles', low).message('column_reaches'), /A? ?lens of (\d+ mm)/)
  expect(open('in-tiles', { ...low, focal: lens }).state('column_reaches')).not.toBe('fail')
})
