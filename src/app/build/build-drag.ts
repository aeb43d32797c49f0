/** The parts of the page that a drag needs. */
interface Place {
  /** Every row, in the order of the cells. */
  readonly rows: () => readonly HTMLElement[]
  /** The line that shows where the rows will be dropped. */
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
  /** False until the pointer has moved: a press alone is not a drag. */
  isOn: boolean
  gap: number
}

/** The distance in px a finger may slip during a press. */
const SLACK = 7
/** The distance in px from an edge of the window within which the page scrolls, and the fastest scroll in px per frame. */
const EDGE = 72
const FASTEST = 18

/** Moves rows by mouse, pen or finger: dragged by their grip and dropped between two others. Escape cancels. */
export class RowDrag {
  private drag: Drag | undefined
  private frame = 0
  /** Whether a drag has just ended, so that the click that follows is ignored. */
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

  /** Whether the current click is the end of a drag. */
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
    // At the edge the page keeps scrolling while the pointer rests.
    if (scrollY !== before) this.frame = requestAnimationFrame(this.follow)
  }

  /** Finds the gap nearest to the pointer and draws the line there. */
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

  /** The click follows the release of the pointer at once; any later one is intended. */
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

/** The index of the row below a height on the screen, compared with the middles of the rows. */
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
