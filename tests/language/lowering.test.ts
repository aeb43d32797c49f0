import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { lower } from '../../src/language/compiling/lower.ts'
import {
  ComputeError,
  checkFormula,
  computable,
  computeOnce,
  explainFailure,
  number,
  record,
  TEXT,
  type Type,
  type Value,
  YES_NO,
} from '../../src/language/index.ts'
import { add, divide, multiply, negative, power, subtract } from '../../src/language/values/operations.ts'
import { NONE } from '../../src/units/index.ts'
import { type Cells, SCOPE, scopeOf } from './make.ts'

type Figures = Readonly<Record<string, Value>>

/** A formula with brackets round everything, and what it means. */
interface Bracketed<T> {
  readonly text: string
  readonly value: (cells: Figures) => T
}

const OPERATIONS = { '+': add, '-': subtract, '*': multiply, '/': divide, '^': power } as const
const COMPARISONS = {
  '<': (a: number, b: number) => a < b,
  '<=': (a: number, b: number) => a <= b,
  '>': (a: number, b: number) => a > b,
  '>=': (a: number, b: number) => a >= b,
  '=': (a: number, b: number) => a === b,
  '!=': (a: number, b: number) => a !== b,
} as const

const { sum, condition } = fc.letrec<{ sum: Bracketed<number>; condition: Bracketed<boolean> }>((tie) => ({
  sum: fc.oneof(
    { maxDepth: 5, depthIdentifier: 'lowered' },
    fc.constantFrom('a', 'b').map((name) => ({ text: name, value: (cells: Figures) => cells[name] as number })),
    fc.nat(4).map((figure) => ({ text: String(figure), value: () => figure })),
    fc.tuple(tie('sum'), fc.constantFrom('+', '-', '*', '/', '^'), tie('sum')).map(([a, sign, b]) => ({
      text: `(${a.text} ${sign} ${b.text})`,
      value: (cells: Figures) => OPERATIONS[sign](a.value(cells), b.value(cells)),
    })),
    tie('sum').map((a) => ({ text: `(-${a.text})`, value: (cells: Figures) => negative(a.value(cells)) })),
    fc.array(tie('sum'), { minLength: 1, maxLength: 3 }).map((items) => ({
      text: `max({${items.map(({ text }) => text).join(', ')}})`,
      value: (cells: Figures) => Math.max(...items.map(({ value }) => value(cells))),
    })),
    fc.tuple(tie('condition'), tie('sum'), tie('sum')).map(([c, a, b]) => ({
      text: `when(${c.text}, ${a.text}, ${b.text})`,
      value: (cells: Figures) => (c.value(cells) ? a : b).value(cells),
    })),
    fc.tuple(tie('sum'), tie('sum')).map(([a, b]) => ({
      text: `size(${a.text} * 1 mm, (${b.text}) * 1 mm).height / 1 mm`,
      value: (cells: Figures) => {
        a.value(cells)
        return (b.value(cells) * 0.001) / 0.001
      },
    })),
  ),
  condition: fc.oneof(
    { maxDepth: 5, depthIdentifier: 'lowered' },
    fc.constantFrom('lit', 'dim').map((name) => ({ text: name, value: (cells: Figures) => cells[name] as boolean })),
    fc
      .constant({ text: 'kind = "wide"', value: (cells: Figures) => cells.kind === 'wide' })
      .map((one) => ({ ...one, text: `(${one.text})` })),
    fc.tuple(tie('sum'), fc.constantFrom('<', '<=', '>', '>=', '=', '!='), tie('sum')).map(([a, sign, b]) => ({
      text: `(${a.text} ${sign} ${b.text})`,
      value: (cells: Figures) => COMPARISONS[sign](a.value(cells), b.value(cells)),
    })),
    fc.tuple(tie('condition'), fc.constantFrom('and', 'or'), tie('condition')).map(([a, sign, b]) => ({
      text: `(${a.text} ${sign} ${b.text})`,
      value: (cells: Figures) => (sign === 'and' ? a.value(cells) && b.value(cells) : a.value(cells) || b.value(cells)),
    })),
    tie('condition').map((a) => ({ text: `(not ${a.text})`, value: (cells: Figures) => !a.value(cells) })),
  ),
}))

const TYPES: Readonly<Record<string, Type>> = { a: number(NONE), b: number(NONE), lit: YES_NO, dim: YES_NO, kind: TEXT }
const CELLS: Cells = new Map(Object.entries(TYPES).map(([name, type]) => [name, [type, 0] as const]))

const figures = fc.record({
  a: fc.integer({ min: -3, max: 3 }),
  b: fc.integer({ min: -3, max: 3 }),
  lit: fc.boolean(),
  dim: fc.boolean(),
  kind: fc.constantFrom('wide', 'narrow'),
})

function attempt(compute: () => Value): unknown {
  try {
    const value = compute()
    return typeof value === 'number' ? Number(value.toPrecision(9)) + 0 : value
  } catch (error) {
    if (error instanceof ComputeError) return 'refused'
    throw error
  }
}

describe('a formula gives what its brackets say', () => {
  test.each([
    ['a number', sum],
    ['a condition', condition],
  ])('as %s', (_, made: fc.Arbitrary<Bracketed<Value>>) => {
    fc.assert(
      fc.property(made, figures, ({ text, value }, cells) => {
        const { root } = checkFormula(text, scopeOf(CELLS))
        fc.pre(root !== undefined)
        const found = attempt(
          () =>
            computeOnce(computable(root as NonNullable<typeof root>, true), (name) => (cells as Figures)[name]).value,
        )
        fc.pre(found !== 'refused')
        expect(found, text).toEqual(attempt(() => value(cells)))
      }),
      { numRuns: 300 },
    )
  })
})

