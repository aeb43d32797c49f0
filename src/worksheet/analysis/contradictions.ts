import { type Program, showValue, type Type, type Value } from '../../language/index.ts'
import { bisect, type DisplayUnit } from '../../units/index.ts'
import { labelOf } from '../document/label.ts'
import type { CompareMeasured } from '../editing/sheet.ts'
import type { Engine } from '../engine/engine.ts'
import { type Layout, VALUE } from '../engine/engine-view.ts'
import type { Node } from '../engine/node.ts'
import { areAllComputed, computeInto, downstreamOf, upstreamOf } from '../engine/partial-recompute.ts'
import type { NamedCell, Result } from '../schema/document.ts'
import { contradicts } from './words.ts'

/**
 * Two readings of one quantity agree within this share: a rule in the frame and a pointer on a column are both read to
 * better than half of it (common practice, no source).
 */
const AGREE = 0.01
/** The quantity both determine is looked for between its computed value divided and multiplied by this. */
const REACH = 2

interface Measured {
  readonly at: number
  readonly cell: Result & { readonly determines: string }
  readonly value: number
  readonly tolerance: number
  readonly program: Program
  readonly type: Type
  readonly unit: DisplayUnit | undefined
}

/**
 * Finds the measured results that settle the same quantity and disagree about it: for each cell’s id, the readings that
 * contradict its own. A result computed from another measured one is left out, as its difference is shown already.
 */
export const contradictionsIn: CompareMeasured = (view, outdated) => {
  const { layout } = view
  const known = latest.get(view)
  if (known?.edition === layout.edition) return known.found
  const found = contradictionsNow(view, outdated)
  latest.set(view, { edition: layout.edition, found })
  return found
}

/** Asked about each result that was measured, and found once for each state of a sheet. */
const latest = new WeakMap<Engine, { readonly edition: number; readonly found: ReturnType<CompareMeasured> }>()

function contradictionsNow(view: Engine, outdated: ReadonlyMap<string, unknown>): Map<string, string[]> {
  const { layout } = view
  const measured = layout.order.flatMap((node, at) => measuredAt(layout, node, at, outdated) ?? [])
  const found = new Map<string, string[]>()
  for (const one of measured)
    for (const other of measured) {
      if (one === other || one.cell.determines !== other.cell.determines) continue
      const settled = view.named(one.cell.determines)
      const implied = settled && impliedBy(layout, view.positionOf(settled), one, other)
      if (implied !== undefined && disagree(one, implied, other))
        found.set(one.cell.id, [
          ...(found.get(one.cell.id) ?? []),
          contradicts(labelOf(other.cell), shown(other.value, other), shown(implied, one)),
        ])
    }
  return found
}

const shown = (value: number, { type, unit }: Measured): string => showValue(value, type, unit).text

const determines = (cell: NamedCell): cell is Measured['cell'] =>
  cell.kind === 'result' && cell.determines !== undefined

function measuredAt(
  layout: Layout,
  { cell, measured, computable, type, unit }: Node,
  at: number,
  outdated: ReadonlyMap<string, unknown>,
): Measured | undefined {
  if (!determines(cell) || outdated.has(cell.id)) return undefined
  const value = measured?.value
  if (typeof value !== 'number' || value === 0 || !computable || !type || layout.states[at] !== VALUE) return undefined
  return { at, cell, value, tolerance: measured?.tolerance ?? 0, program: computable.program, type, unit }
}

/** What `one` would be if the measured value of `other` is right; undefined where nothing within reach gives that value. */
function impliedBy(layout: Layout, settled: number, one: Measured, other: Measured): number | undefined {
  const programs = layout.programs.slice()
  programs[one.at] = one.program
  programs[other.at] = other.program
  const free: Layout = { ...layout, programs }
  const upstream = upstreamOf(free, [one.at, other.at])
  const isApart = !upstreamOf(free, [one.at]).includes(other.at) && !upstreamOf(free, [other.at]).includes(one.at)
  const now = layout.values[settled]
  if (!isApart || !upstream.includes(settled) || typeof now !== 'number' || now <= 0) return undefined
  const between = downstreamOf(free, [settled])
  const path = upstream.filter((at) => between[at] === 1)
  if (!areAllComputed(layout, path)) return undefined
  const values: Value[] = layout.values.slice()
  /** The value of a result with the settled quantity at the power of `REACH` that is tried. */
  const valueAt = (power: number, { at }: Measured): number => {
    values[settled] = now * REACH ** power
    return computeInto(values, free, path) ? (values[at] as number) : Number.NaN
  }
  const [low, high] = [valueAt(-1, other), valueAt(1, other)]
  if (!((low - other.value) * (high - other.value) < 0)) return undefined
  const rises = high > low
  const { failing } = bisect((power) => valueAt(power, other) > other.value === rises, { failing: -1, passing: 1 })
  const implied = valueAt(failing, one)
  return Number.isFinite(implied) ? implied : undefined
}

/** Whether they differ by more than two careful readings do, over the limits typed with them. */
function disagree(one: Measured, implied: number, other: Measured): boolean {
  const limits = one.tolerance + Math.abs(implied) * (other.tolerance / Math.abs(other.value))
  return Math.abs(implied - one.value) > AGREE * Math.abs(implied) + limits
}
