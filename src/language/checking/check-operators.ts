import type { SyntaxNode } from '@lezer/common'
import { clip, type Dimension, findUnit, LENGTH, NONE, PIXEL, TIME } from '../../units/index.ts'
import { datesOf } from '../syntax/habits.ts'
import { type Diagnostic, type Fix, fix, problem, warning } from '../values/diagnostic.ts'
import { factorBetween } from '../values/missing-factor.ts'
import { describeType, isLevel, level, type NumberType, number, sameType, YES_NO } from '../values/types.ts'
import { type CheckContext, partsOf } from './check-context.ts'
import { eachValue } from './each-value.ts'
import { fixesToward, grouped } from './expression.ts'
import { checkLevelSum, refuseMixedLevels, refuseScaledLevel } from './levels.ts'
import type { Binary, BinarySign, TypedNode } from './typed-tree.ts'
import { CHECK_WORDS as W } from './words.ts'

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

/** The type of a value with a sign before it, or of `not`. */
export function checkSigned(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [sign, ofNode] = partsOf(node) as [SyntaxNode, SyntaxNode]
  const of = c.numbers(ofNode)
  if (!of) return undefined
  const { from, to } = node
  if (c.source(sign) === '+') return { ...of, from, to }
  if (of.type.kind === 'list') {
    const zero: TypedNode = { op: 'constant', value: 0, type: of.type.of, from, to: from }
    return eachValue(zero, of, node, (_, item) => {
      refuseScaledLevel(c, 'negated', [item], node)
      return arithmetic('-', item, item, dimensionOf(item), node)
    })
  }
  const { dimension } = of.type as NumberType
  // No f-number, ratio or marked time is below zero. A level written out may be.
  if (of.op === 'constant') {
    const type = isLevel(of.type) ? level(dimension) : number(dimension)
    return { ...of, type, value: -(of.value as number), from, to }
  }
  refuseScaledLevel(c, 'negated', [of], node)
  return { op: 'unary', sign: '-', of, type: number(dimension), from, to }
}

