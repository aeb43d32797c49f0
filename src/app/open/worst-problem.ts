import { type Cell, isNamed, type Sheet } from '../../worksheet/index.ts'

/** The id of the cell to look at first: one with an error, else a check that fails, is marginal, or waits. */
export function worstProblem(sheet: Sheet, cells: readonly Cell[] = sheet.cells): string | undefined {
  const worst = new Map<string, string>()
  for (const cell of cells) {
    if (!isNamed(cell)) continue
    const outcome = cell.kind === 'check' ? sheet.check(cell.id) : sheet.outcome(cell.id)
    const held = 'origin' in outcome && outcome.origin !== undefined
    const state = cell.kind === 'check' || outcome.state === 'error' ? outcome.state : ''
    if (!held && !worst.has(state)) worst.set(state, cell.id)
  }
  return worst.get('error') ?? worst.get('fail') ?? worst.get('marginal') ?? worst.get('waiting')
}
