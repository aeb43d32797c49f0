import { type FunctionRecord, type ListType, number, Refusal, type Type, type Value } from '../../language/index.ts'
import { NONE } from '../../units/index.ts'
import { plural } from '../../units/plural.ts'
import { parameter } from './parameters.ts'

const LIST = parameter('list', { kind: 'list of any' }, 'values of one kind')
const WHOLE_LIST = parameter('list', { kind: 'any list' }, 'a list of any kind')
const SEVERAL = parameter('value', { kind: 'any or list' }, 'values of one kind, or a list of them')
const DEFINITION = 'definition'
/** A result of the kind of the values, whether given one by one or as a list. */
const asValues = ([first]: readonly Type[]): Type => (first?.kind === 'list' ? first.of : (first as Type))
const flat = (given: readonly (number | readonly number[])[]): readonly number[] =>
  given.length === 1 && typeof given[0] !== 'number' ? (given[0] as readonly number[]) : given.flat()
/** A result of the kind of the list's items. */
const asItems = (args: readonly Type[]): Type => (args[0] as ListType).of

function notEmpty(items: readonly number[]): readonly number[] {
  if (items.length === 0) throw new Refusal('The list is empty. Put at least one value in it.', 'list')
  return items
}

const sumOf = (items: readonly number[]): number => items.reduce((sum, item) => sum + item, 0)

function medianOf(items: readonly number[]): number {
  const sorted = [...notEmpty(items)].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  const upper = sorted[middle] as number
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2
}

/** Values taken together. */
export const LISTS: readonly FunctionRecord[] = [
  ...(
    [
      ['min', 'The least of several values, or of a list.', 'min(3 mm, 1 cm)', 'min({3 mm, 1 cm})', '3 mm', Math.min],
      [
        'max',
        'The greatest of several values, or of a list.',
        'max(3 mm, 1 cm)',
        'max({3 mm, 1 cm})',
        '10 mm',
        Math.max,
      ],
    ] as const
  ).map(
    ([name, about, example, ofList, gives, of]): FunctionRecord => ({
      name,
      subject: 'maths',
      about,
      parameters: [SEVERAL],
      variadic: true,
      result: asValues,
      formula: name,
      source: DEFINITION,
      examples: [
        { formula: example, gives },
        { formula: ofList, gives },
      ],
      compute: (...values: number[]) => of(...values),
      computeFor: (types) =>
        types.every(({ kind }) => kind === 'number')
          ? (...values: number[]) => of(...values)
          : // Not spread: a long list would overflow the stack.
            (...given: (number | readonly number[])[]) => notEmpty(flat(given)).reduce((a, b) => of(a, b)),
    }),
  ),
  ...(
    [
      ['least', 'The least value of a list.', 'least({3 mm, 1 cm})', '3 mm', Math.min],
      ['greatest', 'The greatest value of a list.', 'greatest({3 mm, 1 cm})', '10 mm', Math.max],
    ] as const
  ).map(
    ([name, about, example, gives, of]): FunctionRecord => ({
      name,
      subject: 'maths',
      about,
      parameters: [LIST],
      result: asItems,
      formula: `${name} of the list`,
      source: DEFINITION,
      examples: [{ formula: example, gives }],
      // Not spread: a long list would overflow the stack.
      compute: (items: readonly number[]) => notEmpty(items).reduce((a, b) => of(a, b)),
    }),
  ),
  {
    name: 'sum',
    subject: 'maths',
    about: 'All values of a list added up.',
    also: ['total', 'add up'],
    parameters: [LIST],
    differencesOnly: true,
    result: asItems,
    formula: 'Σ x',
    source: DEFINITION,
    examples: [{ formula: 'sum({12 mm, 20 mm, 36 mm})', gives: '68 mm' }],
    compute: (items: readonly number[]) => sumOf(items),
  },
  {
    name: 'mean',
    subject: 'maths',
    about: 'The mean of several values, or of a list.',
    also: ['average', 'avg'],
    parameters: [SEVERAL],
    variadic: true,
    result: asValues,
    formula: 'Σ x/n',
    source: DEFINITION,
    examples: [
      { formula: 'mean({12 mm, 20 mm, 37 mm})', gives: '23 mm' },
      { formula: 'mean(12 mm, 20 mm, 37 mm)', gives: '23 mm' },
    ],
    compute: (...given: (number | readonly number[])[]) => {
      const values = notEmpty(flat(given))
      return sumOf(values) / values.length
    },
  },
  {
    name: 'median',
    subject: 'maths',
    about: 'The middle value of a list; of an even number, the mean of the middle two.',
    also: ['middle value'],
    parameters: [LIST],
    result: asItems,
    formula: 'middle of the sorted list',
    source: DEFINITION,
    examples: [
      { formula: 'median({36 mm, 12 mm, 20 mm})', gives: '20 mm' },
      { formula: 'median({36 mm, 12 mm})', gives: '24 mm' },
    ],
    compute: medianOf,
  },
  {
    name: 'count',
    subject: 'maths',
    about: 'How many values a list has.',
    also: ['number of', 'how many', 'length of list'],
    parameters: [WHOLE_LIST],
    result: number(NONE),
    formula: 'n',
    source: DEFINITION,
    examples: [{ formula: 'count({12 mm, 20 mm, 36 mm})', gives: '3' }],
    compute: (items: readonly Value[]) => items.length,
  },
  {
    name: 'item',
    subject: 'maths',
    about: 'One value of a list, by its place.',
    also: ['element', 'index', 'nth'],
    parameters: [
      WHOLE_LIST,
      parameter('place', number(NONE), 'its place, counted from 1', { range: { least: 1, whole: true } }),
    ],
    result: asItems,
    formula: 'the value at that place',
    source: DEFINITION,
    examples: [
      { formula: 'item({12 mm, 20 mm, 36 mm}, 2)', gives: '20 mm' },
      { formula: 'item({12 mm, 20 mm, 36 mm}, 4)', refuses: 'has 3 values' },
    ],
    compute: (items: readonly Value[], place: number) => {
      const found = items[place - 1]
      if (found === undefined)
        throw new Refusal(`The list has ${plural(items.length, 'value')}, and value ${place} of it is needed.`, 'list')
      return found
    },
  },
]
