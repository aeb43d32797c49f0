import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../src/functions/index.ts'
import { compileColumns } from '../../src/language/columns/column-compiler.ts'
import { attempt, byTry, type Column, columnOf, numbers, same, valueAt } from '../../src/language/columns/columns.ts'
import { FUNCTION_TABLE, listFunction, partFunction, recordFunction } from '../../src/language/evaluating/call-table.ts'
import { type Step, stepsOfProgram } from '../../src/language/evaluating/closures.ts'
import type { Input } from '../../src/language/evaluating/compiled-formula.ts'
import {
  ComputeError,
  checkFormula,
  computable,
  level,
  list,
  number,
  type Range,
  Refusal,
  record,
  type Type,
  type Value,
  YES_NO,
} from '../../src/language/index.ts'
import { BINARY } from '../../src/language/values/operators.ts'
import { LENGTH, NONE, STOP } from '../../src/units/index.ts'

const TRIES = 7

const CELLS: Readonly<Record<string, Type>> = {
  a: number(NONE),
  b: number(NONE),
  w: number(LENGTH),
  ev: level(STOP),
  lit: YES_NO,
  size: record('size', { width: number(LENGTH), height: number(LENGTH) }),
  many: list(number(NONE)),
}

/** Formulas of every kind of step: signs, calls of one argument, two and more, parts, lists, conditions, branches. */
const FORMULAS = [
  ...['a + b', 'a - b', 'a * b', 'a / b', 'a^b', '-a', 'a^2', '(a - b) / (a + b)', '2 - a', 'a - 2', '2 / a', 'a / 2'],
  ...['2^a', 'a^0.5', 'a^-1', 'a * 2 - b / 3 + 1', '0 / a', 'a * a - b * b', '-(a + b)^3', 'a + 2', '3 * a'],
  ...['sqrt(a)', 'sqrt(a + b)', 'ln(a)', 'abs(a)', 'sqrt(2)', 'exp(a) * sqrt(b)', 'sqrt(a)^2'],
  ...['atan2(a, b)', 'atan2(a, 2)', 'atan2(2, b)', 'clamp(a, 0, 1)', 'min(a, b)', 'max({a, b, 1})', 'mean(many)'],
  ...['spread_power(a * 1 deg)', 'effective_aperture(a, b)', 'w * a', 'hypot(w, w * b)', 'sum(many) * a'],
  ...['size.width / size.height', 'size.width * a', 'many * a', 'sum(many * a)', 'shift_time(1 s, a * 1 stop)'],
  ...['a < b', 'a >= 1', 'a = b', 'not a < b', 'not lit', 'a < b and b < 2', 'a < b or 1 / a > 2', 'lit and a > 0'],
  ...['lit or 1 / a > 0', 'a = 0 or 1 / a < 3', 'a != 0 and 1 / a < 3', '1 < 2 and a > 0', '1 > 2 or a > 0'],
  ...[
    'when(lit, a, b)',
    'when(a > b, a / b, b / a)',
    'when(a = 0, 1, 1 / a)',
    'when(1 < 2, a, b)',
    'when(1 > 2, a, b)',
  ],
  ...[
    'when(lit, size.width, w)',
    'when(a < b, sqrt(a), sqrt(b)) + 1',
    'ev + a * 1 stop',
    'depth_of_field(8, 30 um, a, 50 mm).total',
  ],
  ...['2 + 3', '1 / 0', 'sqrt(-1) + a', 'exposure_value(a, 1 s) - ev'],
  ...['asin(a)', 'asin(a / 2)', 'filter_shift(a)', 'transmittance_shift(a)', 'reflectance_shift(a, b)', 'exp(a * 400)'],
  ...[
    'cct_from_xy(a, b)',
    'round_to(a, b)',
    'round_to(2, b)',
    'sign(a)',
    'size(w, w * b).height',
    'size(w * a, 1 mm).width',
  ],
  ...[
    'distortion_shift(a, w)',
    'hypot(a, b, 2)',
    'hypot(w, w, w)',
    '0 - a',
    '0 * a',
    'a + (1 - 1)',
    'b^a^a',
    '-a^2',
    'a / -2',
  ],
  ...[
    'item({a, b}, 1 + b)',
    'when(lit, a, 1 / 0)',
    'when(lit, 1 / 0, b)',
    'when(a > 0, 1, 2) + a',
    'not (a = b or lit)',
  ],
  ...[
    'lit or a > b',
    'a > b and lit',
    'a > 1 and 1 / 0 > 1',
    '2 > a',
    '2 = b',
    'w > w * a',
    'lit = (a > b)',
    'many * b',
  ],
  ...['a^0', 'a^1', 'a + 1.7e308', 'a * 1e300', 'a <= b', 'a > b', 'a != b', 'a / 1e-300', '(a + 1)^2'],
]

