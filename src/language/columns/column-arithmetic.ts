import { BINARY, table } from '../values/operators.ts'
import { attempt, type Column, type ColumnProgram, NONE, numbers, same } from './columns.ts'

/** A function of two numbers. */
export type Plain = (a: number, b: number) => number

/** A power; none of what has no value, though anything to the power of zero is 1. */
const raised = (x: number, y: number): number => (y === 2 ? x * x : x - x === 0 ? x ** y : Number.NaN)

/**
 * The plain arithmetic, a loop for each sign, as one loop that called a function for each value would be many times slower.
 * Each gives NaN where a value is to be looked at again: what is no figure, and a quotient of zero, which infinity may have
 * made.
 */
const LOOPS = table<(out: Float64Array, a: Float64Array, b: Float64Array, n: number) => number>({
  '+': (out, a, b, n) => {
    let odd = 0
    for (let i = 0; i < n; i++) {
      const value = (a[i] as number) + (b[i] as number)
      out[i] = value
      odd += value - value
    }
    return odd
  },
  '-': (out, a, b, n) => {
    let odd = 0
    for (let i = 0; i < n; i++) {
      const value = (a[i] as number) - (b[i] as number)
      out[i] = value
      odd += value - value
    }
    return odd
  },
  '*': (out, a, b, n) => {
    let odd = 0
    for (let i = 0; i < n; i++) {
      const value = (a[i] as number) * (b[i] as number)
      out[i] = value
      odd += value - value
    }
    return odd
  },
  '/': (out, a, b, n) => {
    let odd = 0
    for (let i = 0; i < n; i++) {
      const value = (a[i] as number) / (b[i] as number)
      out[i] = value
      odd += (value - value) / value
    }
    return odd
  },
  '^': (out, a, b, n) => {
    let odd = 0
    for (let i = 0; i < n; i++) {
      const value = raised(a[i] as number, b[i] as number)
      out[i] = value
      odd += value - value
    }
    return odd
  },
})

/** A buffer of one operation, used for every block of tries. */
export class Buffer {
  private data = new Float64Array(0)
  /** The number in every place, so that a constant is not repeated for each block. */
  private filled: number | undefined

  of(n: number): Float64Array {
    if (this.data.length < n) {
      this.data = new Float64Array(n)
      this.filled = undefined
    }
    return this.data
  }

  /** The numbers of a column, in coherent SI; a value that is the same in all rows is repeated. */
  spread(column: Column, n: number): Float64Array {
    if (column.kind === 'numbers') return column.data
    if (column.kind !== 'same') throw new Error(`Arithmetic on a column of ${column.kind}.`)
    const data = this.of(n)
    if (this.filled !== column.value) data.fill(column.value as number)
    this.filled = column.value as number
    return data
  }
}

/** What is no figure, and zero, is computed by the careful operation, which may refuse it. */
function lookAgain(careful: Plain, out: Float64Array, a: Float64Array, b: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    const value = out[i] as number
    if (value - value === 0 && value !== 0) continue
    const [x, y] = [a[i] as number, b[i] as number]
    out[i] = Number.isNaN(x) || Number.isNaN(y) ? Number.NaN : ((attempt(() => careful(x, y)) as number) ?? Number.NaN)
  }
}

/** One sign of arithmetic over two columns. */
export function arithmetic(sign: string, left: ColumnProgram, right: ColumnProgram): ColumnProgram {
  const [out, first, second] = [new Buffer(), new Buffer(), new Buffer()]
  const careful = BINARY[sign] as Plain
  const loop = LOOPS[sign] as (typeof LOOPS)[string]
  return (args, n) => {
    const a = left(args, n)
    const b = right(args, n)
    if (a.kind === 'none' || b.kind === 'none') return NONE
    if (a.kind === 'same' && b.kind === 'same') {
      const value = attempt(() => careful(a.value as number, b.value as number))
      return value === undefined ? NONE : same(value)
    }
    const data = out.of(n)
    const [xs, ys] = [first.spread(a, n), second.spread(b, n)]
    if (Number.isNaN(loop(data, xs, ys, n))) lookAgain(careful, data, xs, ys, n)
    return numbers(data)
  }
}
