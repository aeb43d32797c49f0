import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../src/drawings/canvas/geometry.ts'
import type { Drawing } from '../../src/drawings/canvas/tree.ts'
import { drawMeasuredLight } from '../../src/drawings/measured-light/measured-light.ts'
import { clashes, pathsOf, texts } from './reading.ts'

type Inputs = Parameters<typeof drawMeasuredLight>[0]
const draw = (inputs: Inputs, width = 680): Drawing => drawMeasuredLight(inputs, { width })

const WIDTH = 0.6
const HEIGHT = 0.4
const FIELD = { field_width: WIDTH, field_height: HEIGHT }
/** A lamp straight above the middle, a diffuse surface that faces down: by the cosine-fourth law E = E₀ (1 + r²/z²)⁻². */
const Z = 0.9
const ABOVE = [{ x: 0, y: 0, z: Z, aim_x: 0, aim_y: 0, intensity: 1000, beam_angle: (2 * Math.PI) / 3 }]

/** The means of a light over the fields of a grid, rows from above; the light as a function of metres from the middle, y up. */
function grid(light: (x: number, y: number) => number, columns = 9, rows = 7, within = [0, 0, 1, 1]): number[][] {
  const [left, top, across, down] = within as [number, number, number, number]
  const fine = 12
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => {
      let sum = 0
      for (let i = 0; i < fine; i++)
        for (let j = 0; j < fine; j++)
          sum += light(
            (left + (across * (column + (i + 0.5) / fine)) / columns - 0.5) * WIDTH,
            (0.5 - top - (down * (row + (j + 0.5) / fine)) / rows) * HEIGHT,
          )
      return sum / fine ** 2
    }),
  )
}
const cosineFourth = (distance: number) => (x: number, y: number) => (1 + (x * x + y * y) / distance ** 2) ** -2

/** The figures of every field in the drawing’s table, `measured` and `computed`, rows from above. */
const fieldsOf = ({ table }: Drawing): { measured: number; computed: number }[] =>
  (table?.rows ?? []).flatMap((row) =>
    row.slice(1).map((text) => {
      const [measured, computed] = (text.match(/[+−]?[\d.]+/g) ?? []).map((one) => Number(one.replace('−', '-')))
      return { measured: measured as number, computed: computed as number }
    }),
  )

describe('the light computed beside the light measured', () => {
  test('is that of the cosine-fourth law, field by field', () => {
    const drawing = draw({ ...FIELD, lamps: ABOVE, measured: grid(cosineFourth(Z)) })
    for (const { measured, computed } of fieldsOf(drawing)) expect(Math.abs(measured - computed)).toBeLessThan(0.011)
    expect(drawing.description).toMatch(/by 0\.00 stop in the root mean square/)
    expect(drawing.description).toMatch(/is the lamps’ light at the original; what is measured includes the lens/)
  })

  test('includes the lens where its pupil is known: cos⁴ of lamps and of the lens multiply', () => {
    const [exit, magnification] = [0.08, 0.1]
    const both = grid((x, y) => cosineFourth(Z)(x, y) * cosineFourth(exit / magnification)(x, y))
    const drawing = draw({ ...FIELD, lamps: ABOVE, measured: both, magnification, exit_distance: exit })
    for (const { measured, computed } of fieldsOf(drawing)) expect(Math.abs(measured - computed)).toBeLessThan(0.011)
    expect(drawing.description).toContain('includes the lens’s falloff by cos⁴')
    expect(drawing.description).toMatch(/by 0\.00 stop in the root mean square/)
    const without = draw({ ...FIELD, lamps: ABOVE, measured: both })
    expect(without.description).not.toMatch(/by 0\.00 stop in the root mean square/)
  })

  test('differs by what the light measured was made to differ: a fall to the right, and where', () => {
    // One stop over the width: the outermost of nine fields are eight ninths apart.
    const tilted = grid((x, y) => cosineFourth(Z)(x, y) * 2 ** (-x / WIDTH))
    const drawing = draw({ ...FIELD, lamps: ABOVE, measured: tilted })
    const off = fieldsOf(drawing).map(({ measured, computed }) => measured - computed)
    for (let row = 0; row < 7; row++)
      expect((off[row * 9] as number) - (off[row * 9 + 8] as number)).toBeCloseTo(8 / 9, 1)
    // Its lines are upright, and a tenth of the width apart for each tenth of a stop.
    const step = Number(
      /a line every ([\d.]+)/.exec(texts(drawing).find(({ as }) => as.includes('difference'))?.text ?? '')?.[1],
    )
    const places = pathsOf(drawing, 'isoline', 'difference').map(
      (run) => run.reduce((sum, { x }) => sum + x, 0) / run.length,
    )
    const apart = [...new Set(places.map((x) => Math.round(x)))].sort((one, other) => one - other)
    const wide = frameOf(drawing, 'difference')
    const distinct = apart.filter((x, i) => i === 0 || x - (apart[i - 1] as number) > 3)
    expect(distinct.length).toBeGreaterThan(4)
    for (let i = 1; i < distinct.length; i++)
      expect(((distinct[i] as number) - (distinct[i - 1] as number)) / wide).toBeCloseTo(step, 1)
    for (const run of pathsOf(drawing, 'isoline', 'difference'))
      expect(Math.max(...run.map(({ x }) => x)) - Math.min(...run.map(({ x }) => x))).toBeLessThan(0.02 * wide)
  })

  test('is taken where a part of the picture was measured', () => {
    const part = [0.5, 0.25, 0.5, 0.5]
    const drawing = draw({ ...FIELD, lamps: ABOVE, measured: grid(cosineFourth(Z), 5, 5, part), covers: part })
    for (const { measured, computed } of fieldsOf(drawing)) expect(Math.abs(measured - computed)).toBeLessThan(0.011)
    const whole = draw({ ...FIELD, lamps: ABOVE, measured: grid(cosineFourth(Z), 5, 5, part) })
    expect(whole.description).not.toMatch(/by 0\.00 stop in the root mean square/)
  })

  test('is on the same scale: lines at the same stops in both', () => {
    const uneven = grid((x, y) => cosineFourth(Z)(x, y) * 2 ** (-3 * x))
    const drawing = draw({ ...FIELD, lamps: ABOVE, measured: uneven })
    const labels = (name: string): number[] =>
      texts(drawing)
        .filter(({ as }) => as.includes('isoline') && as.includes(name))
        .map(({ text }) => Number(text.replace('−', '-')))
    const step = Number(/a line every ([\d.]+)/.exec(drawing.description)?.[1])
    for (const level of [...labels('measured'), ...labels('computed')])
      expect(Math.abs(level / step - Math.round(level / step))).toBeLessThan(1e-6)
    expect(pathsOf(drawing, 'isoline', 'measured').length).toBeGreaterThan(2)
  })
})

