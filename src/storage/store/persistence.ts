import type { Store } from './types.ts'

const ASKED = 'asked to persist'

/** Asks the browser, once, not to clear away what is kept when its disk fills. It may say no; the sheets are kept as before. */
export async function askToPersist(store: Store): Promise<void> {
  try {
    if (!store.persistent || (await store.setting(ASKED))) return
    await store.saveSetting(ASKED, true)
    await navigator.storage.persist()
  } catch {
    // A browser without the question, or without the answer.
  }
}
