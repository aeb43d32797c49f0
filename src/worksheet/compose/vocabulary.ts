import published from '../../../shared/vocabulary.json'

/** What a published name means in every sheet. */
export interface Term {
  /** How it is filled in, as a given has it; `check` for a check, `value` for a result that is no single figure. */
  readonly entry: string
  readonly unit?: string
  readonly means: string
}

/** The published names: sections that use them join. */
export const VOCABULARY: ReadonlyMap<string, Term> = new Map(Object.entries<Term>(published.names))
