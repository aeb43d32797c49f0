import { signal } from '@lit-labs/signals'
import { newId } from '../../storage/store/store.ts'
import { type LockState, TabLock } from '../../storage/store/tab-lock.ts'
import type { Store, Summary } from '../../storage/store/types.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { Autosave } from './autosave.ts'

/** An open worksheet, its place in the store, and this tab's hold on it. */
export class SheetSession {
  readonly lockState = signal<LockState>('here')
  readonly autosave: Autosave
  private readonly tabLock: TabLock
  private readonly stop: () => void
  /** The document as it is kept or on its way to be: functions that arrive later change no document. */
  private known: Worksheet
  private reading: Promise<void> = Promise.resolve()

  constructor(
    readonly open: OpenSheet,
    readonly store: Store,
    readonly id: string,
    kept: Summary | undefined,
    changed: () => void,
  ) {
    this.known = open.sheet.worksheet
    this.tabLock = new TabLock(id, {
      gained: () => void this.resume(),
      asked: () => this.autosave.flush(),
      lost: () => {
        if (this.lockState.get() !== 'changed') this.freeze('taken')
      },
      keptElsewhere: () => void this.follow(),
    })
    this.autosave = new Autosave(store, id, kept, {
      kept: () => this.tabLock.kept(),
      refused: (worksheet) => void this.refused(worksheet),
    })
    this.stop = open.sheet.watch(() => {
      const { worksheet } = open.sheet
      if (worksheet === this.known) return
      this.known = worksheet
      this.autosave.schedule(() => open.sheet.worksheet)
      changed()
    })
  }

  /** Takes the sheet, or says that another tab has it. */
  async take(): Promise<void> {
    if (!this.store.persistent) return
    this.freeze('elsewhere')
    if (await this.tabLock.take()) await this.resume()
  }

  async takeOver(): Promise<void> {
    await this.tabLock.takeOver()
    await this.resume()
  }

  /** Keeps what is on the screen as a sheet of its own; gives its id. */
  async saveCopy(): Promise<string> {
    const { worksheet } = this.open.sheet
    const id = newId()
    await this.store.save(id, { ...worksheet, title: `${worksheet.title}, copy` })
    return id
  }

  /** Puts the sheet back to how it stood. How it stands now is kept among its revisions. */
  async restore(worksheet: Worksheet): Promise<void> {
    await this.autosave.flush()
    await this.store.saveRevision(this.id, { why: 'before a restore' })
    await this.open.loadAllFunctions()
    if (!this.open.frozen.get()) this.open.sheet.become(worksheet)
    await this.autosave.flush()
  }

  async close(): Promise<void> {
    this.open.close()
    this.stop()
    await this.autosave.close()
    this.tabLock.close()
  }

  private freeze(holding: LockState): void {
    this.open.frozen.set(holding !== 'here')
    this.lockState.set(holding)
  }

  private async resume(): Promise<void> {
    await this.autosave.flush()
    await this.readAgain()
    this.freeze('here')
  }

  /** Another tab has kept a change: it is shown here too, unless something typed here stands against it. */
  private async follow(): Promise<void> {
    await this.autosave.flush()
    if (this.autosave.saveState.get().state !== 'failed' && this.lockState.get() !== 'changed') await this.readAgain()
  }

  private readAgain(): Promise<void> {
    this.reading = this.reading.then(async () => {
      const kept = await this.store.read(this.id).catch(() => undefined)
      if (!kept) return
      this.autosave.resume(kept.summary)
      if (JSON.stringify(kept.worksheet) === JSON.stringify(this.open.sheet.worksheet)) return
      await this.open.loadAllFunctions()
      this.known = kept.worksheet
      this.open.sheet.become(kept.worksheet)
    })
    return this.reading
  }

  private async refused(worksheet: Worksheet): Promise<void> {
    this.freeze('changed')
    await this.store.saveRevision(this.id, { name: 'Typed in another tab, not kept' }, worksheet).catch(() => {})
  }
}
