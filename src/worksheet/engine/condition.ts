import { type Computable, ComputeError, type Condition, computeOnce, type Value } from '../../language/index.ts'
import type { Spread } from './outcome.ts'

type Cells = (name: string) => Value

/** What a condition is evaluated with: the values of the cells, and how far a figure made of some of them may be off. */
export interface ConditionContext {
  readonly value: Cells
  readonly spread: (names: readonly string[], figure: (cells: Cells) => number) => Spread | undefined
}

/** The slack of a condition as a share of its limit, the right-hand side: below zero it fails. */
type Slack = (cells: Cells) => number

/** A condition, as the comparisons it is made of. */
interface Part {
  readonly slack: Slack
  /** Over all limits, the least slack, and which givens take most of it. */
  readonly worst: (context: ConditionContext) => Worst
}
interface Worst {
  readonly slack: number
  readonly names: readonly string[]
}

const CERTAIN = Number.POSITIVE_INFINITY
const ROUNDING = 1e-9

/** The comparisons a condition is made of; what compares no quantities is true or false. */
function partOf(condition: Condition): Part {
  if ('both' in condition) return joined(partOf(condition.left), partOf(condition.right), condition.both)
  const { whole, so, order } = condition
  const names = [...cellsIn(condition)]
  const plain: Slack = (cells) => (computeOnce(whole, cells).value === so ? CERTAIN : -CERTAIN)
  if (!order) return { slack: plain, worst: ({ value, spread }) => uncertain(plain(value), names, spread, plain) }
  const { left, right, upward } = order
  const room: Slack = (cells) => upward * (compute(right, cells) - compute(left, cells))
  const scaleOf: Slack = (cells) => Math.abs(compute(right, cells))
  const slack: Slack = (cells) => {
    const scale = scaleOf(cells)
    // Slack has no share of a limit of zero.
    return scale > 0 && Number.isFinite(scale) ? room(cells) / scale : plain(cells)
  }
  return {
    slack,
    worst: ({ value, spread }) => {
      const off = Number.isFinite(room(value)) ? spread(names, room) : undefined
      if (!off) return uncertain(slack(value), names, spread, plain)
      const scale = scaleOf(value)
      const isSure = off.low >= -ROUNDING * (off.high - off.low)
      return {
        slack: scale > 0 ? off.low / scale : isSure ? CERTAIN : -CERTAIN,
        names: off.contributions.map(({ name }) => name),
      }
    },
  }
}

/** A condition that compares no quantities is uncertain where it changes at an end of the limits. */
function uncertain(now: number, names: readonly string[], spread: ConditionContext['spread'], plain: Slack): Worst {
  const off = spread(names, (cells) => (plain(cells) > 0 ? 1 : 0))
  return off && off.low < 1 && now > 0 ? { slack: -CERTAIN, names } : { slack: now, names: [] }
}

function joined(left: Part, right: Part, both: boolean): Part {
  const settle = both ? Math.min : Math.max
  const worse = (a: Worst, b: Worst): Worst => (a.slack <= b.slack === both ? a : b)
  return {
    slack: (cells) => {
      const first = left.slack(cells)
      const second = ifComputed(() => right.slack(cells))
      return second === undefined ? first : settle(first, second)
    },
    worst: (context) => {
      const first = left.worst(context)
      const second = ifComputed(() => right.worst(context))
      return second === undefined ? first : worse(first, second)
    },
  }
}

/** In `x = 0 or 1/x < 3` the second part need not compute where the first decides. */
function ifComputed<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch (error) {
    if (error instanceof ComputeError) return undefined
    throw error
  }
}

const compute = (part: Computable, cells: Cells): number => computeOnce(part, cells).value as number

function cellsIn(condition: Condition): Set<string> {
  if ('both' in condition) return new Set([...cellsIn(condition.left), ...cellsIn(condition.right)])
  return new Set(condition.whole.inputs.flatMap((input) => ('cell' in input ? [input.cell] : [])))
}

/** The slack of a condition as a share of its limit (below zero it fails), and the cells it depends on. */
export const slackOf = (condition: Condition): { readonly of: Slack; readonly names: readonly string[] } => ({
  of: partOf(condition).slack,
  names: [...cellsIn(condition)],
})

export interface Robustness {
  readonly slack: number
  /** The same over all limits. */
  readonly worst: number
  /** The givens whose limits could make it fail. */
  readonly hangsOn?: readonly string[]
}

/** The slack of a condition at the cells' values and over all their limits of error. */
export function robustnessOf(condition: Condition, context: ConditionContext): Robustness {
  const part = partOf(condition)
  const slack = part.slack(context.value)
  const worst = part.worst(context)
  return { slack, worst: worst.slack, ...(worst.slack < -ROUNDING ? { hangsOn: worst.names } : {}) }
}

/** Fills the `{formula}` places of a message; a place that does not compute shows a dash. */
export const fillMessage = (message: string, show: (formula: string) => string | undefined): string =>
  message.replace(/\{([^{}]*)\}/g, (_, inside: string) => show(inside.trim()) ?? '—')
