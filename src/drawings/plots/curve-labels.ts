import type { Canvas, Stroke } from '../canvas/canvas.ts'
import { type Box, grown, overlap, type Point } from '../canvas/geometry.ts'
import { ASCENT, DESCENT, letteringBox } from '../canvas/lettering.ts'

/** A curve with a label. */
export interface Curve {
  readonly stroke: Stroke
  readonly className: string
  readonly text: string
  readonly runs: readonly (readonly Point[])[]
}

/** Positions along a curve, from its middle outwards, as fractions. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78, 0.45, 0.55, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85, 0.1, 0.9]

/** Writes the label of a curve on it where it touches no other curve; the curve is interrupted there later. */
export function letterOnCurve(canvas: Canvas, curve: Curve, all: readonly Curve[], within: Box): boolean {
  const { text, runs } = curve
  const longestFirst = [...runs].sort((a, b) => b.length - a.length)
  for (const room of [8, 0])
    for (const [run, share] of longestFirst.flatMap((one) => SHARES.map((at) => [one, at] as const))) {
      const middle = run[Math.round(share * (run.length - 1))] as Point
      const at = { x: middle.x, y: middle.y + (ASCENT - DESCENT) / 2 }
      const lettering = { text, at, anchor: 'middle' as const }
      const box = grown(letteringBox(lettering), 3)
      // A short run would be hidden entirely by its label.
      if (run.every((one) => isIn(one, grown(box, 6)))) continue
      // Two adjacent figures would be read as one.
      if (canvas.textBoxes.some((other) => overlap(other, grown(box, room)))) continue
      if (all.some((other) => other !== curve && other.runs.some((points) => touches(points, box)))) continue
      if (canvas.placeText(`${curve.className} label`, [{ lettering }], within)) return true
    }
  return false
}

/** Writes the label of a curve beside it, clear of all curves and nearest to its own. */
export function letterBeside(canvas: Canvas, curve: Curve, all: readonly Curve[], within: Box): boolean {
  const { className, text, runs } = curve
  for (const off of [-9, 7 + ASCENT, -14, 13 + ASCENT, -20, -28, 24 + ASCENT])
    for (const run of runs)
      for (const share of SHARES) {
        const { x, y } = run[Math.round(share * (run.length - 1))] as Point
        const lettering = { text, at: { x, y: y + off }, anchor: 'middle' as const }
        const box = grown(letteringBox(lettering), 2)
        if (all.some((other) => other.runs.some((points) => touches(points, box)))) continue
        const own = nearness(curve, box)
        if (all.some((other) => other !== curve && nearness(other, box) < own)) continue
        if (canvas.placeText(`${className} label`, [{ lettering }], within)) return true
      }
  return false
}

/** Writes the label above the end of a curve, in a strip above the plot. */
export function letterAtEnd(canvas: Canvas, { className, text, runs }: Curve, strip: Box): boolean {
  const ends = runs.flatMap((run) => [run[0] as Point, run.at(-1) as Point]).filter(({ y }) => y < strip.bottom + 1)
  return canvas.placeText(
    `${className} label`,
    ends.map(({ x }) => ({ lettering: { text, at: { x, y: strip.bottom - 5 }, anchor: 'middle' as const } })),
    strip,
  )
}

/** The distance in pixels from a box to the nearest point of a curve. */
const nearness = ({ runs }: Curve, { left, right, top, bottom }: Box): number =>
  Math.min(
    ...runs.flatMap((run) =>
      run.map(({ x, y }) => Math.hypot(Math.max(left - x, 0, x - right), Math.max(top - y, 0, y - bottom))),
    ),
  )

const isIn = ({ x, y }: Point, box: Box): boolean => x > box.left && x < box.right && y > box.top && y < box.bottom

/** Testing the points is enough because chords are short: one that cuts a corner of the box is not visible. */
const touches = (points: readonly Point[], box: Box): boolean => points.some((one) => isIn(one, box))
