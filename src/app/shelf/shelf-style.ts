import { css } from 'lit'

export const shelfStyle = css`
  h1 {
    margin-block-start: 0.5rem;
  }
  .answers {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 26rem), 1fr));
    column-gap: 3rem;
  }
  li {
    border-block-end: 1px solid var(--rule);
  }
  .answer {
    display: block;
    padding-block: 0.85rem;
    color: inherit;
    text-decoration: none;
  }
  .answer b {
    display: block;
    font-size: 1.15rem;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.25em;
  }
  .drawn {
    display: grid;
    grid-template-columns: 6.4rem minmax(0, 1fr);
    column-gap: 1.1rem;
    align-items: start;
  }
  .figure {
    display: block;
    block-size: 4.6rem;
  }
  .figure img {
    display: block;
    inline-size: 100%;
    block-size: 100%;
    object-fit: contain;
    object-position: center;
    /* Drawn in black; the dim scheme inverts it to its own ink. */
    filter: invert(var(--drawn-invert, 0));
  }
  .ways {
    padding-inline-start: 7.5rem;
    margin-block-start: -0.6rem;
  }
  .example {
    display: block;
    padding-block-start: 0.2rem;
  }
  .got {
    padding-block: 1.1rem 0.4rem;
  }
  a.press {
    text-decoration: none;
  }
  a.press:not(.primary) {
    color: inherit;
  }
  /* As large as before, so that none beside it moves. */
  .press[aria-pressed='true'] {
    background: var(--mark);
    box-shadow: inset 0 0 0 1px;
  }
  form {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.3rem 0.9rem;
    padding-block: 0.4rem;
  }
  form .field {
    flex: 1 1 14rem;
    max-inline-size: 26rem;
  }
  .none {
    padding-block: 1.4rem 0;
  }
  .none .word {
    display: inline;
  }
  .answer:hover b {
    text-decoration-thickness: 2px;
  }
  .foot {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.6rem 1.2rem;
    margin-block-start: 1.6rem;
  }
  .folds {
    margin-block-start: 1.2rem;
  }
  .problem {
    margin-block-end: 1rem;
    padding-inline-start: 0.7rem;
    border-inline-start: 4px solid var(--ink);
  }
  @container page (max-width: 32rem) {
    .drawn {
      grid-template-columns: 4.2rem minmax(0, 1fr);
      column-gap: 0.8rem;
    }
    .ways {
      padding-inline-start: 5rem;
    }
    .figure {
      block-size: 3.4rem;
    }
  }
`

/** The list of saved sheets. */
export const savedStyle = css`
  .saved {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: center;
    column-gap: 1.2rem;
    min-block-size: 3.6rem;
    padding-block: 0.2rem;
  }
  .saved .answer {
    padding-block: 0.45rem;
  }
  .saved .answer b {
    font-size: 1rem;
    overflow-wrap: anywhere;
  }
  .job {
    display: block;
    font-size: 1.15rem;
    font-weight: 700;
    overflow-wrap: anywhere;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.25em;
  }
  .saved .job + b {
    display: inline;
    font-weight: 400;
    text-decoration: none;
  }
  .of {
    padding-inline-start: 0.7rem;
  }
  .saved b:has(+ .of) {
    display: inline;
  }
  .line {
    display: block;
  }
  .checks {
    color: var(--ink);
    padding-inline-end: 0.7rem;
  }
  @container page (max-width: 32rem) {
    .saved {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`
