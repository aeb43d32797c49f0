import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { type CellSignal, type CheckView, labelOf, type ResultView } from '../../cells/shared/cell-view.ts'
import '../../cells/basic/drawing-cell.ts'
import '../../cells/basic/given-cell.ts'
import '../../cells/basic/note-cell.ts'
import '../../cells/basic/result-cell.ts'
import { shared } from '../../cells/style/styles.ts'
import { cellElement } from '../../cells/wide/wide-cells.ts'
import type { Cell, Note } from '../../worksheet/index.ts'
import { foundStyle, markFound } from '../open/find-mark.ts'
import './check-list.ts'
import './example-bar.ts'
import { withFace } from '../common/route.ts'
import { UNTITLED_SECTION } from '../common/words.ts'
import { bandOf } from '../open/bands.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { type Section, sectionsOf } from '../open/sections.ts'
import type { CheckList } from './check-list.ts'
import { fillStyle } from './fill-style.ts'
import { foldLine } from './fold-line.ts'
import { showHint } from './hint-line.ts'
import { keyFigures } from './key-figures.ts'
import { fillWords as words } from './words.ts'

/** The face to fill in: each section a band of what one gives, what follows from it, and its drawings. */
@customElement('fill-face')
export class FillFace extends SignalWatcher(LitElement) {
  static override styles = [shared, fillStyle, foldLine, foundStyle]

  @property({ attribute: false }) open!: OpenSheet

  constructor() {
    super()
    this.addEventListener('cell-wanted', (event) => void this.show(event.detail))
  }

  /** Brings a cell into view and moves the focus to it, or only marks it as found. */
  async show(id: string, how: 'focus' | 'found' = 'focus'): Promise<void> {
    await this.updateComplete
    const section = sectionsOf(this.open.sheet.cells).find((one) => contains(one, id))
    const isItsHeading = section?.id === id && how === 'found'
    if (section?.heading && !isItsHeading && this.open.isFolded(section.heading)) {
      this.open.fold(section.id, false)
      await this.updateComplete
    }
    const cell = await this.reveal(id)
    if (!cell) return
    cell.scrollIntoView({ block: cell.classList.contains('fold') ? 'start' : 'center' })
    if (how === 'focus') cell.focus({ preventScroll: true })
    else markFound(cell.getRootNode() as ShadowRoot, cell)
  }

  /** The element of a cell, in any fold or list. */
  private async reveal(id: string): Promise<HTMLElement | undefined> {
    const cell = this.renderRoot.querySelector<HTMLElement>(`[data-cell="${CSS.escape(id)}"]`)
    if (!cell) {
      for (const list of this.renderRoot.querySelectorAll<CheckList>('check-list')) {
        const check = await list.reveal(id)
        if (check) return check
      }
      return undefined
    }
    const folded = cell.closest('details')
    if (folded) folded.open = true
    return cell
  }

  private cell(cell: Cell, isKey = false): TemplateResult {
    const view = this.open.view(cell)
    return isKey
      ? html`<result-cell data-cell=${cell.id} tabindex="-1" key .view=${view}></result-cell>`
      : cellElement(cell, view)
  }

  private views<V extends ResultView | CheckView>(cells: readonly Cell[], kind: 'result' | 'check'): CellSignal<V>[] {
    return cells.filter((cell) => cell.kind === kind).map((cell) => this.open.view(cell) as CellSignal<V>)
  }

  private list(cells: readonly Cell[], isKey = false): unknown {
    return repeat(
      cells,
      (cell) => cell.id,
      (cell) => this.cell(cell, isKey),
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
      ${folded ? html`<section-summary .open=${this.open} .section=${section}></section-summary>` : nothing}
    `
  }

  private folded(label: string, cells: readonly Cell[]): TemplateResult | typeof nothing {
    if (cells.length === 0) return nothing
    return html`
      <details class="fold-line">
        <summary><span>${label}</span> <span class="small quiet names">${cells.map(labelOf).join(', ')}</span></summary>
        ${this.list(cells)}
      </details>
    `
  }

  private band(section: Section): TemplateResult {
    const { givens, fineGivens, notes, results, fineResults, checks, wide } = bandOf(section)
    const cells = [...section.rows, ...section.exact]
    const key = keyFigures(cells, ({ id }) => {
      const outcome = this.open.sheet.outcome(id)
      return outcome.state !== 'value' || outcome.type.kind === 'number'
    })
    const isKey = new Set<Cell>(key)
    const gives = givens.length + fineGivens.length + notes.length > 0
    const follows = results.length + fineResults.length + checks.length > 0
    return html`
      ${
        gives || follows || section.drawings.length > 0
          ? html`<div class="columns ${gives ? '' : 'no-gives'}">
              ${
                gives
                  ? html`<div class="gives" @focusin=${showHint} @pointerover=${showHint}>
                      ${givens.length + fineGivens.length > 0 ? html`<p class="caption">${words.youGive}</p>` : nothing}
                      ${this.list(givens)} ${this.folded(words.fineAdjustments, fineGivens)}
                      ${givens.length + fineGivens.length > 0 ? html`<p class="hint-line" aria-hidden="true"></p>` : nothing}
                      ${this.list(notes)}
                    </div>`
                  : nothing
              }
              ${
                follows
                  ? html`<div class="follows">
                      <p class="caption">${words.whatFollows}</p>
                      ${key.length > 0 ? html`<div class="keys">${this.list(key, true)}</div>` : nothing}
                      ${this.list(results.filter((one) => !isKey.has(one)))} ${this.folded(words.moreResults, fineResults)}
                      <check-list .views=${this.views<CheckView>(checks, 'check')}></check-list>
                      <section-cautions .views=${this.views<ResultView>(cells, 'result')}></section-cautions>
                    </div>`
                  : nothing
              }
              ${section.drawings.length > 0 ? html`<div class="drawings">${this.list(section.drawings)}</div>` : nothing}
            </div>`
          : nothing
      }
      ${wide.length > 0 ? html`<div class="wide">${this.list(wide)}</div>` : nothing}
    `
  }

  private section(section: Section): TemplateResult {
    const { heading, id } = section
    return html`
      <section class="band" data-section=${id} aria-labelledby=${heading ? `heading-${heading.id}` : nothing}>
        ${heading ? this.heading(heading, section) : nothing}
        ${heading && this.open.isFolded(heading) ? nothing : this.band(section)}
      </section>
    `
  }

  private empty(): TemplateResult {
    return html`
      <p class="empty">${words.emptyBefore} <a class="word" href=${withFace(location.hash, 'build')}>${words.emptyLink}</a>${words.emptyAfter}</p>
    `
  }

  override firstUpdated(): void {
    // These follow what is shown at once: most sheets have neither a folded section nor a caution at first.
    void import('../summary/section-summary.ts')
    void import('../../cells/cautions/section-cautions.ts')
    // It is below everything else, and waits until the sheet has been shown.
    void import('../compose/join-offer.ts')
  }

  override render(): TemplateResult {
    this.open.laidOut.get()
    const { cells } = this.open.sheet
    return html`
      ${cells.length === 0 && !this.open.frozen.get() ? this.empty() : nothing}
      <example-bar .open=${this.open}></example-bar>
      ${repeat(
        sectionsOf(cells),
        ({ id }) => id,
        (section) => this.section(section),
      )}
      <join-offer .open=${this.open} @section-set=${(event: CustomEvent<string>) => void this.show(event.detail)}></join-offer>
    `
  }
}

const contains = ({ id, rows, exact, drawings }: Section, cell: string): boolean =>
  id === cell || [...rows, ...exact, ...drawings].some((one) => one.id === cell)
