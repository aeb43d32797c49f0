import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DrawingInputs } from '../../src/drawings/canvas/drawing-options.ts'
import {
  edgeDifference,
  edgeLengths,
  projectedCorners,
  squareCorners,
  tiltForDifference,
} from '../../src/drawings/squareness/squared-camera.ts'
import { drawSquareness } from '../../src/drawings/squareness/squareness.ts'
import { SQUARENESS } from '../../src/functions/acceptance/squareness.ts'
import { clashes, nodes, pathsOf, texts } from './reading.ts'

function called(name: string, ...args: readonly number[]): number {
  const record = SQUARENESS.find((one) => one.name === name)
  if (!record) throw new Error(`No function is named ${name}.`)
  return (record.compute as (...args: readonly number[]) => number)(...args)
}

const FRAME = { fieldWidth: 0.4755, fieldHeight: 0.317, distance: 0.853, pixelsWidth: 6000, pixelsHeight: 4000 }
const INPUTS = {
  tilt: 0.00117,
  field_height: 0.317,
  entrance_distance: 0.853,
  pixels_width: 6000,
  pixels_height: 4000,
  allowed_pixels: 6,
}
const draw = (inputs: DrawingInputs, width = 417) => drawSquareness(inputs, { width })

describe('the outline', () => {
  test('is as much shorter at its far edge as keystone says', () => {
    for (const tilt of [0.001, 0.02, -0.05, 0.3]) {
      const [upper, , lower] = edgeLengths(projectedCorners(FRAME, { tilt, tiltAcross: 0 }) ?? []) as [
        number,
        number,
        number,
      ]
      const [near, far] = tilt > 0 ? [lower, upper] : [upper, lower]
      expect(near / far - 1).toBeCloseTo(called('keystone', tilt, FRAME.fieldHeight, FRAME.distance), 9)
    }
  })
  test('across its width leans by the same law', () => {
    const [, right, , left] = edgeLengths(projectedCorners(FRAME, { tilt: 0, tiltAcross: 0.02 }) ?? []) as number[]
    expect((left as number) / (right as number) - 1).toBeCloseTo(
      called('keystone', 0.02, FRAME.fieldWidth, FRAME.distance),
      9,
    )
  })
  test('is allowed what tilt_allowance allows', () => {
    const limit = tiltForDifference(FRAME, { tilt: 0.5, tiltAcross: 0 }, 6)
    expect(limit?.tilt).toBeCloseTo(called('tilt_allowance', 6, 6000, FRAME.fieldHeight, FRAME.distance), 9)
  })
  test('is drawn with its shifts as many times larger as it says', () => {
    const drawing = draw(INPUTS)
    const square = pathsOf(drawing, 'square')[0] as readonly { x: number; y: number }[]
    const seen = pathsOf(drawing, 'seen')[0] as readonly { x: number; y: number }[]
    const times = Number(/drawn (\d+) times/.exec(drawing.description)?.[1])
    const pixels = 6000 / ((square[1]?.x as number) - (square[0]?.x as number))
    const exact = projectedCorners(FRAME, { tilt: INPUTS.tilt, tiltAcross: 0 }) as readonly { x: number; y: number }[]
    squareCorners(FRAME).forEach((corner, at) => {
      const shift = ((seen[at]?.x as number) - (square[at]?.x as number)) * pixels
      expect(shift / times).toBeCloseTo((exact[at]?.x as number) - corner.x, 1)
    })
  })
})

describe('the figures', () => {
  test('are those of the corners and the edges', () => {
    const drawing = draw(INPUTS)
    const seen = projectedCorners(FRAME, { tilt: INPUTS.tilt, tiltAcross: 0 }) ?? []
    expect(drawing.description).toContain(`Opposite edges differ by ${edgeDifference(FRAME, seen).toFixed(1)} px`)
    const written = texts(drawing).map(({ text }) => text)
    expect(written.filter((text) => /^[\d.]+ px$/.test(text))).toHaveLength(4)
    expect(written).toEqual(expect.arrayContaining(['far edge −1.3 px', 'near edge +1.3 px', 'left edge 0 px']))
  })
  test('name the far edge where the tilt goes the other way', () => {
    expect(draw({ ...INPUTS, tilt: -0.00117 }).description).toContain('upper edge (near) +1.3 px')
    expect(draw({ ...INPUTS, tilt: 0, tilt_across: 0.001 }).description).toContain('right edge (far) −1.1 px')
  })
})

describe('what cannot be drawn is said', () => {
  test.each([
    [{}, /pixels/],
    [{ ...INPUTS, tilt: undefined }, /tilt is unknown/],
    [{ ...INPUTS, tilt: 2 }, /below a right angle/],
    [{ ...INPUTS, entrance_distance: 0 }, /distance/],
    [{ ...INPUTS, tilt: 1.4, entrance_distance: 0.1 }, /beside the lens/],
    [{ ...INPUTS, field_height: undefined }, /sides of the field/],
  ])('%o', (inputs, why) => {
    const drawing = draw(inputs as DrawingInputs)
    expect(drawing.omissions.join()).toMatch(why)
    expect(texts(drawing)).toHaveLength(1)
  })
  test('an allowance of nothing, the rest drawn', () => {
    const drawing = draw({ ...INPUTS, allowed_pixels: 0 })
    expect(drawing.omissions.join()).toMatch(/allowed/)
    expect(pathsOf(drawing, 'seen')).toHaveLength(1)
  })
})

test.each([240, 296, 340, 417, 480, 800])(
  'every edge and corner has its figure, clear of all lines, at %i px',
  (width) => {
    for (const more of [
      {},
      { tilt: 0 },
      { tilt: 0.02 },
      { tilt_across: -0.003 },
      { pixels_width: 4000, pixels_height: 6000 },
    ]) {
      const drawing = draw({ ...INPUTS, ...more }, width)
      expect(clashes(drawing)).toEqual([])
      for (const edge of ['upper', 'right', 'lower', 'left'])
        expect(texts(drawing).filter(({ as }) => as.includes(`edge-${edge}`))).toHaveLength(1)
      expect(texts(drawing).filter(({ as }) => as.includes('corner'))).toHaveLength(4)
    }
  },
)

test('whatever the numbers, it draws without a number that is none, and no text over another', () => {
  const any = fc.oneof(
    fc.double({ min: -2, max: 10000 }),
    fc.double({ min: 0, max: 2, noNaN: true }),
    fc.constantFrom(0, -1, 1e-12, 1e300, Number.NaN, Number.POSITIVE_INFINITY, 'text' as const),
  )
  const inputs = fc.record(
    {
      tilt: fc.oneof(fc.double({ min: -1.6, max: 1.6 }), any),
      tilt_across: fc.oneof(fc.double({ min: -1.6, max: 1.6 }), any),
      field_width: any,
      field_height: any,
      entrance_distance: any,
      pixels_width: fc.oneof(fc.integer({ min: 1, max: 20000 }), any),
      pixels_height: fc.oneof(fc.integer({ min: 1, max: 20000 }), any),
      allowed_pixels: any,
    },
    { requiredKeys: [] },
  )
  fc.assert(
    fc.property(inputs, fc.integer({ min: 0, max: 1200 }), (given, width) => {
      const drawing = draw(given as DrawingInputs, width)
      for (const node of nodes(drawing.node))
        for (const value of Object.values(node.attributes)) expect(String(value)).not.toMatch(/NaN|Infinity|undefined/)
      expect(drawing.description).not.toMatch(/NaN|Infinity|undefined|not a number/)
      expect(clashes(drawing)).toEqual([])
    }),
    { numRuns: 300 },
  )
})
