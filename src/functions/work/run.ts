import { type FunctionRecord, list, number, Refusal, record, TEXT, type Type, YES_NO } from '../../language/index.ts'
import { DATA, ENERGY, NONE, PIXEL, PIXEL_PITCH, SAMPLING, TIME } from '../../units/index.ts'
import {
  A_LENGTH,
  COUNT,
  length,
  NOT_NEGATIVE,
  PLAIN,
  PLAIN_NUMBERS,
  POSITIVE,
  parameter,
  positiveLength,
  RATIO,
  SHARE,
} from '../maths/parameters.ts'
import { allowedFor, fewestSetups } from './setups.ts'

const SETUPS = record('set-ups', {
  count: PLAIN,
  magnifications: list(RATIO),
  originals: PLAIN_NUMBERS,
  setup_of: PLAIN_NUMBERS,
})
const COST = record('cost', { amount: PLAIN, currency: TEXT })

const WHOLE: { least: number; whole: true } = { least: 0, whole: true }
const HOUR = 3600
const CLASSIC_TIFF = 8 * 2 ** 32

const channels = parameter('channels', PLAIN, 'colour channels: 3 for RGB', { range: COUNT })
const bits = parameter('bits', { kind: 'any' }, 'bits per channel: 16, or 16 bit', { range: POSITIVE })

/** Bits as a plain count or as an amount of data; anything else is no count of bits. */
function needBits(args: readonly Type[], place: number): void {
  const type = args[place]
  if (type?.kind === 'number' && type.dimension !== NONE && type.dimension !== DATA)
    throw new Refusal('“bits” is of another kind. Give a plain number or an amount of data: 16, or 16 bit.', 'bits')
}

/** A whole number of times, rounded down, guarding against 99.99999999999999. */
const wholeTimes = (times: number): number => {
  const whole = Math.round(times)
  return Math.abs(times - whole) < 1e-9 * Math.max(1, whole) ? whole : Math.floor(times)
}

function needCurrency(currency: string): void {
  if (!/^[A-Z]{3}$/.test(currency))
    throw new Refusal(
      '“currency” is not a code of ISO 4217. Give its three capital letters: "EUR", "USD", "JPY".',
      'currency',
    )
}

interface Cost {
  readonly amount: number
  readonly currency: string
}

const CURRENCY = parameter('currency', TEXT, 'three-letter code of ISO 4217: "EUR"')

/** One value for all, or one each. */
function eachOf(values: readonly number[], count: number, argument: string): (i: number) => number {
  if (values.length === 1) return () => values[0] as number
  if (values.length !== count)
    throw new Refusal(
      `“${argument}” has ${values.length} values for ${count} originals. Give one for all, or one for each.`,
      argument,
    )
  return (i) => values[i] as number
}

