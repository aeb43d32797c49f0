import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { guard } from 'lit/directives/guard.js'
import type { Run } from '../../worksheet/index.ts'
import type { PlannedSetup, RunPlan, Unplanned } from '../../worksheet/run/plan.ts'
import { dataText, heightsText, meansText, ratioText, samplingText, timeText } from '../../worksheet/run/plan-text.ts'
import { type PlannedRun, runOf } from '../../worksheet/run/sheet-run.ts'
import type { MissingInput } from '../../worksheet/run/source.ts'
import * as planWords from '../../worksheet/run/words.ts'
import { type CellSignal, labelOf, requestChange, type WideView } from '../shared/cell-view.ts'
import { inView } from '../shared/in-view.ts'
import { headed } from '../style/headed.ts'
import { fold, shared } from '../style/styles.ts'
import { originalsList, STEP, type Tick, unbroken } from './run-originals.ts'
import { runStyle } from './run-style.ts'
import { tally } from './run-tally.ts'
import { tickedRow } from './run-ticks.ts'
import { runWords } from './words.ts'

/** Up to this many originals are planned at once; more are planned after a pause in typing. */
const AT_ONCE = 500
const PAUSE_MS = 400
/** Longer lists are folded. */
const FEW = 8

/** The run of a table: its set-ups in order of work with their originals, effort and progress. */
@customElement('run-cell')
export class RunCell extends SignalWatcher(LitElement) {
  static override styles = [shared, fold, headed, runStyle]

