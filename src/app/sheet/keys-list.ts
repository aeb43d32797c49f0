import { css, html, type TemplateResult } from 'lit'
import { ticked } from '../../cells/shared/labelled.ts'
import { showSigns, signsShown } from '../../cells/shared/touch-row.ts'

export const keysStyle = css`
  .keys h3 {
    font-size: 1rem;
    padding-block-start: 0.6rem;
  }
  .keys dl {
    display: grid;
    grid-template-columns: 12rem minmax(0, 1fr);
    gap: 0.35rem 1.4rem;
    padding-block: 0.3rem 0.6rem;
  }
  @media (max-width: 34rem) {
    .keys dl {
      grid-template-columns: minmax(0, 1fr);
      row-gap: 0;
    }
    .keys dd {
      padding-block-end: 0.4rem;
    }
  }
  .keys dt {
    font-weight: 700;
  }
`

type Key = readonly [keys: string, does: string]

const KEYS: readonly (readonly [where: string, keys: readonly Key[]])[] = [
  [
    'Everywhere in a sheet',
    [
      ['?', 'opens this list, outside a field; once more, closes it'],
      ['Ctrl Z', 'undoes the last change'],
      ['Shift Ctrl Z, Ctrl Y', 'does it again'],
      ['Ctrl F', 'finds in the sheet, in Fill in and in Build; once more, in the page as the browser does'],
      ['Ctrl P', 'prints the job sheet'],
    ],
  ],
  [
    'While finding',
    [
      ['Enter', 'goes to the next place'],
      ['Shift Enter', 'goes to the one before'],
      ['Escape', 'leaves off, at what was found'],
    ],
  ],
  [
    'Filling in, and at the stand',
    [
      ['Space', 'ticks a step, or takes its tick away'],
      ['← ↑ → ↓', 'on a lamp of a drawing, moves it; with Shift, ten times as far'],
    ],
  ],
  [
    'In a table',
    [
      ['Enter', 'goes to the next row; after the last, to a new one'],
      ['← ↑ → ↓', 'goes from field to field'],
      ['Page Up, Page Down', 'goes ten rows up or down'],
      ['Ctrl Home, Ctrl End', 'goes to the first or the last row'],
      ['Alt Enter', 'adds a row below'],
      ['Alt ↑, Alt ↓', 'moves a row earlier or later'],
      ['Alt Delete', 'removes a row'],
    ],
  ],
  [
    'In Build, on a cell',
    [
      ['↑, ↓', 'goes from cell to cell'],
      ['Enter', 'opens a cell, or closes it'],
      ['Escape', 'closes a cell; selects none'],
      ['Alt ↑, Alt ↓', 'moves a cell, or the cells selected, earlier or later'],
      ['Shift Alt ↑, Shift Alt ↓', 'moves a whole section earlier or later'],
      ['Alt Enter', 'adds a cell below'],
      ['Alt Delete', 'removes a cell, or the cells selected'],
      ['Shift ↑, Shift ↓', 'selects from here on'],
      ['Ctrl A', 'selects all'],
      ['Ctrl C, Ctrl X', 'copies or cuts the cell, or the cells selected, as text'],
      ['Ctrl V', 'puts copied cells in below; lines such as «name = formula» too'],
    ],
  ],
  [
    'Building steps',
    [
      ['Enter', 'adds a step below'],
      ['Ctrl V', 'makes a step of each line pasted'],
    ],
  ],
  [
    'In a formula',
    [
      ['Enter', 'keeps it and leaves'],
      ['Escape', 'puts back what was there'],
      ['Ctrl Space', 'offers names, functions and units'],
    ],
  ],
]

/** The keys the sheet knows, and whether the trade's signs stand under the field in hand. */
export const keysList = (): TemplateResult => html`
  <details class="keys">
    <summary>Keys and signs</summary>
    <p class="small quiet">On a Mac, Cmd stands for Ctrl, and Option for Alt.</p>
    ${KEYS.map(
      ([where, keys]) => html`
        <h3>${where}</h3>
        <dl>${keys.map(([names, does]) => html`<dt>${names}</dt><dd>${does}</dd>`)}</dl>
      `,
    )}
    ${ticked('Show f/, 1/, × and ± to press under the field in hand', signsShown.get(), showSigns)}
  </details>
`

/** Opens the list and takes the focus to it; closes it where it has been opened so. Gives what had the focus before. */
export function turnToKeys(list: HTMLDetailsElement, before: HTMLElement | undefined): HTMLElement | undefined {
  if (list.open && before) {
    list.open = false
    before.focus()
    return undefined
  }
  const held = deepFocus()
  list.open = true
  const summary = list.querySelector('summary')
  summary?.focus({ preventScroll: true })
  list.scrollIntoView({ block: 'start' })
  return held
}

function deepFocus(): HTMLElement {
  let at = document.activeElement
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
  return at instanceof HTMLElement ? at : document.body
}
