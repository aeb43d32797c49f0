import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { shared } from '../style/styles.ts'
import {
  type AreaKind,
  boxesOf,
  dragged,
  type FrameArea,
  handlesOf,
  moved,
  outlineOf,
  type Point,
  type Size,
} from './area-shapes.ts'
import type { FrameReader } from './frame-reader.ts'
import { fitted, panned, toPicture, toScreen, type ViewWindow, zoomed } from './view-window.ts'
import { frameWords as words } from './words.ts'

/** An area was moved on the picture: each step of a drag. */
export interface AreaMoved {
  readonly at: number
  readonly area: FrameArea
}

declare global {
  interface HTMLElementEventMap {
    'area-moved': CustomEvent<AreaMoved>
    'area-chosen': CustomEvent<number>
    'area-removed': CustomEvent<number>
  }
}

/** What a pointer holds: the picture, an area, or a point of one. */
interface Held {
  readonly area: number
  readonly handle: number
  /** The area when it was caught, and where in the picture: each step of a drag is counted from there, so none is lost. */
  readonly from: FrameArea | undefined
  readonly start: Point
  last: Point
}

const NONE_HELD = -1
const WHEEL_STEP = 1.0015
const KEY_ZOOM = 1.5
/** A point is caught within this of where it is drawn, px of the screen: a fingertip. */
const REACH = 22
/** The points of a small area take at most this share of its shorter side, so that its middle can be caught. */
const MOST_OF_SIDE = 0.3

function reachOf(area: FrameArea, scale: number): number {
  const box = outlineOf(area)
  return box ? Math.min(REACH, MOST_OF_SIDE * scale * Math.min(box[2], box[3])) : REACH
}

/** A picture that is zoomed and moved, with areas that are dragged by mouse, touch and keyboard. */
@customElement('frame-picture')
export class FramePictureView extends LitElement {
  static override styles = [
    shared,
    css`
      .stage {
        position: relative;
        block-size: min(60vh, 34rem);
        min-block-size: 16rem;
        border: 1px solid var(--edge);
        overflow: hidden;
        touch-action: none;
        cursor: grab;
      }
      canvas,
      svg {
        position: absolute;
        inset: 0;
        inline-size: 100%;
        block-size: 100%;
      }
      .area {
        cursor: move;
      }
      .area:focus,
      .point:focus {
        outline: none;
      }
      .shape {
        fill: none;
        stroke: #fff;
        stroke-width: 1.5;
        vector-effect: non-scaling-stroke;
      }
      .under {
        fill: transparent;
        stroke: #000;
        stroke-width: 3.5;
      }
      .chosen .shape {
        stroke-width: 2.5;
      }
      .chosen .under {
        stroke-width: 5;
      }
      .area:focus-visible .under,
      .point:focus-visible circle {
        stroke: var(--ring);
        stroke-width: 7;
      }
      text {
        font-size: 13px;
        fill: #fff;
        stroke: #000;
        stroke-width: 3;
        paint-order: stroke;
      }
      .point circle {
        fill: #fff;
        stroke: #000;
        stroke-width: 1.5;
      }
      .point {
        cursor: crosshair;
      }
    `,
  ]

  @property({ attribute: false }) reader!: FrameReader
  @property({ attribute: false }) size!: Size
  @property({ attribute: false }) areas: readonly FrameArea[] = []
  @property({ type: Number }) chosen = NONE_HELD
  @property() name = ''
  @state() private view: ViewWindow | undefined
  @query('.stage') private stage!: HTMLElement
  @query('canvas') private canvas!: HTMLCanvasElement

  private pointers = new Map<number, Held>()
  private looking = false
  private lookAgain = false
  private watcher: ResizeObserver | undefined

  /** The part of the picture that is seen: x, y, width and height. */
  get seen(): readonly [number, number, number, number] {
    const { view } = this
    const { width, height } = this.size
    if (!view) return [0, 0, width, height]
    const screen = this.screen
    const [x, y] = [Math.max(0, view.x), Math.max(0, view.y)]
    return [x, y, Math.min(width - x, screen.width / view.scale), Math.min(height - y, screen.height / view.scale)]
  }

  private get screen(): Size {
    return { width: this.stage?.clientWidth || 1, height: this.stage?.clientHeight || 1 }
  }

  override firstUpdated(): void {
    this.watcher = new ResizeObserver(() => this.fit())
    this.watcher.observe(this.stage)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.watcher?.disconnect()
  }

  override updated(changed: Map<string, unknown>): void {
    if (changed.has('reader') || changed.has('size')) this.fit()
    if (changed.has('view')) void this.look()
  }

  private fit(): void {
    this.view = fitted(this.size, this.screen)
  }

