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
  .unbroken {
    display: inline-block;
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
  /* A row for each set-up: its figures, its originals as spans of a dimension line, its effort. */
  @container (min-width: 55rem) {
    .setup {
      display: grid;
      grid-template-columns: minmax(0, 1fr) minmax(0, 15rem);
      column-gap: 24px;
      align-items: start;
      border-block-start: 1px solid var(--rule);
    }
    .setup:first-of-type {
      border-block-start: 2px solid var(--ink);
    }
    /* Figures of the same kind are below each other. */
    .set {
      grid-template-columns: minmax(0, 1fr) 5.4rem 12.2rem;
      column-gap: 1.2rem;
      align-items: start;
    }
    .set dl > div:only-child {
      grid-column: 3;
    }
    .setup > .facts {
      grid-column: 2;
      grid-row: 1;
      text-align: end;
    }
    .setup > ul {
      display: grid;
      grid-column: 1 / -1;
      grid-template-columns: repeat(auto-fill, minmax(200px, 1fr));
      row-gap: 8px;
      padding-block-end: 12px;
    }
    .setup > details {
      grid-column: 1 / -1;
    }
    .setup > ul > li {
      position: relative;
      border-block-start: 0;
      border-block-end: 1px solid var(--ink);
    }
    .setup > ul > li:has(.is-done) {
      border-block-end-width: 4px;
    }
    .setup > ul > li::after,
    .setup > ul > li::before {
      content: '';
      position: absolute;
      inset-block-end: -8px;
      inset-inline-end: -1px;
      inline-size: 1.5px;
      block-size: 15px;
      background: var(--ink);
      rotate: 45deg;
    }
    .setup > ul > li::before {
      inset-inline: -1px auto;
    }
    .order {
      max-inline-size: none;
    }
    .group > ul {
      display: grid;
      grid-template-columns: repeat(auto-fill, minmax(18rem, 1fr));
      column-gap: 24px;
    }
    .setup .original {
      padding-inline: 8px;
    }
    .setup .original,
    .setup .original.plain {
      grid-template-columns: auto minmax(0, 1fr);
    }
    .setup .original.plain {
      grid-template-columns: minmax(0, 1fr);
    }
    .setup .size {
      display: none;
    }
    .tally {
      display: flex;
      flex-wrap: wrap;
      gap: 4px 40px;
      border-block-start: 1px solid var(--rule);
    }
    .tally > div,
    .tally > div:first-child {
      display: block;
      border: 0;
    }
    .tally dt {
      color: var(--quiet);
      font-size: 0.8667rem;
    }
    .tally dd,
    .tally .sum dd {
      font-size: 1.3333rem;
      font-weight: 700;
      text-align: start;
      white-space: nowrap;
    }
  }
  /* Wide enough for all three beside each other. */
  @container (min-width: 75rem) {
    .setup {
      grid-template-columns: minmax(0, 27rem) minmax(0, 1fr) minmax(0, 13rem);
    }
    .setup > .facts {
      grid-column: 3;
    }
    .setup > ul,
    .setup > details {
      grid-column: 2;
    }
    .setup > ul {
      grid-template-columns: repeat(auto-fill, minmax(150px, 1fr));
      padding-block-end: 0;
    }
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
`
