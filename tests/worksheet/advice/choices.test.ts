import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { levelOf, levelRank, type Variable, variablesOf } from '../../../src/worksheet/advice/choices.ts'
import { type Cell, type Given, readGiven } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../make.ts'

const variableIn = (cells: readonly Cell[], name: string): Variable | undefined =>
  variablesOf(sheetOf(cells), []).find((one) => one.name === name)

const one = (value: string, more: Partial<Given>): Variable | undefined => variableIn([given('a', value, more)], 'a')

/** What may be typed, in order, with what is set now in brackets. */
const texts = (variable: Variable | undefined): string =>
  (variable?.choices ?? [])
    .map(({ cells }, at) => (at === variable?.now ? `[${cells[0]?.value}]` : cells[0]?.value))
    .join(' ')

const costs = (variable: Variable | undefined): Record<string, number> =>
  Object.fromEntries((variable?.choices ?? []).map(({ cells, cost }) => [cells[0]?.value ?? '', cost]))

const steps = (step: number, least: number, most: number) => ({ change: 'freely' as const, step, least, most })

describe('what a suggestion may type into a given', () => {
  test.each<[string, string, Partial<Given>, string]>([
    ['its steps', '120', { unit: 'mm', advice: steps(10, 100, 140) }, '100 110 [120] 130 140'],
    ['its steps within its ends', '107', { unit: 'mm', advice: steps(10, 105, 128) }, '[107] 110 120'],
    ['steps that meet both ends but for rounding', '0.2', { advice: steps(0.1, 0.1, 0.3) }, '0.1 [0.2] 0.3'],
    ['steps in its own spelling', '12 cm', { unit: 'mm', advice: steps(10, 110, 130) }, '110 mm [12 cm] 130 mm'],
    ['steps below zero', '-10', { unit: 'stop', advice: steps(10, -20, 20) }, '-20 [-10] 0 10 20'],
    ['no more than 600 steps', '5', { advice: steps(1, 1, 1000) }, ''],
    ['ratios, by their values', '1:10', { unit: '1:', advice: steps(1, 9, 11) }, '1:11 [1:10] 1:9'],
    [
      'third stops',
      'f/8',
      { unit: 'f/', advice: { change: 'freely', marks: 'thirds', least: 6.3, most: 9 } },
      'f/6.3 f/7.1 [f/8] f/9',
    ],
    [
      'exposure times',
      '1/60 s',
      { unit: '1/ s', most: '1/40 s', least: '1/80 s', advice: { change: 'freely', marks: 'times' } },
      '1/80 s [1/60 s] 1/50 s 1/40 s',
    ],
    [
      'its options that can be read',
      '60',
      { unit: 'mm', options: ['50', '60', 'nix', '90'], advice: { change: 'by kit', marks: 'options' } },
      '50 [60] 90',
    ],
    [
      'marks, figures or texts',
      '60',
      { unit: 'mm', advice: { change: 'by kit', marks: [50, '6 cm', '90 mm', 'nix'] } },
      '50 [60] 90 mm',
    ],
    [
      'marks within the range of its field',
      '60',
      { unit: 'mm', least: '55', most: '80 mm', advice: { change: 'by kit', marks: [50, 70, 90] } },
      '[60] 70',
    ],
    [
      'marks within a factor',
      '60',
      { unit: 'mm', advice: { change: 'by kit', marks: [20, 30, 70, 120, 130], within: 2 } },
      '30 [60] 70 120',
    ],
    ['yes or no', 'yes', { entry: 'yes or no' }, '[yes] no'],
    ['no, where it is one', 'no', { entry: 'yes or no' }, 'yes [no]'],
    ['the answer that is left', 'no', { entry: 'yes or no', advice: { change: 'freely', marks: ['yes'] } }, 'yes [no]'],
    ['its options', 'near', { entry: 'choice', options: ['far', 'near'] }, 'far [near]'],
    [
      'some of its options',
      'near',
      { entry: 'choice', options: ['far', 'near', 'odd'], advice: { change: 'agree', marks: ['odd', 'near'] } },
      'odd [near]',
    ],
    [
      'sizes',
      '100 x 80',
      { entry: 'size', unit: 'mm', advice: { change: 'agree', marks: ['100 x 80', '200 x 100'] } },
      '[100 x 80] 200 x 100',
    ],
    [
      'options of a quantity of its own, half to twice',
      '10',
      { unit: 'mm', options: ['4', '5', '10', '20', '25'] },
      '5 [10] 20',
    ],
    [
      'third stops of its own, half to twice',
      'f/8',
      { unit: 'f/' },
      'f/4 f/4.5 f/5 f/5.6 f/6.3 f/7.1 [f/8] f/9 f/10 f/11 f/13 f/14 f/16',
    ],
    ['exposure times of its own', '1/60 s', { unit: '1/ s' }, '1/100 s 1/80 s [1/60 s] 1/50 s 1/40 s 1/30 s'],
    [
      'round figures in range',
      '10',
      { unit: 'mm', advice: { change: 'agree', within: 2, least: 9.8, most: 12 } },
      '9.8 9.9 [10] 11 12',
    ],
    [
      'round figures in the range of its field',
      '10',
      { unit: 'mm', least: '0.98 cm', most: '12' },
      '9.8 9.9 [10] 11 12',
    ],
    ['round figures with their unit', '100 mm', { least: '99 mm', most: '120 mm' }, '99 mm [100 mm] 110 mm 120 mm'],
    [
      'round figures as near as a tenth',
      '99',
      { unit: 'mm', advice: { change: 'agree', within: 1.04 } },
      '96 97 98 [99] 100',
    ],
    [
      'round figures below zero',
      '-99',
      { unit: 'mm', advice: { change: 'agree', within: 1.04 } },
      '-100 [-99] -98 -97 -96',
    ],
  ])('are %s', (_, value, more, expected) => {
    const found = one(value, more)
    if (expected === '') expect(found?.choices).toHaveLength(600)
    else expect(texts(found)).toBe(expected)
  })

  test.each<[string, string, Partial<Given>]>([
    ['a fact', '100', { unit: 'mm', fixed: true }],
    ['a text', 'map', { entry: 'text' }],
    ['a date', '2026-03-01', { entry: 'date' }],
    ['a list', '1, 2', { entry: 'list', unit: 'mm' }],
    ['a size of which nothing is said', '100 x 80', { entry: 'size', unit: 'mm' }],
    ['what advice forbids', '100', { unit: 'mm', advice: { ...steps(10, 10, 200), change: 'never' } }],
    ['what advice says nothing more of', '100', { unit: 'mm', advice: { change: 'freely' } }],
    ['what is empty', '', { unit: 'mm', advice: steps(10, 100, 140) }],
    ['what cannot be read', 'nix', { unit: 'mm', advice: steps(10, 100, 140) }],
    ['zero, which has no half', '0', { unit: 'mm' }],
    ['what has one choice alone', '10', { unit: 'mm', options: ['10', '30'] }],
    ['a piece, where there is no kit', '60 mm lens', { entry: 'kit', sort: 'lens', piece: { focal: '60 mm' } }],
  ])('is nothing for %s', (_, value, more) => {
    expect(one(value, more)).toBeUndefined()
  })

  test('is nothing for the second cell of a name, nor for a result', () => {
    const cells = [given('a', '10'), { ...given('a', '20'), id: 'second' }, result('r', '2 * a')]
    expect(variablesOf(sheetOf(cells), []).map(({ givens }) => givens.map(({ id }) => id))).toEqual([['a']])
  })

  test('is round figures up to twice as large and as small, each a value of its field, in order', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e4, noNaN: true }), fc.constantFrom(1.5, 2, 8), (figure, within) => {
        const value = String(Number(figure.toPrecision(3)))
        const found = one(value, { unit: 'mm', advice: { change: 'agree', within } })
        const now = Number(value)
        const typed = (found?.choices ?? []).map(({ cells }) => Number(cells[0]?.value))
        expect(typed).toEqual([...typed].sort((a, b) => a - b))
        expect(typed[found?.now ?? -1]).toBe(now)
        for (const one of typed) {
          expect(Math.max(one / now, now / one)).toBeLessThanOrEqual(within * (1 + 1e-9))
          if (one !== now) expect(Number(one.toPrecision(2))).toBe(one)
        }
        // Two digits leave no gap of more than a tenth, up to both ends.
        const ends = [now / within, ...typed, now * within]
        for (const [at, high] of ends.entries()) if (at > 0) expect(high / (ends[at - 1] as number)).toBeLessThan(1.12)
        for (const [at, { values }] of (found?.choices ?? []).entries())
          expect(values[0]).toBeCloseTo((typed[at] as number) / 1000, 12)
      }),
    )
  })
})

