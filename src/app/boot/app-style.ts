import { css } from 'lit'

export const appStyle = css`
  :host {
    min-block-size: 100vh;
    padding-block-end: 24px;
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    column-gap: 1.6rem;
    max-inline-size: 70rem;
    margin-inline: auto;
    padding-inline: clamp(1rem, 4vw, 2.4rem);
    min-block-size: 3.2rem;
  }
  header.narrow {
    max-inline-size: 46rem;
  }
  header.wide {
    max-inline-size: 1560px;
  }
  .brand {
    display: inline-flex;
    align-items: center;
    min-block-size: 44px;
    color: inherit;
    font-weight: 700;
    text-decoration: none;
  }
  .brand:hover {
    text-decoration: underline;
    text-underline-offset: 0.28em;
  }
  nav {
    display: flex;
    flex-wrap: wrap;
    column-gap: 1.2rem;
  }
  .notice {
    max-inline-size: 70rem;
    margin-inline: auto;
    padding-inline: clamp(1rem, 4vw, 2.4rem);
  }
  .page {
    container: page / inline-size;
  }
  /* It takes the focus where another page is turned to, and is no control. */
  .page:focus-visible {
    outline: none;
  }
`
