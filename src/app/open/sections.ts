import { type Cell, type Drawing, isHeading, type Note } from '../../worksheet/index.ts'

/** The cells from one heading to the next. */
export interface Section {
  /** The heading's cell id, or `start` before the first heading. */
  readonly id: string
  readonly heading: Note | undefined
  readonly rows: readonly Cell[]
  /** Fine adjustments, folded away. */
  readonly exact: readonly Cell[]
  readonly drawings: readonly Drawing[]
}

interface Draft {
  heading: Note | undefined
  rows: Cell[]
  exact: Cell[]
  drawings: Drawing[]
}

/** Whether a cell is a fine adjustment. */
export const isExact = (cell: Cell): boolean =>
  (cell.kind === 'given' || cell.kind === 'result') && cell.more_exact === true

/** The sections of a sheet: each heading with the cells below it, up to the next. */
export function sectionsOf(cells: readonly Cell[]): Section[] {
  const drafts: Draft[] = []
  const open = (heading: Note | undefined): Draft => {
    const draft = { heading, rows: [], exact: [], drawings: [] }
    drafts.push(draft)
    return draft
  }
  let draft: Draft | undefined
  for (const cell of cells) {
    if (isHeading(cell)) {
      draft = open(cell)
      continue
    }
    draft ??= open(undefined)
    if (cell.kind === 'drawing') draft.drawings.push(cell)
    else if (isExact(cell)) draft.exact.push(cell)
    else draft.rows.push(cell)
  }
  return drafts.map((one) => ({ ...one, id: one.heading?.id ?? 'start' }))
}
