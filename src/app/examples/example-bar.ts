import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { goToCell, requestChange } from '../../cells/shared/cell-view.ts'
import { asOwn } from '../../cells/shared/given-origin.ts'
import { shared, unseen } from '../../cells/style/styles.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { countExamples, type Example, examplesOf, nextOf } from './examples.ts'
import './section-examples.ts'
import { exampleWords as words } from './words.ts'

/** Says how many figures and tables are still the example's, and goes from one to the next. Nothing where none has. */
@customElement('example-bar')
export class ExampleBar extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      /* The room it has before is its own, margins and all. */
      :host {
        display: flow-root;
      }
      .bar {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 6px 12px;
        margin-block: 10px 2px;
        padding: 5px 10px 5px 14px;
        border: 1px dashed var(--edge);
        background: var(--mark);
      }
      .sample {
        flex: none;
        inline-size: 20px;
        block-size: 13px;
        border: 1px dashed var(--ink);
        border-radius: 2px;
      }
      p {
        flex: 1 1 16rem;
      }
      /* One line on a phone, where the first field is to be on the first screen. */
      @media (max-width: 40rem) {
        .bar {
          flex-wrap: nowrap;
          gap: 8px;
          margin-block: 0;
          padding: 2px 2px 2px 10px;
        }
        .sample,
        .quiet {
          display: none;
        }
        p {
          flex-basis: 8rem;
          line-height: 1.2;
        }
        .press {
          flex: none;
          padding-inline: 10px;
        }
        .rest {
          ${unseen}
        }
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  @state() private asking = false
  /** The cell gone to last, after which the next one is looked for. */
  private last = ''

  private root: EventTarget | undefined

  override connectedCallback(): void {
    super.connectedCallback()
    this.root = this.getRootNode()
    this.root.addEventListener('example-used', this.used)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.root?.removeEventListener('example-used', this.used)
  }

  /** The next example follows the one that was used. */
  private readonly used = (event: Event): void => {
    this.last = (event as CustomEvent<string>).detail
    this.next(examplesOf(this.open.sheet))
  }

  private next(examples: readonly Example[]): void {
    const next = nextOf(this.open.sheet, examples, this.last)
    if (!next) return
    this.last = next.id
    goToCell(this, next.id)
  }

  private useAll(examples: readonly Example[]): void {
    this.asking = false
    requestChange(this, {
      do: 'several',
      changes: examples.map((cell) => ({ do: 'replace', cell: asOwn(cell) })),
    })
  }

  override render(): TemplateResult | typeof nothing {
    this.open.changed.get()
    const examples = examplesOf(this.open.sheet)
    if (examples.length === 0 || this.open.frozen.get()) return nothing
    if (this.asking)
      return html`
        <div class="bar" role="group" aria-label="${words.useAll} ${words.exampleFigures}">
          <p><b>${words.useAllAsk(...countExamples(examples))}</b> ${words.useAllWhy}</p>
          <button type="button" class="press primary" @click=${() => this.useAll(examples)}>${words.useThem}</button>
          <button type="button" class="press" @click=${() => {
            this.asking = false
          }}>${words.cancel}</button>
        </div>
      `
    return html`
      <div class="bar">
        <span class="sample"></span>
        <p><b>${words.stillExample(...countExamples(examples))}</b> <span class="quiet">${words.restsOnExample}</span></p>
        <button type="button" class="press primary" @click=${() => this.next(examples)}>${words.nextExample}</button>
        <button type="button" class="press" @click=${() => {
          this.asking = true
        }}><span>${words.useAll} <span class="rest">${words.exampleFigures}</span></span></button>
      </div>
    `
  }
}
