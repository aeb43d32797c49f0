import { css } from 'lit'

export const headStyle = css`
  :host {
    position: sticky;
    inset-block-start: 0;
    z-index: 5;
    background: var(--sheet);
    border-block-end: 2px solid var(--ink);
  }
  .first,
  .second {
    display: flex;
    align-items: center;
    padding-inline: 32px;
  }
  /* With large text a row breaks instead of running out of the page. */
  .first {
    flex-wrap: wrap;
    gap: 0 14px;
    min-block-size: 52px;
  }
  .second {
    flex-wrap: wrap;
    gap: 0 28px;
    min-block-size: 50px;
  }
  .titles {
    display: flex;
    flex: 1 1 16rem;
    align-items: center;
    gap: 14px;
    min-inline-size: 0;
  }
  .brand {
    display: inline-flex;
    align-items: center;
    min-block-size: var(--target);
    color: var(--quiet);
    font-weight: 700;
    text-decoration: none;
  }
  .brand:hover {
    text-decoration: underline;
    text-underline-offset: 0.25em;
  }
  h1 {
    flex: 0 1 auto;
    min-inline-size: 0;
    overflow: hidden;
    font-size: 1.3333rem;
    line-height: 1.2;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  h1 .of {
    padding-inline-start: 0.5em;
    font-size: 1rem;
    font-weight: 400;
    color: var(--quiet);
  }
  /* As wide as the title: where the browser cannot, by its number of characters. */
  h1 .field {
    inline-size: auto;
    max-inline-size: 100%;
    field-sizing: content;
    min-inline-size: 8rem;
    font-weight: 700;
  }
  .job.field {
    flex: 1 1 17rem;
    max-inline-size: 24rem;
    min-inline-size: 4rem;
    padding-inline: 4px;
    border-color: transparent;
    border-block-end-color: var(--hair);
    background: none;
    text-overflow: ellipsis;
  }
  .job.field:hover,
  .job.field:focus {
    border-color: var(--edge);
    background: var(--well);
  }
  .saved {
    margin-inline-start: auto;
    white-space: nowrap;
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    min-inline-size: 0;
  }
  .tool {
    display: inline-flex;
    align-items: center;
    gap: 6px;
    min-block-size: var(--target);
    min-inline-size: 24px;
    padding: 0 10px;
    border: 0;
    border-radius: 3px;
    background: none;
    color: inherit;
    text-decoration: none;
    white-space: nowrap;
    cursor: pointer;
  }
  .tool:hover,
  .tool[aria-expanded='true'],
  .tool[aria-current] {
    background: var(--mark);
  }
  .tool[aria-expanded='true'],
  .tool[aria-current] {
    font-weight: 700;
  }
  .tool[aria-disabled='true'] {
    background: none;
    color: var(--edge);
    cursor: default;
  }
  .counts {
    display: flex;
    flex-wrap: wrap;
    margin-inline-start: -8px;
  }
  .counts .tool {
    padding-inline: 8px;
  }
  .counts .fail,
  .counts .error {
    font-weight: 700;
  }
  section-line {
    flex: 1 1 18rem;
  }
  .faces,
  .leave {
    margin-inline-start: 8px;
    border: 1px solid var(--ink);
    border-radius: 4px;
  }
  .faces {
    display: flex;
    overflow: hidden;
  }
  .faces a,
  .leave {
    display: flex;
    align-items: center;
    min-block-size: calc(var(--target) - 2px);
    padding-inline: 14px;
    color: inherit;
    text-decoration: none;
    white-space: nowrap;
  }
  .faces a + a {
    border-inline-start: 1px solid var(--ink);
  }
  .faces a:hover,
  .leave:hover {
    background: var(--mark);
  }
  .faces a:focus-visible {
    outline-offset: -3px;
  }
  .faces a[aria-current] {
    background: var(--ink);
    color: var(--on-ink);
    font-weight: 700;
  }
  :host([face='stand']) {
    --target: 60px;
    border-block-end-width: 1px;
  }
  /* Its switch is clear of the edges. */
  :host([face='stand']) .first {
    min-block-size: 72px;
    padding-block: 6px;
    flex-wrap: nowrap;
  }
  ::slotted(*) {
    margin-inline-end: 8px;
  }
  .second ::slotted(*) {
    flex: 1 1 auto;
    margin-inline-end: 0;
  }
  .menu {
    position: relative;
  }
  .menu summary {
    list-style: none;
  }
  .menu summary::-webkit-details-marker {
    display: none;
  }
  .menu[open] summary {
    background: var(--mark);
  }
  .items {
    position: absolute;
    inset-inline-end: 0;
    inset-block-start: 100%;
    z-index: 1;
    display: grid;
    min-inline-size: 12rem;
    padding: 6px;
    background: var(--sheet);
    border: 1px solid var(--ink);
    border-radius: 4px;
  }
  .items .tool {
    min-block-size: max(var(--target), 38px);
  }
  .items .faces {
    display: grid;
    margin: 0 0 6px;
  }
  .items .faces a {
    min-block-size: 44px;
  }
  .items .faces a + a {
    border-inline-start: 0;
    border-block-start: 1px solid var(--ink);
  }
  .items .job {
    margin-block: 6px;
    min-block-size: 44px;
  }
  @media (max-width: 1179px) {
    .first,
    .second {
      padding-inline: 24px;
      gap: 10px;
    }
    h1 {
      font-size: 1.2rem;
    }
  }
  @media (max-width: 40rem) {
    .first,
    .second {
      padding-inline: 16px;
      gap: 8px;
    }
    .second {
      block-size: 50px;
    }
    /* One row while one types; the page below keeps its place by as much room above it. */
    :host([typing]) .second {
      display: none;
    }
    :host([face='stand']) .first {
      min-block-size: 60px;
      padding-block: 0;
    }
    :host([face='stand']) .second {
      block-size: 72px;
    }
    .titles {
      flex-basis: 7rem;
    }
    h1 {
      font-size: 1.0667rem;
    }
    .saved {
      max-inline-size: 6.4em;
    }
    .tool {
      padding-inline: 6px;
    }
  }
  @media print {
    :host {
      position: static;
    }
    .brand,
    .saved,
    .tools,
    .second {
      display: none;
    }
  }
`
