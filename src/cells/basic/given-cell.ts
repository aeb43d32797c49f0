import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import type { Given, ValueOutcome } from '../../worksheet/index.ts'
import { type GivenView, labelOf, type ReadView, requestChange } from '../shared/cell-view.ts'
import { errorMessage, errorMessageStyle } from '../shared/error-message.ts'
import { signsShown, touchRow, touchRowStyle } from '../shared/touch-row.ts'
import { unitSuffix } from '../shared/unit-suffix.ts'
import { field, isLong, row, shared } from '../style/styles.ts'
import { type Entry, entryField, entryStyle } from './entry-field.ts'

const bare = (text: string, unit: string): string =>
  (unit === '' ? text : text.replaceAll(unit, '')).replaceAll(/[\s\u202f]+/g, '').replaceAll(/[x*]/g, '×')

/** What was typed, with the unit behind the field, already says how it is understood. */
const asTyped = ({ value, unit }: Given, { readAs }: ValueOutcome): boolean =>
  bare(value, unitSuffix(unit)) === bare(readAs ?? '', unitSuffix(unit))

/** A given on the fill-in face: its label, its field, its unit, and how what was typed is understood. */
@customElement('given-cell')
export class GivenCell extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    row,
    field,
    entryStyle,
    touchRowStyle,
    errorMessageStyle,
    css`
      .row {
        border-block-end: 0;
      }
      :host {
        border-block-end: 1px solid var(--rule);
      }
      .offers {
        justify-content: flex-end;
      }
    `,
  ]

  @property({ attribute: false }) view!: ReadView<GivenView>
  @state() private inHand = false
  @query('.entry') private entry!: HTMLInputElement | null

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('.entry')?.focus(options)
  }

  private put(cell: Given, value: string): void {
    requestChange(this, { do: 'replace', cell: { ...cell, value } }, `value:${cell.id}`)
  }

  override render(): TemplateResult {
    const { cell, outcome, sheet } = this.view.get()
    const entry: Entry = cell.entry ?? 'quantity'
    const label = labelOf(cell)
    const bad = outcome.state === 'error' && cell.value.trim() !== ''
    const readAs = outcome.state === 'value' && !asTyped(cell, outcome) ? outcome.readAs : undefined
    const offers = outcome.state === 'value' ? outcome.offers : []
    const warnings = outcome.state === 'value' ? outcome.warnings : []
    const typed = entry === 'quantity' || entry === 'size' || entry === 'list'
    const described = [cell.hint ? 'hint' : '', readAs ? 'read' : '', bad ? 'trouble' : ''].filter(Boolean).join(' ')
    const unit = typed ? unitSuffix(cell.unit) : ''
    const put = (value: string): void => this.put(cell, value)
    return html`
      <div
        class="row ${entry === 'list' ? 'listed' : isLong(label, cell.hint) ? 'long' : ''}"
        @focusin=${() => {
          this.inHand = true
        }}
        @focusout=${(event: FocusEvent) => {
          this.inHand = event.relatedTarget instanceof Node && this.renderRoot.contains(event.relatedTarget)
        }}
      >
        <div class="what">
          ${entry === 'yes or no' ? html`<span id="label">${label}</span>` : html`<label for="entry">${label}</label>`}
          ${cell.hint ? html`<span class="small" id="hint">${cell.hint}</span>` : nothing}
          ${readAs ? html`<span class="small" id="read">read as ${readAs}</span>` : nothing}
        </div>
        ${entryField({ entry, cell, sheet, label, bad, described, put })}
        ${typed ? html`<span class="unit">${unit}</span>` : nothing}
        ${
          typed && this.inHand && signsShown.get()
            ? html`<div class="below">${touchRow(() => this.entry)}</div>`
            : nothing
        }
        ${
          offers.length > 0
            ? html`<div class="below presses offers">
                ${offers.map(
                  (offer) =>
                    html`<button type="button" class="press" @click=${() => put(offer.text)}>Read as ${offer.text}, ${offer.label}</button>`,
                )}
              </div>`
            : nothing
        }
        ${bad ? html`<div class="below" id="trouble">${errorMessage(cell.value, outcome.diagnostics, put)}</div>` : nothing}
        ${warnings.length > 0 ? html`<div class="below">${errorMessage(cell.value, warnings, put)}</div>` : nothing}
      </div>
    `
  }
}
