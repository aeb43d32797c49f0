import { planTiles } from '../../functions/camera/tile-plan.ts'
import type { DrawingInputs } from '../canvas/drawing-options.ts'
import type { Metres } from '../canvas/measures.ts'
import { numberReader } from '../canvas/number-inputs.ts'
import { TILES_WORDS as WORDS } from './words.ts'

/** A frame, with its centre measured from the left and lower edges of the original. */
export interface Tile {
  /** Its place in the order of work, counted from 1. */
  readonly number: number
  readonly column: number
  readonly row: number
  readonly x: Metres
  readonly y: Metres
}

/** An original with the frames that cover it. */
export interface TileLayout {
  readonly width: Metres
  readonly height: Metres
  /** Margin around the original that the frames also cover. */
  readonly border: Metres
  /** Size of a frame as it is turned. */
  readonly frameWidth: Metres
  readonly frameHeight: Metres
  readonly turned: boolean
  /** Centres of the columns from the left edge, of the rows from the lower edge, the uppermost first. */
  readonly columns: readonly Metres[]
  readonly rows: readonly Metres[]
  /** Overlap of neighbours; undefined for a single column or row. */
  readonly overlapAcross: Metres | undefined
  readonly overlapDown: Metres | undefined
  readonly tiles: readonly Tile[]
  readonly order: 'back and forth' | 'row by row'
  readonly moves: 'camera' | 'board'
}

const MOST = 2000
const FARTHEST = 1000

/** Lays out the frames; undefined if that is impossible, with the reason as an omission. */
export function readTiles(
  inputs: DrawingInputs,
  omissions: string[],
  show: (metres: number) => string,
): TileLayout | undefined {
  const read = numberReader(omissions, show)
  const width = read.positive(inputs.original_width, WORDS.originalWidth, FARTHEST)
  const height = read.positive(inputs.original_height, WORDS.originalHeight, FARTHEST)
  const fieldWidth = read.positive(inputs.field_width, WORDS.frameWidth, FARTHEST)
  const fieldHeight = read.positive(inputs.field_height, WORDS.frameHeight, FARTHEST)
  const border = inputs.border === 0 ? 0 : (read.positive(inputs.border, WORDS.border, FARTHEST) ?? 0)
  const overlap = inputs.overlap === 0 ? 0 : (read.positive(inputs.overlap, WORDS.overlap, FARTHEST) ?? 0)
  if (width === undefined || height === undefined) return undefined
  if (fieldWidth === undefined || fieldHeight === undefined) return undefined
  if (overlap >= Math.min(fieldWidth, fieldHeight)) {
    omissions.push(WORDS.overlapTooLarge(show(overlap), show(Math.min(fieldWidth, fieldHeight))))
    return undefined
  }
  const [wide, high] = [width + 2 * border, height + 2 * border]
  const { across, down, count, turned } = planTiles(wide, high, fieldWidth, fieldHeight, overlap, inputs.turn !== false)
  if (!(count <= MOST)) {
    omissions.push(WORDS.tooMany(MOST))
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

/** Centres with the first and last frame flush with the edges and even steps between; a single one in the middle. */
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
