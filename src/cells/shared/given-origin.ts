import type { Given } from '../../worksheet/index.ts'

/** Where the value of a given comes from. A value that differs from the recorded text was typed. */
export type Origin = 'example' | 'usual' | 'typed' | 'kit' | 'measured'

/** Where the value of a given comes from, as its sign shows it. */
export function originOf({ from, value }: Given): Origin {
  return from && from.text === value ? from.kind : 'typed'
}

/** A given whose value is the user's own from now on. */
export function asOwn(cell: Given): Given {
  const { from: _, ...own } = cell
  return own
}
