import { type Box, between, boxAround, type Point, point, type Segment, shareWithin, without } from './geometry.ts'

/**
 * Strokes that hatch a convex shape, interrupted around the given boxes. Strokes are used instead of an SVG pattern:
 * a pattern needs an id, and ids collide when a page shows two drawings.
 */
export function hatch(
  convex: readonly Point[],
  options: { spacing: number; angle: number; around: readonly Box[] },
): readonly Segment[] {
  const { left, top, right, bottom } = boxAround(convex)
  const middle = point((left + right) / 2, (top + bottom) / 2)
  const reach = Math.hypot(right - left, bottom - top) / 2
  const along = point(Math.cos(options.angle), -Math.sin(options.angle))
  const count = Math.floor(reach / options.spacing)
  return Array.from({ length: 2 * count + 1 }, (_, at) => (at - count) * options.spacing).flatMap((offset) => {
    const centre = point(middle.x - along.y * offset, middle.y + along.x * offset)
    const stroke = {
      from: point(centre.x - along.x * reach, centre.y - along.y * reach),
      to: point(centre.x + along.x * reach, centre.y + along.y * reach),
    }
    const share = shareWithin(stroke, convex)
    if (!share) return []
    const clipped = { from: between(stroke.from, stroke.to, share[0]), to: between(stroke.from, stroke.to, share[1]) }
    return without(clipped, options.around)
  })
}
