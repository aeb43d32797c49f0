import type { SyntaxNode } from '@lezer/common'
import { findUnit, isUnit, NONE, readUnit, TIME, UnitTextError } from '../../units/index.ts'
import { type Diagnostic, fix, problem, warning } from '../values/diagnostic.ts'
import { CONSTANTS } from '../values/scope.ts'
import { number, numberIn, PLAIN_NUMBER, type Type } from '../values/types.ts'
import { type CheckContext, partsOf } from './check-context.ts'
import type { TypedNode } from './typed-tree.ts'
import { unitMeant, unitsNear } from './unit-habits.ts'
import { CHECK_WORDS as W } from './words.ts'

/** A number that a formula writes out, in coherent SI, as a typed node. Undefined where it is too large. */
export function constant(
  c: CheckContext,
  value: number,
  node: SyntaxNode,
  type: Type = PLAIN_NUMBER,
  bare = true,
): TypedNode | undefined {
  if (!Number.isFinite(value)) return c.report(problem(W.tooLarge(c.source(node)), node.from, node.to))
  return { op: 'constant', value, type, from: node.from, to: node.to, bare }
}

/** The number a literal writes, without its unit. */
export function numberOf(c: CheckContext, node: SyntaxNode): number {
  return Number(c.source(node).replace(/[\u00a0\u2009\u202f]/g, ''))
}

/** Why a number cannot be read, with what to write in its place. */
export function refusedNumber(c: CheckContext, node: SyntaxNode): Diagnostic {
  const found = c.source(node)
  const leading = found.startsWith('.')
  const whole = leading ? `0${found}` : `${found}0`
  return problem(W.digitMissing(leading ? 'before' : 'after', found), node.from, node.to, [
    fix(whole, node.from, node.to),
  ])
}

function fraction(c: CheckContext, node: SyntaxNode): number {
  const [above, below] = c.source(node).split('/') as [string, string]
  return Number(above) / Number(below)
}

/** The type of a number with or without a unit, in coherent SI. Undefined where its unit is wrong. */
export function checkQuantity(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  if (node.name === 'FNumber') {
    warnFNumber(c, node)
    return constant(c, Number(c.source(node).slice(2)), node, number(NONE, 'f-number'), false)
  }
  if (node.name === 'Fraction') return constant(c, fraction(c, node), node)
  const [amount, unitNode] = partsOf(node) as [SyntaxNode, SyntaxNode]
  if (amount.name === 'BadNumber') return c.report(refusedNumber(c, amount))
  if (amount.name === 'FNumber') return c.report(fNumberWithUnit(c, amount, unitNode, node))
  const before = amount.name === 'Fraction' ? /[/÷^]\s*$/.exec(c.text.slice(0, node.from)) : null
  if (before)
    return c.report(
      problem(W.unclearFraction(before[0].trim(), c.source(node)), node.from, node.to, [
        fix(`(${c.source(node)})`, node.from, node.to),
        ...(before[0].startsWith('^') ? [fix(`(${c.source(amount)})`, node.from, node.to)] : []),
      ]),
    )
  const figure = amount.name === 'Fraction' ? fraction(c, amount) : numberOf(c, amount)
  const unit = unitOf(c, unitNode, amount, figure)
  if (!unit) return undefined
  if (amount.name === 'Fraction' && !Number.isFinite(figure))
    return c.report(problem(W.fractionOfZero, amount.from, amount.to))
  const shutter = amount.name === 'Fraction' && unit.dimension === TIME
  return constant(c, figure * unit.factor, node, shutter ? number(TIME, 'shutter') : numberIn(unit), false)
}

function fNumberWithUnit(c: CheckContext, amount: SyntaxNode, unitNode: SyntaxNode, node: SyntaxNode): Diagnostic {
  const mark = c.source(amount)
  const divisor = `${mark.slice(2)} ${c.source(unitNode)}`
  const division = fix(`f / (${divisor})`, node.from, node.to)
  return problem(W.fNumberHasNoUnit(mark, divisor), node.from, node.to, [
    fix(mark, node.from, node.to),
    ...(c.scope.typeOf('f') === undefined ? [] : [division]),
  ])
}

function unitOf(
  c: CheckContext,
  node: SyntaxNode,
  amount: SyntaxNode,
  figure: number,
): ReturnType<typeof readUnit> | undefined {
  const bracketed = node.name === 'BracketUnit'
  const text = bracketed ? c.source(node).slice(1, -1) : c.source(node)
  const shift = node.from + (bracketed ? 1 : 0)
  try {
    const unit = readUnit(text)
    if (unit.offset === 0) return unit
    const kelvin = `${Number((figure + unit.offset).toPrecision(12))} K`
    return c.report(problem(W.kelvinOnly, node.from, node.to, [fix(kelvin, amount.from, node.to)]))
  } catch (error) {
    if (!(error instanceof UnitTextError)) throw error
    return c.report(bracketed ? badCompound(error, text, shift) : unknownUnit(c, error, text, amount, figure, node))
  }
}

