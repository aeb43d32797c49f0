import {
  type FunctionRecord,
  type ListType,
  list,
  type NumberType,
  number,
  PLAIN_NUMBER,
  Refusal,
  record,
  type Type,
} from '../../language/index.ts'
import { STOP, TIME } from '../../units/index.ts'
import { PLAIN_NUMBERS, parameter } from '../maths/parameters.ts'
import { deltaE2000 } from './colour-difference.ts'
import type { Lab } from './colour-space.ts'
import { fitLine, percentileOf } from './samples.ts'

const TIMES = parameter('time', list(number(TIME)), 'when each frame was taken, counted from the first')
const ROWS: Type = list(PLAIN_NUMBERS)

/** Refuses lists that do not pair up: a time a frame, two frames or more. */
function needPairs(time: readonly number[], rows: readonly unknown[], argument: string): void {
  if (time.length !== rows.length)
    throw new Refusal(
      `“time” has ${time.length} values and “${argument}” has ${rows.length}. Give one time for each frame.`,
      argument,
    )
  if (rows.length < 2)
    throw new Refusal(`“${argument}” has fewer than two frames. Take the card again later, then compare.`, argument)
}

/** Also refuses rows that are not of three figures. */
function needRows(time: readonly number[], rows: readonly (readonly number[])[], argument: string): void {
  needPairs(time, rows, argument)
  if (rows.some((row) => row.length !== 3))
    throw new Refusal(`“${argument}” must have three figures for each frame.`, argument)
}

/** The least-squares slope over time; none where all were taken at one time. */
const slopeOver = (time: readonly number[], values: readonly number[]): number =>
  time.some((one) => one !== time[0]) ? fitLine(time, values).slope : 0

/** The value farthest from zero, with its sign. */
const farthest = (values: readonly number[]): number =>
  values.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0)

