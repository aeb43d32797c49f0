import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import type { CellSignal, ResultView } from '../../cells/shared/cell-view.ts'
import '../../cells/basic/check-cell.ts'
import '../../cells/basic/drawing-cell.ts'
import '../../cells/basic/given-cell.ts'
import '../../cells/basic/note-cell.ts'
import '../../cells/basic/result-cell.ts'
import { shared } from '../../cells/style/styles.ts'
import { cellElement } from '../../cells/wide/wide-cells.ts'
import type { Cell, Note } from '../../worksheet/index.ts'
import '../../cells/basic/section-cautions.ts'
import { foundStyle, markFound } from '../open/find-mark.ts'
import { fillStyle } from './fill-style.ts'
import './join-offer.ts'
import { withFace } from '../common/route.ts'
import { UNTITLED_SECTION } from '../common/words.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import './section-summary.ts'
import { type Section, sectionsOf, spreadsOf } from '../open/sections.ts'
import { fillWords as words } from './words.ts'

/** The face a technician fills in: givens, results and checks by stage of the job, the drawings in the margin. */
@customElement('fill-face')
export class FillFace extends SignalWatcher(LitElement) {
  static override styles = [shared, fillStyle, foundStyle]

  @property({ attribute: false }) open!: OpenSheet

  constructor() {
    super()
    this.addEventListener('cell-wanted', (event) => void this.show(event.detail))
  }

  /** Brings a cell into view and takes the focus to it, or only marks it as found. */
  async show(id: string, how: 'focus' | 'found' = 'focus'): Promise<void> {
    await this.updateComplete
    const section = sectionsOf(this.open.sheet.cells).find((one) => holds(one, id))
    if (section?.heading && section.id !== id && this.open.isFolded(section.heading)) {
      this.open.fold(section.id, false)
      await this.updateComplete
    }
    const cell = this.renderRoot.querySelector<HTMLElement>(`[data-cell="${CSS.escape(id)}"]`)
    if (!cell) return
    const folded = cell.closest('details')
    if (folded) folded.open = true
    cell.scrollIntoView({ block: cell.classList.contains('fold') ? 'start' : 'center' })
    if (how === 'focus') cell.focus()
    else markFound(this.renderRoot, cell)
  }

  private cell(cell: Cell): TemplateResult {
    return cellElement(cell, this.open.view(cell))
  }

  private resultViews(cells: readonly Cell[]): CellSignal<ResultView>[] {
    return cells.filter(({ kind }) => kind === 'result').map((cell) => this.open.view(cell) as CellSignal<ResultView>)
  }

  private rows(cells: readonly Cell[]): unknown {
    return repeat(
      cells,
      (cell) => cell.id,
      (cell) => this.cell(cell),
    )
  }

  private heading(heading: Note, section: Section): TemplateResult {
    const { id } = heading
    const folded = this.open.isFolded(heading)
    return html`
      <div class="heading">
        <h2 id="heading-${id}">
          <button
            type="button"
            class="fold"
            data-cell=${id}
            aria-expanded=${!folded}
            @click=${() => this.open.fold(id, !folded)}
          >${heading.text || UNTITLED_SECTION}</button>
        </h2>
        ${heading.about ? html`<p class="quiet">${heading.about}</p>` : nothing}
      </div>
      ${folded ? html`<section-standing .open=${this.open} .section=${section}></section-standing>` : nothing}
    `
  }

  private body({ rows, exact }: Section): TemplateResult {
    return html`
      ${this.rows(rows)}
      <section-cautions .views=${this.resultViews([...rows, ...exact])}></section-cautions>
      ${
        exact.length > 0
          ? html`<details>
              <summary>${words.fineAdjustments} <span class="quiet">${words.rows(exact.length)}</span></summary>
              ${this.rows(exact)}
            </details>`
          : nothing
      }
    `
  }

  private section(section: Section): TemplateResult {
    const { heading } = section
    return html`
      <section aria-labelledby=${heading ? `heading-${heading.id}` : nothing}>
        ${heading ? this.heading(heading, section) : nothing}
        ${heading && this.open.isFolded(heading) ? nothing : this.body(section)}
      </section>
    `
  }

  private empty(): TemplateResult {
    return html`
      <p class="empty">${words.emptyBefore} <a class="word" href=${withFace(location.hash, 'build')}>${words.emptyLink}</a>${words.emptyAfter}</p>
    `
  }

  override render(): TemplateResult {
    this.open.laidOut.get()
    const { cells } = this.open.sheet
    const seen = sectionsOf(cells).map((section) =>
      section.heading && this.open.isFolded(section.heading) ? { ...section, drawings: [] } : section,
    )
    const spreads = spreadsOf(seen)
    return html`
      ${cells.length === 0 && !this.open.frozen.get() ? this.empty() : nothing}
      ${repeat(
        spreads,
        (spread) => spread[0]?.id,
        (spread) => {
          const drawn = spread.some(({ drawings }) => drawings.length > 0)
          return html`
            <div class="spread ${drawn ? 'drawn' : ''}">
              ${repeat(
                spread,
                (section) => section.id,
                (section) => html`
                  <div class="rows">${this.section(section)}</div>
                  ${section.drawings.length > 0 ? html`<div class="margin">${this.rows(section.drawings)}</div>` : nothing}
                `,
              )}
            </div>
          `
        },
      )}
      <join-offer .open=${this.open} @section-set=${(event: CustomEvent<string>) => void this.show(event.detail)}></join-offer>
    `
  }
}

const holds = ({ id, rows, exact, drawings }: Section, cell: string): boolean =>
  id === cell || [...rows, ...exact, ...drawings].some((one) => one.id === cell)