const cornersOf = (drawing: Drawing, name: string): readonly Point[] => pathsOf(drawing, 'frame', name)[0] ?? []
const frameOf = (drawing: Drawing, name: string): number => {
  const xs = cornersOf(drawing, name).map(({ x }) => x)
  return Math.max(...xs) - Math.min(...xs)
}

describe('the map measured', () => {
  // Log-linear light: the mean of each field is a constant factor from its middle, so that levels lie where they are made to.
  const SLOPE = 0.8
  const falling = grid((_, y) => 2 ** ((SLOPE * y) / HEIGHT), 9, 7)

  test('has its lines where the light has their level, above brighter', () => {
    const drawing = draw({ measured: falling })
    const box = cornersOf(drawing, 'measured')
    const [top, bottom] = [Math.min(...box.map(({ y }) => y)), Math.max(...box.map(({ y }) => y))]
    const step = Number(/a line every ([\d.]+)/.exec(drawing.description)?.[1])
    const mean = falling.flat().reduce((sum, one) => sum + one, 0) / 63
    // The level in the middle of the picture, by its middle row.
    const middle = Math.log2((falling[3]?.[0] as number) / mean)
    const runs = pathsOf(drawing, 'isoline', 'measured').filter((run) => run.length > 6)
    expect(runs.length).toBeGreaterThan(4)
    for (const run of runs)
      for (const { y } of run) {
        const level = middle + SLOPE * (0.5 - (y - top) / (bottom - top))
        expect(Math.abs(level - Math.round(level / step) * step)).toBeLessThan(0.01)
      }
    expect(drawing.description).toMatch(/brightest \+[\d.]+ in column \d, row 1, dimmest −[\d.]+ in column \d, row 7/)
  })

  test('is hatched where it is beyond the limit alone', () => {
    const drawing = draw({ measured: falling, limit: 0.3 })
    const box = cornersOf(drawing, 'measured')
    const [top, bottom] = [Math.min(...box.map(({ y }) => y)), Math.max(...box.map(({ y }) => y))]
    const points = pathsOf(drawing, 'beyond-limit').flat()
    expect(points.length).toBeGreaterThan(20)
    // The greatest field’s middle is in the first of seven rows.
    for (const { y } of points) expect(SLOPE * ((y - top) / (bottom - top) - 0.5 / 7)).toBeGreaterThan(0.3 - 0.03)
    expect(pathsOf(draw({ measured: falling, limit: 0.9 }), 'beyond-limit')).toEqual([])
  })

  test('of fields in one row says the figure of each', () => {
    const written = texts(draw({ measured: [[1, 0.5, 0.25]] })).filter(({ as }) => as.includes('field'))
    const mean = Math.log2(1.75 / 3)
    expect(written.map(({ text }) => Number(text.replace('−', '-')))).toEqual(
      [0, -1, -2].map((stops) => Number((stops - mean).toFixed(2))),
    )
  })

  test.each([
    ['a dark field', [[1, 0]]],
    ['rows of unlike length', [[1, 1], [1]]],
    ['no rows', []],
    ['a figure', 3],
    ['texts', [['a']]],
  ])('of %s is left out with a reason', (_, measured) => {
    const drawing = draw({ measured: measured as never })
    expect(drawing.omissions.join()).toMatch(/rows of numbers above zero|no field/)
  })

  test('without the size of the field says that the computed one is left out', () => {
    expect(draw({ measured: falling, lamps: ABOVE }).omissions.join()).toMatch(/how much of the original/)
  })
})

test('its texts lie over nothing, at any width and grid', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 240, max: 900 }),
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: 1, max: 12 }),
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.boolean(),
      (width, columns, rows, across, up, beside) => {
        const measured = grid((x, y) => 2 ** (across * x + up * y + 4 * x * y), columns, rows)
        const drawing = draw({ ...FIELD, measured, ...(beside ? { lamps: ABOVE } : {}), limit: 0.2 }, width)
        expect(clashes(drawing)).toEqual([])
      },
    ),
    { numRuns: 60 },
  )
})
