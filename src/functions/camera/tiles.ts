import { type FunctionRecord, list, number, Refusal, record, YES_NO } from '../../language/index.ts'
import { LENGTH, NONE } from '../../units/index.ts'
import { length, PLAIN, parameter, positiveLength } from '../maths/parameters.ts'
import { ceilGuarded, inMillimetres } from './lens-parameters.ts'
import { planTiles } from './tile-plan.ts'

const ROW = [
  positiveLength('span', 'side of the whole original, along the row of tiles'),
  positiveLength('tile', 'what one frame covers along that side'),
  length('overlap', 'least overlap of neighbouring tiles'),
] as const

const MOST_TILES = 10_000

const TILE_PLAN = record('tile plan', { across: PLAIN, down: PLAIN, count: PLAIN, turned: YES_NO })

function tileCount(span: number, tile: number, overlap: number): number {
  if (overlap >= tile)
    throw new Refusal(
      `“overlap” of ${inMillimetres(overlap)} is not below the tile of ${inMillimetres(tile)}, so the tiles never advance. Make the overlap smaller than the tile.`,
      'overlap',
    )
  const count = Math.max(1, ceilGuarded((span - overlap) / (tile - overlap)))
  if (count > MOST_TILES)
    throw new Refusal(
      `“overlap” is so near the tile that a row has ${count.toPrecision(3)} tiles, more than the ${MOST_TILES} counted here. Make the overlap smaller or the tile larger.`,
      'overlap',
    )
  return count
}

/** An original taken in overlapping frames. */
export const TILES: readonly FunctionRecord[] = [
  {
    name: 'tile_count',
    subject: 'sampling',
    about: 'How many overlapping frames in a row cover a side of the original.',
    also: ['stitching', 'mosaic', 'panorama', 'overlap'],
    parameters: ROW,
    result: number(NONE),
    formula: 'max(1, ⌈(span − overlap)/(tile − overlap)⌉)',
    source: 'derived: n tiles with n − 1 overlaps reach n (tile − overlap) + overlap',
    examples: [
      { formula: 'tile_count(2000 mm, 900 mm, 800 mm)', gives: '12' },
      { formula: 'tile_count(1000 mm, 450 mm, 100 mm)', gives: '3' },
      { formula: 'tile_count(300 mm, 450 mm, 100 mm)', gives: '1' },
      { formula: 'tile_count(2000 mm, 100 mm, 100 mm)', refuses: 'smaller than the tile' },
    ],
    compute: tileCount,
  },
  {
    name: 'tile_positions',
    subject: 'sampling',
    about: 'Centres of the tiles, measured from the left edge of the original.',
    also: ['stitching', 'mosaic'],
    parameters: ROW,
    result: list(number(LENGTH)),
    formula: 'first and last tile flush with the edges, the others evenly between; a single tile at span/2',
    source: 'derived: tile_count tiles spread evenly, so that each overlap is at least the required one',
    examples: [
      { formula: 'tile_positions(1000 mm, 450 mm, 100 mm)', gives: '{225 mm, 500 mm, 775 mm}' },
      { formula: 'tile_positions(300 mm, 450 mm, 100 mm)', gives: '{150 mm}' },
      { formula: 'tile_positions(2000 mm, 100 mm, 100 mm)', refuses: 'smaller than the tile' },
    ],
    compute: (span: number, tile: number, overlap: number) => {
      const count = tileCount(span, tile, overlap)
      if (count === 1) return [span / 2]
      return Array.from({ length: count }, (_, i) => tile / 2 + ((span - tile) * i) / (count - 1))
    },
  },
  {
    name: 'tile_plan',
    subject: 'run',
    about: 'The fewest overlapping frames that cover an original.',
    also: ['stitching', 'mosaic', 'overlap', 'panorama'],
    parameters: [
      positiveLength('width', 'of the original'),
      positiveLength('height', 'of the original'),
      positiveLength('field_width', 'of one frame at the original'),
      positiveLength('field_height', 'of one frame at the original'),
      length('overlap', 'of neighbouring frames'),
      parameter('turn', YES_NO, 'the frame may be turned by 90°', { default: 'yes' }),
    ],
    result: TILE_PLAN,
    formula: 'across and down by tile_count; the way round with the smaller product',
    source: 'derived: n tiles cover n (tile − overlap) + overlap',
    validity: 'All frames the same way round; where both take as many frames it is not turned.',
    examples: [
      // 2 m × 1 m by 0.9 × 0.6 m, overlap 0.1: 3 × 2 = 6 frames; turned, 4 × 2 = 8.
      { formula: 'tile_plan(2 m, 1 m, 0.9 m, 0.6 m, 0.1 m).count', gives: '6' },
      { formula: 'tile_plan(1 m, 2 m, 0.9 m, 0.6 m, 0.1 m).turned', gives: 'yes' },
      { formula: 'tile_plan(1 m, 2 m, 0.9 m, 0.6 m, 0.1 m, turn: no).count', gives: '8' },
      { formula: 'tile_plan(2 m, 1 m, 0.9 m, 0.6 m, 0.6 m)', refuses: 'overlap' },
    ],
    compute: (
      width: number,
      height: number,
      fieldWidth: number,
      fieldHeight: number,
      overlap: number,
      turn: boolean,
    ) => {
      if (overlap >= Math.min(fieldWidth, fieldHeight))
        throw new Refusal(
          '“overlap” is as large as the frame’s shorter side, so the tiles never advance. Give less overlap or a larger field.',
          'overlap',
        )
      return { ...planTiles(width, height, fieldWidth, fieldHeight, overlap, turn) }
    },
  },
]
