import { css } from 'lit'

export const foundStyle = css`
  [data-found] {
    outline: 3px solid var(--ink);
    outline-offset: 3px;
  }
`

/** Marks the cell found last and unmarks all others; without a cell, only unmarks. */
export function markFound(root: ParentNode, cell?: HTMLElement): void {
  for (const one of root.querySelectorAll<HTMLElement>('[data-found]')) delete one.dataset.found
  if (cell) cell.dataset.found = ''
}