  @property({ attribute: false }) view!: CellSignal<WideView<Run>>
  @state() private planned: PlannedRun | undefined
  /** True if something has changed since it was planned. */
  @state() private stale = true
  /** The number of originals shown for each unfolded set-up. */
  @state() private listed: ReadonlyMap<number, number> = new Map()
  private about: WideView<Run> | undefined
  private waiting: ReturnType<typeof setTimeout> | undefined
  private seen = inView(this)
  /** The place of the tick that removed an original from the list. */
  private ticked: number | undefined

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    clearTimeout(this.waiting)
    this.about = undefined
  }

  /** Planning is delayed, so that it never slows the key that made it necessary. */
  override updated(): void {
    const view = this.view.get()
    if (view === this.about) return
    const first = this.about === undefined && this.planned === undefined
    this.about = view
    this.stale = true
    clearTimeout(this.waiting)
    const size = this.planned?.feed.list.length ?? 0
    const pause = first || size <= AT_ONCE ? 0 : PAUSE_MS
    this.waiting = setTimeout(() => void this.plan(view), pause)
  }

  private async plan(view: WideView<Run>): Promise<void> {
    await this.seen
    if (this.about !== view) return
    this.planned = runOf(view.sheet, view.cell)
    this.stale = false
    await this.updateComplete
    this.keepFocus()
  }

  /** When only the rest is planned, a ticked original disappears and the next one is focused. */
  private keepFocus(): void {
    const { ticked } = this
    this.ticked = undefined
    if (ticked === undefined || this.shadowRoot?.activeElement) return
    const boxes = [...this.renderRoot.querySelectorAll<HTMLInputElement>('input[data-row]')]
    ;(boxes[Math.min(ticked, boxes.length - 1)] ?? this.renderRoot.querySelector<HTMLElement>('.word'))?.focus()
  }

  private readonly tick = (row: number, done: boolean): void => {
    const { feed } = this.planned ?? {}
    const { sheet, cell } = this.view.get()
    const table = cell.of === undefined ? undefined : sheet.named(cell.of)
    if (feed?.ticks === undefined || table?.kind !== 'table') return
    const boxes = [...this.renderRoot.querySelectorAll<HTMLInputElement>('input[data-row]')]
    this.ticked = boxes.findIndex((box) => box.dataset.row === `${row}`)
    const refused = requestChange(this, tickedRow(table, row, feed.ticks, done))
    // Redraw, because the press has already ticked the box.
    if (refused !== undefined && this.planned) this.planned = { ...this.planned }
  }

  private toggleLeft(left: boolean): void {
    const { left: _, ...rest } = this.view.get().cell
    requestChange(this, { do: 'replace', cell: (left ? { ...rest, left: true } : rest) as Run })
  }

  private list(at: number, count: number): void {
    this.listed = new Map(this.listed).set(at, count)
  }

  private setup(setup: PlannedSetup, at: number, tick: Tick, remarks: ReadonlyMap<number, string>): TemplateResult {
    const { magnification, sampling, exposure, means, heights, track, originals, frames, time, data } = setup
    const done = originals.filter(({ original }) => original.done).length
    const facts = [
      planWords.frames(frames),
      ...(time > 0 ? [timeText(time)] : []),
      ...(data > 0 ? [dataText(data)] : []),
      runWords.gives(samplingText(sampling)),
    ]
    const figures: [string, string][] = [[runWords.magnification, ratioText(magnification)]]
    if (track !== undefined) figures.push([heights ? runWords.onColumn : runWords.originalToSensor, heightsText(setup)])
    const words = runWords.originalsDone(originals.length, done)
    const many = originals.length > FEW
    const shown = this.listed.get(at) ?? (many ? 0 : originals.length)
    const list = originalsList({
      originals,
      shown: shown || STEP,
      tick,
      remarks,
      uneven: heights !== undefined && heights.most - heights.least > 5e-4,
      more: () => this.list(at, (shown || STEP) + STEP),
    })
    return html`
      <div class="setup" role="group" aria-labelledby="setup-${at}">
        <div class="set">
          <h4 id="setup-${at}">${runWords.setUp(at + 1)} <span class="quiet">${[exposure, meansText(means)].filter(Boolean).join(', ')}</span></h4>
          <dl>${figures.map(([label, figure]) => html`<div><dt class="small">${label}</dt><dd>${figure}</dd></div>`)}</dl>
        </div>
        <p class="facts small">${unbroken(many ? facts : [words, ...facts], ',')}</p>
        ${
          many
            ? html`<details
                @toggle=${(event: Event) => {
                  if ((event.target as HTMLDetailsElement).open && shown === 0) this.list(at, STEP)
                }}
              >
                <summary>${words}</summary>
                ${shown > 0 ? list : nothing}
              </details>`
            : list
        }
      </div>
    `
  }

  private parts({ setups }: RunPlan): TemplateResult | typeof nothing {
    const tiled = setups.flatMap((setup, at) =>
      setup.originals.flatMap((one) => (one.tiled ? [{ ...one, at: at + 1 }] : [])),
    )
    if (tiled.length === 0) return nothing
    const list = html`<ul>
      ${tiled.slice(0, STEP).map(
        ({ original, tiles, tiled: why, at }) => html`<li class="why">
          ${runWords.tiles(original.title, tiles.across, tiles.down, tiles.turned, at)}
          <span class="small quiet">${why}</span>
        </li>`,
      )}
      ${tiled.length > STEP ? html`<li class="why">${runWords.moreTiled(tiled.length - STEP)}</li>` : nothing}
    </ul>`
    return folded(runWords.tiled(tiled.length), list, tiled.length)
  }

  private unplanned(unplanned: readonly Unplanned[]): TemplateResult | typeof nothing {
    if (unplanned.length === 0) return nothing
    const list = html`<ul>
      ${unplanned
        .slice(0, STEP)
        .map(
          ({ row, title, why }) =>
            html`<li class="why"><b>${title}</b>${title === runWords.row(row + 1) ? '' : runWords.inRow(row + 1)}: ${why}</li>`,
        )}
      ${unplanned.length > STEP ? html`<li class="why">${runWords.more(unplanned.length - STEP)}</li>` : nothing}
    </ul>`
    return folded(runWords.unplanned(unplanned.length), list, unplanned.length)
  }

  private body({ feed, plan }: PlannedRun, left: boolean): TemplateResult {
    if (!feed.table) return html`<p class="order">${runWords.noTable}</p>`
    if (!plan) return html`<p class="order">${runWords.missing}</p>${missingInputs(feed.missing)}`
    const { done } = plan.progress
    const tick = feed.ticks === undefined ? undefined : this.tick
    return html`
      ${feed.without.length > 0 ? html`<p class="small">${runWords.plannedWithout}</p>${missingInputs(feed.without)}` : nothing}
      ${
        done.count > 0 || left
          ? html`<button type="button" class="word" aria-pressed=${left} @click=${() => this.toggleLeft(!left)}>${runWords.planRest}</button>`
          : nothing
      }
      ${
        plan.setups.length > 0
          ? html`<p class="order small quiet">${runWords.order}</p>`
          : html`<p class="order">${left && done.count > 0 ? runWords.nothingLeft : runWords.noOriginals}</p>`
      }
      ${plan.setups.map((setup, at) => this.setup(setup, at, tick, feed.remarks))}
      ${this.parts(plan)} ${this.unplanned(plan.unplanned)} ${tally(plan, left)}
    `
  }

  override render(): TemplateResult {
    const { cell } = this.view.get()
    const { planned } = this
    const replanning = this.stale && (planned?.feed.list.length ?? 0) > AT_ONCE
    return html`
      <section aria-labelledby="title" aria-busy=${this.stale}>
        <div class="head">
          <h3 id="title">${labelOf(cell)}</h3>
          <span class="small quiet planning" role="status">${replanning ? runWords.planningAgain : ''}</span>
        </div>
        ${planned ? guard([planned, this.listed, cell.left], () => this.body(planned, cell.left === true)) : html`<p class="order quiet">${runWords.planning}</p>`}
      </section>
    `
  }
}

const missingInputs = (all: readonly MissingInput[]): TemplateResult => html`<ul>
  ${all.map(({ input, why }) => html`<li class="why small"><b>${input.label}:</b> ${why}</li>`)}
</ul>`

const folded = (words: string, list: TemplateResult, count: number): TemplateResult =>
  count > FEW
    ? html`<div class="group"><details><summary>${words}</summary>${list}</details></div>`
    : html`<div class="group"><h4>${words}</h4>${list}</div>`
