import { css } from 'lit'

/** The list of columns with the fields of the open one. */
export const tableFormStyle = css`
  :host {
    container-type: inline-size;
  }
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
    border-block-start: 1px solid var(--rule);
  }
  li {
    border-block-end: 1px solid var(--rule);
  }
  .open {
    margin: 4px 0 8px;
    padding-inline: calc(1rem - 2px);
    border: 2px solid var(--ink);
    border-radius: 4px;
  }
  .call {
    display: grid;
    grid-template-columns: 1.8rem minmax(0, 1fr) minmax(0, 1fr);
    gap: 0 0.7rem;
    align-items: center;
    inline-size: 100%;
    min-block-size: 44px;
    padding: 0.2rem 0;
    border: 0;
    background: none;
    text-align: start;
    cursor: pointer;
    overflow-wrap: anywhere;
  }
  .call:hover .label {
    text-decoration: underline;
    text-underline-offset: 0.25em;
  }
  .number {
    text-align: end;
    color: var(--quiet);
    font-variant-numeric: tabular-nums;
  }
  .call .mono {
    font-size: 0.86rem;
    color: var(--quiet);
  }
  .fields {
    display: grid;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    gap: 0.7rem 0.9rem;
    align-items: start;
    padding-block: 0.2rem 0.3rem;
  }
  .all {
    grid-column: 1 / -1;
  }
  .foot {
    display: grid;
    grid-template-columns: 9rem 7rem minmax(0, 1fr) auto;
    gap: 0.2rem 0.9rem;
    align-items: end;
    padding-block-end: 0.5rem;
  }
  .foot .where {
    grid-column: 3;
    align-self: start;
  }
  .foot .word {
    grid-column: 4;
  }
  .add {
    margin-block-start: 0.6rem;
  }
  @container (max-width: 40rem) {
    .fields,
    .foot {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    }
    .foot .where {
      grid-column: 1 / -1;
    }
    .foot .word {
      grid-column: 1;
    }
  }
  @container (max-width: 26rem) {
    .fields {
      grid-template-columns: minmax(0, 1fr);
    }
    .call {
      grid-template-columns: 1.8rem minmax(0, 1fr);
    }
    .call .mono {
      grid-column: 2;
    }
  }
`
