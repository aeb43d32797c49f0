import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { histogram } from '../../drawings/simulation/histogram.ts'
import type { ValueOutcome } from '../../worksheet/index.ts'
import { USUAL_SEED } from '../../worksheet/simulation/draws.ts'
import { labelled, labelledStyle } from '../fields/labelled.ts'
import { labelOf, type ResultView } from '../shared/cell-view.ts'
import { drawTree } from '../shared/draw-tree.ts'
import { field, shared } from '../style/styles.ts'
import { checksOn } from './checks-on.ts'
import { shareText, studyText, valueText } from './study-text.ts'
import { WatchedStudy } from './watched-study.ts'
import { simulationWords as words } from './words.ts'

/** JCGM 101:2008, 7.2.2: 10⁴ times 1/(1 − p) tries often give an interval of p = 95 % to two digits. */
const USUAL_TRIES = 200_000
/** In idle time an answer sooner is worth more than a further digit. */
const IDLE_TRIES = 50_000
const WIDTH = 360

function whole(text: string, least: number, most: number): number | undefined {
  const number = Number(text.replace(/[\s\u202f]/g, '') || Number.NaN)
  return Number.isInteger(number) && number >= least && number <= most ? number : undefined
}

/** A result computed over and over with values within the limits: by itself where limits are not linear, else when asked. */
@customElement('simulated-figure')
export class SimulatedFigure extends LitElement {
  static override styles = [
    shared,
    field,
    labelledStyle,
    css`
      .asked {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: 0.4rem 1rem;
      }
      .asked .labelled {
        inline-size: 8rem;
      }
      svg {
        display: block;
        inline-size: 100%;
        max-inline-size: 360px;
        margin-block: 0.3rem;
      }
      progress {
        inline-size: 10rem;
      }
    `,
  ]

  @property({ attribute: false }) view!: ResultView
  /** Whether it runs by itself in idle time. */
  @property({ type: Boolean }) nonlinear = false
  @state() private tries = String(USUAL_TRIES)
  @state() private seed = String(USUAL_SEED)
  @state() private wanted = false
  private readonly watched = new WatchedStudy(this)

  /** The tries and the seed as they were typed, each undefined where it cannot be used. */
  private get typed(): [number | undefined, number | undefined] {
    return [whole(this.tries, 100, 1e7), whole(this.seed, 0, 2 ** 32 - 1)]
  }

  override willUpdate(): void {
    const { sheet, cell } = this.view
    const [tries, seed] = this.typed
    const isDue = (this.nonlinear || this.wanted) && tries !== undefined && seed !== undefined
    this.watched.want(
      sheet,
      isDue
        ? {
            names: [cell.name, ...checksOn(sheet, cell.id).map(({ name }) => name)],
            tries: this.wanted ? tries : IDLE_TRIES,
            seed,
            inIdleTime: !this.wanted,
          }
        : undefined,
    )
  }

  private found(outcome: ValueOutcome): TemplateResult | typeof nothing {
    const { study } = this.watched
    const { sheet, cell, called } = this.view
    if (!study) return nothing
    const figure = study.figures.get(cell.name)
    const drawn =
      figure && figure.sd > 0
        ? histogram(figure, { label: labelOf(cell), show: (value) => valueText(cell, outcome, value), width: WIDTH })
        : undefined
    const [first, ...others] = studyText(cell, outcome, study, called)
    return html`
      <p class="small">${first}</p>
      ${drawn ? drawTree(drawn) : nothing}
      ${others.map((sentence) => html`<p class="small">${sentence}</p>`)}
      ${checksOn(sheet, cell.id).flatMap((check) => {
        const share = study.passes.get(check.name)
        return share === undefined ? [] : [html`<p class="small">${words.passes(labelOf(check), shareText(share))}</p>`]
      })}
    `
  }

  override render(): TemplateResult {
    const { outcome } = this.view
    const { progress, study, failed } = this.watched
    const [tries, seed] = this.typed
    return html`
      <div aria-live="polite">
        ${outcome.state === 'value' ? this.found(outcome) : nothing}
        ${failed ? html`<p class="small">${words.notComputed}</p>` : nothing}
      </div>
      ${
        progress === undefined
          ? nothing
          : html`<p class="small">${words.running} <progress max="1" .value=${progress} aria-label=${words.running}></progress>
              <button type="button" class="word" @click=${() => this.stop()}>${words.cancel}</button></p>`
      }
      <div class="asked">
        ${labelled({
          label: words.tries,
          value: this.tries,
          wrong: tries === undefined ? words.wrongTries : undefined,
          put: (text) => {
            this.tries = text
          },
        })}
        ${labelled({
          label: words.seed,
          value: this.seed,
          wrong: seed === undefined ? words.wrongSeed : undefined,
          put: (text) => {
            this.seed = text
          },
        })}
        <button type="button" class="word" ?disabled=${tries === undefined || seed === undefined} @click=${() => this.run()}>
          ${study ? words.again : words.simulate}
        </button>
      </div>
    `
  }

  private run(): void {
    if (this.wanted) this.watched.again()
    this.wanted = true
  }

  private stop(): void {
    this.wanted = false
    this.watched.cancel()
  }
}
