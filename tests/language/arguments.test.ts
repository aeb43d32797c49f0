import { describe, expect, test } from 'vitest'
import {
  type Callable,
  checkFormula,
  computable,
  computeOnce,
  defaultText,
  level,
  list,
  number,
  type Parameter,
  parameterText,
  type Range,
  rangeText,
  record,
  resultText,
  type Scope,
  signature,
  TEXT,
  type Type,
  type Value,
  YES_NO,
} from '../../src/language/index.ts'
import { LENGTH, NONE, STOP, TIME } from '../../src/units/index.ts'

const LENGTHS = list(number(LENGTH))
const parameter = (name: string, type: Parameter['type'], more: Partial<Parameter> = {}): Parameter => ({
  name,
  type,
  about: `its ${name}`,
  ...more,
})

/** Functions that give back what they are called with, one for each way in which arguments may be taken. */
const FUNCTIONS: readonly Callable[] = [
  {
    name: 'frame',
    parameters: [
      parameter('width', number(LENGTH)),
      parameter('height', number(LENGTH), { default: '24 mm' }),
      parameter('upright', YES_NO, { default: 'no' }),
      parameter('turned', YES_NO, { default: 'yes' }),
      parameter('format', TEXT, { default: '"raw"', choices: ['raw', 'tiff'] }),
      parameter('profile', TEXT, { default: '"sRGB"', choices: ['sRGB', 'grey'], open: true }),
      parameter('far', number(LENGTH), { default: 'infinity' }),
      parameter('marks', LENGTHS, { default: '{1 mm, 2 mm}' }),
      parameter('gaps', LENGTHS, { default: '{}' }),
    ],
    result: TEXT,
    compute: (...args: never[]) => JSON.stringify(args, (_, x) => (x === Number.POSITIVE_INFINITY ? 'infinite' : x)),
  },
  { name: 'now', parameters: [], result: number(TIME), compute: () => 5 },
  {
    name: 'still',
    parameters: [parameter('wait', number(TIME), { default: '2 s' })],
    result: number(TIME),
    compute: (t: never) => t,
  },
  {
    name: 'longest',
    parameters: [parameter('of', LENGTHS)],
    result: number(LENGTH),
    compute: (of: never) => Math.max(...(of as number[])),
  },
  {
    name: 'how_many',
    parameters: [parameter('of', { kind: 'any list' })],
    result: number(NONE),
    compute: (of: never) => (of as unknown[]).length,
  },
  {
    name: 'pick',
    parameters: [parameter('of', { kind: 'list of any' }), parameter('least', { kind: 'any' })],
    result: ([of]) => (of as { of: Type }).of,
    compute: (of: never, least: never) => Math.max(...(of as number[]), least),
  },
  {
    name: 'slope',
    parameters: [
      parameter('x', { kind: 'list of any', apart: true }),
      parameter('y', { kind: 'list of any', apart: true }),
    ],
    result: number(NONE),
    compute: (x: never, y: never) => (x as unknown[]).length + (y as unknown[]).length,
  },
  {
    name: 'all',
    parameters: [parameter('value', { kind: 'any or list' })],
    variadic: true,
    result: number(NONE),
    compute: (...of: never[]) => of.length,
  },
  {
    name: 'gain',
    parameters: [parameter('value', { kind: 'any' })],
    differencesOnly: true,
    result: number(NONE),
    compute: () => 1,
  },
  { name: 'shift', parameters: [parameter('by', number(STOP))], result: number(NONE), compute: () => 1 },
  { name: 'expose', parameters: [parameter('at', level(STOP))], result: number(NONE), compute: () => 1 },
  {
    name: 'doubt',
    parameters: [parameter('value', number(NONE))],
    warn: ([type]) => (type?.kind === 'number' && type.notation === 'ratio' ? 'Is a ratio meant?' : undefined),
    result: number(NONE),
    compute: (x: never) => x,
  },
]
const byName = (name: string): Callable => FUNCTIONS.find((one) => one.name === name) as Callable

const CELLS: ReadonlyMap<string, Type> = new Map<string, Type>([
  ['width', number(LENGTH)],
  ['upright', YES_NO],
  ['lengths', LENGTHS],
  ['times', list(number(TIME))],
  ['words', list(TEXT)],
  ['sizes', list(record('size', { width: number(LENGTH) }))],
  ['sensor', record('size', { width: number(LENGTH), height: number(LENGTH) })],
])
const scope: Scope = {
  library: new Map(FUNCTIONS.map((one) => [one.name, one])),
  typeOf: (name) => CELLS.get(name),
  names: () => CELLS.keys(),
}
const VALUES: Readonly<Record<string, Value>> = {
  width: 0.5,
  upright: true,
  lengths: [1, 2],
  times: [1],
  words: ['a'],
  sizes: [],
}

function given(text: string): Value {
  const { root, diagnostics } = checkFormula(text, scope)
  if (!root) throw new Error(diagnostics.map(({ message }) => message).join(' '))
  return computeOnce(computable(root, true), (name) => VALUES[name]).value
}

