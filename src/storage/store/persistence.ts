import type { Store } from './types.ts'

const ASKED = 'asked to persist'

/** What the browser answers when asked to keep what is saved; `unknown` where it cannot be asked. */
export type Persistence = 'persistent' | 'best effort' | 'unknown'

/** Asks the browser, once, not to delete what is saved when its disk fills. Sheets are saved the same if it refuses. */
export async function askToPersist(store: Store): Promise<void> {
  try {
    if (!store.persistent || (await store.setting(ASKED))) return
    await store.saveSetting(ASKED, true)
    await navigator.storage.persist()
  } catch {
    // A browser without the question, or without the answer.
  }
}

/** What the browser has answered; with `again` it is asked once more. */
export async function persistence(again = false): Promise<Persistence> {
  try {
    const granted = (await navigator.storage.persisted()) || (again && (await navigator.storage.persist()))
    return granted ? 'persistent' : 'best effort'
  } catch {
    return 'unknown'
  }
}

/**
 * Whether this engine deletes what a page saved when it was not visited for seven days of use. WebKit does, but not
 * for a page on the home screen (WebKit, “Full Third-Party Cookie Blocking and More”, 2020).
 */
export const deletesUnvisited = (): boolean =>
  'GestureEvent' in globalThis && !globalThis.matchMedia?.('(display-mode: standalone)').matches
