import { type FunctionRecord, Refusal } from '../../language/index.ts'
import { exactBehind, type MarkedScale, nearestMark } from '../../units/index.ts'
import { F_NUMBER, POSITIVE, parameter, SHUTTER } from './parameters.ts'

function markNear(scale: MarkedScale, value: number, argument: string): number {
  const mark = nearestMark(scale, value)
  if (!mark)
    throw new Refusal(
      scale === 'aperture'
        ? 'The marks are from f/0.5 to f/128. Give a value in that range.'
        : 'The marks are from 60 s to 1/8000 s. Give a value in that range.',
      argument,
    )
  return mark.nominal
}

function behindMark(scale: MarkedScale, marked: number): number {
  const exact = exactBehind(scale, marked)
  if (exact === undefined) {
    const near = nearestMark(scale, marked)
    throw new Refusal(
      `“marked” is not a third-stop mark.${near ? ` The nearest is ${near.text}.` : ''} A value that is not a mark is exact already: use it as it is.`,
      'marked',
    )
  }
  return exact
}

/** The rounded figures on lenses and cameras, and the exact values behind them. */
export const MARKS: readonly FunctionRecord[] = [
  {
    name: 'nearest_aperture_mark',
    subject: 'maths',
    about: 'The third-stop mark nearest to an f-number, by stops.',
    parameters: [parameter('aperture', F_NUMBER, 'an f-number', { range: POSITIVE })],
    result: F_NUMBER,
    formula: 'mark of the third of a stop nearest to 2 log₂ N',
    source: 'ISO 517',
    examples: [
      { formula: 'nearest_aperture_mark(5.8)', gives: 'f/5.6' },
      { formula: 'nearest_aperture_mark(1000)', refuses: 'f/128' },
    ],
    compute: (aperture: number) => markNear('aperture', aperture, 'aperture'),
  },
  {
    name: 'nearest_time_mark',
    subject: 'maths',
    about: 'The third-stop mark nearest to an exposure time, by stops.',
    parameters: [parameter('time', SHUTTER, 'an exposure time', { range: POSITIVE })],
    result: SHUTTER,
    formula: 'mark of the third of a stop nearest to log₂ t',
    source: 'ISO 516',
    examples: [
      { formula: 'nearest_time_mark(1/128 s)', gives: '1/125 s' },
      { formula: 'nearest_time_mark(1 h)', refuses: '60 s' },
    ],
    compute: (time: number) => markNear('time', time, 'time'),
  },
  {
    name: 'exact_aperture',
    subject: 'maths',
    about: 'The exact f-number behind a mark.',
    parameters: [parameter('marked', F_NUMBER, 'an f-number as marked on the lens', { range: POSITIVE })],
    result: F_NUMBER,
    formula: '2^(k/6), k thirds of a stop from f/1',
    source: 'ISO 517',
    examples: [
      { formula: 'exact_aperture(f/5.6)', gives: '5.65685424949238' },
      { formula: 'exact_aperture(f/6)', refuses: 'f/6.3' },
    ],
    compute: (marked: number) => behindMark('aperture', marked),
  },
  {
    name: 'exact_time',
    subject: 'maths',
    about: 'The exact exposure time behind a mark.',
    parameters: [parameter('marked', SHUTTER, 'a time as marked on the camera', { range: POSITIVE })],
    result: SHUTTER,
    formula: '2^(k/3) s, k thirds of a stop from 1 s',
    source: 'ISO 516',
    examples: [
      { formula: 'exact_time(1/125 s)', gives: '1/128 s' },
      { formula: 'exact_time(1/128 s)', refuses: '1/125 s' },
    ],
    compute: (marked: number) => behindMark('time', marked),
  },
]
