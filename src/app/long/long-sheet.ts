import type { ReactiveController, ReactiveControllerHost } from 'lit'
import type { OpenSheet } from '../open/open-sheet.ts'

/** The cells of a band that are computed; what one gives, and what is laid out by its text, is always up to date. */
const computedIn = (band: Element): readonly string[] =>
  [...band.querySelectorAll<HTMLElement>('result-cell')].flatMap(({ dataset }) => dataset.cell ?? [])

/** A face that renders no more cells than its limit. */
interface LimitedFace extends ReactiveControllerHost {
  readonly renderRoot: ParentNode
  readonly isConnected: boolean
  limit: number
}

/** How many cells more are rendered at a time. */
const MORE = 150

/** How far beyond the window cells are up to date at once, so that scrolling finds them so. */
const BEYOND = '50% 0px'
/** Cells out of sight that are updated at a time. */
const AT_A_TIME = 40
/** Pause after a change until cells out of sight follow. */
const PAUSE_MS = 150

const whenIdle = (work: () => void): void => {
  if ('requestIdleCallback' in globalThis) requestIdleCallback(work, { timeout: 2000 })
  else setTimeout(work, 16)
}

/**
 * What a long sheet costs follows what is seen of it: cells out of sight are rendered once the page rests, and follow a
 * change once typing pauses. All of them do, so that the browser's own search finds every figure.
 */
class LongSheet implements ReactiveController {
  private readonly owners = new Map<string, Element>()
  private readonly reported = new Map<Element, boolean>()
  private readonly observed = new WeakSet<Element>()
  private readonly waiting = new Set<string>()
  private readonly stop: () => void
  private pause: ReturnType<typeof setTimeout> | undefined
  private isWhole = false
  private isClosed = false
  private readonly observer = new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) {
        this.reported.set(target, isIntersecting)
        if (!isIntersecting) continue
        for (const id of computedIn(target)) if (this.waiting.delete(id)) this.open.update(id)
      }
    },
    { rootMargin: BEYOND },
  )

  constructor(
    private readonly face: LimitedFace,
    readonly open: OpenSheet,
  ) {
    open.later = (id) => this.later(id)
    this.stop = open.sheet.watch(() => this.soon(PAUSE_MS))
    face.addController(this)
  }

  hostDisconnected(): void {
    this.close()
  }

  /** Takes note of the bands of the face as they are now; grows it further where it is not whole. */
  look(isWhole: boolean): void {
    this.owners.clear()
    for (const part of this.face.renderRoot.querySelectorAll('.band')) {
      for (const id of computedIn(part)) this.owners.set(id, part)
      if (this.observed.has(part)) continue
      this.observed.add(part)
      this.observer.observe(part)
    }
    this.isWhole = isWhole
    if (!isWhole) this.soon()
  }

  /** Puts off the update of a cell out of sight; false where it is in sight. */
  private later(id: string): boolean {
    const owner = this.owners.get(id)
    if (!owner || this.reported.get(owner) !== false) return false
    this.waiting.add(id)
    return true
  }

  private soon(after = 0): void {
    clearTimeout(this.pause)
    this.pause = setTimeout(() => whenIdle(() => this.work()), after)
  }

  /** Some of what is left: cells to update, then cells to render. */
  private work(): void {
    if (this.isClosed) return
    let left = AT_A_TIME
    for (const id of this.waiting) {
      if (left-- === 0) break
      this.waiting.delete(id)
      this.open.update(id)
    }
    if (this.waiting.size > 0) this.soon()
    else if (!this.isWhole) this.face.limit += MORE
  }

  /** Brings every cell up to date. */
  close(): void {
    this.isClosed = true
    known.delete(this.face)
    this.face.removeController(this)
    clearTimeout(this.pause)
    this.stop()
    this.observer.disconnect()
    this.open.later = undefined
    for (const id of this.waiting) this.open.update(id)
    this.waiting.clear()
  }
}

const known = new WeakMap<LimitedFace, LongSheet>()

/** Looks after a face of a long sheet each time it has rendered. */
export function lookAfter(face: LimitedFace, open: OpenSheet, isWhole: boolean): void {
  let long = known.get(face)
  if (long && long.open !== open) {
    long.close()
    long = undefined
  }
  // It may have been left while this was fetched.
  if (!face.isConnected) return
  long ??= new LongSheet(face, open)
  known.set(face, long)
  long.look(isWhole)
}
