import { isNamed } from '../document/names.ts'
import { rowsMark } from '../document/rows-mark.ts'
import type { Sheet } from '../editing/sheet.ts'
import { readNeeds } from '../engine/read-needs.ts'
import type { Given, GivenSource, NamedCell, TableCell, Worksheet } from '../schema/document.ts'

/** Where a given's value comes from; `empty` where nothing is filled in. */
export type Provenance = GivenSource | 'empty'

/** A value that is no longer the text it came as was typed. */
export function provenanceOf({ value, from }: Given): Provenance {
  if (value.trim() === '') return 'empty'
  return from && from.text === value ? from.kind : 'typed'
}

/** Rows are never changed in place, so each list of them is hashed once. */
const marks = new WeakMap<TableCell['rows'], string>()

function markOf(rows: TableCell['rows']): string {
  const mark = marks.get(rows) ?? rowsMark(rows)
  marks.set(rows, mark)
  return mark
}

/** Where the rows of a table come from; once they are changed, they are the user's own. */
export function provenanceOfRows({ from, rows }: TableCell): GivenSource {
  const { kind, text } = (from ?? {}) as { readonly kind?: GivenSource; readonly text?: unknown }
  return kind && text === markOf(rows) ? kind : 'typed'
}

/** Whether the rows of a table are still those of an example. */
export const isExampleTable = (table: TableCell): boolean => provenanceOfRows(table) === 'example'

/** Whether a given has an example's figure, or a table an example's rows. */
export const isExample = (cell: NamedCell): boolean =>
  cell.kind === 'given' ? provenanceOf(cell) === 'example' : cell.kind === 'table' && isExampleTable(cell)

/** A measured value rests on its reading alone. */
const isMeasured = ({ cell, measured }: Sheet['engine']['layout']['order'][number]): boolean =>
  cell.kind === 'result' && measured?.value !== undefined

/** The ids of the cells that are an example's, or are computed from such. */
export function idsOnExamples({ engine }: Sheet): ReadonlySet<string> {
  const { layout } = engine
  const { order, needs } = layout
  const rests = new Uint8Array(order.length)
  const ids = new Set<string>()
  order.forEach((node, at) => {
    const { cell } = node
    // What a formula names is asked first: to find what it read, it is computed once more.
    const isOnOne = (need: number): boolean => rests[need] === 1
    if (!isExample(cell) && (isMeasured(node) || !needs[at]?.some(isOnOne) || !readNeeds(layout, at).some(isOnOne)))
      return
    rests[at] = 1
    ids.add(cell.id)
  })
  return ids
}

/** For each name of a sheet, the givens and tables beneath it that are still an example's. */
export function exampleNames(sheet: Sheet): ReadonlyMap<string, readonly string[]> {
  const { layout } = sheet.engine
  const beneath: ReadonlySet<string>[] = []
  const found = new Map<string, readonly string[]>()
  for (const [at, node] of layout.order.entries()) {
    const { cell } = node
    const own = isExample(cell) ? [cell.name] : []
    const below = isMeasured(node) ? [] : [...readNeeds(layout, at)].flatMap((need) => [...(beneath[need] ?? [])])
    const names = new Set([...own, ...below])
    beneath.push(names)
    if (!found.has(cell.name)) found.set(cell.name, [...names].sort())
  }
  return found
}

/** The worksheet with every example taken as the user's own. */
export function asMine(worksheet: Worksheet): Worksheet {
  return {
    ...worksheet,
    cells: worksheet.cells.map((cell) => {
      if (!isNamed(cell) || !isExample(cell)) return cell
      if (cell.kind === 'given') return { ...cell, from: { kind: 'typed', text: cell.value } }
      const { from: _, ...own } = cell
      return own as TableCell
    }),
  }
}
