import {
  type FunctionRecord,
  type NumberType,
  number,
  type Parameter,
  type Range,
  Refusal,
  type Type,
} from '../../language/index.ts'
import { ANGLE, NONE } from '../../units/index.ts'
import { LISTS } from './maths-lists.ts'
import { MARKS } from './maths-marks.ts'
import { POSITIVE, parameter } from './parameters.ts'

const plain = (name: string, about: string, range?: Range): Parameter =>
  parameter(name, number(NONE), about, range ? { range } : {})
const any = (name: string, about: string, range?: Range): Parameter =>
  parameter(name, { kind: 'any' }, about, range ? { range } : {})

const dimensionOf = (type: Type | undefined) => (type as NumberType).dimension
/** A result of the kind of the first argument. */
const asGiven = (args: readonly Type[]): Type => args[0] as Type
const DEFINITION = 'definition'

/** Half away from zero, as one rounds on paper: −2.5 is −3. */
const roundHalfUp = (x: number): number => Math.sign(x) * Math.round(Math.abs(x)) + 0

/** The greatest error of a multiple of a step by rounding, as a share of it. */
const ROUNDING = 1e-9
/** The number of steps; a whole number where only rounding makes it differ from one. */
function steps(x: number, step: number): number {
  const ratio = x / step
  const whole = Math.round(ratio)
  return Math.abs(ratio - whole) <= ROUNDING * Math.max(1, Math.abs(ratio)) ? whole : ratio
}

const ROUNDS: readonly FunctionRecord[] = [
  {
    name: 'round',
    subject: 'maths',
    about: 'The nearest whole number; a half rounds away from zero.',
    also: ['rounding', 'integer'],
    parameters: [plain('x', 'a plain number')],
    result: number(NONE),
    formula: 'round x',
    source: DEFINITION,
    examples: [
      { formula: 'round(2.5)', gives: '3' },
      { formula: 'round(-2.5)', gives: '-3' },
    ],
    compute: roundHalfUp,
  },
  {
    name: 'floor',
    subject: 'maths',
    about: 'The greatest whole number not above it.',
    also: ['round down', 'truncate'],
    parameters: [plain('x', 'a plain number')],
    result: number(NONE),
    formula: '⌊x⌋',
    source: DEFINITION,
    examples: [{ formula: 'floor(-2.5)', gives: '-3' }],
    compute: (x: number) => Math.floor(x),
  },
  {
    name: 'ceil',
    subject: 'maths',
    about: 'The least whole number not below it.',
    also: ['round up', 'ceiling'],
    parameters: [plain('x', 'a plain number')],
    result: number(NONE),
    formula: '⌈x⌉',
    source: DEFINITION,
    examples: [{ formula: 'ceil(2.1)', gives: '3' }],
    compute: (x: number) => Math.ceil(x) + 0,
  },
  {
    name: 'round_to',
    subject: 'maths',
    about: 'The nearest multiple of a step.',
    parameters: [any('x', 'a value'), any('step', 'the step, of the same kind', POSITIVE)],
    result: asGiven,
    formula: 'step × round(x/step)',
    source: DEFINITION,
    examples: [
      { formula: 'round_to(1234 mm, 5 mm)', gives: '1235 mm' },
      { formula: 'round_to(1234 mm, 0 mm)', refuses: 'step' },
    ],
    compute: (x: number, step: number) => step * roundHalfUp(steps(x, step)),
  },
  {
    name: 'floor_to',
    subject: 'maths',
    about: 'The greatest multiple of a step not above it.',
    parameters: [any('x', 'a value'), any('step', 'the step, of the same kind', POSITIVE)],
    result: asGiven,
    formula: 'step × ⌊x/step⌋',
    source: DEFINITION,
    examples: [
      { formula: 'floor_to(1239 mm, 5 mm)', gives: '1235 mm' },
      { formula: 'floor_to(0.3, 0.1)', gives: '0.3' },
    ],
    compute: (x: number, step: number) => step * Math.floor(steps(x, step)),
  },
  {
    name: 'ceil_to',
    subject: 'maths',
    about: 'The least multiple of a step not below it.',
    parameters: [any('x', 'a value'), any('step', 'the step, of the same kind', POSITIVE)],
    result: asGiven,
    formula: 'step × ⌈x/step⌉',
    source: DEFINITION,
    examples: [
      { formula: 'ceil_to(4960.6 px, 1 px)', gives: '4961 px' },
      { formula: 'ceil_to(1231 mm, 5 mm)', gives: '1235 mm' },
    ],
    compute: (x: number, step: number) => step * (Math.ceil(steps(x, step)) + 0),
  },
  {
    name: 'clamp',
    subject: 'maths',
    about: 'The value, limited to the range from a least to a greatest one.',
    also: ['limit', 'constrain'],
    parameters: [any('value', 'a value'), any('least', 'its lower bound'), any('greatest', 'its upper bound')],
    result: asGiven,
    formula: 'min(max(value, least), greatest)',
    source: DEFINITION,
    examples: [
      { formula: 'clamp(12 mm, 0 mm, 10 mm)', gives: '10 mm' },
      { formula: 'clamp(12 mm, 10 mm, 0 mm)', refuses: 'greatest' },
    ],
    compute: (value: number, least: number, greatest: number) => {
      if (least > greatest) throw new Refusal('“least” is above “greatest”. Swap the two.', 'least')
      return Math.min(Math.max(value, least), greatest)
    },
  },
]

