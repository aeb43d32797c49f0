import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { type BuildCell, type CellAct, fetchForms } from '../../cells/forms/build-cell.ts'
import { labelOf, requestChange } from '../../cells/shared/cell-view.ts'
import { focused } from '../../cells/shared/focus.ts'
import { field, shared } from '../../cells/style/styles.ts'
import { written } from '../../cells/style/written.ts'
import { type Cell, type Change, isHeading, movedBy, movedInto } from '../../worksheet/index.ts'
import { type Addition, copyOf, kindBelow } from '../common/additions.ts'
import { foundStyle, markFound } from '../open/find-mark.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { additions, firstCells } from './additions.ts'
import { RowDrag } from './build-drag.ts'
import { additionOf, type BuildKey, buildKey } from './build-keys.ts'
import { buildStyle } from './build-style.ts'
import { clipBarStyle } from './clip-bar.ts'
import { Clipboard, fetchTexts } from './clipboard.ts'
import { RowGroups } from './row-groups.ts'
import { buildWords as words } from './words.ts'

/** The face to build a worksheet on: every cell with its name and formula. */
@customElement('build-face')
export class BuildFace extends SignalWatcher(LitElement) {
  static override styles = [shared, field, written, clipBarStyle, foundStyle, buildStyle]

  @property({ attribute: false }) open!: OpenSheet
  /** The open cell, one at a time. */
  @state() private opened: string | undefined
  /** Whether the full language is here, or could not be fetched. */
  @state() private isLoaded = false
  private loaded: Promise<void> | undefined
  /** The new place of a moved cell, announced to screen readers. */
  @state() private spoken = ''
  /** The cell below which a kind is being chosen. */
  @state() private adding: string | undefined
  /** The cell below which cells are typed as lines; without one, at the end. */
  @state() private typingBelow: string | undefined

