import { css, html, nothing, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'
import { written } from '../style/written.ts'

export const labelledStyle = css`
  ${written}
  .labelled {
    display: block;
    min-inline-size: 0;
  }
  /* Clear of the ring of its field. */
  .labelled > .small {
    display: block;
    padding-block-end: 3px;
  }
  .tick {
    display: flex;
    align-items: center;
    gap: 0.6rem;
    min-block-size: 44px;
    cursor: pointer;
  }
  .tick input {
    flex: none;
    inline-size: 1.25rem;
    block-size: 1.25rem;
    margin: 0;
    accent-color: var(--ink);
  }
`

interface Labelled {
  readonly label: string
  readonly value: string
  readonly put: (value: string) => void
  readonly hint?: string
  /** The value that applies while the field is empty. */
  readonly placeholder?: string
  readonly className?: string
  /** A field of several lines: a paragraph, or a sentence that may grow. */
  readonly lines?: 'many' | 'few'
  /** The error of its text. */
  readonly wrong?: string | undefined
}

/** A text field below a small label. */
export function labelled({
  label,
  value,
  put,
  hint,
  placeholder = '',
  className = '',
  lines,
  wrong,
}: Labelled): TemplateResult {
  const typed = (event: Event): void => put((event.target as HTMLInputElement).value)
  return html`
    <label class="labelled ${className}">
      <span class="small quiet">${label}${hint ? html` <span>(${hint})</span>` : nothing}</span>
      ${
        lines
          ? html`<textarea class="field ${lines === 'few' ? 'short' : ''}" rows="1" .value=${live(value)} @input=${typed}></textarea>`
          : html`<input class="field" type="text" autocomplete="off" placeholder=${placeholder} aria-invalid=${wrong !== undefined} .value=${live(value)} @input=${typed}>`
      }
      ${wrong ? html`<span class="small">${wrong}</span>` : nothing}
    </label>
  `
}

interface Select {
  readonly label: string
  readonly value: string
  readonly options: readonly (readonly [value: string, shown: string])[]
  readonly put: (value: string) => void
  readonly className?: string
}

/** A list to choose from, under its label. */
export const selected = ({ label, value, options, put, className = '' }: Select): TemplateResult => html`
  <label class="labelled ${className}">
    <span class="small quiet">${label}</span>
    <select
      class="field"
      @change=${(event: Event) => put((event.target as HTMLSelectElement).value)}
    >
      ${options.map(([one, shown]) => html`<option value=${one} .selected=${live(one === value)}>${shown}</option>`)}
    </select>
  </label>
`

/**
 * A list from which one is added after another. By key every letter and arrow already changes the choice of a closed list,
 * so that what is chosen by key is added by Enter, or as the list is left.
 */
export function adding({ label, options, put, className = '' }: Omit<Select, 'value'>): TemplateResult {
  const add = (list: HTMLSelectElement): void => {
    const { value } = list
    list.value = ''
    list.dataset.by = ''
    if (value !== '') put(value)
  }
  return html`
    <label class="labelled ${className}">
      <span class="small quiet">${label}</span>
      <select
        class="field"
        .value=${live('')}
        @pointerdown=${({ currentTarget }: Event) => {
          ;(currentTarget as HTMLSelectElement).dataset.by = ''
        }}
        @keydown=${({ key, currentTarget }: KeyboardEvent) => {
          const list = currentTarget as HTMLSelectElement
          if (key === 'Enter') add(list)
          else list.dataset.by = 'key'
        }}
        @change=${({ currentTarget }: Event) => {
          const list = currentTarget as HTMLSelectElement
          if (list.dataset.by !== 'key') add(list)
        }}
        @blur=${({ currentTarget }: Event) => add(currentTarget as HTMLSelectElement)}
      >
        ${options.map(([one, shown]) => html`<option value=${one}>${shown}</option>`)}
      </select>
    </label>
  `
}

/** A tick box beside its label. */
export const ticked = (label: string, on: boolean, put: (on: boolean) => void): TemplateResult => html`
  <label class="tick">
    <input
      type="checkbox"
      .checked=${live(on)}
      @change=${(event: Event) => put((event.target as HTMLInputElement).checked)}
    >
    <span>${label}</span>
  </label>
`
