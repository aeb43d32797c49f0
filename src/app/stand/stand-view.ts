import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { goToCell, labelOf, requestChange } from '../../cells/shared/cell-view.ts'
import { checkSign, signStyle } from '../../cells/shared/check-sign.ts'
import { hasReadings, startedOver, ticked, withoutReadings } from '../../cells/steps/steps-ticks.ts'
import { stepsWords } from '../../cells/steps/words.ts'
import { shared } from '../../cells/style/styles.ts'
import type { Check, Steps } from '../../worksheet/index.ts'
import { enterStand } from '../common/colour-scheme.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { hasOpenPoints } from './check-first.ts'
import './check-first.ts'
import { frameCount, withTaken } from './frame-count.ts'
import { type StandMode, standMode } from './stand-mode.ts'
import './stand-overview.ts'
import './stand-step.ts'
import { checksIn } from './stand-cells.ts'
import { drawingOf, type StandStep, standSteps } from './stand-steps.ts'
import { standStyle } from './stand-style.ts'
import './stand-switch.ts'
import { StandWake, WAKE_TEXT } from './stand-wake.ts'
import { standWords as words } from './words.ts'

/** The stand: one step at a time, or all figures to set on the equipment, large enough to read from 1 m. */
@customElement('stand-view')
export class StandView extends SignalWatcher(LitElement) {
  static override styles = [shared, signStyle, standStyle]

  @property({ attribute: false }) open!: OpenSheet
  /** The place of the step shown, counted from 0. */
  @state() private at = 0
  /** True after starting over, when the readings may be cleared as well. */
  @state() private fresh = false
  private readonly wake = new StandWake()
  private shown: StandMode | undefined

  override connectedCallback(): void {
    super.connectedCallback()
    enterStand(true)
    this.wake.start()
  }

  override willUpdate(): void {
    if (!this.hasUpdated) this.begin()
  }

  /** Begins with what is open in the sheet, or with the first step that is not done. */
  private begin(): void {
    const { sheet } = this.open
    const steps = standSteps(sheet)
    const next = steps.findIndex(({ done }) => !done)
    this.at = Math.max(0, next)
    const started = steps.some(({ done }) => done)
    const isOver = steps.length === 0 || next < 0
    standMode.set(!started && hasOpenPoints(sheet) ? 'check' : isOver ? 'all' : 'step')
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.wake.stop()
    enterStand(false)
  }

  override updated(): void {
    const mode = standMode.get()
    if (this.shown === mode) return
    // The switch keeps the focus when it is pressed; what it shows begins at its top, however far the face before was scrolled.
    scrollTo(0, 0)
    this.shown = mode
    this.bringRulerIntoView()
  }

  private bringRulerIntoView(): void {
    this.renderRoot.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest', inline: 'center' })
  }

  /** Shows a step and moves the focus to its sentence, which is then read out. */
  private async go(at: number, mode: StandMode = 'step'): Promise<void> {
    this.at = at
    this.fresh = false
    standMode.set(mode)
    scrollTo(0, 0)
    await this.updateComplete
    this.bringRulerIntoView()
    const body = this.renderRoot.querySelector<HTMLElement & { updateComplete?: Promise<unknown> }>('.body > *')
    await body?.updateComplete
    if (mode === 'step') body?.focus()
    else this.renderRoot.querySelector<HTMLElement>('.main')?.focus()
  }

  private tick({ list, at }: StandStep, done: boolean): boolean {
    // Another step of the list may have been ticked since it was read.
    const cell = this.open.sheet.cell(list.id) as Steps
    return requestChange(this, { do: 'replace', cell: ticked(cell, at, done) }) === undefined
  }

  private count(by: 1 | -1): void {
    const step = standSteps(this.open.sheet)[this.at]
    if (!step) return
    const { taken = 0 } = step.list.steps[step.at] ?? {}
    requestChange(this, { do: 'replace', cell: withTaken(step.list, step.at, Math.max(0, taken + by)) })
  }

  private startOver(steps: readonly StandStep[]): void {
    const lists = [...new Set(steps.map(({ list }) => list))]
    requestChange(this, { do: 'several', changes: lists.map((list) => ({ do: 'replace', cell: startedOver(list) })) })
    void this.go(0).then(() => {
      this.fresh = lists.some((list) => hasReadings(list, this.open.sheet))
    })
  }

  private clearReadings(steps: readonly StandStep[]): void {
    const { sheet } = this.open
    const lists = [...new Set(steps.map(({ list }) => list))]
    requestChange(this, { do: 'several', changes: lists.map((list) => withoutReadings(list, sheet)) })
    void this.go(0)
  }

  private ruler(steps: readonly StandStep[]): TemplateResult {
    const done = steps.filter((step) => step.done).length
    return html`
      <div class="ruler">
        <nav aria-label=${words.steps}>
          <ol>
            ${steps.map(
              ({ number, text, done }, at) => html`
                <li>
                  <button
                    type="button"
                    class=${done ? 'done' : ''}
                    aria-label=${words.stepIs(number, text || words.noText, done)}
                    aria-current=${at === this.at && standMode.get() !== 'check' ? 'step' : nothing}
                    @click=${() => void this.go(at)}
                  >${number}</button>
                </li>
              `,
            )}
          </ol>
        </nav>
        <p class="count" role="status">${words.done(done, steps.length)}</p>
      </div>
    `
  }

