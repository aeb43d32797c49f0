/** What of the page a drag needs. */
interface Place {
  /** Every row, in the order of the cells. */
  readonly rows: () => readonly HTMLElement[]
  /** The line that shows where a row would come to stand. */
  readonly line: () => HTMLElement | null
  readonly drop: (ids: ReadonlySet<string>, gap: number) => void
}

interface Drag {
  readonly grip: HTMLElement
  readonly pointer: number
  readonly startY: number
  readonly ids: ReadonlySet<string>
  readonly rows: readonly HTMLElement[]
  y: number
  /** Off until the pointer has moved: a press alone is no drag. */
  isOn: boolean
  gap: number
}

/** So far, in px, a finger may slip on a press. */
const SLACK = 7
/** From so near an edge of the window, in px, the page scrolls along, up to so many px a frame. */
const EDGE = 72
const FASTEST = 18

/** Rows moved by mouse, pen or finger: taken by their grip, put down between two others. Escape puts them back. */
export class RowDrag {
  private drag: Drag | undefined
  private frame = 0
  /** The press that ends a drag is none. */
  private hasJustEnded = false

  constructor(private readonly place: Place) {}

  take(event: PointerEvent, grip: HTMLElement, ids: ReadonlySet<string>): void {
    this.hasJustEnded = false
    if (event.button !== 0 || this.drag) return
    grip.setPointerCapture(event.pointerId)
    this.drag = {
      grip,
      pointer: event.pointerId,
      startY: event.clientY,
      ids,
      rows: this.place.rows(),
      y: event.clientY,
      isOn: false,
      gap: -1,
    }
    grip.addEventListener('pointermove', this.moved)
    grip.addEventListener('pointerup', this.letGo)
    grip.addEventListener('pointercancel', this.cancel)
    grip.addEventListener('lostpointercapture', this.cancel)
    document.addEventListener('keydown', this.keys, { capture: true })
  }

  /** Whether a press just heard was the end of a drag. */
  get endedNow(): boolean {
    return this.hasJustEnded
  }

  private readonly moved = (event: PointerEvent): void => {
    const { drag } = this
    if (!drag || event.pointerId !== drag.pointer) return
    drag.y = event.clientY
    if (!drag.isOn && Math.abs(drag.y - drag.startY) < SLACK) return
    if (!drag.isOn) this.lift(drag)
    if (this.frame === 0) this.frame = requestAnimationFrame(this.follow)
  }

  private lift(drag: Drag): void {
    drag.isOn = true
    for (const row of drag.rows) row.toggleAttribute('data-lifted', drag.ids.has(row.dataset.cell as string))
  }

  private readonly follow = (): void => {
    this.frame = 0
    const { drag } = this
    if (!drag) return
    const { y } = drag
    const beyond = y < EDGE ? y - EDGE : y > innerHeight - EDGE ? y - innerHeight + EDGE : 0
    const before = scrollY
    if (beyond !== 0) scrollBy({ top: Math.max(-1, Math.min(1, beyond / EDGE)) * FASTEST, behavior: 'instant' })
    this.aim(drag)
    // At the edge the page goes on though the pointer rests.
    if (scrollY !== before) this.frame = requestAnimationFrame(this.follow)
  }

  /** The gap nearest to the pointer, and the line drawn there. */
  private aim(drag: Drag): void {
    drag.gap = gapAt(drag.rows, drag.y)
    const line = this.place.line()
    const next = drag.rows[drag.gap]
    const last = drag.rows.at(-1)
    if (!line || !last) return
    const top = (line.offsetParent ?? document.body).getBoundingClientRect().top
    const at = next ? next.getBoundingClientRect().top : last.getBoundingClientRect().bottom
    line.hidden = false
    line.style.insetBlockStart = `${at - top}px`
  }

  private readonly letGo = (event: PointerEvent): void => {
    const { drag } = this
    if (!drag || event.pointerId !== drag.pointer) return
    if (drag.isOn) {
      drag.y = event.clientY
      this.aim(drag)
    }
    this.end()
    if (!drag.isOn) return
    this.hasJustEnded = true
    this.forget()
    this.place.drop(drag.ids, drag.gap)
  }

  readonly cancel = (): void => {
    if (this.drag?.isOn) {
      this.hasJustEnded = true
      addEventListener('pointerup', this.forget, { once: true })
    }
    this.end()
  }

  /** The press comes right behind the pointer that is let go; a later one, or one by key, is meant. */
  private readonly forget = (): void => {
    setTimeout(() => {
      this.hasJustEnded = false
    })
  }

  private readonly keys = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return
    event.preventDefault()
    event.stopPropagation()
    this.cancel()
  }

  private end(): void {
    const { drag } = this
    if (!drag) return
    this.drag = undefined
    cancelAnimationFrame(this.frame)
    this.frame = 0
    const { grip } = drag
    grip.removeEventListener('pointermove', this.moved)
    grip.removeEventListener('pointerup', this.letGo)
    grip.removeEventListener('pointercancel', this.cancel)
    grip.removeEventListener('lostpointercapture', this.cancel)
    document.removeEventListener('keydown', this.keys, { capture: true })
    if (grip.hasPointerCapture(drag.pointer)) grip.releasePointerCapture(drag.pointer)
    for (const row of drag.rows) row.removeAttribute('data-lifted')
    const line = this.place.line()
    if (line) line.hidden = true
  }
}

/** Before which row a place on the screen is, by the rows' middles. */
function gapAt(rows: readonly HTMLElement[], y: number): number {
  let from = 0
  let to = rows.length
  while (from < to) {
    const middle = (from + to) >> 1
    const box = (rows[middle] as HTMLElement).getBoundingClientRect()
    if (y < box.top + box.height / 2) to = middle
    else from = middle + 1
  }
  return from
}
