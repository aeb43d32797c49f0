import 'fake-indexeddb/auto'
import { forceCloseDatabase } from 'fake-indexeddb'
import FDBDatabase from 'fake-indexeddb/lib/FDBDatabase'
import FDBFactory from 'fake-indexeddb/lib/FDBFactory'
import FDBTransaction from 'fake-indexeddb/lib/FDBTransaction'

/** What may go wrong with a transaction. */
export type Fault =
  /** It is aborted: by the browser, for want of room, or for a reason it does not give. */
  | 'AbortError'
  | 'QuotaExceededError'
  | 'UnknownError'
  /** The browser closes the connection, with an event or without. */
  | 'closed'
  | 'closed without a word'
  /** It is never answered. */
  | 'never'
  /** It completes, and the answer is lost. */
  | 'answer lost'

export const FAULTS: readonly Fault[] = [
  'AbortError',
  'QuotaExceededError',
  'UnknownError',
  'closed',
  'closed without a word',
  'never',
  'answer lost',
]

/** A fault before the request of this number, counted from 0; at the commit where there are fewer requests. */
export interface Plan {
  readonly fault: Fault
  step: number
  /** Set once it happened at the commit: there are no further steps to try. */
  atCommit?: boolean
}

interface RawTransaction {
  readonly db: RawDatabase
  readonly mode: string
  _state: string
  _started: boolean
  _requests: unknown[]
  _start(): void
  _abort(name: string | null): void
  _markFinished(): void
  plan?: Plan | undefined
  steps?: number
}

interface RawDatabase {
  _closed: boolean
  _closePending: boolean
  readonly _rawDatabase: { transactions: RawTransaction[]; processTransactions(): void }
  dispatchEvent(event: Event): void
  close(): void
  tab?: string
}

type Transact = (this: RawDatabase, ...asked: unknown[]) => RawTransaction

const database = FDBDatabase.prototype as unknown as { transaction: Transact }
const transaction = FDBTransaction.prototype as unknown as {
  _start(this: RawTransaction): void
  abort(this: RawTransaction): void
}
const plainTransaction = database.transaction
const plainStart = transaction._start
const plainAbort = transaction.abort

let simulated: SimulatedDatabases | undefined

database.transaction = function (...asked) {
  const made = plainTransaction.apply(this, asked)
  const plans = this.tab === undefined ? undefined : simulated?.plans.get(this.tab)
  if (made.mode === 'readwrite') made.plan = plans?.shift()
  made.steps = 0
  return made
}

transaction._start = function () {
  // It stays open, and holds up whatever comes after it.
  if (simulated?.asleep.has(this.db.tab ?? '')) return
  const { plan } = this
  const isLast = this._requests.length === 0
  if (plan && this._state !== 'finished' && (this.steps === plan.step || isLast)) {
    this.plan = undefined
    plan.atCommit = isLast
    if (failed(this, plan, isLast)) return
  }
  this.steps = (this.steps ?? 0) + 1
  plainStart.call(this)
}

transaction.abort = function () {
  // No script runs in a page that is asleep.
  if (!simulated?.asleep.has(this.db.tab ?? '')) plainAbort.call(this)
}

/** Lets a transaction fail. False: it goes on, as what fails comes later. */
function failed(one: RawTransaction, plan: Plan, isLast: boolean): boolean {
  const { fault } = plan
  if (fault === 'never') return true
  if (fault === 'answer lost') {
    if (!isLast) {
      one.plan = Object.assign(plan, { step: Number.POSITIVE_INFINITY })
      return false
    }
    one._started = true
    one._markFinished()
    setImmediate(() => one.db._rawDatabase.processTransactions())
    return true
  }
  if (fault === 'closed' || fault === 'closed without a word') forceClose(one.db, fault === 'closed')
  else one._abort(fault)
  one._started = true
  return true
}

function forceClose(one: RawDatabase, isNotified: boolean): void {
  for (const open of [...one._rawDatabase.transactions])
    if (open.db === one && open._state !== 'finished') open._abort('AbortError')
  if (isNotified) {
    forceCloseDatabase(one as never)
    return
  }
  one._closed = true
  one._closePending = true
}

/** Databases of one browser, opened by tabs; a tab is the part of a database's name behind `#`. */
export class SimulatedDatabases {
  readonly plans = new Map<string, Plan[]>()
  private readonly factory = new FDBFactory()
  private readonly open = new Map<string, RawDatabase[]>()
  private readonly dead = new Set<string>()
  /** Tabs whose openings are not answered. */
  readonly mute = new Set<string>()

  /** Tabs put to sleep: what they had under way never ends, unless they have ended it themselves. */
  readonly asleep = new Set<string>()

  /** Without pages named, any may open a database. */
  constructor(private readonly pages?: ReadonlySet<string>) {
    simulated = this
    Object.defineProperty(globalThis, 'indexedDB', {
      configurable: true,
      value: {
        open: (name: string, version?: number) => this.opened(name, version),
        deleteDatabase: (name: string) => this.factory.deleteDatabase(name),
      },
    })
  }

  /** The next write transactions of a tab fail so, one after the other. */
  fail(tab: string, ...plans: Plan[]): void {
    this.plans.set(tab, [...(this.plans.get(tab) ?? []), ...plans])
  }

  /** The browser closes a tab's connections. */
  close(tab: string, isNotified: boolean): void {
    for (const one of this.open.get(tab) ?? []) if (!one._closed) forceClose(one, isNotified)
  }

  /** The tab is gone: what it had under way is undone, and nothing of it reaches the database any more. */
  crash(tab: string): void {
    this.dead.add(tab)
    this.plans.delete(tab)
    this.close(tab, false)
  }

  /** Nothing goes wrong any more. */
  heal(): void {
    this.plans.clear()
    this.mute.clear()
  }

  private opened(name: string, version?: number): IDBOpenDBRequest {
    const [real = name, tab = ''] = name.split('#')
    const isForeign = this.pages !== undefined && !this.pages.has(tab)
    if (isForeign || this.dead.has(tab) || this.mute.has(tab)) return new EventTarget() as IDBOpenDBRequest
    const request = this.factory.open(real, version) as unknown as IDBOpenDBRequest
    request.addEventListener('success', () => {
      const made = request.result as unknown as RawDatabase
      made.tab = tab
      this.open.set(tab, [...(this.open.get(tab) ?? []), made])
      if (this.dead.has(tab)) forceClose(made, false)
    })
    return request
  }
}

/** Lets the simulated databases do what is under way. */
export async function drained(turns = 60): Promise<void> {
  for (let turn = 0; turn < turns; turn++) await new Promise((settle) => setImmediate(settle))
}
