import type { Canvas, Stroke } from '../canvas/canvas.ts'
import { type Box, grown, overlap, type Point } from '../canvas/geometry.ts'
import { ASCENT, DESCENT, letteringBox } from '../canvas/lettering.ts'

/** A curve that carries its own name. */
export interface Curve {
  readonly stroke: Stroke
  readonly className: string
  readonly text: string
  readonly runs: readonly (readonly Point[])[]
}

/** From the middle of a curve outwards. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78, 0.45, 0.55, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85, 0.1, 0.9]

/** Writes a curve's name on it, where that touches no other curve; the curve is cut there afterwards. */
export function letterOnCurve(canvas: Canvas, curve: Curve, all: readonly Curve[], within: Box): boolean {
  const { text, runs } = curve
  const longestFirst = [...runs].sort((a, b) => b.length - a.length)
  for (const room of [8, 0])
    for (const [run, share] of longestFirst.flatMap((one) => SHARES.map((at) => [one, at] as const))) {
      const middle = run[Math.round(share * (run.length - 1))] as Point
      const at = { x: middle.x, y: middle.y + (ASCENT - DESCENT) / 2 }
      const lettering = { text, at, anchor: 'middle' as const }
      const box = grown(letteringBox(lettering), 3)
      // A short run would be hidden whole under its own name.
      if (run.every((one) => isIn(one, grown(box, 6)))) continue
      // Next to another figure it would be read together with that.
      if (canvas.textBoxes.some((other) => overlap(other, grown(box, room)))) continue
      if (all.some((other) => other !== curve && other.runs.some((points) => touches(points, box)))) continue
      if (canvas.placeText(`${curve.className} label`, [{ lettering }], within)) return true
    }
  return false
}

/** Writes a curve's name beside it, clear of every curve and nearer to its own than to any other. */
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

/** Where a curve has no room for its name: over its end, in a strip above the plot. */
export function letterAtEnd(canvas: Canvas, { className, text, runs }: Curve, strip: Box): boolean {
  const ends = runs.flatMap((run) => [run[0] as Point, run.at(-1) as Point]).filter(({ y }) => y < strip.bottom + 1)
  return canvas.placeText(
    `${className} label`,
    ends.map(({ x }) => ({ lettering: { text, at: { x, y: strip.bottom - 5 }, anchor: 'middle' as const } })),
    strip,
  )
}

/** From a box to the nearest point of a curve. */
const nearness = ({ runs }: Curve, { left, right, top, bottom }: Box): number =>
  Math.min(
    ...runs.flatMap((run) =>
      run.map(({ x, y }) => Math.hypot(Math.max(left - x, 0, x - right), Math.max(top - y, 0, y - bottom))),
    ),
  )

const isIn = ({ x, y }: Point, box: Box): boolean => x > box.left && x < box.right && y > box.top && y < box.bottom

/** Chords are short: one that only cuts a corner between two points does not show. */
const touches = (points: readonly Point[], box: Box): boolean => points.some((one) => isIn(one, box))
