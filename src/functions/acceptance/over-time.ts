import { type FunctionRecord, list, number, PLAIN_NUMBER, Refusal, record, type Type } from '../../language/index.ts'
import { STOP, TIME } from '../../units/index.ts'
import { PLAIN_NUMBERS, parameter } from '../maths/parameters.ts'
import { deltaE2000 } from './colour-difference.ts'
import { fitLine } from './samples.ts'

const TIMES = parameter('time', list(number(TIME)), 'when each frame was taken, counted from the first')
const ROWS: Type = list(PLAIN_NUMBERS)

/** Refuses lists that do not pair up: a time a frame, three figures a frame, two frames or more. */
function needRows(time: readonly number[], rows: readonly (readonly number[])[], argument: string): void {
  if (time.length !== rows.length)
    throw new Refusal(
      `“time” has ${time.length} values and “${argument}” has ${rows.length}. Give one time for each frame.`,
      argument,
    )
  if (rows.length < 2)
    throw new Refusal(`“${argument}” has fewer than two frames. Take the card again later, then compare.`, argument)
  if (rows.some((row) => row.length !== 3))
    throw new Refusal(`“${argument}” must have three figures for each frame.`, argument)
}

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
        throw new Refusal('“light” has a frame without any green light. Take that frame out.', 'light')
      const first = light[0]?.[1] as number
      const changes = light.map((row) => Math.log2((row[1] as number) / first))
      const isApart = time.some((one) => one !== time[0])
      return {
        changes,
        greatest: farthest(changes),
        last: changes.at(-1) as number,
        rate: isApart ? fitLine(time, changes).slope : 0,
      }
    },
  },
  {
    name: 'colour_over_time',
    subject: 'colour',
    about: 'How far the colour of one card has moved since the first of several frames, as ΔE2000.',
    also: ['drift', 'white balance over time', 'stability'],
    parameters: [TIMES, parameter('lab', ROWS, 'L*, a*, b* of each frame, from a patch')],
    result: record('change of colour', { differences: PLAIN_NUMBERS, greatest: PLAIN_NUMBER, last: PLAIN_NUMBER }),
    formula: 'ΔE₀₀ of each frame against the first',
    source: 'ISO/CIE 11664-6:2014',
    validity: 'Frames of one card in one place, at one exposure, white balance and development.',
    examples: [
      {
        // A pair of Sharma, Wu and Dalal’s test data.
        formula: 'colour_over_time({0 h, 1 h}, {{50, 2.6772, -79.7751}, {50, 0, -82.7485}}).greatest',
        gives: '2.0425',
        within: '0.00005',
      },
      { formula: 'colour_over_time({0 h, 1 h}, {{50, 0, 0}}).greatest', refuses: 'lab' },
    ],
    compute: (time: readonly number[], lab: readonly (readonly number[])[]) => {
      needRows(time, lab, 'lab')
      const [first, ...rest] = lab.map(([L, a, b]) => ({ L: L as number, a: a as number, b: b as number }))
      const differences = [0, ...rest.map((one) => deltaE2000(first as typeof one, one))]
      return { differences, greatest: Math.max(...differences), last: differences.at(-1) as number }
    },
  },
]
