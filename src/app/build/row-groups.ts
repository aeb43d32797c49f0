import type { ReactiveController, ReactiveControllerHost } from 'lit'

/** Sheets of no more cells are drawn whole. */
const WHOLE = 400
/** Cells that are drawn together. */
const SIZE = 50
/** How far beyond the window rows are drawn, so that scrolling finds them ready. */
const BEYOND = '1200px 0px'

/** The cells of one group, and whether they are drawn; otherwise their room is reserved. */
export interface RowGroup<C> {
  readonly number: number
  readonly cells: readonly C[]
  readonly isDrawn: boolean
}

/** The rows of a long sheet in groups: a group is drawn once it comes near the window, or when one of its cells is needed. */
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

  constructor(private readonly host: ReactiveControllerHost & { readonly renderRoot: ParentNode }) {
    host.addController(this)
  }

  of<C>(cells: readonly C[]): readonly RowGroup<C>[] {
    if (cells.length <= WHOLE) return [{ number: 0, cells, isDrawn: true }]
    return Array.from({ length: Math.ceil(cells.length / SIZE) }, (_, number) => ({
      number,
      cells: cells.slice(number * SIZE, (number + 1) * SIZE),
      isDrawn: number === 0 || this.drawn.has(number),
    }))
  }

  /** Draws the group of the cell at a place, before it is looked for. */
  reach(place: number): void {
    this.draw(Math.floor(place / SIZE))
  }

  private draw(number: number): void {
    if (this.drawn.has(number)) return
    this.drawn.add(number)
    this.host.requestUpdate()
  }

  hostUpdated(): void {
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
