import type { Worksheet } from '../schema/document.ts'

const MOST_STEPS = 500

/** The documents undo and redo lead to, each list with the earliest state of the document first. */
export interface Steps {
  readonly undo: readonly Worksheet[]
  readonly redo: readonly Worksheet[]
}

/** Undo and redo as documents: they share all that did not change, so a step costs what it changed. */
export class History {
  private past: { readonly worksheet: Worksheet; readonly merge: string | undefined }[] = []
  private future: Worksheet[] = []

  get canUndo(): boolean {
    return this.past.length > 0
  }
  get canRedo(): boolean {
    return this.future.length > 0
  }

  /** Remembers the document as it was before a change; a change that merges with the last adds no step. */
  remember(before: Worksheet, merge?: string): void {
    this.future = []
    if (merge !== undefined && this.past.at(-1)?.merge === merge) return
    this.past.push({ worksheet: before, merge })
    if (this.past.length > MOST_STEPS) this.past.shift()
  }

  get steps(): Steps {
    return { undo: this.past.map(({ worksheet }) => worksheet), redo: this.future.toReversed() }
  }

  /** Goes on from the steps of an earlier visit. */
  recall({ undo, redo }: Steps): void {
    this.past = undo.map((worksheet) => ({ worksheet, merge: undefined }))
    this.future = redo.toReversed()
  }

  undo(now: Worksheet): Worksheet | undefined {
    const step = this.past.pop()
    if (!step) return undefined
    this.future.push(now)
    // What is typed from here on is a separate step, even in the same field.
    const last = this.past.pop()
    if (last) this.past.push({ worksheet: last.worksheet, merge: undefined })
    return step.worksheet
  }

  /** Drops the last step, where it has this key, and gives the document before it. */
  abandon(merge: string): Worksheet | undefined {
    return this.past.at(-1)?.merge === merge ? this.past.pop()?.worksheet : undefined
  }

  redo(now: Worksheet): Worksheet | undefined {
    const next = this.future.pop()
    if (!next) return undefined
    this.past.push({ worksheet: now, merge: undefined })
    return next
  }
}
