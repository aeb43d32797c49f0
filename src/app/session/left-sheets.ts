import { readable } from '../../storage/store/readable.ts'
import { tellSaved } from '../../storage/store/tab-lock.ts'
import type { Store } from '../../storage/store/types.ts'
import { LEFT } from './any-left.ts'
import type { Autosave, Unsaved } from './autosave.ts'
import type { UnsavedSheets } from './unsaved-sheets.ts'

/** Tabs that are opened together take up what was left one after the other. */
const LOCK = 'evenfield-left'

/** What sheets are left in, and how it is announced that they are saved. */
export interface LeftMeans {
  /** None where the browser gives the site none. */
  readonly local: Storage | undefined
  readonly locks: LockManager | undefined
  readonly tell: (sheet: string) => void
}

function localStore(): Storage | undefined {
  try {
    return localStorage
  } catch {
    return undefined
  }
}

const browserMeans = (): LeftMeans => ({
  local: localStore(),
  locks: globalThis.navigator?.locks as LockManager | undefined,
  tell: tellSaved,
})

/**
 * What was typed last before a page is left. No transaction begun then is sure to end: an engine may put the page to sleep
 * in the middle of it, and every later page would wait for it. Local storage is written at once; the next page, or another
 * tab, saves what it finds there.
 */
export class LeftSheets {
  /** The sheets that stay in local storage until they are saved by this page. */
  private readonly taken = new Set<string>()

  constructor(
    private readonly store: Store,
    private readonly unsaved: UnsavedSheets,
    private readonly means: LeftMeans = browserMeans(),
  ) {}

  /** Leaves what is not saved. False where there is no room for it. */
  leave(autosaves: Iterable<Autosave>): boolean {
    let isLeft = true
    for (const { id, unsaved } of autosaves)
      if (unsaved) isLeft = this.write(id, unsaved) && isLeft
      else if (this.taken.delete(id)) this.forget(id)
    return isLeft
  }

  /** Saves what other pages have left; what cannot be saved yet is then one of the unsaved sheets of this one. */
  async takeUp(): Promise<void> {
    if (!this.store.persistent || this.ids().length === 0) return
    const work = async () => {
      for (const id of this.ids()) await this.takeUpOne(id).catch(() => {})
    }
    const { locks } = this.means
    await (locks ? locks.request(LOCK, work) : work())
  }

  private async takeUpOne(id: string): Promise<void> {
    if (this.taken.has(id)) return
    const left = read(this.means.local?.getItem(LEFT + id))
    if (!left) return this.forget(id)
    const saved = await this.store.raw(id)
    if (!saved || JSON.stringify(saved.data) !== JSON.stringify(left.worksheet)) {
      const worksheet = await readable(left.worksheet)
      this.taken.add(id)
      if (!(await this.unsaved.takeUp(this.store, id, { ...left, worksheet }))) return
      this.taken.delete(id)
      this.means.tell(id)
    }
    this.forget(id)
  }

  private ids(): readonly string[] {
    return Object.keys(this.means.local ?? {})
      .filter((key) => key.startsWith(LEFT))
      .map((key) => key.slice(LEFT.length))
  }

  private write(id: string, unsaved: Unsaved): boolean {
    try {
      this.means.local?.setItem(LEFT + id, JSON.stringify(unsaved))
      return this.means.local !== undefined
    } catch {
      return false
    }
  }

  private forget(id: string): void {
    this.means.local?.removeItem(LEFT + id)
  }
}

/** What was left, as far as it says on what it goes on from; the sheet itself is read where it is saved. */
function read(text: string | null | undefined): Unsaved | undefined {
  try {
    const left = JSON.parse(text ?? 'null') as Unsaved | null
    return left && Array.isArray(left.seen) && left.worksheet ? left : undefined
  } catch {
    return undefined
  }
}
