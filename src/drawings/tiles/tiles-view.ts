import { type Dimension, figures, LANE } from '../canvas/dimension-line.ts'
import { type Box, type Point, point } from '../canvas/geometry.ts'
import { textWidth } from '../canvas/lettering.ts'
import type { Tile, TileLayout } from './tile-layout.ts'
import { TILES_WORDS as WORDS } from './words.ts'

const PAD = 4
/** The largest height of the drawing, as a multiple of its width. */
const TALLEST = 1.25

/** The scale and position of the original and its frames on the canvas. */
export interface TilesView {
  /** The lower left corner of the original in pixels. */
  readonly origin: Point
  readonly pxPerMetre: number
  /** The area of the original and its frames. */
  readonly box: Box
  /** The lower edge of the dimensions, in pixels. */
  readonly bottom: number
}

/** Finds the largest scale for a width in pixels; frames may extend past the original. */
export function viewOf(layout: TileLayout, width: number, top: number): TilesView {
  const { border, tiles, frameWidth, frameHeight } = layout
  const xs = tiles.flatMap(({ x }) => [x - frameWidth / 2, x + frameWidth / 2])
  const ys = tiles.flatMap(({ y }) => [y - frameHeight / 2, y + frameHeight / 2])
  const least = { x: Math.min(-border, ...xs), y: Math.min(-border, ...ys) }
  const wide = Math.max(layout.width + border, ...xs) - least.x
  const high = Math.max(layout.height + border, ...ys) - least.y
  const [before, after] = [PAD + LANE + 6, 2 * LANE + 8 + PAD]
  const across = width - before - after
  const pxPerMetre = Math.min(across / wide, (across * TALLEST) / high)
  const left = before + (across - wide * pxPerMetre) / 2
  const box = { left, right: left + wide * pxPerMetre, top, bottom: top + high * pxPerMetre }
  return {
    origin: point(box.left - least.x * pxPerMetre, box.bottom + least.y * pxPerMetre),
    pxPerMetre,
    box,
    bottom: box.bottom + 2 * LANE + 8,
  }
}

/** A rectangle of the original, in metres, as a box of the drawing, in pixels. */
export const boxOf = (
  { origin, pxPerMetre }: TilesView,
  left: number,
  lower: number,
  right: number,
  upper: number,
): Box => ({
  left: origin.x + left * pxPerMetre,
  right: origin.x + right * pxPerMetre,
  top: origin.y - upper * pxPerMetre,
  bottom: origin.y - lower * pxPerMetre,
})

/** A frame’s box in the drawing, in pixels. */
export const frameBox = (view: TilesView, { frameWidth, frameHeight }: TileLayout, { x, y }: Tile): Box =>
  boxOf(view, x - frameWidth / 2, y - frameHeight / 2, x + frameWidth / 2, y + frameHeight / 2)

/** A smaller overlap, in metres, is none. */
const TOUCHING = 1e-6

/**
 * The dimensions: the original below and on the right with the overlaps outside them, the first frame above and on the left.
 */
export function dimensionsOf(
  view: TilesView,
  layout: TileLayout,
  show: (metres: number) => string,
): readonly Dimension[] {
  const { box } = view
  const whole = boxOf(view, 0, 0, layout.width, layout.height)
  const first = frameBox(view, layout, layout.tiles[0] as Tile)
  const { columns, rows, overlapAcross = 0, overlapDown = 0 } = layout
  const across = (className: string, from: number, to: number, at: number, edge: number) =>
    ({ className, direction: 'across', from: point(from, edge), to: point(to, edge), at }) as const
  const upright = (className: string, from: number, to: number, at: number, edge: number) =>
    ({ className, direction: 'upright', from: point(edge, from), to: point(edge, to), at }) as const
  const named = (word: string, metres: number) => [`${word} ${show(metres)}`, ...figures(show(metres))]
  const second = first.left + ((columns[1] ?? 0) - (columns[0] ?? 0)) * view.pxPerMetre
  const below = first.top + ((rows[0] ?? 0) - (rows[1] ?? 0)) * view.pxPerMetre
  return [
    {
      ...across('dimension-width', whole.left, whole.right, box.bottom + LANE, whole.bottom),
      wordings: named(WORDS.original, layout.width),
    },
    {
      ...upright('dimension-height', whole.top, whole.bottom, box.right + LANE, whole.right),
      wordings: figures(show(layout.height)),
    },
    {
      ...across('dimension-frame', first.left, first.right, box.top - LANE, first.top),
      wordings: named(WORDS.frame, layout.frameWidth),
    },
    // The figure does not fit beside a frame that is lower than the figure is wide.
    ...(first.bottom - first.top > textWidth(show(layout.frameHeight)) + 12
      ? [
          {
            ...upright('dimension-frame-height', first.top, first.bottom, box.left - LANE, first.left),
            wordings: figures(show(layout.frameHeight)),
          },
        ]
      : []),
    ...(overlapAcross > TOUCHING
      ? [
          {
            ...across('dimension-overlap', second, first.right, box.bottom + 2 * LANE, whole.bottom),
            wordings: named(WORDS.overlapLabel, overlapAcross).slice(0, 2),
          },
        ]
      : []),
    ...(overlapDown > TOUCHING
      ? [
          {
            ...upright('dimension-overlap-down', below, first.bottom, box.right + 2 * LANE, whole.right),
            wordings: figures(show(overlapDown)),
          },
        ]
      : []),
  ]
}
