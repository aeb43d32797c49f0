import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { missingReason } from '../../cells/basic/result-cell.ts'
import { type CellSignal, labelOf, type ResultView } from '../../cells/shared/cell-view.ts'
import { shared } from '../../cells/style/styles.ts'
import type { Outcome, ValueOutcome } from '../../worksheet/index.ts'
import { standWords as words } from './words.ts'

/** A longer figure, such as a list or a record, is set as text. */
const LONGEST_FIGURE = 18
/** Widths of bold characters in em, measured in the typeface shipped with the app and rounded up. */
const NARROW = new Map([...'.,:;|i\u202f '].map((sign) => [sign, 0.28]))
const WIDE = new Map([...'mMW%±×'].map((sign) => [sign, 0.9]))
/** The size of a unit relative to its figure. */
const UNIT_SIZE = 0.42

const emOf = (text: string): number =>
  [...text].reduce((sum, sign) => sum + (NARROW.get(sign) ?? WIDE.get(sign) ?? (/[a-z/]/.test(sign) ? 0.6 : 0.67)), 0)

/** A figure to set on the equipment, as it is marked there. */
interface Setting {
  readonly figure: string
  readonly unit: string
  /** The computed figure, where the nearest mark is shown in its place. */
  readonly exactly?: string
}

function settingOf({ shown, type }: ValueOutcome): Setting {
  const { figure, unit, text, mark } = shown
  if (mark === undefined) return { figure: type.kind === 'number' ? figure : figure.replaceAll('_', ' '), unit }
  const [marked, behind = ''] = mark.split(/ (?=s$)/) as [string, string?]
  return { figure: marked, unit: behind, ...(mark === text ? {} : { exactly: text }) }
}

/**
 * A result as a figure to be read from 1 m. Digits are 0.69 em high: at 6.96rem on a base of 15 px that is 72 px, which is
 * 13.9 mm on a tablet of 132 CSS px per inch and 12.2 mm on one of 150. A figure is set smaller only where it is too
 * wide for its row.
 */
@customElement('stand-figure')
export class StandFigure extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      :host {
        border-block-end: 1px solid var(--rule);
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        justify-content: flex-end;
        column-gap: 1.2rem;
        align-items: center;
        padding-block: 0.6rem;
      }
      .label {
        flex: 1 1 10.8rem;
        min-inline-size: 0;
        font-size: 1.68rem;
        line-height: 1.2;
        overflow-wrap: break-word;
        text-wrap: balance;
      }
      .small {
        display: block;
        font-size: 1.2rem;
        color: var(--quiet);
      }
      /* As wide as its figure at full size; where that does not fit beside the label, below it. */
      .room {
        flex: 0 0 min(100%, calc(var(--em) * 7.14rem));
        container-type: inline-size;
        text-align: end;
      }
      .figure {
        display: inline-block;
        font-size: min(6.96rem, calc(98cqi / var(--em)));
        line-height: 1;
        font-weight: 700;
        font-variant-numeric: tabular-nums;
        white-space: nowrap;
      }
      .unit {
        font-size: ${UNIT_SIZE}em;
        font-weight: 400;
        padding-inline-start: 0.3em;
      }
      .long {
        font-size: 1.68rem;
        line-height: 1.3;
        white-space: normal;
        overflow-wrap: anywhere;
        text-align: start;
      }
      .room:has(.long) {
        flex-basis: 100%;
      }
      @container (max-width: 31.2rem) {
        .label,
        .room {
          flex-basis: 100%;
        }
      }
    `,
  ]

  @property({ attribute: false }) view!: CellSignal<ResultView>
  /** Its section, where another figure at the stand has the same label. */
  @property() place = ''

  private room(outcome: Outcome): TemplateResult {
    if (outcome.state !== 'value') return roomFor(1, html`<span class="figure quiet" aria-hidden="true">–</span>`)
    const { figure, unit } = settingOf(outcome)
    if (figure.length > LONGEST_FIGURE) return roomFor(1, html`<span class="figure long">${figure} ${unit}</span>`)
    const em = emOf(figure) + (unit === '' ? 0 : UNIT_SIZE * (emOf(unit) + 0.6))
    return roomFor(
      em,
      html`<span class="figure">${figure}${unit === '' ? nothing : html`<span class="unit">${unit}</span>`}</span>`,
    )
  }

  override render(): TemplateResult {
    const { cell, outcome, called } = this.view.get()
    const why =
      missingReason(outcome, called) ?? (outcome.state === 'error' ? outcome.diagnostics[0]?.message : undefined)
    const { exactly } = outcome.state === 'value' ? settingOf(outcome) : {}
    const measured = outcome.state === 'value' ? outcome.measured : undefined
    return html`
      <div class="row">
        <div class="label">
          ${labelOf(cell)}
          ${this.place ? html`<span class="small">${this.place}</span>` : nothing}
          ${why ? html`<span class="small">${why}</span>` : nothing}
          ${exactly ? html`<span class="small">${words.nearestMark(exactly)}</span>` : nothing}
          ${measured ? html`<span class="small">${words.measured(measured.difference ?? '')}</span>` : nothing}
        </div>
        ${this.room(outcome)}
      </div>
    `
  }
}

/** The style is set as a property, since the content security policy rejects style attributes. */
const roomFor = (em: number, figure: TemplateResult): TemplateResult =>
  html`<div class="room" .style=${`--em: ${em.toFixed(2)}`}>${figure}</div>`
