import type { SyntaxNode } from '@lezer/common'
import * as D from '../../units/index.ts'
import { type Fix, fix } from '../values/diagnostic.ts'
import type { ParameterType } from '../values/function-record.ts'
import { cellsThat, type Factor, factorBetween } from '../values/missing-factor.ts'
import type { Scope } from '../values/scope.ts'
import { sameType, type Type } from '../values/types.ts'
import type { TypedNode } from './typed-tree.ts'
import { CHECK_WORDS as W } from './words.ts'

/** What a required value may be: a plain type, any number, or what a parameter takes. */
export type Required = ParameterType | { readonly kind: 'number or quantity' }

export const ANY_NUMBER: Required = { kind: 'number or quantity' }

const ANY_NUMBERS: ReadonlySet<Required['kind']> = new Set(['number or quantity', 'any', 'any or list'])

const EXAMPLE_UNITS: ReadonlyMap<D.Dimension, string> = new Map([
  [D.LENGTH, 'mm'],
  [D.TIME, 's'],
  [D.ANGLE, 'deg'],
  [D.STOP, 'stop'],
  [D.PIXEL, 'px'],
  [D.SAMPLING, 'ppi'],
  [D.ILLUMINANCE, 'lx'],
  [D.TEMPERATURE, 'K'],
  [D.POWER, 'W'],
  [D.VOLTAGE, 'V'],
  [D.CURRENT, 'A'],
  [D.MASS, 'kg'],
  [D.LUMINOUS_INTENSITY, 'cd'],
  [D.RECIPROCAL_LENGTH, 'dpt'],
  [D.FREQUENCY, 'Hz'],
  [D.DATA, 'MB'],
])

/** A number without a unit, or a fraction of two such, may lack just its unit: `1/125` for a time is `1/125 s`. */
export function unitFixes(value: TypedNode, required: D.Dimension): Fix[] {
  const unit = EXAMPLE_UNITS.get(required)
  if (!unit || !isBare(value)) return []
  return [fix(` ${unit}`, value.to, value.to, W.addUnit(unit))]
}

const isBare = (value: TypedNode): boolean =>
  (value.op === 'constant' && value.bare === true) ||
  (value.op === 'unary' && isBare(value.of)) ||
  (value.op === 'binary' &&
    value.sign === '/' &&
    value.left.op === 'constant' &&
    value.right.op === 'constant' &&
    isBare(value.left) &&
    isBare(value.right) &&
    value.right.from - value.left.to === 1)

/** A record used whole where one of its parts is needed. */
const partFixes = (value: TypedNode, fits: (part: Type) => boolean): Fix[] =>
  value.type.kind === 'record'
    ? Object.entries(value.type.parts)
        .filter(([, part]) => fits(part))
        .slice(0, 8)
        .map(([part]) => fix(`.${part}`, value.to, value.to, `Write .${part}`))
    : []

/** Multiplies or divides by a cell of the sheet that is the missing factor. */
function factorFixes(scope: Scope, text: string, value: TypedNode, factor: Factor): Fix[] {
  const cells = cellsThat(scope, (type) => type.kind === 'number' && type.dimension === factor.dimension)
  const loose = value.op === 'binary' && !/[*/^]/.test(value.sign)
  const source = text.slice(value.from, value.to)
  const inside = loose && !source.startsWith('(') ? `(${source})` : source
  return cells.map((name) => fix(`${inside} ${factor.divides ? '/' : '*'} ${name}`, value.from, value.to))
}

/** What would make a value of another kind one of the required type, the likeliest first. */
export function fixesToward(scope: Scope, text: string, value: TypedNode, required: Required): Fix[] {
  const fits = (type: Type): boolean =>
    ANY_NUMBERS.has(required.kind) ? type.kind === 'number' : sameType(type, required as Type)
  const fixes = partFixes(value, fits)
  if (value.type.kind === 'list' && fits(value.type.of))
    for (const name of ['mean', 'sum'])
      fixes.push(fix(`${name}(${text.slice(value.from, value.to)})`, value.from, value.to))
  if (required.kind === 'number' && value.type.kind === 'number') {
    fixes.push(...unitFixes(value, required.dimension))
    const factor = factorBetween(value.type.dimension, required.dimension)
    if (factor) fixes.push(...factorFixes(scope, text, value, factor))
  }
  return fixes
}

/** The text of a node, in parentheses where an operator beside it would bind tighter. */
export function grouped(text: string, node: SyntaxNode): string {
  const source = text.slice(node.from, node.to)
  return LOOSE.has(node.name) ? `(${source})` : source
}

const LOOSE: ReadonlySet<string> = new Set([
  ...['Sum', 'Comparison', 'Limits', 'Both', 'Either', 'Not', 'Signed', 'Product'],
])
