import {
  type Computable,
  type Computed,
  ComputeError,
  cautionsOf,
  computeOnce,
  type Diagnostic,
  explainFailure,
  problem,
  showTyped,
  showValue,
  type Type,
  type Value,
} from '../../language/index.ts'
import type { Shown } from '../../units/index.ts'
import { labelOf } from '../document/label.ts'
import type { Check, Drawing } from '../schema/document.ts'
import { withLabels } from './argument-labels.ts'
import { type ConditionContext, fillMessage, robustnessOf } from './condition.ts'
import { readingNow } from './converted-light.ts'
import type { Engine } from './engine.ts'
import { VALUE, WAITING } from './engine-view.ts'
import { isWithinMargin, marginOf } from './margin.ts'
import { formulaOf, type Node } from './node.ts'
import type {
  CheckOutcome,
  DrawingOutcome,
  ErrorOutcome,
  Measured,
  Outcome,
  Spread,
  WaitingOutcome,
} from './outcome.ts'
import { spreadOf, spreadOfCell } from './tolerance.ts'
import * as words from './words.ts'

const LONGEST_PATH = 8

/** Turns the engine's numbers into what is shown; made only for cells that are looked at. */
export function outcomeOf(engine: Engine, node: Node): Outcome {
  if (engine.isDuplicate(node)) return failed([duplicateName(node)])
  const state = engine.state(node)
  if (state === VALUE) return valueOutcome(engine, node)
  return state === WAITING
    ? { state: 'waiting', on: engine.waitsFor(node).map(({ cell }) => cell.name) }
    : errorOf(engine, node)
}

const labelIn =
  (engine: Engine) =>
  (name: string): string | undefined => {
    const node = engine.named(name)
    return node && labelOf(node.cell)
  }

/** What the cells of these names are called on screen. */
export const labelsOf = (engine: Engine, names: readonly string[]): string[] =>
  names.map((name) => labelIn(engine)(name) ?? name)

const failed = (diagnostics: readonly Diagnostic[]): ErrorOutcome => ({ state: 'error', diagnostics })

const duplicateName = (node: Node): Diagnostic => problem(words.sameName(node.cell.name), 0, 0)

function valueOutcome(engine: Engine, node: Node): Outcome {
  if (node.table) return engine.capabilities.tables?.outcome(engine, node) ?? { state: 'waiting', on: [] }
  // What has a value has a type as well.
  const type = node.type as Type
  const value = engine.value(node)
  const reading = readingNow(node, (name) => cellValue(engine, name) as Value)
  const limits = reading || typeof value !== 'number' ? undefined : spreadOfCell(engine, node)
  const tolerance = reading
    ? reading.tolerance
    : limits && Math.max(limits.high - (value as number), (value as number) - limits.low)
  const isMeasured = node.measured?.value !== undefined
  const byFormulaNow = isMeasured ? byFormula(engine, node) : undefined
  const shown = reading
    ? showTyped(value, type, node.unit, tolerance)
    : showValue(value, type, node.unit, isSeen(value, tolerance) ? tolerance : undefined)
  const read = reading ?? node.measured
  const readAs = read?.readAs ?? (read?.by && shown.text)
  return {
    state: 'value',
    value,
    type,
    shown,
    ...(tolerance === undefined ? {} : { tolerance }),
    ...(limits ? { limits } : {}),
    ...(node.measured?.error ? { measuredAmiss: node.measured.error } : {}),
    ...(isMeasured ? { measured: measuredOf(engine, node, shown, type, byFormulaNow?.value) } : {}),
    ...(readAs === undefined ? {} : { readAs }),
    ...(read?.by === undefined ? {} : { by: read.by }),
    offers: read?.offers ?? [],
    warnings: warningsOf(engine, node, byFormulaNow?.advice ?? engine.adviceOf(node)),
    ...cautionsOf(node.compiled?.calls ?? []),
  }
}

/** Limits far below the digits of a figure would only lengthen it. */
const isSeen = (value: Value, tolerance: number | undefined): boolean =>
  tolerance !== undefined && tolerance >= 5e-4 * Math.abs(value as number)

function measuredOf(engine: Engine, node: Node, shown: Shown, type: Type, computed: Value | undefined): Measured {
  if (computed === undefined) return { shown, difference: '' }
  return {
    shown,
    computed: { value: computed, shown: showValue(computed, type, node.unit) },
    difference: '',
    ...engine.capabilities.compare?.(node, engine.value(node) as number, computed as number, type),
  }
}

