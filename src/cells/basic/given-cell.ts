import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Given, Outcome, ValueOutcome } from '../../worksheet/index.ts'
import { type GivenView, labelOf, type ReadView, requestChange } from '../shared/cell-view.ts'
import type { Entry } from '../shared/entry-parts.ts'
import { errorMessage, errorMessageStyle } from '../shared/error-message.ts'
import { asOwn, originOf } from '../shared/given-origin.ts'
import { isTouch } from '../shared/is-touch.ts'
import { unitSuffix } from '../shared/unit-suffix.ts'
import { cellWords, ORIGIN_LABELS } from '../shared/words.ts'
import { field, isLong, row, shared, unseen } from '../style/styles.ts'
import { entryField, entryStyle } from './entry-field.ts'
import { basicWords } from './words.ts'

/** An entry with its own unit and more characters than this takes the place of the unit as well. */
const WIDE_ENTRY = 13
/** An option of more characters than this is cut beside a label: such a choice gets a line of its own. */
const LONG_OPTION = 19

const bare = (text: string, unit: string): string =>
  (unit === '' ? text : text.replaceAll(unit, '')).replaceAll(/[\s\u202f]+/g, '').replaceAll(/[x*]/g, '×')

/** Whether the typed text with the unit after the field already shows how it is understood. */
const asTyped = ({ value, unit }: Given, { readAs }: ValueOutcome): boolean =>
  bare(value, unitSuffix(unit)) === bare(readAs ?? '', unitSuffix(unit))

const endsInUnit = (text: string, unit: string): boolean =>
  unit !== '' && text.endsWith(unit) && !/\p{L}/u.test(text.charAt(text.length - unit.length - 1))

/** Fetched where a reading is older than a change of what it depends on, or a quantity cannot be read. */
function notes(cell: Given, outcome: Outcome, called: GivenView['called']): TemplateResult | typeof nothing {
  const before = outcome.state === 'value' && outcome.before
  if (!before && outcome.state !== 'error') return nothing
  void import('../details/given-notes.ts')
  return before
    ? html`<outdated-note class="below" .cell=${cell} .labels=${before.map(called)}></outdated-note>`
    : html`<size-offer .cell=${cell}></size-offer>`
}

