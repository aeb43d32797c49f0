import { css } from 'lit'

export const standStyle = css`
  /* A zero with a stroke could be taken for a diameter sign. */
  :host {
    --type: 'Stand Zero', 'Hyperlegible Next', system-ui, sans-serif;
    --target: 60px;
    display: grid;
    grid-template-rows: auto 1fr auto;
    grid-template-columns: minmax(0, 1fr);
    min-block-size: calc(100dvh - 72px);
    font-family: var(--type);
  }
  .ruler {
    display: flex;
    gap: 16px;
    align-items: end;
    padding: 0 32px;
  }
  nav {
    flex: 1 1 auto;
    min-inline-size: 0;
    overflow-x: auto;
    scrollbar-width: none;
  }
  ol {
    display: flex;
    margin: 0;
    padding: 0;
    list-style: none;
    border-block-end: 1px solid var(--hair);
  }
  li {
    flex: 1 0 auto;
  }
  /* Each step is a length of the ruler between two marks. */
  nav button {
    position: relative;
    display: flex;
    align-items: end;
    justify-content: center;
    inline-size: 100%;
    min-inline-size: 40px;
    min-block-size: 60px;
    padding: 0 2px 14px;
    border: 0;
    background:
      linear-gradient(var(--hair) 0 0) 0 100% / 1px 12px no-repeat,
      linear-gradient(var(--hair) 0 0) 100% 100% / 1px 12px no-repeat;
    color: var(--quiet);
    cursor: pointer;
  }
  nav button:hover {
    color: var(--ink);
    text-decoration: underline;
    text-underline-offset: 0.25em;
  }
  nav button:focus-visible {
    outline-offset: -3px;
  }
  nav .done {
    border-block-end: 6px solid var(--ink);
    padding-block-end: 8px;
  }
  nav button[aria-current] {
    background:
      linear-gradient(var(--ink) 0 0) 0 100% / 3px 26px no-repeat,
      linear-gradient(var(--ink) 0 0) 100% 100% / 3px 26px no-repeat;
    color: var(--ink);
    font-size: 1.2rem;
    font-weight: 700;
  }
  .count {
    flex: none;
    padding-block-end: 4px;
  }
  .main {
    padding: 4px 32px 24px;
  }
  .main:focus {
    outline: none;
  }
  .wake {
    min-block-size: 1.35em;
    padding-block: 6px;
    text-align: end;
  }
  .fresh {
    display: flex;
    flex-wrap: wrap;
    gap: 8px 16px;
    align-items: center;
    padding-block-end: 12px;
  }
  .foot {
    position: sticky;
    inset-block-end: 0;
    z-index: 2;
    display: flex;
    gap: 16px 24px;
    align-items: center;
    min-block-size: 96px;
    padding: 12px 32px;
    border-block-start: 1px solid var(--edge);
    background: var(--sheet);
  }
  .foot .press {
    flex: none;
    justify-content: center;
    min-block-size: 60px;
    padding-inline: 24px;
    font-size: 1.2rem;
  }
  .foot .press[aria-disabled='true'] {
    border-color: var(--hair);
    color: var(--quiet);
    cursor: default;
  }
  .text {
    flex: 1 1 0;
    min-inline-size: 0;
    font-size: 1.1333rem;
    line-height: 1.4;
  }
  .to-check {
    display: flex;
    gap: 8px;
    align-items: center;
    min-block-size: 44px;
    padding: 0;
    border: 0;
    background: none;
    text-align: start;
    cursor: pointer;
  }
  .to-check:hover {
    text-decoration: underline;
    text-underline-offset: 0.25em;
  }
  @media (max-width: 40rem) {
    .ruler,
    .main,
    .foot {
      padding-inline: 16px;
    }
    .foot {
      flex-wrap: wrap;
      gap: 8px 12px;
      min-block-size: 0;
      padding-block: 8px;
    }
    .foot .text {
      order: -1;
      flex-basis: 100%;
      max-block-size: 2.8em;
      overflow: hidden;
    }
    p.text {
      display: -webkit-box;
      -webkit-box-orient: vertical;
      -webkit-line-clamp: 2;
    }
    .foot .text:has(+ .word) {
      flex-basis: calc(100% - 10rem);
    }
    .foot .word {
      order: -1;
    }
    .foot .text:empty {
      display: none;
    }
    .foot .primary {
      flex: 1 1 auto;
    }
    .foot .press {
      padding-inline: 16px;
    }
  }
`
