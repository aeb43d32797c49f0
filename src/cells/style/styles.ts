import { css } from 'lit'

/** Hidden from sight, and read out. */
export const unseen = css`
  position: absolute;
  inline-size: 1px;
  block-size: 1px;
  overflow: hidden;
  clip-path: inset(50%);
`

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
    outline: 2px solid var(--ring);
    outline-offset: 1px;
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
    ${unseen}
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
    min-block-size: var(--target);
    min-inline-size: 24px;
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
    min-block-size: var(--target);
    min-inline-size: var(--target);
    padding: 0.2rem 0.93rem;
    border: 1px solid var(--ink);
    border-radius: 4px;
    background: var(--well);
    cursor: pointer;
    text-align: start;
  }
  /* The one thing to do next in a place. */
  .press.primary {
    background: var(--ink);
    color: var(--on-ink);
    font-weight: 700;
  }
  .press.primary:hover {
    background: var(--ink);
    text-decoration: underline;
    text-underline-offset: 0.25em;
  }
  .press:disabled {
    border-color: var(--hair);
    color: var(--quiet);
    cursor: default;
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
  /* Nothing can be pressed on paper; only what says something there stays. */
  @media print {
    :is(button, label):is(.word, .press):not(.says) {
      display: none;
    }
  }
`

/** The line that unfolds what is folded away, underlined as all that is pressed. */
export const fold = css`
  summary {
    display: flex;
    align-items: center;
    min-block-size: var(--target);
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

/** A ruled row: its label, the figure on the right, its unit, and where the figure comes from. */
export const row = css`
  .row {
    display: grid;
    grid-template-columns: minmax(0, 1fr) var(--figure, 122px) minmax(38px, auto) 58px;
    column-gap: 8px;
    align-items: center;
    min-block-size: var(--row);
    border-block-end: 1px solid var(--rule);
  }
  .what {
    min-inline-size: 0;
    /* A label of two lines is clear of the rules. */
    padding-block: 3px;
    line-height: 1.25;
    text-wrap: pretty;
    overflow-wrap: break-word;
  }
  .what .small {
    display: block;
    color: var(--quiet);
  }
  .figure {
    font-size: 1.1333rem;
    line-height: 1.1765;
    font-variant-numeric: tabular-nums;
    text-align: end;
  }
  .unit {
    color: var(--quiet);
    white-space: nowrap;
  }
  .below {
    grid-column: 1 / -1;
    padding-block: 0.15rem 0.5rem;
  }
  .row.listed {
    padding-block-end: 4px;
  }
  .row.listed > .what {
    grid-column: 1 / -1;
    padding-block-start: 0.4rem;
  }
  .row.listed > .what + * {
    grid-column: 1 / span 2;
  }
  .row.listed > .what + .wide {
    grid-column: 1 / 4;
  }
  @container (max-width: 25rem) {
    .row {
      grid-template-columns: minmax(0, 1fr) 126px minmax(30px, auto) 48px;
    }
    /* A long label gets a separate line, and the field below it stays clear of the rule. */
    .row.long {
      padding-block-end: 4px;
    }
    .row.long > .what {
      grid-column: 1 / -1;
      padding-block-start: 6px;
    }
    .row.long > .what + * {
      grid-column: 2;
    }
    .row.long > .what + .wide {
      grid-column: 2 / 4;
    }
  }
  @container (max-width: 18rem) {
    .row {
      grid-template-columns: minmax(0, 1fr) minmax(30px, auto) 48px;
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
    min-block-size: var(--field);
    padding: 1px 8px;
    border: 1px solid var(--edge);
    border-radius: 2px;
    background: var(--well);
  }
  .field[aria-invalid='true'] {
    border-style: dashed;
    border-width: 2px;
    padding: 0 7px;
  }
  .field::placeholder {
    color: var(--quiet);
    opacity: 1;
  }
`

const LONG_LABEL = 26

/** Where the sheet is narrow, words as long as these are above their figure, not beside it. */
export const isLong = (label: string): boolean => label.length > LONG_LABEL
