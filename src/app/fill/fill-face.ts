import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { type CellSignal, type CheckView, labelOf, type ResultView } from '../../cells/shared/cell-view.ts'
import '../../cells/basic/drawing-cell.ts'
import '../../cells/basic/given-cell.ts'
import '../../cells/basic/note-cell.ts'
import '../../cells/basic/result-cell.ts'
import { cellElement } from '../../cells/elements/cell-elements.ts'
import { signsShown } from '../../cells/shared/typing-aids.ts'
import { shared } from '../../cells/style/styles.ts'
import type { Cell } from '../../worksheet/index.ts'
import { foundStyle, markFound } from '../open/find-mark.ts'
import './check-list.ts'
import { withFace } from '../common/route.ts'
import { UNTITLED_SECTION } from '../common/words.ts'
import { type Band, bandsOf, freely, inMargin, type Placed, spreadsOf, underColumns } from '../open/bands.ts'
import { keyFigures } from '../open/key-figures.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { pageWidth } from '../open/page-width.ts'
import { sectionsOf } from '../open/sections.ts'
import { fillStyle } from './fill-style.ts'
import { foldLine } from './fold-line.ts'
import { fillWords as words } from './words.ts'

/** Cells rendered in a task, so that none holds up the first screen or a key. */
const AT_A_TIME = 24
/** The height in pixels that a band out of sight is taken for. */
const BAND_HEIGHT = 480
/** A sheet of more cells is long: those out of sight follow while the page rests. */
const AT_ONCE = 300

// A sheet is first shown with these: asked for along with this module, they are here by then.
void import('../examples/example-bar.ts')
void import('../summary/section-summary.ts')
void import('../../cells/cautions/section-cautions.ts')
let showHint: ((event: Event) => void) | undefined
void import('../hints/hint-line.ts').then((hints) => {
  showHint = hints.showHint
})
const hinted = (event: Event): void => showHint?.(event)

/** The face to fill in: each section a band of what one gives, what follows from it, and its drawings. */
@customElement('fill-face')
export class FillFace extends SignalWatcher(LitElement) {
  static override styles = [shared, fillStyle, foldLine, foundStyle]

  @property({ attribute: false }) open!: OpenSheet
  /** Cells to render for now. */
  @state() limit = AT_A_TIME
  /** How many of them are left while the sheet is rendered. */
  private left = 0
  /** Whether no cell was left out. */
  private isWhole = true

  constructor() {
    super()
    this.addEventListener('cell-wanted', (event) => void this.show(event.detail))
  }

  /** Brings a cell into view and moves the focus to it, or only marks it as found. */
  async show(id: string, how: 'focus' | 'found' = 'focus'): Promise<void> {
    await this.updateComplete
    if (!this.isWhole) {
      this.limit = Number.POSITIVE_INFINITY
      await this.updateComplete
    }
    const { showCell } = await import('../find/show-cell.ts')
    await showCell(this, id, how === 'found' ? markFound : undefined)
  }

  private cell(cell: Cell, isKey = false): TemplateResult {
    const view = this.open.view(cell)
    return isKey ? html`<result-cell data-cell=${cell.id} key .view=${view}></result-cell>` : cellElement(cell, view)
  }

  private views<V extends ResultView | CheckView>(cells: readonly Cell[], kind: 'result' | 'check'): CellSignal<V>[] {
    return cells.filter((cell) => cell.kind === kind).map((cell) => this.open.view(cell) as CellSignal<V>)
  }

  private list(cells: readonly Cell[], isKey = false): unknown {
    this.left -= cells.length
    return repeat(
      cells,
      (cell) => cell.id,
      (cell) => this.cell(cell, isKey),
    )
  }

  private heading({ section }: Placed, isOnly: boolean, isFirst: boolean): TemplateResult | typeof nothing {
    const { heading } = section
    if (!heading) return nothing
    const { id, text } = heading
    // The first heading of a band says which set-up all of it is of.
    const title = this.open.sheet.worksheet.setups?.find(({ name }) => name === heading.set_up)?.title
    const before = !isFirst && title && text.startsWith(`${title}: `) ? `${title}: ` : ''
    const folded = this.open.isFolded(heading)
    return html`
      <h2 id="heading-${id}" data-section=${id}>
        <button
          type="button"
          class="fold"
          data-cell=${id}
          aria-expanded=${!folded}
          @click=${() => this.open.fold(id, !folded)}
        >${before ? html`<span class="unseen">${before}</span>` : nothing}${text.slice(before.length) || UNTITLED_SECTION}</button>
      </h2>
      ${heading.about && isOnly ? html`<p class="quiet">${heading.about}</p>` : nothing}
      ${folded ? html`<section-summary .open=${this.open} .section=${section}></section-summary>` : nothing}
    `
  }

