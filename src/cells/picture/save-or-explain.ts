import type { Drawing } from '../../drawings/canvas/tree.ts'
import type { SavedAs } from './save-drawing.ts'

/** Saves a drawing as a file. Returns why it could not be saved, or an empty text. */
export async function saveOrExplain(drawn: Drawing, sheetTitle: string, as: SavedAs): Promise<string> {
  try {
    const { saveDrawing } = await import('./save-drawing.ts')
    await saveDrawing(drawn, sheetTitle, as)
    return ''
  } catch (error) {
    return (error as Error).message
  }
}