describe('how willingly a given is changed', () => {
  test('is said by its advice, else by what it is', () => {
    const levels = (...all: Partial<Given>[]) => all.map((more) => levelOf(given('a', '1', more)))
    expect(
      levels(
        { advice: { change: 'never' } },
        { advice: { change: 'freely' }, fixed: true },
        { advice: { change: 'by kit' } },
        { advice: { change: 'agree' } },
      ),
    ).toEqual([undefined, 'setting', 'kit', 'agreement'])
    expect(
      levels({}, { fixed: true }, { entry: 'text' }, { entry: 'date' }, { entry: 'kit' }, { entry: 'list' }),
    ).toEqual(['agreement', undefined, undefined, undefined, 'kit', 'agreement'])
    expect((['setting', 'kit', 'agreement'] as const).map(levelRank)).toEqual([0, 1, 2])
  })

  test('costs by what it is, and by the doublings', () => {
    const marks = [50, 100, 200, 400]
    const priced = (change: 'freely' | 'by kit' | 'agree', cost?: number) =>
      costs(one('100', { unit: 'mm', advice: { change, marks, ...(cost === undefined ? {} : { cost }) } }))
    const close = (...all: number[]) =>
      Object.fromEntries(all.map((cost, at) => [marks[at] as number, expect.closeTo(cost, 9)]))
    expect(priced('freely')).toEqual(close(2, 0, 2, 3))
    expect(priced('by kit')).toEqual(close(4, 0, 4, 5))
    expect(priced('agree')).toEqual(close(10, 0, 10, 14))
    expect(priced('freely', 3)).toEqual(close(4, 0, 4, 5))
  })

  test('costs half a doubling for what is no quantity, and through zero a share of the larger figure', () => {
    expect(costs(one('yes', { entry: 'yes or no' }))).toEqual({ yes: 0, no: 8 })
    expect(costs(one('-10', { unit: 'stop', advice: steps(10, -20, 40) }))).toEqual({
      '-20': 1.5,
      '-10': 0,
      '0': 2,
      '10': 3,
      '20': 2.5,
      '30': expect.closeTo(1 + 40 / 30, 9),
      '40': 2.25,
    })
    expect(costs(one('0', { unit: 'stop', advice: steps(10, 0, 10) }))).toEqual({ '0': 0, '10': 2 })
  })
})

