import { signal } from '@lit-labs/signals'
import { css, html, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'
import type { EntryParts } from '../shared/entry-parts.ts'
import { isTouch } from '../shared/is-touch.ts'
import { basicWords } from './words.ts'

export const entryStyle = css`
  .entry[inputmode] {
    font-size: var(--entry-size, 1.1333rem);
    letter-spacing: -0.005em;
    font-variant-numeric: tabular-nums;
    text-align: end;
  }
  .entry.long {
    font-size: 0.9333rem;
  }
  .wide {
    grid-column: 2 / 4;
  }
  /* As wide as its place: what it holds, or the longest option, takes nothing from the label. */
  .field.wide {
    inline-size: 0;
    min-inline-size: 100%;
  }
  .pair,
  .prefixed {
    display: flex;
    gap: 3px;
    align-items: center;
    min-inline-size: 0;
  }
  .pair .field {
    padding-inline: 3px;
  }
  .pair .full {
    padding-inline: 0;
  }
  .yes-no {
    display: grid;
    grid-template-columns: 1fr 1fr;
    inline-size: 122px;
    margin: 0;
    padding: 0;
    overflow: hidden;
    border: 1px solid var(--ink);
    border-radius: 4px;
  }
  .yes-no label {
    display: grid;
    place-items: center;
    min-block-size: calc(var(--field) - 2px);
    background: var(--well);
    cursor: pointer;
  }
  .yes-no label + label {
    border-inline-start: 1px solid var(--ink);
  }
  .yes-no label:has(:checked) {
    background: var(--ink);
    color: var(--on-ink);
    font-weight: 700;
  }
  .yes-no:has(:focus-visible) {
    outline: 2px solid var(--ring);
    outline-offset: 1px;
  }
  .yes-no input {
    position: absolute;
    opacity: 0;
    pointer-events: none;
  }
`

/** More characters than this are smaller. */
const LONG_ENTRY = 11

const typedIn = (event: Event): string => (event.target as HTMLInputElement).value

function yesNo({ cell, put }: EntryParts): TemplateResult {
  return html`
    <fieldset class="wide yes-no" aria-labelledby="label">
      ${['yes', 'no'].map(
        (answer, i) => html`
          <label>
            <input
              type="radio"
              name="entry"
              class=${i === 0 ? 'entry' : ''}
              .checked=${live(cell.value.trim() === answer)}
              @click=${() => put(answer)}
            >
            ${answer === 'yes' ? basicWords.yes : basicWords.no}
          </label>
        `,
      )}
    </fieldset>
  `
}

function choice({ cell, described, bad, put }: EntryParts): TemplateResult {
  const options = cell.options ?? []
  const stray = options.includes(cell.value) ? [] : [cell.value]
  return html`
    <select
      id="entry"
      class="field entry wide"
      aria-describedby=${described}
      aria-invalid=${bad}
      @change=${(event: Event) => put(typedIn(event))}
      @click=${(event: MouseEvent) => {
        // Choosing in the open list the option there is already changes nothing: it clicks, which no button of the mouse does.
        if (event.detail === 0) put(typedIn(event))
      }}
    >
      ${[...stray, ...options].map(
        (option) => html`<option value=${option} .selected=${live(option === cell.value)}>${option || '—'}</option>`,
      )}
    </select>
  `
}

/** The field for a piece of kit, loaded when a sheet first has one. */
function kit({ cell, label, sheet }: EntryParts): TemplateResult {
  void import('../kit/kit-field.ts')
  return html`<kit-field id="entry" class="entry wide" .cell=${cell} .sheet=${sheet} .label=${label}></kit-field>`
}

/** The fields of a touch screen, fetched only there. */
const touchField = signal<((parts: EntryParts) => TemplateResult | undefined) | undefined>(undefined)
if (isTouch) void import('../touch/touch-fields.ts').then((fields) => touchField.set(fields.touchField))

/** The field a given is filled in with, by its kind of entry. */
export function entryField(parts: EntryParts): TemplateResult {
  const { entry, cell, described, bad, put, isWide } = parts
  const touch = touchField.get()?.(parts)
  if (touch) return touch
  if (entry === 'yes or no') return yesNo(parts)
  if (entry === 'choice') return choice(parts)
  if (entry === 'kit') return kit(parts)
  if (entry === 'date' || entry === 'text')
    return html`
      <input
        id="entry"
        class="field entry wide"
        type=${entry}
        autocomplete="off"
        aria-describedby=${described}
        aria-invalid=${bad}
        .value=${live(cell.value)}
        @input=${(event: Event) => put(typedIn(event))}
      >
    `
  return html`
    <input
      id="entry"
      class="field entry ${cell.value.length > LONG_ENTRY ? 'long' : ''} ${isWide ? 'wide' : ''}"
      type="text"
      inputmode="text"
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      aria-describedby=${described}
      aria-invalid=${bad}
      .value=${live(cell.value)}
      @input=${(event: Event) => put(typedIn(event))}
    >
  `
}
