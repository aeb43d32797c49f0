import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query } from 'lit/decorators.js'
import type { Scope } from '../../language/index.ts'
import { type Cell, isHeading } from '../../worksheet/index.ts'
import { labelledStyle } from '../fields/labelled.ts'
import { openedWords } from '../opened/words.ts'
import { type CellSignal, requestChange } from '../shared/cell-view.ts'
import { field, fold, row, shared } from '../style/styles.ts'
import { buildRow, buildRowStyle } from './build-row.ts'
import { formWords } from './words.ts'

/** The actions on a whole cell. */
export type CellAct =
  | 'toggle'
  | 'formula'
  | 'up'
  | 'down'
  | 'section up'
  | 'section down'
  | 'duplicate'
  | 'remove'
  | 'below'
  | 'pick'

declare global {
  interface HTMLElementEventMap {
    'cell-act': CustomEvent<{ readonly id: string; readonly act: CellAct }>
    /** The grip of a row is pressed; the row is dragged if the pointer moves. */
    'cell-gripped': CustomEvent<{ readonly id: string; readonly grip: HTMLElement; readonly event: PointerEvent }>
  }
}

const ACTS: readonly (readonly [CellAct, string])[] = [
  ['below', openedWords.add],
  ['duplicate', formWords.duplicate],
  ['up', openedWords.up],
  ['down', openedWords.down],
  ['remove', openedWords.remove],
]

/** The actions on a heading with its whole section. */
const SECTION_ACTS: typeof ACTS = [
  ['section up', formWords.sectionUp],
  ['section down', formWords.sectionDown],
]

let forms: typeof import('./cell-form.ts') | undefined

/** Fetches the forms of open cells, which the rows are shown without. */
export const fetchForms = async (): Promise<void> => {
  forms ??= await import('./cell-form.ts')
}

/** A cell in Build: closed, a row with its name and formula; open, the form with all its fields. */
@customElement('build-cell')
export class BuildCell extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    row,
    field,
    fold,
    labelledStyle,
    buildRowStyle,
    css`
      :host {
        border-block-end: 1px solid var(--rule);
        scroll-margin-block: 5rem;
      }
      .open {
        margin: 4px -16px 8px;
        padding: 0 14px;
        border: 2px solid var(--ink);
        border-radius: 4px;
      }
      .picked {
        background: var(--mark);
      }
      .form {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 1fr) 7rem;
        gap: 0.7rem 0.9rem;
        align-items: start;
        padding-block: 0.3rem 0.2rem;
      }
      /* Only beside a label is there a field for a unit, which is short. */
      .form:has(> wide-form) {
        grid-template-columns: repeat(3, minmax(0, 1fr));
      }
      .form > .all {
        grid-column: 1 / -1;
      }
      .ticks {
        display: flex;
        flex-wrap: wrap;
        column-gap: 24px;
      }
      .now {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 16px;
        margin-block-start: -6px;
      }
      .now code {
        padding-inline-end: 4px;
        font-family: var(--mono);
        color: var(--quiet);
      }
      .form > drawing-cell {
        max-inline-size: 27rem;
      }
      .words {
        padding-block: 0.2rem 0.4rem;
      }
      @container (max-width: 34rem) {
        .form,
        .form:has(> wide-form) {
          grid-template-columns: minmax(0, 1fr);
        }
        .open {
          /* Never past the page, also with large text. */
          margin-inline: max(-0.6rem, -10px);
          padding-inline: 8px;
        }
      }
    `,
  ]

  @property({ attribute: false }) view!: CellSignal
  @property({ attribute: false }) scope!: () => Scope
  @property({ type: Boolean }) open = false
  @property({ type: Boolean }) picked = false
  /** True while any cell is selected, so that each row shows whether it is. */
  @property({ type: Boolean }) picking = false
  @query('.call') private call!: HTMLElement
  /** The options that were set when the cell was opened, so that no field moves while it is typed into. */
  private options: ReadonlySet<string> = new Set()

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('open') || !this.open) return
    const entries = Object.entries(this.view.get().cell)
    this.options = new Set(entries.flatMap(([option, value]) => (value === '' ? [] : [option])))
  }

  /** Focuses the row itself, when a field is left. */
  override focus(): void {
    this.call?.focus()
  }

  /** Focuses the first field of a new cell. */
  async focusFirst(): Promise<void> {
    await this.updateComplete
    const wide = this.renderRoot.querySelector<LitElement>('wide-form')
    await wide?.updateComplete
    const first = (wide ?? this).renderRoot.querySelector<HTMLElement>('.first input, .first textarea')
    first?.focus()
    if (first instanceof HTMLInputElement) first.select()
  }

  async focusFormula(): Promise<void> {
    await this.updateComplete
    const formula = this.renderRoot.querySelector<HTMLElement>('.formula')
    if (formula) formula.focus()
    else await this.focusFirst()
  }

  private act(act: CellAct): void {
    const { id } = this.view.get().cell
    this.dispatchEvent(new CustomEvent('cell-act', { detail: { id, act }, bubbles: true, composed: true }))
  }

  private grip(event: PointerEvent): void {
    const { id } = this.view.get().cell
    const grip = event.currentTarget as HTMLElement
    this.dispatchEvent(new CustomEvent('cell-gripped', { detail: { id, grip, event }, bubbles: true, composed: true }))
  }

  private put(cell: Cell, key: string): void {
    requestChange(this, { do: 'replace', cell }, key)
  }

  private rename(name: string): string | undefined {
    const { cell } = this.view.get()
    return requestChange(this, { do: 'rename', id: cell.id, name })
  }

  override render(): TemplateResult {
    const view = this.view.get()
    return html`
      <div class="${this.open ? 'open' : ''} ${this.picked ? 'picked' : ''}">
        ${buildRow(view, this, {
          toggle: () => this.act('toggle'),
          formula: () => this.act('formula'),
          pick: () => this.act('pick'),
          grip: (event) => this.grip(event),
        })}
        ${
          this.open && forms
            ? html`
                <div class="form" @formula-left=${() => this.focus()}>
                  ${forms.cellForm({
                    view,
                    signal: this.view,
                    scope: this.scope,
                    put: (cell, key) => this.put(cell, key),
                    rename: (name) => this.rename(name),
                    labelled: () => forms?.followLabel(this.view.get().cell, (name) => this.rename(name)),
                    shows: (option) => this.options.has(option),
                  })}
                </div>
                <div class="words">
                  ${(isHeading(view.cell) ? [...ACTS, ...SECTION_ACTS] : ACTS).map(([act, word]) => html`<button type="button" class="word" @click=${() => this.act(act)}>${word}</button>`)}
                </div>
              `
            : nothing
        }
      </div>
    `
  }
}
