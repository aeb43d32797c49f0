import type { Sheet } from '../editing/sheet.ts'

/** A text with the figures of a sheet in the place of names in braces; a name without a figure is left out. */
export const withFigures = (text: string, sheet: Sheet): string =>
  text.replace(/\{(\w+)\}/g, (_, name: string) => figureOf(sheet, name) ?? '')

/** A result or given as it is shown; undefined where it is not known. */
export function figureOf(sheet: Sheet, name: string): string | undefined {
  const cell = sheet.named(name)
  if (cell?.kind !== 'given' && cell?.kind !== 'result') return undefined
  const outcome = sheet.outcome(cell.id)
  return outcome.state === 'value' ? (outcome.shown.mark ?? outcome.shown.text) : undefined
}
