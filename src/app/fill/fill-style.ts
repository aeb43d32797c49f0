import { css } from 'lit'

export const fillStyle = css`
  example-bar:not(:defined) {
    display: block;
    block-size: 58px;
  }
  @media (max-width: 40rem) {
    example-bar:not(:defined) {
      block-size: 50px;
    }
  }
  .band {
    /* Room for focus rings, frames of what is found, and drawings that reach past their box. */
    margin: 0 -8px -8px;
    padding: 10px 8px 8px;
    /* A band out of sight is not rendered; find, print and anchors still reach it. */
    content-visibility: auto;
    contain-intrinsic-size: auto 480px;
  }
  .heading {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    column-gap: 14px;
    border-block-end: 2px solid var(--ink);
  }
  h2 {
    font-size: 1.4667rem;
    line-height: 1.2727;
  }
  /* Several sections that share a heading row. */
  h2 + h2::before {
    content: '·' / '';
    padding-inline-end: 14px;
    color: var(--quiet);
  }
  h2,
  h2 .fold {
    display: inline-flex;
    align-items: baseline;
  }
  .gives .heading {
    flex-wrap: nowrap;
    margin-block-start: 12px;
    border-block-end-width: 1px;
  }
  .gives .heading h2 {
    flex: none;
  }
  .gives .heading:has(h2 + h2) {
    flex-wrap: wrap;
  }
  .gives .heading p {
    flex: 1;
    padding-block-end: 3px;
    text-wrap: pretty;
  }
  .heading section-summary {
    flex-basis: 100%;
  }
  .fold {
    display: flex;
    align-items: baseline;
    min-block-size: 36px;
    padding: 4px 0;
    border: 0;
    background: none;
    text-align: start;
    font-weight: inherit;
    cursor: pointer;
  }
  .fold:hover {
    text-decoration: underline;
    text-underline-offset: 0.25em;
  }
  .fold[aria-expanded='false']::before {
    content: '';
    flex: none;
    align-self: center;
    inline-size: 8px;
    block-size: 8px;
    margin-inline: 2px 12px;
    border: solid var(--ink);
    border-width: 0 2px 2px 0;
    rotate: -45deg;
  }
  .empty {
    padding-block: 1.4rem 0.2rem;
  }
  .caption {
    padding-block: 9px 4px;
    font-size: 0.8667rem;
    line-height: 1.23;
    color: var(--quiet);
    border-block-end: 1px solid var(--hair);
  }
  .columns {
    display: grid;
  }
  .columns > *,
  .drawings {
    min-inline-size: 0;
  }
  .gives,
  .follows,
  .wide {
    container-type: inline-size;
  }
  .keys {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr));
    column-gap: 16px;
    align-items: end;
    border-block-end: 1px solid var(--rule);
  }
  .hint-line {
    min-block-size: 28px;
    padding-block-start: 8px;
    font-size: 0.9333rem;
    line-height: 1.2857;
    color: var(--quiet);
  }
  .hint-line b {
    color: var(--ink);
  }
  .hint-line .word {
    min-block-size: 24px;
  }
  .drawings {
    display: grid;
    align-content: start;
    gap: 12px;
    padding-block-start: 10px;
  }
  .wide {
    padding-block-start: 10px;
  }
  /* What adds to the sheet, and the list of keys beside it. */
  .end {
    display: flex;
    flex-wrap: wrap;
    gap: 0 24px;
    align-items: start;
    padding-block-start: 18px;
  }
  join-offer {
    flex: 1 1 16rem;
    min-inline-size: 0;
  }
  ::slotted(*) {
    flex: none;
  }
  ::slotted([open]) {
    flex: 1 0 100%;
  }
  @media (pointer: coarse) {
    .hint-line {
      display: none;
    }
  }
  @media (min-width: 55rem) {
    .columns {
      grid-template-columns: minmax(0, 456px) minmax(0, 1fr);
      column-gap: 32px;
    }
    .follows {
      grid-column: 2;
      grid-row: 1 / span 2;
    }
    .no-gives .follows {
      grid-column: 1 / -1;
    }
    .drawings {
      grid-column: 1;
    }
  }
  @media (min-width: 1180px) {
    .spread {
      display: grid;
      grid-template-columns: minmax(0, 892px) minmax(0, 1fr);
      column-gap: 36px;
    }
    .columns {
      grid-template-columns: minmax(0, 456px) minmax(0, 400px);
      column-gap: 36px;
    }
    .follows {
      grid-row: 1;
      grid-column: 2;
    }
    .no-gives .follows {
      grid-column: 1;
    }
    /* Beside no drawing, the taller of both takes two columns. */
    .two-give {
      grid-template-columns: minmax(0, 928px) minmax(0, 1fr);
    }
    .two-follow {
      grid-template-columns: minmax(0, 456px) minmax(0, 1fr);
    }
    .two-follow.no-gives {
      grid-template-columns: minmax(0, 1fr);
    }
    /* A single given has one column, and no rule over a second. */
    .two-give .gives {
      max-inline-size: 446px;
    }
    .two-give .gives:has(details, .block + .block, .block > * + *),
    .two-follow .follows {
      max-inline-size: none;
      columns: 2;
      column-gap: 36px;
    }
    .two-give :is(.several > .block, .block > *, details, .hint-line),
    .two-follow .follows > * {
      break-inside: avoid;
    }
    .two-give .caption,
    .two-follow .caption {
      column-span: all;
    }
    .drawings.more {
      grid-template-columns: repeat(3, minmax(0, 1fr));
      column-gap: 36px;
      padding-block-start: 20px;
    }
    .spread > .drawings {
      grid-column: 2;
      gap: 20px;
      padding-block-start: 20px;
    }
  }
  @media print {
    .end {
      display: none;
    }
    .band {
      content-visibility: visible;
    }
    .heading,
    .caption {
      break-after: avoid;
    }
    :is(given-cell, result-cell, check-cell, drawing-cell) {
      break-inside: avoid;
    }
  }
`
