import type { Kind } from '../kinds/index.ts'
import type { Cell, Given, TableCell } from '../schema/document.ts'
import * as words from './words.ts'

/** How a cell of one kind meets a cell of its name in another sheet. */
interface Joining<C extends Cell> {
  /** What it computes decides: a given may become a result of the same kind of value. */
  readonly byValue: boolean
  /** Why it cannot replace one of its own kind; undefined where it can. */
  readonly misfit?: (there: C, coming: C) => string | undefined
}

const UNNAMED: Joining<Cell> = { byValue: false }

/** The joining of each kind of cell. Cells without a name meet none. */
const JOINING: { readonly [K in Kind]: Joining<Extract<Cell, { kind: K }>> } = {
  given: { byValue: true, misfit: misfitOfGivens },
  result: { byValue: true },
  check: { byValue: false, misfit: () => undefined },
  table: { byValue: false, misfit: misfitOfTables },
  frame: { byValue: false, misfit: () => words.framesApart },
  note: UNNAMED,
  drawing: UNNAMED,
  steps: UNNAMED,
  range: UNNAMED,
  variants: UNNAMED,
  run: UNNAMED,
  function: UNNAMED,
}

/** How a cell joins another sheet, by its kind. */
export const joiningOf = ({ kind }: Cell): Joining<Cell> => JOINING[kind] as Joining<Cell>

function misfitOfGivens(there: Given, coming: Given): string | undefined {
  if (there.entry === 'kit' && coming.entry === 'kit' && there.sort !== coming.sort) return words.otherKit
  if (there.entry !== 'choice' || coming.entry !== 'choice') return undefined
  const lacking = (coming.options ?? []).find((option) => !there.options?.includes(option))
  return lacking === undefined ? undefined : words.optionMissing(lacking)
}

function misfitOfTables(there: TableCell, coming: TableCell): string | undefined {
  for (const column of coming.columns) {
    const own = there.columns.find(({ name }) => name === column.name)
    const label = column.label || column.name
    if (!own) return words.columnMissing(label)
    if (own.formula !== undefined || column.formula !== undefined) {
      if (own.formula !== column.formula) return words.columnComputed(label)
    } else if ((own.entry ?? 'quantity') !== (column.entry ?? 'quantity') || (own.unit ?? '') !== (column.unit ?? ''))
      return words.columnKinds(label)
  }
  return undefined
}
