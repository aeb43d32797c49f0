import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import '../../cells/checks/check-cell.ts'
import '../../cells/basic/given-cell.ts'
import { missingReason } from '../../cells/basic/result-cell.ts'
import { outdatedNote } from '../../cells/details/outdated-note.ts'
import { detailsWords } from '../../cells/details/words.ts'
import {
  type CellSignal,
  type DrawingView,
  type GivenView,
  labelOf,
  requestChange,
} from '../../cells/shared/cell-view.ts'
import { checkSign, signStyle } from '../../cells/shared/check-sign.ts'
import { errorMessage, errorMessageStyle } from '../../cells/shared/error-message.ts'
import { withLock } from '../../cells/shared/locked.ts'
import { unitSuffix } from '../../cells/shared/unit-suffix.ts'
import { cellWords, STATE_LABELS } from '../../cells/shared/words.ts'
import { field, shared } from '../../cells/style/styles.ts'
import { downstreamOf } from '../../worksheet/engine/partial-recompute.ts'
import { type Check, type Given, type Result, withMeasured } from '../../worksheet/index.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { bigFigure, bigFigureStyle } from './big-figure.ts'
import { type FrameCount, frameCount } from './frame-count.ts'
import { measuredGiven } from './measured-given.ts'
import { adviceText, type Compared, comparedOf, settingOf, targetRests } from './setting.ts'
import './stand-drawing.ts'
import { drawingNear, drawingOf, figuresOf, type StandFigureCell, type StandStep } from './stand-steps.ts'
import { stepStyle } from './step-style.ts'
import { standWords as words } from './words.ts'

/** Givens of these kinds are read or set as one figure. */
const ONE_FIGURE: ReadonlySet<Given['entry']> = new Set([undefined, 'quantity', 'size'])
const MOST_CHECKS = 2

/** One step at the stand: what to do, its target beside what is measured, and its drawing. */
@customElement('stand-step')
export class StandStepElement extends SignalWatcher(LitElement) {
  static override styles = [shared, field, signStyle, errorMessageStyle, bigFigureStyle, stepStyle]

  @property({ attribute: false }) open!: OpenSheet
  @property({ attribute: false }) steps!: readonly StandStep[]
  /** The place of the step shown, counted from 0. */
  @property({ type: Number }) at = 0

  private put(cell: StandFigureCell, text: string): void {
    // A press that was on its way as the figure was locked.
    if (cell.locked) return
    const changed = cell.kind === 'result' ? withMeasured(cell, text) : measuredGiven(cell, text)
    requestChange(this, { do: 'replace', cell: changed }, `measured:${cell.id}`)
  }

  private field(cell: Result | Given, compared: Compared): TemplateResult {
    const outcome = this.open.sheet.outcome(cell.id)
    const amiss =
      outcome.state === 'value'
        ? outcome.measuredAmiss
        : outcome.state === 'error' && cell.kind === 'given' && cell.value.trim() !== ''
          ? outcome.diagnostics[0]
          : undefined
    const text = cell.kind === 'result' ? (cell.measured ?? '') : compared.typed || (amiss ? cell.value : '')
    const unit = unitSuffix(cell.unit) || (outcome.state === 'value' ? outcome.shown.unit : '')
    return html`
      <div class="entry">
        <input
          id="measured"
          class="field"
          type="text"
          inputmode=${cell.kind === 'given' && cell.entry === 'size' ? 'text' : 'decimal'}
          enterkeyhint="done"
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          aria-label=${words.reading(labelOf(cell))}
          aria-invalid=${amiss !== undefined}
          .value=${live(text)}
          @input=${(event: Event) => this.put(cell, (event.target as HTMLInputElement).value)}
          @keydown=${(event: KeyboardEvent) => {
            if (event.key !== 'Enter') return
            // The button that gets the focus would be pressed by the same key.
            event.preventDefault()
            this.dispatchEvent(new CustomEvent('entered', { bubbles: true, composed: true }))
          }}
        >
        ${unit ? html`<span class="unit">${unit}</span>` : nothing}
      </div>
      ${outcome.state === 'value' && outcome.by ? html`<p class="small">${cellWords.readAs(outcome.readAs ?? '', outcome.by)}</p>` : nothing}
      ${amiss ? errorMessage(text, [amiss], (fixed) => this.put(cell, fixed)) : nothing}
    `
  }

