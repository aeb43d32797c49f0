import { describe, expect, test } from 'vitest'
import { boxAround, type Point } from '../../src/drawings/canvas/geometry.ts'
import type { Drawing } from '../../src/drawings/canvas/tree.ts'
import { drawTiles } from '../../src/drawings/tiles/tiles.ts'
import { TILES } from '../../src/functions/camera/tiles.ts'
import { clashes, pathsOf, texts } from './reading.ts'

type Inputs = Parameters<typeof drawTiles>[0]
const MAP = { original_width: 1, original_height: 0.7, field_width: 0.45, field_height: 0.3, overlap: 0.1 }
const CASES: Readonly<Record<string, Inputs>> = {
  'three by three': MAP,
  'three by two, the board moved': {
    original_width: 2,
    original_height: 1,
    field_width: 0.9,
    field_height: 0.6,
    overlap: 0.1,
    moves_board: true,
    row_order: true,
  },
  'a single row': { original_width: 0.8, original_height: 0.3, field_width: 0.45, field_height: 0.32, overlap: 0.05 },
  'turned, with a border': {
    original_width: 0.42,
    original_height: 0.297,
    field_width: 0.381,
    field_height: 0.254,
    overlap: 0.03,
    border: 0.01,
  },
  'very many': { original_width: 3, original_height: 2, field_width: 0.25, field_height: 0.2, overlap: 0.05 },
  'no overlap': { ...MAP, overlap: 0 },
  'one frame': { ...MAP, field_width: 1.2, field_height: 0.8 },
}
const draw = (inputs: Inputs, width = 340): Drawing => drawTiles(inputs, { width })
const positions = (span: number, tile: number, overlap: number): number[] =>
  (
    TILES.find(({ name }) => name === 'tile_positions') as unknown as { compute: (...of: number[]) => number[] }
  ).compute(span, tile, overlap)
const mm = (metres: number) => String(Math.round(metres * 1000))

function measured(drawing: Drawing, width: number) {
  const original = boxAround(pathsOf(drawing, 'original')[0] as readonly Point[])
  const scale = width / (original.right - original.left)
  return (at: Point) => ({ x: (at.x - original.left) * scale, y: (original.bottom - at.y) * scale })
}

describe('the frames', () => {
  const drawing = draw(MAP, 480)
  const onOriginal = measured(drawing, 1)
  const boxes = Array.from({ length: 9 }, (_, at) =>
    boxAround((pathsOf(drawing, `tile-${at + 1}`)[0] as readonly Point[]).map(onOriginal)),
  )

  test('are where tile_positions puts them, back and forth from the upper left', () => {
    const xs = positions(1, 0.45, 0.1)
    const ys = positions(0.7, 0.3, 0.1)
    const order = [
      [0, 2],
      [1, 2],
      [2, 2],
      [2, 1],
      [1, 1],
      [0, 1],
      [0, 0],
      [1, 0],
      [2, 0],
    ] as const
    for (const [at, [column, row]] of order.entries()) {
      const box = boxes[at] as (typeof boxes)[number]
      expect((box.left + box.right) / 2).toBeCloseTo(xs[column] as number, 3)
      expect((box.top + box.bottom) / 2).toBeCloseTo(ys[row] as number, 3)
      expect(drawing.table?.rows[at]).toEqual([String(at + 1), mm(xs[column] as number), mm(ys[row] as number)])
    }
  })

  test('have the size of the field and cover the original', () => {
    for (const box of boxes) expect(box.right - box.left).toBeCloseTo(0.45, 3)
    const all = boxAround(boxes.flatMap(({ left, right, top, bottom }) => [point(left, top), point(right, bottom)]))
    expect(all.left).toBeCloseTo(0, 3)
    expect(all.right).toBeCloseTo(1, 3)
  })

  test('are hatched where they overlap and nowhere else', () => {
    for (const one of pathsOf(drawing, 'overlap', 'hatch').flat()) {
      const { x, y } = onOriginal(one)
      const holding = boxes.filter(
        (box) => x > box.left - 1e-3 && x < box.right + 1e-3 && y > box.top - 1e-3 && y < box.bottom + 1e-3,
      )
      expect(holding.length).toBeGreaterThan(1)
    }
  })

  test('are numbered in their order', () => {
    const numbers = texts(drawing).filter(({ as }) => as.includes('tile-number'))
    expect(numbers.map(({ text }) => text)).toEqual(['1', '2', '3', '4', '5', '6', '7', '8', '9'])
  })
})

const point = (x: number, y: number): Point => ({ x, y })

test('row by row, every row starts from the left', () => {
  const { table, description } = draw({ ...MAP, row_order: true })
  expect(table?.rows[3]).toEqual(['4', '225', '350'])
  expect(description).toContain('row by row')
})

test('a board moves the other way round', () => {
  const { table } = draw({ ...MAP, moves_board: true })
  expect(table?.rows.slice(0, 4)).toEqual([
    ['1', '0', '0'],
    ['2', '−275', '0'],
    ['3', '−550', '0'],
    ['4', '−550', '200'],
  ])
})

test('a border is taken in, and places still count from the original’s edges', () => {
  const { table, description } = draw(CASES['turned, with a border'] as Inputs)
  const xs = positions(0.44, 0.254, 0.03).map((x) => x - 0.01)
  expect(description).toContain('with a border of 10 mm')
  expect(table?.rows.map(([, x]) => x)).toEqual(xs.map(mm))
})

test('one frame is drawn around the original, and said to cover it', () => {
  const drawing = draw(CASES['one frame'] as Inputs)
  expect(pathsOf(drawing, 'tile')).toHaveLength(1)
  expect(texts(drawing).map(({ text }) => text)).toContain('One frame covers the original')
  expect(drawing.description).toContain('covered by one frame')
})

test.each([
  ['an overlap as large as a frame', { ...MAP, overlap: 0.3 }, /overlap of 300 mm must be less/],
  ['too many', { ...MAP, field_width: 0.002, field_height: 0.002, overlap: 0.001 }, /more than 2000/],
  ['no field', { original_width: 1, original_height: 1 }, /unknown/],
  ['a field of nothing', { ...MAP, field_width: 0 }, /must be above zero/],
] as const)('it says what it cannot lay out: %s', (_, inputs, why) => {
  expect(draw(inputs).omissions.join()).toMatch(why)
})

for (const width of [300, 340, 480, 640])
  test.each(Object.entries(CASES))(`the lettering is clear at ${width} px: %s`, (_, inputs) => {
    expect(clashes(draw(inputs, width))).toEqual([])
  })
