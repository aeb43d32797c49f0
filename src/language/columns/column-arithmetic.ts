import { BINARY } from '../values/operators.ts'
import { attempt, type Column, type ColumnProgram, NONE, numbers, same } from './columns.ts'

/** A function of two numbers. */
export type Plain = (a: number, b: number) => number

/** A power; none of what has no value, though anything to the power of zero is 1. */
const raised = (x: number, y: number): number => (x - x === 0 ? x ** y : Number.NaN)

/** The plain loops of the arithmetic; the careful operation looks again at what comes out odd, and may refuse it. */
const LOOPS: Readonly<Record<string, (out: Float64Array, a: Float64Array, b: Float64Array, n: number) => boolean>> = {
  '+': (out, a, b, n) => {
    let odd = false
    for (let i = 0; i < n; i++) {
      const value = (a[i] as number) + (b[i] as number)
      out[i] = value
      if (value - value !== 0) odd = true
    }
    return odd
  },
  '-': (out, a, b, n) => {
    let odd = false
    for (let i = 0; i < n; i++) {
      const value = (a[i] as number) - (b[i] as number)
      out[i] = value
      if (value - value !== 0) odd = true
    }
    return odd
  },
  '*': (out, a, b, n) => {
    let odd = false
    for (let i = 0; i < n; i++) {
      const value = (a[i] as number) * (b[i] as number)
      out[i] = value
      if (value - value !== 0) odd = true
    }
    return odd
  },
  '/': (out, a, b, n) => {
    let odd = false
    for (let i = 0; i < n; i++) {
      const value = (a[i] as number) / (b[i] as number)
      out[i] = value
      if (value - value !== 0 || value === 0) odd = true
    }
    return odd
  },
  '^': (out, a, b, n) => {
    let odd = false
    for (let i = 0; i < n; i++) {
      const value = raised(a[i] as number, b[i] as number)
      out[i] = value
      if (value - value !== 0) odd = true
    }
    return odd
  },
}

/** The same with one number on the right, by far the most frequent case. */
const LOOPS_BY_ONE: Readonly<Record<string, (out: Float64Array, a: Float64Array, b: number, n: number) => boolean>> = {
  '+': (out, a, b, n) => {
    let odd = false
    for (let i = 0; i < n; i++) {
      const value = (a[i] as number) + b
      out[i] = value
      if (value - value !== 0) odd = true
    }
    return odd
  },
  '*': (out, a, b, n) => {
    let odd = false
    for (let i = 0; i < n; i++) {
      const value = (a[i] as number) * b
      out[i] = value
      if (value - value !== 0) odd = true
    }
    return odd
  },
  '/': (out, a, b, n) => {
    let odd = false
    for (let i = 0; i < n; i++) {
      const value = (a[i] as number) / b
      out[i] = value
      if (value - value !== 0 || value === 0) odd = true
    }
    return odd
  },
  '^': (out, a, b, n) => {
    let odd = false
    if (b === 2)
      for (let i = 0; i < n; i++) {
        const value = (a[i] as number) * (a[i] as number)
        out[i] = value
        if (value - value !== 0) odd = true
      }
    else
      for (let i = 0; i < n; i++) {
        const value = raised(a[i] as number, b)
        out[i] = value
        if (value - value !== 0) odd = true
      }
    return odd
  },
}

function again(sign: string, out: Float64Array, a: (i: number) => number, b: (i: number) => number, n: number): void {
  const careful = BINARY[sign] as Plain
  for (let i = 0; i < n; i++) {
    const value = out[i] as number
    if (value - value === 0 && value !== 0) continue
    const x = a(i)
    const y = b(i)
    out[i] = Number.isNaN(x) || Number.isNaN(y) ? Number.NaN : ((attempt(() => careful(x, y)) as number) ?? Number.NaN)
  }
}

/** A buffer of one operation, used for every block of tries. */
export class Buffer {
  private data = new Float64Array(0)
  private filled: number | undefined

  of(n: number): Float64Array {
    if (this.data.length < n) this.data = new Float64Array(n)
    this.filled = undefined
    return this.data
  }

  /** One number in every place. */
  full(value: number, n: number): Float64Array {
    if (this.data.length < n) this.of(n)
    if (this.filled !== value) this.data.fill(value)
    this.filled = value
    return this.data
  }
}

/** One sign of arithmetic over two columns. */
export function arithmetic(sign: string, left: ColumnProgram, right: ColumnProgram): ColumnProgram {
  const [out, spread] = [new Buffer(), new Buffer()]
  const careful = BINARY[sign] as Plain
  return (args, n) => {
    const a = left(args, n)
    const b = right(args, n)
    if (a.kind === 'none' || b.kind === 'none') return NONE
    if (a.kind === 'same' && b.kind === 'same') {
      const value = attempt(() => careful(a.value as number, b.value as number))
      return value === undefined ? NONE : same(value)
    }
    const data = out.of(n)
    const x = a.kind === 'same' ? (a.value as number) : numbersIn(a)
    const y = b.kind === 'same' ? (b.value as number) : numbersIn(b)
    const [xs, ys] = [typeof x === 'number' ? spread.full(x, n) : x, y]
    const byOne = typeof ys === 'number' ? (LOOPS_BY_ONE[sign] ?? LOOPS_BY_ONE['+']) : undefined
    // A difference by one number is a sum with its opposite: exactly the same in floating point.
    const one = typeof ys === 'number' ? (sign === '-' ? -ys : ys) : 0
    const odd = byOne
      ? byOne(data, xs, one, n)
      : (LOOPS[sign] as (typeof LOOPS)[string])(data, xs, ys as Float64Array, n)
    if (odd)
      again(
        sign,
        data,
        (i) => xs[i] as number,
        typeof ys === 'number' ? () => ys : (i) => (ys as Float64Array)[i] as number,
        n,
      )
    return numbers(data)
  }
}

/** The numbers of a column, in coherent SI; a value that is the same in all rows is repeated. */
export const numbersIn = (column: Column): Float64Array => {
  if (column.kind !== 'numbers') throw new Error(`Arithmetic on a column of ${column.kind}.`)
  return column.data
}
