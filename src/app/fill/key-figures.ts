import type { Cell, Result } from '../../worksheet/index.ts'

const MAX_KEY_FIGURES = 2

const names = (text: string): readonly string[] => text.match(/[A-Za-z_]\w*/g) ?? []

/**
 * The results a section is about, which are shown large: those set at the stand and judged by its checks, then those
 * that are either, then the first ones. They are in the order of the sheet.
 */
export function keyFigures(cells: readonly Cell[], isOneNumber: (result: Result) => boolean): readonly Result[] {
  const checked = new Set(cells.flatMap((cell) => (cell.kind === 'check' ? names(cell.condition) : [])))
  const weight = (result: Result): number => (result.stand === true ? 1 : 0) + (checked.has(result.name) ? 1 : 0)
  const results = cells.filter((cell): cell is Result => cell.kind === 'result' && cell.more_exact !== true)
  return results
    .filter(isOneNumber)
    .map((result, at) => ({ result, at, weight: weight(result) }))
    .sort((a, b) => b.weight - a.weight || a.at - b.at)
    .slice(0, MAX_KEY_FIGURES)
    .sort((a, b) => a.at - b.at)
    .map(({ result }) => result)
}