const scope = {
  library: LIBRARY,
  typeOf: (name: string) => (Object.hasOwn(CELLS, name) ? CELLS[name] : undefined),
  names: () => Object.keys(CELLS),
}

const figure = fc.oneof(
  fc.constantFrom(0, -0, 1, -1, 2, 0.5, 1e200, -1e200, 1e-200, 1.7e308, -1.7e308, Infinity, -Infinity, Number.NaN),
  fc.double({ min: -3, max: 3, noNaN: true }),
)

/** Seven values of a cell; a number that is NaN stands for a try in which the cell has no value. */
const values = (type: Type): fc.Arbitrary<readonly (Value | undefined)[]> => {
  const one: fc.Arbitrary<Value | undefined> =
    type.kind === 'number'
      ? figure.map((x) => (Number.isNaN(x) ? undefined : x))
      : type.kind === 'record'
        ? fc
            .record({ width: figure, height: figure })
            .map((size) => (Number.isNaN(size.width) || Number.isNaN(size.height) ? undefined : size))
        : type.kind === 'list'
          ? fc.option(fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 3, maxLength: 3 }), {
              nil: undefined,
            })
          : fc.option(fc.boolean(), { nil: undefined })
  return fc.oneof(
    { weight: 4, arbitrary: fc.array(one, { minLength: TRIES, maxLength: TRIES }) },
    { weight: 1, arbitrary: one.map((value) => Array<Value | undefined>(TRIES).fill(value)) },
  )
}

/** The column of a cell: of one value where it has one alone, of records part by part. */
function columnFor(type: Type, given: readonly (Value | undefined)[], constant: boolean): Column {
  const [first] = given
  if (constant && first !== undefined && given.every((value) => value === first)) return same(first)
  if (type.kind === 'number') return numbers(Float64Array.from(given, (value) => (value as number) ?? Number.NaN))
  if (type.kind !== 'record') return columnOf(given)
  const part = (name: string) =>
    numbers(Float64Array.from(given, (value) => (value as Record<string, number> | undefined)?.[name] ?? Number.NaN))
  return { kind: 'record', parts: { width: part('width'), height: part('height') } }
}

/** What is no number is no value. */
const orNone = (value: Value | undefined) => (Number.isNaN(value) ? undefined : value)

/** The arguments of one try; to read one that has no value is an error of computing. */
function read(args: readonly (Value | undefined)[]): Value[] {
  const readable: Value[] = []
  for (const [k, value] of args.entries())
    Object.defineProperty(readable, k, {
      get: () => {
        if (value === undefined) throw new ComputeError('It has no value.')
        return value
      },
    })
  return readable
}

describe('a column', () => {
  const items = (column: Column, count: number): unknown[] =>
    Array.from({ length: count }, (_, i) => valueAt(column, i))

  test('holds numbers, flags or other values, and none where there is none', () => {
    expect(columnOf([undefined, 2, 0])).toEqual({ kind: 'numbers', data: Float64Array.from([Number.NaN, 2, 0]) })
    expect(columnOf([undefined, true, false])).toEqual({ kind: 'flags', data: Uint8Array.from([2, 1, 0]) })
    expect(columnOf(['a', undefined])).toEqual({ kind: 'values', data: ['a', undefined] })
    expect(columnOf([undefined, undefined])).toEqual({ kind: 'none' })
    expect(columnOf([])).toEqual({ kind: 'none' })
  })

  test('gives in each try what is in it', () => {
    expect(items(columnOf([undefined, 2, 0]), 3)).toEqual([undefined, 2, 0])
    expect(items(columnOf([undefined, true, false]), 3)).toEqual([undefined, true, false])
    expect(items(columnOf(['a', undefined, [1]]), 3)).toEqual(['a', undefined, [1]])
    expect(items(same('a'), 2)).toEqual(['a', 'a'])
    expect(items({ kind: 'none' }, 2)).toEqual([undefined, undefined])
    const parts = { width: columnOf([1, undefined, 3]), on: columnOf([true, true, undefined]) }
    expect(items({ kind: 'record', parts }, 3)).toEqual([{ width: 1, on: true }, undefined, undefined])
  })

  test('is computed once where its arguments are the same in all tries', () => {
    let times = 0
    const twice = (x: Value): Value => {
      times++
      return (x as number) * 2
    }
    expect(byTry([same(2)], 100, twice)).toEqual(same(4))
    expect(times).toBe(1)
    expect(byTry([same(2), { kind: 'none' }], 100, twice)).toEqual({ kind: 'none' })
    expect(times).toBe(1)
    expect(items(byTry([columnOf([1, undefined, 3])], 3, twice), 3)).toEqual([2, undefined, 6])
    expect(times).toBe(3)
  })

  test('has no value where its computation is refused; an error of ours stays one', () => {
    const refused = (): Value => {
      throw new ComputeError('No.')
    }
    expect(byTry([same(1)], 2, refused)).toEqual({ kind: 'none' })
    expect(byTry([columnOf([1, 2])], 2, refused)).toEqual({ kind: 'none' })
    const odd = (): Value => {
      throw new TypeError('A bug.')
    }
    expect(() => byTry([same(1)], 2, odd)).toThrow(TypeError)
    expect(() => byTry([columnOf([1, 2])], 2, odd)).toThrow(TypeError)
  })
})

