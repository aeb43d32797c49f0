import type { ReactiveController, ReactiveControllerHost } from 'lit'

/** Sheets of no more cells are drawn whole. */
const WHOLE = 400
/** The rows of such a sheet that are drawn in one task, so that none holds up the first screen. */
const AT_ONCE = 24
/** Cells of a longer sheet that are drawn together. */
const SIZE = 50
/** How far beyond the window rows are drawn, so that scrolling finds them ready. */
const BEYOND = '1200px 0px'

/** The cells of one group, and whether they are drawn; otherwise their room is reserved. */
export interface RowGroup<C> {
  readonly number: number
  readonly cells: readonly C[]
  readonly isDrawn: boolean
}

/**
 * The rows of a sheet in groups. Those of a long sheet are each drawn once they come near the window, or when one of
 * their cells is needed; another sheet has one group, which grows until it is whole.
 */
export class RowGroups implements ReactiveController {
  private readonly drawn = new Set<number>()
  private readonly watched = new Set<Element>()
  private readonly observer = new IntersectionObserver(
    (entries) => {
      for (const { isIntersecting, target } of entries)
        if (isIntersecting) this.draw(Number((target as HTMLElement).dataset.group))
    },
    { rootMargin: BEYOND },
  )

  /** How many rows are drawn of a sheet that is drawn whole. */
  private limit = AT_ONCE
  private isWhole = true

  constructor(private readonly host: ReactiveControllerHost & Element & { readonly renderRoot: ParentNode }) {
    host.addController(this)
  }

  of<C>(cells: readonly C[]): readonly RowGroup<C>[] {
    this.isWhole = cells.length > WHOLE || cells.length <= this.limit
    if (cells.length <= WHOLE) {
      const drawn = { number: 0, cells: cells.slice(0, this.limit), isDrawn: true }
      return this.isWhole ? [drawn] : [drawn, { number: 1, cells: cells.slice(this.limit), isDrawn: false }]
    }
    return Array.from({ length: Math.ceil(cells.length / SIZE) }, (_, number) => ({
      number,
      cells: cells.slice(number * SIZE, (number + 1) * SIZE),
      isDrawn: number === 0 || this.drawn.has(number),
    }))
  }

  /** Draws the group of the cell at a place, before it is looked for. */
  reach(place: number): void {
    this.grow(place + 1)
    this.draw(Math.floor(place / SIZE))
  }

  private grow(limit: number): void {
    if (limit <= this.limit) return
    this.limit = limit
    this.host.requestUpdate()
  }

  private draw(number: number): void {
    if (this.drawn.has(number)) return
    this.drawn.add(number)
    this.host.requestUpdate()
  }

  hostConnected(): void {
    this.host.ariaBusy = 'true'
  }

  hostUpdated(): void {
    this.host.ariaBusy = this.isWhole ? null : 'true'
    if (!this.isWhole) setTimeout(() => this.grow(this.limit + AT_ONCE))
    for (const group of this.host.renderRoot.querySelectorAll('[data-group]')) {
      if (this.watched.has(group)) continue
      this.watched.add(group)
      this.observer.observe(group)
    }
  }

  hostDisconnected(): void {
    this.observer.disconnect()
    this.watched.clear()
  }
}
