import { add, ComputeError, divide, multiply, power, subtract } from '../values/operations.ts'
import { BINARY, UNARY } from '../values/operators.ts'
import type { Value } from '../values/types.ts'
import { FUNCTION_TABLE } from './call-table.ts'

/** A compiled formula: its arguments are `values[slots[0]]`, `values[slots[1]]`, … */
export type Program = (values: readonly Value[], slots: ArrayLike<number>) => Value

/**
 * A formula as the order in which it is computed: an argument's number, a sign (`~` for a minus before one
 * value, `?` for a condition with two branches), steps of their own for a branch that may be left out, or a call.
 */
export type Step = number | string | readonly Step[] | Call
export interface Call {
  readonly call: string
  readonly count: number
}

type Item = Program | { readonly branch: Program }

const asProgram = (item: Item | undefined): Program => {
  if (typeof item !== 'function') throw new Error('A lowered formula has an operator without its operand.')
  return item
}
const asBranch = (item: Item | undefined): Program => {
  if (!item || typeof item === 'function') throw new Error('A lowered formula has a condition without its branch.')
  return item.branch
}

/** Numbers the operations in the order they finish, as the lowering numbered their spans. */
interface Counter {
  next: number
}

/** Marks an error with the operation it came from, unless an inner one has. */
function placed(error: unknown, operation: number): never {
  if (error instanceof ComputeError) error.operation ??= operation
  throw error
}

/** The programs that only look a value up, with the argument's number: what uses one reads the value itself, without a call. */
const lookUps = new WeakMap<Program, number>()
const numberOf = (program: Program): number => lookUps.get(program) ?? -1

function argument(index: number): Program {
  const lookUp: Program = (values, slots) => values[slots[index] as number] as Value
  lookUps.set(lookUp, index)
  return lookUp
}

function not(of: Program): Program {
  const f = UNARY.not as (a: Value) => Value
  return (v, s) => f(of(v, s))
}

/** The plain arithmetic first; what comes out odd is looked at again by the careful operation, which may refuse it. */
function binary(sign: string, a: Program, b: Program, operation: number): Program {
  const i = numberOf(a)
  const j = numberOf(b)
  switch (sign) {
    case '+':
      return (v, s) => {
        const x = (i < 0 ? a(v, s) : v[s[i] as number]) as number
        const y = (j < 0 ? b(v, s) : v[s[j] as number]) as number
        const sum = x + y
        return isSound(sum) ? sum : again(add, x, y, operation)
      }
    case '-':
      return (v, s) => {
        const x = (i < 0 ? a(v, s) : v[s[i] as number]) as number
        const y = (j < 0 ? b(v, s) : v[s[j] as number]) as number
        const difference = x - y
        return isSound(difference) ? difference : again(subtract, x, y, operation)
      }
    case '*':
      return (v, s) => {
        const x = (i < 0 ? a(v, s) : v[s[i] as number]) as number
        const y = (j < 0 ? b(v, s) : v[s[j] as number]) as number
        const product = x * y
        return isSound(product) ? product : again(multiply, x, y, operation)
      }
    case '/':
      return (v, s) => {
        const x = (i < 0 ? a(v, s) : v[s[i] as number]) as number
        const y = (j < 0 ? b(v, s) : v[s[j] as number]) as number
        const quotient = x / y
        return isSound(quotient) && quotient !== 0 ? quotient : again(divide, x, y, operation)
      }
    case '^':
      return (v, s) => {
        const x = (i < 0 ? a(v, s) : v[s[i] as number]) as number
        const y = (j < 0 ? b(v, s) : v[s[j] as number]) as number
        const raised = y === 2 ? x * x : x ** y
        return isSound(raised) ? raised : again(power, x, y, operation)
      }
    default: {
      const f = BINARY[sign] as (a: Value, b: Value) => Value
      if (!f) throw new Error(`Unknown sign ${sign}.`)
      return (v, s) => f(a(v, s), b(v, s))
    }
  }
}

const isSound = (x: number): boolean => x - x === 0

function again(f: (a: number, b: number) => number, a: number, b: number, operation: number): number {
  try {
    return f(a, b)
  } catch (error) {
    return placed(error, operation)
  }
}

function call(name: string, args: readonly Program[], operation: number): Program {
  const f = FUNCTION_TABLE[name]
  if (!f) throw new Error(`Unknown function ${name}.`)
  const [a, b] = args
  if (args.length === 1 && a)
    return (v, s) => {
      const x = a(v, s)
      try {
        return f(x)
      } catch (error) {
        return placed(error, operation)
      }
    }
  if (args.length === 2 && a && b)
    return (v, s) => {
      const x = a(v, s)
      const y = b(v, s)
      try {
        return f(x, y)
      } catch (error) {
        return placed(error, operation)
      }
    }
  return (v, s) => {
    const values = args.map((arg) => arg(v, s))
    try {
      return f(...values)
    } catch (error) {
      return placed(error, operation)
    }
  }
}

function compileInto(steps: readonly Step[], counter: Counter): Program {
  const stack: Item[] = []
  for (const step of steps) {
    if (typeof step === 'number') {
      stack.push(argument(step))
      continue
    }
    if (isBranch(step)) {
      stack.push({ branch: compileInto(step, counter) })
      continue
    }
    if (typeof step === 'object')
      stack.push(call(step.call, stack.splice(stack.length - step.count).map(asProgram), counter.next))
    else if (step === '~') {
      const of = asProgram(stack.pop())
      stack.push((v, s) => -(of(v, s) as number))
    } else if (step === 'not') stack.push(not(asProgram(stack.pop())))
    else if (step === '?') {
      const otherwise = asBranch(stack.pop())
      const then = asBranch(stack.pop())
      const condition = asProgram(stack.pop())
      stack.push((v, s) => (condition(v, s) ? then(v, s) : otherwise(v, s)))
    } else {
      const right = stack.pop()
      const left = asProgram(stack.pop())
      if (step === 'and' || step === 'or') stack.push(joined(step, left, asBranch(right)))
      else stack.push(binary(step, left, asProgram(right), counter.next))
    }
    counter.next++
  }
  const program = asProgram(stack.pop())
  if (stack.length > 0) throw new Error('A lowered formula leaves something over.')
  return program
}

const isBranch = (step: Step): step is readonly Step[] => Array.isArray(step)

const joined = (sign: 'and' | 'or', left: Program, second: Program): Program =>
  sign === 'and' ? (v, s) => (left(v, s) ? second(v, s) : false) : (v, s) => (left(v, s) ? true : second(v, s))

const stepsByProgram = new WeakMap<Program, readonly Step[]>()

/** Compiles a formula's steps to a closure. No code is built from text. */
export function compile(steps: readonly Step[]): Program {
  const program = compileInto(steps, { next: 0 })
  stepsByProgram.set(program, steps)
  return program
}

/** The arguments that a program with branches reads in any case, by number; undefined for one that reads all it has. */
export function readAnyway(program: Program): readonly number[] | undefined {
  const steps = stepsByProgram.get(program)
  return steps?.some(isBranch) ? steps.filter((step) => typeof step === 'number') : undefined
}

/** The steps a program was compiled from; undefined for a program that was not, such as that of a table. */
export const stepsOfProgram = (program: Program): readonly Step[] | undefined => stepsByProgram.get(program)
