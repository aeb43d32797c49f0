import type { Given, Sheet } from '../../worksheet/index.ts'

/** How a given is filled in. */
export type Entry = NonNullable<Given['entry']>

/** What the field of a given is made from. */
export interface EntryParts {
  readonly entry: Entry
  readonly cell: Given
  readonly label: string
  readonly sheet: Sheet
  /** Whether its text is not understood. */
  readonly bad: boolean
  /** The ids of the elements that describe it. */
  readonly described: string
  /** Whether the field takes the place of the unit as well. */
  readonly isWide: boolean
  readonly put: (value: string) => void
}
