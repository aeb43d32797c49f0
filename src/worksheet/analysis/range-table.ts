import { showValue, type Type, type Value } from '../../language/index.ts'
import { type DisplayUnit, defaultUnit, NONE } from '../../units/index.ts'
import { labelOf } from '../document/label.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Engine } from '../engine/engine.ts'
import { VALUE } from '../engine/engine-view.ts'
import type { Node } from '../engine/node.ts'
import type { Given, NamedCell, Range } from '../schema/document.ts'
import { RangeEvaluator } from './range-evaluator.ts'
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
}

const SAME = 1e-9
const NOTHING = '–'

/** Runs a given through its range. Throws RangeInputError, which says what to fill in or correct. */
export function rangeTable(sheet: Sheet, range: Range): RangeTable {
  const { engine } = sheet
  const given = givenOf(sheet, range)
  const node = engine.named(given.name) as Node
  const values = valuesOf(range, given)
  const goals = range.results.map((name) => goalOf(engine, name, given))
  if (goals.length === 0) throw new RangeInputError(words.chooseResults)
  const first = values[0] as RangeValue
  const type = node.type
  if (type?.kind !== 'number') throw new RangeInputError(words.unreadableGiven(labelOf(given)))
  const unit = node.unit ?? (type.notation ? showIn(type.notation) : defaultUnit(first.value, type.dimension))
  const follow = new RangeEvaluator(
    engine.layout,
    engine.positionOf(node),
    goals.map((goal) => engine.positionOf(goal)),
  )
  const outcomes = values.map(({ value }) => follow.with(value))
  const now = engine.state(node) === VALUE ? (engine.value(node) as number) : undefined
  const presentAt = now === undefined ? -1 : values.findIndex(({ value }) => near(value, now))
  return {
    given,
    unit,
    values,
    shown: values.map(({ value }) => showValue(value, type, unit).text),
    figures: values.map(({ value }) => inUnit(value, unit)),
    present: now === undefined ? undefined : inUnit(now, unit),
    presentAt: presentAt < 0 ? undefined : presentAt,
    followed: goals.map((goal, which) =>
      followed(
        engine,
        goal,
        outcomes.map((one) => one[which]),
      ),
    ),
    byFactors: range.by === 'stops' && type.dimension.name !== 'stop',
  }
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b))

const showIn = (notation: DisplayUnit['notation']): DisplayUnit =>
  ({ ...defaultUnit(1, NONE), notation }) as DisplayUnit

function givenOf(sheet: Sheet, { of }: Range): Given {
  if (of === undefined) throw new RangeInputError(words.chooseGiven)
  const cell = sheet.named(of)
  if (!cell) throw new RangeInputError(words.noCell(of))
  if (cell.kind !== 'given') throw new RangeInputError(words.notAGiven(of))
  return cell
}

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
  const figure = (value: Value | undefined): number | undefined =>
    typeof value === 'number' && unit ? inUnit(value, unit) : undefined
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
