import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { SheetAdvice } from '../../worksheet/advice/plan.ts'
import type { CheckOutcome } from '../../worksheet/index.ts'
import { askForAdvice } from '../details/advice-request.ts'
import { unbrokenFigures, withUnbrokenFigures } from '../details/unbroken-figures.ts'
import { detailsWords } from '../details/words.ts'
import type { CellSignal, CheckView } from '../shared/cell-view.ts'
import { checkSign, signStyle } from '../shared/check-sign.ts'
import { STATE_LABELS } from '../shared/words.ts'
import { shared } from '../style/styles.ts'

export const checkStyle = css`
  .check {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    column-gap: 8px;
    align-items: start;
    padding-block: 8px 9px;
    border-block-end: 1px solid var(--rule);
  }
  .check.fail {
    margin-block-start: 10px;
    border-block-start: 2px solid var(--ink);
  }
  .check .sign {
    margin-block-start: 2px;
  }
  .check p {
    text-wrap: pretty;
  }
  .check.rests > .sign,
  .check.rests p {
    color: var(--quiet);
  }
  .check.rests b {
    font-weight: 400;
    text-decoration: underline;
    text-decoration-style: dashed;
    text-decoration-thickness: 1px;
    text-underline-offset: 4px;
  }
  .check .word {
    margin: -4px -5px -8px;
    padding-inline: 5px;
  }
  .check .word:focus-visible {
    outline-offset: -4px;
  }
`

/** Advice is requested after a pause in typing, so that it never delays a key. */
const PAUSE_MS = 180

/** A check on the Fill in face: a sign, its state as a word, its message, and suggestions. */
@customElement('check-cell')
export class CheckCell extends SignalWatcher(LitElement) {
  static override styles = [shared, signStyle, checkStyle, unbrokenFigures]

  @property({ attribute: false }) view!: CellSignal<CheckView>
  @state() private advice: SheetAdvice | undefined
  /** Suggestions for a marginal check are shown on request. */
  @state() private asked = false
  /** Whether the sheet has changed since the advice shown was computed. */
  @state() private isStale = false
  private about: CheckOutcome | undefined
  private waiting: ReturnType<typeof setTimeout> | undefined
  private stopWatching: (() => void) | undefined

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.leaveOff()
    this.about = undefined
  }

  override updated(): void {
    const { outcome } = this.view.get()
    if (outcome === this.about) return
    this.about = outcome
    this.leaveOff()
    this.advice = undefined
    if (outcome.hangsOn) void import('../simulation/passes-share.ts')
    this.asked &&= outcome.state === 'marginal'
    if (this.isDue(outcome)) this.followSheet(outcome)
  }

  private leaveOff(): void {
    clearTimeout(this.waiting)
    this.stopWatching?.()
    this.stopWatching = undefined
  }

  /** Any change of the sheet may change what is advised, even where the outcome of the check stays the same. */
  private followSheet(outcome: CheckOutcome): void {
    this.leaveOff()
    const { sheet } = this.view.get()
    const lookSoon = (): void => {
      clearTimeout(this.waiting)
      this.waiting = setTimeout(() => void this.look(outcome), PAUSE_MS)
    }
    this.stopWatching = sheet.watch(() => {
      this.isStale = this.advice !== undefined
      lookSoon()
    })
    lookSoon()
  }

  private isDue({ state }: CheckOutcome): boolean {
    return state === 'fail' || (state === 'marginal' && this.asked)
  }

  private async look(outcome: CheckOutcome): Promise<void> {
    const { sheet } = this.view.get()
    const { worksheet } = sheet
    const [advice] = await Promise.all([askForAdvice(this, sheet), import('../details/suggestion-list.ts')])
    if (this.about !== outcome || !advice || sheet.worksheet !== worksheet) return
    this.advice = advice
    this.isStale = false
  }

  private suggestions(outcome: CheckOutcome): TemplateResult | typeof nothing {
    const { cell, sheet } = this.view.get()
    if (outcome.state === 'marginal' && !this.asked)
      return html`<button type="button" class="word small" @click=${() => {
        this.asked = true
        this.followSheet(outcome)
      }}>${detailsWords.increaseMargin}</button>`
    if (!this.advice || !this.isDue(outcome)) return nothing
    const { checks, plan } = this.advice
    const own = checks.get(cell.name)
    const isFirst =
      sheet.cells.find((one) => one.kind === 'check' && sheet.checkState(one.id) === 'fail')?.id === cell.id
    const whole = isFirst && plan && plan.passes.length > 1 ? plan : undefined
    return html`<suggestion-list
      .sheet=${sheet}
      .plans=${own?.plans ?? []}
      .none=${own?.none}
      .whole=${whole}
      .check=${outcome.state === 'fail' ? cell.name : ''}
      ?stale=${this.isStale}
    ></suggestion-list>`
  }

  override render(): TemplateResult {
    const { cell, outcome, called, rests: restsOn } = this.view.get()
    const { state } = outcome
    const rests = restsOn === true && state !== 'waiting' && state !== 'error'
    const error = outcome.state === 'error' ? outcome.diagnostics[0]?.message : undefined
    return html`
      <div class="check ${state} ${rests ? 'rests' : ''}">
        ${checkSign(state, rests)}
        <div>
          <p><b>${rests ? detailsWords.inExample(STATE_LABELS[state]) : STATE_LABELS[state]}:</b> ${withUnbrokenFigures(outcome.message || error || cell.label || cell.name)}</p>
          ${error && outcome.message && error !== outcome.message ? html`<p class="small quiet">${error}</p>` : nothing}
          ${
            outcome.hangsOn
              ? html`<p class="small">${detailsWords.notOverLimits(outcome.hangsOn.map(called))}</p>
                  <passes-share .view=${this.view.get()}></passes-share>`
              : nothing
          }
          ${this.suggestions(outcome)}
        </div>
      </div>
    `
  }
}
