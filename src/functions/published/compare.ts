import { checkFormula, computable, computeOnce, emptyScope, type Value } from '../../language/index.ts'
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

/** The formula with the published lists put in. */
export const formulaOf = ({ formula }: PublishedValue): string =>
  formula.replace(/\{(\w+)\}/g, (braced, name: string) => (name in LISTS ? `{${LISTS[name]}}` : braced))

/**
 * Computes a formula that names no cells, in coherent SI.
 * @throws Error with the checker's message where the formula is broken.
 */
function compute(formula: string): Value {
  const { root, diagnostics, mayBeInfinite } = checkFormula(formula, emptyScope(LIBRARY))
  if (!root) throw new Error(`${formula}: ${diagnostics.map(({ message }) => message).join(' ')}`)
  return computeOnce(computable(root, mayBeInfinite), () => 0).value
}

/** Computes the formula of a published value and compares the two. */
export function compare(published: PublishedValue): Comparison {
  const source = SOURCES[published.source]
  if (!source) throw new Error(`${published.id} names the source ${published.source}, which is not described.`)
  const value = compute(formulaOf(published))
  if (typeof value !== 'number' || typeof published.value !== 'number')
    return { published, source, ours: String(value), difference: null, agrees: value === published.value }
  const ours = published.unit === undefined ? value : value / readUnit(published.unit).factor
  const difference = ours - published.value
  return { published, source, ours, difference, agrees: Math.abs(difference) <= (published.tolerance ?? 0) }
}

/** The functions that a published value's formula calls. */
export const calledIn = ({ formula }: PublishedValue): readonly string[] => [
  ...new Set([...formula.matchAll(/(\w+)\(/g)].map(([, name]) => name as string).filter((name) => LIBRARY.has(name))),
]
