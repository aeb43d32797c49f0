import type { Note, Worksheet } from '../schema/document.ts'
import { isHeading } from './names.ts'

/** A heading whose section is folded away, or out. */
export function asFolded(heading: Note, folded: boolean): Note {
  const { folded: _, ...rest } = heading
  return folded ? { ...rest, folded } : rest
}

/** One state of a document with the sections folded as in another; the same object where they are. */
export function foldedAs(like: Worksheet, worksheet: Worksheet): Worksheet {
  const folds = new Map(like.cells.filter(isHeading).map(({ id, folded = false }) => [id, folded]))
  let differs = false
  const cells = worksheet.cells.map((cell) => {
    if (!isHeading(cell)) return cell
    const folded = folds.get(cell.id)
    if (folded === undefined || folded === (cell.folded ?? false)) return cell
    differs = true
    return asFolded(cell, folded)
  })
  return differs ? { ...worksheet, cells } : worksheet
}
