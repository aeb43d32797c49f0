import type { Store } from '../../storage/store/types.ts'
import { LEFT } from './any-left.ts'
import type { Autosave } from './autosave.ts'
import { LeftSheets } from './left-sheets.ts'
import type { UnsavedSheets } from './unsaved-sheets.ts'

/** Saves what is typed when the page is reloaded, closed or put to sleep, or another tab is turned to. */
export class Leaving {
  private isAsleep = false
  private readonly sheets: LeftSheets

  constructor(
    private readonly store: Store,
    private readonly unsaved: UnsavedSheets,
    private readonly open: () => Autosave | undefined,
  ) {
    this.sheets = new LeftSheets(store, unsaved)
    addEventListener('beforeunload', this.warn)
    addEventListener('pagehide', this.hide)
    addEventListener('pageshow', this.show)
    addEventListener('storage', this.heard)
    document.addEventListener('visibilitychange', this.turnAway)
  }

  close(): void {
    removeEventListener('beforeunload', this.warn)
    removeEventListener('pagehide', this.hide)
    removeEventListener('pageshow', this.show)
    removeEventListener('storage', this.heard)
    document.removeEventListener('visibilitychange', this.turnAway)
  }

  /** Saves what pages before this one have left. */
  takeUp(): Promise<void> {
    return this.sheets.takeUp()
  }

  /** The browser asks before it closes a page whose sheet is nowhere else. */
  private readonly warn = (event: BeforeUnloadEvent): void => {
    // A save under way goes on to its end; only one that failed is worth the browser's question.
    if (this.unsaved.isAny || this.open()?.saveState.get().state === 'failed') event.preventDefault()
  }

  private readonly hide = ({ persisted }: PageTransitionEvent): void => {
    const open = this.open()
    const isLeft = this.sheets.leave([...this.unsaved.all, ...(open ? [open] : [])])
    this.isAsleep = persisted && isLeft && this.store.persistent
    if (this.isAsleep) this.store.sleep()
    else void open?.flush()
  }

  /** A page that was put to sleep starts afresh: another one may have saved what it left. */
  private readonly show = ({ persisted }: PageTransitionEvent): void => {
    if (persisted && this.isAsleep) location.reload()
  }

  /** At once, not after the pause in typing: the tab may be about to be closed. */
  private readonly turnAway = (): void => {
    if (document.visibilityState === 'hidden' && !this.isAsleep) void this.open()?.flush()
  }

  /** Another tab was left. */
  private readonly heard = ({ key, newValue }: StorageEvent): void => {
    if (key?.startsWith(LEFT) && newValue !== null) void this.takeUp()
  }
}
