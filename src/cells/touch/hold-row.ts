import { focused } from '../shared/focus.ts'

/**
 * A row that is unfolded while it has the focus stays so until what is pressed is released. Otherwise what is below it
 * would move from under the finger when the focus leaves, and the press would be lost.
 */
function hold(): void {
  const row = focused()?.closest('.row, tr')
  if (!row) return
  row.toggleAttribute('data-held', true)
  // The click comes right after this.
  addEventListener('mouseup', () => setTimeout(() => row.removeAttribute('data-held')), { once: true, capture: true })
}

// A tap sends it too, before the focus moves.
globalThis.addEventListener?.('mousedown', hold, { capture: true })