describe('givens that always take the same text', () => {
  const lamps = (right: string) => [
    given('left', '500', { unit: 'mm', advice: { ...steps(100, 400, 600), with: 'right' } }),
    given('right', right, { unit: 'mm', advice: steps(100, 400, 600) }),
  ]

  test('are changed as one', () => {
    const variables = variablesOf(sheetOf(lamps('500')), [])
    expect(variables.map(({ name }) => name)).toEqual(['left'])
    expect(variables[0]?.choices.map(({ cells, values }) => [cells.map(({ value }) => value), values])).toEqual([
      [
        ['400', '400'],
        [0.4, 0.4],
      ],
      [
        ['500', '500'],
        [0.5, 0.5],
      ],
      [
        ['600', '600'],
        [0.6, 0.6],
      ],
    ])
    expect(variables[0]?.positions).toHaveLength(2)
  })

  test('stay apart where nothing is changed', () => {
    const { choices, now } = variablesOf(sheetOf(lamps('750')), [])[0] as Variable
    expect(choices.map(({ cells, values }) => [cells.map(({ value }) => value), values])).toEqual([
      [
        ['400', '400'],
        [0.4, 0.4],
      ],
      [
        ['500', '750'],
        [0.5, 0.75],
      ],
      [
        ['600', '600'],
        [0.6, 0.6],
      ],
    ])
    expect(now).toBe(1)
  })

  test('are none while one of them is empty', () => {
    expect(variablesOf(sheetOf(lamps('')), [])).toEqual([])
  })
})

