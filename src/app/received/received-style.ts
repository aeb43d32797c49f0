import { css } from 'lit'

/** A page about one sheet that came from elsewhere, or cannot be read: a card, narrow unless it shows the sheet. */
export const receivedStyle = css`
  main {
    display: grid;
    gap: 1rem;
    max-inline-size: 46rem;
    margin-inline: auto;
    padding: clamp(1rem, 3vw, 1.8rem) clamp(1rem, 4vw, 2.4rem) 2rem;
    background: var(--sheet);
    border: 1px solid var(--edge);
  }
  h1 {
    font-size: 1.6rem;
    line-height: 1.2;
  }
`
