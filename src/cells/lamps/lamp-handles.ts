import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import type { Drawing as Drawn, Handle } from '../../drawings/canvas/tree.ts'
import { LampDragSolver } from '../../worksheet/dragging/lamp-drag-solver.ts'
import { type CellSignal, type DrawingView, requestChange } from '../shared/cell-view.ts'
import { dragging } from '../shared/dragging.ts'
import { shared } from '../style/styles.ts'
import { lampWords } from './words.ts'

/** The distance an arrow key moves a lamp; with Shift ten times as far. */
const STEP_METRES = 0.01

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

declare global {
  interface HTMLElementEventMap {
    /** A lamp drag begins in this drawing, or ends (undefined). */
    'lamp-held': CustomEvent<Drawn | undefined>
  }
}

/** The state of a lamp drag. */
interface Grip {
  readonly solver: LampDragSolver
  /** The handle as it was when the drag began; its mapping from pixels to metres is used for the whole drag. */
  readonly handle: Handle
  readonly from: { readonly x: number; readonly y: number }
  readonly pointer: number
  readonly merge: string
  target: { readonly x: number; readonly y: number } | undefined
}

let drags = 0
let visits = 0

const keyOf = ({ view, lamp }: Handle): string => `${view} ${lamp}`

/** Drag handles over a set-up drawing, one per lamp, for pointer and arrow keys. They change the givens of the lamps. */
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
  /** Arrow keys pressed while one lamp is focused are one undo step. */
  private visit = 0

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.cancel()
  }

  private newSolver(): LampDragSolver {
    const { sheet, cell } = this.view.get()
    return new LampDragSolver(sheet, cell)
  }

  /** The pointer position in pixels of the drawing's view box. */
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
      solver: this.newSolver(),
      handle,
      from: this.spot(event),
      pointer: event.pointerId,
      merge: `drag:${++drags}`,
      target: undefined,
    }
    this.held = keyOf(handle)
    dragging.set(true)
    this.dispatchEvent(new CustomEvent('lamp-held', { detail: this.drawn }))
  }

  private drag(event: PointerEvent): void {
    const { grip } = this
    if (!grip || event.pointerId !== grip.pointer) return
    const { x, y } = this.spot(event)
    grip.target = { x: grip.handle.at.x + x - grip.from.x, y: grip.handle.at.y + y - grip.from.y }
    // One update per frame is enough, however often the pointer reports.
    if (this.frame === 0) this.frame = requestAnimationFrame(() => this.follow())
  }

  private follow(): void {
    cancelAnimationFrame(this.frame)
    this.frame = 0
    const { grip } = this
    if (!grip?.target) return
    const change = grip.solver.to(grip.handle.lamp, grip.handle.place(grip.target))
    grip.target = undefined
    if (change) this.showRefusal(requestChange(this, change, grip.merge))
  }

  private letGo(event: PointerEvent): void {
    if (event.pointerId !== this.grip?.pointer) return
    const { handle } = this.grip
    this.follow()
    this.end()
    void this.announce(handle)
  }

  private cancel(): void {
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
        this.cancel()
        this.spoken = lampWords.putBack
      }
      return
    }
    const way = ARROWS[event.key]
    if (!way || event.ctrlKey || event.metaKey || event.altKey) return
    event.preventDefault()
    const far = STEP_METRES * (event.shiftKey ? 10 : 1) * handle.pxPerMetre
    const target = handle.place({ x: handle.at.x + way[0] * far, y: handle.at.y + way[1] * far })
    const change = this.newSolver().to(handle.lamp, target)
    if (!change) {
      this.spoken = lampWords.cannotMove(lampWords.lamp(handle.lamp))
      return
    }
    this.showRefusal(requestChange(this, change, `keys:${this.visit}`))
    void this.announce(handle)
  }

  private showRefusal(refused: string | undefined): void {
    this.spoken = refused ?? ''
  }

  /** Announces the new position of a lamp. */
  private async announce(handle: Handle): Promise<void> {
    await new Promise(requestAnimationFrame)
    const now = this.drawn.handles?.find((one) => keyOf(one) === keyOf(handle))
    if (now && this.spoken === '') this.spoken = lampWords.position(lampWords.lamp(now.lamp), now.description)
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
            aria-roledescription=${lampWords.role}
            tabindex="0"
            .style=${`left: ${(100 * handle.at.x) / width}%; top: ${(100 * handle.at.y) / height}%`}
            aria-label=${lampWords.label(lampWords.lamp(handle.lamp), handle.view, handle.description)}
            @focus=${() => {
              this.visit = ++visits
            }}
            @pointerdown=${(event: PointerEvent) => this.take(event, handle)}
            @pointermove=${this.drag}
            @pointerup=${this.letGo}
            @pointercancel=${this.cancel}
            @lostpointercapture=${this.letGo}
            @keydown=${(event: KeyboardEvent) => this.key(event, handle)}
          ></div>
        `,
      )}
      <p class="unseen" role="status">${this.spoken}</p>
    `
  }
}
