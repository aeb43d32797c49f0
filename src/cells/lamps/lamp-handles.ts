import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import type { Drawing as Drawn, Handle } from '../../drawings/canvas/tree.ts'
import { LampDragSolver } from '../../worksheet/advice/lamp-drag-solver.ts'
import { type CellSignal, type DrawingView, requestChange } from '../shared/cell-view.ts'
import { dragging } from '../shared/dragging.ts'
import { shared } from '../style/styles.ts'

/** What an arrow key moves by, in metres; with shift ten times as far. */
const STEP = 0.01

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

declare global {
  interface HTMLElementEventMap {
    /** A lamp is taken hold of in this drawing, or let go of. */
    'lamp-held': CustomEvent<Drawn | undefined>
  }
}

/** A lamp in the hand. */
interface Grip {
  readonly mover: LampDragSolver
  /** As it was taken hold of: the same way from px to metres all through the drag. */
  readonly handle: Handle
  readonly from: { readonly x: number; readonly y: number }
  readonly pointer: number
  readonly merge: string
  wanted: { readonly x: number; readonly y: number } | undefined
}

let drags = 0
let visits = 0

const keyOf = ({ view, lamp }: Handle): string => `${view} ${lamp}`

/** Lies over a set-up drawing: a place to take hold of each lamp, by pointer or by arrow keys. The givens follow. */
@customElement('lamp-handles')
export class LampHandles extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        position: absolute;
        inset: 0;
        pointer-events: none;
      }
      .handle {
        position: absolute;
        inline-size: 44px;
        block-size: 44px;
        margin: -22px 0 0 -22px;
        pointer-events: auto;
        touch-action: none;
        user-select: none;
        -webkit-user-select: none;
        -webkit-touch-callout: none;
        cursor: grab;
      }
      .handle:hover {
        border: 1.5px dotted var(--ink);
      }
      .handle.held {
        border: 1.5px solid var(--ink);
        cursor: grabbing;
      }
    `,
  ]

  @property({ attribute: false }) drawn!: Drawn
  @property({ attribute: false }) view!: CellSignal<DrawingView>
  @state() private held: string | undefined
  @state() private spoken = ''
  private grip: Grip | undefined
  private frame = 0
  /** Presses of the arrow keys, while one lamp keeps the focus, are one step of undo. */
  private visit = 0

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.putBack()
  }

  private newMover(): LampDragSolver {
    const { sheet, cell } = this.view.get()
    return new LampDragSolver(sheet, cell)
  }

  /** In px of the drawing's view box. */
  private spot(event: PointerEvent): { x: number; y: number } {
    const box = this.getBoundingClientRect()
    const scale = this.drawn.width / box.width
    return { x: (event.clientX - box.left) * scale, y: (event.clientY - box.top) * scale }
  }

  private take(event: PointerEvent, handle: Handle): void {
    if (event.button !== 0 || this.grip) return
    event.preventDefault()
    const target = event.currentTarget as HTMLElement
    target.focus({ preventScroll: true })
    target.setPointerCapture(event.pointerId)
    this.grip = {
      mover: this.newMover(),
      handle,
      from: this.spot(event),
      pointer: event.pointerId,
      merge: `drag:${++drags}`,
      wanted: undefined,
    }
    this.held = keyOf(handle)
    dragging.set(true)
    this.dispatchEvent(new CustomEvent('lamp-held', { detail: this.drawn }))
  }

  private drag(event: PointerEvent): void {
    const { grip } = this
    if (!grip || event.pointerId !== grip.pointer) return
    const { x, y } = this.spot(event)
    grip.wanted = { x: grip.handle.at.x + x - grip.from.x, y: grip.handle.at.y + y - grip.from.y }
    // However often the pointer tells, once a frame is enough.
    if (this.frame === 0) this.frame = requestAnimationFrame(() => this.follow())
  }

  private follow(): void {
    cancelAnimationFrame(this.frame)
    this.frame = 0
    const { grip } = this
    if (!grip?.wanted) return
    const change = grip.mover.to(grip.handle.lamp, grip.handle.place(grip.wanted))
    grip.wanted = undefined
    if (change) this.refusedOr(requestChange(this, change, grip.merge), '')
  }

  private letGo(event: PointerEvent): void {
    if (event.pointerId !== this.grip?.pointer) return
    const { handle } = this.grip
    this.follow()
    this.end()
    void this.tell(handle)
  }

  private putBack(): void {
    const { grip } = this
    if (!grip) return
    this.view.get().sheet.abandon(grip.merge)
    this.end()
  }

  private end(): void {
    cancelAnimationFrame(this.frame)
    this.frame = 0
    this.grip = undefined
    this.held = undefined
    dragging.set(false)
    this.dispatchEvent(new CustomEvent('lamp-held', { detail: undefined }))
  }

  private key(event: KeyboardEvent, handle: Handle): void {
    if (this.grip) {
      if (event.key === 'Escape') {
        event.preventDefault()
        event.stopPropagation()
        this.putBack()
        this.spoken = 'Put back.'
      }
      return
    }
    const way = ARROWS[event.key]
    if (!way || event.ctrlKey || event.metaKey || event.altKey) return
    event.preventDefault()
    const far = STEP * (event.shiftKey ? 10 : 1) * handle.pxPerMetre
    const wanted = handle.place({ x: handle.at.x + way[0] * far, y: handle.at.y + way[1] * far })
    const change = this.newMover().to(handle.lamp, wanted)
    if (!change) {
      this.spoken = `${this.called(handle)} cannot be moved that way.`
      return
    }
    this.refusedOr(requestChange(this, change, `keys:${this.visit}`), '')
    void this.tell(handle)
  }

  private refusedOr(refused: string | undefined, otherwise: string): void {
    this.spoken = refused ?? otherwise
  }

  /** Says where the lamp has come to stand. */
  private async tell(handle: Handle): Promise<void> {
    await new Promise(requestAnimationFrame)
    const now = this.drawn.handles?.find((one) => keyOf(one) === keyOf(handle))
    if (now && this.spoken === '') this.spoken = `${this.called(now)}: ${now.description}.`
  }

  private called({ lamp }: Handle): string {
    return `Lamp ${lamp}`
  }

  override render(): TemplateResult {
    const { width, height, handles = [] } = this.drawn
    return html`
      ${repeat(
        handles,
        keyOf,
        (handle) => html`
          <div
            class="handle ${this.held === keyOf(handle) ? 'held' : ''}"
            role="application"
            aria-roledescription="lamp that can be moved"
            tabindex="0"
            .style=${`left: ${(100 * handle.at.x) / width}%; top: ${(100 * handle.at.y) / height}%`}
            aria-label="${this.called(handle)} in ${handle.view}: ${handle.description}. Arrow keys move it by 10 mm, with shift by 100 mm."
            @focus=${() => {
              this.visit = ++visits
            }}
            @pointerdown=${(event: PointerEvent) => this.take(event, handle)}
            @pointermove=${this.drag}
            @pointerup=${this.letGo}
            @pointercancel=${this.putBack}
            @lostpointercapture=${this.letGo}
            @keydown=${(event: KeyboardEvent) => this.key(event, handle)}
          ></div>
        `,
      )}
      <p class="unseen" role="status">${this.spoken}</p>
    `
  }
}