test('steps that are no formula of ours are refused', () => {
  const broken: readonly (readonly Step[])[] = [
    ...[[], ['+'], [0, '+'], [0, 1], ['~'], ['not'], [0, 1, 'and'], [0, [1], '+'], [0, 1, 2, '?'], [0, [1], '?']],
    ...[
      [[0], [1], [2], '?'],
      [[0]],
      [{ call: partFunction(), count: 1 }, '+'],
      [[0], { call: listFunction(), count: 1 }],
    ],
  ]
  for (const steps of broken) expect(() => compileColumns(steps), JSON.stringify(steps)).toThrow(/^A lowered formula/)
  const words = compileColumns([0, 1, '+'])
  expect(() => words([columnOf(['a']), columnOf([1])], 1)).toThrow('Arithmetic on a column of values.')
})

test('a program is used again for more tries and for fewer', () => {
  for (const text of [
    '2 - a',
    '2^a',
    'a / 2',
    'a + b',
    'atan2(2, b)',
    'atan2(a, 3)',
    'sqrt(a) + 1',
    'clamp(a, 0, b)',
  ]) {
    const { program, inputs } = computable(checkFormula(text, scope).root as never, true)
    const overColumns = compileColumns(stepsOfProgram(program) as readonly Step[])
    for (const tries of [3, 7, 2, 7]) {
      const given = {
        a: Array.from({ length: tries }, (_, i) => i + tries),
        b: Array.from({ length: tries }, (_, i) => 9 - i),
      }
      const read = (input: Input, i: number): Value =>
        'cell' in input ? ((given as Record<string, number[]>)[input.cell]?.[i] as number) : input.constant
      const columns = inputs.map((input) =>
        'cell' in input ? columnOf((given as Record<string, number[]>)[input.cell] as number[]) : same(input.constant),
      )
      const found = overColumns(columns, tries)
      for (let i = 0; i < tries; i++) {
        const args = inputs.map((input) => read(input, i))
        expect(valueAt(found, i), `${text} in ${i} of ${tries}`).toBe(
          program(
            args,
            args.map((_, k) => k),
          ),
        )
      }
    }
  }
})

describe('a sign over columns', () => {
  const odd = [0, -0, 1, -1, 2, -2, 0.5, 1e200, 1e-200, 1.7e308, -1.7e308, Infinity, -Infinity, Number.NaN]

  test.each(Object.keys(BINARY).filter((sign) => sign !== 'and' && sign !== 'or'))(
    '%s gives of every pair of odd figures what it gives by itself',
    (sign) => {
      const compute = BINARY[sign] as (a: number, b: number) => Value
      const expected = (a: number, b: number): Value | undefined =>
        Number.isNaN(a) || Number.isNaN(b) ? undefined : orNone(attempt(() => compute(a, b)))
      const column = numbers(Float64Array.from(odd))
      for (const one of odd) {
        const alone = Number.isNaN(one) ? columnOf([]) : same(one)
        const repeated = numbers(new Float64Array(odd.length).fill(one))
        const over = (a: Column, b: Column, tries = odd.length) =>
          compileColumns([0, 1, sign] as readonly Step[])([a, b], tries)
        for (const [other, i] of odd.map((value, k) => [value, k] as const)) {
          const [before, after] = [expected(one, other), expected(other, one)]
          expect(valueAt(over(alone, column), i), `${one} ${sign} ${other}`).toEqual(before)
          expect(valueAt(over(repeated, column), i), `${one} ${sign} ${other}, repeated`).toEqual(before)
          expect(valueAt(over(column, alone), i), `${other} ${sign} ${one}`).toEqual(after)
          const beside = over(alone, numbers(Float64Array.of(other, 1)), 2)
          expect(valueAt(beside, 0), `${one} ${sign} ${other}, with nothing odd beside it`).toEqual(before)
        }
      }
    },
  )
})