const POWERS: readonly FunctionRecord[] = [
  {
    name: 'sqrt',
    subject: 'maths',
    about: 'Square root; its kind is the root of the kind given.',
    also: ['square root', 'root'],
    parameters: [any('x', '0 or more', { least: 0 })],
    result: (args) => number(dimensionOf(args[0]).power(1 / 2)),
    formula: '√x',
    source: DEFINITION,
    examples: [
      { formula: 'sqrt(16 m^2)', gives: '4 m' },
      { formula: 'sqrt(-1)', refuses: 'x' },
    ],
    compute: (x: number) => Math.sqrt(x),
  },
  {
    name: 'cbrt',
    subject: 'maths',
    about: 'Cube root; its kind is the cube root of the kind given.',
    parameters: [any('x', 'a value')],
    result: (args) => number(dimensionOf(args[0]).power(1 / 3)),
    formula: '∛x',
    source: DEFINITION,
    examples: [{ formula: 'cbrt(27 m^3)', gives: '3 m' }],
    compute: (x: number) => Math.cbrt(x),
  },
  {
    name: 'exp',
    subject: 'maths',
    about: 'e raised to a plain number.',
    parameters: [plain('x', 'a plain number', { most: 709 })],
    result: number(NONE),
    formula: 'eˣ',
    source: DEFINITION,
    examples: [
      { formula: 'exp(1)', gives: '2.718281828459045' },
      { formula: 'exp(1000)', refuses: 'x' },
    ],
    compute: (x: number) => Math.exp(x),
  },
  ...(
    [
      ['ln', 'Natural logarithm, to base e.', 'ln x', 'ln(10)', '2.302585092994046', Math.log],
      ['log10', 'Logarithm to base 10.', 'log₁₀ x', 'log10(1000)', '3', Math.log10],
      ['log2', 'Logarithm to base 2: how many times doubled.', 'log₂ x', 'log2(8)', '3', Math.log2],
    ] as const
  ).map(
    ([name, about, formula, example, gives, log]): FunctionRecord => ({
      name,
      subject: 'maths',
      about,
      parameters: [plain('x', 'a plain number above 0', POSITIVE)],
      result: number(NONE),
      formula,
      source: DEFINITION,
      examples: [
        { formula: example, gives },
        { formula: `${name}(0)`, refuses: 'x' },
      ],
      compute: (x: number) => log(x),
    }),
  ),
  {
    name: 'abs',
    subject: 'maths',
    about: 'The absolute value: a value without its sign.',
    also: ['absolute value', 'magnitude'],
    parameters: [any('x', 'a value')],
    differencesOnly: true,
    result: asGiven,
    formula: '|x|',
    source: DEFINITION,
    examples: [{ formula: 'abs(-3 mm)', gives: '3 mm' }],
    compute: (x: number) => Math.abs(x),
  },
  {
    name: 'sign',
    subject: 'maths',
    about: '1, 0 or −1 as a value is above, at or below zero.',
    parameters: [any('x', 'a value')],
    result: number(NONE),
    formula: 'sign x',
    source: DEFINITION,
    examples: [{ formula: 'sign(-3 mm)', gives: '-1' }],
    compute: (x: number) => Math.sign(x) + 0,
  },
  {
    name: 'hypot',
    subject: 'maths',
    about: 'Root of the sum of squares: a diagonal, or errors taken together.',
    also: ['diagonal', 'pythagoras', 'root sum square'],
    parameters: [any('x', 'a value'), any('y', 'another of the same kind, and so on')],
    variadic: true,
    differencesOnly: true,
    result: asGiven,
    formula: '√(x² + y² + …)',
    source: DEFINITION,
    examples: [{ formula: 'hypot(36 mm, 24 mm)', gives: '43.266615 mm', within: '0.000001 mm' }],
    compute: (...values: number[]) => Math.hypot(...values),
  },
]

