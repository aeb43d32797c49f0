import { cleanupOutdatedCaches, type PrecacheEntry, precacheAndRoute } from 'workbox-precaching'

/** Every file of the site; the build puts the list in. */
declare const SITE_FILES: PrecacheEntry[]

/** The part of a worker's global scope used here, which the page's types do not include. */
declare const self: EventTarget & { skipWaiting(): Promise<void> }

cleanupOutdatedCaches()
precacheAndRoute(SITE_FILES)

// A newer worker waits until someone says so: pages open now were made for the files of this one.
self.addEventListener('message', (event) => {
  if ((event as MessageEvent).data === 'take over') void self.skipWaiting()
})
