import type { SyntaxNode } from '@lezer/common'
import { NONE } from '../../units/index.ts'
import type { KnownNames } from '../syntax/habits.ts'
import type { NameSpan } from '../syntax/names-in.ts'
import { type ParsedFormula, parsed } from '../syntax/parsed-formula.ts'
import { explainSyntaxError } from '../syntax/syntax-errors.ts'
import { type Diagnostic, problem } from '../values/diagnostic.ts'
import type { Callable } from '../values/function-record.ts'
import type { Scope } from '../values/scope.ts'
import { describeType, TEXT, YES_NO } from '../values/types.ts'
import { checkCall } from './check-calls.ts'
import { type CheckContext, partsOf } from './check-context.ts'
import { checkQuantity, checkRatio, constant, numberOf, refusedNumber } from './check-literals.ts'
import { checkList, checkName, checkPart } from './check-names.ts'
import { checkComparison, checkJoined, checkPower, checkProduct, checkSigned, checkSum } from './check-operators.ts'
import { ANY_NUMBER, fixesToward, unitFixes } from './expression.ts'
import type { TypedNode } from './typed-tree.ts'
import { CHECK_WORDS as W } from './words.ts'

/** Limits of error written with ±: their own formula, absolute, or relative to the value. */
export interface Limits {
  readonly of: TypedNode
  readonly relative: boolean
}

/** What is checked one after the other; an error at one stage leaves the next unchecked. */
export type Stage = 'characters' | 'grammar' | 'units'

/** A formula after its units were checked. */
export interface Checked {
  /** Undefined where something is wrong. */
  readonly root?: TypedNode
  readonly limits?: Limits
  readonly diagnostics: readonly Diagnostic[]
  /** The cells it names, in order of use, whether or not they exist. */
  readonly uses: readonly string[]
  /** The spans of those names, for renaming. */
  readonly nameSpans: readonly { readonly name: string; readonly from: number; readonly to: number }[]
  /** The functions it calls. */
  readonly calls: readonly Callable[]
  /** How far the check came: to the characters, to the grammar, or to the units. */
  readonly reached: Stage
  /** Whether an infinite result may be meant. */
  readonly mayBeInfinite: boolean
}

/** Checks a formula's grammar and units. Nothing is computed, and the fixes it offers are not tested yet. */
export function checkUnits(formula: string | ParsedFormula, scope: Scope): Checked {
  const { evened, looked, tree } = parsed(formula)
  if (looked.length > 0 || !tree) return failed(looked)
  return new Checker(evened, scope).run(tree.topNode)
}

const failed = (diagnostics: readonly Diagnostic[]): Checked => ({
  diagnostics,
  uses: [],
  nameSpans: [],
  calls: [],
  reached: 'characters',
  mayBeInfinite: false,
})

const hasError = (top: SyntaxNode): boolean => {
  let found = false
  top.cursor().iterate((node) => {
    if (node.type.isError) found = true
    return !found
  })
  return found
}

const knownNames = (scope: Scope): KnownNames => ({
  isFunction: (name) => scope.library.has(name),
  isCell: (name) => scope.typeOf(name) !== undefined,
})

/** The longest sum that fits in a formula is 1,000 deep; what is deeper overflows the stack in some browsers. */
const DEEPEST_TREE = 1050

/** The most errors of a formula that are reported, and the most doubts. */
const MOST_DIAGNOSTICS = 20

const ISO_DATE = /^\d{4}-\d{2}-\d{2}$/

class Checker implements CheckContext {
  private readonly diagnostics: Diagnostic[] = []
  private readonly nameSpans: NameSpan[] = []
  private readonly calls = new Set<Callable>()
  private mayBeInfinite = false
  private limits: Limits | undefined
  private depth = 0

  constructor(
    readonly text: string,
    readonly scope: Scope,
  ) {}

  run(top: SyntaxNode): Checked {
    let root: TypedNode | undefined
    const broken = hasError(top)
    if (broken) this.report(explainSyntaxError(this.text, top.toTree(), knownNames(this.scope)))
    else root = this.whole(partsOf(top)[0] as SyntaxNode)
    const sound = !this.diagnostics.some((d) => d.severity === 'error')
    return {
      ...(root && sound ? { root } : {}),
      ...(this.limits && sound ? { limits: this.limits } : {}),
      diagnostics: this.diagnostics,
      uses: [...new Set(this.nameSpans.map(({ name }) => name))],
      nameSpans: this.nameSpans,
      calls: [...this.calls],
      reached: broken ? 'grammar' : 'units',
      mayBeInfinite: this.mayBeInfinite,
    }
  }

  report(diagnostic: Diagnostic): undefined {
    // One mistake can cause many errors, of which the first few say enough. Many doubts leave room for an error.
    const alike = this.diagnostics.filter(({ severity }) => severity === diagnostic.severity)
    if (alike.length < MOST_DIAGNOSTICS) this.diagnostics.push(diagnostic)
    return undefined
  }

