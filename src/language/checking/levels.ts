import { STOP } from '../../units/index.ts'
import { type Diagnostic, type Fix, fix, problem, warning } from '../values/diagnostic.ts'
import { isLevel, LEVEL_UNIT, level, type NumberType, number, type Type } from '../values/types.ts'
import type { CheckContext } from './check-context.ts'
import type { TypedNode } from './typed-tree.ts'
import { CHECK_WORDS as W } from './words.ts'

/**
 * Levels and differences, after the distinction of IEC 80000-15: a level is a position on a scale whose zero is a
 * convention (an exposure value, a Celsius temperature), and two levels have a difference, but no sum and no ratio.
 *
 * | | level, level | level, difference | difference, level | difference, difference |
 * |---|---|---|---|---|
 * | + | refused | level | level | difference |
 * | − | difference | level | refused | difference |
 * | ×, ÷, ^ | refused | refused | refused | as any quantity |
 * | comparison | compares | refused | refused | compares |
 *
 * Kelvin starts at a true zero, so of temperatures only the sum of two levels and a level taken from a difference are
 * refused: a ratio of temperatures has a meaning, and a temperature in kelvin compares with one in degrees Celsius.
 */

const dimensionOf = (typed: TypedNode) => (typed.type as NumberType).dimension

/** Whether a value is an exposure value, for which nothing but differences and comparisons has a meaning. */
const isExposureValue = (typed: TypedNode): boolean => isLevel(typed.type) && dimensionOf(typed) === STOP

/** A mixture of levels and differences: an error, and in sheets written before they were distinguished a warning. */
export const levelProblem = (
  c: Pick<CheckContext, 'scope'>,
  message: string,
  node: { from: number; to: number },
  fixes: readonly Fix[],
): Diagnostic => (c.scope.lenientLevels ? warning : problem)(message, node.from, node.to, fixes)

const sourceOf = (c: CheckContext, { from, to }: TypedNode): string => c.text.slice(from, to)

const inBrackets = (c: CheckContext, typed: TypedNode): string => {
  const source = sourceOf(c, typed)
  return typed.op === 'binary' && !source.startsWith('(') ? `(${source})` : source
}

/** The same figure as a difference: a literal in stops, anything else counted from EV 0. */
export function asDifference(c: CheckContext, typed: TypedNode): Fix {
  const source = sourceOf(c, typed)
  if (typed.op === 'constant' && /EV$/.test(source)) return fix(source.replace(/ ?EV$/, ' stop'), typed.from, typed.to)
  if (typed.op === 'list') return fix(source.replace(/ ?EV\b/g, ' stop'), typed.from, typed.to)
  return fix(`(${source} - 0 EV)`, typed.from, typed.to)
}

/** The same figure as an exposure value. */
export function asLevel(c: CheckContext, typed: TypedNode): Fix {
  const source = sourceOf(c, typed)
  if (typed.op === 'constant' && /stops?$/.test(source))
    return fix(source.replace(/ ?stops?$/, ` ${LEVEL_UNIT}`), typed.from, typed.to)
  return fix(`(0 EV + ${inBrackets(c, typed)})`, typed.from, typed.to)
}

/** The type of a sum or difference, after reporting one that has no meaning. */
export function checkLevelSum(
  c: CheckContext,
  sign: '+' | '-',
  left: TypedNode,
  right: TypedNode,
  node: { from: number; to: number },
): NumberType {
  const dimension = dimensionOf(left)
  const [a, b] = [isLevel(left.type), isLevel(right.type)]
  if (sign === '+' && a && b) {
    const mean = fix(`mean(${sourceOf(c, left)}, ${sourceOf(c, right)})`, node.from, node.to)
    const stops = dimension === STOP
    c.report(
      levelProblem(c, stops ? W.addLevels : W.addTemperatures, node, stops ? [asDifference(c, right), mean] : [mean]),
    )
    return number(dimension)
  }
  if (sign === '-' && !a && b && dimension === STOP) {
    const swapped = fix(`${sourceOf(c, right)} - ${inBrackets(c, left)}`, node.from, node.to)
    c.report(levelProblem(c, W.levelFromDifference, node, [swapped, asDifference(c, right), asLevel(c, left)]))
    return number(dimension)
  }
  return a !== b ? level(dimension) : number(dimension)
}

/** Reports an exposure value that is multiplied, divided or raised; dividing by 1 EV or 1 stop gives its bare figure. */
export function refuseScaledLevel(
  c: CheckContext,
  done: 'multiplied' | 'divided' | 'raised to a power' | 'negated',
  operands: readonly TypedNode[],
  node: { from: number; to: number },
): void {
  const [, by] = operands
  if (done === 'divided' && by?.op === 'constant' && by.value === 1 && dimensionOf(by) === STOP) return
  const scaled = operands.find(isExposureValue)
  if (scaled) c.report(levelProblem(c, W.scaledLevel(done), node, [asDifference(c, scaled)]))
}

/** Reports an exposure value beside a difference where both must be the same: in a comparison, a list, a choice. */
export function refuseMixedLevels(
  c: CheckContext,
  done: string,
  first: TypedNode,
  second: TypedNode,
  node: { from: number; to: number },
): void {
  if (first.type.kind !== 'number' || second.type.kind !== 'number' || dimensionOf(first) !== STOP) return
  if (isLevel(first.type) === isLevel(second.type)) return
  const fixes = isLevel(second.type)
    ? [asDifference(c, second), asLevel(c, first)]
    : [asLevel(c, second), asDifference(c, first)]
  c.report(levelProblem(c, W.levelAndDifference(done), node, fixes))
}

/** The message and fix for an argument that is a level where a difference is required, or the other way about. */
export function levelMisfit(c: CheckContext, value: TypedNode, required: Type, name: string): Diagnostic | undefined {
  const found = value.type
  if (found.kind !== 'number' || required.kind !== 'number' || found.dimension !== STOP) return undefined
  if (isLevel(found) === isLevel(required)) return undefined
  const parameter = `“${name}”`
  return isLevel(found)
    ? levelProblem(c, W.levelNotDifference(parameter), value, [asDifference(c, value)])
    : levelProblem(c, W.differenceNotLevel(parameter), value, [asLevel(c, value)])
}
