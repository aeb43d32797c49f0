import type { SyntaxNode } from '@lezer/common'
import {
  type Dimension,
  findUnit,
  NONE,
  nearest,
  readQuantity,
  readUnit,
  SOLID_ANGLE,
  TIME,
  UnitTextError,
} from '../units/index.ts'
import { matchArguments, plainDefault, unitMendFor, type Written } from './arguments.ts'
import { explainBroken } from './broken.ts'
import type { Diagnostic, Mend } from './diagnostic.ts'
import type { Callable, Parameter } from './function-record.ts'
import { doubt, mend, problem } from './lookalikes.ts'
import { type ParsedFormula, parsed } from './parsed.ts'
import { CONSTANTS, type Scope } from './scope.ts'
import type { Binary, BinarySign, Typed } from './typed.ts'
import { describeType, list, number, PLAIN_NUMBER, sameType, TEXT, type Type, YES_NO } from './types.ts'

/** Limits of error written with ±: their own formula, absolute, or relative to the value. */
export interface Limits {
  readonly of: Typed
  readonly relative: boolean
}

/** A formula after its units were checked. */
export interface Checked {
  /** Undefined where something is wrong. */
  readonly root?: Typed
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

/** Every child with a name of its own, punctuation left out. */
function partsOf(node: SyntaxNode): SyntaxNode[] {
  const parts: SyntaxNode[] = []
  for (let child = node.firstChild; child; child = child.nextSibling)
    if (!/^[(){},]$/.test(child.name)) parts.push(child)
  return parts
}

const COMPARISONS: Readonly<Record<string, BinarySign>> = {
  '=': '==',
  '!=': '!=',
  '≠': '!=',
  '<': '<',
  '<=': '<=',
  '≤': '<=',
  '>': '>',
  '>=': '>=',
  '≥': '>=',
}

/** The longest sum a formula holds is 1,000 deep; what is deeper overflows the stack in some browsers. */
const DEEPEST_TREE = 1050

const cellType = (type: Type | 'unknown' | undefined): Type | undefined => (type === 'unknown' ? undefined : type)

class Checker {
  private readonly diagnostics: Diagnostic[] = []
  private readonly nameSpans: { name: string; from: number; to: number }[] = []
  private readonly calls = new Set<Callable>()
  private mayBeInfinite = false
  private limits: Limits | undefined
  private depth = 0

  constructor(
    private readonly text: string,
    private readonly scope: Scope,
  ) {}

  run(top: SyntaxNode): Checked {
    let root: Typed | undefined
    if (hasError(top)) this.report(explainBroken(this.text, top.toTree(), (name) => this.scope.library.has(name)))
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

  private report(diagnostic: Diagnostic): undefined {
    // A cascade of complaints about one place helps nobody.
    if (this.diagnostics.length < 20) this.diagnostics.push(diagnostic)
    return undefined
  }

  private source(node: { from: number; to: number }): string {
    return this.text.slice(node.from, node.to)
  }

  /** The whole formula: the one place where ± may stand. */
  private whole(node: SyntaxNode): Typed | undefined {
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
          {
            found: describeType(limit.type),
            wanted: describeType(nominal.type),
            mends: unitMendFor(limit, nominal.type.dimension.name),
          },
        ),
      )
    this.limits = { of: limit, relative }
    return nominal
  }

