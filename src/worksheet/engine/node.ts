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
import { readAnyGiven } from '../document/kit-given.ts'
import { readMeasured } from '../document/measured.ts'
import { declaredUnit, type GivenReading } from '../document/read-given.ts'
import { kindOf } from '../kinds/index.ts'
import type { Check, Frame, Given, NamedCell, Result, TableCell } from '../schema/document.ts'
import { constantsRead, convertLight } from './converted-light.ts'
import { readMargin } from './margin.ts'
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
  /** For a table: its compiled columns and rows, which only the table folder looks into. */
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
  /** A frame waits without it. */
  readonly frames?: (frame: Frame) => GivenReading
}

/** A cell as the engine sees it, before its first check. */
export function newNode(cell: NamedCell, compilers: NodeCompilers): Node {
  const node = { cell, explainedAt: undefined } as Node
  clearCompiled(node)
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
  node.cell = cell
  const { computed, formula } = kindOf(cell)
  node.parsed = computed === 'formula' ? compiler.read(formula?.(cell) ?? '') : undefined
  node.mentions =
    computed === 'table'
      ? (tables?.namesIn(cell as TableCell, compiler) ?? [])
      : cell.kind === 'given'
        ? constantsRead(cell).map(([, name]) => name)
        : [
            ...(node.parsed?.mentions ?? []),
            ...(cell.kind === 'result' && cell.measured ? Object.values(cell.constants ?? {}) : []),
          ]
}

/** Reads a given, or checks a formula's units in its scope. Says whether the node's type is another now. */
export function checkNode(node: Node, scope: Scope, compilers: NodeCompilers): boolean {
  const before = node.type
  clearCompiled(node)
  node.explainedAt = undefined
  ;(CHECK_BY_KIND[node.cell.kind] as NodeCheck<NamedCell>)(node, node.cell, scope, compilers)
  return !sameOrBothMissing(before, node.type)
}

type NodeCheck<C extends NamedCell> = (node: Node, cell: C, scope: Scope, compilers: NodeCompilers) => void

/** How the text of a node is checked, by the kind of its cell. */
const CHECK_BY_KIND: { readonly [K in NamedCell['kind']]: NodeCheck<Extract<NamedCell, { kind: K }>> } = {
  given: checkGiven,
  frame: checkFrame,
  result: checkResult,
  check: checkCondition,
  table: checkTable,
}

function checkTable(node: Node, cell: TableCell, scope: Scope, { tables, compiler }: NodeCompilers): void {
  if (tables) tables.check(node, cell, scope, compiler)
  else node.awaitingCompiler = true
}

/** Whether two types are equal in every respect, notation included. */
export function sameOrBothMissing(a: Type | undefined, b: Type | undefined): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}

function checkGiven(node: Node, given: Given, scope: Scope): void {
  node.reading = readAnyGiven(given)
  convertLight(node, given, scope)
  node.unit = declaredUnit(given.unit).unit
  node.type = node.reading.type
  const coverage = readCoverage(given.coverage).error
  node.errors = [node.reading.error ?? [], coverage === undefined ? [] : problem(coverage, 0, 0)].flat()
}

function checkFrame(node: Node, frame: Frame, _scope: Scope, { frames }: NodeCompilers): void {
  node.reading = frames?.(frame)
  node.type = node.reading?.type
  node.awaitingCompiler = !frames
}

/** What a formula is checked against besides its own units. */
interface Declared {
  readonly unit?: DisplayUnit
  readonly error?: Diagnostic
  /** What is wrong with a formula of a type, for this cell. */
  misfit(type: Type, text: string): Diagnostic | undefined
}

/** Compiles a node's formula and checks it; gives its type where it can be computed. */
function checkFormulaCell(node: Node, text: string, scope: Scope, declared: Declared): Type | undefined {
  node.unit = declared.unit
  if (text.trim() === '') return undefined
  const found = node.parsed?.check(node.unit ? { ...scope, declared: node.unit.dimension } : scope)
  node.awaitingCompiler = found === undefined
  if (!found) return undefined
  const { meaning } = found
  const type = meaning?.computable.type
  node.errors = [...found.errors, (type && declared.misfit(type, text)) ?? [], declared.error ?? []].flat()
  node.compiled = meaning
  if (!meaning || node.errors.length > 0) return undefined
  node.computable = meaning.computable
  node.mayAdvise = meaning.calls.some(({ advise }) => advise)
  node.type = meaning.computable.type
  return node.type
}

function checkResult(node: Node, { formula, unit: text, measured }: Result, scope: Scope): void {
  const { unit, error } = declaredUnit(text)
  const type = checkFormulaCell(node, formula, scope, {
    ...(unit ? { unit } : {}),
    ...(error ? { error } : {}),
    misfit: (found, formula) => unit && fitsDeclared(found, formula, unit, scope),
  })
  if (type) node.measured = readMeasured(measured, type, unit)
}

function checkCondition(node: Node, { condition, margin: text }: Check, scope: Scope): void {
  const margin = readMargin(text).error
  checkFormulaCell(node, condition, scope, {
    ...(margin === undefined ? {} : { error: problem(margin, 0, 0) }),
    misfit: notACondition,
  })
}

function notACondition({ kind }: Type, text: string): Diagnostic | undefined {
  if (kind === YES_NO.kind) return undefined
  return problem(words.needsCondition, 0, text.length)
}
