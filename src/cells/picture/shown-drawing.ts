import type { ReactiveController, ReactiveControllerHost } from 'lit'
import type { Drawing } from '../../drawings/canvas/tree.ts'
import type { SavedAs } from './save-drawing.ts'

/** The lettering is drawn for close reading; the stand is read at arm's length. */
export const ENLARGED = 1.15

/** How wide an element is, in CSS px: a drawing is made for the room it has. Zero until it is laid out. */
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

/** Saves a drawing as a file. Gives why it could not be, or nothing to say. */
export async function saveOrSay(drawn: Drawing, sheetTitle: string, as: SavedAs): Promise<string> {
  try {
    const { saveDrawing } = await import('./save-drawing.ts')
    await saveDrawing(drawn, sheetTitle, as, ENLARGED)
    return ''
  } catch (error) {
    return (error as Error).message
  }
}
