import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import type { Steps } from '../../worksheet/index.ts'
import { type CellSignal, labelOf, requestChange, type WideView } from '../shared/cell-view.ts'
import { doneText, hasReadings, startedOver, ticked, withoutReadings } from './steps-ticks.ts'
import './steps-reading.ts'
import { headed } from '../style/headed.ts'
import { shared } from '../style/styles.ts'
import { stepsWords } from './words.ts'

type Step = Steps['steps'][number]

/** The order of work: steps to tick, each with its reading. */
@customElement('steps-cell')
export class StepsCell extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    headed,
    css`
      ol {
        list-style: none;
        margin: 0;
        padding: 0;
      }
      li {
        margin-inline-start: -0.6rem;
        padding-inline-start: calc(0.6rem - 4px);
        border-inline-start: 4px solid transparent;
      }
      /* Its last steps end in a rule. */
      section {
        border-block-end: 0;
        overflow-x: clip;
        overflow-clip-margin: 8px;
      }
      li {
        break-inside: avoid;
        border-block-end: 1px solid var(--rule);
      }
      /* The work reads down a column, and on at the top of the next. */
      @container (min-width: 48rem) {
        ol {
          columns: 2;
          column-gap: 36px;
          /* The bar of the present step is beside its column. */
          margin-inline-start: -0.6rem;
          padding-inline-start: 0.6rem;
        }
      }
      @container (min-width: 76rem) {
        ol {
          columns: 3;
        }
      }
      /* Columns broken by a page leave empty ones behind them. */
      @media print {
        ol {
          columns: auto;
        }
      }
      /* Its reading is beside a step where there is room. */
      @container (min-width: 48rem) {
        li.reads {
          display: grid;
          grid-template-columns: minmax(0, 1fr) 9rem;
          column-gap: 8px;
        }
      }
      /* The present step. */
      .next {
        border-inline-start-color: var(--ink);
      }
      .next .text {
        font-weight: 700;
      }
      label {
        display: grid;
        grid-template-columns: auto auto minmax(0, 1fr);
        column-gap: 0.6rem;
        align-items: start;
        min-block-size: var(--row);
        padding-block: calc((var(--row) - 1.35em) / 2);
        line-height: 1.35;
        cursor: pointer;
        font-size: var(--steps-size, 1rem);
      }
      label:hover .text {
        text-decoration: underline;
        text-decoration-thickness: 1px;
        text-underline-offset: 0.28em;
      }
      input {
        flex: none;
        inline-size: var(--tick, 24px);
        block-size: var(--tick, 24px);
        margin: calc((1.35em - var(--tick, 24px)) / 2) 0 0;
        accent-color: var(--ink);
      }
      .number {
        min-inline-size: 1.25em;
        text-align: end;
        font-variant-numeric: tabular-nums;
      }
      .text {
        min-inline-size: 0;
        overflow-wrap: break-word;
        text-wrap: pretty;
      }
      .done .text,
      .done .number {
        color: var(--quiet);
      }
      @container (max-width: 47.99rem) {
        steps-reading {
          margin-inline-start: 2.1rem;
          padding-block-end: 4px;
        }
      }
      .state,
      .foot {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        column-gap: 1.1rem;
      }
    `,
  ]

  @property({ attribute: false }) view!: CellSignal<WideView<Steps>>
  /** True after starting over, when the readings may be cleared as well. */
  @state() private fresh = false

  private tick(at: number, done: boolean): void {
    this.fresh = false
    const refused = requestChange(this, { do: 'replace', cell: ticked(this.view.get().cell, at, done) })
    if (refused !== undefined) this.requestUpdate()
  }

  private startOver(): void {
    const { cell } = this.view.get()
    if (requestChange(this, { do: 'replace', cell: startedOver(cell) }) === undefined) this.fresh = true
  }

  private clearReadings(): void {
    const { cell, sheet } = this.view.get()
    requestChange(this, withoutReadings(cell, sheet))
    this.fresh = false
    void this.updateComplete.then(() => this.renderRoot.querySelector('input')?.focus())
  }

  private step(step: Step, at: number, next: number, view: WideView<Steps>): TemplateResult {
    const done = step.done === true
    return html`
      <li class="${done ? 'done' : ''} ${at === next ? 'next' : ''} ${step.reading === undefined ? '' : 'reads'}">
        <label>
          <input
            type="checkbox"
            .checked=${live(done)}
            @change=${(event: Event) => this.tick(at, (event.target as HTMLInputElement).checked)}
          >
          <span class="number">${at + 1}</span>
          <span class="text">${step.text.trim() || stepsWords.noText}</span>
        </label>
        ${
          step.reading === undefined
            ? nothing
            : html`<steps-reading .view=${view} name=${step.reading}></steps-reading>`
        }
      </li>
    `
  }

  override render(): TemplateResult {
    const view = this.view.get()
    const { cell, sheet } = view
    const { steps } = cell
    const next = steps.findIndex(({ done }) => done !== true)
    const started = steps.some(({ done }) => done === true)
    return html`
      <section aria-labelledby="title">
        <div class="head">
          <h3 id="title">${labelOf(cell)}</h3>
          <span class="state">
            <span role="status">${doneText(steps)}</span>
            ${
              steps.length === 0
                ? nothing
                : html`<button type="button" class="word" aria-disabled=${!started} @click=${() => started && this.startOver()}>${stepsWords.startOver}</button>`
            }
          </span>
        </div>
        <ol>
          ${steps.map((step, at) => this.step(step, at, next, view))}
        </ol>
        ${
          this.fresh && !started && hasReadings(cell, sheet)
            ? html`<div class="foot">
                <span class="small">${stepsWords.readingsRemain}</span>
                <button type="button" class="word small" @click=${() => this.clearReadings()}>${stepsWords.clearReadings}</button>
              </div>`
            : nothing
        }
      </section>
    `
  }
}
