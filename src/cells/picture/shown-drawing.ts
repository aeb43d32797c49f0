import type { ReactiveController, ReactiveControllerHost } from 'lit'
import type { Drawing } from '../../drawings/canvas/tree.ts'
import type { SavedAs } from './save-drawing.ts'

/** How many times larger than its view box a drawing is shown in the sheet: its text is 13 px high. */
export const ZOOM = 1

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

/** Saves a drawing as a file. Returns why it could not be saved, or an empty text. */
export async function saveOrExplain(drawn: Drawing, sheetTitle: string, as: SavedAs): Promise<string> {
  try {
    const { saveDrawing } = await import('./save-drawing.ts')
    await saveDrawing(drawn, sheetTitle, as, ZOOM)
    return ''
  } catch (error) {
    return (error as Error).message
  }
}
