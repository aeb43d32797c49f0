import { signal } from '@lit-labs/signals'
import type { OpenSheet } from '../../../src/app/open/open-sheet.ts'
import { LeftSheets } from '../../../src/app/session/left-sheets.ts'
import { SheetSession } from '../../../src/app/session/sheet-session.ts'
import { UnsavedSheets } from '../../../src/app/session/unsaved-sheets.ts'
import { openStore } from '../../../src/storage/index.ts'
import type { TabLockMeans } from '../../../src/storage/store/tab-lock.ts'
import type { Store } from '../../../src/storage/store/types.ts'
import { VERSION } from '../../../src/worksheet/format/format.ts'
import type { Worksheet } from '../../../src/worksheet/schema/document.ts'

export const SHEET_ID = 'sheet'
export const LIMIT_MS = 1000

export const sheetSaying = (job: string): Worksheet => ({
  format: 'evenfield-worksheet',
  version: VERSION,
  title: 'Sheet',
  job,
  cells: [],
})

/** The locks of one browser: a queue for each name, and taking by force. */
export class SimulatedLocks {
  private readonly queues = new Map<string, Waiting[]>()
  private readonly held = new Map<string, Waiting>()

  /** The locks as one tab sees them. */
  forTab(tab: string): LockManager {
    const request = (
      name: string,
      ...rest: [LockOptions, LockGrantedCallback<unknown>] | [LockGrantedCallback<unknown>]
    ) =>
      new Promise((resolve, reject) => {
        const [use, options] = rest.length === 1 ? [rest[0], {} as LockOptions] : [rest[1], rest[0]]
        const waiting: Waiting = { tab, use: use as Waiting['use'], resolve, reject }
        const holder = this.held.get(name)
        if (options.steal) {
          this.held.delete(name)
          if (holder) holder.reject(new DOMException('', 'AbortError'))
          this.grant(name, waiting)
        } else if (!holder) this.grant(name, waiting)
        else if (options.ifAvailable) resolve(use(null))
        else {
          this.queues.set(name, [...(this.queues.get(name) ?? []), waiting])
          options.signal?.addEventListener('abort', () => {
            if (!this.queues.get(name)?.includes(waiting)) return
            this.queues.set(
              name,
              (this.queues.get(name) ?? []).filter((one) => one !== waiting),
            )
            reject(new DOMException('', 'AbortError'))
          })
        }
      })
    return { request } as unknown as LockManager
  }

  /** A tab is gone, and its locks with it. */
  crash(tab: string): void {
    for (const [name, queue] of this.queues)
      this.queues.set(
        name,
        queue.filter((one) => one.tab !== tab),
      )
    for (const [name, holder] of [...this.held]) if (holder.tab === tab) this.next(name, holder)
  }

  private grant(name: string, waiting: Waiting): void {
    this.held.set(name, waiting)
    const used = waiting.use({ name, mode: 'exclusive' } as Lock)
    void Promise.resolve(used).then((value) => {
      waiting.resolve(value)
      this.next(name, waiting)
    })
  }

  private next(name: string, before: Waiting): void {
    if (this.held.get(name) !== before) return
    this.held.delete(name)
    const [first, ...rest] = this.queues.get(name) ?? []
    this.queues.set(name, rest)
    if (first) this.grant(name, first)
  }
}

interface Waiting {
  readonly tab: string
  readonly use: (lock: Lock | null) => unknown
  readonly resolve: (value: unknown) => void
  readonly reject: (error: unknown) => void
}

/** The messages between the tabs of one browser; while they are lost none arrives. */
export class SimulatedMessages {
  isLost = false
  private readonly channels = new Set<EventTarget>()

  channel(): BroadcastChannel {
    const channel = new EventTarget()
    this.channels.add(channel)
    return Object.assign(channel, {
      postMessage: (data: unknown) => {
        if (this.isLost) return
        for (const other of this.channels)
          if (other !== channel)
            queueMicrotask(() => other.dispatchEvent(Object.assign(new Event('message'), { data })))
      },
      close: () => this.channels.delete(channel),
    }) as unknown as BroadcastChannel
  }
}

/** The local storage of one browser: written at once, by every tab. */
export function simulatedLocal(): Storage {
  const methods = {
    getItem: (key: string) => texts[key] ?? null,
    setItem: (key: string, text: string) => {
      texts[key] = text
    },
    removeItem: (key: string) => {
      delete texts[key]
    },
  }
  const texts: Record<string, string> = Object.create(methods)
  return texts as unknown as Storage
}

