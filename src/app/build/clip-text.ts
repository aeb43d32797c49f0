import {
  type Cell,
  ClippingError,
  clippingOf,
  fitted,
  isNamed,
  readClipped,
  withFunctions,
} from '../../worksheet/index.ts'
import { cellId } from '../common/additions.ts'
import { buildWords as words } from './words.ts'

export { linesOf } from '../../worksheet/index.ts'

/** The outcome of pasting a text: the cells to add and what is announced about them, or why there are none. */
export type PasteResult = { readonly cells: readonly Cell[]; readonly said: string } | { readonly refused: string }

/** The cells of a text from the clipboard, with ids and names that are free in the sheet. */
export function pastedInto(others: readonly Cell[], text: string): PasteResult {
  try {
    const { cells: clipped, leftOut } = readClipped(text)
    if (clipped.length === 0) return { refused: words.nothingPasted }
    const cells = fitted(clipped, others, cellId)
    return { cells, said: [`${words.pasted(cells.length)}${newNames(clipped, cells)}`, ...leftOut].join(' ') }
  } catch (error) {
    if (!(error instanceof ClippingError)) throw error
    return { refused: error.message }
  }
}

/** The names that were changed because the sheet already uses them. */
function newNames(before: readonly Cell[], after: readonly Cell[]): string {
  const pairs = before.flatMap((cell, at) => {
    const next = after[at] as Cell
    return isNamed(cell) && isNamed(next) && cell.name !== next.name ? [[cell.name, next.name] as const] : []
  })
  return pairs.length === 0 ? '' : ` ${words.renamed(pairs)}`
}

/** Cells as a text to be pasted into any sheet, with the functions of the sheet that they call. */
export const textOf = (cells: readonly Cell[], sheet: readonly Cell[]): string =>
  clippingOf(withFunctions(cells, sheet))
