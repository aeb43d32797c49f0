import { css } from 'lit'

/** A panel that opens between the head of a sheet and its face. */
export const panelStyle = css`
  section {
    display: grid;
    gap: 0.6rem;
    padding-block: 1.1rem 1.3rem;
    border-block-end: 2px solid var(--ink);
  }
  h2 {
    font-size: 1.15rem;
  }
`