  private zoom(to: number, at?: Point): void {
    if (!this.view) return
    const { width, height } = this.screen
    this.view = zoomed(this.view, to, at ?? [width / 2, height / 2], this.size, this.screen)
  }

  /** Draws what is seen; a view that has moved on meanwhile is drawn next. */
  private async look(): Promise<void> {
    if (this.looking) {
      this.lookAgain = true
      return
    }
    this.looking = true
    try {
      do {
        this.lookAgain = false
        const { view, screen } = this
        if (!view) return
        const ratio = Math.min(globalThis.devicePixelRatio || 1, 2)
        const [width, height] = [Math.round(screen.width * ratio), Math.round(screen.height * ratio)]
        const image = await this.reader.look({ x: view.x, y: view.y, step: 1 / (view.scale * ratio), width, height })
        this.canvas.width = width
        this.canvas.height = height
        this.canvas.getContext('2d')?.putImageData(image, 0, 0)
      } while (this.lookAgain)
    } catch {
      // Closed meanwhile: there is nothing to draw any more.
    } finally {
      this.looking = false
    }
  }

  private tell<K extends 'area-moved' | 'area-chosen' | 'area-removed'>(
    name: K,
    detail: HTMLElementEventMap[K]['detail'],
  ): void {
    this.dispatchEvent(new CustomEvent(name, { detail }))
  }

  private change(at: number, area: FrameArea): void {
    this.tell('area-moved', { at, area })
  }

  private place(event: PointerEvent | WheelEvent): Point {
    const box = this.stage.getBoundingClientRect()
    return [event.clientX - box.left, event.clientY - box.top]
  }

  /** What lies under a place on the screen: a point of the chosen area first. */
  private caught(at: Point, target: EventTarget | null): { area: number; handle: number } {
    const view = this.view as ViewWindow
    const chosen = this.areas[this.chosen]
    if (chosen) {
      const distances = handlesOf(chosen).map((point) =>
        Math.hypot(...(toScreen(view, point).map((value, i) => value - (at[i] as number)) as [number, number])),
      )
      const nearest = Math.min(...distances)
      if (nearest <= reachOf(chosen, view.scale)) return { area: this.chosen, handle: distances.indexOf(nearest) }
    }
    const group = (target as Element | null)?.closest('.area')
    const under = group ? Number(group.getAttribute('data-at')) : NONE_HELD
    // An area of the whole picture cannot be moved: dragging there moves the picture.
    const isFixed = handlesOf(this.areas[under] ?? { kind: 'evenness', name: '' }).length === 0
    return { area: isFixed ? NONE_HELD : under, handle: NONE_HELD }
  }

  private down(event: PointerEvent): void {
    if (!this.view || event.button > 0) return
    this.stage.setPointerCapture(event.pointerId)
    const at = this.place(event)
    const held = this.pointers.size > 0 ? { area: NONE_HELD, handle: NONE_HELD } : this.caught(at, event.target)
    const start = toPicture(this.view, at)
    this.pointers.set(event.pointerId, { ...held, from: this.areas[held.area], start, last: at })
    if (held.area >= 0 && held.area !== this.chosen) this.tell('area-chosen', held.area)
  }

  private move(event: PointerEvent): void {
    const held = this.pointers.get(event.pointerId)
    if (!held || !this.view) return
    const at = this.place(event)
    const before = held.last
    held.last = at
    if (this.pointers.size > 1) {
      const other = [...this.pointers].find(([id]) => id !== event.pointerId)?.[1].last as Point
      const spread = (one: Point): number => Math.max(1, Math.hypot(one[0] - other[0], one[1] - other[1]))
      const middle: Point = [(at[0] + other[0]) / 2, (at[1] + other[1]) / 2]
      this.zoom((this.view.scale * spread(at)) / spread(before), middle)
      this.view = panned(this.view, (at[0] - before[0]) / 2, (at[1] - before[1]) / 2, this.size, this.screen)
      return
    }
    const { from, start } = held
    if (!from) {
      this.view = panned(this.view, at[0] - before[0], at[1] - before[1], this.size, this.screen)
      return
    }
    const [x, y] = toPicture(this.view, at)
    const next =
      held.handle >= 0
        ? dragged(from, held.handle, [x, y], this.size)
        : moved(from, x - start[0], y - start[1], this.size)
    this.change(held.area, next)
  }

  private up(event: PointerEvent): void {
    this.pointers.delete(event.pointerId)
  }

  private wheel(event: WheelEvent): void {
    if (!this.view) return
    event.preventDefault()
    this.zoom(this.view.scale * WHEEL_STEP ** -event.deltaY, this.place(event))
  }