/** A mistake inside a bracketed unit. A word that is no unit is put right where it is near one. */
function badCompound(error: UnitTextError, text: string, shift: number): Diagnostic {
  const { from, to } = error
  const word = text.slice(from, to)
  const isWord = /^[^\s/()·*^\d]+$/.test(word) && !findUnit(word)
  const near = isWord ? wordsMeant(word) : []
  const inserts = near.length > 0 ? near : error.fix === undefined ? [] : [error.fix]
  const fixes = inserts
    .filter((insert) => isUnit(text.slice(0, from) + insert + text.slice(to)))
    .map((insert) => fix(insert, shift + from, shift + to))
  return problem(isWord ? W.notAUnit(word, near[0]) : error.message, shift + from, shift + to, fixes)
}

const wordsMeant = (word: string): string[] => {
  const meant = unitMeant(word, '1', 1)
  return meant && findUnit(meant.written) ? [meant.written] : unitsNear(word)
}

/** The quantity with another unit, and what to multiply by where the word was no unit at all. */
function unknownUnit(
  c: CheckContext,
  error: UnitTextError,
  text: string,
  amount: SyntaxNode,
  value: number,
  node: SyntaxNode,
): Diagnostic {
  const figure = c.source(amount)
  const quantity = (insert: string) => fix(insert, amount.from, node.to)
  if (c.scope.typeOf(text) !== undefined || CONSTANTS.has(text.toLowerCase())) {
    const name = c.scope.typeOf(text) === undefined ? text.toLowerCase() : text
    return problem(W.cellAfterNumber(text), node.from, node.to, [quantity(`${figure} * ${name}`)])
  }
  if (/^DIN$/i.test(text)) return dinSpeed(value, amount.from, node.to)
  if (/^(?:ASA|ISO)$/i.test(text)) return problem(W.speed(figure), node.from, node.to, [quantity(figure)])
  const squared = /^([A-Za-zµ°]+)([2-9])$/.exec(text)
  if (squared && findUnit(squared[1] as string))
    return problem(W.powerOfUnit(text), node.from, node.to, [fix(`${squared[1]}^${squared[2]}`, node.from, node.to)])
  const meant = unitMeant(text, figure, value)
  if (meant) {
    const converted = meant.written === meant.quantity
    const message = converted ? W.otherUnit(`${figure} ${text}`, meant.written) : W.unitWord(text, meant.written)
    return problem(message, node.from, node.to, [quantity(meant.quantity)])
  }
  if (findUnit(text.replace(/[\^⁻⁰¹²³⁴⁵⁶⁷⁸⁹].*$/, ''))) return problem(error.message, node.from, node.to)
  const near = unitsNear(text)
  return problem(
    W.notAUnit(text, near[0]),
    node.from,
    node.to,
    near.map((unit) => fix(unit, node.from, node.to)),
  )
}

/** The ISO speeds from 21 to 30 degrees; ten degrees more are ten times the speed (ISO 5800, from memory). */
const SPEEDS_FROM_21 = [100, 125, 160, 200, 250, 320, 400, 500, 640, 800]

/** A speed in DIN degrees, `21 DIN`, which is a logarithm: its figure alone would be another speed. */
function dinSpeed(degrees: number, from: number, to: number): Diagnostic {
  const step = degrees - 21
  const base = SPEEDS_FROM_21[((step % 10) + 10) % 10]
  if (base === undefined || step < -10 || step > 30) return problem(W.dinAsIso, from, to)
  const speed = String(Math.floor(base * 10 ** Math.floor(step / 10)))
  return problem(W.dinSpeed(speed), from, to, [fix(speed, from, to)])
}

/** The type of a ratio as photographers write it, `1:13`. Undefined where one of its sides is wrong. */
export function checkRatio(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [above, , below] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  if (below.name === 'Name')
    return c.report(
      problem(W.ratioOfName, node.from, node.to, [fix(`${c.source(above)}/${c.source(below)}`, node.from, node.to)]),
    )
  const divisor = numberOf(c, below)
  if (divisor === 0) return c.report(problem(W.ratioToZero, node.from, node.to))
  return constant(c, numberOf(c, above) / divisor, node, number(NONE, 'ratio'), false)
}

/** With a cell named `f`, `f/8` may have been meant as a division. */
function warnFNumber(c: CheckContext, node: SyntaxNode): void {
  if (c.scope.typeOf('f') === undefined) return
  const mark = c.source(node)
  const division = `f / ${mark.slice(2)}`
  c.report(warning(W.fNumberOrCell(mark), node.from, node.to, [fix(division, node.from, node.to)]))
}
