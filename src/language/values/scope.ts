import type { Dimension } from '../../units/index.ts'
import type { Library } from './function-record.ts'
import type { Type } from './types.ts'

/** What a formula may refer to. */
export interface Scope {
  readonly library: Library
  /** The type of a named cell; `unknown` where the cell exists but is in error; undefined where there is none. */
  typeOf(name: string): Type | 'unknown' | undefined
  /** The names of the cells, for completion and for the nearest to a misspelt one. */
  names(): Iterable<string>
  /** The name of the cell nearest to a misspelt one, where the scope has a quicker way than going through `names`. */
  nearestName?(name: string): string | undefined
  /** The dimension that the formula's cell declares, for what is said of a value still missing in it. */
  readonly declared?: Dimension
  /**
   * Whether adding levels is only a warning: so in sheets written before levels and differences were distinguished, which
   * must give the figures they gave.
   */
  readonly lenientLevels?: boolean
  /**
   * Whether it is only asked if a formula is sound. No name is looked for then and no fix is tested: anyone who shows what
   * is wrong checks the formula once more, when all cells have their types.
   */
  readonly isDraft?: boolean
}

/** Words that cannot be the name of a cell, because the language reads them otherwise. */
export const RESERVED: ReadonlySet<string> = new Set(['and', 'or', 'not', 'yes', 'no', 'when', 'infinity'])

/** Words that are a number unless a cell has that name. */
export const CONSTANTS: ReadonlyMap<string, number> = new Map([['pi', Math.PI]])

/** A scope with functions and no cells. */
export const emptyScope = (library: Library): Scope => ({ library, typeOf: () => undefined, names: () => [] })
