import { fromServer } from '../../storage/exchange/from-server.ts'
import { homeOf } from '../../storage/exchange/home.ts'
import { fromLink } from '../../storage/exchange/link.ts'
import type { Store } from '../../storage/store/types.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import type { Route } from '../common/route.ts'
import { figuresOf } from '../received/copy-figures.ts'
import '../received/copy-page.ts'
import { findBase } from '../templates/base-sheets.ts'
import type { Page, Received } from './page.ts'

/** The page of a worksheet from elsewhere, with the sheet of this browser it is a copy of. */
export async function receivedPage(store: Store, worksheet: Worksheet, from: Received['from']): Promise<Page> {
  const home = await homeOf(store, worksheet).catch(() => undefined)
  return { on: 'copy', worksheet, ...(await figuresOf(worksheet)), home, from }
}

/** The same, of the worksheet in a link or in a file of the app's own server. */
export async function receivedAt(store: Store, route: Route & { at: 'link' | 'server' }): Promise<Page> {
  const worksheet = route.at === 'link' ? await fromLink(route.fragment, findBase) : await fromServer(route.path)
  return receivedPage(store, worksheet, route.at)
}
