import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../src/drawings/canvas/geometry.ts'
import { drawLensShadow } from '../../src/drawings/lens-shadow/lens-shadow.ts'
import { LENS_SHADOW } from '../../src/functions/light/lens-shadow.ts'
import { clashes, pathsOf } from './reading.ts'

const shadow = LENS_SHADOW[0]?.compute as unknown as (
  out: number,
  height: number,
  width: number,
  front: number,
  barrel: number,
  lamp: number,
) => { clearance: number; shaded: number }
const draw = (out: number, height: number, wide: number, front: number, barrel: number, lamp = 0, width = 400) =>
  drawLensShadow(
    { lamp_out: out, lamp_height: height, width: wide, front_height: front, barrel_radius: barrel, lamp_radius: lamp },
    { width },
  )
const one = (drawing: ReturnType<typeof draw>, name: string): readonly Point[] => pathsOf(drawing, name)[0] ?? []
/** The line of the dimension of the strip in shadow; its ends are marked by strokes that are not level. */
const stripOf = (drawing: ReturnType<typeof draw>): readonly Point[] =>
  pathsOf(drawing, 'dimension-shaded').find(([a, b]) => a && b && a.y === b.y) ?? []

describe('the lens between the lamps', () => {
  test('is to scale, with the strip that the function computes', () => {
    const drawing = draw(0.2, 0.3, 0.036, 0.05, 0.035)
    const [left, right] = one(drawing, 'original') as [Point, Point]
    const [from, to] = stripOf(drawing) as [Point, Point]
    const perMetre = (right.x - left.x) / 0.036
    // 35 − 50 · 165/250 = 2 mm past the axis, of a field that begins at −18 mm.
    expect((to.x - from.x) / perMetre).toBeCloseTo(0.02, 4)
    expect(from.x).toBeCloseTo(left.x, 1)
    const barrel = one(drawing, 'barrel') as [Point, Point, Point, Point]
    expect((barrel[2].x - barrel[1].x) / perMetre).toBeCloseTo(0.07, 4)
    expect((left.y - barrel[1].y) / perMetre).toBeCloseTo(0.05, 4)
    expect(drawing.description).toMatch(/a strip 20 mm wide/)
  })

  test('has the last light end at the far edge where nothing is shaded', () => {
    const drawing = draw(0.2, 0.2, 0.036, 0.05, 0.035)
    const [, face] = one(drawing, 'last-light') as [Point, Point]
    expect(face.x).toBeCloseTo((one(drawing, 'original')[0] as Point).x, 1)
    expect(one(drawing, 'shadow-edge')).toEqual([])
    expect(drawing.description).toMatch(/reaches the far edge/)
  })

  test('draws a shadow where the function finds one, as wide, and none elsewhere', () => {
    const length = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(
        length(0.06, 0.6),
        length(0.02, 0.6),
        length(0.01, 0.3),
        length(0.02, 0.2),
        length(0.01, 0.05),
        length(0, 0.009),
        fc.integer({ min: 240, max: 700 }),
        (out, height, wide, front, barrel, lamp, width) => {
          const { shaded } = shadow(out, height, wide, front, barrel, lamp)
          const drawing = draw(out, height, wide, front, barrel, lamp, width)
          const strip = stripOf(drawing) as [Point, Point] | []
          const [left, right] = one(drawing, 'original') as [Point, Point]
          const drawn = strip.length === 0 ? 0 : ((strip[1].x - strip[0].x) / (right.x - left.x)) * wide
          expect(drawn).toBeCloseTo(shaded, 2)
          expect(clashes(drawing)).toEqual([])
        },
      ),
    )
  })

  test('says what it cannot be drawn without, and that a lamp is over the lens', () => {
    expect(drawLensShadow({ lamp_out: 0.2 }, { width: 300 }).omissions.join()).toMatch(/each need a place/)
    expect(draw(0.03, 0.3, 0.036, 0.05, 0.035).omissions.join()).toMatch(/over the lens/)
  })
})