/** What a measured cell would be by its formula. */
function byFormula(engine: Engine, { computable }: Node): Computed | undefined {
  if (!computable || !isReady(engine, computable)) return undefined
  try {
    return computeOnce(computable, (name) => cellValue(engine, name))
  } catch (error) {
    if (error instanceof ComputeError) return undefined
    throw error
  }
}

const isReady = (engine: Engine, { inputs }: Computable): boolean =>
  inputs.every((input) => !('cell' in input) || cellValue(engine, input.cell) !== undefined)

function warningsOf(engine: Engine, node: Node, advice: readonly string[]): Diagnostic[] {
  if (!node.compiled) return []
  const to = textLength(node)
  return [
    ...node.compiled.warnings,
    ...advice.map(
      (text): Diagnostic => ({ severity: 'warning', message: inLabels(engine, node, text), from: 0, to, fixes: [] }),
    ),
  ]
}

/** What a function says in a formula, its arguments by the labels of their cells. */
const inLabels = (engine: Engine, { cell, compiled }: Node, text: string): string =>
  compiled ? withLabels(text, formulaOf(cell), compiled.calls, labelIn(engine)) : text

const textLength = ({ cell }: Node): number => formulaOf(cell).length

const cellValue = (engine: Engine, name: string): Value | undefined => {
  const node = engine.named(name)
  return node && engine.state(node) === VALUE ? engine.value(node) : undefined
}

function errorOf(engine: Engine, node: Node): ErrorOutcome {
  const cycle = engine.cycle(node)
  if (cycle) return failed([cycleProblem(cycle, node)])
  const errors = engine.errorsOf(node)
  if (errors.length > 0) return failed(errors)
  const failure = engine.failure(node)
  if (failure) return failed([{ ...failure, message: inLabels(engine, node, failure.message) }])
  const source = engine.originOf(node)
  const origin = source.cell.name
  // What is wrong there is said here too: the cell may be folded away.
  const why = source === node ? '' : (errorOf(engine, source).diagnostics[0]?.message ?? '')
  return {
    state: 'error',
    diagnostics: [problem(words.fixFirst(labelOf(source.cell), why), 0, textLength(node))],
    origin,
  }
}

function cycleProblem(cycle: readonly Node[], node: Node): Diagnostic {
  // Listed from this cell on, where it is itself in the cycle.
  const at = Math.max(0, cycle.indexOf(node))
  const first = [...cycle.slice(at, at + LONGEST_PATH), ...cycle.slice(0, at).slice(0, LONGEST_PATH)]
  const names = first.slice(0, LONGEST_PATH).map(({ cell }) => cell.name)
  const shown = cycle.length > LONGEST_PATH ? [...names, '…'] : names
  return problem(words.cycle([...shown, names[0] as string]), 0, textLength(node))
}

type CheckState = Pick<CheckOutcome, 'state' | 'hangsOn'>

function checkState(engine: Engine, node: Node, cell: Check, outcome: Outcome): CheckState {
  if (outcome.state === 'error') return { state: 'error' }
  if (outcome.state === 'waiting' || unmeasured(engine, cell, outcome).length > 0) return { state: 'waiting' }
  if (outcome.value !== true) return { state: 'fail' }
  if (!node.compiled) return { state: 'pass' }
  const { slack, hangsOn } = robustnessOf(node.compiled.condition(), conditionContextOf(engine))
  const isMarginal = isWithinMargin(slack, marginOf(cell.margin))
  return { state: isMarginal || hangsOn ? 'marginal' : 'pass', ...(hangsOn ? { hangsOn } : {}) }
}

/**
 * What a check needs measured first: results that are still computed, with which it would pass by construction, and, where
 * it would pass, readings that were not taken.
 */
const unmeasured = (engine: Engine, { needs_measured = [] }: Check, outcome: Outcome): readonly string[] =>
  needs_measured.filter((name) => {
    const node = engine.named(name)
    if (node?.cell.kind === 'result') return node.measured?.value === undefined
    return (
      node?.cell.kind === 'given' &&
      node.cell.value.trim() === '' &&
      outcome.state === 'value' &&
      outcome.value === true
    )
  })

