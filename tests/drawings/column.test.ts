import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DrawingInputs } from '../../src/drawings/canvas/drawing-options.ts'
import { PX_PER_MM } from '../../src/drawings/canvas/scale.ts'
import { drawColumn } from '../../src/drawings/column/column.ts'
import { clashes, nodes, pathsOf, texts } from './reading.ts'

const STAND = {
  column_height: 0.917,
  column_reach: 1.06,
  original_to_sensor: 0.917,
  lens_to_original: 0.853,
  clear_distance: 0.813,
  entrance_distance: 0.853,
  original_width: 0.42,
  field_width: 0.476,
}
const draw = (inputs: DrawingInputs, width = 400) => drawColumn(inputs, { width })
const written = (inputs: DrawingInputs, width?: number) => texts(draw(inputs, width)).map(({ text }) => text)

/** Pixels per metre from the scale in the description: at 1:n, a metre is 1000/n millimetres on paper. */
const pxPerMetre = (inputs: DrawingInputs, width?: number): number =>
  (PX_PER_MM * 1000) / Number(draw(inputs, width).description.match(/at 1:([\d.]+)/)?.[1])

const ys = (inputs: DrawingInputs, name: string, width?: number): readonly number[] =>
  pathsOf(draw(inputs, width), name).flatMap((run) => run.map(({ y }) => y))

describe('heights', () => {
  const board = (width?: number) => Math.min(...ys(STAND, 'board', width))
  test.each([300, 400, 700])('are to scale above the board at %i px', (width) => {
    const scale = pxPerMetre(STAND, width)
    const above = (y: number) => (board(width) - y) / scale
    const [rim] = ys(STAND, 'front-rim', width)
    expect(above(rim as number)).toBeCloseTo(0.813, 3)
    const [sensor] = ys(STAND, 'sensor', width)
    expect(above(sensor as number)).toBeCloseTo(0.917, 3)
    const [tip] = ys(STAND, 'pointer', width)
    expect(above(tip as number)).toBeCloseTo(0.917, 3)
    expect(above(Math.min(...ys(STAND, 'column', width)))).toBeCloseTo(1.06, 3)
  })
  test('are measured from the face of a thick original, and the mark from the board', () => {
    const thick = { ...STAND, original_thickness: 0.05, column_height: 0.967 }
    const scale = pxPerMetre(thick)
    const level = Math.min(...ys(thick, 'board'))
    expect((level - (ys(thick, 'sensor')[0] as number)) / scale).toBeCloseTo(0.917 + 0.05, 3)
    expect((level - (ys(thick, 'pointer')[0] as number)) / scale).toBeCloseTo(0.967, 3)
  })
  test('have ticks at equal steps whose labels are their heights', () => {
    const drawing = draw(STAND)
    const scale = pxPerMetre(STAND)
    for (const { text, box } of texts(drawing).filter(({ as }) => as.includes('tick'))) {
      // A label is centred on its tick; its figure is in millimetres.
      const height = (board() - (box.top + box.bottom) / 2) / scale
      expect(height * 1000).toBeGreaterThan(Number(text) - 4 / scale / 0.001)
      expect(height * 1000).toBeLessThan(Number(text) + 4 / scale / 0.001)
    }
  })
})

test('what is to spare, or missing, is the reach less the mark', () => {
  expect(written(STAND).join()).toContain('143 mm to spare')
  expect(draw(STAND).description).toContain('The column reaches 1060 mm, so 143 mm is to spare.')
  const short = { ...STAND, column_reach: 0.86 }
  expect(written(short).join()).toContain('57 mm')
  expect(draw(short).description).toContain('which is 57 mm too short')
})

test('the dimension of the present step is drawn thick, and no other', () => {
  const thick = (emphasis?: string) =>
    nodes(drawColumn(STAND, { width: 400, emphasis }).node)
      .map(({ attributes }) => String(attributes.class ?? ''))
      .filter((name) => name.startsWith('emphasis') && !name.includes('tick'))
  expect(thick()).toEqual([])
  expect(thick('clear_distance')).toEqual(['emphasis dimension-clear'])
  // Sensor and mark at one height share one dimension.
  expect(thick('original_to_sensor')).toEqual(['emphasis dimension-column'])
})

test.each([300, 360, 400])('its figure is bold and clear of it, and the other figures stay, at %i px', (width) => {
  const figuresOf = (emphasis?: string) =>
    nodes(drawColumn(STAND, { width, emphasis }).node).filter(
      ({ tag, attributes }) => tag === 'text' && String(attributes.class).includes('dimension-'),
    )
  const bold = (emphasis?: string) =>
    figuresOf(emphasis)
      .filter(({ attributes }) => attributes['font-weight'] === 'bold')
      .map(({ attributes }) => attributes.class)
  expect(bold()).toEqual([])
  // One is at the edge of the drawing, the other between dimensions.
  for (const [input, name] of [
    ['clear_distance', 'dimension-clear'],
    ['original_to_sensor', 'dimension-column'],
  ] as const) {
    expect(bold(input)).toEqual([expect.stringContaining(name)])
    expect(figuresOf(input).length).toBe(figuresOf().length)
  }
})

describe('what is missing', () => {
  test('without any height there is no drawing', () => {
    expect(draw({ column_reach: 1 }).omissions.join()).toContain('is known')
  })
  test('a reach of nothing is reported, and the rest is drawn', () => {
    const drawing = draw({ ...STAND, column_reach: 0 })
    expect(drawing.omissions.join()).toContain('The reach of the column is left out')
    expect(pathsOf(drawing, 'camera')).toHaveLength(1)
  })
})

test('whatever the heights and the width, no text crosses a line or another text', () => {
  const length = fc.double({ min: 0.02, max: 3, noNaN: true })
  const inputs = fc.record(
    Object.fromEntries([...Object.keys(STAND), 'original_thickness'].map((name) => [name, length])),
    { requiredKeys: ['column_height'] },
  )
  fc.assert(
    fc.property(inputs, fc.integer({ min: 300, max: 900 }), (given, width) => {
      const drawing = draw(given as DrawingInputs, width)
      expect(clashes(drawing)).toEqual([])
    }),
    { numRuns: 300 },
  )
})