/** What is said of a formula, each with the text it points at and what its fixes insert. */
const said = (text: string): unknown[] =>
  checkFormula(text, scope).diagnostics.map(({ message, from, to, fixes }) => [
    text.slice(from, to),
    message,
    fixes.map((fix) => text.slice(0, fix.from) + fix.insert + text.slice(fix.to)),
  ])

describe('an argument that is left out', () => {
  test('has its default, whatever kind that is of', () => {
    expect(given('frame(1 m)')).toBe(
      JSON.stringify([1, 0.024, false, true, 'raw', 'sRGB', 'infinite', [0.001, 0.002], []]),
    )
    expect(given('frame(1 m, upright: yes, turned: no, marks: 3 m, far: 1 m)')).toBe(
      JSON.stringify([1, 0.024, true, false, 'raw', 'sRGB', 1, [3], []]),
    )
    expect(given('now()')).toBe(5)
    expect(given('still()')).toBe(2)
  })

  test('and has none is asked for, with cells of its name', () => {
    expect(said('frame()')).toEqual([
      [
        'frame()',
        expect.stringContaining('frame needs “width” (its width) too: frame(width, height = 24 mm, '),
        ['frame(width: width)'],
      ],
    ])
    expect(said('frame(height: 1 mm)')[0]).toMatchObject({ 2: ['frame(height: 1 mm, width: width)'] })
    expect(said('pick()')).toEqual([
      ['pick()', 'pick needs “of” (its of) and “least” (its least) too: pick(of, least).', []],
    ])
    expect(checkFormula('frame()', scope).diagnostics[0]?.fixes[0]?.label).toBe('Add width')
  })
})

describe('a list', () => {
  test('of one is what a single value stands for where a list is taken', () => {
    expect(given('longest(3 mm)')).toBe(0.003)
    expect(given('how_many(upright)')).toBe(1)
    expect(given('how_many(words)')).toBe(1)
    expect(given('how_many(lengths)')).toBe(2)
    expect(given('pick(3 mm, 1 mm)')).toBe(0.003)
  })

  test('has values of the kind that is asked for, or of one that agrees with the other arguments', () => {
    expect(said('longest(times)')).toEqual([
      ['times', '“of” of longest (its of) must be a list, each a length; this is a list, each a time.', []],
    ])
    expect(said('pick(lengths, 1 s)')).toEqual([
      ['1 s', '“least” of pick (its least) must be a length, as “of” is; this is a time.', []],
    ])
    expect(said('pick(words, 1)')).toEqual([
      ['words', '“of” of pick (its of) must be a list of numbers or quantities; this is a list, each text.', []],
    ])
    expect(said('pick(lengths, times)')).toEqual([
      ['times', expect.stringContaining('“times” has many values, and pick takes one.'), []],
    ])
    expect(said('pick(lengths, words)')).toEqual([
      ['words', '“least” of pick (its least) must be a number or a quantity; this is a list, each text.', []],
    ])
    expect(said('longest(sizes)')).toEqual([
      ['sizes', '“of” of longest (its of) must be a list, each a length; this is a list of size records.', []],
    ])
  })

  test('apart from another need not be of its kind, and those together must', () => {
    expect(given('slope(lengths, times)')).toBe(3)
    expect(said('slope(lengths, words)')).toMatchObject([
      ['words', expect.stringContaining('must be a list of numbers'), []],
    ])
    expect(given('all(lengths, 1 mm, width)')).toBe(3)
    expect(said('all(lengths, 1 mm, 2 s)')).toEqual([
      ['2 s', '“value” of all (its value) must be a length, as “value” is; this is a time.', []],
    ])
    expect(said('all(1, times)')).toEqual([
      ['times', '“value” of all (its value) must be a plain number, as “value” is; this is a list, each a time.', []],
    ])
  })
})

describe('a text of which some are taken', () => {
  test('is one of them, unless others are taken too', () => {
    expect(said('frame(36 mm, format: "tiff")')).toEqual([])
    expect(said('frame(36 mm, format: "tif")')).toEqual([
      ['"tif"', '“format” is one of "raw", "tiff".', ['frame(36 mm, format: "tiff")']],
    ])
    expect(said('frame(36 mm, format: "something else")')).toEqual([
      [
        '"something else"',
        '“format” is one of "raw", "tiff".',
        ['frame(36 mm, format: "raw")', 'frame(36 mm, format: "tiff")'],
      ],
    ])
    expect(said('frame(36 mm, profile: "own.icc")')).toEqual([])
    expect(said('frame(36 mm, format: when(upright, "raw", "x"))')).toEqual([])
    expect(said('frame(36 mm, format: tiff)')).toEqual([
      ['tiff', 'There is no cell named “tiff”.', ['frame(36 mm, format: "tiff")']],
    ])
  })
})

