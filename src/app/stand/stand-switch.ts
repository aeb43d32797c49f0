import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import { type StandMode, standMode } from './stand-mode.ts'
import { standWords as words } from './words.ts'

const MODES: readonly (readonly [StandMode, string])[] = [
  ['check', words.check],
  ['step', words.oneStep],
  ['all', words.allFigures],
]

/** The switch between the ways to look at the stand, in the head of the sheet. */
@customElement('stand-switch')
export class StandSwitch extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      .modes {
        display: flex;
        overflow: hidden;
        border: 1px solid var(--ink);
        border-radius: 4px;
      }
      button {
        flex: 1 1 auto;
        min-block-size: 58px;
        padding-inline: 16px;
        border: 0;
        background: none;
        white-space: nowrap;
        cursor: pointer;
      }
      button + button {
        border-inline-start: 1px solid var(--ink);
      }
      button:hover {
        background: var(--mark);
      }
      button:focus-visible {
        outline-offset: -4px;
      }
      button[aria-pressed='true'] {
        background: var(--ink);
        color: var(--on-ink);
        font-weight: 700;
      }
      @media (max-width: 40rem) {
        button {
          padding-inline: 6px;
        }
      }
    `,
  ]

  override render(): TemplateResult {
    return html`
      <div class="modes" role="group" aria-label=${words.views}>
        ${MODES.map(
          ([mode, label]) =>
            html`<button type="button" aria-pressed=${standMode.get() === mode} @click=${() => standMode.set(mode)}>${label}</button>`,
        )}
      </div>
    `
  }
}