/** What a card photographed again and again says of light and colour over the hours. */
export const OVER_TIME: readonly FunctionRecord[] = [
  {
    name: 'light_over_time',
    subject: 'colour',
    about: 'How the light has changed since the first of several frames of one card, and how fast.',
    also: ['drift', 'warm-up', 'stability', 'lamp ageing'],
    parameters: [TIMES, parameter('light', ROWS, 'linear red, green and blue of each frame, from a patch')],
    result: record('change of light', {
      changes: list(number(STOP)),
      greatest: number(STOP),
      last: number(STOP),
      rate: number(STOP.over(TIME)),
    }),
    formula:
      'changes: log₂(green/green of the first); greatest: the one farthest from zero; rate: least-squares slope over time',
    source: 'derived: a ratio in stops; least squares',
    validity: 'Frames of one card in one place, at one exposure and development, on linear light.',
    cautions: ['A change of aperture, time or development between frames looks like a change of light.'],
    examples: [
      {
        formula: 'light_over_time({0 h, 1 h, 2 h}, {{0.4, 0.4, 0.4}, {0.2, 0.2, 0.2}, {0.1, 0.1, 0.1}}).greatest',
        gives: '-2 stop',
      },
      {
        formula: 'light_over_time({0 h, 1 h, 2 h}, {{0.4, 0.4, 0.4}, {0.2, 0.2, 0.2}, {0.1, 0.1, 0.1}}).rate * 1 h',
        gives: '-1 stop',
        within: '1e-9 stop',
      },
      { formula: 'light_over_time({0 h}, {{0.4, 0.4, 0.4}}).greatest', refuses: 'light' },
      { formula: 'light_over_time({0 h, 1 h}, {{0.4, 0.4, 0.4}, {0.4, 0, 0.4}}).greatest', refuses: 'light' },
    ],
    compute: (time: readonly number[], light: readonly (readonly number[])[]) => {
      needRows(time, light, 'light')
      if (light.some((row) => !((row[1] as number) > 0)))
        throw new Refusal('“light” has a frame without any green light. Remove that frame.', 'light')
      const first = light[0]?.[1] as number
      const changes = light.map((row) => Math.log2((row[1] as number) / first))
      return {
        changes,
        greatest: farthest(changes),
        last: changes.at(-1) as number,
        rate: slopeOver(time, changes),
      }
    },
  },
  {
    name: 'colour_over_time',
    subject: 'colour',
    about:
      'How far the colour of one card has moved since the first of several frames, and the last of them from the one before it and from the usual colour, as ΔE2000.',
    also: ['drift', 'white balance over time', 'stability'],
    parameters: [TIMES, parameter('lab', ROWS, 'L*, a*, b* of each frame, from a patch')],
    result: record('change of colour', {
      differences: PLAIN_NUMBERS,
      greatest: PLAIN_NUMBER,
      last: PLAIN_NUMBER,
      since_before: PLAIN_NUMBER,
      from_usual: PLAIN_NUMBER,
    }),
    formula:
      'ΔE₀₀ of each frame against the first; since_before, from_usual: of the last against the one before, and against the medians of L*, a* and b* of all before',
    source: 'ISO/CIE 11664-6:2014',
    validity: 'Frames of one card in one place, at one exposure, white balance and development.',
    examples: [
      {
        // A pair of Sharma, Wu and Dalal’s test data.
        formula: 'colour_over_time({0 h, 1 h}, {{50, 2.6772, -79.7751}, {50, 0, -82.7485}}).greatest',
        gives: '2.0425',
        within: '0.00005',
      },
      { formula: 'colour_over_time({0 h, 1 h, 2 h}, {{50, 2, 0}, {50, 0, 0}, {50, 0, 0}}).since_before', gives: '0' },
      {
        // The medians of 50, 50, 50; 0, 2.6772, 9 and 0, −79.7751, −90 are the first of that pair.
        formula:
          'colour_over_time({0 h, 1 h, 2 h, 3 h}, {{50, 0, 0}, {50, 9, -90}, {50, 2.6772, -79.7751}, {50, 0, -82.7485}}).from_usual',
        gives: '2.0425',
        within: '0.00005',
      },
      { formula: 'colour_over_time({0 h, 1 h}, {{50, 0, 0}}).greatest', refuses: 'lab' },
    ],
    compute: (time: readonly number[], lab: readonly (readonly number[])[]) => {
      needRows(time, lab, 'lab')
      const colours = lab.map(([L, a, b]) => ({ L: L as number, a: a as number, b: b as number }))
      const [first, now, before] = [colours[0], colours.at(-1), colours.at(-2)] as [Lab, Lab, Lab]
      const earlier = colours.slice(0, -1)
      const usual = (part: keyof Lab): number =>
        percentileOf(
          earlier.map((one) => one[part]),
          0.5,
        )
      const differences = [0, ...colours.slice(1).map((one) => deltaE2000(first, one))]
      return {
        differences,
        greatest: Math.max(...differences),
        last: differences.at(-1) as number,
        since_before: deltaE2000(before, now),
        from_usual: deltaE2000({ L: usual('L'), a: usual('a'), b: usual('b') }, now),
      }
    },
  },
  {
    name: 'change_over_time',
    subject: 'colour',
    about:
      'The last of several figures, such as evenness or sharpness of one target frame a day, against the one before it and the usual one, and how fast they change.',
    also: ['drift', 'trend', 'history', 'against yesterday', 'stability'],
    parameters: [TIMES, parameter('values', { kind: 'list of any' }, 'a figure of each frame, in order of time')],
    differencesOnly: true,
    result: ([, values]) => {
      const { dimension } = (values as ListType).of as NumberType
      const figure = number(dimension)
      return record('change', {
        now: figure,
        before: figure,
        usual: figure,
        since_before: figure,
        from_usual: figure,
        rate: number(dimension.over(TIME)),
      })
    },
    formula:
      'now: the last; before: the last but one; usual: the median of all before the last; rate: least-squares slope over time',
    source: 'derived: differences and a median; least squares',
    validity: 'Figures of one target in one place, at one exposure and development.',
    cautions: ['A change of focus, aperture or development between frames looks like wear of the set-up.'],
    examples: [
      {
        formula: 'change_over_time({0 h, 24 h, 48 h}, {0.1 stop, 0.3 stop, 0.2 stop}).since_before',
        gives: '-0.1 stop',
      },
      { formula: 'change_over_time({0 h, 24 h, 48 h}, {0.1 stop, 0.3 stop, 0.2 stop}).usual', gives: '0.2 stop' },
      { formula: 'change_over_time({0 h, 24 h, 48 h}, {0.1, 0.3, 0.5}).from_usual', gives: '0.3' },
      {
        formula: 'change_over_time({0 h, 24 h, 48 h}, {0.1 stop, 0.3 stop, 0.5 stop}).rate * 1 d',
        gives: '0.2 stop',
        within: '1e-9 stop',
      },
      { formula: 'change_over_time({0 h}, {0.3}).now', refuses: 'values' },
      { formula: 'change_over_time({0 h, 1 h}, {0.3}).now', refuses: 'one time for each frame' },
    ],
    compute: (time: readonly number[], values: readonly number[]) => {
      needPairs(time, values, 'values')
      const [now, before] = [values.at(-1), values.at(-2)] as [number, number]
      const usual = percentileOf(values.slice(0, -1), 0.5)
      return {
        now,
        before,
        usual,
        since_before: now - before,
        from_usual: now - usual,
        rate: slopeOver(time, values),
      }
    },
  },
]
