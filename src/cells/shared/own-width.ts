import type { ReactiveController, ReactiveControllerHost } from 'lit'

/** The width of an element in CSS pixels, for which its drawing is laid out. Zero until the element is laid out. */
export class OwnWidth implements ReactiveController {
  px = 0
  private readonly watcher = new ResizeObserver(([entry]) => {
    const px = Math.round(entry?.contentRect.width ?? 0)
    if (px === this.px) return
    this.px = px
    this.host.requestUpdate()
  })

  constructor(private readonly host: ReactiveControllerHost & Element) {
    host.addController(this)
  }

  hostConnected(): void {
    this.watcher.observe(this.host)
  }

  hostDisconnected(): void {
    this.watcher.disconnect()
  }
}
