import type { ReactiveController, ReactiveControllerHost, TemplateResult } from 'lit'
import { isField } from '../../cells/shared/focus.ts'
import type { Cell, Change } from '../../worksheet/index.ts'
import { type ByHand, type ClipAct, clipBar } from './clip-bar.ts'
import type { PasteResult } from './clip-text.ts'
import { NO_SELECTION, picked, type Selection, still, toggled, upTo } from './selection.ts'
import { buildWords as words } from './words.ts'

/** What the clipboard needs of the face that shows the cells. */
interface Face {
  readonly cells: () => readonly Cell[]
  /** The cell whose row has the focus, or else the open cell. */
  readonly current: () => string | undefined
  readonly ask: (change: Change) => string | undefined
  /** Moves the focus to the row of a cell. */
  readonly goTo: (id: string) => void
  /** Moves the focus to the field for copying or pasting by hand. */
  readonly goToField: () => void
}

let texts: typeof import('./clip-text.ts') | undefined

/** Fetches what reads and writes cells as text, which the rows are shown without. */
export const fetchTexts = async (): Promise<typeof import('./clip-text.ts')> => {
  texts ??= await import('./clip-text.ts')
  return texts
}

/** The sentence that says how many cells were copied, cut or removed. */
const saidOf = (cells: readonly Cell[], what: 'copied' | 'cut' | 'removed'): string =>
  words[what === 'cut' ? 'wereCut' : what](cells.length)

/** The change that removes some cells, in one step of undo. */
const removal = (cells: readonly Cell[]): Change => ({
  do: 'several',
  changes: cells.map(({ id }) => ({ do: 'remove', id })),
})

