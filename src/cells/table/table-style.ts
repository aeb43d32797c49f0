import { css } from 'lit'

/** A table of fields that scrolls in a box, with fixed head and row numbers and level rules only. */
export const tableStyle = css`
  section {
    padding-block-end: 0.5rem;
  }
  .head {
    align-items: center;
    gap: 0.3rem 1.4rem;
    padding-block-end: 0.45rem;
  }
  .box {
    max-block-size: min(44rem, 78vh);
    overflow: auto;
    overscroll-behavior-inline: contain;
    border-block: 1px solid var(--edge);
  }
  table {
    inline-size: 0;
    min-inline-size: 100%;
    table-layout: fixed;
    border-collapse: separate;
    border-spacing: 0;
    font-variant-numeric: tabular-nums;
  }
  /* At least as wide as the longest word of its heading, of which --word has the number of letters. */
  col {
    --heading: calc(var(--word, 0) * 0.53rem + 0.8rem);
  }
  col.number-wide {
    inline-size: 3rem;
  }
  col.quantity-wide {
    inline-size: max(4.6rem, var(--heading));
  }
  col.figure-wide {
    inline-size: max(5rem, var(--heading));
  }
  col.text-wide {
    inline-size: 14rem;
  }
  col.choice-wide {
    inline-size: max(6.8rem, var(--heading));
  }
  col.tick-wide {
    inline-size: max(3.4rem, var(--heading));
  }
  col.moment-wide {
    inline-size: 10.5rem;
  }
  th,
  td {
    padding: 0;
    text-align: start;
    font-weight: 400;
    border-block-end: 1px solid var(--rule);
  }
  thead th {
    position: sticky;
    inset-block-start: 0;
    z-index: 2;
    padding: 0.3rem 0.25rem 0.3rem 0.5rem;
    vertical-align: bottom;
    background: var(--sheet);
    border-block-end: 2px solid var(--ink);
    font-size: 0.8667rem;
    line-height: 1.2;
    font-weight: 700;
    letter-spacing: -0.01em;
    overflow-wrap: anywhere;
    hyphens: auto;
  }
  thead .unit {
    display: block;
    font-weight: 400;
  }
  thead .end {
    padding-inline-start: 0.1rem;
    text-align: end;
  }
  tr > th:first-child {
    position: sticky;
    inset-inline-start: 0;
    z-index: 1;
    background: var(--sheet);
  }
  thead > tr > th:first-child {
    z-index: 3;
  }
  tbody tr {
    block-size: 33px;
  }
  tbody th {
    padding-inline: 0.4rem;
    text-align: end;
    line-height: 1.05;
    color: var(--quiet);
  }
  .out {
    color: var(--ink);
  }
  .out .word-out {
    display: flex;
    align-items: center;
    justify-content: end;
    gap: 0.25rem;
    font-size: 0.78rem;
    font-weight: 700;
    white-space: nowrap;
  }
  .out .word-out::before {
    content: '';
    inline-size: 0.45rem;
    block-size: 0.45rem;
    border: 2px solid currentcolor;
    rotate: 45deg;
  }
  .pad td {
    border: 0;
  }
  .f {
    display: block;
    inline-size: 100%;
    block-size: 32px;
    min-inline-size: 0;
    padding: 0.2rem 0.6rem;
    border: 0;
    border-radius: 0;
    background: var(--well);
  }
  .f:focus-visible {
    outline-offset: -3px;
  }
  .f[aria-invalid='true'] {
    border: 2px dashed var(--ink);
    padding: calc(0.2rem - 2px) calc(0.6rem - 2px);
  }
  .f.end {
    text-align: end;
  }
  label.f {
    display: grid;
    place-items: center;
    cursor: pointer;
  }
  label.f input {
    inline-size: 1.25rem;
    block-size: 1.25rem;
    margin: 0;
    accent-color: var(--ink);
  }
  td.worked {
    padding-inline: 0.6rem;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  td.worked.end {
    text-align: end;
  }
  tfoot td,
  tfoot th {
    padding: 0.2rem 0.6rem;
    background: var(--sheet);
    vertical-align: baseline;
    line-height: 1.2;
    /* A word may reach beyond a narrow column, but is not broken. */
    overflow-wrap: normal;
  }
  tfoot tr:first-child > * {
    border-block-start: 2px solid var(--ink);
  }
  tfoot td {
    text-align: end;
  }
  tfoot b,
  tfoot .small {
    display: block;
    line-height: 1.2;
  }
  tfoot.held {
    position: sticky;
    inset-block-end: 0;
    z-index: 2;
  }
  .sort {
    padding: 0;
    font: inherit;
    text-align: inherit;
  }
  .tools {
    display: flex;
    flex: 1 1 auto;
    flex-wrap: wrap;
    gap: 0.3rem 1rem;
    align-items: center;
  }
  .tools .labelled {
    display: flex;
    gap: 0.4rem;
    align-items: center;
  }
  .tools .labelled > .small {
    flex: none;
  }
  .tools .field {
    inline-size: 13rem;
  }
  .tools select.field {
    inline-size: auto;
  }
  .groups {
    overflow-x: auto;
    padding-block: 0.6rem;
  }
  .groups table {
    inline-size: auto;
    table-layout: auto;
  }
  .groups :is(th, td) {
    padding: 0.25rem 0.9rem 0.25rem 0;
    text-align: start;
  }
  .total {
    white-space: nowrap;
  }
  .acts,
  .row-acts {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem 1.1rem;
  }
  .acts {
    padding-block-start: 0.5rem;
  }
  .row-acts {
    margin-inline-end: 1.1rem;
  }
  .acts .press {
    background: none;
  }
  .said {
    padding-block-start: 0.5rem;
  }
  /* The error of the present field stays visible while it is corrected. */
  #problem {
    position: sticky;
    inset-block-end: 0;
    z-index: 4;
    padding-block: 0.5rem;
    background: var(--sheet);
  }
  tbody td {
    scroll-margin-block: 4.5rem 10rem;
  }
  .said:empty {
    padding: 0;
  }
  .list {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .list .word {
    padding-block: 0.3rem;
    line-height: 1.3;
  }
  .left {
    padding-block-start: 0.6rem;
  }
  .f.required {
    border: 1px dashed var(--edge);
    padding: calc(0.2rem - 1px) calc(0.6rem - 1px);
  }
  @media (pointer: coarse) {
    tbody tr {
      block-size: 45px;
    }
    .f {
      block-size: 44px;
    }
  }
`
