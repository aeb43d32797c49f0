import published from '../../../templates/parts/names.json'

/** What a published name means in every sheet. */
export interface Term {
  readonly role: string
  /** How it is filled in, as a given has it; `check` for a check. */
  readonly entry?: string
  readonly unit?: string
  readonly means?: string
  /** Whether a cell of that name in any sheet is taken to be the same; about other names one is asked. */
  readonly joins?: boolean
}

/** The names several sections share: sections that use them join. */
export const VOCABULARY: ReadonlyMap<string, Term> = new Map(
  Object.entries<Term>(published.names).filter(([, { joins }]) => joins === true),
)
