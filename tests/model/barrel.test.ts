import fc from 'fast-check'
import { expect, test } from 'vitest'
import { asked } from '../endurance/report.ts'
import { call } from '../functions/call.ts'

const RUNS = asked('PHOTOGRAPHS', 400)

type Point = readonly [x: number, y: number, z: number]

/** Whether a straight line up from the field meets a tube that begins at its front rim and has no upper end. */
function isBlocked(from: Point, to: Point, rim: number, radius: number): boolean {
  if (to[2] <= rim) return false
  const [dx, dy, dz] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  // Of the part above the rim, the place that is nearest to the tube's axis.
  const enters = (rim - from[2]) / dz
  const squared = dx * dx + dy * dy
  const nearest = squared === 0 ? 1 : -(from[0] * dx + from[1] * dy) / squared
  const at = Math.min(1, Math.max(enters, nearest))
  return Math.hypot(from[0] + at * dx, from[1] + at * dy) < radius
}

/** Points of a round lamp's outline, seen across the line of the lamps, and its middle. */
const lampPoints = (x: number, z: number, radius: number): Point[] => [
  [x, 0, z],
  ...(radius === 0
    ? []
    : Array.from({ length: 180 }, (_, i): Point => {
        const angle = (i / 90) * Math.PI
        return [x + radius * Math.cos(angle), 0, z + radius * Math.sin(angle)]
      })),
]

test('the shadow of a barrel is where rays from the lamp meet it, and nowhere else', () => {
  const met = { clear: 0, shaded: 0 }
  const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  fc.assert(
    fc.property(
      fc.record({
        beside: metres(0.005, 0.8),
        height: metres(0.05, 0.8),
        width: metres(0.005, 0.2),
        front: metres(0.02, 0.3),
        barrel: metres(0.01, 0.08),
        lamp: fc.constantFrom(0, 0.01, 0.04),
      }),
      ({ beside, height, width, front, barrel, lamp }) => {
        fc.pre(height > lamp)
        const out = barrel + lamp + beside
        const found = call<{ clearance: number; shaded: number; highest: number }>(
          'barrel_shadow',
          out,
          height,
          width,
          front,
          barrel,
          lamp,
        )
        // The field is looked at in columns, at four places of each.
        const columns = 120
        let edge = 0
        for (let i = 0; i <= columns; i++) {
          const x = width * (i / columns - 0.5)
          const dark = [-0.5, -0.2, 0, 0.5].some((part) =>
            lampPoints(out, height, lamp).some((point) => isBlocked([x, part * width, 0], point, front, barrel)),
          )
          if (dark) edge = x + width / 2
        }
        const step = width / columns
        // A polygon of points is a little smaller than the lamp's circle, and columns are a step apart.
        const loose = step + 1e-3 * (width + barrel + lamp)
        expect(Math.abs(found.shaded - edge)).toBeLessThanOrEqual(loose)
        if (found.clearance > loose) {
          expect(edge).toBe(0)
          met.clear++
        }
        if (found.clearance < -loose && found.shaded > loose) {
          expect(edge).toBeGreaterThan(0)
          met.shaded++
        }
        // At the greatest height the light just passes.
        if (found.highest > lamp)
          expect(
            call<{ clearance: number }>('barrel_shadow', out, found.highest, width, front, barrel, lamp).clearance,
          ).toBeCloseTo(0, 9)
      },
    ),
    { numRuns: RUNS },
  )
  expect(met.clear).toBeGreaterThan(0)
  expect(met.shaded).toBeGreaterThan(0)
}, 3_600_000)
