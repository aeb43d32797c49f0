import type { Piece } from '../../kit/piece.ts'
import type { Sheet } from '../../worksheet/index.ts'

declare global {
  interface HTMLElementEventMap {
    /** A request for the studio's kit; the owner of the kit answers it. */
    'kit-asked': CustomEvent<(pieces: Promise<readonly Piece[]>) => void>
  }
}

/** Requests the studio's kit from the page around an element; an empty list if there is none. */
export function askForKit(from: HTMLElement): Promise<readonly Piece[]> {
  return new Promise((resolve, reject) => {
    const detail = (pieces: Promise<readonly Piece[]>): void => void pieces.then(resolve, reject)
    const event = new CustomEvent('kit-asked', { detail, bubbles: true, composed: true, cancelable: true })
    // A sheet opened read-only has no kit.
    if (from.dispatchEvent(event)) resolve([])
  })
}

/** The kit, where a sheet asks for any piece of it. */
export const kitFor = async (from: HTMLElement, sheet: Sheet): Promise<readonly Piece[]> =>
  sheet.cells.some((cell) => cell.kind === 'given' && cell.entry === 'kit') ? askForKit(from) : []
