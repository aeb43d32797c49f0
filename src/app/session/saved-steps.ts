import type { Steps } from '../../worksheet/editing/history.ts'
import type { Worksheet } from '../../worksheet/index.ts'

/** How much of undo and redo is saved with a sheet: the steps of each, and their characters together. */
const MOST_STEPS = 50
const MOST_CHARACTERS = 300_000

/** The steps nearest to the sheet as it is, as many as fit; those of undo before those of redo. */
export function nearestSteps({ undo, redo }: Steps): Steps {
  let left = MOST_CHARACTERS
  const fitting = (nearestFirst: readonly Worksheet[]): Worksheet[] => {
    const taken: Worksheet[] = []
    for (const step of nearestFirst.slice(0, MOST_STEPS)) {
      left -= JSON.stringify(step).length
      if (left < 0) break
      taken.push(step)
    }
    return taken
  }
  return { undo: fitting(undo.slice(-MOST_STEPS).reverse()).reverse(), redo: fitting(redo) }
}

/** Reads saved steps with what reads one document, and throws what that throws. Sheets saved without redo have a bare list. */
export function readSteps(saved: unknown, read: (data: unknown) => Worksheet): Steps | undefined {
  const listed = (data: unknown): Worksheet[] => (Array.isArray(data) ? data.map(read) : [])
  if (Array.isArray(saved)) return { undo: listed(saved), redo: [] }
  if (typeof saved !== 'object' || saved === null) return undefined
  const { undo, redo } = saved as { readonly undo?: unknown; readonly redo?: unknown }
  return { undo: listed(undo), redo: listed(redo) }
}
