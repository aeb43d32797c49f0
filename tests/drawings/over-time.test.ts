import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../src/drawings/canvas/geometry.ts'
import { drawOverTime } from '../../src/drawings/over-time/over-time.ts'
import { clashes, pathsOf } from './reading.ts'

const HOUR = 3600
const draw = (time: readonly number[], changes: readonly number[], limit?: number, width = 340) =>
  drawOverTime({ time: [...time], changes: [...changes], ...(limit === undefined ? {} : { limit }) }, { width })

const middle = (run: readonly Point[]): Point => {
  const [xs, ys] = [run.map(({ x }) => x), run.map(({ y }) => y)]
  return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 }
}

describe('the light over time', () => {
  test('is drawn to scale in time and stops', () => {
    const drawing = draw([0, HOUR, 4 * HOUR], [0, 0.1, -0.2], 0.05)
    const [a, b, c] = pathsOf(drawing, 'moment').map(middle) as [Point, Point, Point]
    expect((b.x - a.x) / (c.x - a.x)).toBeCloseTo(0.25, 2)
    // Up is brighter.
    expect((b.y - a.y) / (c.y - a.y)).toBeCloseTo(-0.5, 2)
    expect(b.y).toBeLessThan(a.y)
    const [upper, lower] = pathsOf(drawing, 'limit').map(middle) as [Point, Point]
    expect((upper.y - a.y) / (b.y - a.y)).toBeCloseTo(0.5, 2)
    expect((lower.y - a.y) / (b.y - a.y)).toBeCloseTo(-0.5, 2)
  })

  test('is said in words, in minutes, hours or days', () => {
    expect(draw([0, HOUR, 4 * HOUR], [0, 0.1, -0.2], 0.05).description).toBe(
      'The light of 3 frames over 4 h, in stops from the first. The largest change is −0.20 stop, after 4 h. 2 frames beyond ±0.05 stop, marked by an open circle.',
    )
    expect(draw([0, 24 * HOUR, 96 * HOUR], [0, 0.1, -0.2], 0.05).description).toMatch(/over 4 d,.*stop, after 4 d\./)
    expect(draw([0, 900], [0, 0.01], 0.05).description).toMatch(/over 15 min.*All are within ±0\.05 stop/)
  })

  test('of one frame, or of lists that do not pair up, is not drawn', () => {
    expect(draw([0], [0]).omissions.join()).toMatch(/two frames/)
    expect(draw([0, 1], [0, 1, 2]).omissions.join()).toMatch(/one for each time/)
  })

  test('has no text over a line', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.double({ min: 0, max: 40_000, noNaN: true }), fc.double({ min: -2, max: 2, noNaN: true })),
          {
            minLength: 2,
            maxLength: 20,
          },
        ),
        fc.integer({ min: 240, max: 700 }),
        (moments, width) => {
          const drawing = draw(
            moments.map(([time]) => time),
            moments.map(([, change]) => change),
            0.05,
            width,
          )
          expect(clashes(drawing)).toEqual([])
        },
      ),
      { numRuns: 60 },
    )
  })
})
