import { series } from '../canvas/text-figures.ts'
import type { Table } from '../canvas/tree.ts'
import type { TileLayout } from './tile-layout.ts'

type Show = (metres: number) => string

const bare = (shown: string): string => shown.replace(/ \D+$/, '')
const size = (width: number, height: number, show: Show): string => `${bare(show(width))} × ${show(height)}`

/** The layout in sentences, with every figure it shows. */
export function describeTiles(layout: TileLayout, show: Show): string {
  const { columns, rows, tiles, overlapAcross, overlapDown, turned, order, moves } = layout
  const frame = `frame of ${size(layout.frameWidth, layout.frameHeight, show)}`
  const border = layout.border > 0 ? ` with ${show(layout.border)} round it` : ''
  const original = `The original, ${size(layout.width, layout.height, show)}${border}, is`
  if (tiles.length === 1)
    return `${original} taken whole in one ${frame}${turned ? ', turned' : ''}; its centre is that of the original.`
  const overlaps = [
    ...(overlapAcross === undefined ? [] : [`${show(overlapAcross)} side by side`]),
    ...(overlapDown === undefined ? [] : [`${show(overlapDown)} one below the other`]),
  ]
  const way =
    order === 'back and forth'
      ? 'back and forth: the first row from the left, the next from the right, and so on'
      : 'row by row, each from the left'
  return [
    `${original} taken in ${tiles.length} frames of ${size(layout.frameWidth, layout.frameHeight, show)}${turned ? ', turned' : ''}: ${columns.length} across, ${rows.length} down.`,
    `They overlap by ${series(overlaps)}; the overlaps are hatched.`,
    `Centres of the columns from the left edge of the original: ${columns.map((x) => bare(show(x))).join(', ')} ${unitOf(show)}; of the rows from its lower edge, the uppermost first: ${rows.map((y) => bare(show(y))).join(', ')} ${unitOf(show)}.`,
    `The order starts at the upper left and goes ${way}.`,
    ...(moves === 'board'
      ? [
          'The board moves under the camera: its way from the first frame is the other way about, to the left and up where the frame stands right and below.',
        ]
      : []),
  ].join(' ')
}

const unitOf = (show: Show): string => show(1).replace(/^\S+ /, '')

/** Where the camera stands, or how far the board has been moved, for each frame. */
export function tileTable(layout: TileLayout, show: Show): Table {
  const [first] = layout.tiles
  const unit = unitOf(show)
  const signed = (metres: number): string => bare(show(Math.abs(metres) < 1e-9 ? 0 : metres))
  const board = layout.moves === 'board'
  return {
    head: board
      ? ['Frame', `Board to the right, ${unit}`, `Board up, ${unit}`]
      : ['Frame', `From the left edge, ${unit}`, `From the lower edge, ${unit}`],
    rows: layout.tiles.map(({ number, x, y }) => [
      String(number),
      signed(board ? (first?.x ?? 0) - x : x),
      signed(board ? (first?.y ?? 0) - y : y),
    ]),
  }
}
