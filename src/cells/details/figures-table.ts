import { css } from 'lit'

/** Figures in rows and columns, ruled, scrolled where they are broader than the sheet. */
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

/** Its first column says what a row is. Comes after the paddings of whoever uses it. */
export const firstColumn = css`
  :is(th, td):first-child {
    padding-inline-start: 0;
    text-align: start;
  }
`

/** A table as a cell of its own, under its title. */
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
