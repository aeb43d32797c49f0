import { css } from 'lit'

/** A line that unfolds what is folded below it: its label, what is inside in quiet type, and an arrow. */
export const foldLine = css`
  summary {
    cursor: pointer;
    list-style: none;
  }
  summary::-webkit-details-marker {
    display: none;
  }
  .fold-line > summary {
    display: flex;
    align-items: center;
    gap: 8px;
    min-block-size: var(--fold-row);
    border-block-end: 1px solid var(--rule);
  }
  .fold-line > summary > span {
    flex: none;
  }
  .fold-line > summary > .names {
    flex: 0 1 auto;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .fold-line > summary::after {
    content: '';
    flex: none;
    inline-size: 8px;
    block-size: 8px;
    margin-inline: auto 4px;
    border: solid var(--edge);
    border-width: 0 2px 2px 0;
    rotate: 45deg;
    translate: 0 -2px;
  }
  .fold-line[open] > summary::after {
    rotate: 225deg;
    translate: 0 2px;
  }
`
