import { namesIn } from '../language/index.ts'
import type { Cell } from './document.ts'

/** The `{formula}` places of a message. */
export const placesIn = (message: string): string[] =>
  [...message.matchAll(/\{([^{}]*)\}/g)].map((match) => match[1] as string)

/** The names whose figures a cell shows besides those its own condition uses: in its messages, or drawn. */
export function namesShown(cell: Cell): ReadonlySet<string> {
  const formulas =
    cell.kind === 'check'
      ? [cell.message, cell.holds ?? ''].flatMap(placesIn)
      : cell.kind === 'drawing'
        ? Object.values(cell.from)
        : []
  return new Set(formulas.flatMap((formula) => namesIn(formula).map(({ name }) => name)))
}
