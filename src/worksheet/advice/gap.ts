import { type Computable, ComputeError, type Condition, computeOnce, type Value } from '../../language/index.ts'

type Cells = (name: string) => Value

/** The comparison that decides a failing condition, and both its sides in coherent SI. */
export interface Gap {
  readonly left: Computable
  readonly right: Computable
  readonly is: number
  readonly limit: number
  /** By how much the left side is past the right one. */
  readonly off: number
}

const MET = 'met'

/** The comparison a condition fails by; undefined where it passes, does not compute, or fails by what has no figure. */
export function gapOf(condition: Condition, cells: Cells): Gap | undefined {
  try {
    const found = lookAt(condition, cells)
    return found === MET ? undefined : found
  } catch (error) {
    if (error instanceof ComputeError) return undefined
    throw error
  }
}

function lookAt(condition: Condition, cells: Cells): Gap | typeof MET | undefined {
  if ('both' in condition) return lookAtBoth(condition, cells)
  const { whole, so, order } = condition
  if (computeOnce(whole, cells).value === so) return MET
  if (!order) return undefined
  const [is, limit] = [order.left, order.right].map((side) => computeOnce(side, cells).value as number) as [
    number,
    number,
  ]
  return { left: order.left, right: order.right, is, limit, off: Math.max(0, order.upward * (is - limit)) }
}

function lookAtBoth(
  { both, left, right }: Extract<Condition, { readonly both: boolean }>,
  cells: Cells,
): Gap | typeof MET | undefined {
  const first = lookAt(left, cells)
  // In `x = 0 or 1/x < 3` the second part need not compute where the first decides.
  if (first === MET ? !both : first === undefined && both) return first
  const second = lookAt(right, cells)
  if (first === MET) return second
  if (second === MET) return both ? first : MET
  // If two are both required, there is no figure where one has none; if either would do, one figure is enough.
  if (first === undefined || second === undefined) return both ? undefined : (first ?? second)
  return shareOf(first) >= shareOf(second) === both ? first : second
}

/** As a share of what it is judged by: of its limit, or of the figure itself where the limit is zero. */
const shareOf = ({ off, is, limit }: Gap): number => off / (Math.abs(limit) || Math.abs(is) || 1)