/** An open sheet with its document alone: what a session needs of it. */
class Document {
  readonly frozen = signal(false)
  readonly sheet = {
    worksheet: sheetSaying(''),
    cells: [],
    engine: { layout: { order: [], needs: [] } },
    steps: { undo: [], redo: [] },
    recallSteps: () => {},
    watch: (watcher: () => void) => {
      this.watchers.add(watcher)
      return () => this.watchers.delete(watcher)
    },
    become: (worksheet: Worksheet) => this.become(worksheet),
  }
  private readonly watchers = new Set<() => void>()

  constructor(
    worksheet: Worksheet,
    private readonly shown: (job: string) => void,
  ) {
    this.sheet.worksheet = worksheet
    shown(worksheet.job ?? '')
  }

  become(worksheet: Worksheet): void {
    this.sheet.worksheet = worksheet
    this.shown(worksheet.job ?? '')
    for (const watcher of this.watchers) watcher()
  }

  async loadAllFunctions(): Promise<void> {}
  close(): void {}
}

/** A tab of the simulated browser with the real session, autosave, lock and store in it. */
export class Tab {
  readonly unsaved = new UnsavedSheets()
  /** Every text of the sheet that was on this tab's screen. */
  readonly seen = new Set<string>()
  session: SheetSession | undefined
  /** What was typed here last. */
  last: string | undefined
  private document: Document | undefined
  private store: Store | undefined
  private left: LeftSheets | undefined
  isAlive = true
  /** The page was left or reloaded, not killed: what was typed in it last is there all the same. */
  isLeft = false

  constructor(
    readonly name: string,
    private readonly means: () => TabLockMeans,
    private readonly local: Storage,
    /** Called where the head says “Saved” of what is shown. */
    private readonly acknowledged: (text: string) => void,
  ) {}

  async start(): Promise<void> {
    this.store = await openStore({
      name: `sheets#${this.name}`,
      openingLimit: LIMIT_MS,
      transactionLimit: LIMIT_MS,
      onAvailable: () => void this.takeUp().then(() => this.unsaved.tryAgain()),
    })
    const { locks } = this.means()
    const tell = (sheet: string) => this.means().channel?.postMessage({ sheet, from: 'left', says: 'saved' })
    this.left = new LeftSheets(this.store, this.unsaved, { local: this.local, locks, tell })
    await this.takeUp()
  }

  /** Saves what another tab was left with. */
  async takeUp(): Promise<void> {
    if (this.isAlive) await this.left?.takeUp()
  }

  /** The page is left, and put to sleep where it is left whole. */
  hide(): boolean {
    const open = this.session?.autosave
    const isLeft = this.left?.leave([...this.unsaved.all, ...(open ? [open] : [])])
    if (isLeft) this.store?.sleep()
    this.isAlive = false
    this.isLeft = true
    return isLeft === true
  }

  /** Opens the sheet's page, as the app does. */
  async open(): Promise<void> {
    if (!this.store || this.session || !this.isAlive) return
    const autosave = this.unsaved.take(SHEET_ID)
    const unsaved = autosave?.unsaved?.worksheet
    const saved = unsaved ? undefined : await this.store.read(SHEET_ID).catch(() => undefined)
    const worksheet = unsaved ?? saved?.worksheet
    if (!worksheet) {
      if (autosave) void this.unsaved.leave(autosave)
      return
    }
    const document = new Document(worksheet, (text) => this.seen.add(text))
    const session = new SheetSession({
      open: document as unknown as OpenSheet,
      store: this.store,
      id: SHEET_ID,
      saved,
      autosave,
      unsaved: this.unsaved,
      lock: this.means(),
    })
    this.document = document
    this.session = session
    await session.take()
  }

  /** Types into the sheet, where this tab may. */
  type(text: string): void {
    if (!this.document || !this.isAlive || this.document.frozen.get()) return
    this.last = text
    this.document.become(sheetSaying(text))
  }

  get isFrozen(): boolean {
    return this.document?.frozen.get() ?? false
  }

  async leave(): Promise<void> {
    const { session } = this
    this.session = undefined
    this.document = undefined
    await session?.close()
  }

  /** Takes note of what the head says. */
  look(): void {
    if (!this.isAlive) return
    const { session, document } = this
    if (session?.autosave.saveState.get().state === 'saved' && document && !session.autosave.isUnsaved)
      this.acknowledged(document.sheet.worksheet.job ?? '')
  }

  /** Whether something here is not saved, and says so. */
  get isUnsaved(): boolean {
    return this.session?.autosave.isUnsaved || this.unsaved.isAny
  }

  async flush(): Promise<void> {
    await this.session?.autosave.flush()
    await this.unsaved.tryAgain()
  }
}