/** The state of a check, without its message. */
export const checkStateOf = (engine: Engine, node: Node, cell: Check): CheckOutcome['state'] =>
  engine.isErroneous(node) ? 'error' : checkState(engine, node, cell, outcomeOf(engine, node)).state

/** How a check is, with its message and, where it depends on limits, the givens with them. */
export function checkOutcomeOf(engine: Engine, node: Node, cell: Check): CheckOutcome {
  const outcome = outcomeOf(engine, node)
  const found = checkState(engine, node, cell, outcome)
  if (outcome.state === 'error')
    return { ...found, message: outcome.diagnostics[0]?.message ?? '', diagnostics: outcome.diagnostics }
  if (outcome.state === 'waiting')
    return { ...found, message: waitingMessage(engine, outcome, node), diagnostics: [], needs: outcome.on }
  const missing = unmeasured(engine, cell, outcome)
  if (missing.length > 0)
    return { ...found, message: words.toBeMeasured(labelsOf(engine, missing)), diagnostics: [], needs: missing }
  const message = found.state === 'fail' ? cell.message : (cell.passes ?? cell.label ?? '')
  return { ...found, message: filled(engine, message), diagnostics: outcome.warnings }
}

type Cells = (name: string) => Value

/** What a sheet's conditions are evaluated with. */
const conditionContextOf = (engine: Engine): ConditionContext => ({
  value: (name) => cellValue(engine, name) as Value,
  spread: (names, figure) => spreadOfNames(engine, names, figure),
})

/** How far something computed from named cells may be off. */
function spreadOfNames(engine: Engine, names: readonly string[], figure: (cells: Cells) => number): Spread | undefined {
  const places = new Map(
    names.flatMap((name) => {
      const node = engine.named(name)
      return node ? [[name, engine.positionOf(node)] as const] : []
    }),
  )
  return spreadOf(engine, {
    from: [...places.values()],
    of: (values) => figure((name) => values[places.get(name) as number] as Value),
  })
}

function waitingMessage(engine: Engine, { on }: WaitingOutcome, { awaitingCompiler }: Node): string {
  if (awaitingCompiler) return words.formulaLoading
  if (on.length === 0) return words.noCondition
  return words.waitsFor(labelsOf(engine, on))
}

function filled(engine: Engine, message: string): string {
  const show = (name: string): string | undefined => {
    const node = engine.named(name)
    const outcome = node && outcomeOf(engine, node)
    return outcome?.state === 'value' ? (outcome.shown.mark ?? outcome.shown.text) : undefined
  }
  return fillMessage(message, (formula) => (engine.named(formula) ? show(formula) : inlineFigure(engine, formula)))
}

/** Computes and shows a formula inside a message. */
function inlineFigure(engine: Engine, formula: string): string | undefined {
  const found = engine.compileShown(formula)
  if (!found?.meaning || found.uses.some((name) => cellValue(engine, name) === undefined)) return undefined
  const { computable } = found.meaning
  try {
    const { value } = computeOnce(computable, (name) => cellValue(engine, name))
    // `{original.width}` is a part of what was typed.
    const [, of] = /^\s*(\w+)\.\w+\s*$/.exec(formula) ?? []
    const show = of !== undefined && engine.named(of)?.reading ? showTyped : showValue
    return show(value, computable.type).text
  } catch (error) {
    if (error instanceof ComputeError) return undefined
    throw error
  }
}

/** Computes what feeds a drawing; what does not compute is named with why. */
export function drawingOutcomeOf(engine: Engine, drawing: Drawing): DrawingOutcome {
  const values: Record<string, Value> = {}
  const missing: Record<string, string> = {}
  for (const [input, formula] of Object.entries(drawing.from)) {
    if (formula.trim() === '') continue
    const found = engine.compileShown(formula)
    const absent = found?.uses.filter((name) => cellValue(engine, name) === undefined) ?? []
    if (!found) missing[input] = words.formulaLoading
    else if (absent.length > 0) missing[input] = words.needs(labelsOf(engine, absent))
    else if (!found.meaning) missing[input] = found.errors[0]?.message ?? words.inError
    else
      try {
        values[input] = computeOnce(found.meaning.computable, (name) => cellValue(engine, name)).value
      } catch (error) {
        missing[input] = withLabels(
          explainFailure(error, formula).message,
          formula,
          found.meaning.calls,
          labelIn(engine),
        )
      }
  }
  return { values, missing }
}