  private readonly clipboard = new Clipboard(this, {
    cells: () => this.open.sheet.cells,
    current: () => this.current(),
    ask: (change) => requestChange(this, change),
    goTo: (id) => void this.goTo(id),
    goToField: () => this.renderRoot.querySelector<HTMLTextAreaElement>('.by-hand textarea')?.select(),
  })
  private readonly groups = new RowGroups(this)
  private readonly drag = new RowDrag({
    rows: () => [...this.renderRoot.querySelectorAll<HTMLElement>('build-cell')],
    line: () => this.renderRoot.querySelector<HTMLElement>('.drop'),
    drop: (ids, gap) => void this.put(ids, this.placeOf(gap)),
  })

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('open')) void this.load()
  }

  /** A cell opens once names can be changed and formulas written: what is typed before that would be refused. */
  private async load(): Promise<void> {
    const { open } = this
    this.isLoaded = false
    // The first rows are painted before.
    this.loaded = this.updateComplete
      .then(() => new Promise((settle) => setTimeout(settle)))
      .then(async () => {
        const tools = [fetchForms(), fetchTexts(), import('./line-entry.ts'), import('../common/new-cell.ts')]
        await Promise.allSettled([open.loadAllFunctions(), ...tools])
      })
    await this.loaded
    if (open === this.open) this.isLoaded = true
  }

  override firstUpdated(): void {
    // It is below everything else, and waits until the sheet has been shown.
    void import('../compose/join-offer.ts')
  }

  override connectedCallback(): void {
    super.connectedCallback()
    this.addEventListener('keydown', this.keys)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.removeEventListener('keydown', this.keys)
    this.drag.cancel()
  }

  /** Opens a cell and moves the focus to it, or only marks it as found. */
  async show(id: string, how: 'focus' | 'found' = 'focus'): Promise<void> {
    // Before its first update the face does not have the sheet yet.
    await this.updateComplete
    if (how === 'focus') this.opened = id
    this.groups.reach(this.index(id))
    await this.updateComplete
    const row = this.row(id)
    row?.scrollIntoView({ block: 'center' })
    if (how === 'found') markFound(this.renderRoot, row ?? undefined)
    else {
      await row?.updateComplete
      row?.focus()
    }
  }

  private async goTo(id: string): Promise<void> {
    this.groups.reach(this.index(id))
    await this.updateComplete
    const row = this.row(id)
    await row?.updateComplete
    row?.scrollIntoView({ block: 'nearest' })
    row?.focus()
  }

  /** The cell whose row has the focus, or else the open cell. */
  private current(): string | undefined {
    const row = this.shadowRoot?.activeElement
    return row instanceof HTMLElement && row.localName === 'build-cell' ? row.dataset.cell : this.opened
  }

  private row(id: string): BuildCell | null {
    return this.renderRoot.querySelector<BuildCell>(`build-cell[data-cell="${CSS.escape(id)}"]`)
  }

  private async add(kind: Addition, at: number): Promise<void> {
    const { newCell } = await import('../common/new-cell.ts')
    const cell = newCell(kind, this.open.sheet.cells)
    if (requestChange(this, { do: 'add', cell, at }) !== undefined) return
    this.adding = undefined
    await this.focusNew(cell.id)
  }

  /** Moves the focus to the field for cells typed as lines: below a cell, else at the end. */
  async typeBelow(id: string | undefined): Promise<void> {
    this.typingBelow = id === this.open.sheet.cells.at(-1)?.id ? undefined : id
    await this.loaded
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>('line-entry')?.focus()
  }

  private async focusNew(id: string): Promise<void> {
    this.opened = id
    await this.loaded
    await this.updateComplete
    const row = this.row(id)
    row?.scrollIntoView({ block: 'nearest' })
    await row?.focusFirst()
  }

  private async move(id: string, by: -1 | 1): Promise<void> {
    const change = movedBy(this.open.sheet.cells, this.clipboard.with(id), by)
    if (change) await this.moved(id, change)
  }

  /** Moves dragged cells into the gap before a place of the list. */
  private async put(ids: ReadonlySet<string>, gap: number): Promise<void> {
    const [id] = ids
    const change = movedInto(this.open.sheet.cells, ids, gap)
    if (id !== undefined && change) await this.moved(id, change)
  }

  private async moved(id: string, change: Change): Promise<void> {
    const held = focused()
    const refused = requestChange(this, change)
    await this.updateComplete
    // Moving an element in the page removes its focus.
    if (held instanceof HTMLElement && held.isConnected) held.focus()
    this.row(id)?.scrollIntoView({ block: 'nearest' })
    const { cells } = this.open.sheet
    const at = this.index(id)
    const above = cells[at - 1]
    const label = labelOf(cells[at] as Cell)
    this.spoken = refused ?? words.moved(label, at + 1, cells.length, above ? labelOf(above) : '')
  }

  private async moveSection(id: string, by: -1 | 1): Promise<void> {
    const held = focused()
    const { sectionMoved } = await import('./move-section.ts')
    const change = sectionMoved(this.open.sheet.cells, id, by)
    if (!change || requestChange(this, change) !== undefined) return
    await this.updateComplete
    if (held instanceof HTMLElement && held.isConnected) held.focus()
    this.row(id)?.scrollIntoView({ block: 'nearest' })
  }

  private async removeCell(id: string): Promise<void> {
    const cells = this.open.sheet.cells
    const at = this.index(id)
    const next = cells[at + 1] ?? cells[at - 1]
    const label = labelOf(cells[at] as Cell)
    if (requestChange(this, { do: 'remove', id }) !== undefined) return
    this.opened = undefined
    this.spoken = words.cellRemoved(label)
    await this.updateComplete
    const row = next && this.row(next.id)
    if (row) {
      await row.updateComplete
      row.focus()
    } else this.renderRoot.querySelector<HTMLElement>('button')?.focus()
  }

  /** The place in the sheet of a gap between the rows that are drawn. */
  private placeOf(gap: number): number {
    const rows = [...this.renderRoot.querySelectorAll<HTMLElement>('build-cell')]
    const [next, last] = [rows[gap], rows.at(-1)]
    return next ? this.index(next.dataset.cell ?? '') : last ? this.index(last.dataset.cell ?? '') + 1 : 0
  }

  private index(id: string): number {
    return this.open.sheet.cells.findIndex((cell) => cell.id === id)
  }

  private act(id: string, act: CellAct): void {
    const cells = this.open.sheet.cells
    const at = this.index(id)
    const cell = cells[at]
    if (!cell) return
    if (act === 'pick') {
      if (!this.drag.endedNow) this.clipboard.toggle(id)
    } else if (act === 'toggle') {
      this.opened = this.opened === id ? undefined : id
      this.adding = undefined
    } else if (act === 'formula') void this.openFormula(id)
    else if (act === 'up') void this.move(id, -1)
    else if (act === 'down') void this.move(id, 1)
    else if (act === 'section up') void this.moveSection(id, -1)
    else if (act === 'section down') void this.moveSection(id, 1)
    else if (act === 'remove') void this.removeCell(id)
    else if (act === 'below') void this.choose(id)
    else {
      const copy = copyOf(cell, cells)
      if (requestChange(this, { do: 'add', cell: copy, at: at + 1 }) === undefined) void this.focusNew(copy.id)
    }
  }

  /** The heading of the section of a cell; the cell itself where it is in no section. */
  private headed(id: string): string {
    const above = this.open.sheet.cells.slice(0, this.index(id) + 1)
    return above.findLast(isHeading)?.id ?? id
  }

  private async openFormula(id: string): Promise<void> {
    this.opened = id
    await this.loaded
    await this.updateComplete
    await this.row(id)?.focusFormula()
  }

  private async choose(id: string): Promise<void> {
    this.adding = id
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>('.chosen button')?.focus()
  }

  private readonly keys = (event: KeyboardEvent): void => {
    const key = buildKey(event)
    if (!key) return
    const row = event.composedPath().find((one): one is BuildCell => (one as Element).localName === 'build-cell')
    const id = row?.dataset.cell
    if (id === undefined ? !this.keyWithoutRow(key) : !this.keyOnRow(key, id)) return
    event.preventDefault()
    event.stopPropagation()
  }

  private keyWithoutRow(key: BuildKey): boolean {
    const { length } = this.open.sheet.cells
    const adds = additionOf(key)
    if (key === 'type a line') void this.typeBelow(undefined)
    else if (key === 'add below' || adds) void this.add(adds ?? 'given', length)
    else if (key === 'clear selection') this.clipboard.clear()
    else return false
    return true
  }

  private keyOnRow(key: BuildKey, id: string): boolean {
    const cell = this.open.sheet.cell(id)
    if (!cell) return false
    const adds = additionOf(key)
    if (adds) {
      void this.add(adds, this.index(id) + 1)
      return true
    }
    const acts: Readonly<Record<string, () => void>> = {
      'open or close': () => void this.openOrClose(id),
      'add below': () => void this.add(kindBelow(cell), this.index(id) + 1),
      'choose below': () => void this.choose(id),
      'type a line': () => void this.typeBelow(id),
      remove: () =>
        this.clipboard.ids.has(id) ? this.clipboard.removeAll(this.clipboard.ids, 'removed') : void this.removeCell(id),
      'move up': () => void this.move(id, -1),
      'move down': () => void this.move(id, 1),
      'move section up': () => void this.moveSection(this.headed(id), -1),
      'move section down': () => void this.moveSection(this.headed(id), 1),
      'select up': () => this.extend(id, -1),
      'select down': () => this.extend(id, 1),
      'select all': () => this.clipboard.all(),
      'clear selection': () => this.clipboard.clear(),
      'go up': () => this.step(id, -1),
      'go down': () => this.step(id, 1),
      'go first': () => this.step(id, -this.index(id)),
      'go last': () => this.step(id, this.open.sheet.cells.length - 1 - this.index(id)),
    }
    acts[key]?.()
    return true
  }

  private async openOrClose(id: string): Promise<void> {
    this.adding = undefined
    if (this.opened === id) {
      this.opened = undefined
      await this.updateComplete
      this.row(id)?.focus()
    } else await this.focusNew(id)
  }

  /** Extends the selection to the next row and moves the focus there. */
  private extend(id: string, by: -1 | 1): void {
    const next = this.open.sheet.cells[this.index(id) + by]
    if (!next) return
    this.clipboard.upTo(id, next.id)
    this.row(next.id)?.focus()
  }

  private step(id: string, by: number): void {
    const next = this.open.sheet.cells[this.index(id) + by]
    if (next) void this.goTo(next.id)
  }

  private rows(cells: readonly Cell[]): unknown {
    return repeat(
      cells,
      (cell) => cell.id,
      (cell) => html`
        <build-cell
          data-cell=${cell.id}
          data-section=${isHeading(cell) ? cell.id : nothing}
          .view=${this.open.view(cell)}
          .scope=${() => this.open.sheet.scopeFor(cell.id)}
          .open=${this.isLoaded && this.opened === cell.id}
          .picked=${this.clipboard.ids.has(cell.id)}
          .picking=${this.clipboard.ids.size > 0}
        ></build-cell>
        ${this.adding === cell.id ? additions('chosen', (kind) => void this.add(kind, this.index(cell.id) + 1)) : nothing}
        ${this.typingBelow === cell.id ? this.entry(cell.id) : nothing}
      `,
    )
  }

  private entry(last: string): TemplateResult {
    return html`<line-entry
      .open=${this.open}
      .below=${this.typingBelow}
      @entry-added=${({ detail }: CustomEvent<string>) => this.typingBelow !== undefined && void this.typeBelow(detail)}
      @entry-left=${() => {
        this.typingBelow = undefined
        void this.goTo(last)
      }}
    ></line-entry>`
  }

  override render(): TemplateResult {
    this.open.laidOut.get()
    const cells = this.open.sheet.cells
    const addLast = (kind: Addition): void => void this.add(kind, cells.length)
    return html`
      <p class="how small quiet">
        ${cells.length > 0 ? html`<span>${words.howToMove}</span> <span>${words.howToAdd}</span>` : nothing}
        <button type="button" class="word" @click=${() => void this.clipboard.pasteByPress()}>${words.pasteCells}</button>
      </p>
      <div
        class="cells"
        @cell-gripped=${({ detail }: HTMLElementEventMap['cell-gripped']) =>
          this.drag.take(detail.event, detail.grip, this.clipboard.with(detail.id))}
        @cell-act=${(event: HTMLElementEventMap['cell-act']) => this.act(event.detail.id, event.detail.act)}
      >
        ${repeat(
          this.groups.of(cells),
          ({ number }) => number,
          ({ number, cells, isDrawn }) => html`
            <div data-group=${number} .style=${isDrawn ? '' : `block-size: calc(${cells.length} * (var(--row) + 1px))`}>
              ${isDrawn ? this.rows(cells) : nothing}
            </div>
          `,
        )}
        <div class="drop" hidden></div>
      </div>
      <p class="unseen" role="status">${this.spoken}</p>
      ${this.clipboard.bar()} ${firstCells(cells, addLast)} ${this.typingBelow === undefined ? this.entry(cells.at(-1)?.id ?? '') : nothing} ${cells.length > 0 ? additions('last', addLast) : nothing}
      <join-offer .open=${this.open} @section-set=${(event: CustomEvent<string>) => void this.show(event.detail)}></join-offer>
    `
  }
}
