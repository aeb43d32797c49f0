import type { SheetSession } from '../session/sheet-session.ts'

const SOON_MS = 20_000
/** After the user has begun to use the page. */
const USED_MS = 2_000
const USES = ['pointermove', 'pointerdown', 'keydown']

/**
 * Fetches what the browser's own Print needs: when the pointer leaves for its menu, soon after the page is first used, or
 * else after a while. Gives a function that ends this.
 */
export function readyToPrint(session: SheetSession): () => void {
  let end: (() => void) | undefined
  let isOver = false
  const page = document.documentElement
  const listening = new AbortController()
  const { signal } = listening
  let idle = 0
  const wait = (ms: number): void => {
    clearTimeout(idle)
    idle = window.setTimeout(prepare, ms)
  }
  const stop = (): void => {
    clearTimeout(idle)
    listening.abort()
  }
  const prepare = async (): Promise<void> => {
    stop()
    try {
      const { printFromMenu } = await import('./print-from-menu.ts')
      if (!isOver) end ??= printFromMenu(session)
    } catch {
      // Without a network the page is printed as it is.
    }
  }
  wait(SOON_MS)
  page.addEventListener('pointerleave', prepare, { signal })
  for (const one of USES) page.addEventListener(one, () => wait(USED_MS), { once: true, signal })
  return () => {
    isOver = true
    stop()
    end?.()
  }
}
