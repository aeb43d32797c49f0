import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Outcome, ValueOutcome } from '../worksheet/index.ts'
import { type CellSignal, labelOf, type ResultView } from './cell-view.ts'
import { isLong, row, shared } from './styles.ts'
import { troubleStyle } from './trouble.ts'

/** A figure longer than this takes the width of the row; a list or a record breaks badly, and does so sooner. */
const LONG_FIGURE = 14
const LONG_LIST = 8

export const resultStyle = css`
  .result .figure {
    font-weight: 700;
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

/** Names in a sentence: `A`, `A and B`, `A, B and 3 more`. */
export function listed(names: readonly string[]): string {
  const shown = names.length > 3 ? [...names.slice(0, 2), `${names.length - 2} more`] : names
  return shown.length < 2 ? shown.join('') : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`
}

/** Why there is no figure, in one line. */
export function whyNot(outcome: Outcome, called: (name: string) => string): string | undefined {
  if (outcome.state === 'waiting')
    return outcome.on.length > 0 ? `waits for ${listed(outcome.on.map(called))}` : undefined
  if (outcome.state === 'error' && outcome.origin) return `held up by ${called(outcome.origin)}`
  return undefined
}

/** The figure and its unit, or a dash where there is none. */
export function figureOf(outcome: Outcome): TemplateResult {
  if (outcome.state !== 'value')
    return html`<span class="figure quiet" aria-hidden="true">–</span><span class="unit"></span>`
  const { figure, unit } = outcome.shown
  const plain = outcome.type.kind === 'record' || outcome.type.kind === 'list' ? figure.replaceAll('_', ' ') : figure
  return html`<span class="figure">${plain}</span>${
    isSpread(outcome) ? nothing : html`<span class="unit">${unit}</span>`
  }`
}

export const isSpread = (outcome: Outcome): outcome is ValueOutcome =>
  outcome.state === 'value' &&
  outcome.shown.figure.length >
    (outcome.type.kind === 'record' || outcome.type.kind === 'list' ? LONG_LIST : LONG_FIGURE)

/** A result on the fill-in face: its label and its figure on its unit. */
@customElement('result-cell')
export class ResultCell extends SignalWatcher(LitElement) {
  static override styles = [shared, row, resultStyle, troubleStyle]

  @property({ attribute: false }) view!: CellSignal<ResultView>

  override render(): TemplateResult {
    const { cell, outcome, called } = this.view.get()
    const label = labelOf(cell)
    const why = whyNot(outcome, called)
    const mark = outcome.state === 'value' ? outcome.shown.mark : undefined
    const own = outcome.state === 'error' && !outcome.origin ? outcome.diagnostics : []
    const warnings = outcome.state === 'value' ? outcome.warnings : []
    const shape = isSpread(outcome) ? 'spread' : isLong(label, cell.hint) ? 'long' : ''
    return html`
      <div class="row result ${shape}">
        <div class="what">
          <span class="label">${label}</span>
          ${why ? html`<span class="small">${why}</span>` : nothing}
          ${mark ? html`<span class="small">nearest mark ${mark}</span>` : nothing}
          ${cell.hint ? html`<span class="small">${cell.hint}</span>` : nothing}
        </div>
        ${figureOf(outcome)}
        ${said(
          'Not computed',
          own.map(({ message }) => message),
        )} ${said(
          'Caution',
          warnings.map(({ message }) => message),
        )}
      </div>
    `
  }
}

const said = (word: string, sentences: readonly string[]): TemplateResult | typeof nothing =>
  sentences.length > 0
    ? html`<div class="below small">
        ${[...new Set(sentences)].map((one) => html`<div class="trouble"><p><b>${word}:</b> ${one}</p></div>`)}
      </div>`
    : nothing
