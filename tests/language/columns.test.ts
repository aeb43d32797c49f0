import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../src/functions/index.ts'
import { compileColumns } from '../../src/language/columns/column-compiler.ts'
import { type Column, columnOf, numbers, same, valueAt } from '../../src/language/columns/columns.ts'
import { stepsOfProgram } from '../../src/language/evaluating/closures.ts'
import {
  ComputeError,
  checkFormula,
  computable,
  level,
  list,
  number,
  record,
  type Type,
  type Value,
  YES_NO,
} from '../../src/language/index.ts'
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
]

const scope = {
  library: LIBRARY,
  typeOf: (name: string) => (Object.hasOwn(CELLS, name) ? CELLS[name] : undefined),
  names: () => Object.keys(CELLS),
}

const figure = fc.oneof(
  fc.constantFrom(0, -0, 1, -1, 2, 0.5, 1e200, -1e200, 1e-200, Number.NaN),
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
