import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Drawing } from '../../drawings/canvas/tree.ts'
import type { drawRangeMap } from '../../drawings/range/range-map.ts'
import { drawRange } from '../../drawings/range/range-plot.ts'
import type { RangeTable } from '../../worksheet/analysis/followed.ts'
import { type RangeGrid, rangeGrid, rangeTable } from '../../worksheet/analysis/range-table.ts'
import { RangeInputError } from '../../worksheet/analysis/range-values.ts'
import { labelOf, titleOf } from '../../worksheet/document/label.ts'
import type { Given, Range } from '../../worksheet/index.ts'
import { figuresCell, figuresTable, firstColumn } from '../details/figures-table.ts'
import { labelled, labelledStyle } from '../fields/labelled.ts'
import { openedWords } from '../opened/words.ts'
import type { SavedAs } from '../picture/save-drawing.ts'
import { saveOrExplain } from '../picture/save-or-explain.ts'
import { pictureWords } from '../picture/words.ts'
import { type CellSignal, requestChange, type WideView } from '../shared/cell-view.ts'
import { drawnStyle, drawTree } from '../shared/draw-tree.ts'
import { OwnWidth } from '../shared/own-width.ts'
import { field, shared } from '../style/styles.ts'
import { rangeWords } from './words.ts'

/** A wider plot would only be flatter. In CSS pixels. */
const WIDEST = 620
/** One of two plots beside each other, with the table of figures beside both. */
const NARROW = 440
const BOTH_BESIDE = 1300

/** Longer than this, a range is computed once typing has paused, so that no key waits for it. */
const SLOW_MS = 30
const PAUSE_MS = 200

interface Figures {
  readonly view: WideView<Range>
  readonly width: number
  readonly title: string
  readonly shown: TemplateResult
  readonly ms: number
}

