import type { SyntaxNode } from '@lezer/common'
import { type Dimension, findUnit, NONE, TIME } from '../../units/index.ts'
import type { Diagnostic, Fix } from '../values/diagnostic.ts'
import { fix, problem, warning } from '../values/diagnostic.ts'
import { describeType, number, sameType, YES_NO } from '../values/types.ts'
import { unitFixFor } from './arguments.ts'
import { type CheckContext, partsOf } from './check-context.ts'
import type { Binary, BinarySign, TypedNode } from './typed-tree.ts'

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

export function checkSigned(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [sign, ofNode] = partsOf(node) as [SyntaxNode, SyntaxNode]
  const of = c.number(ofNode)
  if (!of) return undefined
  const { from, to } = node
  if (c.source(sign) === '+') return { ...of, from, to }
  // No f-number, ratio or marked time is below zero.
  const type = of.type.kind === 'number' ? number(of.type.dimension) : of.type
  if (of.op === 'constant') return { ...of, type, value: -(of.value as number), from, to }
  return { op: 'unary', sign: '-', of, type, from, to }
}

export function checkJoined(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [leftNode, , rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  const left = c.truth(leftNode)
  const right = c.truth(rightNode)
  if (!left || !right) return undefined
  const sign = node.name === 'Both' ? 'and' : 'or'
  return { op: 'binary', sign, left, right, type: YES_NO, from: node.from, to: node.to }
}

export function checkComparison(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [leftNode, signNode, rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  if (leftNode.name === 'Comparison') {
    return c.report(
      problem('Comparisons do not chain; join two with «and».', node.from, node.to, [
        fix(unchained(c, node), node.from, node.to),
      ]),
    )
  }
  const left = c.check(leftNode)
  const right = c.check(rightNode)
  if (!left || !right) return undefined
  const sign = COMPARISONS[c.source(signNode)] as BinarySign
  const orders = sign !== '==' && sign !== '!='
  const comparable =
    left.type.kind === 'number' || (!orders && (left.type.kind === 'text' || left.type.kind === 'yes or no'))
  if (!comparable)
    return c.report(
      problem(
        `${capital(describeType(left.type))} cannot be compared with «${c.source(signNode)}».`,
        leftNode.from,
        leftNode.to,
      ),
    )
  if (!sameType(left.type, right.type)) return c.report(mismatch('compared', left, right, node))
  return { op: 'binary', sign, left, right, type: YES_NO, from: node.from, to: node.to }
}

/** `a < b < c` as `a < b and b < c`. */
function unchained(c: CheckContext, node: SyntaxNode): string {
  const [left, sign, right] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  if (left.name !== 'Comparison') return c.source(node)
  const middle = partsOf(left)[2] as SyntaxNode
  return `${unchained(c, left)} and ${c.source(middle)} ${c.source(sign)} ${c.source(right)}`
}

function mismatch(verb: string, left: TypedNode, right: TypedNode, node: SyntaxNode): Diagnostic {
  const a = describeType(left.type)
  const b = describeType(right.type)
  const fixes: Fix[] = []
  if (left.type.kind === 'number' && right.type.kind === 'number')
    fixes.push(...unitFixFor(right, left.type.dimension.name), ...unitFixFor(left, right.type.dimension.name))
  return problem(`${capital(a)} and ${b} cannot be ${verb}.`, node.from, node.to, fixes)
}

export function checkSum(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [leftNode, signNode, rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  const left = c.number(leftNode)
  const right = c.number(rightNode)
  if (!left || !right) return undefined
  const sign = c.source(signNode) as '+' | '-'
  if (!sameType(left.type, right.type))
    return c.report(mismatch(sign === '+' ? 'added' : 'subtracted', left, right, node))
  return arithmetic(sign, left, right, dimensionOf(left), node)
}

export function checkProduct(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [leftNode, signNode, rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  const divides = /[/÷]/.test(c.source(signNode))
  if (divides && refuseBareCompound(c, leftNode, signNode, rightNode, node)) return undefined
  const left = c.number(leftNode)
  const right = c.number(rightNode)
  if (!left || !right) return undefined
  if (divides) doubtDivision(c, leftNode, rightNode, right, node)
  const a = dimensionOf(left)
  const b = dimensionOf(right)
  return arithmetic(divides ? '/' : '*', left, right, divides ? a.over(b) : a.times(b), node)
}

/** `10 mm/m`, `100 cd/m^2`: a compound unit without its brackets. */
function refuseBareCompound(
  c: CheckContext,
  left: SyntaxNode,
  sign: SyntaxNode,
  right: SyntaxNode,
  node: SyntaxNode,
): boolean {
  const unspaced = left.to === sign.from && sign.to === right.from
  const lastUnit = left.lastChild?.name === 'Unit' ? left.lastChild : undefined
  const name = right.name === 'Power' ? (right.firstChild as SyntaxNode) : right
  if (!unspaced || left.name !== 'Quantity' || !lastUnit || name.name !== 'Name' || !findUnit(c.source(name)))
    return false
  const unit = `[${c.source(lastUnit)}/${c.source(right)}]`
  c.report(
    problem(
      `A unit of more than one part stands in brackets: ${unit}. To divide by a cell, put spaces round «/».`,
      node.from,
      node.to,
      [fix(unit, lastUnit.from, right.to)],
    ),
  )
  return true
}

function doubtDivision(
  c: CheckContext,
  leftNode: SyntaxNode,
  rightNode: SyntaxNode,
  right: TypedNode,
  node: SyntaxNode,
): void {
  if (leftNode.name === 'Number' && rightNode.name === 'Quantity' && dimensionOf(right) === TIME) {
    const time = `${c.source(leftNode)}/${c.source(rightNode)}`
    c.report(
      warning(
        `«${c.source(node)}» reads as a division and gives a frequency; the shutter time is written ${time}.`,
        node.from,
        node.to,
        [fix(time, node.from, node.to)],
      ),
    )
  }
  if (leftNode.name === 'Name' && c.source(leftNode) === 'f' && rightNode.name === 'Number') {
    const mark = `f/${c.source(rightNode)}`
    c.report(
      warning(`«${c.source(node)}» divides the cell «f»; the f-number is written ${mark}.`, node.from, node.to, [
        fix(mark, node.from, node.to),
      ]),
    )
  }
}

export function checkPower(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [baseNode, , exponentNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  if (baseNode.name === 'Quantity')
    return c.report(
      problem(
        'A unit takes a whole power written straight after it; put parentheses round the quantity to raise it.',
        node.from,
        node.to,
        [fix(`(${c.source(baseNode)})`, baseNode.from, baseNode.to)],
      ),
    )
  const base = c.number(baseNode)
  const exponent = c.number(exponentNode)
  if (!base || !exponent) return undefined
  if (dimensionOf(exponent) !== NONE)
    return c.report(
      problem(
        `An exponent is a plain number; this is ${describeType(exponent.type)}.`,
        exponentNode.from,
        exponentNode.to,
        exponentNode.name === 'Quantity'
          ? [
              fix(
                `(${c.text.slice(baseNode.from, (exponentNode.firstChild as SyntaxNode).to)}) * 1 ${c.source(exponentNode.lastChild as SyntaxNode)}`,
                baseNode.from,
                exponentNode.to,
              ),
            ]
          : [],
      ),
    )
  const dimension = dimensionOf(base)
  if (dimension === NONE) return arithmetic('^', base, exponent, NONE, node)
  const fixed = foldNumber(exponent)
  if (fixed === undefined)
    return c.report(
      problem(
        `To raise ${describeType(base.type)} the exponent must be a number written out, so that the unit is known.`,
        exponentNode.from,
        exponentNode.to,
      ),
    )
  if (!hasPower(dimension, fixed))
    return c.report(
      problem(
        `There is no unit for this power of ${describeType(base.type)}: whole powers and simple roots have one.`,
        exponentNode.from,
        exponentNode.to,
      ),
    )
  return arithmetic('^', base, exponent, dimension.power(fixed), node)
}

function arithmetic(
  sign: BinarySign,
  left: TypedNode,
  right: TypedNode,
  dimension: Dimension,
  node: SyntaxNode,
): TypedNode {
  return { op: 'binary', sign, left, right, type: number(dimension), from: node.from, to: node.to }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const dimensionOf = (typed: TypedNode): Dimension => (typed.type.kind === 'number' ? typed.type.dimension : NONE)

/** Whether a dimension can be raised so: its powers are kept in twelfths, which serve square, cubic and fourth roots. */
const hasPower = (dimension: Dimension, exponent: number): boolean =>
  dimension.exponents.every((e) => {
    const twelfths = e * exponent * 12
    return Math.abs(twelfths) <= 1200 && Math.abs(twelfths - Math.round(twelfths)) < 1e-9
  })

/** The value of an expression of constants alone. */
function foldNumber(typed: TypedNode): number | undefined {
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
