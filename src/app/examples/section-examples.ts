import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import type { Cell } from '../../worksheet/index.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { countExamples, examplesOf } from './examples.ts'
import { exampleWords as words } from './words.ts'

/** How many figures of the sections under a heading are still the example's, beside its heading; nothing where none is. */
@customElement('section-examples')
export class SectionExamples extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      :host {
        margin-inline-start: auto;
        font-size: 0.9333rem;
        color: var(--quiet);
        white-space: nowrap;
      }
      .sample {
        display: inline-block;
        inline-size: 20px;
        block-size: 13px;
        margin-inline-end: 8px;
        border: 1px dashed var(--edge);
        border-radius: 2px;
        vertical-align: -2px;
      }
      /* On a phone the bar above counts those of the whole sheet. */
      @media (max-width: 40rem) {
        :host {
          display: none;
        }
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  @property({ attribute: false }) cells!: readonly Cell[]

  override render(): TemplateResult | typeof nothing {
    this.open.changed.get()
    // An edit replaces the cell object, so the current ones are read from the sheet.
    const examples = examplesOf({ cells: this.cells.flatMap(({ id }) => this.open.sheet.cell(id) ?? []) })
    return examples.length > 0
      ? html`<span class="sample"></span>${words.inSection(...countExamples(examples))}`
      : nothing
  }
}
