import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import type { BuildCell, CellAct } from '../cells/build-cell.ts'
import '../cells/build-cell.ts'
import { ask } from '../cells/cell-view.ts'
import { shared } from '../cells/styles.ts'
import { ADDITIONS, type Addition, copyOf, kindBelow, newCell } from './new-cell.ts'
import type { OpenSheet } from './open-sheet.ts'

const WORDS: Readonly<Record<Addition, string>> = {
  given: 'A given',
  result: 'A result',
  check: 'A check',
  note: 'A note',
  section: 'A section',
  drawing: 'A drawing',
  steps: 'Steps',
  schedule: 'A schedule',
  range: 'A range',
  variants: 'Variants',
  run: 'A run',
}

const FIRST: readonly (readonly [Addition, string])[] = [
  ['given', 'something you know or measure: a size, a lens, a distance'],
  ['result', 'something worked out from it by a formula'],
  ['check', 'something the figures must meet, with what to say when they do not'],
]

/** The focused element, through every shadow root. */
function focused(): Element | null {
  let at = document.activeElement
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
  return at
}

/** The face a worksheet is built on: every cell with its name and formula. */
@customElement('build-face')
export class BuildFace extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      .cells {
        container-type: inline-size;
        padding-block-start: 0.8rem;
      }
      .add {
        padding-block: 1rem;
      }
      .first {
        display: grid;
        gap: 0.6rem;
        padding-block: 1.2rem 0;
        max-inline-size: 44rem;
      }
      .first .press {
        display: block;
        inline-size: 100%;
        padding: 0.8rem 1rem;
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  /** The cell that stands open, one at a time. */
  @state() private opened: string | undefined
  /** The cell below which a kind is being chosen. */
  @state() private adding: string | undefined

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('open')) void this.open.learnAll()
  }

  async show(id: string): Promise<void> {
    this.opened = id
    await this.updateComplete
    this.row(id)?.scrollIntoView({ block: 'center' })
    await this.row(id)?.updateComplete
    this.row(id)?.focus()
  }

  private row(id: string): BuildCell | null {
    return this.renderRoot.querySelector<BuildCell>(`build-cell[data-cell="${CSS.escape(id)}"]`)
  }

  private async add(kind: Addition, at: number): Promise<void> {
    const cell = newCell(kind, this.open.sheet.cells)
    if (ask(this, { do: 'add', cell, at }) !== undefined) return
    this.adding = undefined
    await this.focusNew(cell.id)
  }

  private async focusNew(id: string): Promise<void> {
    this.opened = id
    await this.updateComplete
    const row = this.row(id)
    row?.scrollIntoView({ block: 'nearest' })
    await row?.focusFirst()
  }

  private async move(id: string, by: number): Promise<void> {
    const held = focused()
    const from = this.index(id)
    const to = from + by
    if (to < 0 || to >= this.open.sheet.cells.length) return
    if (ask(this, { do: 'move', id, to }) !== undefined) return
    await this.updateComplete
    // Moving an element in the page takes the focus from it.
    if (held instanceof HTMLElement && held.isConnected) held.focus()
    this.row(id)?.scrollIntoView({ block: 'nearest' })
  }

  private async takeOut(id: string): Promise<void> {
    const cells = this.open.sheet.cells
    const at = this.index(id)
    const next = cells[at + 1] ?? cells[at - 1]
    if (ask(this, { do: 'remove', id }) !== undefined) return
    this.opened = undefined
    await this.updateComplete
    const row = next && this.row(next.id)
    if (row) {
      await row.updateComplete
      row.focus()
    } else this.renderRoot.querySelector<HTMLElement>('button')?.focus()
  }

  private index(id: string): number {
    return this.open.sheet.cells.findIndex((cell) => cell.id === id)
  }

  private act(id: string, act: CellAct): void {
    const cells = this.open.sheet.cells
    const at = this.index(id)
    const cell = cells[at]
    if (!cell) return
    if (act === 'toggle') {
      this.opened = this.opened === id ? undefined : id
      this.adding = undefined
    } else if (act === 'formula') void this.openFormula(id)
    else if (act === 'earlier') void this.move(id, -1)
    else if (act === 'later') void this.move(id, 1)
    else if (act === 'remove') void this.takeOut(id)
    else if (act === 'below') void this.choose(id)
    else {
      const copy = copyOf(cell, cells)
      if (ask(this, { do: 'add', cell: copy, at: at + 1 }) === undefined) void this.focusNew(copy.id)
    }
  }

  private async openFormula(id: string): Promise<void> {
    this.opened = id
    await this.updateComplete
    await this.row(id)?.focusFormula()
  }

  private async choose(id: string): Promise<void> {
    this.adding = id
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>('.chosen button')?.focus()
  }

  private keys(event: KeyboardEvent): void {
    const row = event.composedPath().find((one): one is BuildCell => (one as Element).localName === 'build-cell')
    const id = row?.dataset.cell
    if (!id) return
    const cell = this.open.sheet.cell(id)
    const plain = !event.altKey && !event.ctrlKey && !event.metaKey && !event.shiftKey
    const onRow = (event.composedPath()[0] as Element).classList?.contains('call')
    let act: (() => void) | undefined
    if (event.altKey && event.key === 'ArrowUp') act = () => void this.move(id, -1)
    else if (event.altKey && event.key === 'ArrowDown') act = () => void this.move(id, 1)
    else if (event.altKey && event.key === 'Enter' && cell)
      act = () => void this.add(kindBelow(cell), this.index(id) + 1)
    else if (event.altKey && event.key === 'Delete') act = () => void this.takeOut(id)
    else if (plain && onRow && event.key === 'ArrowDown') act = () => this.step(id, 1)
    else if (plain && onRow && event.key === 'ArrowUp') act = () => this.step(id, -1)
    else if (plain && event.key === 'Escape' && this.opened === id && !event.defaultPrevented)
      act = () => {
        this.opened = undefined
        row.focus()
      }
    if (!act) return
    event.preventDefault()
    event.stopPropagation()
    act()
  }

  private step(id: string, by: number): void {
    const next = this.open.sheet.cells[this.index(id) + by]
    if (next) this.row(next.id)?.focus()
  }

  private additions(at: number, className: string): TemplateResult {
    return html`
      <div class="presses add ${className}" role="group" aria-label="Add a cell">
        ${ADDITIONS.map(
          (kind) =>
            html`<button type="button" class="press" @click=${() => void this.add(kind, at)}><span class="unseen">Add </span>${WORDS[kind]}</button>`,
        )}
      </div>
    `
  }

  private first(): TemplateResult | typeof nothing {
    const cells = this.open.sheet.cells
    const left = FIRST.filter(([kind]) => !cells.some((cell) => cell.kind === kind))
    if (cells.length >= FIRST.length || left.length === 0) return nothing
    return html`
      <div class="first">
        <p>${cells.length === 0 ? 'This sheet is empty. Its first three cells:' : 'Next:'}</p>
        ${left.map(
          ([kind, about]) => html`
            <button type="button" class="press" @click=${() => void this.add(kind, cells.length)}>
              <b>${WORDS[kind]}</b>, ${about}
            </button>
          `,
        )}
      </div>
    `
  }

  override render(): TemplateResult {
    this.open.laidOut.get()
    const cells = this.open.sheet.cells
    return html`
      <div
        class="cells"
        @keydown=${this.keys}
        @cell-act=${(event: HTMLElementEventMap['cell-act']) => this.act(event.detail.id, event.detail.act)}
      >
        ${repeat(
          cells,
          (cell) => cell.id,
          (cell, i) => html`
            <build-cell
              data-cell=${cell.id}
              .view=${this.open.view(cell)}
              .scope=${() => this.open.sheet.scopeFor(cell.id)}
              .open=${this.opened === cell.id}
            ></build-cell>
            ${this.adding === cell.id ? this.additions(i + 1, 'chosen') : nothing}
          `,
        )}
      </div>
      ${this.first()} ${cells.length > 0 ? this.additions(cells.length, 'last') : nothing}
    `
  }
}