/** The run. */
export const RUN: readonly FunctionRecord[] = [
  {
    name: 'frame_data',
    subject: 'run',
    about: 'How much data one frame holds, before compression.',
    also: ['file size', 'megabytes'],
    parameters: [
      parameter('width', number(PIXEL), 'of the frame', { range: POSITIVE }),
      parameter('height', number(PIXEL), 'of the frame', { range: POSITIVE }),
      channels,
      bits,
    ],
    result: number(DATA),
    formula: 'width × height × channels × bits',
    source: 'derived: a count of samples',
    validity: 'Before compression, without metadata. A raw frame holds one channel.',
    examples: [
      { formula: 'frame_data(8000 px, 6000 px, 3, 16)', gives: '288 MB' },
      { formula: 'frame_data(8000 px, 6000 px, 3, 16 bit)', gives: '288 MB' },
      { formula: 'frame_data(8000 px, 6000 px, 2.5, 16)', refuses: 'channels' },
    ],
    compute: (width: number, height: number, count: number, depth: number) => width * height * count * depth,
    computeFor: (args) => (width: number, height: number, count: number, depth: number) => {
      needBits(args, 3)
      return width * height * count * depth
    },
  },
  {
    name: 'run_data',
    subject: 'run',
    about: 'How much data a run produces.',
    also: ['storage', 'disk space', 'file size'],
    parameters: [
      parameter('frames', PLAIN, 'frames saved', { range: WHOLE }),
      parameter('frame_data', number(DATA), 'of one frame', { range: NOT_NEGATIVE }),
      parameter('copies', PLAIN, 'copies saved, the first included', { default: '1', range: COUNT }),
    ],
    result: number(DATA),
    formula: 'frames × frame × copies',
    source: 'derived: a product',
    examples: [
      { formula: 'run_data(500, 288 MB, 3)', gives: '432 GB' },
      { formula: 'run_data(500, 288 MB, 0)', refuses: 'copies' },
    ],
    compute: (frames: number, data: number, copies: number) => frames * data * copies,
  },
  {
    name: 'run_time',
    subject: 'run',
    about: 'How long a run takes.',
    also: ['duration', 'how long', 'throughput'],
    parameters: [
      parameter('frames', PLAIN, 'frames to take', { range: WHOLE }),
      parameter('per_frame', number(TIME), 'handling included', { range: NOT_NEGATIVE }),
      parameter('setups', PLAIN, 'changes of the set-up', { default: '0', range: WHOLE }),
      parameter('per_setup', number(TIME), 'for each change', { default: '0 s', range: NOT_NEGATIVE }),
      parameter('breaks', number(TIME), 'total time of the breaks', { default: '0 s', range: NOT_NEGATIVE }),
    ],
    result: number(TIME),
    formula: 'frames t_f + setups t_s + breaks',
    source: 'derived: a sum',
    examples: [
      { formula: 'run_time(300, 40 s, setups: 4, per_setup: 15 min, breaks: 1 h)', gives: '320 min' },
      { formula: 'run_time(300, -1 s)', refuses: 'per_frame' },
    ],
    compute: (frames: number, perFrame: number, setups: number, perSetup: number, breaks: number) =>
      frames * perFrame + setups * perSetup + breaks,
  },
  {
    name: 'setups_for',
    subject: 'run',
    about: 'The fewest set-ups that take all originals, and which original belongs to which.',
    parameters: [
      parameter('widths', list(A_LENGTH), 'of the originals', { range: POSITIVE }),
      parameter('heights', list(A_LENGTH), 'of the originals, in the same order', { range: POSITIVE }),
      parameter('samplings', list(number(SAMPLING)), 'required: one for all, or one each', { range: POSITIVE }),
      positiveLength('sensor_width', 'width of the sensor'),
      positiveLength('sensor_height', 'height of the sensor'),
      parameter('pixel_pitch', number(PIXEL_PITCH), 'of the sensor', { range: POSITIVE }),
      length('border', 'left free all around the original', { default: '0 mm' }),
      parameter('turn', YES_NO, 'originals may be turned by 90°', { default: 'yes' }),
      parameter('classes', PLAIN_NUMBERS, 'exposure classes, numbered: one for all, or one each', { default: '{1}' }),
    ],
    result: SETUPS,
    formula:
      'each original allows m from sampling × pitch to fit_magnification; in a class, by ascending upper end: set up there, take every original whose lower end is at or below, repeat',
    source: 'derived: stabbing intervals with the fewest points',
    validity:
      'Originals taken whole in one frame. `originals` is how many each set-up takes, `setup_of` the set-up of each original, counted from 1.',
    examples: [
      // 300 ppi at 5 µm needs m ≥ 0.0591. 360 × 240 mm fits at 0.1, 450 × 300 mm at 0.08: both at 0.08.
      {
        formula: 'setups_for({360 mm, 450 mm}, {240 mm, 300 mm}, {300 ppi}, 36 mm, 24 mm, 5 [um/px]).magnifications',
        gives: '{0.08}',
      },
      // At 450 ppi the first needs m ≥ 0.0886, more than the second allows.
      {
        formula: 'setups_for({360 mm, 450 mm}, {240 mm, 300 mm}, {450 ppi, 300 ppi}, 36 mm, 24 mm, 5 [um/px]).setup_of',
        gives: '{2, 1}',
      },
      {
        formula: 'setups_for({900 mm}, {600 mm}, {300 ppi}, 36 mm, 24 mm, 5 [um/px])',
        refuses: 'tile_plan',
      },
    ],
    compute: (
      widths: readonly number[],
      heights: readonly number[],
      samplings: readonly number[],
      sensorWidth: number,
      sensorHeight: number,
      pixelPitch: number,
      border: number,
      turn: boolean,
      classes: readonly number[],
    ) => {
      if (widths.length === 0)
        throw new Refusal('“widths” is empty. List the width of at least one original.', 'widths')
      if (widths.length !== heights.length)
        throw new Refusal(
          `“heights” has ${heights.length} values and “widths” ${widths.length}. Give one of each for every original.`,
          'heights',
        )
      const sampling = eachOf(samplings, widths.length, 'samplings')
      const exposureClass = eachOf(classes, widths.length, 'classes')
      const camera = { sensorWidth, sensorHeight, pixelPitch, border, turn }
      const { setups, unfit } = fewestSetups(
        widths.map((width, i) => allowedFor(width, heights[i] as number, sampling(i), exposureClass(i), camera)),
      )
      if (unfit.length > 0)
        throw new Refusal(
          `Original ${(unfit[0] as number) + 1}${unfit.length > 1 ? ` and ${unfit.length - 1} more` : ''} does not reach its sampling in one frame. Take it in tiles (tile_plan), or ask for less.`,
          'samplings',
        )
      const setupOf = new Array<number>(widths.length)
      setups.forEach(({ originals }, k) => {
        for (const i of originals) setupOf[i] = k + 1
      })
      return {
        count: setups.length,
        magnifications: setups.map(({ magnification }) => magnification),
        originals: setups.map(({ originals }) => originals.length),
        setup_of: setupOf,
      }
    },
  },
  {
    name: 'stitched_size',
    subject: 'run',
    about: 'How much data the whole original holds at a sampling.',
    also: ['file size', 'mosaic'],
    parameters: [
      positiveLength('width', 'of the original'),
      positiveLength('height', 'of the original'),
      parameter('sampling', number(SAMPLING), 'of the stitched picture', { range: POSITIVE }),
      channels,
      bits,
    ],
    result: number(DATA),
    formula: 'width × height × sampling² × channels × bits',
    source: 'derived: a count of samples',
    validity:
      'Before compression. Classic TIFF stops at 4 GiB; 16-bit RGB at 400 ppi reaches it at about 1.7 m square.',
    examples: [
      // 1 m at 254 ppi is 10 000 px; 10⁸ px of 3 bytes.
      { formula: 'stitched_size(1 m, 1 m, 254 ppi, 3, 8)', gives: '300 MB' },
      { formula: 'stitched_size(1 m, 1 m, 0 ppi, 3, 8)', refuses: 'sampling' },
    ],
    compute: stitchedSize,
    computeFor: (args) => (width: number, height: number, sampling: number, count: number, depth: number) => {
      needBits(args, 4)
      return stitchedSize(width, height, sampling, count, depth)
    },
    advise: (width: number, height: number, sampling: number, count: number, depth: number) =>
      stitchedSize(width, height, sampling, count, depth) >= CLASSIC_TIFF
        ? 'Classic TIFF stops at 4 GiB: save as BigTIFF, in parts, or at fewer bits.'
        : undefined,
  },
  {
    name: 'battery_pops',
    subject: 'run',
    about: 'How many flashes a battery gives.',
    also: ['flash battery'],
    parameters: [
      parameter('battery', number(ENERGY), 'its energy: 60 Wh', { range: NOT_NEGATIVE }),
      parameter('pop_energy', number(ENERGY), 'of one flash, as set', { range: POSITIVE }),
      parameter('efficiency', PLAIN, 'share that reaches the flash capacitors', {
        default: '1',
        range: { above: 0, most: 1 },
      }),
    ],
    result: PLAIN,
    formula: 'floor(battery × efficiency/pop)',
    source: 'derived: energy in over energy out',
    validity:
      'Without modelling lamp or standby. Find the efficiency from the unit’s own count: pops × pop energy/battery energy.',
    examples: [
      { formula: 'battery_pops(60 Wh, 300 J, 0.5)', gives: '360' },
      { formula: 'battery_pops(60 Wh, 0 J)', refuses: 'pop_energy' },
    ],
    compute: (battery: number, pop: number, efficiency: number) => wholeTimes((battery * efficiency) / pop),
  },
  {
    name: 'card_frames',
    subject: 'run',
    about: 'How many frames fit on a card.',
    parameters: [
      parameter('card', number(DATA), 'its capacity', { range: NOT_NEGATIVE }),
      parameter('frame_data', number(DATA), 'of one frame as written', { range: POSITIVE }),
      parameter('kept_free', PLAIN, 'share left free', { default: '0', range: SHARE }),
    ],
    result: PLAIN,
    formula: 'floor(card (1 − free)/frame)',
    source: 'derived: a quotient',
    validity: 'A card’s gigabytes are powers of ten; compressed frames vary.',
    examples: [
      { formula: 'card_frames(64 GB, 100 MB, 10 %)', gives: '576' },
      { formula: 'card_frames(64 GB, 0 MB)', refuses: 'frame_data' },
    ],
    compute: (card: number, frame: number, free: number) => wholeTimes((card * (1 - free)) / frame),
  },
  {
    name: 'cost_line',
    subject: 'run',
    about: 'One line of a cost estimate: a number of things at a price each.',
    parameters: [
      parameter('quantity', PLAIN, 'how many', { range: NOT_NEGATIVE }),
      parameter('unit_price', PLAIN, 'the price of one, in the currency'),
      CURRENCY,
    ],
    result: COST,
    formula: 'quantity × price',
    source: 'derived: a product; currency codes of ISO 4217',
    validity: 'Not rounded.',
    examples: [
      { formula: 'cost_line(120, 2.5, "EUR").amount', gives: '300' },
      { formula: 'cost_line(120, 2.5, "Euro")', refuses: 'ISO 4217' },
    ],
    compute: (quantity: number, price: number, currency: string) => {
      needCurrency(currency)
      return { amount: quantity * price, currency }
    },
  },
  {
    name: 'cost_time',
    subject: 'run',
    about: 'One line of a cost estimate: time at an hourly rate.',
    parameters: [
      parameter('time', number(TIME), 'spent', { range: NOT_NEGATIVE }),
      parameter('per_hour', PLAIN, 'the price of an hour, in the currency'),
      CURRENCY,
    ],
    result: COST,
    formula: 'hours × rate',
    source: 'derived: a product; currency codes of ISO 4217',
    validity: 'Not rounded.',
    examples: [
      { formula: 'cost_time(90 min, 40, "EUR").amount', gives: '60' },
      { formula: 'cost_time(90 min, 40, "eur")', refuses: 'ISO 4217' },
    ],
    compute: (time: number, rate: number, currency: string) => {
      needCurrency(currency)
      return { amount: (time / HOUR) * rate, currency }
    },
  },
  {
    name: 'cost_total',
    subject: 'run',
    about: 'The sum of cost lines in one currency.',
    also: ['price', 'quote', 'budget'],
    parameters: [parameter('lines', list(COST), 'the lines, in braces')],
    result: COST,
    formula: 'Σ amounts',
    source: 'derived: a sum',
    examples: [
      { formula: 'cost_total({cost_line(2, 10, "EUR"), cost_time(1 h, 40, "EUR")}).amount', gives: '60' },
      { formula: 'cost_total({cost_line(2, 10, "EUR"), cost_line(1, 40, "USD")})', refuses: 'currencies' },
    ],
    compute: (lines: readonly Cost[]) => {
      const currency = lines[0]?.currency
      if (currency === undefined) throw new Refusal('“lines” is empty. List at least one cost.', 'lines')
      const other = lines.find((line) => line.currency !== currency)
      if (other)
        throw new Refusal(
          `“lines” are in two currencies, ${currency} and ${other.currency}. Convert them into one first, at a rate you choose.`,
          'lines',
        )
      return { amount: lines.reduce((sum, { amount }) => sum + amount, 0), currency }
    },
  },
]

function stitchedSize(width: number, height: number, sampling: number, count: number, depth: number): number {
  return width * sampling * (height * sampling) * count * depth
}
