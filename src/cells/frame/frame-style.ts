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
  .areas dl {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, auto);
    column-gap: 1rem;
    grid-column: 1 / -1;
    /* Across a wide sheet a figure would be too far from its name. */
    max-inline-size: 36rem;
    font-variant-numeric: tabular-nums;
  }
  .areas dd {
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
`
