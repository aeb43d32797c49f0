import { css } from 'lit'

export const answersStyle = css`
  .intro {
    max-inline-size: 46rem;
    padding-block: 0.7rem 0;
  }
  .sides {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    column-gap: 3rem;
  }
  .asking,
  aside {
    min-inline-size: 0;
  }
  fieldset {
    min-inline-size: 0;
    margin: 1.4rem 0 0;
    padding: 0;
    border: 0;
  }
  .gives fieldset {
    margin-block-start: 0.6rem;
  }
  legend {
    padding: 0 0 0.3rem;
    font-weight: 700;
  }
  .gives legend {
    font-weight: 400;
  }
  .choices {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 15rem), 1fr));
    column-gap: 1.4rem;
  }
  .choice {
    display: flex;
    align-items: center;
    gap: 0.7rem;
    min-block-size: 44px;
    padding-block: 0.2rem;
    border-block-end: 1px solid var(--rule);
    line-height: 1.3;
    cursor: pointer;
  }
  .choice .small {
    display: block;
  }
  .choice input {
    flex: none;
    inline-size: 1.2rem;
    block-size: 1.2rem;
    margin: 0;
    accent-color: var(--ink);
  }
  .gives {
    --figure: 168px;
    container-type: inline-size;
  }
  .hint-line {
    min-block-size: 2.4rem;
    padding-block-start: 0.5rem;
  }
  .job {
    margin-block-start: 1.4rem;
  }
  aside h2 {
    margin-block-start: 1.4rem;
  }
  h3 {
    margin-block-start: 1.2rem;
    padding-block-end: 0.2rem;
    font-size: 1rem;
    border-block-end: 1px solid var(--ink);
  }
  .sections li,
  .failing li {
    padding-block: 0.35rem;
    border-block-end: 1px solid var(--rule);
    line-height: 1.3;
  }
  .why {
    display: block;
    padding-inline-start: 0.7rem;
    border-inline-start: 4px solid var(--ink);
  }
  dl {
    margin: 0;
  }
  dl div {
    display: flex;
    justify-content: space-between;
    column-gap: 1.2rem;
    padding-block: 0.3rem;
    border-block-end: 1px solid var(--rule);
  }
  dd {
    font-variant-numeric: tabular-nums;
    text-align: end;
    white-space: nowrap;
  }
  aside p {
    padding-block: 0.5rem 0;
  }
  .presses {
    padding-block-start: 1rem;
  }
  .problem {
    margin-block-start: 1rem;
    padding-inline-start: 0.7rem;
    border-inline-start: 4px solid var(--ink);
  }
  @media (pointer: coarse) {
    .hint-line {
      display: none;
    }
  }
  @container page (min-width: 56rem) {
    .sides {
      grid-template-columns: minmax(0, 1fr) minmax(0, 24rem);
    }
  }
`
