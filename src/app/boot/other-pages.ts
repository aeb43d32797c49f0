import { StoreError } from '../../storage/store/store-error.ts'
import { newerIn } from '../../worksheet/schema/newer-document.ts'
import type { Route } from '../common/route.ts'
import type { Page } from './page.ts'

/** What was to be opened is of a newer version: it is shown to be read. */
export async function newerPage(error: unknown): Promise<Page | undefined> {
  const data = newerIn(error)
  if (data === undefined) return undefined
  const { openNewer } = await import('../received/newer-page.ts')
  return openNewer(data).then(
    (newer) => ({ on: 'newer', newer }),
    () => undefined,
  )
}

/** A saved sheet that cannot be read: what can be done with it. */
export async function unreadablePage(error: unknown, route: Route): Promise<Page | undefined> {
  if (route.at !== 'sheet' || !(error instanceof StoreError) || error.problem !== 'unreadable') return undefined
  await import('../received/unreadable-page.ts')
  return { on: 'unreadable', id: route.id, why: error.message }
}