  /** The failing checks in words, each leading to where it is filled in, and the marginal ones. */
  private checks(): TemplateResult {
    const { sheet } = this.open
    const [fails, marginal] = [checksIn(sheet, 'fail'), checksIn(sheet, 'marginal')]
    const [first] = fails
    const names = (checks: readonly Check[]): string => checks.map(labelOf).join(', ')
    return html`
      <div>
        ${
          first
            ? html`<button type="button" class="to-check" @click=${() => goToCell(this, first.id)}>
                ${checkSign(
                  'fail',
                  fails.every(({ id }) => this.open.resting.has(id)),
                )} <span><b>${words.fails(fails.length)}</b> ${names(fails)}</span>
              </button>`
            : html`<p>${words.allPass}</p>`
        }
        ${marginal.length > 0 ? html`<p class="quiet">${words.marginal(marginal.length)} ${names(marginal)}</p>` : nothing}
      </div>
    `
  }

  private foot(steps: readonly StandStep[]): TemplateResult {
    const mode = standMode.get()
    const next = steps.findIndex(({ done }) => !done)
    if (mode === 'check') {
      const has = steps.length > 0
      const to = Math.max(0, next)
      return html`
        <div class="foot">
          <span class="text"></span>
          <button type="button" class="press primary" @click=${() => void (has ? this.go(to) : this.go(0, 'all'))}>
            ${has ? words.start(to + 1) : words.toFigures}
          </button>
        </div>
      `
    }
    if (mode === 'all' || steps.length === 0) return this.figuresFoot(steps, next)
    const step = steps[this.at] as StandStep
    const following = steps[this.at + 1]
    const count = frameCount(this.open.sheet, step, drawingOf(this.open.sheet, step)?.cell)
    const isFrame = count?.of !== undefined && count.now !== undefined && !step.done
    const goOn = (): void => {
      if (!step.done && !this.tick(step, true)) return
      void (following ? this.go(this.at + 1) : this.go(this.at, 'all'))
    }
    return html`
      <div class="foot">
        <button type="button" class="press" aria-disabled=${this.at === 0} @click=${() => this.at > 0 && void this.go(this.at - 1)}>${words.back}</button>
        <p class="text">
          ${
            following
              ? html`<span class="quiet">${words.next(following.number)}</span> ${following.text || words.noText}`
              : html`<span class="quiet">${words.nothingNext}</span>`
          }
        </p>
        ${step.done ? html`<button type="button" class="word" @click=${() => this.tick(step, false)}>${words.notDone}</button>` : nothing}
        ${
          isFrame
            ? html`<button type="button" class="press primary" @click=${() => this.count(1)}>${words.frameTaken(count.now as number)}</button>`
            : html`<button type="button" class="press primary go-on" @click=${goOn}>
                ${step.done ? (following ? words.nextStep : words.toFigures) : following ? words.doneNext : words.doneLast}
              </button>`
        }
      </div>
    `
  }

  private figuresFoot(steps: readonly StandStep[], next: number): TemplateResult {
    const started = steps.some(({ done }) => done)
    const isOver = steps.length > 0 && next < 0
    return html`
      <div class="foot">
        ${started ? html`<button type="button" class="press" @click=${() => this.startOver(steps)}>${words.startOver}</button>` : nothing}
        <div class="text">
          ${isOver ? html`<p>${words.allDone(steps.length)}</p>` : nothing}
          ${this.checks()}
        </div>
        ${
          steps.length === 0 || isOver
            ? nothing
            : html`<button type="button" class="press primary" @click=${() => void this.go(this.at)}>
                ${started || this.at > 0 ? words.backToStep(this.at + 1) : words.start(1)}
              </button>`
        }
      </div>
    `
  }

  private body(steps: readonly StandStep[]): TemplateResult {
    const mode = standMode.get()
    if (mode === 'check') return html`<check-first .open=${this.open}></check-first>`
    if (mode === 'all' || steps.length === 0)
      return html`<stand-overview
        .open=${this.open}
        .steps=${steps}
        .at=${this.at}
        @step-asked=${(event: CustomEvent<number>) => void this.go(event.detail)}
      ></stand-overview>`
    return html`<stand-step
      .open=${this.open}
      .steps=${steps}
      .at=${this.at}
      @frame-taken=${({ detail }: CustomEvent<1 | -1>) => this.count(detail)}
      @entered=${() => this.renderRoot.querySelector<HTMLElement>('.go-on')?.focus()}
    ></stand-step>`
  }

  override render(): TemplateResult {
    this.open.changed.get()
    const steps = standSteps(this.open.sheet)
    if (this.at >= steps.length) this.at = Math.max(0, steps.length - 1)
    return html`
      ${steps.length > 0 ? this.ruler(steps) : nothing}
      <div class="main" tabindex="-1">
        <p class="wake small quiet" role="status">${WAKE_TEXT[this.wake.waking.get()]}</p>
        ${
          this.fresh
            ? html`<p class="fresh">${stepsWords.readingsRemain}
                <button type="button" class="press" @click=${() => this.clearReadings(steps)}>${stepsWords.clearReadings}</button></p>`
            : nothing
        }
        <div class="body">${this.body(steps)}</div>
      </div>
      ${this.foot(steps)}
    `
  }
}