/** Results over a range of one given: a plot, and a table whose values can be used in the sheet. */
@customElement('range-cell')
export class RangeCell extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    field,
    labelledStyle,
    figuresCell,
    figuresTable,
    drawnStyle,
    css`
      .top {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem 1.4rem;
        align-items: baseline;
        padding-block-end: 0.5rem;
      }
      .ends {
        display: flex;
        gap: 0.9rem;
      }
      .ends .labelled {
        display: flex;
        gap: 0.4rem;
        align-items: center;
        inline-size: 9rem;
      }
      .drawing {
        max-inline-size: ${WIDEST}px;
      }
      .plots {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        column-gap: 36px;
      }
      @container (min-width: 62rem) {
        .beside {
          display: grid;
          grid-template-columns: ${WIDEST}px minmax(0, 1fr);
          column-gap: 36px;
          align-items: start;
        }
        .beside:has(.plots) {
          grid-template-columns: ${2 * NARROW + 36}px minmax(0, 1fr);
        }
      }
      th {
        vertical-align: bottom;
      }
      thead th {
        color: var(--quiet);
        font-size: 0.86rem;
        line-height: 1.25;
        max-inline-size: 11rem;
        text-wrap: pretty;
      }
      th,
      td {
        padding: 0 0 0 1.4rem;
      }
      thead th {
        padding-block: 0.3rem;
      }
      .word,
      td {
        white-space: nowrap;
      }
      .now {
        font-weight: 700;
      }
      .now .word {
        text-decoration: none;
        color: var(--ink);
      }
      @media print {
        .ends,
        .words {
          display: none;
        }
      }
    `,
    firstColumn,
  ]

  @property({ attribute: false }) view!: CellSignal<WideView<Range>>
  private readonly width = new OwnWidth(this)
  @state() private problem = ''
  @state() private announced = ''
  private last: Figures | undefined
  /** Draws maps; fetched when a range has two givens, as most have one. */
  private drawMap: typeof drawRangeMap | undefined
  private pause: ReturnType<typeof setTimeout> | undefined

  private put(cell: Range, key: 'from' | 'to', text: string): void {
    requestChange(this, { do: 'replace', cell: { ...cell, [key]: text } }, `${key}:${cell.id}`)
  }

  private useValue(cell: Given, shown: string): void {
    const refused = requestChange(this, { do: 'replace', cell })
    this.announced = refused ?? rangeWords.isNow(labelOf(cell), shown)
  }

  private async save(drawn: Drawing, as: SavedAs): Promise<void> {
    this.problem = ''
    const why = await saveOrExplain(drawn, this.view.get().sheet.worksheet.title, as)
    if (why) this.problem = rangeWords.notSaved(why)
  }

  private ends(cell: Range): TemplateResult | typeof nothing {
    if (cell.columns || cell.values !== undefined) return nothing
    if (cell.by === 'marks' && cell.from === undefined && cell.to === undefined) return nothing
    return html`
      <div class="ends">
        ${labelled({ label: openedWords.from, value: cell.from ?? '', put: (text) => this.put(cell, 'from', text) })}
        ${labelled({ label: openedWords.to, value: cell.to ?? '', put: (text) => this.put(cell, 'to', text) })}
      </div>
    `
  }

  private plot(table: RangeTable, cell: Range): TemplateResult | typeof nothing {
    const isBeside = table.followed.length === 2 && this.width.px >= BOTH_BESIDE
    if (!isBeside) return this.drawn(cell, (options) => drawRange(table, options))
    const once = computedOnce(table)
    return this.drawn(cell, (options) => drawRange(once, options), eachFollowed(once))
  }

  /** A plot to see and to save; to see, one of several parts beside each other where there are. */
  private drawn(
    cell: Range,
    draw: (options: { width: number; title: string | undefined }) => Drawing,
    parts?: readonly RangeTable[],
  ): TemplateResult | typeof nothing {
    if (this.width.px === 0) return nothing
    const title = cell.title?.trim() || undefined
    const drawn = draw({ width: Math.min(this.width.px, WIDEST), title })
    return html`
      ${
        parts
          ? html`<div class="plots">${parts.map((one) => html`<figure>${drawTree(drawRange(one, { width: NARROW, title }).node)}</figure>`)}</div>`
          : html`<figure>${drawTree(drawn.node)}</figure>`
      }
      ${drawn.omissions.map((why) => html`<p class="small quiet">${why}</p>`)}
      <div class="words small">
        <button type="button" class="word" @click=${() => this.save(drawn, 'svg')}>${pictureWords.saveSvg}</button>
        <button type="button" class="word" @click=${() => this.save(drawn, 'png')}>${pictureWords.savePng}</button>
      </div>
    `
  }

  private rows({
    varied,
    followed,
    values,
    shown,
    presentAt,
    filledWith,
  }: RangeTable): TemplateResult | typeof nothing {
    // The rows of plotted columns are in their table.
    if (!filledWith) return nothing
    return html`
      <div class="scrolled">
        <table>
          <thead>
            <tr>
              <th scope="col">${labelOf(varied)}</th>
              ${followed.map(({ cell }) => html`<th scope="col">${labelOf(cell)}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${values.map(
              (value, at) => html`
                <tr class=${at === presentAt ? 'now' : ''}>
                  <th scope="row">
                    ${
                      at === presentAt
                        ? html`<span class="word">◆ ${rangeWords.now(shown[at] as string)}</span>`
                        : html`<button type="button" class="word says" @click=${() => this.useValue(filledWith(value.text), shown[at] as string)}>
                            <span class="unseen">${rangeWords.use} </span>${shown[at]}
                          </button>`
                    }
                  </th>
                  ${followed.map(({ shown: figures }) => html`<td>${figures[at]}</td>`)}
                </tr>
              `,
            )}
          </tbody>
        </table>
      </div>
      <p class="small quiet">${rangeWords.useAValue}</p>
    `
  }

  private async fetchMap(): Promise<void> {
    try {
      this.drawMap = (await import('../../drawings/range/range-map.ts')).drawRangeMap
    } catch {
      // Without a network its figures are there all the same; the next change tries again.
      return
    }
    this.last = undefined
    this.requestUpdate()
  }

  /** A result over two givens: a map, and its figures in rows and columns. */
  private grid(grid: RangeGrid, cell: Range): TemplateResult {
    const { across, up, shown } = grid
    const { drawMap } = this
    if (!drawMap) void this.fetchMap()
    return html`
      ${drawMap ? this.drawn(cell, (options) => drawMap(grid, options)) : nothing}
      <div class="scrolled" role="region" tabindex="0" aria-label=${rangeWords.figures}>
        <table>
          <thead>
            <tr>
              <th scope="col">${labelOf(up.varied)} ↓ ${labelOf(across.varied)} →</th>
              ${across.shown.map((text) => html`<th scope="col">${text}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${up.shown.map(
              (text, row) => html`<tr>
                <th scope="row">${text}</th>
                ${(shown[row] ?? []).map((figure) => html`<td>${figure}</td>`)}
              </tr>`,
            )}
          </tbody>
        </table>
      </div>
    `
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    clearTimeout(this.pause)
  }

  /** The figures of a view; those of the view before, where computing them took long and one is still typing. */
  private figuresOf(view: WideView<Range>): Figures {
    const { last } = this
    if (last?.view === view && last.width === this.width.px) return last
    if (last && last.view !== view && last.ms > SLOW_MS) {
      clearTimeout(this.pause)
      this.pause = setTimeout(() => {
        this.last = undefined
        this.requestUpdate()
      }, PAUSE_MS)
      return last
    }
    const start = performance.now()
    const shown = this.computed(view)
    this.last = { view, width: this.width.px, ...shown, ms: performance.now() - start }
    return this.last
  }

  private computed({ cell, sheet }: WideView<Range>): Pick<Figures, 'title' | 'shown'> {
    let table: RangeTable | undefined
    let grid: RangeGrid | undefined
    let why = ''
    try {
      if (cell.second) grid = rangeGrid(sheet, cell)
      else table = rangeTable(sheet, cell)
    } catch (error) {
      if (!(error instanceof RangeInputError)) throw error
      why = error.message
    }
    const varied = table?.varied ?? grid?.across.varied
    return {
      title: cell.title?.trim() || (varied ? rangeWords.title(labelOf(varied)) : titleOf(cell)),
      shown: table
        ? html`<div class="beside"><div>${this.plot(table, cell)}</div><div>${this.rows(table)}</div></div>`
        : grid
          ? this.grid(grid, cell)
          : html`<p class="small">${why}</p>`,
    }
  }

  override render(): TemplateResult {
    const view = this.view.get()
    const { title, shown } = this.figuresOf(view)
    return html`
      <div class="top">
        <h3>${title}</h3>
        ${this.ends(view.cell)}
      </div>
      ${shown}
      ${this.problem ? html`<p role="alert">${this.problem}</p>` : nothing}
      <p class="unseen" role="status">${this.announced}</p>
    `
  }
}

/** A table whose results are computed once at each figure, however many plots are drawn of it. */
function computedOnce(table: RangeTable): RangeTable {
  const known = new Map<number, ReturnType<RangeTable['at']>>()
  const at: RangeTable['at'] = (figure) => {
    const found = known.get(figure) ?? table.at(figure)
    known.set(figure, found)
    return found
  }
  return { ...table, at }
}

/** A table of each result that is followed alone. */
const eachFollowed = (table: RangeTable): readonly RangeTable[] =>
  table.followed.map((one, which) => ({
    ...table,
    followed: [one],
    at: (figure: number) => [table.at(figure)[which]],
  }))
