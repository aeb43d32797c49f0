import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { withEntry } from '../../worksheet/frame/frame-series.ts'
import { takenDifferences, takenForBlanks, takenInWords } from '../../worksheet/frame/frame-taken.ts'
import type { Change, Frame } from '../../worksheet/index.ts'
import { type CellSignal, labelOf, requestChange, type WideView } from '../shared/cell-view.ts'
import { drawnStyle } from '../shared/draw-tree.ts'
import { OwnWidth } from '../shared/own-width.ts'
import { headed } from '../style/headed.ts'
import { field, shared } from '../style/styles.ts'
import { copiedAreas } from './area-copies.ts'
import { areaRows, drawn } from './area-rows.ts'
import { type AreaKind, type FrameArea, newArea } from './area-shapes.ts'
import type { Measured, Opened } from './frame-messages.ts'
import type { AreaMoved, FramePictureView } from './frame-picture.ts'
import './frame-picture.ts'
import { outdatedNote } from '../details/outdated-note.ts'
import { labelledStyle } from '../fields/labelled.ts'
import { FrameCancelled, FrameReader } from './frame-reader.ts'
import { frameStyle } from './frame-style.ts'
import { entryOf, inOrderOfTime, type MeasuredFile, pictureOf, withReadings } from './measured-file.ts'
import { previewOf, previewPart } from './preview.ts'
import { areasDrawing } from './reading-drawings.ts'
import { takenLine } from './reading-lines.ts'
import { seriesPart } from './series-part.ts'
import { KIND_NAMES, frameWords as words } from './words.ts'

/** Drawings are no wider than this, px. */
const WIDEST = 520

type Busy = 'reading' | 'measuring'

/** A picture measured: it is dropped or chosen, areas are marked on it, and what they say is saved. The picture is not. */
@customElement('frame-cell')
export class FrameCell extends SignalWatcher(LitElement) {
  static override styles = [shared, headed, field, labelledStyle, drawnStyle, frameStyle]

