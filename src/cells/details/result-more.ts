import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { TargetAdvice } from '../../worksheet/advice/plan.ts'
import { adviceWords } from '../../worksheet/advice/words.ts'
import { type Working, workingOf } from '../../worksheet/analysis/working.ts'
import { readingText, type ValueOutcome } from '../../worksheet/index.ts'
import { labelled, labelledStyle } from '../fields/labelled.ts'
import { goToCell, labelOf, type ResultView } from '../shared/cell-view.ts'
import { amountText } from '../simulation/amount-text.ts'
import { askForTarget } from './advice-request.ts'
import '../simulation/simulated-figure.ts'
import './suggestion-list.ts'
import { field, shared } from '../style/styles.ts'
import { detailsWords } from './words.ts'

const MOST_CONTRIBUTIONS = 4

/** An unfolded result: its working, its limits and their causes, the cells that use it, and a target value. */
@customElement('result-more')
export class ResultMore extends LitElement {
  static override styles = [
    shared,
    field,
    labelledStyle,
    css`
      :host {
        padding-block: 0.2rem 0.6rem;
      }
      .working {
        font-family: var(--mono);
        font-size: 0.92rem;
        line-height: 1.9;
        overflow-wrap: anywhere;
      }
      .working p {
        padding-inline-start: 1.2em;
        text-indent: -1.2em;
      }
      .name {
        color: inherit;
        text-decoration: underline;
        text-decoration-thickness: 1px;
        text-underline-offset: 0.25em;
      }
      .name:hover {
        text-decoration-thickness: 2px;
      }
      .users {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        column-gap: 1.1rem;
      }
      .target {
        max-inline-size: 14rem;
        margin-block-start: 0.4rem;
      }
    `,
  ]

  @property({ attribute: false }) view!: ResultView
  private working: Working | undefined
  @state() private target = ''
  @state() private found: TargetAdvice | undefined

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has('view')) return
    const { cell, sheet } = this.view
    this.working = workingOf(sheet, cell.id)
    void this.look()
  }

  /** Asks for changes that give the target. A question asked before may arrive after this one and end it: it is asked again. */
  private async look(again = 2): Promise<void> {
    const { cell, sheet } = this.view
    const { target } = this
    const isAsked = target.trim() !== ''
    const found = isAsked ? await askForTarget(this, sheet, cell.id, target) : undefined
    if (target !== this.target) return
    if (isAsked && !found && again > 0) return this.look(again - 1)
    this.found = found
  }

  private suggestions(): TemplateResult | typeof nothing {
    const { found, view } = this
    if (!found) return nothing
    if (found.error !== undefined) return html`<p class="small quiet">${found.error}</p>`
    if (found.plans.length === 0) return html`<p class="small quiet">${adviceWords.noneGives}</p>`
    return html`<suggestion-list .sheet=${view.sheet} .plans=${found.plans}></suggestion-list>`
  }

  /** A link instead of a button, so that a formula wraps like text. */
  private link(id: string, text: string): TemplateResult {
    const follow = (event: Event): void => {
      event.preventDefault()
      goToCell(this, id)
    }
    return html`<a class="name" href="#" @click=${follow}>${text}</a>`
  }

  private lead(id: string, text: string): TemplateResult {
    return html`<button type="button" class="word says" @click=${() => goToCell(this, id)}>${text}</button>`
  }

  private worked({ formula, figures }: Working, outcome: ResultView['outcome']): TemplateResult {
    const value = outcome.state === 'value' ? (outcome.measured?.computed?.shown ?? outcome.shown).text : undefined
    const plain = value?.replaceAll('_', ' ')
    return html`
      <div class="working">
        <p>${formula.map(({ text, id }) => (id === undefined ? text : this.link(id, text)))}</p>
        ${figures ? html`<p>= ${figures}</p>` : nothing}
        ${plain === undefined || plain.length > 60 ? nothing : html`<p>= <b>${plain}</b></p>`}
      </div>
    `
  }

  private limits(outcome: ValueOutcome): TemplateResult | typeof nothing {
    const { limits, type } = outcome
    if (!limits || type.kind !== 'number') return nothing
    const amount = (one: number): string => amountText(this.view.cell, outcome, one)
    const shown = limits.contributions.slice(0, MOST_CONTRIBUTIONS)
    return html`
      <p class="small">
        ${detailsWords.limits(amount(limits.low), amount(limits.high), amount(limits.likely))}
        ${
          shown.length > 0
            ? detailsWords.contributions(
                shown
                  .map((one) => detailsWords.contribution(this.view.called(one.name), amount(one.amount)))
                  .join(', '),
              )
            : nothing
        }
        ${limits.nonlinear ? detailsWords.nonlinear : nothing}
      </p>
      <simulated-figure .view=${this.view} .nonlinear=${limits.nonlinear}></simulated-figure>
    `
  }

  override render(): TemplateResult {
    const { outcome, sheet } = this.view
    const { working } = this
    const read = readingText(this.view.cell)
    const users = working?.feeds.flatMap((id) => sheet.cell(id) ?? []) ?? []
    const aimable = outcome.state === 'value' && outcome.type.kind === 'number' && !outcome.measured
    return html`
      ${working ? this.worked(working, outcome) : nothing}
      ${outcome.state === 'value' ? this.limits(outcome) : nothing}
      ${read ? html`<p class="small">${detailsWords.read(read)}</p>` : nothing}
      ${
        users.length > 0
          ? html`<p class="users small"><span class="quiet">${detailsWords.usedBy}</span> ${users.map((one) => this.lead(one.id, labelOf(one)))}</p>`
          : nothing
      }
      ${
        aimable
          ? html`
              <div class="target">
                ${labelled({
                  label: detailsWords.targetValue,
                  value: this.target,
                  placeholder: outcome.shown.text,
                  put: (text) => {
                    this.target = text
                    void this.look()
                  },
                })}
              </div>
              ${this.suggestions()}
            `
          : nothing
      }
    `
  }
}
