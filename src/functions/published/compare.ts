import {
  checkFormula,
  computable,
  computeOnce,
  list,
  PLAIN_NUMBER,
  type Scope,
  type Value,
} from '../../language/index.ts'
import { readUnit } from '../../units/index.ts'
import { LIBRARY } from '../index.ts'
import { LISTS, type PublishedSource, type PublishedValue, SOURCES } from './data.ts'

/** A published value beside what the formula gives. */
export interface Comparison {
  readonly published: PublishedValue
  readonly source: PublishedSource
  /** The formula's value in the unit of the published one, or the formula's text. */
  readonly ours: number | string
  /** ours − published, in the published unit; of a text, null. */
  readonly difference: number | null
  readonly agrees: boolean
}

/** The published lists take the place of cells. */
const SCOPE: Scope = {
  library: LIBRARY,
  typeOf: (name) => (Object.hasOwn(LISTS, name) ? list(PLAIN_NUMBER) : undefined),
  names: () => Object.keys(LISTS),
}

/**
 * The value of a formula, in coherent SI.
 * @throws Error with the checker's message where the formula is broken.
 */
function compute(formula: string): Value {
  const { root, diagnostics, mayBeInfinite } = checkFormula(formula, SCOPE)
  if (!root) throw new Error(`${formula}: ${diagnostics.map(({ message }) => message).join(' ')}`)
  return computeOnce(computable(root, mayBeInfinite), (name) => LISTS[name] as readonly number[]).value
}

/** A text agrees where it is the published one, and a value just beyond the limit gives another. */
const agreesInText = ({ value, beyond }: PublishedValue, ours: Value): boolean =>
  ours === value && (beyond === undefined || compute(beyond) !== value)

/** Computes the formula of a published value and compares the two. */
export function compare(published: PublishedValue): Comparison {
  const source = SOURCES[published.source]
  if (!source) throw new Error(`${published.id} names the source ${published.source}, which is not described.`)
  const value = compute(published.formula)
  if (typeof value !== 'number' || typeof published.value !== 'number')
    return { published, source, ours: String(value), difference: null, agrees: agreesInText(published, value) }
  const ours = published.unit === undefined ? value : value / readUnit(published.unit).factor
  const difference = ours - published.value
  return { published, source, ours, difference, agrees: Math.abs(difference) <= (published.tolerance ?? 0) }
}

/** The functions that a published value's formula calls. */
export const calledIn = ({ formula }: PublishedValue): readonly string[] => [
  ...new Set([...formula.matchAll(/(\w+)\(/g)].map(([, name]) => name as string).filter((name) => LIBRARY.has(name))),
]
