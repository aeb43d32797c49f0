import { labelOf } from '../../worksheet/document/label.ts'
import type { ReadingCell } from '../../worksheet/document/reading.ts'
import type { Worksheet } from '../../worksheet/schema/document.ts'
import { COPY_WORDS as WORDS } from './words.ts'

/** A text about the client or the original that goes along with a copy. */
export interface CarriedText {
  readonly label: string
  readonly text: string
}

/** The texts a link or a file carries that say whose job it is: shown before a copy leaves. */
export function carriedTexts({ title, job, cells }: Worksheet): readonly CarriedText[] {
  const found: CarriedText[] = [
    { label: WORDS.titleOf, text: title },
    { label: WORDS.jobOf, text: job ?? '' },
  ]
  const readers = cells.flatMap((cell) => (cell as Partial<ReadingCell>).measured_under?.by ?? [])
  if (readers.length > 0) found.push({ label: WORDS.readers, text: WORDS.manyTexts([...new Set(readers)]) })
  for (const cell of cells) {
    if (cell.kind === 'given' && (cell.entry === 'text' || cell.entry === 'date'))
      found.push({ label: labelOf(cell), text: cell.value })
    // The name of a picture's file often says whose it is.
    if (cell.kind === 'frame') {
      const names = [cell.picture, ...(cell.series ?? [])].flatMap((picture) => picture?.name ?? [])
      if (names.length > 0)
        found.push({ label: WORDS.picturesOf(labelOf(cell)), text: WORDS.manyTexts([...new Set(names)]) })
    }
    if (cell.kind !== 'table') continue
    cell.columns.forEach((column, at) => {
      if (column.entry !== 'text' && column.entry !== 'date') return
      const texts = cell.rows.map((row) => row[at]?.trim() ?? '').filter(Boolean)
      if (texts.length > 0)
        found.push({ label: `${labelOf(cell)}, ${column.label || column.name}`, text: WORDS.manyTexts(texts) })
    })
  }
  return found.filter(({ text }) => text.trim() !== '')
}
