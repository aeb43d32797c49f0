import type { Given, TableCell } from '../../worksheet/index.ts'
import type { GivenSource } from '../../worksheet/schema/document.ts'

/** Where the value of a given comes from. A value that differs from the recorded text was typed. */
export function originOf({ from, value }: Given): GivenSource {
  return from && from.text === value ? from.kind : 'typed'
}

/** A given whose value, or a table whose rows, are the user's own from now on. */
export function asOwn<C extends Given | TableCell>(cell: C): C {
  const { from: _, ...own } = cell
  return own as unknown as C
}
