import { type Called, calledBy, FUNCTION_TABLE } from '../evaluating/call-table.ts'
import type { Step } from '../evaluating/closures.ts'
import { Refusal } from '../values/function-record.ts'
import { ComputeError } from '../values/operations.ts'
import { BINARY } from '../values/operators.ts'
import type { Value } from '../values/types.ts'
import { arithmetic, Buffer, type Plain } from './column-arithmetic.ts'
import { byTry, type Column, type ColumnProgram, gathered, NO_FLAG, NONE, numbers, same, valueAt } from './columns.ts'

interface Bounds {
  readonly least: number
  readonly most: number
  readonly above: number
  readonly below: number
}

const ANY: Bounds = { least: -Infinity, most: Infinity, above: -Infinity, below: Infinity }
const isWithin = (x: number, { least, most, above, below }: Bounds): boolean =>
  x >= least && x <= most && (x > above || above === -Infinity) && (x < below || below === Infinity)

/**
 * A function of one or two plain numbers, run without what the guard does for messages and advice. Undefined where its
 * arguments or its ranges are of another sort.
 */
function plainFunction(called: Called): { readonly compute: Plain; readonly bounds: readonly Bounds[] } | undefined {
  if (typeof called === 'string') return undefined
  const { record, types } = called
  const { parameters } = record
  if (types.length !== parameters.length || (types.length !== 1 && types.length !== 2)) return undefined
  if (types.some(({ kind }) => kind !== 'number') || parameters.some(({ range }) => range?.whole)) return undefined
  const compute = (record.computeFor ? record.computeFor(types) : record.compute) as unknown as Plain
  return {
    compute,
    bounds: parameters.map(({ range }) => ({
      least: range?.least ?? -Infinity,
      most: range?.most ?? Infinity,
      above: range?.above ?? -Infinity,
      below: range?.below ?? Infinity,
    })),
  }
}

function plainCall(
  name: string,
  args: readonly ColumnProgram[],
  { compute, bounds }: { readonly compute: Plain; readonly bounds: readonly Bounds[] },
): ColumnProgram {
  const [out, first, second] = [new Buffer(), new Buffer(), new Buffer()]
  const careful = FUNCTION_TABLE[name] as (...values: Value[]) => Value
  const [boundsA = ANY, boundsB = ANY] = bounds
  return (given, n) => {
    const columns = args.map((arg) => arg(given, n))
    if (columns.some(({ kind }) => kind === 'none')) return NONE
    if (columns.every(({ kind }) => kind === 'same')) return byTry(columns, n, careful)
    const [a, b = same(0)] = columns as [Column, Column?]
    const [xs, ys] = [first.spread(a, n), second.spread(b, n)]
    const data = out.of(n)
    for (let i = 0; i < n; i++) {
      const x = xs[i] as number
      const y = ys[i] as number
      const value = isWithin(x, boundsA) && isWithin(y, boundsB) ? call(compute, x, y) : Number.NaN
      if (typeof value !== 'number') return byTry(columns, n, careful)
      data[i] = value
    }
    return numbers(data)
  }
}

/** NaN where the function refuses its arguments. */
function call(compute: Plain, x: number, y: number): number {
  try {
    return compute(x, y)
  } catch (error) {
    if (error instanceof ComputeError || error instanceof Refusal) return Number.NaN
    throw error
  }
}

function calling(name: string, args: readonly ColumnProgram[]): ColumnProgram {
  const called = calledBy(name)
  const plain = plainFunction(called)
  if (plain) return plainCall(name, args, plain)
  const compute = FUNCTION_TABLE[name] as (...values: Value[]) => Value
  return (given, n) => {
    const columns = args.map((arg) => arg(given, n))
    const [record, part] = columns
    if (called === 'part' && record?.kind === 'record' && part?.kind === 'same')
      return record.parts[part.value as string] ?? NONE
    return byTry(columns, n, compute)
  }
}

type Item = ColumnProgram | { readonly branch: ColumnProgram }

