import { css } from 'lit'

/** How the list of cells, its drop line and its first choices look. */
export const buildStyle = css`
  .cells {
    position: relative;
    container-type: inline-size;
    padding-block-start: 0.4rem;
  }
  .how {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    column-gap: 1.1rem;
    padding-block-start: 0.4rem;
  }
  .drop {
    position: absolute;
    inset-inline: 0;
    z-index: 1;
    block-size: 4px;
    margin-block-start: -2px;
    background: var(--ink);
    pointer-events: none;
  }
  .drop[hidden] {
    display: none;
  }
  [data-lifted] {
    outline: 2px dashed var(--ink);
    outline-offset: -2px;
  }
  /* The height it has, before it is fetched: what is pressed below it stays in its place. */
  line-entry:not(:defined) {
    display: block;
    block-size: 103px;
  }
  @media (pointer: coarse) and (max-width: 40rem) {
    line-entry:not(:defined) {
      block-size: 120px;
    }
  }
  .add {
    padding-block: 1rem;
  }
  .first {
    display: grid;
    gap: 0.6rem;
    padding-block: 1.2rem 0;
    max-inline-size: 44rem;
  }
  .first .press {
    display: block;
    inline-size: 100%;
    padding: 0.8rem 1rem;
  }
`
