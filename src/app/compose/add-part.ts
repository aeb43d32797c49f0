import { requestChange } from '../../cells/shared/cell-view.ts'
import { withParts } from '../../worksheet/compose/recompose.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { parts } from '../templates/part-library.ts'

/** Adds a part to a set-up of the open sheet as one step of undo, and goes to it. Resolves with why that cannot be, else an empty text. */
export async function addPart(
  from: HTMLElement,
  open: OpenSheet,
  { part, setUp }: HTMLElementEventMap['part-asked']['detail'],
): Promise<string> {
  try {
    const library = await parts()
    const added = [{ part, by: 'hand' }] as const
    await open.loadLanguageFor(withParts(library, open.sheet.worksheet, added, setUp).cells)
    // The sheet may have changed while functions were fetched.
    const { change, first, cells } = withParts(library, open.sheet.worksheet, added, setUp)
    if (!change) return ''
    const refused = requestChange(from, change)
    if (refused !== undefined) return refused
    const detail = first ?? cells[0]?.id ?? ''
    from.dispatchEvent(new CustomEvent<string>('section-set', { detail, bubbles: true, composed: true }))
    return ''
  } catch (error) {
    return (error as Error).message
  }
}