describe('any other figure of a quantity without marks', () => {
  const between = (value: string, more: Partial<Given>) => (figure: number, digits: number) =>
    one(value, more)?.between?.(figure, digits)?.cells[0]?.value

  test('may be typed in so many digits, in range', () => {
    const own = between('10', { unit: 'mm', most: '15' })
    expect([own(0.0123456, 3), own(0.0123456, 5), own(0.0151, 4), own(0.003, 3)]).toEqual([
      '12.3',
      '12.346',
      undefined,
      undefined,
    ])
    const ratio = between('1:10', { unit: '1:' })
    expect(ratio(0.0811, 3)).toBe('1:12.3')
    const choice = one('10', { unit: 'mm' })?.between?.(0.02, 3)
    expect(choice).toMatchObject({ values: [0.02], cost: expect.closeTo(10, 9) })
  })

  test('may not where there are marks or steps', () => {
    for (const more of [{ unit: 'mm', advice: steps(1, 5, 20) }, { unit: 'mm', options: ['5', '10'] }, { unit: 'f/' }])
      expect(one('10', more)?.between).toBeUndefined()
  })
})

describe('a piece of kit', () => {
  const lens = (name: string, figures: Record<string, string>, sort = 'lens' as const) => ({ sort, name, figures })
  const cells = [
    given('glass', '60 mm lens', {
      entry: 'kit',
      sort: 'lens',
      piece: { focal: '60 mm', widest: 'f/2.8' },
      fills: { focal: 'focal', widest: 'opened' },
    }),
    given('focal', '60', { unit: 'mm' }),
    given('opened', 'f/2.8', { unit: 'f/' }),
    given('other', '60', { unit: 'mm' }),
  ]
  const pieces = [
    lens('60 mm lens', { focal: '60 mm' }),
    lens('90 mm lens', { focal: '90 mm', widest: 'f/4' }),
    lens('Plain', { focal: '50 mm' }),
    lens('Odd', { focal: 'long' }),
    { sort: 'lamp' as const, name: 'Panel', figures: { focal: '70 mm' } },
  ]

  test('is changed for another of its sort, with the givens it fills in', () => {
    const variables = variablesOf(sheetOf(cells), pieces)
    expect(variables.map(({ name, level, ordered, now }) => [name, level, ordered, now])).toEqual([
      ['glass', 'kit', false, 0],
      ['other', 'agreement', true, expect.any(Number)],
    ])
    const { choices, givens } = variables[0] as Variable
    expect(givens.map(({ name }) => name)).toEqual(['glass', 'focal', 'opened'])
    expect(choices.map((choice) => choice.cells.map(({ value }) => value))).toEqual([
      ['60 mm lens', '60', 'f/2.8'],
      ['90 mm lens', '90 mm', 'f/4'],
      ['Plain', '50 mm', 'f/2.8'],
    ])
    expect(choices.map(({ cost }) => cost)).toEqual([0, 3.5, 3.5])
    expect(choices[1]?.values.slice(1)).toEqual([0.09, 4])
    expect(choices[0]?.values.slice(1)).toEqual([0.06, 2.8])
  })

  test('leaves the givens it fills in to be changed by themselves where there is no kit, or no piece is chosen', () => {
    const names = (list: readonly Cell[], kit: typeof pieces) => variablesOf(sheetOf(list), kit).map(({ name }) => name)
    expect(names(cells, [])).toEqual(['focal', 'opened', 'other'])
    const empty = cells.map((cell) => (cell.name === 'glass' ? { ...cell, value: ' ' } : cell))
    expect(names(empty, pieces)).toEqual(['focal', 'opened', 'other'])
  })

  test('is not changed while a given it fills in is empty', () => {
    const waiting = cells.map((cell) => (cell.name === 'opened' ? { ...cell, value: '' } : cell))
    expect(variablesOf(sheetOf(waiting), pieces).map(({ name }) => name)).toEqual(['other'])
  })
})

test('every text that is offered can be read in its field', () => {
  for (const unit of ['mm', 'f/', '1:', '1/ s', 'ppi', 'EV', '°']) {
    const variable = one('10', { unit })
    for (const { cells, values } of variable?.choices ?? []) expect(readGiven(cells[0] as Given).value).toBe(values[0])
    expect(variable?.choices.length, unit).toBeGreaterThan(3)
  }
})
