import type { CompileResult, Diagnostic, Library, Scope, Type, Value } from '../../language/index.ts'
import { isNamed } from '../document/names.ts'
import type { Cell, FunctionCell, NamedCell } from '../schema/document.ts'
import type { Capabilities } from './capabilities.ts'
import { Computation, type NodeGraph, type Touched } from './computation.ts'
import { dependencyOrder } from './dependency-order.ts'
import { type EngineView, ERROR, type Layout } from './engine-view.ts'
import { checkNode, clearCompiled, type Node, newNode, sameOrBothMissing, setCell } from './node.ts'
import { defineFunctions, libraryWith, mentionsFunction, type OwnFunction } from './own-functions.ts'
import { SheetScope } from './sheet-scope.ts'

/** The most compiled texts of messages and drawings that are stored; beyond it they are compiled again. */
const MOST_TEXTS = 5000

/** A formula outside a cell, compiled for the types its names had. */
interface CompiledText {
  readonly mentions: readonly string[]
  readonly types: readonly (Type | undefined)[]
  readonly result: CompileResult
  /** What is wrong is said with the names there were then. */
  readonly edition: number
}

/**
 * The named cells of a sheet: which there are, what their formulas need, and what they compile to. `Computation` has
 * their values. An edit checks and recomputes only what it reaches.
 */
export class Engine implements EngineView, NodeGraph {
  /** In the order of the document, so that messages do not depend on the order of the edits. */
  private nodes = new Map<string, Node>()
  /** The first cell with each name; only that one computes under it. */
  private byName = new Map<string, Node>()
  private readonly sheetScope = new SheetScope(() => this.byName)
  private readonly texts = new Map<string, CompiledText>()
  private cycles = new Map<Node, readonly Node[]>()
  private readonly computation = new Computation(this)

  /** The time for limits after one change, in milliseconds; beyond it they are left out, so that typing stays fluid. */
  limitsBudget = 250

  /** Whether exposure values are computed as plain stops, with a warning: so in sheets of version 1. */
  lenientLevels = false

  /** The functions that are there without those of the sheet. */
  private base: Library
  private own: readonly OwnFunction[] = []

  constructor(
    private library: Library,
    public capabilities: Capabilities,
  ) {
    this.base = library
  }

  node(id: string): Node | undefined {
    return this.nodes.get(id)
  }
  named(name: string): Node | undefined {
    return this.byName.get(name)
  }
  state(node: Node): number {
    return this.computation.state(node)
  }
  value(node: Node): Value {
    return this.computation.value(node)
  }
  isErroneous(node: Node): boolean {
    return this.state(node) === ERROR || this.isDuplicate(node)
  }
  /** Whether no cell is in error, and none has the name of another. */
  get isSound(): boolean {
    return this.byName.size === this.nodes.size && !this.computation.hasErrors
  }
  failure(node: Node): Diagnostic | undefined {
    return this.computation.failure(node)
  }
  isInCycle(node: Node): boolean {
    return this.cycles.has(node)
  }
  /** A path round the cycle a node is in. */
  cycle(node: Node): readonly Node[] | undefined {
    return this.cycles.get(node)
  }
  /** The cell that the error of a node in error started in; the node itself where it started there. */
  originOf(node: Node): Node {
    return this.computation.originOf(node)
  }
  /** The givens, or unfinished formulas, that a waiting node waits for in the end. */
  waitsFor(node: Node): Node[] {
    return this.computation.waitsFor(node)
  }
  /** Whether another cell above has the same name. */
  isDuplicate(node: Node): boolean {
    return this.byName.get(node.cell.name) !== node
  }
  adviceOf(node: Node): readonly string[] {
    return this.computation.adviceOf(node)
  }
  idsAt(touched: Touched): Set<string> {
    return this.computation.idsAt(touched)
  }
  names(): Iterable<string> {
    return this.byName.keys()
  }
  get layout(): Layout {
    return this.computation.layout
  }
  positionOf(node: Node): number {
    return this.computation.positionOf(node)
  }

  scope(except?: Node): Scope {
    return this.sheetScope.scope(this.library, this.lenientLevels, except?.cell.name)
  }

  /** For finding out whether formulas are sound; what is wrong with the others is found out once it is shown. */
  private draftScope(): Scope {
    return { ...this.scope(), isDraft: true }
  }

