import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement } from 'lit/decorators.js'
import { labelledStyle, ticked } from '../../cells/fields/labelled.ts'
import { showSigns, signsShown } from '../../cells/shared/typing-aids.ts'
import { shared } from '../../cells/style/styles.ts'
import { keysWords as words } from './words.ts'

/** The keyboard shortcuts of a sheet, and whether the trade's signs are shown under the focused field. */
@customElement('keys-list')
export class KeysList extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    labelledStyle,
    css`
  .groups {
    columns: 33rem;
    column-gap: 48px;
  }
  section {
    break-inside: avoid;
  }
  h3 {
    font-size: 1rem;
    padding-block-start: 0.6rem;
  }
  dl {
    display: grid;
    grid-template-columns: 12rem minmax(0, 1fr);
    gap: 0.35rem 1.4rem;
    padding-block: 0.3rem 0.6rem;
  }
  @media (max-width: 34rem) {
    dl {
      grid-template-columns: minmax(0, 1fr);
      row-gap: 0;
    }
    dd {
      padding-block-end: 0.4rem;
    }
  }
  dt {
    font-weight: 700;
  }
    `,
  ]

  override render(): TemplateResult {
    return html`
      <p class="small quiet">${words.onMac}</p>
      <div class="groups">
        ${words.groups.map(
          ([where, keys]) => html`
            <section>
              <h3>${where}</h3>
              <dl>${keys.map(([names, effect]) => html`<dt>${names}</dt><dd>${effect}</dd>`)}</dl>
            </section>
          `,
        )}
      </div>
    ${ticked(words.signs, signsShown.get(), showSigns)}
    `
  }
}