describe('an argument of another kind', () => {
  test.each([
    ['frame(36)', '36', '“width” of frame (its width) must be a length; this is a plain number.', ['frame(36 mm)']],
    [
      'frame(sensor)',
      'sensor',
      '“width” of frame (its width) must be a length; this is a size.',
      ['frame(sensor.width)', 'frame(sensor.height)'],
    ],
    [
      'frame(36 mm, upright: 1)',
      '1',
      '“upright” of frame (its upright) must be yes or no; this is a plain number.',
      [],
    ],
    [
      'gain(12 EV)',
      '12 EV',
      '“value” of gain is a difference in stops; this is an exposure value, a level.',
      ['gain(12 stop)'],
    ],
    ['shift(12 EV)', '12 EV', '“by” is a difference in stops; this is an exposure value, a level.', ['shift(12 stop)']],
    [
      'expose(12 stop)',
      '12 stop',
      '“at” is an exposure value, a level; this is a difference in stops.',
      ['expose(12 EV)'],
    ],
    [
      'all(12 EV, 1 stop)',
      '1 stop',
      'An exposure value and a difference in stops cannot be taken together.',
      ['all(12 EV, 1 EV)'],
    ],
    ['frame(36 mm, upright = 3)', 'upright = 3', 'Yes or no and a plain number cannot be compared.', []],
    [
      'frame(36 mm, turned = no)',
      'turned = no',
      'The value of an argument follows “:”, as in “turned: …”.',
      ['frame(36 mm, turned: no)'],
    ],
    ['frame(36 mm, marks: infinity)', 'marks: infinity', '“marks” cannot be infinite.', []],
    ['gain(infinity)', 'infinity', '“value” cannot be infinite.', []],
    ['now(2)', '2', 'now takes no arguments: now().', ['now()']],
    ['still(1 s, 2 s)', '2 s', 'still takes one argument: still(wait = 2 s).', ['still(1 s)']],
    [
      'frame(36 mm, hieght: 1 mm)',
      'hieght',
      'frame has no argument “hieght”. Did you mean “height”?',
      ['frame(36 mm, height: 1 mm)'],
    ],
    ['still(now: 1 s)', 'now', 'still has no argument “now”. It takes still(wait = 2 s).', []],
    ['still', 'still', '“still” is a function. Its arguments go in parentheses.', ['still()']],
    ['now', 'now', '“now” is a function. Its arguments go in parentheses.', ['now()']],
    ['frame', 'frame', '“frame” is a function. Its arguments go in parentheses.', []],
  ] as const)('%s', (text, at, message, fixes) => {
    expect(said(text)).toEqual([[at, message, fixes]])
  })

  test('is compared where a cell of its name says so', () => {
    expect(said('frame(36 mm, upright: upright = yes)')).toEqual([])
    expect(said('gain(1 stop) + all(12 EV, 13 EV)')).toEqual([])
  })

  test('may be infinite where a number is taken', () => {
    expect(given('frame(infinity)')).toMatch(/^\["infinite",/)
  })
})

test('a function may doubt the way in which its arguments are written', () => {
  expect(said('1 + doubt(1:2)')).toEqual([['doubt(1:2)', 'Is a ratio meant?', []]])
  expect(said('doubt(2)')).toEqual([])
})

describe('a function in words', () => {
  const inWords = (name: string): string[] => byName(name).parameters.map(parameterText)

  test('shows how it is called', () => {
    expect(signature(byName('all'))).toBe('all(value, …)')
    expect(signature(byName('still'))).toBe('still(wait = 2 s)')
    expect(signature(byName('pick'))).toBe('pick(of, least)')
    expect(signature(byName('now'))).toBe('now()')
  })

  test('says what each argument may be, and what it is where it is left out', () => {
    expect(inWords('frame')).toEqual([
      'a length',
      'a length; 24 mm if left out',
      'yes or no; no if left out',
      'yes or no; yes if left out',
      'text; "raw" or "tiff"; "raw" if left out',
      'text; "sRGB" or "grey", or another text; "sRGB" if left out',
      'a length; infinity if left out',
      'a list, each a length; {1 mm, 2 mm} if left out',
      'a list, each a length; {} if left out',
    ])
    expect(inWords('how_many')).toEqual(['any list'])
    expect(inWords('pick')).toEqual(['a list of any quantities', 'any quantity'])
    expect(inWords('all')).toEqual(['any quantity, or a list of any quantities'])
    expect(defaultText(parameter('x', TEXT))).toBe('')
  })

  test('says within which limits an argument is, in the unit of its kind', () => {
    const limits = (type: Parameter['type'], range: Range) => rangeText(parameter('x', type, { range }))
    expect(limits(number(LENGTH), { least: 0.01 })).toBe('at least 10 mm')
    expect(limits(LENGTHS, { least: 0.01 })).toBe('at least 10 mm')
    expect(limits({ kind: 'any' }, { least: 0.01 })).toBe('at least 0.01')
    expect(rangeText(parameter('x', number(LENGTH)))).toBe('')
    expect(parameterText(parameter('x', number(LENGTH), { range: { least: 0.01 }, default: '1 m' }))).toBe(
      'a length; at least 10 mm; 1 m if left out',
    )
  })

  test('says what comes out, unless that follows from its arguments', () => {
    expect(resultText(byName('now'))).toBe('a time')
    expect(resultText(byName('pick'))).toBe('depends on its arguments')
  })
})
