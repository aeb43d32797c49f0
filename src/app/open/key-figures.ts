import type { Cell, Result } from '../../worksheet/index.ts'

const MAX_KEY_FIGURES = 2

const names = (text: string): readonly string[] => text.match(/[A-Za-z_]\w*/g) ?? []

/** The results of a section that are one number, what it is about first: set at the stand, or judged by its checks. */
export function weighedFigures(cells: readonly Cell[], isOneNumber: (result: Result) => boolean): readonly Result[] {
  const checked = new Set(cells.flatMap((cell) => (cell.kind === 'check' ? names(cell.condition) : [])))
  const weight = (result: Result): number => (result.stand === true ? 1 : 0) + (checked.has(result.name) ? 1 : 0)
  return cells
    .filter((cell): cell is Result => cell.kind === 'result' && cell.more_exact !== true)
    .filter(isOneNumber)
    .sort((a, b) => weight(b) - weight(a))
}

/**
 * The results a section is about, which are shown large: those set at the stand and judged by its checks, then those
 * that are either, then the first ones. They are in the order of the sheet.
 */
export function keyFigures(cells: readonly Cell[], isOneNumber: (result: Result) => boolean): readonly Result[] {
  const key = new Set<Cell>(weighedFigures(cells, isOneNumber).slice(0, MAX_KEY_FIGURES))
  return cells.filter((cell): cell is Result => key.has(cell))
}
