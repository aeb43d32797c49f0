import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DrawingInputs } from '../../src/drawings/canvas/drawing-options.ts'
import { PX_PER_MM } from '../../src/drawings/canvas/scale.ts'
import { drawDepthZone } from '../../src/drawings/depth-zone/depth-zone.ts'
import { clashes, pathsOf, texts } from './reading.ts'

const draw = (inputs: DrawingInputs, width = 400) => drawDepthZone(inputs, { width })

/** How many times larger than life the description says heights are drawn. */
function timesOf(inputs: DrawingInputs, width?: number): number {
  const [, drawn, life] = draw(inputs, width).description.match(/at ([\d.]+):([\d.]+)/) as RegExpMatchArray
  return Number(drawn) / Number(life)
}
const span = (inputs: DrawingInputs, name: string, width?: number): number => {
  const ys = pathsOf(draw(inputs, width), name, name === 'zone' ? 'dashed' : 'thick').flatMap((run) =>
    run.map(({ y }) => y),
  )
  return Math.max(...ys) - Math.min(...ys)
}

describe('heights', () => {
  test.each([
    [{ depth: 0.036, unevenness: 0.003 }, 400],
    [{ depth: 0.0012, unevenness: 0.003 }, 300],
    [{ depth: 0.9, unevenness: 0.02 }, 900],
  ])('%o at %i px are at the scale written', (inputs, width) => {
    const px = (metres: number) => metres * 1000 * PX_PER_MM * timesOf(inputs, width)
    expect(span(inputs, 'zone', width)).toBeCloseTo(px(inputs.depth), 1)
    expect(span(inputs, 'sheet', width)).toBeCloseTo(px(inputs.unevenness), 1)
  })
})

test('says what share of the depth the sheet takes', () => {
  expect(draw({ depth: 0.036, unevenness: 0.003 }).description).toContain('3 mm off flat, 8.33 % of the depth.')
  expect(draw({ depth: 0.002, unevenness: 0.003 }).description).toContain('parts of it are out of focus')
})

test('a flat sheet is a line, and a missing depth is said', () => {
  expect(span({ depth: 0.036, unevenness: 0 }, 'sheet')).toBe(0)
  expect(draw({ unevenness: 0.003 }).omissions.join()).toContain('the depth of field is unknown')
})

test('whatever the depth and the width, texts keep clear and the depth is written', () => {
  const length = fc.double({ min: 1e-5, max: 5, noNaN: true })
  fc.assert(
    fc.property(
      length,
      fc.option(length, { nil: undefined }),
      fc.integer({ min: 300, max: 900 }),
      (depth, off, width) => {
        const drawing = draw({ depth, ...(off === undefined ? {} : { unevenness: off }) }, width)
        expect(clashes(drawing)).toEqual([])
        expect(texts(drawing).filter(({ as }) => as.includes('dimension-depth'))).toHaveLength(1)
      },
    ),
  )
})
