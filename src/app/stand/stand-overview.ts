import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import '../../cells/checks/check-cell.ts'
import { missingReason } from '../../cells/basic/result-cell.ts'
import { detailsWords } from '../../cells/details/words.ts'
import { type CellSignal, type CheckView, labelOf } from '../../cells/shared/cell-view.ts'
import { shared } from '../../cells/style/styles.ts'
import { withFace } from '../common/route.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { bigFigure, bigFigureStyle } from './big-figure.ts'
import { comparedOf, settingOf, targetRests } from './setting.ts'
import { resultsBySection, standChecks } from './stand-cells.ts'
import { type FigureInOrder, figuresInOrder, type StandStep } from './stand-steps.ts'
import { standWords as words } from './words.ts'

/** All figures to set and to read at the stand, in the order of work. Fires `step-asked` with the place of a step. */
@customElement('stand-overview')
export class StandOverview extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    bigFigureStyle,
    css`
      :host {
        container-type: inline-size;
        --big: 2.4rem;
      }
      .figures {
        columns: 26rem 2;
        column-gap: 48px;
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        break-inside: avoid;
      }
      .row {
        display: grid;
        grid-template-columns: 1.8rem minmax(0, 1fr) minmax(0, 9.6rem) 6.4rem;
        gap: 0 12px;
        align-items: center;
        inline-size: 100%;
        min-block-size: 72px;
        padding: 4px 0;
        border: 0;
        border-block-end: 1px solid var(--rule);
        background: none;
        text-align: start;
      }
      button.row {
        cursor: pointer;
      }
      button.row:hover .label {
        text-decoration: underline;
        text-underline-offset: 0.2em;
      }
      .row:focus-visible {
        outline-offset: -2px;
      }
      .now .row {
        border-inline-start: 6px solid var(--ink);
        padding-inline-start: 8px;
      }
      .number {
        font-size: 1.0667rem;
        color: var(--quiet);
      }
      .label {
        display: block;
        font-size: 1.1333rem;
        line-height: 1.2;
      }
      .row .room {
        text-align: end;
      }
      .big.long {
        font-size: 1.2rem;
      }
      .measured {
        padding-inline-start: 12px;
        border-inline-start: 1px solid var(--rule);
        font-size: 1.0667rem;
        line-height: 1.25;
      }
      .measured .small {
        display: block;
      }
      .nothing {
        display: grid;
        gap: 8px;
        max-inline-size: 48rem;
        padding-block: 12px;
        font-size: 1.1333rem;
      }
      a {
        color: inherit;
        text-underline-offset: 0.28em;
      }
      .sections {
        padding-block: 8px;
      }
      .checks {
        padding-block-start: 12px;
      }
      @container (max-width: 30rem) {
        .row {
          grid-template-columns: 1.4rem minmax(0, 1fr) minmax(0, 8.6rem);
          gap: 0 8px;
        }
        .measured {
          grid-column: 2 / -1;
          padding-inline-start: 0;
          border: 0;
        }
        .measured .small {
          display: inline;
        }
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  @property({ attribute: false }) steps!: readonly StandStep[]
  @property({ type: Number }) at = 0
  @state() private section = 0

  private ask(at: number): void {
    this.dispatchEvent(new CustomEvent('step-asked', { detail: at, bubbles: true, composed: true }))
  }

  private figure({ cell, step, section }: FigureInOrder, repeated: ReadonlySet<string>): TemplateResult {
    const { sheet, called } = this.open
    const outcome = sheet.outcome(cell.id)
    const { target, measuredText, difference } = comparedOf(sheet, cell)
    const own = target ?? (outcome.state === 'value' ? settingOf(outcome) : undefined)
    // A reading that is still to be taken shows the figure of the example until then.
    const rests = own !== undefined && targetRests(sheet, cell, this.open.resting)
    const label = labelOf(cell)
    const isNow = step !== undefined && step.number === this.at + 1
    const isRead = step?.reading === cell || cell.kind === 'result'
    const sub = [
      repeated.has(label) ? section : '',
      isNow ? words.now : step?.done ? words.stepDone : '',
      missingReason(outcome, called) ?? '',
      outcome.state === 'value' && outcome.before ? detailsWords.measuredBefore(outcome.before.map(called)) : '',
      target?.exactly ? words.exactFigure(target.exactly) : '',
      rests ? words.exampleFigure(cell.kind === 'given') : '',
    ].filter(Boolean)
    const content = html`
      <span class="number">${step?.number ?? ''}</span>
      <span>
        <span class="label">${label}</span>
        ${sub.length > 0 ? html`<span class="small quiet">${sub.join(', ')}</span>` : nothing}
      </span>
      ${bigFigure(own, rests)}
      ${
        measuredText
          ? html`<span class="measured">${measuredText}<span class="small quiet"> ${difference || words.measured}</span></span>`
          : isRead && (step?.reading === cell || (cell.kind === 'result' && cell.measure !== undefined))
            ? html`<span class="measured"><span aria-hidden="true">–</span><span class="small quiet"> ${words.toMeasure}</span></span>`
            : html`<span></span>`
      }
    `
    return html`
      <li class=${isNow ? 'now' : ''} data-cell=${cell.id}>
        ${
          step
            ? html`<button
                type="button"
                class="row"
                @click=${() => this.ask(step.number - 1)}
              >${content}<span class="unseen">${words.goToStep(step.number)}</span></button>`
            : html`<div class="row">${content}</div>`
        }
      </li>
    `
  }

  /** Shown while nothing is marked: how to mark a figure, and the results of one section. */
  private unmarked(): TemplateResult {
    const sections = resultsBySection(this.open.sheet.cells)
    const chosen = sections[this.section] ?? sections[0]
    return html`
      <div class="nothing">
        <p>${words.nothingMarkedBefore}<a href=${withFace(location.hash, 'build')}>${words.build}</a>${words.nothingMarkedAfter}</p>
        ${chosen && sections.length > 1 ? html`<p>${words.meanwhile}</p>` : nothing}
      </div>
      ${
        sections.length > 1
          ? html`<div class="words sections" role="group" aria-label=${words.sections}>
              ${sections.map(
                (one, at) =>
                  html`<button
                    type="button"
                    class="word"
                    aria-pressed=${one === chosen}
                    @click=${() => {
                      this.section = at
                    }}
                  >${one.title || words.beforeSections}</button>`,
              )}
            </div>`
          : nothing
      }
      ${chosen ? this.list(chosen.results.map((cell) => ({ cell, step: undefined, section: chosen.title }))) : nothing}
    `
  }

  private list(figures: readonly FigureInOrder[]): TemplateResult {
    const labels = figures.map(({ cell }) => labelOf(cell))
    const repeated = new Set(labels.filter((label, at) => labels.indexOf(label) !== at))
    return html`<ul class="figures">${figures.map((one) => this.figure(one, repeated))}</ul>`
  }

  override render(): TemplateResult {
    this.open.changed.get()
    const { sheet } = this.open
    const figures = figuresInOrder(sheet, this.steps)
    const checks = standChecks(sheet.cells)
    return html`
      ${figures.length > 0 ? this.list(figures) : this.unmarked()}
      ${
        checks.length > 0
          ? html`<div class="checks">${checks.map((cell) => html`<check-cell data-cell=${cell.id} .view=${this.open.view(cell) as CellSignal<CheckView>}></check-cell>`)}</div>`
          : nothing
      }
    `
  }
}