  source(node: { from: number; to: number }): string {
    return this.text.slice(node.from, node.to)
  }

  /** The whole formula, the one place where ± may be. */
  private whole(node: SyntaxNode): TypedNode | undefined {
    if (node.name !== 'Limits') return this.check(node)
    const [nominalNode, , limitNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
    const nominal = this.check(nominalNode)
    const limit = this.check(limitNode)
    if (!nominal || !limit) return undefined
    if (nominal.type.kind !== 'number' || limit.type.kind !== 'number')
      return this.report(problem(W.limitsOnlyOfNumbers, node.from, node.to))
    const relative =
      nominal.type.dimension !== NONE && limit.type.dimension === NONE && /[%‰]$/.test(this.source(limitNode))
    if (!relative && nominal.type.dimension !== limit.type.dimension)
      return this.report(
        problem(
          W.limitsDiffer(describeType(nominal.type), describeType(limit.type)),
          limitNode.from,
          limitNode.to,
          unitFixes(limit, nominal.type.dimension),
        ),
      )
    this.limits = { of: limit, relative }
    return nominal
  }

  check(node: SyntaxNode): TypedNode | undefined {
    this.depth++
    try {
      if (this.depth > DEEPEST_TREE) return this.report(problem(W.nestedTooDeep, node.from, node.to))
      return this.checkNode(node)
    } finally {
      this.depth--
    }
  }

  private checkNode(node: SyntaxNode): TypedNode | undefined {
    const { from, to } = node
    switch (node.name) {
      case 'Number':
        return constant(this, numberOf(this, node), node)
      case 'BadNumber':
        return this.report(refusedNumber(this, node))
      case 'Fraction':
      case 'FNumber':
      case 'Quantity':
        return checkQuantity(this, node)
      case 'Ratio':
        return checkRatio(this, node)
      case 'YesNo':
        return { op: 'constant', value: this.source(node) === 'yes', type: YES_NO, from, to }
      case 'Text':
        return { op: 'constant', value: this.source(node).slice(1, -1), type: TEXT, from, to }
      case 'Name':
        return checkName(this, node)
      case 'Call':
        return checkCall(this, node)
      case 'Part':
        return checkPart(this, node)
      case 'List':
        return checkList(this, node)
      case 'Group': {
        const inside = this.check(partsOf(node)[0] as SyntaxNode)
        return inside && { ...inside, from, to, ...(inside.op === 'constant' ? { bare: false } : {}) }
      }
      case 'Signed':
        return checkSigned(this, node)
      case 'Not': {
        const of = this.truth(partsOf(node)[1] as SyntaxNode)
        return of && { op: 'unary', sign: 'not', of, type: YES_NO, from, to }
      }
      case 'Both':
      case 'Either':
        return checkJoined(this, node)
      case 'Comparison':
        return checkComparison(this, node)
      case 'Sum':
        return checkSum(this, node)
      case 'Product':
        return checkProduct(this, node)
      case 'Power':
        return checkPower(this, node)
      case 'Limits':
        return this.report(problem(W.limitsInside, from, to))
      case 'Hole':
        // What is required in its place is found out by trial, once the rest is checked.
        return undefined
      default:
        return this.report(problem(W.doesNotFit(this.source(node)), from, to))
    }
  }

  private refuseNumber(node: SyntaxNode, typed: TypedNode): undefined {
    const { type } = typed
    const message =
      type.kind === 'record'
        ? W.needsPart(type.name, Object.keys(type.parts))
        : type.kind === 'text' && typed.op === 'constant' && ISO_DATE.test(String(typed.value))
          ? W.dateIsText
          : W.needsNumber(describeType(type))
    return this.report(problem(message, node.from, node.to, fixesToward(this.scope, this.text, typed, ANY_NUMBER)))
  }

  numbers(node: SyntaxNode): TypedNode | undefined {
    const typed = this.check(node)
    const isOne = !typed || typed.type.kind === 'number'
    if (isOne || (typed.type.kind === 'list' && typed.type.of.kind === 'number')) return typed
    return this.refuseNumber(node, typed)
  }

  truth(node: SyntaxNode): TypedNode | undefined {
    const typed = this.check(node)
    if (!typed || typed.type.kind === 'yes or no') return typed
    return this.report(
      problem(
        W.needsCondition(describeType(typed.type)),
        node.from,
        node.to,
        fixesToward(this.scope, this.text, typed, YES_NO),
      ),
    )
  }

  useName(span: NameSpan): void {
    this.nameSpans.push(span)
  }

  useFunction(record: Callable): void {
    this.calls.add(record)
    if (record.mayBeInfinite) this.mayBeInfinite = true
  }
}
