import type { SyntaxNode } from '@lezer/common'
import { type Dimension, findUnit, NONE, readUnit, TIME, UnitTextError } from '../../units/index.ts'
import { type Diagnostic, fix, problem, warning } from '../values/diagnostic.ts'
import { number, PLAIN_NUMBER, type Type } from '../values/types.ts'
import { type CheckContext, partsOf } from './check-context.ts'
import type { TypedNode } from './typed-tree.ts'

export function constant(
  c: CheckContext,
  value: number,
  node: SyntaxNode,
  type: Type = PLAIN_NUMBER,
  bare = true,
): TypedNode | undefined {
  if (!Number.isFinite(value))
    return c.report(problem(`«${c.source(node)}» is too large to compute with.`, node.from, node.to))
  return { op: 'constant', value, type, from: node.from, to: node.to, bare }
}

export function numberOf(c: CheckContext, node: SyntaxNode): number {
  return Number(c.source(node).replace(/[\u00a0\u2009\u202f]/g, ''))
}

export function refusedNumber(c: CheckContext, node: SyntaxNode): Diagnostic {
  const found = c.source(node)
  const whole = found.startsWith('.') ? `0${found}` : `${found}0`
  const where = found.startsWith('.') ? 'before' : 'after'
  return problem(`A digit is missing ${where} the decimal point of «${found}».`, node.from, node.to, [
    fix(whole, node.from, node.to),
  ])
}

function fraction(c: CheckContext, node: SyntaxNode): number {
  const [above, below] = c.source(node).split('/') as [string, string]
  return Number(above) / Number(below)
}

export function checkQuantity(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  if (node.name === 'FNumber') doubtFNumber(c, node)
  if (node.name === 'FNumber')
    return constant(c, Number(c.source(node).slice(2)), node, number(NONE, 'f-number'), false)
  if (node.name === 'Fraction') return constant(c, fraction(c, node), node)
  const [amount, unitNode] = partsOf(node) as [SyntaxNode, SyntaxNode]
  if (amount.name === 'BadNumber') return c.report(refusedNumber(c, amount))
  if (amount.name === 'FNumber') {
    const found = c.source(amount)
    const divisor = `${found.slice(2)} ${c.source(unitNode)}`
    return c.report(
      problem(
        `«${found}» is an f-number, which takes no unit; a division is written with spaces, «f / (${divisor})».`,
        node.from,
        node.to,
        [
          fix(found, node.from, node.to),
          ...(c.scope.typeOf('f') === undefined ? [] : [fix(`f / (${divisor})`, node.from, node.to)]),
        ],
      ),
    )
  }
  const before = amount.name === 'Fraction' ? /[/÷^]\s*$/.exec(c.text.slice(0, node.from)) : null
  if (before)
    return c.report(
      problem(
        `After «${before[0].trim()}» it is unclear how far the fraction «${c.source(node)}» reaches.`,
        node.from,
        node.to,
        [fix(`(${c.source(node)})`, node.from, node.to)],
      ),
    )
  const unit = unitOf(c, unitNode, amount)
  if (!unit) return undefined
  if (amount.name === 'Fraction' && fraction(c, amount) === Number.POSITIVE_INFINITY)
    return c.report(problem('A fraction cannot have nothing below its line.', amount.from, amount.to))
  const figure = amount.name === 'Fraction' ? fraction(c, amount) : numberOf(c, amount)
  const shutter = amount.name === 'Fraction' && unit.dimension === TIME
  return constant(c, figure * unit.factor, node, shutter ? number(TIME, 'shutter') : number(unit.dimension), false)
}

function unitOf(
  c: CheckContext,
  node: SyntaxNode,
  amount: SyntaxNode,
): { dimension: Dimension; factor: number } | undefined {
  const bracketed = node.name === 'BracketUnit'
  const text = bracketed ? c.source(node).slice(1, -1) : c.source(node)
  const shift = node.from + (bracketed ? 1 : 0)
  try {
    const unit = readUnit(text)
    if (unit.offset === 0) return unit
    const kelvin = `${Number((numberOf(c, amount) + unit.offset).toPrecision(12))} K`
    return c.report(
      problem('Formulas take temperatures in kelvin; degrees Celsius belong in a given.', node.from, node.to, [
        fix(kelvin, amount.from, node.to),
      ]),
    )
  } catch (error) {
    if (!(error instanceof UnitTextError)) throw error
    return c.report(unknownUnit(c, error, text, shift, amount, node))
  }
}

function unknownUnit(
  c: CheckContext,
  error: UnitTextError,
  text: string,
  shift: number,
  amount: SyntaxNode,
  node: SyntaxNode,
): Diagnostic {
  const figure = c.source(amount)
  const isCell = c.scope.typeOf(text) !== undefined
  if (isCell)
    return problem(
      `After a number, «${text}» is read as a unit, and there is no such unit. To multiply by the cell, write «*».`,
      node.from,
      node.to,
      [fix(`${figure} * ${text}`, amount.from, node.to)],
    )
  const squared = /^([A-Za-zµ°]+)([2-9])$/.exec(text)
  if (squared && findUnit(squared[1] as string))
    return problem(`«${text}» is not a unit; a power is written with «^».`, node.from, node.to, [
      fix(`${squared[1]}^${squared[2]}`, node.from, node.to),
    ])
  const repaired = error.fix && text.slice(0, error.from) + error.fix + text.slice(error.to)
  const fixes = repaired && isUnit(repaired) ? [fix(error.fix as string, shift + error.from, shift + error.to)] : []
  return problem(error.message, shift + error.from, shift + error.to, fixes)
}

export function checkRatio(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [above, , below] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  if (below.name === 'Name')
    return c.report(
      problem('A ratio is written with two numbers, such as 1:4; with a cell it is a division.', node.from, node.to, [
        fix(`${c.source(above)}/${c.source(below)}`, node.from, node.to),
      ]),
    )
  const divisor = numberOf(c, below)
  if (divisor === 0) return c.report(problem('A ratio to nothing has no value.', node.from, node.to))
  return constant(c, numberOf(c, above) / divisor, node, number(NONE, 'ratio'), false)
}

/** With a cell named `f`, `f/8` may have been meant as a division. */
function doubtFNumber(c: CheckContext, node: SyntaxNode): void {
  if (c.scope.typeOf('f') === undefined) return
  const mark = c.source(node)
  const division = `f / ${mark.slice(2)}`
  c.report(
    warning(`«${mark}» is an f-number; to divide the cell «f», put spaces round «/».`, node.from, node.to, [
      fix(division, node.from, node.to),
    ]),
  )
}

const isUnit = (text: string): boolean => {
  try {
    readUnit(text)
    return true
  } catch {
    return false
  }
}