describe('what is the same in all tries', () => {
  const [column, flags] = [columnOf([1, 2]), columnOf([true, false])]
  const over = (steps: readonly unknown[], ...args: readonly Column[]) =>
    compileColumns(steps as readonly Step[])(args, 2)

  test('is computed once by a sign', () => {
    expect(over([0, 1, '+'], same(2), same(3))).toEqual(same(5))
    expect(over([0, 1, '/'], same(2), same(0))).toEqual({ kind: 'none' })
    expect(over([0, 1, '<'], same(2), same(3))).toEqual(same(true))
    expect(over([0, 'not'], same(true))).toEqual(same(false))
  })

  test('chooses a branch for all, and the other is not computed', () => {
    const refusedByItsKind = [2, 2, '+']
    const words = columnOf(['a', 'b'])
    expect(over([0, [1], refusedByItsKind, '?'], same(true), column, words)).toBe(column)
    expect(over([0, refusedByItsKind, [1], '?'], same(false), column, words)).toBe(column)
    expect(over([0, [1], 'and'], same(true), flags)).toBe(flags)
    expect(over([0, [1], 'or'], same(false), flags)).toBe(flags)
    expect(over([0, refusedByItsKind, 'and'], same(false), flags, words)).toEqual(same(false))
    expect(over([0, refusedByItsKind, 'or'], same(true), flags, words)).toEqual(same(true))
  })

  test('takes a part of all records at once, and none where they lack it', () => {
    const sizes: Column = { kind: 'record', parts: { width: column } }
    const part = { call: partFunction(), count: 2 }
    expect(over([0, 1, part], sizes, same('width'))).toBe(column)
    expect(over([0, 1, part], sizes, same('depth'))).toEqual({ kind: 'none' })
    expect(valueAt(over([0, 1, part], columnOf([{ width: 3 }, { width: 4 }]), same('width')), 1)).toBe(4)
  })
})