  private check(node: SyntaxNode): Typed | undefined {
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

  private checkNode(node: SyntaxNode): Typed | undefined {
    const { from, to } = node
    switch (node.name) {
      case 'Number':
        return this.constant(this.numberOf(node), node)
      case 'BadNumber':
        return this.report(this.badNumber(node))
      case 'Fraction':
      case 'FNumber':
      case 'Quantity':
        return this.quantity(node)
      case 'Ratio':
        return this.ratio(node)
      case 'YesNo':
        return { op: 'constant', value: this.source(node) === 'yes', type: YES_NO, from, to }
      case 'Text':
        return { op: 'constant', value: this.source(node).slice(1, -1), type: TEXT, from, to }
      case 'Name':
        return this.name(node)
      case 'Call':
        return this.call(node)
      case 'Part':
        return this.part(node)
      case 'List':
        return this.list(node)
      case 'Group': {
        const inside = this.check(partsOf(node)[0] as SyntaxNode)
        return inside && { ...inside, from, to, ...(inside.op === 'constant' ? { bare: false } : {}) }
      }
      case 'Signed':
        return this.signed(node)
      case 'Not': {
        const of = this.truth(partsOf(node)[1] as SyntaxNode)
        return of && { op: 'unary', sign: 'not', of, type: YES_NO, from, to }
      }
      case 'Both':
      case 'Either':
        return this.joined(node)
      case 'Comparison':
        return this.comparison(node)
      case 'Sum':
        return this.sum(node)
      case 'Product':
        return this.product(node)
      case 'Power':
        return this.power(node)
      case 'Limits':
        return this.report(
          problem('«±» stands once, at the end of a whole formula, not inside another part of it.', from, to),
        )
      default:
        return this.report(problem(`«${this.source(node)}» does not fit here.`, from, to))
    }
  }

  private constant(value: number, node: SyntaxNode, type: Type = PLAIN_NUMBER, bare = true): Typed | undefined {
    if (!Number.isFinite(value))
      return this.report(problem(`«${this.source(node)}» is too large to compute with.`, node.from, node.to))
    return { op: 'constant', value, type, from: node.from, to: node.to, bare }
  }

  private numberOf(node: SyntaxNode): number {
    return Number(this.source(node).replace(/[\u00a0\u2009\u202f]/g, ''))
  }

  private badNumber(node: SyntaxNode): Diagnostic {
    const found = this.source(node)
    const whole = found.startsWith('.') ? `0${found}` : `${found}0`
    const where = found.startsWith('.') ? 'before' : 'after'
    return problem(`A digit is missing ${where} the decimal point of «${found}».`, node.from, node.to, {
      found,
      mends: [mend(whole, node.from, node.to)],
    })
  }

  private fraction(node: SyntaxNode): number {
    const [above, below] = this.source(node).split('/') as [string, string]
    return Number(above) / Number(below)
  }

  private quantity(node: SyntaxNode): Typed | undefined {
    if (node.name === 'FNumber') this.doubtFNumber(node)
    if (node.name === 'FNumber')
      return this.constant(Number(this.source(node).slice(2)), node, number(NONE, 'f-number'), false)
    if (node.name === 'Fraction') return this.constant(this.fraction(node), node)
    const [amount, unitNode] = partsOf(node) as [SyntaxNode, SyntaxNode]
    if (amount.name === 'BadNumber') return this.report(this.badNumber(amount))
    if (amount.name === 'FNumber') {
      const found = this.source(amount)
      const divisor = `${found.slice(2)} ${this.source(unitNode)}`
      return this.report(
        problem(
          `«${found}» is an f-number, which takes no unit; a division is written with spaces, «f / (${divisor})».`,
          node.from,
          node.to,
          {
            found,
            mends: [
              mend(found, node.from, node.to),
              ...(this.scope.typeOf('f') === undefined ? [] : [mend(`f / (${divisor})`, node.from, node.to)]),
            ],
          },
        ),
      )
    }
    const before = amount.name === 'Fraction' ? /[/÷^]\s*$/.exec(this.text.slice(0, node.from)) : null
    if (before)
      return this.report(
        problem(
          `After «${before[0].trim()}» it is unclear how far the fraction «${this.source(node)}» reaches.`,
          node.from,
          node.to,
          { mends: [mend(`(${this.source(node)})`, node.from, node.to)] },
        ),
      )
    const unit = this.unit(unitNode, amount)
    if (!unit) return undefined
    if (amount.name === 'Fraction' && this.fraction(amount) === Number.POSITIVE_INFINITY)
      return this.report(problem('A fraction cannot have nothing below its line.', amount.from, amount.to))
    const figure = amount.name === 'Fraction' ? this.fraction(amount) : this.numberOf(amount)
    const shutter = amount.name === 'Fraction' && unit.dimension === TIME
    return this.constant(figure * unit.factor, node, shutter ? number(TIME, 'shutter') : number(unit.dimension), false)
  }

  private unit(node: SyntaxNode, amount: SyntaxNode): { dimension: Dimension; factor: number } | undefined {
    const bracketed = node.name === 'BracketUnit'
    const text = bracketed ? this.source(node).slice(1, -1) : this.source(node)
    const shift = node.from + (bracketed ? 1 : 0)
    try {
      const unit = readUnit(text)
      if (unit.offset === 0) return unit
      const kelvin = `${Number((this.numberOf(amount) + unit.offset).toPrecision(12))} K`
      return this.report(
        problem('Formulas take temperatures in kelvin; degrees Celsius belong in a given.', node.from, node.to, {
          found: '°C',
          wanted: 'K',
          mends: [mend(kelvin, amount.from, node.to)],
        }),
      )
    } catch (error) {
      if (!(error instanceof UnitTextError)) throw error
      return this.report(this.unknownUnit(error, text, shift, amount, node))
    }
  }

  private unknownUnit(
    error: UnitTextError,
    text: string,
    shift: number,
    amount: SyntaxNode,
    node: SyntaxNode,
  ): Diagnostic {
    const figure = this.source(amount)
    const isCell = this.scope.typeOf(text) !== undefined
    if (isCell)
      return problem(
        `After a number, «${text}» is read as a unit, and there is no such unit. To multiply by the cell, write «*».`,
        node.from,
        node.to,
        { found: text, mends: [mend(`${figure} * ${text}`, amount.from, node.to)] },
      )
    const squared = /^([A-Za-zµ°]+)([2-9])$/.exec(text)
    if (squared && findUnit(squared[1] as string))
      return problem(`«${text}» is not a unit; a power is written with «^».`, node.from, node.to, {
        found: text,
        mends: [mend(`${squared[1]}^${squared[2]}`, node.from, node.to)],
      })
    const mended = error.mend && text.slice(0, error.from) + error.mend + text.slice(error.to)
    const mends = mended && isUnit(mended) ? [mend(error.mend as string, shift + error.from, shift + error.to)] : []
    return problem(error.message, shift + error.from, shift + error.to, {
      found: text.slice(error.from, error.to),
      ...(error.mend ? { wanted: error.mend } : {}),
      mends,
    })
  }

  private ratio(node: SyntaxNode): Typed | undefined {
    const [above, , below] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
    if (below.name === 'Name')
      return this.report(
        problem('A ratio is written with two numbers, such as 1:4; with a cell it is a division.', node.from, node.to, {
          mends: [mend(`${this.source(above)}/${this.source(below)}`, node.from, node.to)],
        }),
      )
    const divisor = this.numberOf(below)
    if (divisor === 0) return this.report(problem('A ratio to nothing has no value.', node.from, node.to))
    return this.constant(this.numberOf(above) / divisor, node, number(NONE, 'ratio'), false)
  }

  private name(node: SyntaxNode): Typed | undefined {
    const name = this.source(node)
    const { from, to } = node
    const known = this.scope.typeOf(name)
    if (known !== undefined) {
      this.nameSpans.push({ name, from, to })
      const type = cellType(known)
      return type && { op: 'cell', name, type, from, to }
    }
    const value = CONSTANTS.get(name)
    if (value !== undefined) return { op: 'constant', value, type: PLAIN_NUMBER, from, to }
    if (name === 'infinity')
      return this.report(problem('«infinity» stands only as an argument of a function.', from, to))
    this.nameSpans.push({ name, from, to })
    return this.report(this.unknownName(name, node))
  }

  private unknownName(name: string, node: SyntaxNode): Diagnostic {
    const { from, to } = node
    const record = this.scope.library.get(name)
    if (record)
      return problem(`«${name}» is a function; its arguments stand in parentheses.`, from, to, {
        found: name,
      })
    const after = /^ ?\/ ?(\d+(?:\.\d+)?)/.exec(this.text.slice(to))
    if (name === 'f' && after)
      return problem(
        `There is no cell named «f». The f-number is written without spaces: f/${after[1]}.`,
        from,
        to + after[0].length,
        {
          mends: [mend(`f/${after[1]}`, from, to + after[0].length)],
        },
      )
    const near = this.nearestName(name)
    return problem(`There is no cell named «${name}».${near ? ` Did you mean «${near}»?` : ''}`, from, to, {
      found: name,
      ...(near ? { wanted: near, mends: [mend(near, from, to)] } : {}),
    })
  }

  private nearestName(name: string): string | undefined {
    const { scope } = this
    if (!scope.nearestName) return nearest(name, [...scope.names(), ...CONSTANTS.keys()])
    return scope.nearestName(name) ?? nearest(name, CONSTANTS.keys())
  }

  private call(node: SyntaxNode): Typed | undefined {
    const [nameNode, argumentsNode] = partsOf(node) as [SyntaxNode, SyntaxNode]
    const name = this.source(nameNode)
    const nodes = partsOf(argumentsNode)
    if (name === 'when') return this.when(node, nodes)
    const record = this.scope.library.get(name)
    if (!record) {
      for (const argument of nodes) if (argument.name !== 'Named') this.check(argument)
      return this.report(this.unknownFunction(name, nameNode))
    }
    this.calls.add(record)
    if (record.mayBeInfinite) this.mayBeInfinite = true
    const written = nodes.map((one) => this.argument(one))
    const args = matchArguments(
      record,
      written,
      node,
      (d) => this.report(d),
      (p) => this.defaultOf(p, node),
    )
    if (!args) return undefined
    const argumentTypes = args.map((argument) => argument.type)
    const warning = record.warn?.(argumentTypes)
    if (warning) this.report(doubt(warning, node.from, node.to))
    const type = typeof record.result === 'function' ? record.result(argumentTypes) : record.result
    return { op: 'call', record, argumentTypes, args, type, from: node.from, to: node.to }
  }

  private argument(node: SyntaxNode): Written {
    const span = { from: node.from, to: node.to }
    if (node.name !== 'Named') return { value: this.argumentValue(node), ...span }
    const [nameNode, , valueNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
    const name = { text: this.source(nameNode), from: nameNode.from, to: nameNode.to }
    return { name, value: this.argumentValue(valueNode), ...span }
  }

  private argumentValue(node: SyntaxNode): Written['value'] {
    if (node.name === 'Name' && this.source(node) === 'infinity' && this.scope.typeOf('infinity') === undefined)
      return 'infinity'
    return this.check(node)
  }

  private defaultOf(parameter: Parameter, at: { from: number; to: number }): Typed {
    const text = parameter.default as string
    const span = { from: at.from, to: at.to }
    const plain = plainDefault(text)
    if (plain) return { op: 'constant', ...plain, ...span }
    const type = parameter.type as Type
    if (text === 'infinity') return { op: 'constant', value: Number.POSITIVE_INFINITY, type, ...span }
    const inside = /^\{(.*)\}$/.exec(text)?.[1]
    if (inside !== undefined) {
      const items = inside.trim() === '' ? [] : inside.split(',').map((item) => readQuantity(item).value)
      return { op: 'constant', value: items, type, ...span }
    }
    return { op: 'constant', value: readQuantity(text).value, type, ...span }
  }

  private unknownFunction(name: string, node: SyntaxNode): Diagnostic {
    const { from, to } = node
    if (this.scope.typeOf(name) !== undefined) {
      this.nameSpans.push({ name, from, to })
      return problem(`«${name}» is a cell, not a function; to multiply, write «*» before the bracket.`, from, to, {
        mends: [mend(`${name} * `, from, node.nextSibling?.from ?? to)],
      })
    }
    const near = nearest(name, [...this.scope.library.keys(), 'when'])
    return problem(`There is no function «${name}».${near ? ` Did you mean «${near}»?` : ''}`, from, to, {
      found: name,
      ...(near ? { wanted: near, mends: [mend(near, from, to)] } : {}),
    })
  }

  private when(node: SyntaxNode, nodes: readonly SyntaxNode[]): Typed | undefined {
    if (nodes.length !== 3 || nodes.some((one) => one.name === 'Named'))
      return this.report(problem('«when» takes three arguments: when(condition, then, otherwise).', node.from, node.to))
    const [conditionNode, thenNode, otherwiseNode] = nodes as [SyntaxNode, SyntaxNode, SyntaxNode]
    const condition = this.truth(conditionNode)
    const then = this.check(thenNode)
    const otherwise = this.check(otherwiseNode)
    if (!condition || !then || !otherwise) return undefined
    if (!sameType(then.type, otherwise.type))
      return this.report(
        problem(
          `The two outcomes of «when» differ: ${describeType(then.type)} and ${describeType(otherwise.type)}.`,
          otherwiseNode.from,
          otherwiseNode.to,
          { found: describeType(otherwise.type), wanted: describeType(then.type) },
        ),
      )
    return { op: 'when', condition, then, otherwise, type: then.type, from: node.from, to: node.to }
  }

  private part(node: SyntaxNode): Typed | undefined {
    const [ofNode, dotNode, partNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
    const part = this.source(partNode)
    if (ofNode.name === 'Number' && ofNode.to === dotNode.from) {
      const number = this.source(ofNode)
      return this.report(
        problem(`A digit is missing after the decimal point of «${number}.».`, ofNode.from, dotNode.to, {
          found: `${number}.`,
          mends: [mend(`${number}.0 ${part}`, ofNode.from, partNode.to)],
        }),
      )
    }
    const of = this.check(ofNode)
    if (!of) return undefined
    if (of.type.kind !== 'record')
      return this.report(
        problem(`Only a record has parts; this is ${describeType(of.type)}.`, dotNode.from, partNode.to, {
          found: describeType(of.type),
        }),
      )
    const type = of.type.parts[part]
    if (type) return { op: 'part', of, part, type, from: node.from, to: node.to }
    const parts = Object.keys(of.type.parts)
    const near = nearest(part, parts)
    return this.report(
      problem(`A ${of.type.name} has no part «${part}»; it has ${parts.join(', ')}.`, partNode.from, partNode.to, {
        found: part,
        ...(near ? { wanted: near, mends: [mend(near, partNode.from, partNode.to)] } : {}),
      }),
    )
  }

  private list(node: SyntaxNode): Typed | undefined {
    const nodes = partsOf(node)
    const items = nodes.map((one) => this.check(one))
    if (items.some((item) => item === undefined)) return undefined
    const first = items[0]
    if (!first) return this.report(problem('A list holds at least one value.', node.from, node.to))
    const odd = items.findIndex((item) => !sameType((item as Typed).type, first.type))
    if (odd > 0) {
      const item = items[odd] as Typed
      return this.report(
        problem(
          `A list holds values of one kind: the first is ${describeType(first.type)}, this is ${describeType(item.type)}.`,
          item.from,
          item.to,
          {
            found: describeType(item.type),
            wanted: describeType(first.type),
            mends: first.type.kind === 'number' ? unitMendFor(item, first.type.dimension.name) : [],
          },
        ),
      )
    }
    return { op: 'list', items: items as Typed[], type: list(first.type), from: node.from, to: node.to }
  }

  private signed(node: SyntaxNode): Typed | undefined {
    const [sign, ofNode] = partsOf(node) as [SyntaxNode, SyntaxNode]
    const of = this.number(ofNode)
    if (!of) return undefined
    const { from, to } = node
    if (this.source(sign) === '+') return { ...of, from, to }
    // No f-number, ratio or marked time is below zero.
    const type = of.type.kind === 'number' ? number(of.type.dimension) : of.type
    if (of.op === 'constant') return { ...of, type, value: -(of.value as number), from, to }
    return { op: 'unary', sign: '-', of, type, from, to }
  }

  private number(node: SyntaxNode): Typed | undefined {
    const typed = this.check(node)
    if (!typed || typed.type.kind === 'number') return typed
    return this.report(
      problem(`Wanted a number or a quantity, found ${describeType(typed.type)}.`, node.from, node.to, {
        found: describeType(typed.type),
        wanted: 'a number or a quantity',
      }),
    )
  }

  private truth(node: SyntaxNode): Typed | undefined {
    const typed = this.check(node)
    if (!typed || typed.type.kind === 'yes or no') return typed
    return this.report(
      problem(`Wanted a condition such as «a < b», found ${describeType(typed.type)}.`, node.from, node.to, {
        found: describeType(typed.type),
        wanted: 'yes or no',
      }),
    )
  }

  private joined(node: SyntaxNode): Typed | undefined {
    const [leftNode, , rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
    const left = this.truth(leftNode)
    const right = this.truth(rightNode)
    if (!left || !right) return undefined
    const sign = node.name === 'Both' ? 'and' : 'or'
    return { op: 'binary', sign, left, right, type: YES_NO, from: node.from, to: node.to }
  }

  private comparison(node: SyntaxNode): Typed | undefined {
    const [leftNode, signNode, rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
    if (leftNode.name === 'Comparison') {
      return this.report(
        problem('Comparisons do not chain; join two with «and».', node.from, node.to, {
          mends: [mend(this.unchained(node), node.from, node.to)],
        }),
      )
    }
    const left = this.check(leftNode)
    const right = this.check(rightNode)
    if (!left || !right) return undefined
    const sign = COMPARISONS[this.source(signNode)] as BinarySign
    const orders = sign !== '==' && sign !== '!='
    const comparable =
      left.type.kind === 'number' || (!orders && (left.type.kind === 'text' || left.type.kind === 'yes or no'))
    if (!comparable)
      return this.report(
        problem(
          `${capital(describeType(left.type))} cannot be compared with «${this.source(signNode)}».`,
          leftNode.from,
          leftNode.to,
        ),
      )
    if (!sameType(left.type, right.type)) return this.report(this.mismatch('compared', left, right, node))
    return { op: 'binary', sign, left, right, type: YES_NO, from: node.from, to: node.to }
  }

  /** `a < b < c` as `a < b and b < c`. */
  private unchained(node: SyntaxNode): string {
    const [left, sign, right] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
    if (left.name !== 'Comparison') return this.source(node)
    const middle = partsOf(left)[2] as SyntaxNode
    return `${this.unchained(left)} and ${this.source(middle)} ${this.source(sign)} ${this.source(right)}`
  }

  private mismatch(verb: string, left: Typed, right: Typed, node: SyntaxNode): Diagnostic {
    const a = describeType(left.type)
    const b = describeType(right.type)
    const mends: Mend[] = []
    if (left.type.kind === 'number' && right.type.kind === 'number')
      mends.push(...unitMendFor(right, left.type.dimension.name), ...unitMendFor(left, right.type.dimension.name))
    return problem(`${capital(a)} and ${b} cannot be ${verb}.`, node.from, node.to, { found: b, wanted: a, mends })
  }

  private sum(node: SyntaxNode): Typed | undefined {
    const [leftNode, signNode, rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
    const left = this.number(leftNode)
    const right = this.number(rightNode)
    if (!left || !right) return undefined
    const sign = this.source(signNode) as '+' | '-'
    if (!sameType(left.type, right.type))
      return this.report(this.mismatch(sign === '+' ? 'added' : 'subtracted', left, right, node))
    return this.arithmetic(sign, left, right, dimensionOf(left), node)
  }

  private product(node: SyntaxNode): Typed | undefined {
    const [leftNode, signNode, rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
    const divides = /[/÷]/.test(this.source(signNode))
    if (divides && this.refuseBareCompound(leftNode, signNode, rightNode, node)) return undefined
    const left = this.number(leftNode)
    const right = this.number(rightNode)
    if (!left || !right) return undefined
    if (divides) this.doubtDivision(leftNode, rightNode, right, node)
    const a = dimensionOf(left)
    const b = dimensionOf(right)
    return this.arithmetic(divides ? '/' : '*', left, right, divides ? a.over(b) : a.times(b), node)
  }

  /** `10 mm/m`, `100 cd/m^2`: a compound unit without its brackets. */
  private refuseBareCompound(left: SyntaxNode, sign: SyntaxNode, right: SyntaxNode, node: SyntaxNode): boolean {
    const unspaced = left.to === sign.from && sign.to === right.from
    const lastUnit = left.lastChild?.name === 'Unit' ? left.lastChild : undefined
    const name = right.name === 'Power' ? (right.firstChild as SyntaxNode) : right
    if (!unspaced || left.name !== 'Quantity' || !lastUnit || name.name !== 'Name' || !findUnit(this.source(name)))
      return false
    const unit = `[${this.source(lastUnit)}/${this.source(right)}]`
    this.report(
      problem(
        `A unit of more than one part stands in brackets: ${unit}. To divide by a cell, put spaces round «/».`,
        node.from,
        node.to,
        { found: this.source(node), mends: [mend(unit, lastUnit.from, right.to)] },
      ),
    )
    return true
  }

  private doubtDivision(leftNode: SyntaxNode, rightNode: SyntaxNode, right: Typed, node: SyntaxNode): void {
    if (leftNode.name === 'Number' && rightNode.name === 'Quantity' && dimensionOf(right) === TIME) {
      const time = `${this.source(leftNode)}/${this.source(rightNode)}`
      this.report(
        doubt(
          `«${this.source(node)}» reads as a division and gives a frequency; the shutter time is written ${time}.`,
          node.from,
          node.to,
          [mend(time, node.from, node.to)],
        ),
      )
    }
    if (leftNode.name === 'Name' && this.source(leftNode) === 'f' && rightNode.name === 'Number') {
      const mark = `f/${this.source(rightNode)}`
      this.report(
        doubt(`«${this.source(node)}» divides the cell «f»; the f-number is written ${mark}.`, node.from, node.to, [
          mend(mark, node.from, node.to),
        ]),
      )
    }
  }

  private power(node: SyntaxNode): Typed | undefined {
    const [baseNode, , exponentNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
    if (baseNode.name === 'Quantity')
      return this.report(
        problem(
          'A unit takes a whole power written straight after it; put parentheses round the quantity to raise it.',
          node.from,
          node.to,
          {
            mends: [mend(`(${this.source(baseNode)})`, baseNode.from, baseNode.to)],
          },
        ),
      )
    const base = this.number(baseNode)
    const exponent = this.number(exponentNode)
    if (!base || !exponent) return undefined
    if (dimensionOf(exponent) !== NONE)
      return this.report(
        problem(
          `An exponent is a plain number; this is ${describeType(exponent.type)}.`,
          exponentNode.from,
          exponentNode.to,
          {
            found: describeType(exponent.type),
            wanted: 'a plain number',
            mends:
              exponentNode.name === 'Quantity'
                ? [
                    mend(
                      `(${this.text.slice(baseNode.from, (exponentNode.firstChild as SyntaxNode).to)}) * 1 ${this.source(exponentNode.lastChild as SyntaxNode)}`,
                      baseNode.from,
                      exponentNode.to,
                    ),
                  ]
                : [],
          },
        ),
      )
    const dimension = dimensionOf(base)
    if (dimension === NONE) return this.arithmetic('^', base, exponent, NONE, node)
    const fixed = foldNumber(exponent)
    if (fixed === undefined)
      return this.report(
        problem(
          `To raise ${describeType(base.type)} the exponent must be a number written out, so that the unit is known.`,
          exponentNode.from,
          exponentNode.to,
        ),
      )
    if (!hasPower(dimension, fixed))
      return this.report(
        problem(
          `There is no unit for this power of ${describeType(base.type)}: whole powers and simple roots have one.`,
          exponentNode.from,
          exponentNode.to,
        ),
      )
    return this.arithmetic('^', base, exponent, dimension.power(fixed), node)
  }

  private arithmetic(sign: BinarySign, left: Typed, right: Typed, dimension: Dimension, node: SyntaxNode): Typed {
    return { op: 'binary', sign, left, right, type: number(dimension), from: node.from, to: node.to }
  }

  /** With a cell named `f`, `f/8` may have been meant as a division. */
  private doubtFNumber(node: SyntaxNode): void {
    if (this.scope.typeOf('f') === undefined) return
    const mark = this.source(node)
    const division = `f / ${mark.slice(2)}`
    this.report(
      doubt(`«${mark}» is an f-number; to divide the cell «f», put spaces round «/».`, node.from, node.to, [
        mend(division, node.from, node.to),
      ]),
    )
  }
}

const isUnit = (text: string): boolean => {
  try {
    readUnit(text)
    return true
  } catch {
    return false
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const dimensionOf = (typed: Typed): Dimension => (typed.type.kind === 'number' ? typed.type.dimension : NONE)

/** Whether a dimension can be raised so: its powers are kept in twelfths, which serve square, cubic and fourth roots. */
const hasPower = (dimension: Dimension, exponent: number): boolean =>
  dimension.exponents.every((e) => {
    const twelfths = e * exponent * 12
    return Math.abs(twelfths) <= 1200 && Math.abs(twelfths - Math.round(twelfths)) < 1e-9
  })

/** The value of an expression of constants alone. */
function foldNumber(typed: Typed): number | undefined {
  if (typed.op === 'constant') return typed.value as number
  if (typed.op === 'unary' && typed.sign === '-') {
    const of = foldNumber(typed.of)
    return of === undefined ? undefined : -of
  }
  if (typed.op !== 'binary') return undefined
  const a = foldNumber((typed as Binary).left)
  const b = foldNumber((typed as Binary).right)
  if (a === undefined || b === undefined) return undefined
  if (typed.sign === '+') return a + b
  if (typed.sign === '-') return a - b
  if (typed.sign === '*') return a * b
  if (typed.sign === '/') return a / b
  if (typed.sign === '^') return a ** b
  return undefined
}

/**
 * Whether a formula of this type fits a cell that declares this dimension: undefined if so, else what to say.
 * Illuminance from a luminous intensity lacks its steradian; that is said.
 */
export function fitsDeclared(
  checked: Checked,
  text: string,
  declared: Dimension,
  symbol: string,
): Diagnostic | undefined {
  const type = checked.root?.type
  if (!type) return undefined
  const items = type.kind === 'list' ? type.of : type
  if (items.kind === 'number' && items.dimension === declared) return undefined
  const wanted = describeType(number(declared))
  const found = describeType(type)
  const steradian = items.kind === 'number' && items.dimension.times(SOLID_ANGLE) === declared
  return problem(
    `The cell declares ${symbol ? `${symbol}, ${wanted}` : wanted}; the formula gives ${found}.${steradian ? ' Multiply by 1 sr: light from a lamp’s candela spreads over a solid angle.' : ''}`,
    0,
    text.length,
    { found, wanted, mends: steradian ? [mend(`(${text}) * 1 sr`, 0, text.length, 'Multiply by 1 sr')] : [] },
  )
}
