import type { Home } from '../../storage/exchange/home.ts'
import type { CheckSummary, Worksheet } from '../../worksheet/index.ts'
import type { Route } from '../common/route.ts'
import type { ReceivedFigure } from '../received/copy-figures.ts'
import type { NewerSheet } from '../received/newer-page.ts'
import type { SheetSession } from '../session/sheet-session.ts'

/** A worksheet from elsewhere, of which nothing is saved yet. */
export interface Received {
  readonly worksheet: Worksheet
  readonly checkSummary: CheckSummary
  /** Its results, each with its figure as shown. */
  readonly figures: readonly ReceivedFigure[]
  /** The sheet of this browser it is a copy of. */
  readonly home: Home | undefined
  readonly from: 'link' | 'server' | 'file'
}

/** What the app shows. */
export type Page =
  | { readonly on: 'nothing' }
  | { readonly on: 'shelf'; readonly problem: string; readonly said?: string }
  | { readonly on: 'kit' }
  | { readonly on: 'answers' }
  | { readonly on: 'sheet'; readonly session: SheetSession; readonly key: string }
  | { readonly on: 'newer'; readonly newer: NewerSheet }
  | { readonly on: 'unreadable'; readonly id: string; readonly why: string }
  | ({ readonly on: 'copy' } & Received)

/** What the browser shows as the title of a page. */
export const titleOf = (page: Page): string =>
  page.on === 'sheet' ? page.session.open.sheet.worksheet.title : page.on === 'copy' ? page.worksheet.title : ''

/** Which sheet an address shows, in any face. */
export const keyOf = (route: Route & { at: 'sheet' | 'new' }): string =>
  route.at === 'sheet' ? `sheet ${route.id}` : `${route.own ? 'start' : 'new'} ${route.template}`
