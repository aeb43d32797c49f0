import {
  type Computable,
  ComputeError,
  checkFormula,
  computable,
  computeOnce,
  type Scope,
  type Typed,
  type Value,
} from '../language/index.ts'
import { readQuantity } from '../units/index.ts'
import type { Spread } from './tolerance.ts'

type Cells = (name: string) => Value

/** What a condition is judged with: the values of the cells, and how far a figure made of some of them may be off. */
export interface Grounds {
  readonly value: Cells
  readonly spread: (names: readonly string[], figure: (cells: Cells) => number) => Spread | undefined
}

/** How far a condition is from tipping over: below zero it fails. As a share of the limit, the right-hand side. */
type Slack = (cells: Cells) => number

/** A condition, as the comparisons it is made of. */
interface Part {
  readonly slack: Slack
  /** Over all limits, the least slack, and which givens take most of it. */
  readonly worst: (grounds: Grounds) => Worst
}
interface Worst {
  readonly slack: number
  readonly names: readonly string[]
}

const CERTAIN = Number.POSITIVE_INFINITY

const ORDERS = new Set(['<', '<=', '>', '>='])

/** Reads the comparisons a condition is made of, or its opposite; what compares no quantities is simply so or not. */
function partOf(typed: Typed, so = true): Part {
  if (typed.op === 'unary' && typed.sign === 'not') return partOf(typed.of, !so)
  if (typed.op === 'binary' && (typed.sign === 'and' || typed.sign === 'or'))
    return joined(partOf(typed.left, so), partOf(typed.right, so), (typed.sign === 'and') === so)
  const names = [...cellsIn(typed)]
  const whole = computable(typed, true)
  const plain: Slack = (cells) => (computeOnce(whole, cells).value === so ? CERTAIN : -CERTAIN)
  if (typed.op === 'binary' && ORDERS.has(typed.sign)) {
    const left = computable(typed.left, true)
    const right = computable(typed.right, true)
    const upward = typed.sign.startsWith('<') === so ? 1 : -1
    const room: Slack = (cells) => upward * (compute(right, cells) - compute(left, cells))
    const scaleOf: Slack = (cells) => Math.abs(compute(right, cells))
    const slack: Slack = (cells) => {
      const scale = scaleOf(cells)
      // Of a limit of nothing there is no share.
      return scale > 0 && Number.isFinite(scale) ? room(cells) / scale : plain(cells)
    }
    return {
      slack,
      worst: ({ value, spread }) => {
        const now = slack(value)
        const off = Number.isFinite(now) ? spread(names, room) : undefined
        return off
          ? { slack: off.low / scaleOf(value), names: off.contributions.map(({ name }) => name) }
          : uncertain(now, names, spread, plain)
      },
    }
  }
  return { slack: plain, worst: ({ value, spread }) => uncertain(plain(value), names, spread, plain) }
}

/** What is so or not, and compares no quantities, hangs on the limits where it tips over at an end of them. */
function uncertain(now: number, names: readonly string[], spread: Grounds['spread'], plain: Slack): Worst {
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
    worst: (grounds) => {
      const first = left.worst(grounds)
      const second = ifComputed(() => right.worst(grounds))
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

function cellsIn(typed: Typed, found = new Set<string>()): Set<string> {
  if (typed.op === 'cell') found.add(typed.name)
  for (const part of partsOf(typed)) cellsIn(part, found)
  return found
}

function partsOf(typed: Typed): readonly Typed[] {
  switch (typed.op) {
    case 'call':
      return typed.args
    case 'binary':
      return [typed.left, typed.right]
    case 'when':
      return [typed.condition, typed.then, typed.otherwise]
    case 'list':
      return typed.items
    case 'unary':
    case 'part':
      return [typed.of]
    default:
      return []
  }
}

const DEFAULT_MARGIN = 0.1

/** The margin within which a check that holds counts as close; 10 % where the cell does not say. */
export function marginOf(text: string | undefined): number {
  if (text === undefined) return DEFAULT_MARGIN
  try {
    return Math.max(0, readQuantity(text).value)
  } catch {
    return DEFAULT_MARGIN
  }
}

/** How far a condition is from tipping over, as a share of its limit, and the cells that tells of. */
export const slackOf = (root: Typed): { readonly of: Slack; readonly names: readonly string[] } => ({
  of: partOf(root).slack,
  names: [...cellsIn(root)],
})

export interface Footing {
  readonly slack: number
  /** The same over all limits. */
  readonly worst: number
  /** The givens whose limits could tip it over. */
  readonly hangsOn?: readonly string[]
}

/** How firmly a condition stands. */
export function standingOf(root: Typed, grounds: Grounds): Footing {
  const part = partOf(root)
  const slack = part.slack(grounds.value)
  const worst = part.worst(grounds)
  return { slack, worst: worst.slack, ...(worst.slack < -1e-9 ? { hangsOn: worst.names } : {}) }
}

/** Fills the `{formula}` places of a message; a place that does not compute shows a dash. */
export function fillMessage(
  message: string,
  scope: Scope,
  show: (name: string) => string | undefined,
  compute: (formula: string, scope: Scope) => string | undefined,
): string {
  return message.replace(/\{([^{}]*)\}/g, (_, inside: string) => {
    const formula = inside.trim()
    return show(formula) ?? compute(formula, scope) ?? '—'
  })
}

/** Computes and shows a formula that stands inside a message. */
export function showInline(
  formula: string,
  scope: Scope,
  cellValue: (name: string) => Value | undefined,
  show: (value: Value, type: Typed['type']) => string,
): string | undefined {
  const checked = checkFormula(formula, scope)
  if (!checked.root || checked.uses.some((name) => cellValue(name) === undefined)) return undefined
  try {
    const ready = computable(checked.root, checked.mayBeInfinite)
    return show(computeOnce(ready, (name) => cellValue(name) as Value).value, ready.type)
  } catch {
    return undefined
  }
}
