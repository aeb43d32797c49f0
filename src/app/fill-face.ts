import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import type { CellSignal, ResultView, WideView } from '../cells/cell-view.ts'
import '../cells/check-cell.ts'
import '../cells/drawing-cell.ts'
import '../cells/given-cell.ts'
import '../cells/note-cell.ts'
import '../cells/result-cell.ts'
import { shared } from '../cells/styles.ts'
import { wideCell } from '../cells/wide-cells.ts'
import type { Cell } from '../worksheet/index.ts'
import '../cells/section-cautions.ts'
import { fillStyle } from './fill-style.ts'
import type { OpenSheet } from './open-sheet.ts'
import { type Section, sectionsOf, spreadsOf } from './sections.ts'

/** The face a technician fills in: givens, results and checks by stage of the job, the drawings in the margin. */
@customElement('fill-face')
export class FillFace extends SignalWatcher(LitElement) {
  static override styles = [shared, fillStyle]

  @property({ attribute: false }) open!: OpenSheet

  constructor() {
    super()
    this.addEventListener('cell-wanted', (event) => void this.show(event.detail))
  }

  /** Brings a cell into view and, where it can be filled in, takes the focus to it. */
  async show(id: string): Promise<void> {
    await this.updateComplete
    const cell = this.renderRoot.querySelector<HTMLElement>(`[data-cell="${CSS.escape(id)}"]`)
    if (!cell) return
    const folded = cell.closest('details')
    if (folded) folded.open = true
    cell.scrollIntoView({ block: 'center' })
    cell.focus()
  }

  private cell(cell: Cell): TemplateResult {
    const view = this.open.view(cell)
    switch (cell.kind) {
      case 'given':
        return html`<given-cell data-cell=${cell.id} .view=${view}></given-cell>`
      case 'result':
        return html`<result-cell data-cell=${cell.id} tabindex="-1" .view=${view}></result-cell>`
      case 'check':
        return html`<check-cell data-cell=${cell.id} tabindex="-1" .view=${view}></check-cell>`
      case 'note':
        return html`<note-cell .view=${view}></note-cell>`
      case 'drawing':
        return html`<drawing-cell .view=${view}></drawing-cell>`
      default:
        return wideCell(cell, view as CellSignal<WideView>)
    }
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

  private section(section: Section): TemplateResult {
    const { heading, rows, exact } = section
    const id = `heading-${section.id}`
    return html`
      <section aria-labelledby=${heading ? id : nothing}>
        ${
          heading
            ? html`<div class="heading">
                <h2 id=${id}>${heading.text}</h2>
                ${heading.about ? html`<p class="quiet">${heading.about}</p>` : nothing}
              </div>`
            : nothing
        }
        ${this.rows(rows)}
        <section-cautions .views=${this.resultViews([...rows, ...exact])}></section-cautions>
        ${
          exact.length > 0
            ? html`<details>
                <summary>More exact <span class="quiet">${exact.length === 1 ? 'one row' : `${exact.length} rows`}, seldom known</span></summary>
                ${this.rows(exact)}
              </details>`
            : nothing
        }
      </section>
    `
  }

  override render(): TemplateResult {
    this.open.laidOut.get()
    const spreads = spreadsOf(sectionsOf(this.open.sheet.cells))
    return html`${repeat(
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
    )}`
  }
}