const asProgram = (item: Item | undefined): ColumnProgram => {
  if (typeof item !== 'function') throw new Error('A lowered formula has an operator without its operand.')
  return item
}
const asBranch = (item: Item | undefined): ColumnProgram => {
  if (!item || typeof item === 'function') throw new Error('A lowered formula has a condition without its branch.')
  return item.branch
}

const flagAt = (column: Column, i: number): number => {
  const value = valueAt(column, i)
  return value === undefined ? NO_FLAG : value ? 1 : 0
}

/** Both branches are computed over all tries; each try takes the one its condition asks for. */
const choosing =
  (condition: ColumnProgram, then: ColumnProgram, otherwise: ColumnProgram): ColumnProgram =>
  (args, n) => {
    const which = condition(args, n)
    if (which.kind === 'same') return (which.value ? then : otherwise)(args, n)
    const [yes, no] = [then(args, n), otherwise(args, n)]
    return gathered(n, (i) => {
      const flag = valueAt(which, i)
      return flag === undefined ? undefined : valueAt(flag ? yes : no, i)
    })
  }

const joining =
  (sign: 'and' | 'or', left: ColumnProgram, right: ColumnProgram): ColumnProgram =>
  (args, n) => {
    const first = left(args, n)
    const decided = sign === 'and' ? 0 : 1
    if (first.kind === 'same') return (first.value ? 1 : 0) === decided ? first : right(args, n)
    const second = right(args, n)
    const data = new Uint8Array(n)
    for (let i = 0; i < n; i++) {
      const flag = flagAt(first, i)
      data[i] = flag === NO_FLAG || flag === decided ? flag : flagAt(second, i)
    }
    return { kind: 'flags', data }
  }

const ARITHMETIC = new Set(['+', '-', '*', '/', '^'])

/**
 * Compiles a formula's steps to a program over columns: each operation runs over a whole block of tries before the next
 * one starts. It has its own buffers, so it is compiled for one cell and not shared.
 */
export function compileColumns(steps: readonly Step[]): ColumnProgram {
  const stack: Item[] = []
  for (const step of steps) {
    if (typeof step === 'number') stack.push((args) => args[step] as Column)
    else if (Array.isArray(step)) stack.push({ branch: compileColumns(step as readonly Step[]) })
    else if (typeof step === 'object') {
      const { call: name, count } = step as { readonly call: string; readonly count: number }
      stack.push(calling(name, stack.splice(stack.length - count).map(asProgram)))
    } else if (step === '~') {
      const of = asProgram(stack.pop())
      stack.push(arithmetic('*', of, () => same(-1)))
    } else if (step === 'not') {
      const of = asProgram(stack.pop())
      stack.push((args, n) => byTry([of(args, n)], n, (value) => !value))
    } else if (step === '?') {
      const otherwise = asBranch(stack.pop())
      const then = asBranch(stack.pop())
      stack.push(choosing(asProgram(stack.pop()), then, otherwise))
    } else {
      const right = stack.pop()
      const left = asProgram(stack.pop())
      if (step === 'and' || step === 'or') stack.push(joining(step, left, asBranch(right)))
      else if (ARITHMETIC.has(step)) stack.push(arithmetic(step, left, asProgram(right)))
      else stack.push(comparing(step, left, asProgram(right)))
    }
  }
  const program = asProgram(stack.pop())
  if (stack.length > 0) throw new Error('A lowered formula leaves something over.')
  return program
}

function comparing(sign: string, left: ColumnProgram, right: ColumnProgram): ColumnProgram {
  const compare = BINARY[sign] as (a: Value, b: Value) => boolean
  return (args, n) => {
    const [a, b] = [left(args, n), right(args, n)]
    if (a.kind !== 'numbers' || (b.kind !== 'numbers' && b.kind !== 'same')) return byTry([a, b], n, compare)
    const data = new Uint8Array(n)
    for (let i = 0; i < n; i++) {
      const x = a.data[i] as number
      const y = b.kind === 'same' ? (b.value as number) : (b.data[i] as number)
      data[i] = Number.isNaN(x) || Number.isNaN(y) ? NO_FLAG : compare(x, y) ? 1 : 0
    }
    return { kind: 'flags', data }
  }
}