/** A given in Fill in: its label, field, unit, and how its text is understood. */
@customElement('given-cell')
export class GivenCell extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    row,
    field,
    entryStyle,
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
      .origin {
        grid-column: -2 / -1;
        font-size: 0.8667rem;
        line-height: 1.23;
        color: var(--quiet);
      }
      /* Line types say where a value comes from, as in a technical drawing. */
      .example .field {
        border-style: dashed;
        background: transparent;
        color: var(--quiet);
      }
      .kit .field {
        border-color: var(--mark);
        border-inline-start: 4px solid var(--edge);
        padding-inline: 4px 6px;
        background: var(--mark);
      }
      .measured .field,
      .usual .field {
        border-color: transparent;
        background: transparent;
      }
      .measured .field {
        border-block-end: 4px double var(--ink);
        font-weight: 700;
      }
      .usual .field {
        border-block-end: 2px dotted var(--edge);
      }
      .row:focus-within:has(.half) #problem {
        display: none;
      }
      .hint {
        grid-column: 1 / -1;
        padding-block: 4px;
        color: var(--quiet);
      }
      /* Beside a step, whose text says what is read. */
      @container (max-width: 13rem) {
        .row {
          grid-template-columns: minmax(0, 1fr) minmax(34px, auto);
        }
        .what,
        .origin {
          ${unseen}
        }
      }
      /* By mouse, or keys alone, the hint is shown once under all givens; by touch under the focused row. */
      @media not (pointer: coarse) {
        .hint {
          ${unseen}
        }
        .use {
          display: none;
        }
      }
      @media (pointer: coarse) {
        /* The field keeps its place when the hint is shown under it. */
        .row:not(.listed, .long) {
          grid-template-rows: minmax(var(--row), auto);
        }
        .row:not(:focus-within, [data-held]) .hint {
          ${unseen}
        }
        .row:not(:focus-within, [data-held]) .use {
          display: none;
        }
      }
    `,
  ]

  @property({ attribute: false }) view!: ReadView<GivenView>

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('.entry')?.focus(options)
  }

  /** Takes the example's figure as typed, and goes on to the next. */
  use(): void {
    const { cell } = this.view.get()
    if (requestChange(this, { do: 'replace', cell: asOwn(cell) }) === undefined)
      this.dispatchEvent(new CustomEvent('example-used', { detail: cell.id, bubbles: true, composed: true }))
  }

  /** What is answered or typed like the example is the user’s own as well. */
  private put(cell: Given, value: string): void {
    const next = { ...cell, value }
    const isExample = originOf(next) === 'example'
    if (isExample || value !== cell.value)
      requestChange(this, { do: 'replace', cell: isExample ? asOwn(next) : next }, `value:${cell.id}`)
  }

  /** By touch, under the row in focus; by mouse the same is under all givens. */
  private useButton(text: string, label: string): TemplateResult {
    return html`<button
      type="button"
      class="word use"
      aria-label=${basicWords.useFor(text, label)}
      @pointerdown=${(event: Event) => event.preventDefault()}
      @click=${() => this.use()}
    >${basicWords.use(text)}</button>`
  }

  override render(): TemplateResult {
    const { cell, outcome, sheet, called } = this.view.get()
    const entry: Entry = cell.entry ?? 'quantity'
    const label = labelOf(cell)
    const origin = originOf(cell)
    const bad = outcome.state === 'error' && cell.value.trim() !== ''
    const found = outcome.state === 'value' ? outcome : undefined
    const readAs = found && !asTyped(cell, found) ? found.readAs : undefined
    const { offers = [], warnings = [] } = found ?? {}
    const typed = entry === 'quantity' || entry === 'size' || entry === 'list'
    const described = [cell.hint ? 'hint' : '', readAs ? 'read' : '', bad ? 'problem' : ''].filter(Boolean).join(' ')
    // Typed with its unit, a value needs none beside it.
    const suffix = unitSuffix(cell.unit)
    const unit = typed && !endsInUnit(cell.value.trim(), suffix) ? suffix : ''
    const isWide = typed && unit === '' && !isTouch && cell.value.length > WIDE_ENTRY
    const put = (value: string): void => this.put(cell, value)
    return html`
      <div
        class="row ${entry === 'list' || entry === 'text' || cell.options?.some((one) => one.length > LONG_OPTION) ? 'listed' : isLong(label) ? 'long' : ''} ${origin}"
        @keydown=${(event: KeyboardEvent) => {
          // Enter takes the example's figure as typing another does.
          if (event.key === 'Enter' && origin === 'example') this.use()
        }}
      >
        <div class="what">
          ${entry === 'yes or no' ? html`<span id="label">${label}</span>` : html`<label for="entry">${label}</label>`}
          ${readAs ? html`<span class="small" id="read">${cellWords.readAs(readAs, found?.by)}</span>` : nothing}
        </div>
        ${entryField({ entry, cell, sheet, label, bad, described, put, isWide })}
        ${typed && !isWide ? html`<span class="unit">${unit}</span>` : nothing}
        <span class="origin">${ORIGIN_LABELS[origin]}</span>
        ${cell.hint || origin === 'example' ? html`<span class="small hint"><span id="hint">${cell.hint}</span> ${origin === 'example' ? this.useButton(found?.shown.text ?? '', label) : nothing}</span>` : nothing}
        ${
          offers.length > 0
            ? html`<div class="below presses offers">
                ${offers.map(
                  (offer) =>
                    html`<button type="button" class="press" @click=${() => put(offer.text)}>${basicWords.readItAs(offer.text, offer.label)}</button>`,
                )}
              </div>`
            : nothing
        }
        ${bad ? html`<div class="below" id="problem">${errorMessage(cell.value, outcome.diagnostics, put)}</div>` : nothing}
        ${notes(cell, outcome, called)}
        ${warnings.length > 0 ? html`<div class="below">${errorMessage(cell.value, warnings, put)}</div>` : nothing}
      </div>
    `
  }
}
