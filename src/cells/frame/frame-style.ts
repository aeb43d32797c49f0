import { css } from 'lit'

/** How a frame and what is measured in it is laid out. */
export const frameStyle = css`
  .over {
    outline: 2px dashed var(--ink);
    outline-offset: 4px;
  }
  .presses label {
    position: relative;
  }
  .presses label:focus-within {
    outline: 3px solid var(--ring);
    outline-offset: 2px;
  }
  .add {
    align-self: center;
  }
  .areas {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .areas li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    column-gap: 1rem;
    padding-block: 0.5rem;
    border-block-start: 1px solid var(--rule);
  }
  .areas h4 {
    margin: 0;
    font-size: 1rem;
  }
  section > * + * {
    margin-block-start: 0.4rem;
  }
  .areas dl {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, auto);
    margin-block: 0.4rem;
    grid-column: 1 / -1;
    /* Across a wide sheet a figure would be too far from its name. */
    max-inline-size: 36rem;
    font-variant-numeric: tabular-nums;
  }
  .areas :is(dt, dd) {
    padding-block: 4px;
    border-block-end: 1px solid var(--rule);
  }
  .areas dd {
    padding-inline-start: 1rem;
    text-align: end;
  }
  .fields {
    display: flex;
    flex-wrap: wrap;
    gap: 0.6rem;
    grid-column: 1 / -1;
  }
  .whole {
    grid-column: 1 / -1;
  }
  .drawing {
    max-inline-size: 520px;
  }
  .scrolled {
    overflow-x: auto;
    grid-column: 1 / -1;
  }
  .map {
    border-collapse: collapse;
    font-variant-numeric: tabular-nums;
    font-size: 0.86rem;
  }
  .map td {
    padding: 0.2rem 0.5rem;
    border: 1px solid var(--rule);
    text-align: end;
  }
  .map th {
    max-inline-size: 11rem;
    padding: 0.2rem 0.5rem;
    vertical-align: bottom;
    text-align: end;
    white-space: normal;
  }
  /* Level rules only, as in every list. */
  .series {
    margin-block: 0.4rem;
  }
  .series :is(td, th) {
    border: 0;
    border-block-end: 1px solid var(--rule);
  }
  .series tr:first-child > * {
    border-block-end: 2px solid var(--ink);
  }
  .series :is(td, th):nth-child(-n + 2) {
    padding-inline-start: 0;
    text-align: start;
  }
`
