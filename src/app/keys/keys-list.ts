import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement } from 'lit/decorators.js'
import { labelledStyle, ticked } from '../../cells/fields/labelled.ts'
import { type CheckState, checkSign, signStyle } from '../../cells/shared/check-sign.ts'
import { showSigns, signsShown } from '../../cells/shared/typing-aids.ts'
import { STATE_LABELS } from '../../cells/shared/words.ts'
import { shared } from '../../cells/style/styles.ts'
import { keysWords as words } from './words.ts'

/** The states of a check that is computed from an example. */
const RESTING: readonly CheckState[] = ['fail', 'marginal', 'pass']

/** What the signs of checks mean, the keyboard shortcuts of a sheet, and whether the trade's signs are shown under the focused field. */
@customElement('keys-list')
export class KeysList extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    labelledStyle,
    signStyle,
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
  .sign {
    margin-inline-end: 8px;
    vertical-align: -2px;
  }
    `,
  ]

  /** The signs as they are drawn beside the checks. */
  private signs(): TemplateResult {
    return html`
      <section>
        <h3>${words.signsOfChecks}</h3>
        <dl>
          ${Object.entries(words.states).map(
            ([state, meaning]) =>
              html`<dt>${checkSign(state as CheckState)}${STATE_LABELS[state as CheckState]}</dt><dd>${meaning}</dd>`,
          )}
          <dt>${RESTING.map((state) => checkSign(state, true))}</dt><dd>${words.resting}</dd>
        </dl>
      </section>
    `
  }

  override render(): TemplateResult {
    return html`
      <p class="small quiet">${words.onMac}</p>
      <div class="groups">
        ${this.signs()}
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
