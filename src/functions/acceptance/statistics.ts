import { type FunctionRecord, number, Refusal, record, type Type } from '../../language/index.ts'
import { type Dimension, NONE } from '../../units/index.ts'
import { plural } from '../../units/plural.ts'
import { PLAIN, parameter, SHARE } from '../maths/parameters.ts'
import { fitLine, meanOf, percentileOf, standardDeviationOf } from './samples.ts'

const dimensionOfItems = (type: Type | undefined): Dimension =>
  type?.kind === 'list' && type.of.kind === 'number' ? type.of.dimension : NONE

/** The kind of quantity of the first list, without its notation. */
const likeItems = ([first]: readonly Type[]): Type => number(dimensionOfItems(first))

function needValues(values: readonly number[], least: number, argument = 'values'): void {
  if (values.length >= least) return
  const found = values.length === 0 ? 'is empty' : `has ${plural(values.length, 'value')}`
  throw new Refusal(
    `“${argument}” ${found}. Give ${least === 1 ? 'one value' : `${['no', 'one', 'two', 'three'][least]} values`} or more.`,
    argument,
  )
}

/** What a sample of readings says. */
export const STATISTICS: readonly FunctionRecord[] = [
  {
    name: 'sample_mean',
    subject: 'colour',
    about: 'The mean of a list.',
    parameters: [parameter('values', { kind: 'list of any' }, 'the values')],
    result: likeItems,
    formula: 'Σ x/n',
    source: 'derived: arithmetic mean',
    examples: [
      { formula: 'sample_mean({1, 2, 6})', gives: '3' },
      { formula: 'sample_mean({10 mm, 20 mm})', gives: '15 mm' },
    ],
    compute: (values: readonly number[]) => {
      needValues(values, 1)
      return meanOf(values)
    },
  },
  {
    name: 'percentile',
    subject: 'colour',
    about: 'The value that a share of a list does not exceed.',
    parameters: [
      parameter('values', { kind: 'list of any' }, 'the values'),
      parameter('share', PLAIN, 'the share: 90 %', { range: SHARE }),
    ],
    result: likeItems,
    formula: 'in order x₁ … xₙ, linear between the neighbours of 1 + share (n − 1)',
    source: 'common practice, no source: linear interpolation between order statistics, as spreadsheets do',
    examples: [
      { formula: 'percentile({4, 1, 3, 2, 5}, 50 %)', gives: '3' },
      // Place 1 + 0.9 · 4 = 4.6: from 4 six tenths of the way to 5.
      { formula: 'percentile({4, 1, 3, 2, 5}, 90 %)', gives: '4.6' },
      { formula: 'percentile({4, 1, 3}, 90)', refuses: 'share' },
    ],
    compute: (values: readonly number[], share: number) => {
      needValues(values, 1)
      return percentileOf(values, share)
    },
  },
  {
    name: 'standard_deviation',
    subject: 'maths',
    about: 'How far readings of one quantity scatter about their mean.',
    parameters: [parameter('list', { kind: 'list of any' }, 'two readings or more')],
    result: likeItems,
    formula: 's = √(Σ (x − x̄)²/(n − 1))',
    source: 'JCGM 100:2008 (GUM), 4.2.2; computed by the corrected two-pass algorithm (Chan, Golub and LeVeque, 1983)',
    validity: 'Readings taken independently of each other. The divisor is n − 1.',
    examples: [
      { formula: 'standard_deviation({2, 4, 4, 4, 5, 5, 7, 9})', gives: '2.1380899', within: '0.0000001' },
      { formula: 'standard_deviation({10000001, 10000003, 10000002})', gives: '1', source: 'NIST StRD, NumAcc1' },
      { formula: 'standard_deviation({10 mm, 12 mm})', gives: '1.4142136 mm', within: '0.0000001 mm' },
      { formula: 'standard_deviation({10 mm})', refuses: 'two values' },
    ],
    compute: (list: readonly number[]) => {
      needValues(list, 2, 'list')
      return standardDeviationOf(list)
    },
  },
  {
    name: 'standard_deviation_of_mean',
    subject: 'maths',
    about: 'The standard uncertainty of the mean of readings, from their scatter.',
    parameters: [parameter('list', { kind: 'list of any' }, 'two readings or more')],
    result: likeItems,
    formula: 's/√n',
    source: 'JCGM 100:2008 (GUM), 4.2.3',
    validity:
      'The standard uncertainty by scatter alone: what all readings share, such as a meter’s own error, is not included.',
    examples: [
      {
        formula: 'standard_deviation_of_mean({5.007 V, 4.994 V, 5.005 V, 4.990 V, 4.999 V})',
        gives: '0.0032 V',
        within: '0.00005 V',
        source: 'JCGM 100:2008, H.2',
      },
      { formula: 'standard_deviation_of_mean({1})', refuses: 'two values' },
    ],
    compute: (list: readonly number[]) => {
      needValues(list, 2, 'list')
      return standardDeviationOf(list) / Math.sqrt(list.length)
    },
  },
  {
    name: 'line_fit',
    subject: 'maths',
    about: 'The straight line that fits pairs of readings best.',
    parameters: [
      parameter('x', { kind: 'list of any', apart: true }, 'what was set, three readings or more'),
      parameter('y', { kind: 'list of any', apart: true }, 'what was read at each'),
    ],
    result: ([x, y]) => {
      const [dx, dy] = [dimensionOfItems(x), dimensionOfItems(y)]
      return record('line fit', {
        slope: number(dy.over(dx)),
        intercept: number(dy),
        slope_deviation: number(dy.over(dx)),
        intercept_deviation: number(dy),
        residual_deviation: number(dy),
      })
    },
    formula: 'least squares of y on x: slope = Σ (x − x̄)(y − ȳ)/Σ (x − x̄)², intercept = ȳ − slope x̄',
    source: 'JCGM 100:2008 (GUM), H.3; standard deviations from the residuals, n − 2 in the divisor',
    validity: 'Scatter in y alone, alike at every x. Slope and intercept are correlated.',
    examples: [
      { formula: 'line_fit({1, 2, 3}, {2 mm, 4 mm, 6 mm}).slope', gives: '2 mm' },
      { formula: 'line_fit({1 s, 2 s, 3 s}, {1 mm, 2 mm, 2 mm}).slope', gives: '0.5 [mm/s]' },
      // Residuals −1/6, 1/3, −1/6: √(1/6).
      { formula: 'line_fit({1, 2, 3}, {1, 2, 2}).residual_deviation', gives: '0.4082483', within: '0.0000001' },
      { formula: 'line_fit({1, 2, 3}, {1, 2})', refuses: '“y”' },
      { formula: 'line_fit({2, 2, 2}, {1, 2, 3})', refuses: '“x”' },
    ],
    compute: (x: readonly number[], y: readonly number[]) => {
      needValues(x, 3, 'x')
      if (x.length !== y.length)
        throw new Refusal(`“x” has ${x.length} readings and “y” ${y.length}. Give one y for each x.`, 'y')
      if (x.every((value) => value === x[0]))
        throw new Refusal('All values of “x” are the same, so no line is fixed. Take readings at different x.', 'x')
      return { ...fitLine(x, y) }
    },
  },
]
