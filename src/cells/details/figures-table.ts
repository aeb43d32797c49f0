import { css } from 'lit'

/** A table of figures with level rules; a wide one scrolls. */
export const figuresTable = css`
  .scrolled {
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
    font-variant-numeric: tabular-nums;
  }
  th {
    font-weight: inherit;
  }
  th,
  td {
    text-align: end;
    border-block-end: 1px solid var(--rule);
  }
`

/** The first column names the rows. This style must follow the paddings of the table that uses it. */
export const firstColumn = css`
  :is(th, td):first-child {
    padding-inline-start: 0;
    text-align: start;
  }
`

/** A table that is a cell, below its title. */
export const figuresCell = css`
  :host {
    padding-block: 0.9rem 1.1rem;
    border-block-end: 1px solid var(--rule);
  }
  h3 {
    font-size: 1rem;
    font-weight: 700;
  }
`
