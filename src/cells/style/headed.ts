import { css } from 'lit'

/** A cell that takes the whole width, with a head: its label and, on the right, its state. */
export const headed = css`
  section {
    padding-block: 0.7rem 0.3rem;
    border-block-end: 1px solid var(--rule);
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    column-gap: 1rem;
  }
  h3 {
    font-size: 1rem;
    line-height: 1.3;
  }
`
