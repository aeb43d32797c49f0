import { planTiles } from '../../functions/camera/tile-plan.ts'
import type { DrawingInputs } from '../canvas/drawing-options.ts'
import { numberReader } from '../canvas/number-inputs.ts'

/** One frame: where its centre stands, in metres from the left and lower edges of the original. */
export interface Tile {
  /** In the order they are taken, from 1. */
  readonly number: number
  readonly column: number
  readonly row: number
  readonly x: number
  readonly y: number
}

/** An original with the frames that cover it. */
export interface TileLayout {
  readonly width: number
  readonly height: number
  /** Taken in all round it. */
  readonly border: number
  /** Of a frame as it lies. */
  readonly frameWidth: number
  readonly frameHeight: number
  readonly turned: boolean
  /** Centres of the columns from the left edge, of the rows from the lower edge, the uppermost first. */
  readonly columns: readonly number[]
  readonly rows: readonly number[]
  /** What neighbours have in common; undefined for a single column or row. */
  readonly overlapAcross: number | undefined
  readonly overlapDown: number | undefined
  readonly tiles: readonly Tile[]
  readonly order: 'back and forth' | 'row by row'
  readonly moves: 'camera' | 'board'
}

const MOST = 2000
const FARTHEST = 1000

/** Undefined where there is nothing to lay out; then why stands in `cannot`. */
export function readTiles(
  inputs: DrawingInputs,
  omissions: string[],
  show: (metres: number) => string,
): TileLayout | undefined {
  const read = numberReader(omissions, show)
  const width = read.positive(inputs.original_width, 'The width of the original', FARTHEST)
  const height = read.positive(inputs.original_height, 'The height of the original', FARTHEST)
  const fieldWidth = read.positive(inputs.field_width, 'The width of a frame', FARTHEST)
  const fieldHeight = read.positive(inputs.field_height, 'The height of a frame', FARTHEST)
  const border = inputs.border === 0 ? 0 : (read.positive(inputs.border, 'The border', FARTHEST) ?? 0)
  const overlap = inputs.overlap === 0 ? 0 : (read.positive(inputs.overlap, 'The overlap', FARTHEST) ?? 0)
  if (width === undefined || height === undefined) return undefined
  if (fieldWidth === undefined || fieldHeight === undefined) return undefined
  if (overlap >= Math.min(fieldWidth, fieldHeight)) {
    omissions.push(
      `No frames are laid out: an overlap of ${show(overlap)} is no less than the shorter side of a frame, ${show(Math.min(fieldWidth, fieldHeight))}.`,
    )
    return undefined
  }
  const [wide, high] = [width + 2 * border, height + 2 * border]
  const { across, down, count, turned } = planTiles(wide, high, fieldWidth, fieldHeight, overlap, inputs.turn !== false)
  if (!(count <= MOST)) {
    omissions.push(`No frames are laid out: it would take more than ${MOST}.`)
    return undefined
  }
  const [frameWidth, frameHeight] = turned ? [fieldHeight, fieldWidth] : [fieldWidth, fieldHeight]
  const columns = centres(wide, frameWidth, across).map((x) => x - border)
  const rows = centres(high, frameHeight, down)
    .map((y) => y - border)
    .reverse()
  const order = inputs.row_order === true ? 'row by row' : 'back and forth'
  return {
    width,
    height,
    border,
    frameWidth,
    frameHeight,
    turned,
    columns,
    rows,
    overlapAcross: across > 1 ? frameWidth - (wide - frameWidth) / (across - 1) : undefined,
    overlapDown: down > 1 ? frameHeight - (high - frameHeight) / (down - 1) : undefined,
    tiles: inOrder(columns, rows, order),
    order,
    moves: inputs.moves_board === true ? 'board' : 'camera',
  }
}

/** First and last flush with the edges, the others evenly between; a single one in the middle. */
const centres = (span: number, tile: number, count: number): number[] =>
  count === 1 ? [span / 2] : Array.from({ length: count }, (_, at) => tile / 2 + ((span - tile) * at) / (count - 1))

function inOrder(columns: readonly number[], rows: readonly number[], order: TileLayout['order']): readonly Tile[] {
  return rows.flatMap((y, row) =>
    columns.map((_, step) => {
      const column = order === 'back and forth' && row % 2 === 1 ? columns.length - 1 - step : step
      return { number: row * columns.length + step + 1, column, row, x: columns[column] as number, y }
    }),
  )
}
