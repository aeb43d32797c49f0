import { css, html, type TemplateResult } from 'lit'
import { ticked } from '../../cells/shared/labelled.ts'
import { showSigns, signsShown } from '../../cells/shared/touch-row.ts'
import { keysWords as words } from './words.ts'

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

/** The keyboard shortcuts of a sheet, and whether the trade's signs are shown under the focused field. */
export const keysList = (): TemplateResult => html`
  <details class="keys">
    <summary>${words.title}</summary>
    <p class="small quiet">${words.onMac}</p>
    ${words.groups.map(
      ([where, keys]) => html`
        <h3>${where}</h3>
        <dl>${keys.map(([names, effect]) => html`<dt>${names}</dt><dd>${effect}</dd>`)}</dl>
      `,
    )}
    ${ticked(words.signs, signsShown.get(), showSigns)}
  </details>
`

/** Opens the list and moves the focus to it, or closes it where it was opened this way. Gives the element focused before. */
export function toggleKeys(list: HTMLDetailsElement, before: HTMLElement | undefined): HTMLElement | undefined {
  if (list.open && before) {
    list.open = false
    before.focus()
    return undefined
  }
  const focused = deepFocus()
  list.open = true
  const summary = list.querySelector('summary')
  summary?.focus({ preventScroll: true })
  list.scrollIntoView({ block: 'start' })
  return focused
}

function deepFocus(): HTMLElement {
  let at = document.activeElement
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
  return at instanceof HTMLElement ? at : document.body
}