  /**
   * What is wrong with the text of a node, as the sheet is now: the fixes offered, and the names suggested, depend on all
   * its cells. It is worked out only for what is shown.
   */
  errorsOf(node: Node): readonly Diagnostic[] {
    const { edition } = this.sheetScope
    if (node.errors.length > 0 && node.explainedAt !== edition) {
      checkNode(node, this.scope(), this.capabilities)
      node.explainedAt = edition
    }
    return node.errors
  }

  /** The cells a node's formula names, as far as there are any. */
  needsOf(node: Node): Node[] {
    return node.mentions.flatMap((name) => this.byName.get(name) ?? [])
  }

  /** Takes in a whole list of cells; what is unchanged (the same object) stays as computed. Returns the positions computed. */
  update(cells: readonly Cell[]): Touched {
    const renewed = this.renewFunctions(cells)
    const named = cells.filter(isNamed)
    const present = new Set(named.map(({ id }) => id))
    const changed = new Set<Node>()
    const changedNames = new Set<string>()
    for (const [id, node] of this.nodes) if (!present.has(id)) changedNames.add(node.cell.name)
    const ordered: Node[] = []
    for (const cell of named) {
      const known = this.nodes.get(cell.id)
      if (!known) {
        const node = newNode(cell, this.capabilities)
        changed.add(node)
        changedNames.add(cell.name)
        ordered.push(node)
        continue
      }
      ordered.push(known)
      if (known.cell === cell) continue
      if (known.cell.name !== cell.name) changedNames.add(known.cell.name).add(cell.name)
      setCell(known, cell, this.capabilities)
      changed.add(known)
    }
    this.nodes = new Map(ordered.map((node) => [node.cell.id, node]))
    const firstNamed = new Map<string, Node>()
    for (const node of ordered) if (!firstNamed.has(node.cell.name)) firstNamed.set(node.cell.name, node)
    for (const [name, node] of firstNamed) if (this.byName.get(name) !== node) changedNames.add(name)
    this.byName = firstNamed
    for (const node of ordered)
      if (changedNames.has(node.cell.name) || node.mentions.some((name) => changedNames.has(name))) changed.add(node)
    for (const node of ordered) if (renewed.some((name) => mentionsFunction(node, name))) changed.add(node)
    return this.settle(changed)
  }

  /** The functions of the sheet, in the order of the document. */
  get ownFunctions(): readonly OwnFunction[] {
    return this.own
  }

  /** Takes in the functions of the sheet. Returns the names that now mean something else. */
  private renewFunctions(cells: readonly Cell[]): readonly string[] {
    const functions = cells.filter((cell): cell is FunctionCell => cell.kind === 'function')
    if (functions.length === this.own.length && functions.every((cell, at) => this.own[at]?.cell === cell)) return []
    const before = this.own
    this.own = defineFunctions(
      functions.map((cell) => ({ cell })),
      this.base,
      this.capabilities.compiler,
      this.capabilities.define,
    )
    this.library = libraryWith(this.base, this.own)
    this.sheetScope.changed()
    this.texts.clear()
    return [...new Set([...before, ...this.own].map(({ cell }) => cell.name))]
  }

  /** Takes a larger library, or capabilities that were missing: they only affect cells that did not compile before. */
  extend(library: Library, capabilities = this.capabilities): Touched {
    const isReadAlike = capabilities === this.capabilities
    this.base = library
    this.capabilities = capabilities
    this.own = defineFunctions(this.own, this.base, capabilities.compiler, capabilities.define)
    this.library = libraryWith(this.base, this.own)
    this.texts.clear()
    const all = [...this.nodes.values()]
    const uncompiled = all.filter(({ errors, awaitingCompiler }) => awaitingCompiler || errors.length > 0)
    if (isReadAlike && uncompiled.length === 0) {
      this.sheetScope.changed()
      return []
    }
    // What compiles is read again too: another type that reaches it may need what could not be read before.
    if (!isReadAlike) for (const node of all) setCell(node, node.cell, capabilities)
    return this.settle(new Set(uncompiled))
  }

  /** Compiles a formula that is not a cell's own; undefined where the compiler for it is not loaded yet. */
  compile(formula: string, scope: Scope): CompileResult | undefined {
    return this.capabilities.compiler.read(formula).check(scope)
  }

