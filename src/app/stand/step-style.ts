import { css } from 'lit'

export const stepStyle = css`
  :host {
    --word-height: 60px;
  }
  .step {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 360px);
    gap: 8px 40px;
    align-items: start;
  }
  .undrawn {
    grid-template-columns: minmax(0, 56rem);
  }
  h2 {
    padding-block-end: 16px;
    font-size: 2.1333rem;
    line-height: 1.25;
    text-wrap: pretty;
  }
  .halves {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    border-block: 1px solid var(--rule);
    border-block-start: 2px solid var(--ink);
  }
  .alone {
    grid-template-columns: minmax(0, 1fr);
  }
  .half {
    min-inline-size: 0;
    padding-block: 12px 16px;
  }
  .half + .half {
    padding-inline-start: 24px;
    border-inline-start: 1px solid var(--rule);
  }
  .caption {
    display: block;
    padding-block-end: 6px;
    font-size: 1.1333rem;
    color: var(--quiet);
  }
  .entry {
    display: flex;
    align-items: end;
    gap: 10px;
    min-block-size: 6.4rem;
  }
  /* Below the ring of the field. */
  .half > .press {
    margin-block-start: 12px;
  }
  .alone .entry {
    max-inline-size: 26rem;
  }
  .entry .field {
    min-inline-size: 0;
    block-size: 5.6rem;
    padding-inline: 14px;
    border: 1px solid var(--edge);
    border-block-end: 4px double var(--ink);
    font-size: 3.4667rem;
    font-weight: 700;
    font-variant-numeric: tabular-nums;
    text-align: end;
  }
  .entry .unit {
    flex: none;
    padding-block-end: 8px;
    font-size: 1.8667rem;
    color: var(--quiet);
  }
  .difference {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 24px;
    align-items: center;
    padding-block: 14px;
    font-size: 1.2667rem;
    line-height: 1.35;
  }
  .by {
    font-size: 1.8667rem;
    font-weight: 700;
    white-space: nowrap;
  }
  .target {
    display: grid;
    grid-template-columns: minmax(8rem, 1fr) minmax(0, 1.4fr);
    gap: 12px;
    align-items: center;
    min-block-size: 72px;
    border-block-start: 1px solid var(--rule);
    font-size: 1.2667rem;
    text-wrap: balance;
  }
  /* More than one figure at a step. */
  .sets.several {
    --big: 2.8rem;
  }
  h2 + .sets .target:first-child {
    border-block-start: 2px solid var(--ink);
  }
  .target .room {
    text-align: end;
  }
  .sets + .halves {
    border-block-start-width: 1px;
  }
  .what .small {
    display: block;
  }
  .plain {
    padding-block: 8px;
    font-size: 1.2667rem;
    --entry-size: 1.6rem;
    --row: 72px;
    --field: 60px;
    --figure: 14rem;
    border-block-start: 2px solid var(--ink);
    container-type: inline-size;
  }
  .actions {
    display: flex;
    flex-wrap: wrap;
    gap: 12px;
    align-items: center;
  }
  .actions .press {
    min-block-size: 60px;
    padding-inline: 20px;
    font-size: 1.2667rem;
  }
  .move {
    padding-block: 14px;
    font-size: 1.8667rem;
    font-weight: 700;
    line-height: 1.3;
  }
  .notice {
    display: flex;
    gap: 10px;
    padding-block: 10px;
    font-size: 1.1333rem;
    line-height: 1.4;
    --sign: 20px;
  }
  @media (max-width: 799px) {
    .step {
      grid-template-columns: minmax(0, 1fr);
    }
    .drawn {
      max-inline-size: 420px;
    }
  }
  @media (max-width: 40rem) {
    h2 {
      font-size: 1.6rem;
      padding-block-end: 12px;
    }
    .half + .half {
      padding-inline-start: 12px;
    }
    .half {
      padding-block: 8px 10px;
    }
    .entry .field {
      font-size: 2.4rem;
      padding-inline: 8px;
      block-size: 4.2rem;
    }
    .entry {
      gap: 6px;
      min-block-size: 0;
    }
    .entry .unit {
      font-size: 1.3333rem;
    }
    .difference {
      grid-template-columns: minmax(0, 1fr);
      gap: 4px;
    }
  }
`
