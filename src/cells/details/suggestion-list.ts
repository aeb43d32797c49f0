import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Suggestions } from '../../worksheet/advice/suggestions.ts'
import { requestChange } from '../shared/cell-view.ts'
import { shared } from '../style/styles.ts'

const AT_FIRST = 4

/** Mends as buttons, each applied with one press and taken back with one undo. */
@customElement('mend-list')
export class SuggestionList extends LitElement {
  static override styles = [
    shared,
    css`
      .presses {
        padding-block: 0.5rem 0.2rem;
      }
      .gives {
        margin-inline-start: 0.5em;
      }
    `,
  ]

  @property({ attribute: false }) found!: Suggestions
  @property({ attribute: false }) called!: (name: string) => string
  /** What to say where there is none. */
  @property() none = ''
  @state() private all = false

  override render(): TemplateResult | typeof nothing {
    const { mends, nearest, why } = this.found
    if (mends.length === 0) {
      if (why) return html`<p class="small quiet">${why}</p>`
      if (!nearest) return this.none ? html`<p class="small quiet">${this.none}</p>` : nothing
      return html`<p class="small">
        No single given mends it. Nearest is ${this.called(nearest.given)} ${nearest.shown}, ${nearest.short} short.
      </p>`
    }
    const shown = this.all || mends.length <= AT_FIRST + 1 ? mends : mends.slice(0, AT_FIRST)
    return html`
      <div class="presses">
        ${shown.map(
          ({ given, shown: value, gives, change }) =>
            html`<button type="button" class="press" @click=${() => requestChange(this, change)}>
              <span>${this.called(given)} <b>${value}</b>${gives ? html`<span class="gives quiet">gives ${gives}</span>` : nothing}</span>
            </button>`,
        )}
        ${
          shown.length < mends.length
            ? html`<button type="button" class="word" @click=${() => {
                this.all = true
              }}>${mends.length - shown.length} more</button>`
            : nothing
        }
      </div>
    `
  }
}
