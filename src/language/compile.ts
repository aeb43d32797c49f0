import { add, ComputeError, divide, multiply, power, subtract } from './operations.ts'
import { BINARY, parseLowered, UNARY } from './reference.ts'
import { FUNCTION_TABLE } from './registry.ts'
import type { Value } from './types.ts'

/** A compiled formula: its arguments are `values[slots[0]]`, `values[slots[1]]`, … */
export type Program = (values: readonly Value[], slots: ArrayLike<number>) => Value

interface Token {
  readonly type: string
  readonly value: unknown
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

function argument(index: number): Program {
  return (values, slots) => values[slots[index] as number] as Value
}

function unary(sign: string, of: Program): Program {
  if (sign === '-') return (v, s) => -(of(v, s) as number)
  const f = UNARY[sign] as (a: Value) => Value
  if (!f) throw new Error(`Unknown sign ${sign}.`)
  return (v, s) => f(of(v, s))
}

/** The plain arithmetic first; what comes out odd is looked at again by the careful operation, which may refuse it. */
function binary(sign: string, a: Program, b: Program, operation: number): Program {
  switch (sign) {
    case '+':
      return (v, s) => {
        const x = a(v, s) as number
        const y = b(v, s) as number
        const sum = x + y
        return isSound(sum) ? sum : again(add, x, y, operation)
      }
    case '-':
      return (v, s) => {
        const x = a(v, s) as number
        const y = b(v, s) as number
        const difference = x - y
        return isSound(difference) ? difference : again(subtract, x, y, operation)
      }
    case '*':
      return (v, s) => {
        const x = a(v, s) as number
        const y = b(v, s) as number
        const product = x * y
        return isSound(product) ? product : again(multiply, x, y, operation)
      }
    case '/':
      return (v, s) => {
        const x = a(v, s) as number
        const y = b(v, s) as number
        const quotient = x / y
        return isSound(quotient) && quotient !== 0 ? quotient : again(divide, x, y, operation)
      }
    case '^':
      return (v, s) => {
        const x = a(v, s) as number
        const y = b(v, s) as number
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
  const apply = (values: Value[]): Value => {
    try {
      return f(...values)
    } catch (error) {
      return placed(error, operation)
    }
  }
  if (args.length === 1 && a) return (v, s) => apply([a(v, s)])
  if (args.length === 2 && a && b) return (v, s) => apply([a(v, s), b(v, s)])
  return (v, s) => apply(args.map((arg) => arg(v, s)))
}

function compileTokens(tokens: readonly Token[], counter: Counter): Program {
  const stack: Item[] = []
  for (const token of tokens) {
    if (token.type === 'IVAR') {
      const name = token.value as string
      const index = /^a(\d+)$/.exec(name)?.[1]
      // A function's name stands in its place until its call is reached.
      if (index !== undefined) stack.push(argument(Number(index)))
      else stack.push(Object.assign(() => 0, { functionName: name }))
    } else if (token.type === 'IOP1') {
      stack.push(unary(token.value as string, asProgram(stack.pop())))
      counter.next++
    } else if (token.type === 'IOP2') {
      const right = stack.pop()
      const left = asProgram(stack.pop())
      if (token.value === 'and') {
        const second = asBranch(right)
        stack.push((v, s) => (left(v, s) ? second(v, s) : false))
      } else if (token.value === 'or') {
        const second = asBranch(right)
        stack.push((v, s) => (left(v, s) ? true : second(v, s)))
      } else stack.push(binary(token.value as string, left, asProgram(right), counter.next))
      counter.next++
    } else if (token.type === 'IOP3' && token.value === '?') {
      const otherwise = asBranch(stack.pop())
      const then = asBranch(stack.pop())
      const condition = asProgram(stack.pop())
      stack.push((v, s) => (condition(v, s) ? then(v, s) : otherwise(v, s)))
      counter.next++
    } else if (token.type === 'IEXPR') {
      stack.push({ branch: compileTokens(token.value as Token[], counter) })
    } else if (token.type === 'IFUNCALL') {
      const args = stack.splice(stack.length - (token.value as number)).map(asProgram)
      const name = (stack.pop() as { functionName?: string }).functionName
      if (name === undefined) throw new Error('A lowered formula calls what is not a function.')
      stack.push(call(name, args, counter.next))
      counter.next++
    } else throw new Error(`A lowered formula holds a token of kind ${token.type}.`)
  }
  const program = asProgram(stack.pop())
  if (stack.length > 0) throw new Error('A lowered formula leaves something over.')
  return program
}

/** Formulas of one shape share one program; their constants come as arguments. */
const programs = new Map<string, Program>()
const MOST_PROGRAMS = 5000

/** Compiles a lowered formula to a closure. No code is built from text. */
export function compile(lowered: string): Program {
  const known = programs.get(lowered)
  if (known) return known
  const { tokens } = parseLowered(lowered) as unknown as { tokens: readonly Token[] }
  const program = compileTokens(tokens, { next: 0 })
  if (programs.size >= MOST_PROGRAMS) programs.clear()
  programs.set(lowered, program)
  return program
}