test('powers go from the right, whatever they are made of', () => {
  const value = (text: string): Value =>
    computeOnce(computable(checkFormula(text, SCOPE).root as never, false), () => 2).value
  expect(value('2^3^2')).toBe(512)
  expect(value('(2^3)^2')).toBe(64)
  expect(value('(x^3)^x')).toBe(64)
  expect(value('(-x)^2')).toBe(4)
  expect(value('-x^2')).toBe(-4)
  expect(value('2^-x')).toBe(0.25)
})

describe('a failure is reported at the operation it comes from', () => {
  test.each([
    ['2 + 3 * (1 / 0)', '(1 / 0)'],
    ['1 / 0 + 2 * 3', '1 / 0'],
    ['2 - 1 + x / 0 - 4', 'x / 0'],
    ['-(x / 0)', '(x / 0)'],
    ['-x + 1 / 0', '1 / 0'],
    ['max(2 + 1, 3 * 2, x / 0)', 'x / 0'],
    ['sqrt(2 - 1) + sqrt(1 - 2) + 1', 'sqrt(1 - 2)'],
    ['sum({2 + 1, x / 0, 3})', 'x / 0'],
    ['sum({1, 2}) / 0', 'sum({1, 2}) / 0'],
    ['sensor.width / 1 mm / 0', 'sensor.width / 1 mm / 0'],
    ['sensor.width / sensor.height + sqrt(-1)', 'sqrt(-1)'],
    ['when(x > 2, x / 0, 1 + 1)', 'x / 0'],
    ['when(x < 2, 1 + 1, x / 0)', 'x / 0'],
    ['when(x / 0 > 1, 1, 2)', 'x / 0'],
    ['when(x > 2, 1, 2) / 0', 'when(x > 2, 1, 2) / 0'],
    ['x > 2 and x / 0 > 1', 'x / 0'],
    ['x < 2 or not x / 0 > 1', 'x / 0'],
    ['not x > 4 and 1 / 0 = 2', '1 / 0'],
    ['(x - 3)^-1 + 1', '(x - 3)^-1'],
  ])('%s: %s', (text, at) => {
    const { root } = checkFormula(text, SCOPE)
    if (!root) throw new Error(text)
    const ready = computable(root, false)
    const values: Figures = { x: 3, sensor: { width: 0.036, height: 0.024 } }
    let error: unknown
    try {
      computeOnce(ready, (name) => values[name])
    } catch (caught) {
      error = caught
    }
    const { from, to } = explainFailure(error, text, ready.spans)
    expect(text.slice(from, to)).toBe(at)
  })
})

describe('what a formula reads', () => {
  const inputs = (text: string): unknown => lower(checkFormula(text, SCOPE).root as never).inputs

  test('is each cell once, and each constant', () => {
    expect(inputs('x + x * x')).toEqual([{ cell: 'x' }])
    expect(inputs('x + m - x')).toEqual([{ cell: 'x' }, { cell: 'm' }])
    expect(inputs('2 * x + 2')).toEqual([{ constant: 2 }, { cell: 'x' }, { constant: 2 }])
    expect(inputs('sensor.width + width')).toEqual([{ cell: 'sensor' }, { constant: 'width' }, { cell: 'width' }])
    expect(inputs('when(lit, "a", profile)')).toEqual([{ cell: 'lit' }, { constant: 'a' }, { cell: 'profile' }])
  })
})

describe('a formula is refused in words where it is nested deeper than its parser goes:', () => {
  const cells: Cells = new Map<string, readonly [Type, Value]>([
    ['x', [number(NONE), 1]],
    ['lit', [YES_NO, true]],
    ['sensor', [record('size', { width: number(NONE) }), { width: 1 }]],
  ])
  const said = (text: string): string => {
    const { root, diagnostics } = checkFormula(text, scopeOf(cells))
    try {
      if (root) computeOnce(computable(root, false), (name) => cells.get(name)?.[1])
      return diagnostics.map(({ message }) => message).join(' ')
    } catch (error) {
      if (!(error instanceof ComputeError)) throw error
      return error.message
    }
  }
  const closed = (open: string, depth: number): string => `${open.repeat(depth)}x${')'.repeat(depth)}`

  test.each<readonly [string, number, (depth: number) => string]>([
    ['powers', 50, (depth) => `x${' ^ x'.repeat(depth)}`],
    ['differences', 50, (depth) => closed('x - (', depth)],
    ['products of sums', 49, (depth) => `${'x * ('.repeat(depth)}x + 1${')'.repeat(depth)}`],
    ['signs', 50, (depth) => `${'-'.repeat(depth)}x`],
    ['negations', 100, (depth) => `${'not '.repeat(depth)}lit`],
    ['choices within conditions', 50, (depth) => `${'when('.repeat(depth)}lit${', lit, lit)'.repeat(depth)}`],
    ['conditions', 50, (depth) => `${'lit and ('.repeat(depth)}lit${')'.repeat(depth)}`],
    ['parts', 50, (depth) => closed('abs(sensor.width + ', depth)],
  ])('%s, %d deep', (_, deepest, text) => {
    expect(said(text(deepest))).toBe('')
    expect(said(text(deepest + 1))).toBe(
      'Brackets, signs and calls go at most 100 deep. Split the formula over several cells.',
    )
  })

  test('calls and choices go as deep as brackets may', () => {
    expect(said(closed('abs(', 100))).toBe('')
    expect(said(closed('when(lit, x, ', 100))).toBe('')
  })

  test('a chain is not nested, however long it is', () => {
    for (const sign of ['+', '-', '*', '/']) expect(said(`x${` ${sign} x`.repeat(450)}`)).toBe('')
    expect(said(`lit${' and lit'.repeat(200)}`)).toBe('')
  })
})