  private key(event: KeyboardEvent): void {
    if (event.altKey || event.ctrlKey || event.metaKey || !this.view) return
    const step = event.shiftKey ? 10 : 1
    const arrows: Record<string, Point> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, -step],
      ArrowDown: [0, step],
    }
    const by = arrows[event.key]
    const target = event.target as Element
    const group = target.closest('.area, .point')
    const at = Number(group?.getAttribute('data-at') ?? NONE_HELD)
    const area = group ? this.areas[at] : undefined
    if (by && area) this.moveBy(at, area, Number(group?.getAttribute('data-point') ?? NONE_HELD), by)
    else if (by) this.view = panned(this.view, -by[0] * 40, -by[1] * 40, this.size, this.screen)
    else if (event.key === '+' || event.key === '=') this.zoom(this.view.scale * KEY_ZOOM)
    else if (event.key === '-') this.zoom(this.view.scale / KEY_ZOOM)
    else if (event.key === '0') this.fit()
    else if (event.key === '1') this.zoom(1)
    else if (event.key === 'Delete' && area) this.tell('area-removed', at)
    else return
    event.preventDefault()
  }

  private moveBy(at: number, area: FrameArea, handle: number, [dx, dy]: Point): void {
    if (handle < 0) {
      this.change(at, moved(area, dx, dy, this.size))
      return
    }
    const [x, y] = handlesOf(area)[handle] as Point
    this.change(at, dragged(area, handle, [x + dx, y + dy], this.size))
  }

  private shape(area: FrameArea, view: ViewWindow, name: string): TemplateResult {
    const screen = (point: Point): string => toScreen(view, point).join(',')
    if (area.corners)
      return svg`<polygon class=${name} points=${(area.corners as unknown as Point[]).map(screen).join(' ')}></polygon>`
    if (area.from && area.to)
      return svg`<polyline class=${name} points=${([area.from, area.to] as unknown as Point[]).map(screen).join(' ')}></polyline>`
    const boxes =
      area.kind === 'evenness' && !area.box ? [[0, 0, this.size.width, this.size.height] as const] : boxesOf(area)
    return svg`${boxes.map(([x, y, w, h]) => {
      const [left, top] = toScreen(view, [x, y])
      return svg`<rect class=${name} x=${left} y=${top} width=${w * view.scale} height=${h * view.scale}></rect>`
    })}`
  }

  private area(area: FrameArea, at: number, view: ViewWindow): TemplateResult {
    const isChosen = at === this.chosen
    const [x, y] = toScreen(view, handlesOf(area)[0] ?? [0, 0])
    return svg`
      <g
        class="area ${isChosen ? 'chosen' : ''}"
        data-at=${at}
        tabindex="0"
        role="button"
        aria-pressed=${isChosen ? 'true' : 'false'}
        aria-label=${words.areaLabel(area.kind as AreaKind, area.name)}
        @focus=${() => this.tell('area-chosen', at)}
      >
        ${this.shape(area, view, 'under')}${this.shape(area, view, 'shape')}
        <text x=${x + 4} y=${Math.max(14, y - 5)} aria-hidden="true">${area.name}</text>
      </g>
      ${
        isChosen
          ? handlesOf(area).map((point, handle) => {
              const [u, v] = toScreen(view, point)
              return svg`<g class="point" data-at=${at} data-point=${handle} tabindex="0" role="button" aria-label=${words.cornerLabel(area.name, handle + 1)}><circle cx=${u} cy=${v} r="6"></circle></g>`
            })
          : nothing
      }
    `
  }

  override render(): TemplateResult {
    const { view } = this
    return html`
      <div class="words">
        <button type="button" class="word" @click=${() => this.zoom((view?.scale ?? 1) * KEY_ZOOM)}>${words.zoomIn}</button>
        <button type="button" class="word" @click=${() => this.zoom((view?.scale ?? 1) / KEY_ZOOM)}>${words.zoomOut}</button>
        <button type="button" class="word" @click=${() => this.fit()}>${words.fit}</button>
        <button type="button" class="word" @click=${() => this.zoom(1)}>${words.pixelForPixel}</button>
      </div>
      <div
        class="stage"
        role="group"
        tabindex="0"
        aria-label=${words.picture(this.name)}
        aria-describedby="keys"
        @pointerdown=${this.down}
        @pointermove=${this.move}
        @pointerup=${this.up}
        @pointercancel=${this.up}
        @wheel=${{ handleEvent: (event: WheelEvent) => this.wheel(event), passive: false }}
        @keydown=${this.key}
      >
        <canvas aria-hidden="true"></canvas>
        ${view ? html`<svg>${this.areas.map((area, at) => this.area(area, at, view))}</svg>` : nothing}
      </div>
      <p class="small quiet" id="keys">${words.keys}</p>
    `
  }
}
