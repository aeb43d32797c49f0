import { listText } from '../../units/plural.ts'
import { withoutUnit } from '../canvas/text-figures.ts'
import type { Table } from '../canvas/tree.ts'
import { CANVAS_WORDS as SHARED } from '../canvas/words.ts'
import type { TileLayout } from './tile-layout.ts'
import { TILES_WORDS as WORDS } from './words.ts'

type Show = (metres: number) => string

const unitOf = (show: Show): string => show(1).replace(/^\S+ /, '')

/** The description of the layout: every figure it shows in sentences. */
export function describeTiles(layout: TileLayout, show: Show): string {
  const { columns, rows, tiles, overlapAcross, overlapDown, turned, order, moves, border } = layout
  const size = (width: number, height: number): string => SHARED.times(withoutUnit(show(width)), show(height))
  const figures = (lengths: readonly number[]): string => lengths.map((one) => withoutUnit(show(one))).join(', ')
  const frame = size(layout.frameWidth, layout.frameHeight)
  const original = WORDS.originalIs(size(layout.width, layout.height), border > 0 ? show(border) : undefined)
  if (tiles.length === 1) return WORDS.coveredByOne(original, WORDS.frameOf(frame) + (turned ? WORDS.turned : ''))
  const overlaps = [
    ...(overlapAcross === undefined ? [] : [WORDS.sideBySide(show(overlapAcross))]),
    ...(overlapDown === undefined ? [] : [WORDS.oneBelow(show(overlapDown))]),
  ]
  return [
    WORDS.coveredBy(original, tiles.length, frame, turned, columns.length, rows.length),
    WORDS.overlaps(listText(overlaps)),
    WORDS.centres(figures(columns), figures(rows), unitOf(show)),
    order === 'back and forth' ? WORDS.orderBackAndForth : WORDS.orderRowByRow,
    ...(moves === 'board' ? [WORDS.boardMoves] : []),
  ].join(' ')
}

/** The position of the camera, or the shift of the board, for each frame. */
export function tileTable(layout: TileLayout, show: Show): Table {
  const [first] = layout.tiles
  const unit = unitOf(show)
  const figure = (metres: number): string => withoutUnit(show(Math.abs(metres) < 1e-9 ? 0 : metres))
  const board = layout.moves === 'board'
  return {
    head: board ? WORDS.boardTable(unit) : WORDS.cameraTable(unit),
    rows: layout.tiles.map(({ number, x, y }) => [
      String(number),
      figure(board ? (first?.x ?? 0) - x : x),
      figure(board ? (first?.y ?? 0) - y : y),
    ]),
  }
}