  /** The same for a formula in a message or a drawing, in the scope of the sheet: compiled again only when a type it uses changes. */
  compileShown(formula: string): CompileResult | undefined {
    const known = this.texts.get(formula)
    const mentions = known?.mentions ?? this.capabilities.compiler.read(formula).mentions
    const types = mentions.map((name) => this.byName.get(name)?.type)
    const { edition } = this.sheetScope
    const isCurrent = known && (known.edition === edition || known.result.errors.length === 0)
    if (isCurrent && types.every((type, i) => sameOrBothMissing(known.types[i], type))) return known.result
    const result = this.compile(formula, this.scope())
    if (!result) return undefined
    if (this.texts.size >= MOST_TEXTS) this.texts.clear()
    this.texts.set(formula, { mentions, types, result, edition })
    return result
  }

  /** Takes in one changed cell, the fast way for typing. Undefined where it needs `update`. */
  replace(cell: NamedCell): Touched | undefined {
    const node = this.nodes.get(cell.id)
    if (!node || node.cell.kind !== cell.kind || node.cell.name !== cell.name) return undefined
    const { computation } = this
    const position = computation.positionOf(node)
    const limit = typedLimit(node)
    if (cell.kind !== 'given') computation.limitsChanged()
    const before = node.mentions
    setCell(node, cell, this.capabilities)
    const isWired = cell.kind === 'given' && before.length === 0 && node.mentions.length === 0
    // Cells in a cycle come before some of what they need, so that a new one need not show in the order.
    if (!isWired && (this.cycles.size > 0 || !computation.rewire(node))) return this.settle(new Set([node]))
    const isRetyped = this.recheck(position)
    const touched = computation.recompute(position)
    // Changed limits change all dependent limits, though no value has changed.
    const isLimited = limit !== undefined || typedLimit(node) !== undefined
    const reached = isLimited ? [...new Set([...touched, ...computation.downstream(position)])] : touched
    return isRetyped ? this.withErrors(reached) : reached
  }

  /** With another name or type in the sheet, something else may be said of whatever is in error. */
  private withErrors(touched: Touched): Touched {
    return [...new Set([...touched, ...this.computation.inError()])]
  }

  /** Checks a cell again and, where its type has changed, what depends on it; says whether it has. */
  private recheck(from: number): boolean {
    const scope = this.draftScope()
    const first = this.computation.nodeAt(from)
    return this.computation.recheck(from, (node) => {
      const isRetyped = checkNode(node, scope, this.capabilities)
      if (isRetyped && node === first) this.sheetScope.changed()
      return isRetyped
    })
  }

  /** Sorts, checks what may have a different type now, lays the arrays out and computes. */
  private settle(changed: Set<Node>): Touched {
    const all = [...this.nodes.values()]
    const index = new Map(all.map((node, i) => [node, i]))
    const dependencies = all.map((node) => this.needsOf(node).map((need) => index.get(need) as number))
    const { sorted, cycles, behind } = dependencyOrder(dependencies)
    const inOrder = [...sorted, ...cycles.keys(), ...behind].map((i) => all[i] as Node)
    for (const node of this.cycles.keys()) changed.add(node)
    this.cycles = asNodes(cycles, all)
    const retyped = new Set<Node>()
    for (const node of this.cycles.keys()) {
      changed.add(node)
      if (node.type) retyped.add(node)
      // A cell in a cycle has no meaning, and what it meant before must not be used.
      clearCompiled(node)
    }
    this.sheetScope.changed()
    const scope = this.draftScope()
    for (const node of inOrder)
      if (!this.cycles.has(node) && (changed.has(node) || this.needsOf(node).some((need) => retyped.has(need)))) {
        changed.add(node)
        if (checkNode(node, scope, this.capabilities)) retyped.add(node)
      }
    this.computation.layOut(inOrder, changed)
    return this.withErrors(this.computation.recompute(0))
  }
}

function asNodes(cycles: ReadonlyMap<number, readonly number[]>, all: readonly Node[]): Map<Node, readonly Node[]> {
  const paths = new Map<readonly number[], readonly Node[]>()
  return new Map(
    [...cycles].map(([i, path]) => {
      const nodes = paths.get(path) ?? path.map((member) => all[member] as Node)
      paths.set(path, nodes)
      return [all[i] as Node, nodes]
    }),
  )
}

const typedLimit = ({ reading, measured }: Node): number | undefined => (reading ?? measured)?.tolerance
