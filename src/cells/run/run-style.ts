import { css } from 'lit'

export const runStyle = css`
  h4 {
    margin: 0;
    font-size: 1rem;
    line-height: 1.3;
  }
  .order {
    max-inline-size: 34rem;
    padding-block-end: 0.6rem;
    text-wrap: pretty;
  }
  .setup,
  .group {
    border-block-start: 2px solid var(--edge);
    padding-block: 0.5rem 0.2rem;
  }
  .set {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto auto;
    column-gap: 1.4rem;
    align-items: end;
  }
  .set dl {
    display: contents;
  }
  .set dl > div {
    text-align: end;
  }
  dt {
    color: var(--quiet);
  }
  .set dd {
    font-size: 1.35rem;
    line-height: 1.2;
    font-weight: 700;
    font-variant-numeric: tabular-nums;
    white-space: nowrap;
  }
  .facts {
    padding-block-start: 0.3rem;
    font-variant-numeric: tabular-nums;
    text-wrap: pretty;
  }
  details[open] > summary {
    font-weight: 700;
    text-decoration-thickness: 3px;
  }
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  li {
    border-block-start: 1px solid var(--rule);
  }
  .original {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr) auto;
    column-gap: 0.8rem;
    align-items: center;
    min-block-size: 44px;
    padding-block: 0.3rem;
    line-height: 1.3;
  }
  .original.plain {
    grid-template-columns: minmax(0, 1fr) auto;
  }
  label.original {
    cursor: pointer;
  }
  label.original:hover .name {
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.28em;
  }
  .original input {
    inline-size: 1.5rem;
    block-size: 1.5rem;
    margin: 0;
    accent-color: var(--ink);
  }
  .name {
    min-inline-size: 0;
    overflow-wrap: anywhere;
  }
  .name > .small {
    display: block;
  }
  .is-done .name,
  .is-done .size {
    color: var(--quiet);
  }
  .size {
    text-align: end;
    font-variant-numeric: tabular-nums;
  }
  .why {
    padding-block: 0.55rem;
    line-height: 1.35;
  }
  .why > .small {
    display: block;
  }
  .tally {
    display: grid;
    margin: 0;
  }
  .tally > div {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    column-gap: 1rem;
    align-items: baseline;
    padding-block: 0.45rem;
    border-block-start: 1px solid var(--rule);
  }
  .tally > div:first-child {
    border-block-start: 0;
  }
  .tally dt {
    color: inherit;
  }
  .tally dd {
    text-align: end;
    font-variant-numeric: tabular-nums;
  }
  .tally .sum dd {
    font-size: 1.2rem;
    font-weight: 700;
  }
  .planning {
    min-block-size: 1.4em;
  }
  @container (max-width: 26rem) {
    .set {
      grid-template-columns: minmax(0, 1fr) auto;
      row-gap: 0.3rem;
    }
    .set > h4 {
      grid-column: 1 / -1;
    }
    .set dl > div:first-child:not(:last-child) {
      text-align: start;
    }
  }
  @media print {
    .word,
    .press {
      display: none;
    }
  }
`
