import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { shownFigure } from '../../worksheet/document/shown-figure.ts'
import type { Outcome, ValueOutcome } from '../../worksheet/index.ts'
import { type CellSignal, labelOf, type ResultView } from '../shared/cell-view.ts'
import { errorMessageStyle } from '../shared/error-message.ts'
import { cellWords } from '../shared/words.ts'
import { row, shared } from '../style/styles.ts'
import { basicWords } from './words.ts'

/** Longer figures take the width of the row; lists and records do so sooner because they wrap badly. */
const LONG_FIGURE = 14
const LONG_LIST = 8

export const resultStyle = css`
  .result.row {
    grid-template-columns: minmax(0, 1fr) auto minmax(38px, auto);
    min-block-size: var(--result-row);
  }
  .result .figure {
    font-weight: 700;
  }
  /* Quieter while it is computed from an example's figures. */
  .result.rests .figure {
    font-weight: 400;
    color: var(--quiet);
    text-decoration: underline;
    text-decoration-style: dashed;
    text-decoration-thickness: 1px;
    text-underline-offset: 4px;
  }
  /* A measured value replaces the computed one in everything that depends on it. */
  .result .figure.measured {
    text-decoration: underline;
    text-decoration-style: double;
    text-decoration-thickness: 1.5px;
    text-underline-offset: 3px;
  }
  /* One of the two figures a section is about. */
  :host([key]) .result.row {
    grid-template-columns: auto minmax(0, 1fr);
    /* Beside each other their figures are level, whatever is above them. */
    align-content: end;
    min-block-size: 84px;
    padding-block: 6px 10px;
    border-block-end: 0;
  }
  :host([key]) .what {
    display: flex;
    flex-wrap: wrap;
    grid-column: 1 / -1;
    align-items: center;
    padding-block: 0;
    color: var(--quiet);
  }
  :host([key]) .what .fold {
    font-size: 0.9333rem;
    line-height: 1.2857;
  }
  :host([key]) .result .figure {
    font-size: 2.4rem;
    line-height: 1.1667;
    letter-spacing: -0.01em;
    font-variant-numeric: normal;
    white-space: nowrap;
    text-align: start;
  }
  :host([key]) .unit {
    align-self: end;
    padding-block-end: 6px;
    font-size: 1.1333rem;
  }
  .fold {
    display: inline-block;
    /* A finger's width, without moving the text around it; the ring of the focus is close to its own. What follows it is 10 px away, or starts a line. */
    margin: -8px 2px -8px -8px;
    padding: 8px;
    border: 0;
    background: none;
    line-height: inherit;
    text-align: start;
    cursor: pointer;
  }
  .fold:focus-visible,
  .what .word:focus-visible {
    outline-offset: -7px;
  }
  .fold:hover,
  .fold[aria-expanded='true'] {
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.28em;
  }
  .fold[aria-expanded='true'] {
    font-weight: 700;
  }
  /* Beside the label, so that a row stays one line. */
  .what .words {
    display: inline-flex;
    margin-block: -8px;
  }
  .what .words .word {
    min-block-size: 32px;
    margin-inline: -8px;
    padding-inline: 8px;
  }
  .what .words .word:not(:hover) {
    color: var(--quiet);
    text-decoration-color: var(--rule);
  }
  @media (pointer: coarse) {
    .fold {
      margin: -13px -3px -13px -13px;
      padding: 13px;
    }
    .what .words {
      margin-block: -13px;
    }
    .fold:focus-visible {
      outline-offset: -12px;
    }
    .what .words .word {
      min-block-size: 44px;
    }
  }
  .row.spread .figure {
    grid-column: 1 / -1;
    font-size: 1rem;
    font-weight: 400;
    text-align: start;
    padding-block-end: 0.5rem;
    overflow-wrap: anywhere;
  }
  .row.spread .what {
    grid-column: 1 / -1;
    padding-block-start: 0.5rem;
  }
`

/** Why there is no figure, in one line; undefined if there is one. */
export function missingReason(outcome: Outcome, called: (name: string) => string): string | undefined {
  if (outcome.state === 'waiting') return outcome.on.length > 0 ? basicWords.needs(outcome.on.map(called)) : undefined
  if (outcome.state === 'error' && outcome.origin) return basicWords.blocked(called(outcome.origin))
  return undefined
}

/** The figure and its unit, or a dash if there is none. */
export function figureOf(
  outcome: Outcome,
  shown = outcome.state === 'value' ? outcome.shown : undefined,
): TemplateResult {
  if (outcome.state !== 'value' || !shown)
    return html`<span class="figure quiet" aria-hidden="true">–</span><span class="unit"></span>`
  const { figure, unit } = shown
  const plain = outcome.type.kind === 'record' || outcome.type.kind === 'list' ? figure.replaceAll('_', ' ') : figure
  if (isSpread(outcome)) return html`<span class="figure">${unit ? `${plain} ${unit}` : plain}</span>`
  return html`<span class="figure">${plain}</span><span class="unit">${unit}</span>`
}

