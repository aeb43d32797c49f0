import { type NumberType, showValue, type Type, type Value } from '../../language/index.ts'
import { type DisplayUnit, defaultUnit, STOP } from '../../units/index.ts'
import { labelOf } from '../document/label.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Engine } from '../engine/engine.ts'
import { VALUE } from '../engine/engine-view.ts'
import type { Node } from '../engine/node.ts'
import type { Given, Range } from '../schema/document.ts'
import { columnPlot, columnValues, isColumnPlot } from './column-plot.ts'
import { type Followed, figureOf, fromUnit, inUnit, NOTHING, type RangeTable, showIn, suitingUnit } from './followed.ts'
import { RangeEvaluator } from './range-evaluator.ts'
import { type RangeTarget, rangeTarget } from './range-target.ts'
import { RangeInputError, type RangeValue, valuesOf } from './range-values.ts'
import { typedDisplayUnit } from './typed-unit.ts'
import * as words from './words.ts'

const SAME = 1e-9

/** No more pairs than this are computed: as many as anyone reads off a table. */
const MOST_PAIRS = 2_500

/** Longer than this, in ms, no page may go without answering. */
const LONGEST_MS = 900

/** Runs what a range computes, value by value. Throws RangeInputError where the first values take too long for all. */
function inTime(count: number): <T>(compute: () => T) => T {
  const began = performance.now()
  let done = 0
  return (compute) => {
    if (performance.now() - began > LONGEST_MS) throw new RangeInputError(words.tooSlow(done, count))
    done++
    return compute()
  }
}

/**
 * Runs a given through its range, or takes columns of a table over another of its columns. Throws RangeInputError, which
 * says what to fill in or correct.
 */
export function rangeTable(sheet: Sheet, range: Range): RangeTable {
  if (isColumnPlot(sheet, range)) return columnPlot(sheet, range)
  const { engine } = sheet
  const target = rangeTarget(sheet, range.of)
  const { given, node } = target
  const values = valuesOf(range, given, columnValues(sheet, range.values, target.type?.dimension))
  const goals = range.results.map((name) => goalOf(engine, name, given))
  if (goals.length === 0) throw new RangeInputError(words.chooseResults)
  const { type, unit } = axisOf(target, values)
  const figures = values.map(({ value }) => inUnit(value, unit))
  const follow = new RangeEvaluator(
    engine.layout,
    [engine.positionOf(node)],
    goals.map((goal) => engine.positionOf(goal)),
  )
  const each = inTime(values.length)
  const outcomes = values.map(({ value }) => each(() => follow.with([target.valueWith(value)])))
  const now = target.present
  const presentAt = now === undefined ? -1 : values.findIndex(({ value }) => near(value, now))
  const all = goals.map((goal, which) =>
    followed(
      engine,
      goal,
      outcomes.map((one) => one[which]),
    ),
  )
  return {
    varied: given,
    filledWith: target.filledWith,
    unit,
    values,
    shown: values.map(({ value }) => showValue(value, type, unit).text),
    figures,
    present: now === undefined ? undefined : inUnit(now, unit),
    presentAt: presentAt < 0 ? undefined : presentAt,
    followed: all,
    byFactors: stepsByFactors(range, type, figures),
    isContinuous: given.entry !== 'choice',
    isJoined: true,
    at: (figure) => {
      const found = follow.with([target.valueWith(fromUnit(figure, unit))])
      return found.map((value, which) => figureOf(value, all[which]?.unit))
    },
  }
}

/** Whether values are a stop apart, or marks that are more evenly spaced by factors than by differences, as film speeds are. */
function stepsByFactors({ by }: Pick<Range, 'by'>, type: NumberType, figures: readonly number[]): boolean {
  if (by === 'stops') return type.dimension !== STOP
  if (by !== 'marks' || figures.length < 3 || !figures.every((figure) => figure > 0)) return false
  const unevenness = (places: readonly number[]): number => {
    const steps = places.slice(1).map((place, at) => Math.abs(place - (places[at] as number)))
    return Math.max(...steps) / Math.min(...steps)
  }
  return unevenness(figures.map(Math.log)) < unevenness(figures)
}

/** Two givens run through their ranges, and a result at each pair of values. */
export interface RangeGrid {
  readonly across: Pick<RangeTable, 'varied' | 'shown' | 'figures' | 'present' | 'byFactors'> & {
    readonly unit: DisplayUnit
  }
  readonly up: RangeGrid['across']
  readonly result: Pick<Followed, 'cell' | 'unit' | 'present'>
  /** By value of the second given, then of the first: as shown. */
  readonly shown: readonly (readonly string[])[]
  /** The result's figure between the values, for a map; undefined where it does not compute. */
  readonly at: (across: number, up: number) => number | undefined
}

