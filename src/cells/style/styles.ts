import { css } from 'lit'

/** What every element of the sheet shares: the box, the ring of the focus, and words that are pressed. */
export const shared = css`
  :host {
    display: block;
  }
  :host([hidden]) {
    display: none;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :focus {
    outline: none;
  }
  :focus-visible {
    outline: 3px solid var(--ring);
    outline-offset: 2px;
  }
  h1,
  h2,
  h3,
  p,
  dl,
  dd,
  figure {
    margin: 0;
  }
  button,
  input,
  select,
  textarea {
    font: inherit;
    color: inherit;
  }
  .unseen {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .quiet {
    color: var(--quiet);
  }
  .small {
    font-size: 0.86rem;
    line-height: 1.35;
  }
  .word {
    display: inline-flex;
    align-items: center;
    min-block-size: 44px;
    min-inline-size: 44px;
    padding: 0;
    border: 0;
    background: none;
    cursor: pointer;
    color: var(--ink);
    text-align: start;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.28em;
  }
  .word:hover {
    text-decoration-thickness: 2px;
  }
  .word:disabled,
  .word[aria-disabled='true'] {
    color: var(--quiet);
    text-decoration: none;
    cursor: default;
  }
  .word[aria-pressed='true'],
  .word[aria-current],
  .word[aria-expanded='true'] {
    font-weight: 700;
    text-decoration-thickness: 3px;
  }
  .press {
    display: inline-flex;
    align-items: center;
    min-block-size: 44px;
    min-inline-size: 44px;
    padding: 0.35rem 0.85rem;
    border: 1px solid var(--edge);
    border-radius: 0;
    background: none;
    cursor: pointer;
    text-align: start;
  }
  .press:hover {
    background: var(--mark);
  }
  .words {
    display: flex;
    flex-wrap: wrap;
    column-gap: 1.1rem;
  }
  .presses {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem;
  }
  @media (forced-colors: active) {
    :focus-visible {
      outline-color: Highlight;
    }
  }
`

/** The line that unfolds what is folded away, underlined as all that is pressed. */
export const fold = css`
  summary {
    display: flex;
    align-items: center;
    min-block-size: 44px;
    inline-size: fit-content;
    cursor: pointer;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.28em;
    list-style: none;
  }
  summary::-webkit-details-marker {
    display: none;
  }
`

/** A ruled row: what it is, the figure on the right, its unit behind. */
export const row = css`
  .row {
    display: grid;
    grid-template-columns: minmax(0, 1fr) var(--figure, 11rem) var(--unit, 3.4rem);
    column-gap: 0.7rem;
    align-items: center;
    min-block-size: 2.9rem;
    padding-block: 4px;
    border-block-end: 1px solid var(--rule);
  }
  .what {
    min-inline-size: 0;
    line-height: 1.25;
    text-wrap: pretty;
    overflow-wrap: break-word;
  }
  .what .small {
    display: block;
    color: var(--quiet);
  }
  .figure {
    font-size: 1.2rem;
    line-height: 1.2;
    font-variant-numeric: tabular-nums;
    text-align: end;
    /* As far in as the text of a field, so that all figures stand on one line. */
    padding-inline-end: calc(0.6rem + 1px);
  }
  .unit {
    color: var(--quiet);
    overflow-wrap: anywhere;
  }
  .below {
    grid-column: 1 / -1;
    padding-block: 0.15rem 0.5rem;
  }
  .row.listed > .what {
    grid-column: 1 / -1;
    padding-block-start: 0.4rem;
  }
  .row.listed > .what + * {
    grid-column: 1 / span 2;
  }
  @container (max-width: 25rem) {
    .row {
      grid-template-columns: minmax(0, 1fr) var(--figure-narrow, 9rem) var(--unit-narrow, 2.7rem);
      column-gap: 0.5rem;
    }
    .row .field[inputmode] {
      font-size: 1.1rem;
    }
    .row.long > .what {
      grid-column: 1 / -1;
      padding-block-start: 0.5rem;
    }
    .row.long > .what + * {
      grid-column: 2;
    }
  }
  @container (max-width: 20rem) {
    .row {
      grid-template-columns: minmax(0, 1fr) var(--unit-narrow, 2.7rem);
    }
    .row > .what,
    .row.long > .what {
      grid-column: 1 / -1;
      padding-block-start: 0.5rem;
    }
    .row > .what + *,
    .row.long > .what + * {
      grid-column: 1;
    }
    .row > .what + .wide {
      grid-column: 1 / -1;
    }
  }
`

/** A place to write in. */
export const field = css`
  .field {
    inline-size: 100%;
    min-inline-size: 0;
    min-block-size: 44px;
    padding: 0.3rem 0.6rem;
    border: 1px solid var(--edge);
    border-radius: 0;
    background: var(--well);
  }
  .field[aria-invalid='true'] {
    border-style: dashed;
    border-width: 2px;
    padding: calc(0.3rem - 1px) calc(0.6rem - 1px);
  }
  .field::placeholder {
    color: var(--quiet);
    opacity: 1;
  }
  textarea.field {
    display: block;
    min-block-size: 5.2rem;
    resize: vertical;
    field-sizing: content;
  }
  textarea.field.short {
    min-block-size: 44px;
  }
  .mono {
    font-family: var(--mono);
    font-size: 0.92rem;
  }
`

const LONG_LABEL = 26
const LONG_HINT = 40

/** Where the sheet is narrow, words as long as these stand above their figure, not beside it. */
export const isLong = (label: string, hint = ''): boolean => label.length > LONG_LABEL || hint.length > LONG_HINT