  /** The reading of a step: its target beside the field for what is measured, and what to do about the difference. */
  private reading(cell: StandFigureCell): TemplateResult {
    const { sheet, called } = this.open
    if (cell.locked) return this.locked(cell)
    const outcome = sheet.outcome(cell.id)
    const why = missingReason(outcome, called)
    if (cell.kind === 'given' && !ONE_FIGURE.has(cell.entry))
      return html`<div class="plain"><given-cell .view=${this.open.view(cell) as CellSignal<GivenView>}></given-cell></div>`
    if (cell.kind === 'result' && outcome.state === 'value' && outcome.type.kind !== 'number') return this.target(cell)
    const compared = comparedOf(sheet, cell)
    const { target, difference } = compared
    const advice = adviceText(compared)
    const hasTarget = target !== undefined || cell.kind === 'result'
    const rests = this.rests(cell)
    return html`
      <div class="halves ${hasTarget ? '' : 'alone'}">
        ${
          hasTarget
            ? html`<div class="half">
                <p class="caption">${cell.kind === 'result' && !rests ? words.targetComputed : words.targetPlanned}${rests && target ? html`, ${words.exampleFigure(cell.kind === 'given')}` : nothing}</p>
                ${bigFigure(target, rests)}
                ${target?.exactly ? html`<p class="small quiet">${words.exactFigure(target.exactly)}</p>` : nothing}
                ${why ? html`<p class="small">${why}</p>` : nothing}
              </div>`
            : nothing
        }
        <div class="half">
          <label class="caption" for="measured">${hasTarget ? words.measuredByYou : words.reading(labelOf(cell))}</label>
          ${this.field(cell, compared)} ${compared.typed.trim() === '' ? nothing : this.lock(cell, true)}
        </div>
      </div>
      ${outdatedNote(cell, outcome, called)}
      ${
        difference === ''
          ? nothing
          : html`<div class="difference" role="status">
              <p class="by">${difference}</p>
              <p>${advice}</p>
              ${compared.contradicts?.map((text) => html`<p>${text}</p>`)}
            </div>`
      }
    `
  }

  private rests(cell: StandFigureCell): boolean {
    return targetRests(this.open.sheet, cell, this.open.resting)
  }

  private lock(cell: StandFigureCell, on: boolean): TemplateResult {
    const label = labelOf(cell)
    return html`<button
      type="button"
      class="press"
      aria-label=${on ? words.lockThis(label) : words.unlockThis(label)}
      @click=${() => requestChange(this, { do: 'replace', cell: withLock(cell, on) })}
    >${on ? words.lock : words.unlock}</button>`
  }

  /** A figure that is locked, as it is. */
  private locked(cell: StandFigureCell): TemplateResult {
    const outcome = this.open.sheet.outcome(cell.id)
    const why = missingReason(outcome, this.open.called)
    return html`
      <div class="target">
        <div class="what">
          ${labelOf(cell)}
          <span class="small quiet">${words.locked}</span>
          ${why ? html`<span class="small quiet">${why}</span>` : nothing}
        </div>
        ${bigFigure(outcome.state === 'value' ? settingOf(outcome) : undefined, this.open.resting.has(cell.id))}
      </div>
      ${this.lock(cell, false)}
    `
  }

  /** A figure to set, without a reading. */
  private target(cell: StandFigureCell): TemplateResult {
    const { sheet, called } = this.open
    const outcome = sheet.outcome(cell.id)
    const { target } = comparedOf(sheet, cell)
    const rests = this.rests(cell)
    const why = missingReason(outcome, called)
    return html`
      <div class="target">
        <div class="what">
          ${labelOf(cell)}
          ${why ? html`<span class="small quiet">${why}</span>` : nothing}
          ${target?.exactly ? html`<span class="small quiet">${words.exactFigure(target.exactly)}</span>` : nothing}
          ${rests && target ? html`<span class="small quiet">${words.exampleFigure(cell.kind === 'given')}</span>` : nothing}
        </div>
        ${bigFigure(target, rests)}
      </div>
    `
  }

