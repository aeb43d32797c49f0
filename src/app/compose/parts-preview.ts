import type { PartLibrary } from '../../worksheet/compose/part-library.ts'
import type { Recomposed } from '../../worksheet/compose/recompose.ts'
import { type Cell, isNamed } from '../../worksheet/index.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { composeWords as words } from './words.ts'

type Sheet = OpenSheet['sheet']

const MAX_CHANGES = 8

/** What adding parts asks, changes and replaces, in sentences. */
export function previewOf(sheet: Sheet, library: PartLibrary, { asks, cells, replaced }: Recomposed): string[] {
  const titleOf = (part: string): string => library.parts.get(part)?.offer ?? part
  const changes = changesOf(sheet, cells)
  const removed = removedSections(sheet, cells)
  return [
    ...(removed.length > 0 ? [words.removes(removed)] : []),
    asks.length === 0 ? words.asksNothing : words.asks(asks.map(({ label, name }) => label || name)),
    ...replaced.map(({ part, by }) => words.replaces(titleOf(part), titleOf(by))),
    ...(changes.length === 0 ? [] : [words.changes(changes)]),
  ]
}

/** The sections of set-ups that are no longer there. */
function removedSections({ cells: before }: Sheet, cells: readonly Cell[]): string[] {
  const left = new Set(cells.map(({ id }) => id))
  return before.flatMap((cell) =>
    cell.kind === 'note' && cell.set_up !== undefined && !left.has(cell.id) ? [cell.text] : [],
  )
}

/** The results set on the equipment that come out otherwise: label, before and after. */
function changesOf(sheet: Sheet, cells: readonly Cell[]): string[] {
  const after = sheet.trial(cells)
  const shownIn = (one: Sheet, id: string): string | undefined => {
    const outcome = one.outcome(id)
    return outcome.state === 'value' ? (outcome.shown.mark ?? outcome.shown.text) : undefined
  }
  return sheet.cells
    .flatMap((cell) => {
      const next = isNamed(cell) ? after.named(cell.name) : undefined
      if (cell.kind !== 'result' || next?.kind !== 'result' || cell.more_exact) return []
      const [was, is] = [shownIn(sheet, cell.id), shownIn(after, next.id)]
      return was !== undefined && is !== undefined && was !== is ? [words.change(cell.label || cell.name, was, is)] : []
    })
    .slice(0, MAX_CHANGES)
}
