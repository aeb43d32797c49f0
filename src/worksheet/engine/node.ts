import {
  type CompiledFormula,
  type Computable,
  type Diagnostic,
  type FormulaCompiler,
  fitsDeclared,
  type ParsedForCompiling,
  problem,
  type Scope,
  type Type,
  YES_NO,
} from '../../language/index.ts'
import type { DisplayUnit } from '../../units/index.ts'
import { readCoverage } from '../document/coverage.ts'
import { readFrame } from '../document/frame-readings.ts'
import { readAnyGiven } from '../document/kit-given.ts'
import { readMeasured } from '../document/measured.ts'
import { declaredUnit, type GivenReading } from '../document/read-given.ts'
import { kindOf } from '../kinds/index.ts'
import type { Check, Frame, Given, NamedCell, Result, TableCell } from '../schema/document.ts'
import { readMargin } from './condition.ts'
import * as words from './words.ts'

/** A named cell as the engine sees it: what it needs, and once checked, its type and program. */
export interface Node {
  cell: NamedCell
  /** The names in its formula that may be cells, whether or not there are such cells. */
  mentions: readonly string[]
  /** Its formula read, so that a check in another scope need not read it again. */
  parsed: ParsedForCompiling | undefined
  type: Type | undefined
  unit: DisplayUnit | undefined
  reading: GivenReading | undefined
  /** What was measured in place of what is computed. */
  measured: GivenReading | undefined
  compiled: CompiledFormula | undefined
  /** A function in its formula may have advice on the arguments it is given. */
  mayAdvise: boolean
  /** Its formula needs the checker, which is not loaded yet. */
  awaitingCompiler: boolean
  computable: Computable | undefined
  /** Of a table: its compiled columns and rows, which only the table folder looks into. */
  table: object | undefined
  /** What is wrong with the text; while there is anything, nothing is computed. To be shown, it is asked of the engine. */
  errors: readonly Diagnostic[]
  /** The edition of the sheet's scope that the errors speak of, once they are explained. */
  explainedAt: number | undefined
}

/** What compiles the text of nodes. */
export interface NodeCompilers {
  readonly compiler: FormulaCompiler
  /** A table waits without it. */
  readonly tables?: {
    namesIn(cell: TableCell, compiler: FormulaCompiler): readonly string[]
    check(node: Node, cell: TableCell, scope: Scope, compiler: FormulaCompiler): void
  }
}

export function newNode(cell: NamedCell, compilers: NodeCompilers): Node {
  const node: Node = {
    cell,
    mentions: [],
    parsed: undefined,
    type: undefined,
    unit: undefined,
    reading: undefined,
    measured: undefined,
    compiled: undefined,
    mayAdvise: false,
    awaitingCompiler: false,
    computable: undefined,
    table: undefined,
    errors: [],
    explainedAt: undefined,
  }
  setCell(node, cell, compilers)
  return node
}

/** The formula of a cell that has one. */
export const formulaOf = (cell: NamedCell): string => kindOf(cell).formula?.(cell) ?? ''

/** Clears what was compiled from a node's text. */
export function clearCompiled(node: Node): void {
  node.type = undefined
  node.unit = undefined
  node.reading = undefined
  node.measured = undefined
  node.compiled = undefined
  node.mayAdvise = false
  node.awaitingCompiler = false
  node.computable = undefined
  node.table = undefined
  node.errors = []
}

/** Takes a cell's new text in; its check must follow. */
export function setCell(node: Node, cell: NamedCell, { compiler, tables }: NodeCompilers): void {
  // When a cell changes its kind, only its type stays, for the check to compare with.
  if (node.cell.kind !== cell.kind) {
    const { type } = node
    clearCompiled(node)
    node.type = type
  }
  node.cell = cell
  if (cell.kind === 'table') {
    node.mentions = tables?.namesIn(cell, compiler) ?? []
    return
  }
  node.parsed = cell.kind === 'given' || cell.kind === 'frame' ? undefined : compiler.read(formulaOf(cell))
  node.mentions = node.parsed?.mentions ?? []
}

/** Reads a given, or checks a formula's units in its scope. Says whether the node's type is another now. */
export function checkNode(node: Node, scope: Scope, compilers: NodeCompilers): boolean {
  const before = node.type
  node.explainedAt = undefined
  if (node.cell.kind === 'given') checkGiven(node, node.cell)
  else if (node.cell.kind === 'frame') checkFrame(node, node.cell)
  else if (node.cell.kind !== 'table') checkFormulaCell(node, node.cell, scope)
  else if (compilers.tables) compilers.tables.check(node, node.cell, scope, compilers.compiler)
  else node.awaitingCompiler = true
  return !sameOrBothMissing(before, node.type)
}

/** Whether two types are equal in every respect, notation included. */
export function sameOrBothMissing(a: Type | undefined, b: Type | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && JSON.stringify(a) === JSON.stringify(b))
}

function checkGiven(node: Node, given: Given): void {
  node.reading = readAnyGiven(given)
  node.unit = declaredUnit(given.unit).unit
  node.type = node.reading.type
  const coverage = readCoverage(given.coverage).error
  node.errors = [node.reading.error ?? [], coverage === undefined ? [] : problem(coverage, 0, 0)].flat()
}

function checkFrame(node: Node, frame: Frame): void {
  node.reading = readFrame(frame)
  node.type = node.reading.type
  node.errors = []
}

function checkFormulaCell(node: Node, cell: Result | Check, scope: Scope): void {
  const text = formulaOf(cell)
  node.compiled = undefined
  node.mayAdvise = false
  node.awaitingCompiler = false
  node.computable = undefined
  node.measured = undefined
  node.type = undefined
  const declared = cell.kind === 'result' ? declaredUnit(cell.unit) : {}
  node.unit = declared.unit
  node.errors = []
  if (text.trim() === '') return
  const found = node.parsed?.check(node.unit ? { ...scope, declared: node.unit.dimension } : scope)
  node.awaitingCompiler = found === undefined
  if (!found) return
  const { meaning } = found
  const type = meaning?.computable.type
  const errors = [...found.errors]
  if (declared.error) errors.push(declared.error)
  const misfit =
    type &&
    (cell.kind === 'check'
      ? notACondition(type, text)
      : declared.unit && fitsDeclared(type, text, declared.unit, scope))
  if (misfit) errors.push(misfit)
  const margin = cell.kind === 'check' ? readMargin(cell.margin).error : undefined
  if (margin !== undefined) errors.push(problem(margin, 0, 0))
  node.errors = errors
  node.compiled = meaning
  if (!meaning || errors.length > 0) return
  node.computable = meaning.computable
  node.mayAdvise = meaning.calls.some(({ advise }) => advise !== undefined)
  node.type = meaning.computable.type
  if (cell.kind === 'result') node.measured = readMeasured(cell.measured, node.type, node.unit)
}

function notACondition({ kind }: Type, text: string): Diagnostic | undefined {
  if (kind === YES_NO.kind) return undefined
  return problem(words.needsCondition, 0, text.length)
}
