import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../src/drawings/canvas/geometry.ts'
import { drawAreas } from '../../src/drawings/frame/areas-sketch.ts'
import { drawPatchPairs, type PatchPair } from '../../src/drawings/frame/patch-pairs.ts'
import { drawSfrCurve } from '../../src/drawings/frame/sfr-curve.ts'
import { clashes, nodes, pathsOf, texts } from './reading.ts'

describe('the response of an edge', () => {
  // A square aperture of one pixel: |sin πf / πf|.
  const sinc = (f: number): number => (f === 0 ? 1 : Math.abs(Math.sin(Math.PI * f) / (Math.PI * f)))
  const reading = {
    sfr: Array.from({ length: 101 }, (_, i) => [i / 100, sinc(i / 100)]),
    mtf50: 0.6034,
    mtf10: null,
    greatest: 1,
  }

  test('is drawn to scale, its mark where the curve falls to one half', () => {
    const drawing = drawSfrCurve(reading, 480) ?? expect.unreachable('not drawn')
    const curve = pathsOf(drawing, 'response')[0] as readonly Point[]
    const [start, end] = [curve[0] as Point, curve.at(-1) as Point]
    const mark = pathsOf(drawing, 'mark', 'mtf50')[0]?.[1] as Point
    expect((mark.x - start.x) / (end.x - start.x)).toBeCloseTo(0.6034, 3)
    // The curve ends at a response of nothing, and starts at one.
    expect((end.y - mark.y) / (end.y - start.y)).toBeCloseTo(0.5, 3)
    expect(pathsOf(drawing, 'mark', 'mtf10')).toEqual([])
    expect(drawing.description).toMatch(/one half at 0\.603 cycles per pixel, one tenth not reached, at most 1/)
    expect(clashes(drawing)).toEqual([])
  })

  test.each([
    [0.6, 0.91],
    [0.25, 0.5],
    [0.05, 0.12],
  ])('says where it falls to one half and to one tenth: %s, %s', (mtf50, mtf10) => {
    const falls = (f: number): number =>
      f < mtf50 ? 1 - (0.5 * f) / mtf50 : Math.max(0, 0.5 - (0.4 * (f - mtf50)) / (mtf10 - mtf50))
    const sfr = Array.from({ length: 101 }, (_, i) => [i / 100, falls(i / 100)])
    const drawing = drawSfrCurve({ sfr, mtf50, mtf10, greatest: 1 }, 340) ?? expect.unreachable('not drawn')
    expect(texts(drawing).map(({ text }) => text)).toEqual(expect.arrayContaining([`½ at ${mtf50}`, `⅒ at ${mtf10}`]))
    expect(clashes(drawing)).toEqual([])
  })

  test('is not drawn of what is no curve', () => {
    for (const sfr of [
      undefined,
      [],
      [[0, 1]],
      'wide',
      [
        [0, 1],
        [Number.NaN, 2],
      ],
    ])
      expect(drawSfrCurve({ sfr }, 300)).toBeUndefined()
  })
})

describe('patches beside their references', () => {
  const pair = (name: string, difference: number, more: Partial<PatchPair> = {}): PatchPair => ({
    name,
    measured: [50, 0, 0],
    reference: [52, 1, 1],
    difference,
    ...more,
  })

  test('have the colours of sRGB: greys by the inverse of its curve, its own red, green and blue', () => {
    // L* 50: Y = ((50 + 16)/116)³ = 0.18419, by IEC 61966-2-1 a code of 118.9.
    // The primaries’ L*a*b* for D50 by Bradford, as published for the sRGB profile of the ICC (to two digits).
    const drawing = drawPatchPairs(
      [
        pair('grey', 0),
        pair('red', 0, { measured: [54.29, 80.81, 69.89], reference: [87.82, -79.29, 80.99] }),
        pair('blue', 0, { measured: [29.57, 68.3, -112.03], reference: [100, 0, 0] }),
      ],
      340,
    )
    const fills = nodes(drawing?.node ?? expect.unreachable('not drawn'))
      .filter(({ tag }) => tag === 'rect')
      .map(({ attributes }) => String(attributes.fill))
    expect(fills[0]).toBe('#777777')
    for (const [at, [red, green, blue]] of [
      [2, [255, 0, 0]],
      [3, [0, 255, 0]],
      [4, [0, 0, 255]],
      [5, [255, 255, 255]],
    ] as const) {
      const codes = (/^#(..)(..)(..)$/.exec(fills[at] as string) ?? [])
        .slice(1)
        .map((code) => Number.parseInt(code, 16))
      for (const [i, code] of [red, green, blue].entries())
        expect(Math.abs((codes[i] as number) - code)).toBeLessThan(4)
    }
  })

  test('are hatched the denser the more they differ, and say the figure', () => {
    const drawing =
      drawPatchPairs([pair('a', 0.5), pair('b', 1.5), pair('c', 3), pair('d', 9)], 340) ??
      expect.unreachable('not drawn')
    const strokes = ['difference-1', 'difference-2', 'difference-4'].map((name) => pathsOf(drawing, name).length)
    expect(strokes[0]).toBeGreaterThan(1)
    expect(strokes[1]).toBeGreaterThan(1.5 * (strokes[0] as number))
    expect(strokes[2]).toBeGreaterThan(1.5 * (strokes[1] as number))
    expect(texts(drawing).map(({ text }) => text)).toEqual(expect.arrayContaining(['0.50', '1.50', '3.00', '9.00']))
    expect(drawing.description).toContain('a 0.50, b 1.50, c 3.00 and d 9.00')
  })
})

describe('the picture with its areas', () => {
  test('is drawn to scale with each name and figure', () => {
    const drawing =
      drawAreas(
        { width: 300, height: 200 },
        [
          {
            name: 'grey',
            figure: '0.30',
            outlines: [
              [
                [30, 20],
                [90, 20],
                [90, 60],
                [30, 60],
              ],
            ],
          },
          {
            name: 'rule',
            figure: '300 ppi',
            outlines: [
              [
                [10, 150],
                [290, 150],
              ],
            ],
          },
        ],
        608,
      ) ?? expect.unreachable('not drawn')
    const [frame] = pathsOf(drawing, 'picture') as [readonly Point[]]
    const [box, line] = pathsOf(drawing, 'area') as [readonly Point[], readonly Point[]]
    const scale = ((frame[1] as Point).x - (frame[0] as Point).x) / 300
    expect((frame[2] as Point).y - (frame[1] as Point).y).toBeCloseTo(200 * scale, 2)
    expect((box[0] as Point).x - (frame[0] as Point).x).toBeCloseTo(30 * scale, 2)
    expect((line[1] as Point).x - (line[0] as Point).x).toBeCloseTo(280 * scale, 2)
    expect(texts(drawing).map(({ text }) => text)).toEqual(['grey 0.30', 'rule 300 ppi'])
  })

  test('has no name over another name or a line', () => {
    const coordinate = fc.double({ min: 0, max: 300, noNaN: true })
    const rect = fc.tuple(coordinate, coordinate, coordinate, coordinate).map(([x, y, w, h]) => ({
      name: 'area',
      figure: '0.12 stop',
      outlines: [
        [
          [x, y],
          [x + w, y],
          [x + w, y + h],
          [x, y + h],
        ] as const,
      ],
    }))
    fc.assert(
      fc.property(fc.array(rect, { maxLength: 8 }), fc.integer({ min: 240, max: 700 }), (areas, width) => {
        const drawing = drawAreas({ width: 600, height: 600 }, areas, width)
        expect(drawing && clashes(drawing)).toEqual([])
      }),
      { numRuns: 40 },
    )
  })
})