  @property({ attribute: false }) view!: CellSignal<WideView<Frame>>
  @state() private reader: FrameReader | undefined
  /** The picture that is open now; it is gone with the page. */
  @state() private open: Opened | undefined
  @state() private busy: Busy | undefined
  /** What happened last, for those who do not see it. */
  @state() private said = ''
  @state() private refused: Readonly<Record<string, string>> = {}
  @state() private chosen = -1
  @state() private over = false
  @query('frame-picture') private picture!: FramePictureView | null
  private readonly width = new OwnWidth(this)
  private measuring = Promise.resolve()
  private latest = 0

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.close()
  }

  private close(): void {
    this.reader?.close()
    this.reader = undefined
    this.open = undefined
    this.busy = undefined
  }

  /** Measures pictures one after the other; the latest by its own time stays open. */
  private async take(files: readonly File[]): Promise<void> {
    if (files.length === 0) return
    this.close()
    const reader = new FrameReader()
    this.reader = reader
    this.busy = 'reading'
    this.refused = {}
    try {
      const { measured, unread } = await this.measureFiles(reader, files)
      const latest = measured.at(-1)
      this.busy = undefined
      if (latest) {
        this.save(measured)
        this.open = latest.opened
      } else this.close()
      if (unread.length > 0) this.said = [...(latest ? [this.said] : []), ...unread].join(' ')
    } catch (error) {
      if (this.reader !== reader) return
      this.close()
      if (!(error instanceof FrameCancelled)) throw error
    }
  }

  /** What could be measured, the earliest first, and why the others could not. The last of them is open in the reader. */
  private async measureFiles(
    reader: FrameReader,
    files: readonly File[],
  ): Promise<{ measured: MeasuredFile[]; unread: string[] }> {
    const { cell } = this.view.get()
    const found: MeasuredFile[] = []
    const unread: string[] = []
    const read = async (file: File): Promise<MeasuredFile> => {
      const opened = await reader.open(file, cell.areas ?? [], cell.picture?.digest, () => {
        this.busy = 'measuring'
      })
      return { file, opened }
    }
    for (const [i, file] of files.entries()) {
      this.busy = 'reading'
      this.said = files.length > 1 ? words.readingOf(i + 1, files.length) : words.reading
      try {
        found.push(await read(file))
      } catch (error) {
        if (error instanceof FrameCancelled) throw error
        unread.push(words.unread(file.name, (error as Error).message))
      }
    }
    const measured = inOrderOfTime(found)
    const latest = measured.at(-1)
    if (latest && latest !== found.at(-1)) measured[measured.length - 1] = await read(latest.file)
    return { measured, unread }
  }

  /** The readings, what the file is called and known by, and for blank givens what the camera wrote: one step of undo. */
  private save(measured: readonly MeasuredFile[]): void {
    const { cell, sheet } = this.view.get()
    const before = cell.picture
    const { file, opened } = measured.at(-1) as MeasuredFile
    const { digest, readings, refused } = opened
    const next: Frame = { ...cell, picture: pictureOf({ file, opened }), readings }
    if (cell.areas) next.areas = [...opened.areas]
    const series = measured.length > 1 ? (cell.series ?? []) : cell.series
    if (series) next.series = measured.reduce((all, one) => withEntry(all, entryOf(one)), [...series])
    const filled = takenForBlanks(sheet.cells, next)
    const changes: Change[] = [
      { do: 'replace', cell: next },
      ...filled.map((given): Change => ({ do: 'replace', cell: given })),
    ]
    const why = requestChange(this, { do: 'several', changes })
    this.refused = refused
    const corners = words.cornersFound(opened.found, opened.unfound)
    const isAnother = before !== undefined && before.digest !== digest
    this.said =
      why ??
      (measured.length > 1
        ? words.severalMeasured(measured.length)
        : isAnother && !cell.series
          ? words.another(before.name)
          : before && !isAnother
            ? words.samePicture
            : words.measured(Object.keys(readings).length))
    if (!why && corners) this.said = `${this.said} ${corners}`
  }

  /** The corners of one area are looked for, as asked. */
  private async find(at: number): Promise<void> {
    const area = this.view.get().cell.areas?.[at]
    if (!this.reader || !area) return
    const found = await this.reader.find(area).catch(() => undefined)
    if (this.view.get().cell.areas?.[at] !== area) return
    this.said = found ? words.cornersFound([area.name], []) : words.cornersFound([], [area.name])
    if (found) this.change(at, found)
  }

  private async preview(): Promise<void> {
    const { reader, open } = this
    if (!reader || !open) return
    const preview = await previewOf(reader, open.pixels).catch(() => undefined)
    const { cell } = this.view.get()
    if (preview && cell.picture?.digest === open.digest)
      requestChange(this, { do: 'replace', cell: { ...cell, picture: { ...cell.picture, preview } } })
  }

  private cancel(): void {
    this.close()
    this.said = words.cancelled
  }

  /** Other areas are saved at once and measured in the background; if many follow each other, only the last is measured. */
  private put(areas: readonly FrameArea[], key: string): void {
    const { cell } = this.view.get()
    const kept = Object.fromEntries(
      Object.entries(cell.readings ?? {}).filter(([name]) =>
        areas.some((area) => area.name === name && cell.areas?.includes(area)),
      ),
    )
    const next: Frame = { ...cell, areas: [...areas] }
    if (cell.readings) next.readings = kept
    requestChange(this, { do: 'replace', cell: next }, `${key}:${cell.id}`)
    this.measure(key)
  }

  private measure(key: string): void {
    const { reader } = this
    if (!reader) return
    const turn = ++this.latest
    this.measuring = this.measuring.then(async () => {
      if (turn !== this.latest || this.reader !== reader) return
      const { cell } = this.view.get()
      let found: Measured
      try {
        found = await reader.measure(cell.areas ?? [])
      } catch {
        return
      }
      if (turn !== this.latest || this.reader !== reader) return
      this.refused = found.refused
      requestChange(
        this,
        { do: 'replace', cell: withReadings(this.view.get().cell, found.readings) },
        `${key}:${cell.id}`,
      )
    })
  }

  private add(kind: AreaKind): void {
    const { cell } = this.view.get()
    const size = this.open?.pixels
    const areas = cell.areas ?? []
    const seen = this.picture?.seen ?? ([0, 0, size?.width ?? 100, size?.height ?? 100] as const)
    this.chosen = areas.length
    this.put([...areas, newArea(kind, areas, seen)], `area-${areas.length}`)
  }

  private change(at: number, area: FrameArea): void {
    const areas = this.view.get().cell.areas ?? []
    if (areas[at] !== undefined && areas[at] !== area) this.put(areas.with(at, area), `area-${at}`)
  }

  /** The name follows into every formula. */
  private rename(at: number, name: string): void {
    const { cell } = this.view.get()
    this.said =
      requestChange(this, { do: 'rename area', id: cell.id, area: at, name }, `area-name-${at}:${cell.id}`) ?? ''
  }

  /** The areas of another frame, where they lie on a picture of this size. */
  private copyFrom(id: string): void {
    // The other frame may have changed since this one was rendered.
    const other = this.view.get().sheet.cell(id)
    if (other?.kind !== 'frame') return
    const size = this.open?.pixels ?? this.view.get().cell.picture?.pixels
    this.chosen = -1
    this.put(copiedAreas(other, size), 'copy-areas')
  }

  private copies(cell: Frame): TemplateResult | typeof nothing {
    const others = this.view
      .get()
      .sheet.cells.filter(
        (one): one is Frame => one.kind === 'frame' && one.id !== cell.id && (one.areas ?? []).length > 0,
      )
    if (others.length === 0 || (cell.areas ?? []).length > 0) return nothing
    return html`<div class="words">
      ${others.map((other) => html`<button type="button" class="word" @click=${() => this.copyFrom(other.id)}>${words.copyAreas(labelOf(other))}</button>`)}
    </div>`
  }

  private removeArea(at: number): void {
    this.chosen = -1
    this.put((this.view.get().cell.areas ?? []).toSpliced(at, 1), 'remove-area')
  }

  private dropped(event: DragEvent): void {
    event.preventDefault()
    event.stopPropagation()
    this.over = false
    void this.take([...(event.dataTransfer?.files ?? [])])
  }

  private dragging(event: DragEvent): void {
    if (!event.dataTransfer?.types.includes('Files')) return
    event.preventDefault()
    event.stopPropagation()
    this.over = true
  }

  private chooser(label: string, camera: boolean): TemplateResult {
    return html`
      <label class="press">
        ${label}
        <input
          class="unseen"
          type="file"
          accept="image/jpeg,image/png,image/tiff,.jpg,.jpeg,.png,.tif,.tiff"
          capture=${camera ? 'environment' : nothing}
          ?multiple=${!camera}
          @change=${(event: Event) => {
            const input = event.target as HTMLInputElement
            void this.take([...(input.files ?? [])])
            input.value = ''
          }}
        >
      </label>
    `
  }

  private facts({ picture }: Frame): TemplateResult | typeof nothing {
    if (!picture) return nothing
    const { name, pixels } = picture
    const taken = takenLine(picture.taken as Readonly<Record<string, unknown>> | null)
    return html`
      <p class="small">${words.facts(name, pixels.width, pixels.height, pixels.bits, pixels.encoding)}</p>
      ${taken ? html`<p class="small">${words.takenHeading}: ${taken}</p>` : nothing}
    `
  }

  private unlike(view: WideView<Frame>): TemplateResult[] {
    return takenDifferences(view.sheet.cells, view.cell).map(
      (difference) => html`
        <p>
          ${takenInWords(difference)}
          <button
            type="button"
            class="word"
            @click=${() =>
              requestChange(this, {
                do: 'replace',
                cell: {
                  ...difference.given,
                  value: difference.found,
                  from: { kind: 'measured', text: difference.found },
                },
              })}
          >${words.useValue(difference.found)}</button>
        </p>
      `,
    )
  }

  private picturePart(cell: Frame): TemplateResult | typeof nothing {
    const { open, reader } = this
    if (!open || !reader) return nothing
    return html`
      <frame-picture
        .reader=${reader}
        .size=${open.pixels}
        .areas=${cell.areas ?? []}
        .chosen=${this.chosen}
        name=${cell.picture?.name ?? ''}
        @area-moved=${({ detail }: CustomEvent<AreaMoved>) => this.change(detail.at, detail.area)}
        @area-chosen=${({ detail }: CustomEvent<number>) => {
          this.chosen = detail
        }}
        @area-removed=${({ detail }: CustomEvent<number>) => this.removeArea(detail)}
      ></frame-picture>
      <div class="words" role="group" aria-label=${words.add}>
        <span class="small quiet add">${words.add}:</span>
        ${(Object.entries(KIND_NAMES) as [AreaKind, string][]).map(
          ([kind, name]) => html`<button type="button" class="word" @click=${() => this.add(kind)}>${name}</button>`,
        )}
      </div>
    `
  }

  override render(): TemplateResult {
    const view = this.view.get()
    const { cell } = view
    const count = Object.keys(cell.readings ?? {}).length
    const warnings = this.open?.warnings ?? []
    const width = Math.min(WIDEST, this.width.px || WIDEST)
    return html`
      <section
        class=${this.over ? 'over' : ''}
        aria-labelledby="title"
        @drop=${this.dropped}
        @dragover=${this.dragging}
        @dragleave=${() => {
          this.over = false
        }}
      >
        <div class="head">
          <h3 id="title">${labelOf(cell)}</h3>
          <span class="small">${cell.picture ? words.measured(count) : words.none}</span>
        </div>
        ${cell.hint ? html`<p class="small quiet">${cell.hint}</p>` : nothing}
        <div class="presses">
          ${this.chooser(words.choose, false)} ${this.chooser(words.takePhoto, true)}
          ${this.busy ? html`<button type="button" class="press" @click=${() => this.cancel()}>${words.cancel}</button>` : nothing}
        </div>
        <p class="small quiet">${cell.picture && !this.open ? words.again(cell.picture.name) : words.dropHint}</p>
        ${this.busy ? html`<progress aria-label=${this.busy === 'reading' ? words.reading : words.measuring}></progress>` : nothing}
        <p role="status">${this.busy === 'measuring' ? words.measuring : this.said}</p>
        ${outdatedNote(cell, view.outcome, view.called)} ${this.facts(cell)} ${this.unlike(view)} ${warnings.map((warning) => html`<p class="small">${warning}</p>`)}
        ${previewPart(cell, this.open && (() => void this.preview()), (picture) => requestChange(this, { do: 'replace', cell: { ...cell, picture } }))}
        ${this.copies(cell)} ${this.open ? this.picturePart(cell) : drawn(areasDrawing(cell, width))}
        ${areaRows(cell, {
          editable: this.open !== undefined,
          refused: this.refused,
          size: this.open?.pixels ?? cell.picture?.pixels,
          width,
          change: (at, area) => this.change(at, area),
          rename: (at, name) => this.rename(at, name),
          remove: (at) => this.removeArea(at),
          find: (at) => void this.find(at),
        })}
        ${seriesPart(cell, (next, key) => requestChange(this, { do: 'replace', cell: next }, `${key}:${cell.id}`))}
        ${count > 0 ? html`<p class="small quiet">${words.caution}</p>` : nothing}
      </section>
    `
  }
}