describe('a function over columns', () => {
  const ranges: readonly (Range | undefined)[] = [
    ...[
      undefined,
      { least: 1 },
      { most: 1 },
      { above: 1 },
      { below: 1 },
      { least: 0, most: 1 },
      { above: 0, below: 1 },
    ],
    ...[{ above: -1, most: 1 }, { least: -1, below: 1 }, { whole: true }, { least: 1, whole: true }],
  ]
  /** The generated name of a made-up function of one number or more. */
  const made = (
    one: Range | undefined,
    compute: (...args: number[]) => Value,
    ...rest: readonly ({ readonly range?: Range } | undefined)[]
  ) => {
    const parameters = [one ? { range: one } : {}, ...rest.filter((more) => more !== undefined)]
    const callable = {
      name: 'made',
      parameters: parameters.map((more, k) => ({ name: `p${k}`, type: number(NONE), about: '', ...more })),
      result: number(NONE),
      compute: compute as never,
    }
    return recordFunction(
      callable,
      parameters.map(() => number(NONE)),
    )
  }
  const column = fc.oneof(fc.array(fc.oneof(figure, fc.constantFrom(0, 1, -1)), { minLength: 3, maxLength: 3 }), figure)
  const asColumn = (of: number | readonly number[]) => {
    if (typeof of === 'number') return Number.isNaN(of) ? columnOf([]) : same(of)
    return numbers(Float64Array.from(of))
  }

  /** In each of three tries the function gives what it gives by itself. */
  function agrees(name: string, args: readonly (number | readonly number[])[]): void {
    const program = compileColumns([...args.keys(), { call: name, count: args.length }] as readonly Step[])
    const found = program(args.map(asColumn), 3)
    for (let i = 0; i < 3; i++) {
      const values = args.map((of) => (typeof of === 'number' ? of : (of[i] as number)))
      expect(valueAt(found, i), JSON.stringify(values)).toEqual(alone(name, values))
    }
  }
  function alone(name: string, values: readonly number[]): Value | undefined {
    if (values.some(Number.isNaN)) return undefined
    try {
      return orNone(FUNCTION_TABLE[name]?.(...values))
    } catch (error) {
      if (error instanceof ComputeError) return undefined
      throw error
    }
  }

  test.each(ranges.map((range) => [JSON.stringify(range) ?? 'any', range] as const))(
    'of numbers in the range %s has no value for others, as by itself',
    (_, range) => {
      const half = made(range, (x) => (x as number) / 2)
      const first = made(range, (x, y) => (x as number) - (y as number) / 2, {})
      const second = made(undefined, (x, y) => (x as number) / 2 - (y as number), range ? { range } : {})
      fc.assert(
        fc.property(column, column, (x, y) => {
          agrees(half, [x])
          agrees(first, [x, y])
          agrees(second, [x, y])
        }),
      )
    },
  )

  test('that gives something else than a number gives it in each try', () => {
    const words = made(undefined, (x) => `${x}`)
    const pairs = made(undefined, (x, y) => [x as number, y as number], {})
    const sometimes = made(undefined, (x) => ((x as number) > 0 ? 'more' : false))
    agrees(words, [[1, Number.NaN, 3]])
    agrees(words, [2])
    agrees(sometimes, [[Number.NaN, 2, 3]])
    agrees(pairs, [[1, 2, Number.NaN], 4])
    agrees(pairs, [4, [1, 2, Number.NaN]])
  })

  test('of three numbers gives in each try what it gives by itself', () => {
    const between = made(
      undefined,
      (x, low, high) => Math.min(Math.max(x as number, low as number), high as number),
      {},
      {},
    )
    agrees(between, [[1, 5, 9], 2, [7, 7, 7]])
    agrees(between, [[1, 5, Number.NaN], 6, 8])
  })

  test.each([
    ['one number', { least: 0 }, []],
    ['two numbers', undefined, [{}]],
  ] as const)(
    'of %s puts its values where those of the block before were, without room for each try',
    (_, range, rest) => {
      const sum = made(range, (...figures) => figures.reduce((total, x) => total + x, 0), ...rest)
      const args = [
        [1, 2, 3],
        [4, 5, 6],
      ]
        .slice(0, 1 + rest.length)
        .map(asColumn)
      const program = compileColumns([...args.keys(), { call: sum, count: args.length }] as readonly Step[])
      const found = program(args, 3)
      const { data } = found as { readonly data: Float64Array }
      expect([...data]).toEqual(rest.length > 0 ? [5, 7, 9] : [1, 2, 3])
      expect(program(args, 3)).toEqual({ kind: 'numbers', data })
      expect((program(args, 3) as typeof found & { data: unknown }).data).toBe(data)
    },
  )

  test('has no value where it refuses its arguments; an error of ours stays one', () => {
    const refusing = (error: () => Error) => (x: number) => {
      if (x > 1) throw error()
      return x
    }
    for (const two of [undefined, {}]) {
      const rest = two ? [[1, 1, 1]] : []
      agrees(made(undefined, refusing(() => new Refusal('No.')) as never, two), [[1, 2, 0], ...rest])
      agrees(made(undefined, refusing(() => new ComputeError('No.')) as never, two), [[1, 2, 0], ...rest])
      const odd = made(undefined, refusing(() => new TypeError('A bug.')) as never, two)
      expect(() => agrees(odd, [[1, 2, 0], ...rest])).toThrow('A bug.')
      const program = compileColumns([0, ...(two ? [1] : []), { call: odd, count: two ? 2 : 1 }] as readonly Step[])
      expect(() => program([columnOf([1, 2]), columnOf([1, 1])], 2)).toThrow(TypeError)
    }
  })
})

describe('a formula over columns of tries', () => {
  test.each(FORMULAS)('%s gives in each try what it gives by itself', (text) => {
    const root = checkFormula(text, scope).root
    if (!root) throw new Error(`${text} is no formula.`)
    const { program, inputs } = computable(root, true)
    const steps = stepsOfProgram(program)
    if (!steps) throw new Error(`${text} has no steps.`)
    const overColumns = compileColumns(steps)
    const cells = inputs.map((input) => ('cell' in input ? (CELLS[input.cell] as Type) : undefined))
    fc.assert(
      fc.property(
        fc.tuple(...cells.map((type) => (type ? values(type) : fc.constant([])))),
        fc.boolean(),
        (given, constant) => {
          const columns = inputs.map((input, k) =>
            'cell' in input ? columnFor(cells[k] as Type, given[k] ?? [], constant) : same(input.constant),
          )
          const found = overColumns(columns, TRIES)
          for (let i = 0; i < TRIES; i++) {
            const args = inputs.map((input, k) => ('cell' in input ? given[k]?.[i] : input.constant))
            expect(orNone(valueAt(found, i)), `${text} with ${JSON.stringify(args)}`).toEqual(alone(args))
          }
        },
      ),
    )

    function alone(args: readonly (Value | undefined)[]): Value | undefined {
      try {
        const value = program(
          read(args),
          args.map((_, k) => k),
        )
        return orNone(value)
      } catch (error) {
        if (error instanceof ComputeError) return undefined
        throw error
      }
    }
  })
})
