import type { SyntaxNode } from '@lezer/common'
import { NONE } from '../../units/index.ts'
import type { NameSpan } from '../syntax/names-in.ts'
import { type ParsedFormula, parsed } from '../syntax/parsed-formula.ts'
import { explainSyntaxError } from '../syntax/syntax-errors.ts'
import { type Diagnostic, problem } from '../values/diagnostic.ts'
import type { Callable } from '../values/function-record.ts'
import type { Scope } from '../values/scope.ts'
import { describeType, TEXT, YES_NO } from '../values/types.ts'
import { unitFixFor } from './arguments.ts'
import { checkCall } from './check-calls.ts'
import { type CheckContext, partsOf } from './check-context.ts'
import { checkQuantity, checkRatio, constant, numberOf, refusedNumber } from './check-literals.ts'
import { checkList, checkName, checkPart } from './check-names.ts'
import { checkComparison, checkJoined, checkPower, checkProduct, checkSigned, checkSum } from './check-operators.ts'
import type { TypedNode } from './typed-tree.ts'

/** Limits of error written with ±: their own formula, absolute, or relative to the value. */
export interface Limits {
  readonly of: TypedNode
  readonly relative: boolean
}

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
  /** Whether an infinite result may be meant. */
  readonly mayBeInfinite: boolean
}

/** Checks a formula's grammar and units. Nothing is computed. */
export function checkFormula(formula: string | ParsedFormula, scope: Scope): Checked {
  const { evened, looked, tree } = parsed(formula)
  if (looked.length > 0 || !tree) return failed(looked)
  return new Checker(evened, scope).run(tree.topNode)
}

const failed = (diagnostics: readonly Diagnostic[]): Checked => ({
  diagnostics,
  uses: [],
  nameSpans: [],
  calls: [],
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

/** The longest sum a formula holds is 1,000 deep; what is deeper overflows the stack in some browsers. */
const DEEPEST_TREE = 1050

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
    if (hasError(top)) this.report(explainSyntaxError(this.text, top.toTree(), (name) => this.scope.library.has(name)))
    else root = this.whole(partsOf(top)[0] as SyntaxNode)
    const sound = !this.diagnostics.some((d) => d.severity === 'error')
    return {
      ...(root && sound ? { root } : {}),
      ...(this.limits && sound ? { limits: this.limits } : {}),
      diagnostics: this.diagnostics,
      uses: [...new Set(this.nameSpans.map(({ name }) => name))],
      nameSpans: this.nameSpans,
      calls: [...this.calls],
      mayBeInfinite: this.mayBeInfinite,
    }
  }

  report(diagnostic: Diagnostic): undefined {
    // A cascade of complaints about one place helps nobody.
    if (this.diagnostics.length < 20) this.diagnostics.push(diagnostic)
    return undefined
  }

  source(node: { from: number; to: number }): string {
    return this.text.slice(node.from, node.to)
  }

  /** The whole formula: the one place where ± may stand. */
  private whole(node: SyntaxNode): TypedNode | undefined {
    if (node.name !== 'Limits') return this.check(node)
    const [nominalNode, , limitNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
    const nominal = this.check(nominalNode)
    const limit = this.check(limitNode)
    if (!nominal || !limit) return undefined
    if (nominal.type.kind !== 'number' || limit.type.kind !== 'number')
      return this.report(problem('Only a number or a quantity takes limits of error.', node.from, node.to))
    const relative =
      nominal.type.dimension !== NONE && limit.type.dimension === NONE && /[%‰]$/.test(this.source(limitNode))
    if (!relative && nominal.type.dimension !== limit.type.dimension)
      return this.report(
        problem(
          `The limits are ${describeType(limit.type)}, the value is ${describeType(nominal.type)}.`,
          limitNode.from,
          limitNode.to,
          unitFixFor(limit, nominal.type.dimension.name),
        ),
      )
    this.limits = { of: limit, relative }
    return nominal
  }

  check(node: SyntaxNode): TypedNode | undefined {
    this.depth++
    try {
      if (this.depth > DEEPEST_TREE)
        return this.report(
          problem('This is nested too deep to be read. Split the formula over several cells.', node.from, node.to),
        )
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
        return this.report(
          problem('«±» stands once, at the end of a whole formula, not inside another part of it.', from, to),
        )
      default:
        return this.report(problem(`«${this.source(node)}» does not fit here.`, from, to))
    }
  }

  number(node: SyntaxNode): TypedNode | undefined {
    const typed = this.check(node)
    if (!typed || typed.type.kind === 'number') return typed
    return this.report(problem(`Wanted a number or a quantity, found ${describeType(typed.type)}.`, node.from, node.to))
  }

  truth(node: SyntaxNode): TypedNode | undefined {
    const typed = this.check(node)
    if (!typed || typed.type.kind === 'yes or no') return typed
    return this.report(
      problem(`Wanted a condition such as «a < b», found ${describeType(typed.type)}.`, node.from, node.to),
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
