import { calledBy } from './call-table.ts'
import type { Program, Step } from './program.ts'

const [ADD, SUBTRACT, MULTIPLY, DIVIDE, POWER, NEGATE, ROOT] = [-1, -2, -3, -4, -5, -6, -7] as const
const SIGNS: Readonly<Record<string, number>> = {
  '+': ADD,
  '-': SUBTRACT,
  '*': MULTIPLY,
  '/': DIVIDE,
  '^': POWER,
  '~': NEGATE,
}

/** Formulas that need a deeper stack than this are left to the closures. */
const DEEPEST = 16
/** Where the operands lie. A program leaves nothing on it and calls nothing while it uses it. */
const stack = new Float64Array(DEEPEST)

/**
 * The program of a formula of signs and square roots alone: one loop over numbers, which makes no object for what comes
 * between. Where something odd comes out, `careful` computes the formula again and may refuse it. Undefined for other
 * formulas.
 */
export function arithmeticOf(steps: readonly Step[], careful: Program): Program | undefined {
  const code = codeOf(steps)
  if (!code) return undefined
  return (values, slots) => {
    let top = -1
    for (let k = 0; k < code.length; k++) {
      const step = code[k] as number
      if (step >= 0) {
        stack[++top] = values[slots[step] as number] as number
        continue
      }
      let b = stack[top] as number
      if (step === NEGATE) b = -b
      else if (step === ROOT) b = Math.sqrt(b)
      else {
        const a = stack[--top] as number
        if (step === MULTIPLY) b = a * b
        else if (step === ADD) b = a + b
        else if (step === SUBTRACT) b = a - b
        else if (step === POWER) b = b === 2 ? a * a : a ** b
        else {
          b = a / b
          // A quotient of zero may hide a divisor that overflowed.
          if (b === 0) return careful(values, slots)
        }
      }
      if (b - b !== 0) return careful(values, slots)
      stack[top] = b
    }
    return stack[0] as number
  }
}

/** For each step an argument’s number or a sign; undefined where there is another step, or nothing to compute. */
function codeOf(steps: readonly Step[]): Int32Array | undefined {
  const code = new Int32Array(steps.length)
  let [depth, deepest] = [0, 0]
  for (const [k, step] of steps.entries()) {
    const coded = typeof step === 'number' ? step : typeof step === 'string' ? SIGNS[step] : rootIn(step)
    if (coded === undefined) return undefined
    code[k] = coded
    if (coded >= 0) depth++
    else if (coded > NEGATE) depth--
    deepest = Math.max(deepest, depth)
  }
  return deepest <= DEEPEST && code.some((coded) => coded < 0) ? code : undefined
}

/** A call of the square root. */
function rootIn(step: Exclude<Step, number | string>): number | undefined {
  if (!('call' in step)) return undefined
  const called = calledBy(step.call)
  return typeof called === 'object' && called.record.compute === (Math.sqrt as unknown) ? ROOT : undefined
}
