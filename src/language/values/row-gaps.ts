import type { Value } from './types.ts'

type List = readonly Value[]

/** Of which rows a column has the values, where some rows have none. */
interface Gaps {
  readonly rows: readonly number[]
  /** How many rows there are. */
  readonly of: number
}

const gapsOf = new WeakMap<List, Gaps>()

/** Says of which rows of a table a list has the values, so that two columns with gaps are computed row by row. */
export function withGaps(values: List, gaps: Gaps): List {
  if (values.length < gaps.of) gapsOf.set(values, gaps)
  return values
}

/** The pairs of two lists that belong to the same row; undefined where the lists do not belong together. */
export function pairsOf(
  a: List,
  b: List,
): { readonly pairs: readonly (readonly [Value, Value])[]; readonly gaps?: Gaps } | undefined {
  const [left, right] = [gapsOf.get(a), gapsOf.get(b)]
  if (!left && !right) {
    return a.length === b.length ? { pairs: a.map((value, at) => [value, b[at] as Value]) } : undefined
  }
  const of = left?.of ?? right?.of ?? 0
  if ((left?.of ?? a.length) !== of || (right?.of ?? b.length) !== of) return undefined
  const place = new Map((right?.rows ?? b.map((_, at) => at)).map((row, at) => [row, at]))
  const rows: number[] = []
  const pairs: (readonly [Value, Value])[] = []
  for (const [at, value] of a.entries()) {
    const row = left ? (left.rows[at] as number) : at
    const other = place.get(row)
    if (other === undefined) continue
    rows.push(row)
    pairs.push([value, b[other] as Value])
  }
  return { pairs, gaps: { rows, of } }
}

/** A list with another list's gaps. */
export function alike(values: List, other: List): List {
  const gaps = gapsOf.get(other)
  return gaps ? withGaps(values, gaps) : values
}
