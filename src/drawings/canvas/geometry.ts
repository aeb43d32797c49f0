/** A point in pixels of the view box, y downwards. */
export interface Point {
  readonly x: number
  readonly y: number
}
export interface Segment {
  readonly from: Point
  readonly to: Point
}
/** An axis-aligned rectangle in pixels. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** A point of the drawing, in its own units. */
export const point = (x: number, y: number): Point => ({ x, y })
/** The point at a share of the way from one to another: 0 the first, 1 the second. */
export const between = (from: Point, to: Point, share: number): Point =>
  point(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share)
/** How far two points are apart. */
export const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y)
/** The point at a distance from another; angle 0 points right and angles grow counterclockwise, in radians. */
export const towards = (from: Point, angle: number, length: number): Point =>
  point(from.x + Math.cos(angle) * length, from.y - Math.sin(angle) * length)

/** A box larger by the same on every side. */
export const grown = (box: Box, by: number): Box => ({
  left: box.left - by,
  top: box.top - by,
  right: box.right + by,
  bottom: box.bottom + by,
})
/** The smallest box with all points in it. */
export const boxAround = (points: readonly Point[]): Box => ({
  left: Math.min(...points.map((one) => one.x)),
  top: Math.min(...points.map((one) => one.y)),
  right: Math.max(...points.map((one) => one.x)),
  bottom: Math.max(...points.map((one) => one.y)),
})
/** Whether two boxes share more than an edge. */
export const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
/** Whether a box is in another; edges may touch. */
export const inside = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom

/** The corners of a box, clockwise from the upper left. */
export const corners = (box: Box): readonly Point[] => [
  point(box.left, box.top),
  point(box.right, box.top),
  point(box.right, box.bottom),
  point(box.left, box.bottom),
]

/** The sides of a closed polygon. */
export const sides = (points: readonly Point[]): readonly Segment[] =>
  points.map((from, at) => ({ from, to: points[(at + 1) % points.length] as Point }))

/** The part of a segment inside a convex polygon, as fractions of its length; undefined if it lies outside. */
export function shareWithin(segment: Segment, convex: readonly Point[]): readonly [number, number] | undefined {
  const middle = point(
    convex.reduce((sum, one) => sum + one.x, 0) / convex.length,
    convex.reduce((sum, one) => sum + one.y, 0) / convex.length,
  )
  let enter = 0
  let leave = 1
  for (const side of sides(convex)) {
    const across = point(side.from.y - side.to.y, side.to.x - side.from.x)
    const depth = (at: Point) => (at.x - side.from.x) * across.x + (at.y - side.from.y) * across.y
    const inwards = Math.sign(depth(middle))
    const start = depth(segment.from) * inwards
    const end = depth(segment.to) * inwards
    if (start < 0 && end < 0) return undefined
    if (start < 0) enter = Math.max(enter, start / (start - end))
    else if (end < 0) leave = Math.min(leave, start / (start - end))
  }
  return enter < leave ? [enter, leave] : undefined
}

/** Whether a segment has a part in a box. */
export const crosses = (segment: Segment, box: Box): boolean =>
  isNear(segment.from, segment.to, box) && shareWithin(segment, corners(box)) !== undefined

/** Whether the bounding box of a segment overlaps a box. This quick test settles most cases. */
export const isNear = (from: Point, to: Point, { left, right, top, bottom }: Box): boolean =>
  (from.x < right || to.x < right) &&
  (from.x > left || to.x > left) &&
  (from.y < bottom || to.y < bottom) &&
  (from.y > top || to.y > top)

/** The parts of a segment that lie outside all the given boxes. */
export function without(segment: Segment, boxes: readonly Box[]): readonly Segment[] {
  const holes = boxes
    .map((box) => shareWithin(segment, corners(box)))
    .filter((share) => share !== undefined)
    .sort((a, b) => a[0] - b[0])
  const left: Segment[] = []
  let at = 0
  for (const [enter, leave] of [...holes, [1, 1] as const]) {
    if (enter > at)
      left.push({ from: between(segment.from, segment.to, at), to: between(segment.from, segment.to, enter) })
    at = Math.max(at, leave)
  }
  // Stubs shorter than a pixel look like dirt.
  return left.filter((one) => distance(one.from, one.to) >= 1)
}
