import { type Cell, type Change, ClippingError, fitted, isNamed, readClipping } from '../../worksheet/index.ts'
import { cellsText } from '../common/words.ts'
import { cellId } from '../common/new-cell.ts'

const MOST_NAMES = 3

/** What a text pasted comes to: the cells to put in and what to say of them, or why there are none. */
export type PasteResult = { readonly cells: readonly Cell[]; readonly said: string } | { readonly refused: string }

/** The cells of a text from the clipboard, as they can stand in a sheet. */
export function pastedInto(others: readonly Cell[], text: string): PasteResult {
  try {
    const clipped = readClipping(text)
    if (clipped.length === 0) return { refused: 'This text holds no cells: its list is empty.' }
    const cells = fitted(clipped, others, cellId)
    return { cells, said: `${counted(cells.length)} put in.${newNames(clipped, cells)}` }
  } catch (error) {
    if (!(error instanceof ClippingError)) throw error
    return { refused: error.message }
  }
}

const counted = (n: number): string => {
  const words = cellsText(n)
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/** Which names were taken, and what bears which now. */
function newNames(before: readonly Cell[], after: readonly Cell[]): string {
  const pairs = before.flatMap((cell, at) => {
    const next = after[at] as Cell
    return isNamed(cell) && isNamed(next) && cell.name !== next.name ? [`«${cell.name}» is «${next.name}» here`] : []
  })
  if (pairs.length === 0) return ''
  const more = pairs.length - MOST_NAMES
  const told = [...pairs.slice(0, MOST_NAMES), ...(more > 0 ? [`${more} more have new names`] : [])]
  return ` Names were taken: ${told.join(', ')}.`
}

export const saidOf = (cells: readonly Cell[], what: 'copied' | 'cut' | 'removed'): string =>
  `${counted(cells.length)} ${what}.`

export const removal = (cells: readonly Cell[]): Change => ({
  do: 'several',
  changes: cells.map(({ id }) => ({ do: 'remove', id })),
})
