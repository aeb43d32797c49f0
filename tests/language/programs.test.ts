import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compile, type Step } from '../../src/language/evaluating/closures.ts'
import { add, ComputeError, divide, multiply, negative, power, subtract } from '../../src/language/values/operations.ts'

const OPERATIONS: Readonly<Record<string, (a: number, b: number) => number>> = {
  '+': add,
  '-': subtract,
  '*': multiply,
  '/': divide,
  '^': power,
}

/** Step by step with the careful operations, each error with the number of its operation. */
function reference(steps: readonly Step[], values: readonly number[]): number | string {
  const stack: number[] = []
  let operation = 0
  for (const step of steps) {
    if (typeof step === 'number') {
      stack.push(values[step] as number)
      continue
    }
    try {
      const b = stack.pop() as number
      stack.push(step === '~' ? negative(b) : (OPERATIONS[step as string]?.(stack.pop() as number, b) as number))
    } catch (error) {
      return `${(error as Error).message} at ${operation}`
    }
    operation++
  }
  return stack[0] as number
}

function found(steps: readonly Step[], values: readonly number[]): unknown {
  try {
    return compile(steps)(
      values,
      values.map((_, i) => i),
    )
  } catch (error) {
    if (error instanceof ComputeError) return `${error.message} at ${error.operation}`
    throw error
  }
}

/** Formulas of signs alone, in the order of computing. */
const { formula } = fc.letrec<{ formula: readonly Step[] }>((tie) => ({
  formula: fc.oneof(
    { maxDepth: 5, depthIdentifier: 'program' },
    fc.nat(3).map((index) => [index]),
    fc
      .tuple(tie('formula'), tie('formula'), fc.constantFrom('+', '-', '*', '/', '^'))
      .map(([a, b, sign]) => [...a, ...b, sign]),
    tie('formula').map((a) => [...a, '~']),
  ),
}))
const figure = fc.oneof(
  fc.constantFrom(0, -0, 1, -1, 2, 0.5, 1e200, -1e200, 1e-200, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY),
  fc.double({ min: -100, max: 100, noNaN: true }),
)

describe('a program of signs', () => {
  test('gives what its operations give one by one, or refuses at the same one', () => {
    fc.assert(
      fc.property(formula, fc.tuple(figure, figure, figure, figure), (steps, values) => {
        expect(found(steps, values)).toEqual(reference(steps, values))
      }),
      { numRuns: 500 },
    )
  })

  test('however deep its brackets are', () => {
    for (const depth of [2, 15, 16, 17, 40]) {
      // 1 − (1 − (1 − …)) is 1 or 0 by turns.
      const steps: Step[] = [...Array<number>(depth).fill(0), ...Array<string>(depth - 1).fill('-')]
      expect(found(steps, [1]), `${depth} deep`).toBe(depth % 2)
    }
  })

  test('leaves nothing behind for the next: a refused one changes no other', () => {
    const refused: Step[] = [0, 1, 0, '/']
    expect(found([...refused, '+'], [0, 5])).toMatch(/at 0$/)
    expect(found([1, 1, '+'], [0, 5])).toBe(10)
  })

  test('of one argument is the argument, whatever it is', () => {
    expect(compile([0])(['text'], [0])).toBe('text')
    expect(compile([1])([1, true], [0, 1])).toBe(true)
  })
})
