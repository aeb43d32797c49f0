import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import type { CellSignal, CheckView, GivenView, ResultView, WideView } from '../../cells/shared/cell-view.ts'
import '../../cells/basic/check-cell.ts'
import '../../cells/basic/given-cell.ts'
import '../../cells/steps/steps-cell.ts'
import { shared } from '../../cells/style/styles.ts'
import type { Cell, Given, Result, Steps } from '../../worksheet/index.ts'
import { enterStand } from '../common/colour-scheme.ts'
import { withFace } from '../common/route.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { resultsBySection, standCells, whereRepeated } from './stand-cells.ts'
import './stand-figure.ts'
import { StandWake, WAKE_TEXT } from './stand-wake.ts'
import { standWords as words } from './words.ts'

/** The figures to set on the equipment, large enough to read from 1 m, and the steps to tick. */
@customElement('stand-view')
export class StandView extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      :host {
        container-type: inline-size;
        --steps-size: 1.44rem;
        --entry-size: 1.8rem;
        --sign: 1.8rem;
        --figure: 15.6rem;
      }
      .parts {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        column-gap: 2.88rem;
      }
      .figures,
      .steps {
        container-type: inline-size;
      }
      .lower {
        font-size: 1.5rem;
      }
      .wake {
        padding-block: 0.72rem 0.24rem;
      }
      .nothing {
        display: grid;
        gap: 0.48rem;
        max-inline-size: 48rem;
        padding-block: 1.08rem;
      }
      a {
        color: inherit;
        text-underline-offset: 0.28em;
      }
      .sections {
        padding-block: 0.48rem;
      }
      @container (min-width: 60rem) {
        .parts.both {
          grid-template-columns: minmax(0, 1.2fr) minmax(0, 1fr);
        }
      }
      @container (min-width: 74.4rem) {
        .parts.both {
          grid-template-columns: minmax(0, 1.6fr) minmax(0, 1fr);
        }
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  @state() private section = 0
  private readonly wake = new StandWake()

  override connectedCallback(): void {
    super.connectedCallback()
    enterStand(true)
    this.wake.start()
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.wake.stop()
    enterStand(false)
  }

  private figures(results: readonly Result[], places: ReadonlyMap<string, string>): unknown {
    return repeat(
      results,
      ({ id }) => id,
      (cell) => html`<stand-figure
        data-cell=${cell.id}
        .view=${this.open.view(cell) as CellSignal<ResultView>}
        place=${places.get(cell.id) ?? ''}
      ></stand-figure>`,
    )
  }

  private given(cell: Given): TemplateResult {
    return html`<given-cell data-cell=${cell.id} .view=${this.open.view(cell) as CellSignal<GivenView>}></given-cell>`
  }

  private check(cell: Cell): TemplateResult {
    return html`<check-cell data-cell=${cell.id} .view=${this.open.view(cell) as CellSignal<CheckView>}></check-cell>`
  }

  private list(cell: Steps): TemplateResult {
    return html`<steps-cell data-cell=${cell.id} .view=${this.open.view(cell) as CellSignal<WideView<Steps>>}></steps-cell>`
  }

  /** Shown while nothing is marked: how to mark a figure, and the results of one section. */
  private unmarked(cells: readonly Cell[]): TemplateResult {
    const sections = resultsBySection(cells)
    const chosen = sections[this.section] ?? sections[0]
    const build = withFace(location.hash, 'build')
    return html`
      <div class="nothing">
        <p>${words.nothingMarkedBefore}<a href=${build}>${words.build}</a>${words.nothingMarkedAfter}</p>
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
      ${chosen ? this.figures(chosen.results, new Map()) : nothing}
    `
  }

  override render(): TemplateResult {
    this.open.laidOut.get()
    this.open.changed.get()
    const { cells } = this.open.sheet
    const { results, givens, checks, steps } = standCells(cells)
    const marked = results.length + givens.length + checks.length > 0
    const places = whereRepeated(cells, results)
    return html`
      <p class="wake small quiet" role="status">${WAKE_TEXT[this.wake.waking.get()]}</p>
      <div class="parts ${steps.length > 0 ? 'both' : ''}">
        <section class="figures" aria-label=${words.settings}>
          ${marked ? this.figures(results, places) : this.unmarked(cells)}
          <div class="lower">
            ${givens.map((cell) => this.given(cell))} ${checks.map((cell) => this.check(cell))}
          </div>
        </section>
        ${
          steps.length > 0
            ? html`<div class="steps">
                ${repeat(
                  steps,
                  ({ id }) => id,
                  (cell) => this.list(cell),
                )}
              </div>`
            : nothing
        }
      </div>
    `
  }
}
