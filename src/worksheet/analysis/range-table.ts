import { type NumberType, showValue, type Type, type Value } from '../../language/index.ts'
import { type DisplayUnit, defaultUnit, NONE } from '../../units/index.ts'
import { labelOf } from '../document/label.ts'
import { typedDisplayUnit } from '../document/typed-unit.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Engine } from '../engine/engine.ts'
import { VALUE } from '../engine/engine-view.ts'
import type { Node } from '../engine/node.ts'
import type { Given, NamedCell, Range } from '../schema/document.ts'
import { RangeEvaluator } from './range-evaluator.ts'
import { type RangeTarget, rangeTarget } from './range-target.ts'
import { RangeInputError, type RangeValue, valuesOf } from './range-values.ts'
import * as words from './words.ts'

/** One cell over the range, in its own unit. */
export interface Followed {
  readonly cell: NamedCell
  /** The unit of its figures; a list or a text has none. */
  readonly unit: DisplayUnit | undefined
  /** As shown at each value; a dash where it does not compute. */
  readonly shown: readonly string[]
  /** The figures in that unit, for a plot; undefined where there is none to plot. */
  readonly figures: readonly (number | undefined)[]
  /** As it is now. */
  readonly present: number | undefined
  /** It was measured, so it does not follow. */
  readonly measured: boolean
}

/** A given run through a range, and the results at each of its values. */
export interface RangeTable {
  readonly given: Given
  readonly unit: DisplayUnit
  readonly values: readonly RangeValue[]
  /** The values as shown, and as figures in the unit. */
  readonly shown: readonly string[]
  readonly figures: readonly number[]
  /** The given's figure as it is now. */
  readonly present: number | undefined
  /** The place in the range that is the present value. */
  readonly presentAt: number | undefined
  readonly followed: readonly Followed[]
  /** Steps by factors: shown on a scale of equal factors. */
  readonly byFactors: boolean
  /** The given may have any value between those of the range. */
  readonly isContinuous: boolean
  /** The figures of the results at any figure of the given. */
  readonly at: (figure: number) => readonly (number | undefined)[]
  /** The given filled in with another value, as typed. */
  readonly filledWith: (text: string) => Given
}

const SAME = 1e-9
const NOTHING = '–'

/** Runs a given through its range. Throws RangeInputError, which says what to fill in or correct. */
export function rangeTable(sheet: Sheet, range: Range): RangeTable {
  const { engine } = sheet
  const target = rangeTarget(sheet, range.of)
  const { given, node } = target
  const values = valuesOf(range, given)
  const goals = range.results.map((name) => goalOf(engine, name, given))
  if (goals.length === 0) throw new RangeInputError(words.chooseResults)
  const { type, unit } = axisOf(target, values)
  const follow = new RangeEvaluator(
    engine.layout,
    [engine.positionOf(node)],
    goals.map((goal) => engine.positionOf(goal)),
  )
  const outcomes = values.map(({ value }) => follow.with([target.valueWith(value)]))
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
    given,
    filledWith: target.filledWith,
    unit,
    values,
    shown: values.map(({ value }) => showValue(value, type, unit).text),
    figures: values.map(({ value }) => inUnit(value, unit)),
    present: now === undefined ? undefined : inUnit(now, unit),
    presentAt: presentAt < 0 ? undefined : presentAt,
    followed: all,
    byFactors: range.by === 'stops' && type.dimension.name !== 'stop',
    isContinuous: range.by !== 'marks',
    at: (figure) => {
      const found = follow.with([target.valueWith(fromUnit(figure, unit))])
      return found.map((value, which) => figureOf(value, all[which]?.unit))
    },
  }
}

/** Two givens run through their ranges, and a result at each pair of values. */
export interface RangeGrid {
  readonly across: Pick<RangeTable, 'given' | 'unit' | 'shown' | 'figures' | 'present' | 'byFactors'>
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
  const found = values[1].map((b) => values[0].map((a) => valueAt(a.value, b.value)))
  const { cell, unit, shown, present } = followed(engine, goal, found.flat())
  const width = values[0].length
  const axes = targets.map((target, which): RangeGrid['across'] => {
    const own = values[which] as readonly RangeValue[]
    const axis = axisOf(target, own)
    return {
      given: target.given,
      unit: axis.unit,
      shown: own.map(({ value }) => showValue(value, axis.type, axis.unit).text),
      figures: own.map(({ value }) => inUnit(value, axis.unit)),
      present: target.present === undefined ? undefined : inUnit(target.present, axis.unit),
      byFactors: (which === 0 ? range.by : second.by) === 'stops' && axis.type.dimension.name !== 'stop',
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

const figureOf = (value: Value | undefined, unit: DisplayUnit | undefined): number | undefined =>
  typeof value === 'number' && unit ? inUnit(value, unit) : undefined

const near = (a: number, b: number): boolean => Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b))

const showIn = (notation: DisplayUnit['notation']): DisplayUnit =>
  ({ ...defaultUnit(1, NONE), notation }) as DisplayUnit

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
  const sizes = numbers.map(Math.abs).sort((a, b) => a - b)
  return defaultUnit(sizes[Math.floor(sizes.length / 2)] ?? 1, type.dimension)
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

/** The figure one reads: the n of 1:n, the f-number, millimetres. */
const inUnit = (value: number, unit: DisplayUnit): number =>
  unit.notation === 'ratio' ? 1 / value : (value - unit.offset) / unit.factor

const fromUnit = (figure: number, unit: DisplayUnit): number =>
  unit.notation === 'ratio' ? 1 / figure : figure * unit.factor + unit.offset