  private frames({ taken, of, now, move }: FrameCount): TemplateResult {
    const figure = String(of === undefined ? taken : (now ?? of))
    return html`
      <div class="halves">
        <div class="half">
          <p class="caption">${of === undefined ? words.framesTaken : words.frame}</p>
          <div class="count" role="status">
            ${bigFigure({ figure, unit: of === undefined ? '' : words.ofFrames(of) })}
          </div>
        </div>
        <div class="half actions">
          <button type="button" class="press" ?disabled=${taken === 0} @click=${() => this.take(-1)}>${words.frameBack}</button>
          ${of === undefined ? html`<button type="button" class="press" @click=${() => this.take(1)}>${words.oneFrameTaken}</button>` : nothing}
        </div>
      </div>
      <p class="move" role="status">${now === undefined && of !== undefined ? words.allFrames(of) : move}</p>
    `
  }

  private take(by: 1 | -1): void {
    this.dispatchEvent(new CustomEvent('frame-taken', { detail: by, bubbles: true, composed: true }))
  }

  /** The checks that the figures of the step feed, where they fail or are marginal. */
  private checks(step: StandStep): readonly Check[] {
    const { sheet } = this.open
    const { engine } = sheet
    const own = figuresOf(step).flatMap(({ name }) => engine.named(name) ?? [])
    if (own.length === 0) return []
    const marks = downstreamOf(
      engine.layout,
      own.map((node) => engine.positionOf(node)),
    )
    const fed = new Set(engine.layout.order.flatMap(({ cell }, at) => (marks[at] === 1 ? [cell.id] : [])))
    return sheet.cells
      .filter(
        (cell): cell is Check =>
          cell.kind === 'check' && fed.has(cell.id) && ['fail', 'marginal'].includes(sheet.checkState(cell.id)),
      )
      .sort((a, b) => Number(sheet.checkState(a.id) === 'marginal') - Number(sheet.checkState(b.id) === 'marginal'))
      .slice(0, MOST_CHECKS)
  }

  private notices(step: StandStep): TemplateResult {
    const { sheet } = this.open
    const cautions = new Set(
      figuresOf(step).flatMap(({ id }) => {
        const outcome = sheet.outcome(id)
        return outcome.state === 'value' ? outcome.safety : []
      }),
    )
    return html`
      ${this.checks(step).map((cell) => {
        const { state, message } = sheet.check(cell.id)
        const rests = this.open.resting.has(cell.id)
        const word = rests ? detailsWords.inExample(STATE_LABELS[state]) : STATE_LABELS[state]
        return html`<p class="notice">${checkSign(state, rests)} <span><b>${word}:</b> ${message || labelOf(cell)}</span></p>`
      })}
      ${[...cautions].map((text) => html`<p class="notice caution"><span><b>${cellWords.caution}</b> ${text}</span></p>`)}
    `
  }

  override render(): TemplateResult | typeof nothing {
    this.open.changed.get()
    const step = this.steps[this.at]
    if (!step) return nothing
    const { sheet } = this.open
    const own = drawingOf(sheet, step)
    const drawing = own ?? drawingNear(sheet, this.steps, this.at)
    const count = frameCount(sheet, step, own?.cell)
    const { reading } = step
    const compared = reading && comparedOf(sheet, reading)
    return html`
      <div class="step ${drawing ? '' : 'undrawn'}">
        <div class="do">
          <h2 tabindex="-1">${step.text || words.noText}</h2>
          ${step.sets.length === 0 ? nothing : html`<div class="sets ${step.sets.length > 1 || reading ? 'several' : ''}">${step.sets.map((cell) => this.target(cell))}</div>`}
          ${reading ? this.reading(reading) : nothing}
          ${count ? this.frames(count) : nothing} ${this.notices(step)}
        </div>
        ${
          drawing
            ? html`<div class="drawn">
                <stand-drawing
                  .view=${this.open.view(drawing.cell) as CellSignal<DrawingView>}
                  emphasis=${drawing.emphasis ?? ''}
                  figure=${own && compared ? compared.measuredText || compared.targetText : ''}
                  accent=${count?.now !== undefined && count.of !== undefined ? `tile-${count.now}` : ''}
                ></stand-drawing>
              </div>`
            : nothing
        }
      </div>
    `
  }

  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true })
  }
}