const ANGLES: readonly FunctionRecord[] = [
  ...(
    [
      ['sin', 'Sine of an angle.', 'sin(30°)', '0.5', Math.sin],
      ['cos', 'Cosine of an angle.', 'cos(60°)', '0.5', Math.cos],
    ] as const
  ).map(
    ([name, about, example, gives, of]): FunctionRecord => ({
      name,
      subject: 'maths',
      about,
      parameters: [parameter('angle', number(ANGLE), 'an angle')],
      result: number(NONE),
      formula: `${name} angle`,
      source: DEFINITION,
      examples: [{ formula: example, gives }],
      compute: (angle: number) => of(angle),
    }),
  ),
  {
    name: 'tan',
    subject: 'maths',
    about: 'Tangent of an angle.',
    parameters: [parameter('angle', number(ANGLE), 'an angle, not a right one')],
    result: number(NONE),
    formula: 'tan angle',
    source: DEFINITION,
    examples: [
      { formula: 'tan(45°)', gives: '1' },
      { formula: 'tan(90°)', refuses: 'right angle' },
    ],
    compute: (angle: number) => {
      if (Math.abs(Math.cos(angle)) < 1e-15 * Math.max(1, Math.abs(angle)))
        throw new Refusal('“angle” is a right angle, which has no tangent. Give another angle.', 'angle')
      return Math.tan(angle)
    },
  },
  ...(
    [
      ['asin', 'Angle from −90° to 90° that has a given sine.', 'asin(0.5)', '30°', Math.asin],
      ['acos', 'Angle from 0° to 180° that has a given cosine.', 'acos(0.5)', '60°', Math.acos],
    ] as const
  ).map(
    ([name, about, example, gives, of]): FunctionRecord => ({
      name,
      subject: 'maths',
      about,
      parameters: [plain('x', 'from −1 to 1', { least: -1, most: 1 })],
      result: number(ANGLE),
      formula: `${name} x`,
      source: DEFINITION,
      examples: [
        { formula: example, gives },
        { formula: `${name}(1.1)`, refuses: 'x' },
      ],
      compute: (x: number) => of(x),
    }),
  ),
  {
    name: 'atan',
    subject: 'maths',
    about: 'Angle from −90° to 90° that has a given tangent.',
    parameters: [plain('x', 'a plain number')],
    result: number(ANGLE),
    formula: 'atan x',
    source: DEFINITION,
    examples: [{ formula: 'atan(1)', gives: '45°' }],
    compute: (x: number) => Math.atan(x),
  },
  {
    name: 'atan2',
    subject: 'maths',
    about: 'Direction of a point, anticlockwise from +x, from −180° to 180°.',
    parameters: [any('y', 'up'), any('x', 'to the right, of the same kind')],
    result: number(ANGLE),
    formula: 'atan(y/x), in the quadrant of (x, y)',
    source: DEFINITION,
    examples: [
      { formula: 'atan2(1 mm, -1 mm)', gives: '135°' },
      { formula: 'atan2(0, 0)', refuses: 'direction' },
    ],
    compute: (y: number, x: number) => {
      if (x === 0 && y === 0)
        throw new Refusal(
          '“x” and “y” are both 0, and the origin has no direction. Give one of them another value.',
          'x',
        )
      return Math.atan2(y, x)
    },
  },
]

/** Arithmetic beyond the signs, and the marks on the equipment. */
export const MATHS: readonly FunctionRecord[] = [...ROUNDS, ...POWERS, ...ANGLES, ...LISTS, ...MARKS]
