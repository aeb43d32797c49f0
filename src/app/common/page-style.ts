import { css } from 'lit'

/** A sheet of paper on a grey ground. */
export const paperStyle = css`
  main {
    max-inline-size: 70rem;
    margin-inline: auto;
    padding: clamp(1rem, 3vw, 1.8rem) clamp(1rem, 4vw, 2.4rem) 2rem;
    background: var(--sheet);
    border: 1px solid var(--edge);
  }
  @media (max-width: 71rem) {
    main {
      border-inline: 0;
    }
  }
`

/** The style of pages other than a worksheet, with headings and lists. */
export const pageStyle = [
  paperStyle,
  css`
    h1 {
      font-size: 1.6rem;
      line-height: 1.2;
      padding-block-end: 0.7rem;
      border-block-end: 2px solid var(--ink);
    }
    h2 {
      font-size: 1.15rem;
      margin-block-start: 2.2rem;
      padding-block-end: 0.4rem;
      border-block-end: 2px solid var(--ink);
    }
    ul {
      margin: 0;
      padding: 0;
      list-style: none;
    }
  `,
]
