import { signal } from '@lit-labs/signals'
import type { Store } from '../../storage/store/types.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { Autosave, type Unsaved } from './autosave.ts'

/** A sheet whose page was left before it was saved. */
export interface UnsavedSheet {
  readonly id: string
  readonly title: string
  /** Why it is not saved; undefined where it became a revision, because another tab had changed the sheet. */
  readonly message: string | undefined
}

/** How long leaving a page may wait for its sheet to be saved, in milliseconds. */
const LEAVE_MS = 800

/**
 * The sheets of this tab whose page was left before they were saved. They stay here, and saving is tried again, until it
 * succeeds.
 */
export class UnsavedSheets {
  /** Those whose page was left. */
  readonly left = signal<readonly UnsavedSheet[]>([])
  private readonly autosaves = new Map<string, Autosave>()

  /** Lets go of a sheet's autosave once all is saved; else it stays here. Resolves soon either way. */
  async leave(autosave: Autosave): Promise<void> {
    this.autosaves.set(autosave.id, autosave)
    autosave.events = { tried: () => this.settle() }
    await Promise.race([autosave.flush(), new Promise((settle) => setTimeout(settle, LEAVE_MS))])
    this.settle()
  }

  /** The autosave of a sheet that was left unsaved. */
  take(id: string): Autosave | undefined {
    const found = this.autosaves.get(id)
    this.autosaves.delete(id)
    this.settle()
    return found
  }

  /** The sheet as it was typed, to be saved as a file. */
  worksheet(id: string): Worksheet | undefined {
    return this.autosaves.get(id)?.unsaved?.worksheet
  }

  /** Saves what another page was left with; false where that waits. */
  async takeUp(store: Store, id: string, left: Unsaved): Promise<boolean> {
    const autosave = new Autosave(store, id)
    autosave.take(left)
    await this.leave(autosave)
    return !autosave.isUnsaved
  }

  /** Those of the pages that were left. */
  get all(): Iterable<Autosave> {
    return this.autosaves.values()
  }

  /** Whether closing the tab would lose something. */
  get isAny(): boolean {
    return [...this.autosaves.values()].some((autosave) => autosave.isUnsaved)
  }

  /** Tries at once to save what is left: the store answers again, or there is room. */
  async tryAgain(): Promise<void> {
    await Promise.all([...this.autosaves.values()].map((autosave) => autosave.flush()))
  }

  private settle(): void {
    for (const [id, autosave] of this.autosaves)
      if (!autosave.isUnsaved && autosave.saveState.get().state !== 'refused') this.autosaves.delete(id)
    const left = [...this.autosaves.values()].map((autosave): UnsavedSheet => {
      const state = autosave.saveState.get()
      const message = state.state === 'refused' ? undefined : state.state === 'failed' ? state.message : ''
      return { id: autosave.id, title: autosave.title, message }
    })
    if (JSON.stringify(left) !== JSON.stringify(this.left.get())) this.left.set(left)
  }
}
