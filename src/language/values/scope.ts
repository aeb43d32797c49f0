import type { Library } from './function-record.ts'
import type { Type } from './types.ts'

/** What a formula may refer to. */
export interface Scope {
  readonly library: Library
  /** The type of a named cell; `unknown` where the cell exists but is in error; undefined where there is none. */
  typeOf(name: string): Type | 'unknown' | undefined
  /** The names of the cells, for completion and for the nearest to a misspelt one. */
  names(): Iterable<string>
  /** The cell's name nearest to a misspelt one, where the scope has a quicker way than to go through `names`. */
  nearestName?(name: string): string | undefined
}

/** Words a cell may not be named, since the language reads them otherwise. */
export const RESERVED: ReadonlySet<string> = new Set(['and', 'or', 'not', 'yes', 'no', 'when', 'infinity'])

/** Words that stand for a number unless a cell bears the name. */
export const CONSTANTS: ReadonlyMap<string, number> = new Map([['pi', Math.PI]])

export const emptyScope = (library: Library): Scope => ({ library, typeOf: () => undefined, names: () => [] })
