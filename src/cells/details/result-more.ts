import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { showValue } from '../../language/index.ts'
import type { TargetAdvice } from '../../worksheet/advice/plan.ts'
import { type Working, workingOf } from '../../worksheet/analysis/working.ts'
import { declaredUnit, type ValueOutcome } from '../../worksheet/index.ts'
import { askForTarget } from '../shared/advice-request.ts'
import { goToCell, labelOf, type ResultView } from '../shared/cell-view.ts'
import { labelled, labelledStyle } from '../shared/labelled.ts'
import './suggestion-list.ts'
import { field, shared } from '../style/styles.ts'
import { NO_PLAN_FOR_TARGET, TARGET_VALUE } from './words.ts'

const MOST_TOLD = 4

/** A result unfolded: its working, where its limits come from, what it feeds, and what it should be. */
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
      .feeds {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        column-gap: 1.1rem;
      }
      .should {
        max-inline-size: 14rem;
        margin-block-start: 0.4rem;
      }
    `,
  ]

  @property({ attribute: false }) view!: ResultView
  private working: Working | undefined
  @state() private should = ''
  @state() private found: TargetAdvice | undefined

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has('view')) return
    const { cell, sheet } = this.view
    this.working = workingOf(sheet, cell.id)
    void this.look()
  }

  private async look(): Promise<void> {
    const { cell, sheet } = this.view
    const { should } = this
    const found = should.trim() === '' ? undefined : await askForTarget(this, sheet, cell.id, should)
    if (should === this.should) this.found = found
  }

  private suggestions(): TemplateResult | typeof nothing {
    const { found, view } = this
    if (!found) return nothing
    if (found.error !== undefined) return html`<p class="small quiet">${found.error}</p>`
    if (found.plans.length === 0) return html`<p class="small quiet">${NO_PLAN_FOR_TARGET}</p>`
    return html`<suggestion-list .sheet=${view.sheet} .plans=${found.plans}></suggestion-list>`
  }

  /** A link, not a button, so that a formula breaks into lines like any text. */
  private link(id: string, text: string): TemplateResult {
    const follow = (event: Event): void => {
      event.preventDefault()
      goToCell(this, id)
    }
    return html`<a class="name" href="#" @click=${follow}>${text}</a>`
  }

  private lead(id: string, text: string): TemplateResult {
    return html`<button type="button" class="word" @click=${() => goToCell(this, id)}>${text}</button>`
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
    const said = (amount: number): string => this.amount(outcome, amount)
    const told = limits.contributions.slice(0, MOST_TOLD)
    return html`
      <p class="small">
        At worst from ${said(limits.low)} to ${said(limits.high)}; likely within ${said(limits.likely)} either way.
        ${told.length > 0 ? html`Of that, ${told.map(({ name, amount }, i) => `${i === 0 ? '' : ', '}${this.view.called(name)} ${said(amount)}`)}.` : nothing}
        ${limits.bends ? html`Within these limits it does not change evenly: take the likely figure as a guess.` : nothing}
      </p>
    `
  }

  /** A ratio's spread has no ratio of its own: what is small in it is said plainly. */
  private amount({ type, value }: ValueOutcome, amount: number): string {
    const { unit } = declaredUnit(this.view.cell.unit)
    const odd = type.kind === 'number' && type.notation && Math.abs(amount) < Math.abs(value as number) / 2
    return odd
      ? `${Number(((100 * amount) / Math.abs(value as number)).toPrecision(2))} %`
      : showValue(amount, type, unit).text
  }

  override render(): TemplateResult {
    const { outcome, sheet } = this.view
    const { working } = this
    const fed = working?.feeds.flatMap((id) => sheet.cell(id) ?? []) ?? []
    const aimable = outcome.state === 'value' && outcome.type.kind === 'number' && !outcome.measured
    return html`
      ${working ? this.worked(working, outcome) : nothing}
      ${outcome.state === 'value' ? this.limits(outcome) : nothing}
      ${
        fed.length > 0
          ? html`<p class="feeds small"><span class="quiet">Feeds</span> ${fed.map((one) => this.lead(one.id, labelOf(one)))}</p>`
          : nothing
      }
      ${
        aimable
          ? html`
              <div class="should">
                ${labelled({
                  label: TARGET_VALUE,
                  value: this.should,
                  placeholder: outcome.shown.text,
                  put: (text) => {
                    this.should = text
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