/** The selection of cells in Build, with copy, cut, paste and remove. */
export class Clipboard implements ReactiveController {
  private picks: Selection = NO_SELECTION
  private said = ''
  private byHand: ByHand | undefined

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly face: Face,
  ) {
    host.addController(this)
  }

  hostConnected(): void {
    document.addEventListener('copy', this.copied)
    document.addEventListener('cut', this.wasCut)
    document.addEventListener('paste', this.pasted)
  }

  hostDisconnected(): void {
    document.removeEventListener('copy', this.copied)
    document.removeEventListener('cut', this.wasCut)
    document.removeEventListener('paste', this.pasted)
  }

  hostUpdate(): void {
    this.picks = still(this.face.cells(), this.picks)
  }

  get ids(): ReadonlySet<string> {
    return this.picks.ids
  }

  /** The cells an action on one cell applies to: the whole selection where the cell is part of it. */
  with(id: string): ReadonlySet<string> {
    return this.ids.has(id) ? this.ids : new Set([id])
  }

  toggle(id: string): void {
    this.set(toggled(this.picks, id))
  }

  upTo(from: string, to: string): void {
    this.set(upTo(this.face.cells(), this.picks, from, to))
  }

  all(): void {
    this.set({ ids: new Set(this.face.cells().map(({ id }) => id)) })
  }

  /** Announces a sentence in the bar of the selection. */
  say(words: string): void {
    this.said = words
    this.host.requestUpdate()
  }

  clear(): void {
    this.byHand = undefined
    this.set(NO_SELECTION)
  }

  removeAll(ids: ReadonlySet<string>, what: 'cut' | 'removed'): void {
    const cells = this.face.cells()
    const gone = picked(cells, { ids })
    const last = cells.findLastIndex(({ id }) => ids.has(id))
    const next = cells.slice(last + 1)[0] ?? cells.findLast(({ id }) => !ids.has(id))
    const refused = this.face.ask(removal(gone))
    if (refused === undefined) {
      this.picks = NO_SELECTION
      if (next) this.face.goTo(next.id)
    }
    this.say(refused ?? saidOf(gone, what))
  }

  bar(): TemplateResult {
    return clipBar({
      count: this.ids.size,
      said: this.said,
      byHand: this.byHand,
      act: (act) => this.act(act),
      pasted: (text) => {
        if (text.trim() !== '') this.putIn(text)
      },
    })
  }

  /** Adds the cells of a text: below the selection, else below the current cell, else at the end. */
  putIn(text: string): void {
    if (isTable(text))
      void import('./pasted-table.ts').then((read) => this.put(read.pastedTable(this.face.cells(), text)))
    else void fetchTexts().then((read) => this.put(read.pastedInto(this.face.cells(), text)))
  }

  private put(pasted: PasteResult): void {
    const cells = this.face.cells()
    if ('refused' in pasted) {
      this.say(pasted.refused)
      return
    }
    const current = this.face.current()
    const above = cells.findLastIndex(({ id }) => (this.ids.size > 0 ? this.ids.has(id) : id === current))
    const refused = this.face.ask({ do: 'insert', cells: pasted.cells, at: above < 0 ? cells.length : above + 1 })
    if (refused === undefined) {
      this.byHand = undefined
      this.picks = { ids: new Set(pasted.cells.map(({ id }) => id)) }
      const [first] = pasted.cells
      if (first) this.face.goTo(first.id)
    }
    this.say(refused ?? pasted.said)
  }

  private set(picks: Selection): void {
    this.picks = picks
    this.said = ''
    this.host.requestUpdate()
  }

  private toCopy(): readonly Cell[] {
    const current = this.face.current()
    const ids = this.ids.size > 0 ? this.ids : new Set(current === undefined ? [] : [current])
    return picked(this.face.cells(), { ids })
  }

  private act(act: ClipAct): void {
    if (act === 'copy' || act === 'cut' || act === 'lines') void this.copyByPress(act)
    else if (act === 'paste') void this.pasteByPress()
    else if (act === 'remove') this.removeAll(this.ids, 'removed')
    else if (act === 'all') this.all()
    else this.clear()
  }

  private async copyByPress(act: 'copy' | 'cut' | 'lines'): Promise<void> {
    const cells = this.toCopy()
    const { linesOf, textOf } = await fetchTexts()
    const text = act === 'lines' ? linesOf(cells) : textOf(cells, this.face.cells())
    try {
      await navigator.clipboard.writeText(text)
    } catch {
      // Cells that could not be copied must not be removed from the sheet.
      this.showField({ for: 'copy', text })
      return
    }
    if (act === 'cut') this.removeAll(new Set(cells.map(({ id }) => id)), 'cut')
    else this.say(saidOf(cells, 'copied'))
  }

  async pasteByPress(): Promise<void> {
    let text: string
    try {
      text = await navigator.clipboard.readText()
    } catch {
      this.showField({ for: 'paste', text: '' })
      return
    }
    this.putIn(text)
  }

  private showField(byHand: ByHand): void {
    this.byHand = byHand
    this.say('')
    void this.host.updateComplete.then(() => this.face.goToField())
  }

  private take(event: ClipboardEvent): readonly Cell[] {
    // Selected text on the page is copied instead, unless cells are selected.
    if (isField(event) || (this.ids.size === 0 && String(getSelection()) !== '')) return []
    const cells = this.toCopy()
    // The browser takes what is copied at once or not at all.
    if (cells.length === 0 || !texts) return []
    event.clipboardData?.setData('text/plain', texts.textOf(cells, this.face.cells()))
    event.preventDefault()
    return cells
  }

  private readonly copied = (event: ClipboardEvent): void => {
    const cells = this.take(event)
    if (cells.length > 0) this.say(saidOf(cells, 'copied'))
  }

  private readonly wasCut = (event: ClipboardEvent): void => {
    const cells = this.take(event)
    if (cells.length > 0) this.removeAll(new Set(cells.map(({ id }) => id)), 'cut')
  }

  private readonly pasted = (event: ClipboardEvent): void => {
    if (isField(event)) return
    event.preventDefault()
    this.putIn(event.clipboardData?.getData('text/plain') ?? '')
  }
}

/** Fields as a spreadsheet copies them: lines with tabs, the first of them among these. */
const isTable = (text: string): boolean => /^[^\n{[]*\t/.test(text) && /\n/.test(text.trim())
