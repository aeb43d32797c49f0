import { type FunctionRecord, list, number, Refusal } from '../language/index.ts'
import { LENGTH, NONE, PIXEL, PIXEL_PITCH, SAMPLING as PIXELS_PER_LENGTH, RECIPROCAL_LENGTH } from '../units/index.ts'
import { ceilGuarded, inMillimetres } from './lens-parameters.ts'
import { length, POSITIVE, parameter, positiveLength } from './parameters.ts'

const PIXELS = parameter('pixels', number(PIXEL), 'pixels along that side', { range: POSITIVE })
const SAMPLING_AT = parameter('sampling', number(PIXELS_PER_LENGTH), 'pixels per length at the original', {
  range: POSITIVE,
})
const TILES = [
  positiveLength('span', 'side of the whole original, along the row of tiles'),
  positiveLength('tile', 'what one frame takes in along that side'),
  length('overlap', 'least overlap of neighbouring tiles'),
] as const

const MOST_TILES = 10_000
const RULES_OF_SAMPLING = 'definition of sampling rate, as ISO 19264-1 and the FADGI guidelines use it'

function tileCount(span: number, tile: number, overlap: number): number {
  if (overlap >= tile)
    throw new Refusal(
      `Tiles of ${inMillimetres(tile)} that overlap by ${inMillimetres(overlap)} never get on. Make the overlap smaller than the tile.`,
      'overlap',
    )
  const count = Math.max(1, ceilGuarded((span - overlap) / (tile - overlap)))
  if (count > MOST_TILES)
    throw new Refusal(
      `That would take ${count.toPrecision(3)} tiles in a row, beyond the ${MOST_TILES} counted here. Make the overlap smaller or the tile larger.`,
      'overlap',
    )
  return count
}

/** Section 4 of the trade: is it sharp enough? */
export const SAMPLING: readonly FunctionRecord[] = [
  {
    name: 'sampling',
    subject: 'sampling',
    about: 'Pixels per length at the original.',
    parameters: [PIXELS, positiveLength('field', 'what those pixels take in at the original')],
    result: number(PIXELS_PER_LENGTH),
    formula: 'pixels/field',
    source: RULES_OF_SAMPLING,
    cautions: ['A claimed rate: what the lens and the focus leave of it is for a target to show.'],
    examples: [
      { formula: 'sampling(6000 px, 508 mm)', gives: '300 ppi' },
      { formula: 'sampling(6000 px, 0 mm)', refuses: 'field' },
    ],
    compute: (pixels: number, field: number) => pixels / field,
  },
  {
    name: 'pixels_needed',
    subject: 'sampling',
    about: 'Pixels that a size at the original takes, not rounded.',
    parameters: [positiveLength('size', 'size at the original'), SAMPLING_AT],
    result: number(PIXEL),
    formula: 'size × sampling',
    source: RULES_OF_SAMPLING,
    examples: [
      { formula: 'pixels_needed(508 mm, 300 ppi)', gives: '6000 px' },
      { formula: 'pixels_needed(508 mm, 0 ppi)', refuses: 'sampling' },
    ],
    compute: (size: number, sampling: number) => size * sampling,
  },
  {
    name: 'sampling_limit',
    subject: 'sampling',
    about: 'Finest pattern the sampling can carry, in line pairs per length at the original.',
    parameters: [SAMPLING_AT],
    result: number(RECIPROCAL_LENGTH),
    formula: 'sampling/2 (two pixels a line pair)',
    source: 'sampling theorem (Nyquist, Shannon)',
    validity: 'Along rows and columns. Compare with diffraction at the original, m/(λ Nₑ).',
    examples: [
      { formula: 'sampling_limit(508 ppi)', gives: '10 [lp/mm]' },
      { formula: 'sampling_limit(0 ppi)', refuses: 'sampling' },
    ],
    compute: (sampling: number) => sampling / 2,
  },
  {
    name: 'pixel_pitch',
    subject: 'sampling',
    about: 'Length of one pixel on the sensor.',
    parameters: [positiveLength('sensor_width', 'side of the sensor'), PIXELS],
    result: number(PIXEL_PITCH),
    formula: 'width/pixels',
    source: 'definition',
    examples: [
      { formula: 'pixel_pitch(36 mm, 6000 px)', gives: '6 [µm/px]' },
      { formula: 'pixel_pitch(36 mm, 0 px)', refuses: 'pixels' },
    ],
    compute: (width: number, pixels: number) => width / pixels,
  },
  {
    name: 'enlargement_sampling',
    subject: 'sampling',
    about: 'Pixels per length left when the image is printed larger than the original.',
    parameters: [
      SAMPLING_AT,
      parameter('enlargement', number(NONE), 'print size over original size', { range: POSITIVE }),
    ],
    result: number(PIXELS_PER_LENGTH),
    formula: 'sampling/enlargement',
    source: 'derived: the same pixels over a longer way',
    examples: [
      { formula: 'enlargement_sampling(600 ppi, 2)', gives: '300 ppi' },
      { formula: 'enlargement_sampling(600 ppi, 0)', refuses: 'enlargement' },
    ],
    compute: (sampling: number, enlargement: number) => sampling / enlargement,
  },
  {
    name: 'tile_count',
    subject: 'sampling',
    about: 'How many overlapping frames in a row cover a side of the original.',
    parameters: TILES,
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
    parameters: TILES,
    result: list(number(LENGTH)),
    formula: 'first and last tile flush with the edges, the others evenly between; a single tile at span/2',
    source: 'derived: tile_count tiles spread evenly, so that each overlap is at least the one asked',
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
]
