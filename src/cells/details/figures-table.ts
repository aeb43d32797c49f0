import { css } from 'lit'

/** A table of figures with level rules; a wide one scrolls. */
export const figuresTable = css`
  /* A shade at the edge beyond which the table goes on; what moves along with the table hides it at an end. */
  .scrolled {
    overflow-x: auto;
    background:
      linear-gradient(to right, var(--sheet) 12px, transparent 28px) 0 0 / 28px 100% no-repeat local,
      linear-gradient(to left, var(--sheet) 12px, transparent 28px) 100% 0 / 28px 100% no-repeat local,
      linear-gradient(to right, var(--hair), transparent) 0 0 / 12px 100% no-repeat,
      linear-gradient(to left, var(--hair), transparent) 100% 0 / 12px 100% no-repeat;
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
