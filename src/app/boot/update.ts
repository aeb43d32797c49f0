import { signal } from '@lit-labs/signals'
import { scriptAddress } from '../../cells/worker/script-address.ts'

/** The state of the copy of Evenfield that this browser stores for use without a network. */
export type Update =
  | { readonly state: 'none' }
  /** A newer one is here and waits to be used. */
  | { readonly state: 'ready'; readonly use: () => void }
  /** Another tab has begun to use it; this page's own files may be gone. */
  | { readonly state: 'in use' }

export const update = signal<Update>({ state: 'none' })

const WORKER_FILE = 'worker.js'

function follow(registration: ServiceWorkerRegistration): void {
  const { serviceWorker } = navigator
  const offer = (worker: ServiceWorker | null): void => {
    // The first one has no older one to replace.
    if (!worker || !serviceWorker.controller) return
    update.set({ state: 'ready', use: () => worker.postMessage('take over') })
  }
  offer(registration.waiting)
  registration.addEventListener('updatefound', () => {
    const { installing } = registration
    installing?.addEventListener('statechange', () => installing.state === 'installed' && offer(installing))
  })
  const hadOne = serviceWorker.controller !== null
  serviceWorker.addEventListener('controllerchange', () => hadOne && update.set({ state: 'in use' }))
  document.addEventListener('visibilitychange', () => {
    // A tab may stay open for weeks. Without a network there is nothing newer to find.
    if (document.visibilityState === 'visible') registration.update().catch(() => {})
  })
}

/** Stores this copy of Evenfield for use without a network, and reports when a newer one has come. */
export async function keepForOffline(): Promise<void> {
  // Where a page is not served, or not over https, browsers have no workers.
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return
  try {
    const registration = await navigator.serviceWorker.register(scriptAddress(WORKER_FILE), { updateViaCache: 'none' })
    if (registration) follow(registration)
  } catch {
    // Some private windows refuse; the page goes on as any page does.
  }
}
