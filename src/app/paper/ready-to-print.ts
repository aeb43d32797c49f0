import type { SheetSession } from '../session/sheet-session.ts'

const SOON_MS = 20_000

/**
 * Fetches what the browser's own Print needs when the pointer leaves for its menu, or else after a while. Gives a
 * function that ends this.
 */
export function readyToPrint(session: SheetSession): () => void {
  let end: (() => void) | undefined
  let isOver = false
  const page = document.documentElement
  const prepare = async (): Promise<void> => {
    clearTimeout(idle)
    page.removeEventListener('pointerleave', prepare)
    try {
      const { printFromMenu } = await import('./print-from-menu.ts')
      if (!isOver) end ??= printFromMenu(session)
    } catch {
      // Without a network the page is printed as it is.
    }
  }
  const idle = setTimeout(prepare, SOON_MS)
  page.addEventListener('pointerleave', prepare)
  return () => {
    isOver = true
    clearTimeout(idle)
    page.removeEventListener('pointerleave', prepare)
    end?.()
  }
}
