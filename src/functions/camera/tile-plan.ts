/** Frames along a span: a computed 2000.0000000000002 mm is no longer than 2000 mm. */
export function tilesAlong(span: number, tile: number, overlap: number): number {
  const steps = (span - overlap) / (tile - overlap)
  const whole = Math.round(steps)
  return Math.max(1, Math.abs(steps - whole) < 1e-9 * Math.max(1, whole) ? whole : Math.ceil(steps))
}

export interface TilePlan {
  readonly across: number
  readonly down: number
  readonly count: number
  /** The frame is turned by 90°, its height along the original’s width. */
  readonly turned: boolean
}

/** The fewest frames that cover width × height, overlap less than both sides of the frame; one unit of length throughout. */
export function planTiles(
  width: number,
  height: number,
  frameWidth: number,
  frameHeight: number,
  overlap: number,
  turn: boolean,
): TilePlan {
  const plan = (w: number, h: number, turned: boolean): TilePlan => {
    const across = tilesAlong(width, w, overlap)
    const down = tilesAlong(height, h, overlap)
    return { across, down, count: across * down, turned }
  }
  const asItLies = plan(frameWidth, frameHeight, false)
  const turned = turn ? plan(frameHeight, frameWidth, true) : asItLies
  return turned.count < asItLies.count ? turned : asItLies
}
