import { Canvas } from '../canvas/canvas.ts'
import { drawDimension, LANE, letterDimension } from '../canvas/dimension-line.ts'
import type { Draw } from '../canvas/drawing-options.ts'
import { lengthIn, lengthUnit } from '../canvas/drawing-unit.ts'
import { type Box, corners, type Point, point, type Segment } from '../canvas/geometry.ts'
import { hatch } from '../canvas/hatch.ts'
import { arrowhead } from '../canvas/lamp-outline.ts'
import { ASCENT, DESCENT, textWidth } from '../canvas/lettering.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { TITLES } from '../canvas/words.ts'
import { describeTiles, tileTable } from './describe-tiles.ts'
import { readTiles, type Tile, type TileLayout } from './tile-layout.ts'
import { boxOf, dimensionsOf, frameBox, type TilesView, viewOf } from './tiles-view.ts'
import { TILES_WORDS as WORDS } from './words.ts'

const PAD = 4
const ROW = 18
const NARROWEST = 240
/** Numbers and path are left out for more frames than this. */
const MOST_NUMBERED = 240

/** Draws the original with its frames, their overlaps, order and positions. */
export const drawTiles: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES.tiles
  const show = lengthIn(lengthUnit(options.unit))
  const omissions: string[] = []
  const layout = readTiles(inputs, omissions, show)
  if (!layout) return nothingDrawn(width, title, omissions, WORDS.sizeUnknown)

  const description = describeTiles(layout, show)
  const words = { title, description, table: tileTable(layout, show), omissions, width }

  const heads = headsOf(layout)
  const view = viewOf(layout, width, PAD + heads.length * ROW + LANE + 18)
  const canvas = new Canvas(width)
  const height = view.bottom + PAD
  const paper = { left: 0, right: width, top: 0, bottom: height }
  for (const [at, text] of heads.entries())
    canvas.placeText(
      'head',
      [{ lettering: { text, at: point(PAD, PAD + ASCENT + 1 + at * ROW), anchor: 'start' } }],
      paper,
    )

  const original = corners(boxOf(view, 0, 0, layout.width, layout.height))
  canvas.outline('thick', 'original', original)
  for (const tile of layout.tiles)
    canvas.outline('dimension', `tile tile-${tile.number}`, corners(frameBox(view, layout, tile)))
  const dimensions = dimensionsOf(view, layout, show)
  for (const one of dimensions) drawDimension(canvas, one)
  for (const one of dimensions) letterDimension(canvas, one, paper)
  drawOrder(canvas, view, layout)
  for (const strip of overlaps(view, layout))
    canvas.lines('hatch', 'overlap', hatch(corners(strip), { spacing: 7, angle: Math.PI / 4, around: canvas.occupied }))

  return { ...words, node: canvas.node(height, title, description), height }
}

function headsOf({ tiles, columns, rows, turned, order }: TileLayout): readonly string[] {
  if (tiles.length === 1) return [WORDS.wholeInOne(turned)]
  return [
    WORDS.frames(tiles.length, turned, columns.length, rows.length),
    ...(rows.length === 1 || columns.length === 1
      ? []
      : [WORDS.order(order === 'back and forth' ? WORDS.backAndForth : WORDS.rowByRow)]),
  ]
}

/** The strips that neighbouring frames share. */
function overlaps(view: TilesView, layout: TileLayout): readonly Box[] {
  const { columns, rows, frameWidth, frameHeight } = layout
  const pairs = (centres: readonly number[]) => centres.slice(1).map((one, at) => [centres[at] as number, one] as const)
  const [left, right] = [(columns[0] as number) - frameWidth / 2, (columns.at(-1) as number) + frameWidth / 2]
  const [lower, upper] = [(rows.at(-1) as number) - frameHeight / 2, (rows[0] as number) + frameHeight / 2]
  const upright = pairs(columns).map(([a, b]) => boxOf(view, b - frameWidth / 2, lower, a + frameWidth / 2, upper))
  const lying = pairs(rows).map(([a, b]) => boxOf(view, left, a - frameHeight / 2, right, b + frameHeight / 2))
  return [...upright, ...lying].filter((box) => box.right - box.left > 1 && box.bottom - box.top > 1)
}

/** Writes the number of each frame at its centre and draws the path from one to the next. */
function drawOrder(canvas: Canvas, view: TilesView, layout: TileLayout): void {
  const { tiles } = layout
  if (tiles.length > MOST_NUMBERED) return
  const centre = ({ x, y }: Tile): Point =>
    point(view.origin.x + x * view.pxPerMetre, view.origin.y - y * view.pxPerMetre)
  const widest = textWidth(String(tiles.length))
  const cell = Math.min(
    layout.columns.length > 1 ? ((layout.columns[1] as number) - (layout.columns[0] as number)) * view.pxPerMetre : 1e9,
    frameBox(view, layout, tiles[0] as Tile).right - frameBox(view, layout, tiles[0] as Tile).left,
  )
  const numbered = widest + 4 < cell
  const drawn = numbered ? tiles : [tiles[0] as Tile, tiles.at(-1) as Tile]
  for (const tile of drawn) {
    const { x, y } = centre(tile)
    const lettering = {
      text: String(tile.number),
      at: point(x, y + (ASCENT - DESCENT) / 2 + 0.5),
      anchor: 'middle' as const,
    }
    canvas.placeText('tile-number', [{ lettering }], view.box)
  }
  // In smaller frames the path would be an unreadable haze of dots.
  if (cell < 18) return
  const steps = tiles.slice(1).map((to, at): Segment => ({ from: centre(tiles[at] as Tile), to: centre(to) }))
  const room = numbered ? widest / 2 + 4 : 2
  for (const { from, to } of steps) {
    const far = Math.hypot(to.x - from.x, to.y - from.y)
    const up = Math.abs(to.y - from.y) > Math.abs(to.x - from.x) ? 10 : room
    if (far < 2 * up + 8) continue
    const share = up / far
    const start = point(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share)
    const end = point(to.x - (to.x - from.x) * share, to.y - (to.y - from.y) * share)
    canvas.lines('dotted', 'order', [{ from: start, to: end }])
    canvas.lines('thin', 'order-head', arrowhead(start, end))
  }
}
