import { isRecord } from '../../worksheet/schema/content.ts'

/**
 * A sheet as it leaves this browser: the small copies of pictures stay behind, but those that are to be sent along. Data
 * that is no sheet stays as it is.
 */
export function withoutPreviews<T>(sheet: T): T {
  if (!isRecord(sheet) || !Array.isArray(sheet.cells)) return sheet
  const cells = sheet.cells.map((cell: unknown) => {
    if (!isRecord(cell) || cell.kind !== 'frame' || !isRecord(cell.picture) || !isRecord(cell.picture.preview))
      return cell
    if (cell.picture.preview.travels === true) return cell
    const { preview: _, ...picture } = cell.picture
    return { ...cell, picture }
  })
  return { ...sheet, cells } as T
}