  private headings(sections: readonly Placed[], begins: boolean): TemplateResult {
    const cells = sections.flatMap(({ section }) => [...section.rows, ...section.exact])
    return html`<div class="heading">
      ${sections.map((one, at) => this.heading(one, sections.length === 1, begins && at === 0))}
      ${cells.some(({ id }) => this.open.resting.has(id)) ? html`<section-examples .open=${this.open} .cells=${cells}></section-examples>` : nothing}
    </div>`
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

  private gives(blocks: readonly (readonly Placed[])[], isGiven: boolean): TemplateResult {
    const fine = blocks.flat().flatMap((one) => (this.isFolded(one) ? [] : one.fineGivens))
    return html`
      <div class="gives ${blocks.length > 1 ? 'several' : ''}" @focusin=${hinted} @pointerover=${hinted} @input=${hinted}>
        ${isGiven ? html`<p class="caption">${words.youGive}</p>` : nothing}
        ${blocks.map(
          (block, at) => html`<div class="block">
            ${at > 0 ? this.headings(block, false) : nothing}
            ${block.map((one) => (this.isFolded(one) ? nothing : html`${this.list(one.givens)} ${this.list(one.notes)}`))}
          </div>`,
        )}
        ${this.folded(words.fineAdjustments, fine)}
        ${isGiven ? html`<p class="hint-line"></p>` : nothing}
      </div>
    `
  }

  private follows(shown: readonly Placed[]): TemplateResult {
    const checks = shown.flatMap((one) => one.checks)
    const main = shown.flatMap((one) => one.results)
    const results = [...main, ...shown.flatMap((one) => one.fineResults)]
    const key = keyFigures([...main, ...checks], ({ id }) => {
      const outcome = this.open.sheet.outcome(id)
      return outcome.state !== 'value' || outcome.type.kind === 'number'
    })
    const isKey = new Set<Cell>(key)
    return html`
      <div class="follows">
        <p class="caption">${words.whatFollows}</p>
        ${key.length > 0 ? html`<div class="keys">${this.list(key, true)}</div>` : nothing}
        ${this.list(main.filter((cell) => !isKey.has(cell)))}
        ${this.folded(
          words.moreResults,
          shown.flatMap(({ fineResults }) => fineResults),
        )}
        <check-list .views=${this.views<CheckView>(checks, 'check')}></check-list>
        <section-cautions .views=${this.views<ResultView>(results, 'result')}></section-cautions>
        ${shown.map((one) => this.list(one.notesFollowing))}
      </div>
    `
  }

  private isFolded({ section }: Placed): boolean {
    return section.heading !== undefined && this.open.isFolded(section.heading)
  }

  private band(asDrawn: Band, hasMargin: boolean, isFree: boolean): TemplateResult {
    const [band, spread] = isFree ? freely(asDrawn) : [asDrawn, '']
    const { sections } = band
    const shown = sections.filter((one) => !this.isFolded(one))
    const given = (one: Placed): number => (this.isFolded(one) ? 0 : one.givens.length + one.notes.length)
    const has = (...kinds: readonly ('givens' | 'fineGivens' | 'results' | 'fineResults' | 'checks')[]): boolean =>
      shown.some((one) => kinds.some((kind) => one[kind].length > 0))
    const isGiven = has('givens', 'fineGivens')
    const follows = has('results', 'fineResults', 'checks')
    const gives = isGiven || shown.some((one) => given(one) > 0)
    const drawn = hasMargin ? [] : this.drawn(band)
    // A section that one gives nothing has its heading beside that of the section before.
    const blocks: Placed[][] = []
    for (const one of sections) {
      const last = blocks.at(-1)
      if (last && (given(one) === 0 || last.every((before) => given(before) === 0))) last.push(one)
      else blocks.push([one])
    }
    const [first = []] = blocks
    return html`
      <div class="band">
        ${first.some(({ section }) => section.heading) ? this.headings(first, true) : nothing}
        ${gives || follows || drawn.length > 0 ? this.columns(band, gives ? this.gives(blocks, isGiven) : nothing, follows ? this.follows(shown) : nothing, drawn, spread) : nothing}
        ${hasMargin ? nothing : this.wide(band)}
      </div>
    `
  }

  /**
   * What one gives beside what follows. In a wide window without drawings one of both takes two columns; in a narrower
   * one drawings are under the shorter.
   */
  private columns(
    band: Band,
    gives: TemplateResult | typeof nothing,
    follows: TemplateResult | typeof nothing,
    drawn: readonly Cell[],
    spread: string,
  ): TemplateResult {
    const isStacked = pageWidth.get() === 'medium' && drawn.length > 0 && gives !== nothing && follows !== nothing
    const [left, right] = isStacked ? underColumns(band, drawn) : []
    return html`<div class="columns ${gives === nothing ? 'no-gives' : ''} ${spread}">
      ${isStacked ? html`<div>${gives}${this.drawings(left)}</div><div>${follows}${this.drawings(right)}</div>` : html`${gives} ${follows} ${this.drawings(drawn)}`}
    </div>`
  }

  private drawings(drawn: readonly Cell[] = []): TemplateResult | typeof nothing {
    return drawn.length > 0 ? html`<div class="drawings">${this.list(drawn)}</div>` : nothing
  }

  private wide({ sections }: Band): TemplateResult | typeof nothing {
    const wide = sections.filter((one) => !this.isFolded(one)).flatMap((one) => one.wide)
    return wide.length > 0 ? html`<div class="wide">${this.list(wide)}</div>` : nothing
  }

  private drawn({ sections, drawings }: Band): readonly Cell[] {
    return drawings.filter(
      (drawing) => !sections.some((one) => this.isFolded(one) && one.section.drawings.includes(drawing)),
    )
  }

  /** In a wide window drawings have a margin of their own beside one or more bands. */
  private spread(bands: readonly Band[]): TemplateResult {
    if (this.left <= 0) return this.leftOut(bands.length)
    const drawn = bands.flatMap((band) => this.drawn(band))
    const isWide = pageWidth.get() === 'wide'
    const hasMargin = drawn.length > 0 && isWide
    const isFree = drawn.length === 0 && isWide
    // Each is rendered before the next, so that it is known what is left.
    const rendered = bands.map((band) => ({
      id: band.sections[0]?.section.id,
      text: this.left <= 0 ? this.leftOut(1) : this.band(band, hasMargin, isFree),
    }))
    const texts = repeat(
      rendered,
      ({ id }) => id,
      ({ text }) => text,
    )
    if (!hasMargin) return html`${texts}`
    const room = inMargin(bands, drawn.length)
    return html`
      <div class="spread">
        <div class="texts">${texts}</div>
        <div class="drawings">${this.list(drawn.slice(0, room))}</div>
      </div>
      ${room < drawn.length ? html`<div class="drawings more">${this.list(drawn.slice(room))}</div>` : nothing}
      ${bands.map((band) => (this.left <= 0 ? this.leftOut(0) : this.wide(band)))}
    `
  }

  /** The room of bands that are rendered later. */
  private leftOut(bands: number): TemplateResult {
    this.isWhole = false
    return html`<div .style=${`block-size: ${bands * BAND_HEIGHT}px`}></div>`
  }

  private empty(): TemplateResult {
    return html`
      <p class="empty">${words.emptyBefore} <a class="word" href=${withFace(location.hash, 'build')}>${words.emptyLink}</a>${words.emptyAfter}</p>
    `
  }

  override firstUpdated(): void {
    // It is below everything else, and waits until the sheet has been shown.
    void import('../compose/join-offer.ts')
  }

  /** The head of the sheet is painted before the first of its cells. */
  protected override async scheduleUpdate(): Promise<void> {
    if (!this.hasUpdated) await new Promise((settle) => setTimeout(settle))
    super.scheduleUpdate()
  }

  override connectedCallback(): void {
    super.connectedCallback()
    this.ariaBusy = 'true'
  }

  override updated(): void {
    const { isWhole } = this
    this.ariaBusy = isWhole ? null : 'true'
    if (this.open.sheet.cells.length > AT_ONCE)
      void import('../long/long-sheet.ts').then(({ lookAfter }) => lookAfter(this, this.open, isWhole))
    else if (!isWhole)
      setTimeout(() => {
        this.limit += AT_A_TIME
      })
  }

  override render(): TemplateResult {
    this.open.laidOut.get()
    const { cells } = this.open.sheet
    this.left = this.limit
    this.isWhole = true
    return html`
      ${cells.length === 0 && !this.open.frozen.get() ? this.empty() : nothing}
      <example-bar .open=${this.open}></example-bar>
      ${repeat(
        spreadsOf(bandsOf(sectionsOf(cells))),
        ([first]) => first?.sections[0]?.section.id,
        (spread) => this.spread(spread),
      )}
      ${signsShown.get() ? typingLine(this.open) : nothing}
      <div class="end">
        <join-offer .open=${this.open} @section-set=${(event: CustomEvent<string>) => void this.show(event.detail)}></join-offer>
        <slot></slot>
      </div>
    `
  }
}

/** The line above the keyboard, fetched where the signs are shown. */
function typingLine(open: OpenSheet): TemplateResult {
  void import('../typing/typing-line.ts')
  return html`<typing-line .open=${open}></typing-line>`
}
