import type { IDBPTransaction, StoreNames } from 'idb'
import { type Database, openDatabase, type Schema } from './database.ts'
import { asStoreError, StoreError } from './store-error.ts'

export interface ConnectionOptions {
  /** Called when a store that worked stops working, or what was in it is gone. */
  readonly onProblem?: (error: StoreError) => void
  /** Called when a store that did not answer has answered. */
  readonly onAvailable?: () => void
  /** How long the database may take to open, in milliseconds. */
  readonly openingLimit?: number
  /** How long a transaction may take, in milliseconds. */
  readonly transactionLimit?: number
}

const OPENING_LIMIT_MS = 4_000
const TRANSACTION_LIMIT_MS = 20_000
const REOPENING_PAUSE_MS = 1_000

/** What trying again cannot help against. */
const LASTING = new Set([
  'QuotaExceededError',
  'VersionError',
  'SecurityError',
  'NotAllowedError',
  'ConstraintError',
  'DataError',
  'DataCloneError',
])

const isLasting = (error: unknown): boolean =>
  error instanceof StoreError || LASTING.has((error as { name?: string } | undefined)?.name ?? '')

/** Settles as the promise does, or rejects with the problem `silent` once the time is over. */
function within<T>(limit: number, promise: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout>
  const over = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new StoreError('silent')), limit)
  })
  return Promise.race([promise, over]).finally(() => clearTimeout(timer))
}

/**
 * The connection to the database. It opens when it is first needed, and again where the browser has closed it; what
 * fails without a connection is tried once more on a fresh one. Nothing waits without end.
 */
export class Connection {
  private opening: Promise<Database> | undefined
  private blocked: Promise<never> | undefined
  /** Why it is not opened again. */
  private ended: StoreError | undefined
  private reopening: ReturnType<typeof setTimeout> | undefined
  private readonly active = new Set<{ abort(): void }>()
  /** A database was opened here before: one that is not there any more was deleted. */
  private hasOpened = false
  /** Why the database cannot be reached at present. */
  problem: StoreError | undefined

  constructor(
    private readonly name: string,
    private readonly options: ConnectionOptions = {},
  ) {}

  /** Does some work in one transaction, all of it or nothing; resolves only once the transaction is complete. */
  async transact<T, Stores extends StoreNames<Schema>[], Mode extends 'readonly' | 'readwrite'>(
    stores: Stores,
    mode: Mode,
    work: (transaction: IDBPTransaction<Schema, Stores, Mode>) => Promise<T>,
  ): Promise<T> {
    const once = async (): Promise<T> => {
      const database = await this.open()
      if (this.ended) throw this.ended
      const transaction = database.transaction(stores, mode, { durability: 'strict' })
      const done = transaction.done
      this.active.add(transaction)
      // Awaited below; until then a failure is not an unhandled one.
      done.catch(() => {})
      const whole = async (): Promise<T> => {
        const made = await work(transaction)
        await done
        return made
      }
      try {
        return await within(this.options.transactionLimit ?? TRANSACTION_LIMIT_MS, whole())
      } catch (error) {
        try {
          transaction.abort()
        } catch {
          // The browser has ended it already, and says why.
        }
        throw transaction.error ?? error
      } finally {
        this.active.delete(transaction)
      }
    }
    try {
      return await once()
    } catch (error) {
      if (error instanceof StoreError && error.problem === 'silent') this.drop()
      if (isLasting(error)) throw asStoreError(error)
      this.drop()
    }
    try {
      return await once()
    } catch (error) {
      throw asStoreError(error)
    }
  }

  /** Opens the database where it is not open. Rejects with a StoreError within the time limit. */
  async open(): Promise<Database> {
    if (this.ended) throw this.ended
    const opening = this.opening ?? this.start()
    try {
      const database = await within(
        this.options.openingLimit ?? OPENING_LIMIT_MS,
        Promise.race([opening, this.blocked as Promise<never>]),
      )
      this.problem = undefined
      return database
    } catch (error) {
      this.problem = asStoreError(error)
      throw this.problem
    }
  }

  /** Ends what is under way and begins nothing any more. */
  sleep(): void {
    this.ended = new StoreError('silent')
    for (const transaction of this.active)
      try {
        transaction.abort()
      } catch {
        // It is complete, but for saying so.
      }
  }

  close(): void {
    clearTimeout(this.reopening)
    this.drop()
  }

  private start(): Promise<Database> {
    let block: () => void = () => {}
    const blocked = new Promise<never>((_, reject) => {
      block = () => reject(new StoreError('blocked'))
    })
    blocked.catch(() => {})
    this.blocked = blocked
    let isNew = false
    const opening = openDatabase(this.name, {
      blocked: block,
      closed: (why) => {
        if (this.opening === opening) this.opening = undefined
        if (why === 'closed') this.reopen()
        else this.lose(new StoreError(why))
      },
      created: () => {
        isNew = true
      },
    })
    this.opening = opening
    opening.then(
      () => {
        const isGone = isNew && this.hasOpened
        this.hasOpened = true
        if (isGone) this.lose(new StoreError('deleted'))
        if (this.opening !== opening || !this.problem) return
        this.problem = undefined
        this.options.onAvailable?.()
      },
      () => {
        if (this.opening === opening) this.opening = undefined
      },
    )
    return opening
  }

  /**
   * The browser closed the connection: because its database failed, or because the site data was cleared. Opened while
   * the clearing goes on, it would fail; what fails in the end fails again, and is reported, where something is saved.
   */
  private reopen(triesLeft = 3): void {
    clearTimeout(this.reopening)
    this.reopening = setTimeout(() => {
      this.open().catch(() => {
        if (triesLeft > 1) this.reopen(triesLeft - 1)
      })
    }, REOPENING_PAUSE_MS)
  }

  private lose(error: StoreError): void {
    if (error.problem === 'deleted') this.hasOpened = false
    if (error.problem === 'outdated') {
      this.ended = error
      this.problem = error
    }
    this.options.onProblem?.(error)
  }

  /** Lets go of the connection; one that opens later than that is closed then. */
  private drop(): void {
    const { opening } = this
    this.opening = undefined
    opening?.then(
      (database) => database.close(),
      () => {},
    )
  }
}
