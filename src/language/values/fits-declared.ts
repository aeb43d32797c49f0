import { type DisplayUnit, SOLID_ANGLE, STOP } from '../../units/index.ts'
import { type Diagnostic, type Fix, fix, problem } from './diagnostic.ts'
import { cellsThat, factorBetween } from './missing-factor.ts'
import type { Scope } from './scope.ts'
import { describeType, isLevel, number, numberIn, type Type } from './types.ts'
import { multiplyBySteradian, VALUE_WORDS as W } from './words.ts'

/**
 * Whether a formula of this type fits a cell that declares a unit: undefined if so, else what is wrong, with formulas
 * that would fit: with a factor, a part or a unit that is missing. An illuminance computed from a luminous intensity
 * lacks its steradian.
 */
export function fitsDeclared(type: Type, text: string, unit: DisplayUnit, scope?: Scope): Diagnostic | undefined {
  const { dimension, symbol } = unit
  const items = type.kind === 'list' ? type.of : type
  if (items.kind === 'number' && items.dimension === dimension) return scope && mixedLevels(items, text, unit, scope)
  const required = describeType(number(dimension))
  const declared = symbol ? `${symbol}, ${required}` : required
  const whole = (insert: string, label?: string): Fix => fix(insert, 0, text.length, label)
  const inner = grouped(text)
  if (items.kind === 'number' && items.dimension.times(SOLID_ANGLE) === dimension)
    return problem(W.declaresSteradian(declared, describeType(type)), 0, text.length, [
      whole(`${inner} * 1 sr`, multiplyBySteradian),
    ])
  const fixes: Fix[] = []
  if (/^\s*-?\d+(?:\.\d+)?\s*$/.test(text) && symbol && !unit.notation)
    fixes.push(whole(`${text.trim()} ${/[ /]/.test(symbol) ? `[${symbol}]` : symbol}`))
  if (type.kind === 'record')
    for (const [part, of] of Object.entries(type.parts))
      if (of.kind === 'number' && of.dimension === dimension) fixes.push(whole(`${inner}.${part}`))
  const factor = items.kind === 'number' ? factorBetween(items.dimension, dimension) : undefined
  if (factor && scope)
    for (const name of cellsThat(scope, (one) => one.kind === 'number' && one.dimension === factor.dimension))
      fixes.push(whole(`${inner} ${factor.divides ? '/' : '*'} ${name}`))
  return problem(W.declares(declared, describeType(type), factor), 0, text.length, fixes)
}

/** A cell in EV has a level, a cell in stops a difference. */
function mixedLevels(type: Type, text: string, unit: DisplayUnit, scope: Scope): Diagnostic | undefined {
  if (scope.lenientLevels || unit.dimension !== STOP || isLevel(type) === isLevel(numberIn(unit))) return undefined
  const inner = grouped(text)
  return isLevel(type)
    ? problem(W.levelDeclaredAsDifference(unit.symbol), 0, text.length, [fix(`${inner} - 0 EV`, 0, text.length)])
    : problem(W.differenceDeclaredAsLevel(unit.symbol), 0, text.length, [fix(`0 EV + ${inner}`, 0, text.length)])
}

/** The formula in parentheses, unless it is a name, a part or a call. */
const grouped = (text: string): string =>
  /^\s*[A-Za-z_][\w.]*(?:\([^()]*\))?\s*$/.test(text) ? text.trim() : `(${text})`
