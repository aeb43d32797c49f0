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

/** How far a condition is from tipping over: below zero it fails. As a share of the limit, the right-hand side. */
type Slack = (cellValue: (name: string) => Value) => number

const CERTAIN = Number.POSITIVE_INFINITY

const ORDERS = new Set(['<', '<=', '>', '>='])

/** Reads the comparisons a condition is made of; what compares no quantities is simply so or not. */
function slackOf(typed: Typed): Slack {
  if (typed.op === 'unary' && typed.sign === 'not') {
    const of = slackOf(typed.of)
    return (cells) => -of(cells)
  }
  if (typed.op === 'binary' && (typed.sign === 'and' || typed.sign === 'or')) {
    const left = slackOf(typed.left)
    const right = slackOf(typed.right)
    const settle = typed.sign === 'and' ? Math.min : Math.max
    return (cells) => {
      const first = left(cells)
      const second = slackIfComputed(right, cells)
      return second === undefined ? first : settle(first, second)
    }
  }
  const whole = computable(typed, true)
  const plain: Slack = (cells) => (computeOnce(whole, cells).value ? CERTAIN : -CERTAIN)
  if (typed.op === 'binary' && ORDERS.has(typed.sign)) {
    const left = computable(typed.left, true)
    const right = computable(typed.right, true)
    const upward = typed.sign.startsWith('<') ? 1 : -1
    return (cells) => {
      const value = compute(left, cells)
      const limit = compute(right, cells)
      const scale = Math.abs(limit)
      // Of a limit of nothing there is no share.
      return scale > 0 && Number.isFinite(scale) ? (upward * (limit - value)) / scale : plain(cells)
    }
  }
  return plain
}

/** In `x = 0 or 1/x < 3` the second part need not compute where the first decides. */
function slackIfComputed(slack: Slack, cells: (name: string) => Value): number | undefined {
  try {
    return slack(cells)
  } catch (error) {
    if (error instanceof ComputeError) return undefined
    throw error
  }
}

const compute = (part: Computable, cells: (name: string) => Value): number => computeOnce(part, cells).value as number

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

/** Whether a condition known to hold does so only just. */
export function holdsClosely(root: Typed, margin: number, cellValue: (name: string) => Value): boolean {
  const slack = slackOf(root)(cellValue)
  return slack <= margin * (1 + 1e-9)
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
