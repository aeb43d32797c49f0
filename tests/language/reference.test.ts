import fc from 'fast-check'
import { expect, test } from 'vitest'
import { programOf } from '../../src/language/compiling/computable.ts'
import { lower } from '../../src/language/compiling/lower.ts'
import { evaluateReference } from '../../src/language/compiling/reference.ts'
import { ComputeError, checkFormula, type Type, type Value } from '../../src/language/index.ts'
import { number, YES_NO } from '../../src/language/values/types.ts'
import { NONE } from '../../src/units/index.ts'
import { type Cells, scopeOf } from './make.ts'

const NAMES = ['x', 'y', 'z']
const TYPES: Cells = new Map<string, readonly [Type, Value]>([
  ...NAMES.map((name) => [name, [number(NONE), 0]] as const),
  ['lit', [YES_NO, true]],
])
const SCOPE = scopeOf(TYPES)

/** Well-typed formulas, numbers and conditions within each other. */
const { sum } = fc.letrec<{ sum: string; condition: string }>((tie) => ({
  sum: fc.oneof(
    { maxDepth: 6, depthIdentifier: 'formula' },
    fc.constantFrom(...NAMES, '0', '1', '2.5', '1e200', '1:4', 'f/8', 'pi'),
    fc
      .tuple(tie('sum'), fc.constantFrom('+', '-', '*', '/', '^'), tie('sum'), fc.boolean())
      .map(([a, sign, b, bracketed]) => (bracketed ? `(${a}) ${sign} (${b})` : `${a} ${sign} ${b}`)),
    tie('sum').map((a) => `-${a}`),
    tie('sum').map((a) => `-(${a})`),
    fc.tuple(fc.constantFrom('sqrt', 'abs', 'ln'), tie('sum')).map(([f, a]) => `${f}(${a})`),
    fc.tuple(fc.constantFrom('min', 'max'), tie('sum'), tie('sum')).map(([f, a, b]) => `${f}(${a}, ${b})`),
    fc.tuple(tie('condition'), tie('sum'), tie('sum')).map(([c, a, b]) => `when(${c}, ${a}, ${b})`),
  ),
  condition: fc.oneof(
    { maxDepth: 6, depthIdentifier: 'formula' },
    fc.constantFrom('yes', 'no', 'lit'),
    fc
      .tuple(tie('sum'), fc.constantFrom('<', '<=', '>', '>=', '=', '!='), tie('sum'))
      .map(([a, sign, b]) => `${a} ${sign} ${b}`),
    fc
      .tuple(tie('condition'), fc.constantFrom('and', 'or'), tie('condition'))
      .map(([a, sign, b]) => `(${a} ${sign} ${b})`),
    tie('condition').map((a) => `not (${a})`),
  ),
}))

const figures = fc.record({
  x: fc.constantFrom(0, 1, -1, 3.5, 1e-200, 1e200),
  y: fc.double({ min: -100, max: 100, noNaN: true }),
  z: fc.double({ min: -1e6, max: 1e6, noNaN: true }),
  lit: fc.boolean(),
})

const attempt = (compute: () => Value): unknown => {
  try {
    const value = compute()
    // The reference evaluator knows no zero below zero.
    return value === 0 ? 0 : value
  } catch (error) {
    if (error instanceof ComputeError) return `refused: ${error.message}`
    throw error
  }
}

test('closures compute what the reference evaluator computes, and refuse what it refuses', () => {
  let compared = 0
  let refused = 0
  fc.assert(
    fc.property(sum, figures, (formula, cells) => {
      const { root } = checkFormula(formula, SCOPE)
      fc.pre(root !== undefined && formula.length < 1500)
      const lowered = lower(root as NonNullable<typeof root>)
      const values = lowered.inputs.map((input) =>
        'cell' in input ? (cells as Record<string, Value>)[input.cell] : input.constant,
      ) as Value[]
      const slots = values.map((_, i) => i)
      const expected = attempt(() => evaluateReference(lowered.text, values))
      const found = attempt(() => programOf(lowered.text)(values, slots))
      expect(found, `${formula} as ${lowered.text}`).toEqual(expected)
      compared++
      if (typeof expected === 'string') refused++
    }),
    { numRuns: 3000 },
  )
  expect(compared - refused).toBeGreaterThan(500)
  expect(refused).toBeGreaterThan(100)
})

test('an error while computing points at the operation it came from', () => {
  const cases = [
    ['2 + 1 / x', '1 / x'],
    ['sqrt(x) + sqrt(x - 4) * 2', 'sqrt(x - 4)'],
    ['when(x = 0, 3 * (x - 1)^0.5, 1/x)', '(x - 1)^0.5'],
    ['max(1, 2, (5 / x)) + 1/0', '5 / x'],
    ['lit and 1 / x > 2', '1 / x'],
  ] as const
  for (const [formula, at] of cases) {
    const { root } = checkFormula(formula, SCOPE)
    const { text, inputs, spans } = lower(root as NonNullable<typeof root>)
    const values = inputs.map((input) => ('cell' in input ? (input.cell === 'lit' ? true : 0) : input.constant))
    const run = () =>
      programOf(text)(
        values,
        values.map((_, i) => i),
      )
    try {
      run()
      expect.unreachable(formula)
    } catch (error) {
      const span = spans[(error as ComputeError).operation as number]
      expect(formula.slice(span?.from, span?.to).replace(/^\(([^()]*)\)$/, '$1')).toBe(at)
    }
  }
})
