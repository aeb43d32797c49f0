import { css } from 'lit'

export const joinStyle = css`
  :host {
    padding-block: 0.4rem 1rem;
    border-block: 2px solid var(--ink);
  }
  h2 {
    font-size: 1.15rem;
    padding-block: 0.5rem;
  }
  h3 {
    font-size: 1rem;
    padding-block: 0.9rem 0.2rem;
    border-block-end: 1px solid var(--ink);
  }
  ul {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .answers {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 24rem), 1fr));
    column-gap: 2.4rem;
  }
  li {
    border-block-end: 1px solid var(--rule);
  }
  .answer {
    display: block;
    inline-size: 100%;
    min-block-size: 44px;
    padding: 0.6rem 0;
    border: 0;
    background: none;
    text-align: start;
    cursor: pointer;
  }
  .answer b {
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.25em;
  }
  .answer:hover b {
    text-decoration-thickness: 2px;
  }
  /* The text about a section goes on from its heading; in this list it is one of many sentences. */
  .answer .quiet {
    display: block;
  }
  .answer .quiet::first-letter {
    text-transform: uppercase;
  }
  .seek {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.3rem 0.9rem;
  }
  .seek .field {
    flex: 1 1 14rem;
    max-inline-size: 24rem;
  }
  .summary {
    display: grid;
    gap: 0.6rem;
    max-inline-size: 46rem;
    padding-block: 0.2rem 0.8rem;
  }
  fieldset {
    min-inline-size: 0;
    margin: 0;
    padding: 0.6rem 0;
    border: 0;
    border-block-start: 1px solid var(--rule);
  }
  legend {
    float: inline-start;
    inline-size: 100%;
    padding: 0;
  }
  legend + * {
    clear: both;
  }
  .way {
    display: flex;
    align-items: center;
    gap: 0.7rem;
    min-block-size: 44px;
    cursor: pointer;
  }
  .way input {
    flex: none;
    inline-size: 1.2rem;
    block-size: 1.2rem;
    margin: 0;
    accent-color: var(--ink);
  }
  .presses {
    padding-block: 0.8rem 0.4rem;
  }
  .alone {
    padding-block: 0.6rem;
    border-block-start: 1px solid var(--rule);
  }
  .problem {
    padding-inline-start: 0.7rem;
    border-inline-start: 4px solid var(--ink);
  }
`
