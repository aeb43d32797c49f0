import type { Piece } from '../../kit/piece.ts'
import type { Sheet } from '../../worksheet/index.ts'

declare global {
  interface HTMLElementEventMap {
    /** The studio's kit is wanted; whoever has it gives it. */
    'kit-asked': CustomEvent<(pieces: Promise<readonly Piece[]>) => void>
  }
}

/** The studio's kit, asked of whoever holds the element. */
export function askForKit(from: HTMLElement): Promise<readonly Piece[]> {
  return new Promise((resolve, reject) => {
    const detail = (pieces: Promise<readonly Piece[]>): void => void pieces.then(resolve, reject)
    const event = new CustomEvent('kit-asked', { detail, bubbles: true, composed: true, cancelable: true })
    // Nobody there has one: a sheet only looked at.
    if (from.dispatchEvent(event)) resolve([])
  })
}

/** The kit, where a sheet asks for any piece of it. */
export const kitFor = async (from: HTMLElement, sheet: Sheet): Promise<readonly Piece[]> =>
  sheet.cells.some((cell) => cell.kind === 'given' && cell.entry === 'kit') ? askForKit(from) : []
