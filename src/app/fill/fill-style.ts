import { css } from 'lit'

export const fillStyle = css`
  .spread {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
  }
  .rows {
    container-type: inline-size;
    padding-block: 1.5rem 0.4rem;
  }
  table-cell {
    margin-inline-end: var(--reach, 0);
  }
  .heading {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    column-gap: 0.9rem;
    margin-block-end: 2px;
    padding-block-end: 0.35rem;
    border-block-end: 2px solid var(--ink);
  }
  h2 {
    font-size: 1.15rem;
    line-height: 1.25;
  }
  .fold {
    display: flex;
    align-items: center;
    gap: 0.7rem;
    min-block-size: 44px;
    margin-block: -0.5rem -0.35rem;
    padding: 0;
    border: 0;
    background: none;
    text-align: start;
    font-weight: inherit;
    cursor: pointer;
    scroll-margin-block: 1rem;
  }
  .fold:hover {
    text-decoration: underline;
    text-underline-offset: 0.25em;
  }
  .fold[aria-expanded='true']::before {
    rotate: 45deg;
  }
  .empty {
    padding-block: 1.4rem 0.2rem;
  }
  details {
    border-block-end: 1px solid var(--rule);
  }
  summary {
    display: flex;
    align-items: center;
    gap: 0.7rem;
    min-block-size: 44px;
    cursor: pointer;
  }
  summary::before,
  .fold::before {
    content: '';
    flex: none;
    inline-size: 0.5rem;
    block-size: 0.5rem;
    border: solid var(--ink);
    border-width: 0 2px 2px 0;
    rotate: -45deg;
  }
  details[open] > summary::before {
    rotate: 45deg;
  }
  summary::-webkit-details-marker {
    display: none;
  }
  details[open] > summary {
    border-block-end: 1px solid var(--rule);
  }
  .margin {
    padding-block: 1rem 0.6rem;
  }
  @container (min-width: 56rem) {
    .spread {
      grid-template-columns: minmax(0, 1fr) minmax(0, var(--margin, 21rem));
      grid-template-rows: auto;
      column-gap: 2.4rem;
    }
    .rows {
      grid-column: 1;
    }
    .margin {
      grid-column: 2;
      grid-row: 1 / span 40;
      padding-block: 1.5rem;
    }
    /* Where nothing is drawn, a table may take the margin too. */
    .spread:not(.drawn) {
      --reach: calc(-1 * var(--margin, 21rem) - var(--gap, 2.4rem));
    }
    /* Of two, one would slide over the other. */
    .margin > :only-child {
      position: sticky;
      inset-block-start: 1.2rem;
    }
  }
  @container (min-width: 76rem) {
    .spread {
      --margin: 30rem;
      --gap: 3.4rem;
      column-gap: 3.4rem;
    }
  }
`