/** A list of records as a table, loaded when a sheet has one. */
function records(label: string, outcome: Outcome): TemplateResult | undefined {
  if (outcome.state !== 'value' || outcome.type.kind !== 'list' || outcome.type.of.kind !== 'record') return undefined
  void import('../details/records-table.ts')
  return html`<records-table class="below" .label=${label} .type=${outcome.type.of} .rows=${outcome.value}></records-table>`
}

/** Whether an outcome is too long for the column of figures, so that it takes a line of its own. */
export const isSpread = (outcome: Outcome): outcome is ValueOutcome =>
  outcome.state === 'value' &&
  outcome.shown.figure.length >
    (outcome.type.kind === 'record' || outcome.type.kind === 'list' ? LONG_LIST : LONG_FIGURE)

/** A result in Fill in: its label, figure and unit. */
@customElement('result-cell')
export class ResultCell extends SignalWatcher(LitElement) {
  static override styles = [shared, row, resultStyle, errorMessageStyle]

  @property({ attribute: false }) view!: CellSignal<ResultView>
  /** Whether it is shown large, as one of the key figures of its section. */
  @property({ type: Boolean, reflect: true }) key = false
  @state() private unfolded = false
  @state() private measuring = false
  @query('measure-row') private measureRow!: HTMLElement | null

  private async unfold(): Promise<void> {
    if (!this.unfolded) await import('../details/result-more.ts')
    this.unfolded = !this.unfolded
  }

  private async measure(): Promise<void> {
    await import('../details/measure-row.ts')
    this.measuring = !this.measuring
    await this.updateComplete
    this.measureRow?.focus()
  }

  private measured(view: ResultView): TemplateResult | typeof nothing {
    const { cell, outcome } = view
    const hasMeasured = Boolean(cell.measured?.trim())
    if (hasMeasured) void import('../details/measured-notes.ts')
    const isOffered = cell.measure !== undefined || hasMeasured || this.measuring || this.unfolded
    const numeric = outcome.state !== 'value' || outcome.type.kind === 'number'
    return html`
      ${hasMeasured ? html`<measured-notes .view=${view}></measured-notes>` : nothing}
      ${
        isOffered && numeric
          ? html`<span class="small words">
              <button type="button" class="word" aria-expanded=${this.measuring} @click=${() => void this.measure()}>${basicWords.measure}</button>
            </span>`
          : nothing
      }
    `
  }

  override render(): TemplateResult {
    const view = this.view.get()
    const { cell, outcome, called } = view
    const label = labelOf(cell)
    const why = missingReason(outcome, called)
    const own = outcome.state === 'error' && !outcome.origin ? outcome.diagnostics : []
    const warnings = outcome.state === 'value' ? outcome.warnings : []
    const shape = `${isSpread(outcome) ? 'spread' : ''} ${view.rests && outcome.state === 'value' ? 'rests' : ''}`
    const shown = outcome.state === 'value' ? (outcome.measured?.computed?.shown ?? outcome.shown) : undefined
    const set = shown && shownFigure(cell, shown)
    const beside = set?.exactly ? basicWords.exactFigure(set.exactly) : set?.mark && basicWords.nearestMark(set.mark)
    return html`
      <div class="row result ${shape}">
        <div class="what">
          <button type="button" class="fold label" aria-expanded=${this.unfolded} @click=${() => void this.unfold()}>${label}</button>
          ${why ? html`<span class="small">${why}</span>` : nothing}
          ${beside ? html`<span class="small">${beside}</span>` : nothing}
          ${cell.hint && this.unfolded ? html`<span class="small">${cell.hint}</span>` : nothing}
          ${this.measured(view)}
        </div>
        ${records(label, outcome) ?? figureOf(outcome, set)}
        ${this.measuring ? html`<measure-row class="below" .cell=${cell} .outcome=${outcome}></measure-row>` : nothing}
        ${notices(
          basicWords.notComputed,
          own.map(({ message }) => message),
        )} ${notices(
          cellWords.caution,
          warnings.map(({ message }) => message),
        )}
        ${this.unfolded ? html`<result-more class="below" .view=${view}></result-more>` : nothing}
      </div>
    `
  }
}

const notices = (word: string, sentences: readonly string[]): TemplateResult | typeof nothing =>
  sentences.length > 0
    ? html`<div class="below small">
        ${[...new Set(sentences)].map((one) => html`<div class="problem"><p><b>${word}</b> ${one}</p></div>`)}
      </div>`
    : nothing