/** The type of two conditions joined by `and` or `or`; the second is computed only where it matters. */
export function checkJoined(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [leftNode, , rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  const left = c.truth(leftNode)
  const right = c.truth(rightNode)
  if (!left || !right) return undefined
  const sign = node.name === 'Both' ? 'and' : 'or'
  return { op: 'binary', sign, left, right, type: YES_NO, from: node.from, to: node.to }
}

/** The type of a comparison: yes or no, of two values of one dimension. */
export function checkComparison(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [leftNode, signNode, rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  if (leftNode.name === 'Comparison')
    return c.report(problem(W.chained, node.from, node.to, [fix(unchained(c, node), node.from, node.to)]))
  if (isAssignment(c, node, leftNode, signNode))
    return c.report(
      problem(W.assignment(c.source(leftNode)), leftNode.from, signNode.to, [
        fix('', node.from, rightNode.from, W.removeName),
      ]),
    )
  const left = c.check(leftNode)
  const right = c.check(rightNode)
  if (!left || !right) return undefined
  const sign = COMPARISONS[c.source(signNode)] as BinarySign
  const orders = sign !== '==' && sign !== '!='
  const many = [left, right].find(({ type }) => type.kind === 'list')
  if (many) return c.report(listCompared(c, many, orders))
  const comparable =
    left.type.kind === 'number' || (!orders && (left.type.kind === 'text' || left.type.kind === 'yes or no'))
  if (!comparable)
    return c.report(
      problem(
        W.cannotCompare(describeType(left.type), c.source(signNode)),
        leftNode.from,
        leftNode.to,
        fixesToward(c.scope, c.text, left, right.type),
      ),
    )
  if (!sameType(left.type, right.type)) return c.report(mismatch(c, 'compared', left, right, node))
  refuseMixedLevels(c, 'compared', left, right, node)
  return { op: 'binary', sign, left, right, type: YES_NO, from: node.from, to: node.to }
}

/** Why a list, such as a column of a table, is not compared; its least and its greatest value are. */
function listCompared(c: CheckContext, { type, from, to }: TypedNode, orders: boolean): Diagnostic {
  const text = c.text.slice(from, to)
  const isOrdered = orders && type.kind === 'list' && type.of.kind === 'number'
  const fixes = isOrdered ? ['min', 'max'].map((name) => fix(`${name}(${text})`, from, to)) : []
  return problem(W.listCompared(clip(text)), from, to, fixes)
}

/** `focal = 60 mm` as the whole formula, where no cell is named `focal`: the cell's name was typed too. */
const isAssignment = (c: CheckContext, node: SyntaxNode, left: SyntaxNode, sign: SyntaxNode): boolean =>
  node.parent?.name === 'Formula' &&
  left.name === 'Name' &&
  c.source(sign) === '=' &&
  c.scope.typeOf(c.source(left)) === undefined &&
  !c.scope.library.has(c.source(left))

/** `a < b < c` as `a < b and b < c`. */
function unchained(c: CheckContext, node: SyntaxNode): string {
  const [left, sign, right] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  if (left.name !== 'Comparison') return c.source(node)
  const middle = partsOf(left)[2] as SyntaxNode
  return `${unchained(c, left)} and ${c.source(middle)} ${c.source(sign)} ${c.source(right)}`
}

function mismatch(
  c: CheckContext,
  done: 'added' | 'subtracted' | 'compared',
  left: TypedNode,
  right: TypedNode,
  node: SyntaxNode,
): Diagnostic {
  const message = W.cannotCombine(done, describeType(left.type), describeType(right.type))
  const fixes: Fix[] = [
    ...fixesToward(c.scope, c.text, right, left.type),
    ...fixesToward(c.scope, c.text, left, right.type),
  ]
  if (left.type.kind !== 'number' || right.type.kind !== 'number') return problem(message, node.from, node.to, fixes)
  const factor = factorBetween(right.type.dimension, left.type.dimension)
  return problem(factor ? message + W.factor(factor.dimension, factor.divides) : message, node.from, node.to, fixes)
}

/** The type of a sum or a difference: of one dimension, with levels and differences distinguished. */
export function checkSum(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [leftNode, , rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  warnOfDate(c, node)
  const left = c.numbers(leftNode)
  const right = c.numbers(rightNode)
  if (!left || !right) return undefined
  return eachValue(left, right, node, (a, b) => sumOf(c, a, b, node))
}

function sumOf(c: CheckContext, left: TypedNode, right: TypedNode, node: SyntaxNode): TypedNode | undefined {
  const [leftNode, signNode, rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  const sign = c.source(signNode) as '+' | '-'
  if (!sameType(left.type, right.type))
    return c.report(
      isPercent(c, rightNode)
        ? shareOfQuantity(c, leftNode, left, sign, rightNode, node)
        : mismatch(c, sign === '+' ? 'added' : 'subtracted', left, right, node),
    )
  const type = checkLevelSum(c, sign, left, right, node)
  return { op: 'binary', sign, left, right, type, from: node.from, to: node.to }
}

const isPercent = (c: CheckContext, node: SyntaxNode): boolean =>
  node.name === 'Quantity' && /(?:%|‰|percent|permille)$/.test(c.source(node))

/** `100 mm + 5 %` means a share more. */
function shareOfQuantity(
  c: CheckContext,
  leftNode: SyntaxNode,
  left: TypedNode,
  sign: '+' | '-',
  rightNode: SyntaxNode,
  node: SyntaxNode,
): Diagnostic {
  const percent = c.source(rightNode)
  const base = leftNode.name === 'Product' ? c.source(leftNode) : grouped(c.text, leftNode)
  return problem(W.percentOfQuantity(percent, describeType(left.type)), node.from, node.to, [
    fix(`${base} * (1 ${sign} ${percent})`, node.from, node.to),
  ])
}

const ISO_DATE = /^(\d{4})-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/
const YEAR_LAST = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/

/** `2026-03-01` and `3/1/2026` are computed, but nobody writes arithmetic so. */
function warnOfDate(c: CheckContext, node: SyntaxNode): void {
  const text = c.source(node)
  const spaced = fix(text.replace(/[-/]/g, ' $& '), node.from, node.to)
  const written = ISO_DATE.test(text) ? [`"${text}"`] : datesIn(text)
  if (written.length === 0) return
  const fixes = written.map((date) => fix(date, node.from, node.to))
  c.report(warning(W.dateOrSum(text), node.from, node.to, [...fixes, spaced]))
}

function datesIn(text: string): string[] {
  const [, first, second, year] = YEAR_LAST.exec(text) ?? []
  return first && second && year ? datesOf(first, second, year) : []
}

/** The type of a product or a quotient; their dimensions are multiplied or divided. */
export function checkProduct(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [leftNode, signNode, rightNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  const divides = /[/÷]/.test(c.source(signNode))
  if (divides && refuseBareCompound(c, leftNode, signNode, rightNode, node)) return undefined
  if (divides) warnOfDate(c, node)
  const left = c.numbers(leftNode)
  const right = c.numbers(rightNode)
  if (!left || !right) return undefined
  if (divides) warnOfDivision(c, leftNode, rightNode, right, node)
  if (c.source(signNode) === '×') warnOfSize(c, leftNode, rightNode, right, node)
  return eachValue(left, right, node, (one, other) => {
    refuseScaledLevel(c, divides ? 'divided' : 'multiplied', [one, other], node)
    const a = dimensionOf(one)
    const b = dimensionOf(other)
    return arithmetic(divides ? '/' : '*', one, other, divides ? a.over(b) : a.times(b), node)
  })
}

/** `53.4 × 40 mm` is how a size is written; as a product of a number and a length it is doubtful. */
function warnOfSize(
  c: CheckContext,
  leftNode: SyntaxNode,
  rightNode: SyntaxNode,
  right: TypedNode,
  node: SyntaxNode,
): void {
  const isSide = rightNode.name === 'Quantity' && (dimensionOf(right) === LENGTH || dimensionOf(right) === PIXEL)
  const isFirst = leftNode.name === 'Number' || leftNode.name === 'Quantity'
  if (!isSide || !isFirst) return
  const unit = c.source(rightNode.lastChild as SyntaxNode)
  const [width, height] = [
    leftNode.name === 'Number' ? `${c.source(leftNode)} ${unit}` : c.source(leftNode),
    c.source(rightNode),
  ]
  const size = `size(${width}, ${height})`
  c.report(
    warning(W.sizeOrProduct(c.source(node), size), node.from, node.to, [
      fix(size, node.from, node.to),
      fix(`${c.source(leftNode)} * ${height}`, node.from, node.to),
    ]),
  )
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
    problem(W.compoundUnit(unit), node.from, node.to, [
      fix(c.text[lastUnit.from - 1] === ' ' ? unit : ` ${unit}`, lastUnit.from, right.to),
    ]),
  )
  return true
}

function warnOfDivision(
  c: CheckContext,
  leftNode: SyntaxNode,
  rightNode: SyntaxNode,
  right: TypedNode,
  node: SyntaxNode,
): void {
  if (leftNode.name === 'Number' && rightNode.name === 'Quantity' && dimensionOf(right) === TIME) {
    const time = `${c.source(leftNode)}/${c.source(rightNode)}`
    c.report(warning(W.frequencyOrTime(c.source(node), time), node.from, node.to, [fix(time, node.from, node.to)]))
  }
  if (leftNode.name === 'Name' && c.source(leftNode) === 'f' && rightNode.name === 'Number') {
    const mark = `f/${c.source(rightNode)}`
    c.report(warning(W.divisionOrFNumber(c.source(node), mark), node.from, node.to, [fix(mark, node.from, node.to)]))
  }
}

/** The type of a power; with a dimension the exponent has to be a number that is written out. */
export function checkPower(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [baseNode, , exponentNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  if (baseNode.name === 'Quantity')
    return c.report(
      problem(W.powerOfQuantity, node.from, node.to, [fix(`(${c.source(baseNode)})`, baseNode.from, baseNode.to)]),
    )
  const base = c.numbers(baseNode)
  const exponent = c.numbers(exponentNode)
  if (!base || !exponent) return undefined
  return eachValue(base, exponent, node, (one, other) => powerOf(c, one, other, node))
}

function powerOf(c: CheckContext, base: TypedNode, exponent: TypedNode, node: SyntaxNode): TypedNode | undefined {
  const [baseNode, , exponentNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  if (dimensionOf(exponent) !== NONE)
    return c.report(
      problem(
        W.exponentIsPlain(describeType(exponent.type)),
        exponentNode.from,
        exponentNode.to,
        exponentNode.name === 'Quantity' ? [unitOutsidePower(c, baseNode, exponentNode)] : [],
      ),
    )
  refuseScaledLevel(c, W.raisedToAPower, [base], node)
  const dimension = dimensionOf(base)
  if (dimension === NONE) return arithmetic('^', base, exponent, NONE, node)
  const fixed = foldNumber(exponent)
  if (fixed === undefined)
    return c.report(problem(W.exponentWrittenOut(describeType(base.type)), exponentNode.from, exponentNode.to))
  if (!hasPower(dimension, fixed))
    return c.report(problem(W.noSuchPower(describeType(base.type)), exponentNode.from, exponentNode.to))
  return arithmetic('^', base, exponent, dimension.power(fixed), node)
}

/** `2^3 mm`: the unit belongs to the power, not to its exponent. */
function unitOutsidePower(c: CheckContext, base: SyntaxNode, exponent: SyntaxNode): Fix {
  const [amount, unit] = [exponent.firstChild as SyntaxNode, exponent.lastChild as SyntaxNode]
  return fix(`(${c.text.slice(base.from, amount.to)}) * 1 ${c.source(unit)}`, base.from, exponent.to)
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

const dimensionOf = (typed: TypedNode): Dimension => (typed.type.kind === 'number' ? typed.type.dimension : NONE)

/** Whether a dimension can be raised so: its powers are stored in twelfths, enough for square, cubic and fourth roots. */
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