/** Runs two givens through their ranges, for the first of the results. Throws RangeInputError. */
export function rangeGrid(sheet: Sheet, range: Range): RangeGrid {
  const { engine } = sheet
  const second = range.second ?? {}
  const targets = [rangeTarget(sheet, range.of), rangeTarget(sheet, second.of)] as const
  if (targets[0].node === targets[1].node) throw new RangeInputError(words.twoGivens)
  const values = [
    valuesOf(range, targets[0].given),
    valuesOf({ ...range, ...onlyRange(second) }, targets[1].given),
  ] as const
  const name = range.results[0]
  if (name === undefined) throw new RangeInputError(words.chooseResult)
  const goal = goalOf(engine, name, targets[0].given)
  const follow = new RangeEvaluator(
    engine.layout,
    targets.map(({ node }) => engine.positionOf(node)),
    [engine.positionOf(goal)],
  )
  const valueAt = (a: number, b: number): Value | undefined =>
    follow.with([targets[0].valueWith(a), targets[1].valueWith(b)])[0]
  const pairs = values[0].length * values[1].length
  if (pairs > MOST_PAIRS) throw new RangeInputError(words.tooManyPairs(pairs, MOST_PAIRS))
  const each = inTime(pairs)
  const found = values[1].map((b) => values[0].map((a) => each(() => valueAt(a.value, b.value))))
  const { cell, unit, shown, present } = followed(engine, goal, found.flat())
  const width = values[0].length
  const axes = targets.map((target, which): RangeGrid['across'] => {
    const own = values[which] as readonly RangeValue[]
    const axis = axisOf(target, own)
    const figures = own.map(({ value }) => inUnit(value, axis.unit))
    return {
      varied: target.given,
      unit: axis.unit,
      shown: own.map(({ value }) => showValue(value, axis.type, axis.unit).text),
      figures,
      present: target.present === undefined ? undefined : inUnit(target.present, axis.unit),
      byFactors: stepsByFactors(which === 0 ? range : second, axis.type, figures),
    }
  }) as [RangeGrid['across'], RangeGrid['across']]
  return {
    across: axes[0],
    up: axes[1],
    result: { cell, unit, present },
    shown: values[1].map((_, row) => shown.slice(row * width, (row + 1) * width)),
    at: (a, b) => figureOf(valueAt(fromUnit(a, axes[0].unit), fromUnit(b, axes[1].unit)), unit),
  }
}

/** The ends and steps of a second range in the place of the first's. */
const onlyRange = ({ from, to, by, count }: NonNullable<Range['second']>): Partial<Range> => ({ from, to, by, count })

function axisOf(
  { given, node, type }: RangeTarget,
  values: readonly RangeValue[],
): { type: NumberType; unit: DisplayUnit } {
  if (!type) throw new RangeInputError(words.unreadableGiven(labelOf(given)))
  const first = values[0] as RangeValue
  return {
    type,
    unit:
      node.unit ??
      typedDisplayUnit(given.value) ??
      (type.notation ? showIn(type.notation) : defaultUnit(first.value, type.dimension)),
  }
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b))

function goalOf(engine: Engine, name: string, given: Given): Node {
  const node = engine.named(name)
  if (!node) throw new RangeInputError(words.noCell(name))
  if (node.cell.kind === 'given') throw new RangeInputError(words.notDependent(name, given.name))
  const [error] = engine.isErroneous(node) ? engine.errorsOf(node) : []
  if (error) throw new RangeInputError(words.hasError(labelOf(node.cell), error.message))
  return node
}

/** In the unit it declares; where it declares none, in one that suits most of its values. */
function unitFor({ unit, type }: Node, numbers: readonly number[]): DisplayUnit | undefined {
  if (type?.kind !== 'number') return undefined
  if (unit) return unit
  if (type.notation) return showIn(type.notation)
  return suitingUnit(numbers, type.dimension)
}

function followed(engine: Engine, node: Node, values: readonly (Value | undefined)[]): Followed {
  const type = node.type as Type | undefined
  const numbers = values.filter((value): value is number => typeof value === 'number')
  const unit = unitFor(node, numbers)
  const figure = (value: Value | undefined): number | undefined => figureOf(value, unit)
  return {
    cell: node.cell,
    unit,
    shown: values.map((value) => (value === undefined || !type ? NOTHING : showValue(value, type, unit).text)),
    figures: values.map(figure),
    present: engine.state(node) === VALUE ? figure(engine.value(node)) : undefined,
    measured: node.measured?.value !== undefined,
  }
}
