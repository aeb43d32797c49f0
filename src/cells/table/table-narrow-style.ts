import { css } from 'lit'

/** A table where there is less room: narrower columns on a tablet, a list on a phone. */
export const tableNarrowStyle = css`
  /* The sign alone, where the word would be cut: the rows left out are listed below. */
  @media (max-width: 1179px) {
    .out .word-out {
      justify-content: end;
      font-size: 0;
    }
    .out .word-out::before {
      inline-size: 7px;
      block-size: 7px;
    }
  }
  /* On a tablet the fifteen columns of a list of originals have room beside each other. */
  @media (min-width: 40.01rem) and (max-width: 1179px) {
    col {
      --heading: calc(var(--word, 0) * 0.45rem + 0.2rem);
    }
    col.number-wide {
      inline-size: 2rem;
    }
    col.quantity-wide {
      inline-size: max(3.3rem, var(--heading));
    }
    col.figure-wide {
      inline-size: max(3.3rem, var(--heading));
    }
    col.text-wide {
      inline-size: 11rem;
    }
    col.choice-wide {
      inline-size: max(4.5rem, var(--heading));
    }
    col.tick-wide {
      inline-size: max(2.5rem, var(--heading));
    }
    col.moment-wide {
      inline-size: 8.4rem;
    }
    thead th {
      padding-inline: 0 1px;
      font-size: 0.8rem;
      letter-spacing: -0.03em;
    }
    thead th:not(.end) {
      padding-inline-start: 0.35rem;
    }
    tbody th {
      padding-inline: 0.2rem;
    }
    .f,
    td.worked {
      padding-inline: 0.35rem;
    }
    tfoot :is(td, th) {
      padding-inline: 0 0.35rem;
    }
    tfoot .small {
      font-size: 0.8rem;
      letter-spacing: -0.02em;
    }
    .f[aria-invalid='true'] {
      padding-inline: calc(0.35rem - 2px);
    }
    .f.required {
      padding-inline: calc(0.35rem - 1px);
    }
  }
  /* On a phone each row is a line; the present one unfolds into its fields, each beside its heading. */
  @media (max-width: 40rem) {
    .box {
      max-block-size: 70vh;
    }
    table,
    tbody {
      display: block;
      inline-size: 100%;
    }
    colgroup,
    thead th:nth-child(n + 4) {
      display: none;
    }
    /* What the two figures of a folded row are. */
    thead {
      position: sticky;
      inset-block-start: 0;
      z-index: 2;
      display: block;
    }
    thead .unit {
      display: inline;
    }
    thead tr,
    tbody tr {
      display: grid;
      grid-template-columns: 2.6rem minmax(0, 1fr) minmax(0, 6rem);
    }
    thead th {
      padding-block: 0;
    }
    tbody tr {
      align-items: center;
      block-size: auto;
      min-block-size: 45px;
      border-block-end: 1px solid var(--rule);
    }
    tbody td,
    tbody th {
      border: 0;
    }
    tbody tr:not(.pad, .present:is(:focus-within, [data-held])) > td:nth-of-type(n + 3) {
      display: none;
    }
    .present:is(:focus-within, [data-held]) {
      grid-template-columns: 2.6rem minmax(0, 1fr);
      background: var(--mark);
    }
    .present:is(:focus-within, [data-held]) > th {
      grid-row: 1;
      background: var(--mark);
    }
    .present:is(:focus-within, [data-held]) > td {
      display: grid;
      grid-column: 2;
      grid-template-columns: minmax(0, 1fr) minmax(0, 9rem);
      gap: 8px;
      align-items: center;
      min-block-size: 45px;
      padding-inline: 0;
    }
    .present:is(:focus-within, [data-held]) > td::before {
      content: attr(data-label);
      color: var(--quiet);
      font-size: 0.9333rem;
      line-height: 1.2;
    }
    .present:is(:focus-within, [data-held]) > td:first-of-type {
      grid-template-columns: minmax(0, 1fr) minmax(0, 12rem);
    }
    .pad {
      display: block;
    }
    .pad td {
      display: block;
    }
    tfoot {
      display: block;
    }
    tfoot tr {
      display: flex;
      flex-wrap: wrap;
      gap: 4px 16px;
      border-block-start: 2px solid var(--ink);
      padding-block: 6px;
    }
    tfoot tr > *,
    tfoot tr:first-child > * {
      padding: 0;
      border: 0;
    }
    tfoot tr {
      background: var(--sheet);
    }
    tfoot td {
      text-align: start;
    }
    tfoot td::before {
      content: attr(data-label);
      display: block;
      font-size: 0.8667rem;
      font-weight: 700;
    }
    tfoot :is(td, th):not(:has(b)) {
      display: none;
    }
    .tools .labelled,
    .tools .field {
      inline-size: 100%;
    }
  }
`
