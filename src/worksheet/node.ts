import {
  type Checked,
  type Computable,
  ComputeError,
  checkFormula,
  computable,
  type Diagnostic,
  explainFailure,
  fitsDeclared,
  namesIn,
  type ParsedFormula,
  parseFormula,
  problem,
  type Scope,
  type Type,
  YES_NO,
} from '../language/index.ts'
import type { DisplayUnit } from '../units/index.ts'
import type { Check, Given, NamedCell, Result } from './document.ts'
import { readKit } from './kit-given.ts'
import { readMeasured } from './measured.ts'
import { declaredUnit, type GivenReading, readGiven } from './read-given.ts'
import { checkSchedule, namesInSchedule, type ScheduleMeaning } from './schedule-node.ts'

/** A named cell as the engine sees it: what it needs, and once checked, its type and program. */
export interface Node {
  cell: NamedCell
  /** The words in its formula that may be cells, whether or not there are such cells. */
  mentions: readonly string[]
  /** Its formula read, so that a check in another scope need not read it again. */
  parsed: ParsedFormula | undefined
  type: Type | undefined
  unit: DisplayUnit | undefined
  reading: GivenReading | undefined
  /** What was measured in place of what is computed. */
  measured: GivenReading | undefined
  checked: Checked | undefined
  computable: Computable | undefined
  /** Of a schedule: its columns, and what computes its rows. */
  schedule: ScheduleMeaning | undefined
  /** What is wrong with the text; while there is anything, nothing is computed. */
  errors: readonly Diagnostic[]
}

export function newNode(cell: NamedCell): Node {
  const node: Node = {
    cell,
    mentions: [],
    parsed: undefined,
    type: undefined,
    unit: undefined,
    reading: undefined,
    measured: undefined,
    checked: undefined,
    computable: undefined,
    schedule: undefined,
    errors: [],
  }
  setCell(node, cell)
  return node
}

/** The formula of a cell that has one. */
export const formulaOf = (cell: NamedCell): string =>
  cell.kind === 'result' ? cell.formula : cell.kind === 'check' ? cell.condition : ''

/** Forgets what a node's text meant. */
export function forgetMeaning(node: Node): void {
  node.type = undefined
  node.unit = undefined
  node.reading = undefined
  node.measured = undefined
  node.checked = undefined
  node.computable = undefined
  node.schedule = undefined
  node.errors = []
}

/** Takes a cell's new text in; its check must follow. */
export function setCell(node: Node, cell: NamedCell): void {
  // A given that becomes a result, or the other way about, keeps nothing but its type, which the check compares.
  if (node.cell.kind !== cell.kind) {
    const { type } = node
    forgetMeaning(node)
    node.type = type
  }
  node.cell = cell
  if (cell.kind === 'schedule') {
    node.mentions = namesInSchedule(cell)
    return
  }
  const parsed = cell.kind === 'given' ? undefined : parseFormula(formulaOf(cell))
  node.parsed = parsed
  node.mentions = parsed ? [...new Set(namesIn(parsed).map(({ name }) => name))] : []
}

/** Reads a given, or checks a formula's units in its scope. Says whether the node's type is another now. */
export function checkNode(node: Node, scope: Scope): boolean {
  const before = node.type
  if (node.cell.kind === 'given') checkGiven(node, node.cell)
  else if (node.cell.kind === 'schedule') checkSchedule(node, node.cell, scope)
  else checkFormulaCell(node, node.cell, scope)
  return !sameOrBothMissing(before, node.type)
}

function sameOrBothMissing(a: Type | undefined, b: Type | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && JSON.stringify(a) === JSON.stringify(b))
}

function checkGiven(node: Node, given: Given): void {
  node.reading = given.entry === 'kit' ? readKit(given) : readGiven(given)
  node.unit = declaredUnit(given.unit).unit
  node.type = node.reading.type
  node.errors = node.reading.error ? [node.reading.error] : []
}

function checkFormulaCell(node: Node, cell: Result | Check, scope: Scope): void {
  const text = formulaOf(cell)
  node.checked = undefined
  node.computable = undefined
  node.measured = undefined
  node.type = undefined
  const declared = cell.kind === 'result' ? declaredUnit(cell.unit) : {}
  node.unit = declared.unit
  if (text.trim() === '') {
    node.errors = []
    return
  }
  const checked = checkFormula(node.parsed ?? text, scope)
  node.checked = checked
  const errors = checked.diagnostics.filter(({ severity }) => severity === 'error')
  if (declared.error) errors.push(declared.error)
  const misfit =
    cell.kind === 'check'
      ? notACondition(checked, text)
      : declared.unit && fitsDeclared(checked, text, declared.unit.dimension, declared.unit.symbol)
  if (misfit) errors.push(misfit)
  node.errors = errors
  if (errors.length > 0 || !checked.root) return
  try {
    node.computable = computable(checked.root, checked.mayBeInfinite)
    node.type = checked.root.type
    if (cell.kind === 'result') node.measured = readMeasured(cell.measured, node.type, node.unit)
  } catch (error) {
    if (!(error instanceof ComputeError)) throw error
    node.errors = [explainFailure(error, text)]
  }
}

function notACondition(checked: Checked, text: string): Diagnostic | undefined {
  if (!checked.root || checked.root.type.kind === YES_NO.kind) return undefined
  return problem('A check needs a condition that is either so or not, such as «a <= b».', 0, text.length)
}
