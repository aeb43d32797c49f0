import type { Given } from '../../worksheet/index.ts'
import type { GivenSource } from '../../worksheet/schema/document.ts'

/** Where the value of a given comes from. A value that differs from the recorded text was typed. */
export function originOf({ from, value }: Given): GivenSource {
  return from && from.text === value ? from.kind : 'typed'
}

/** A given whose value is the user's own from now on. */
export function asOwn(cell: Given): Given {
  const { from: _, ...own } = cell
  return own
}
