import { isHeading, isNamed } from '../document/names.ts'
import { rowsMark, textMark } from '../document/rows-mark.ts'
import type { Cell, Given, Worksheet } from '../schema/document.ts'
import type { ChosenPart } from './choose-parts.ts'
import { compose } from './compose.ts'
import type { PartLibrary } from './part-library.ts'
import { isComposed, merged, type Recomposed } from './recompose.ts'
import type { Filled, FilledRows } from './sections.ts'

/** The jobs of an earlier version, whose sheets were lists of cells: enough of each to know its cells again. */
export interface OlderJobs {
  readonly jobs: Readonly<Record<string, OlderJob>>
}

export interface OlderJob {
  /** The fingerprint of each cell. */
  readonly cells: readonly string[]
  /** The value of each given in the example, by name. */
  readonly example: Readonly<Record<string, string>>
  /** The fingerprint of the example's rows of each table, by name. */
  readonly rows?: Readonly<Record<string, string>>
}

/** A sheet has a job when it has this share of the job's cells: some may have been edited, removed or shared with another. */
const ENOUGH = 0.5

/**
 * What may differ between two sheets of one job of version 1. The fingerprints of those jobs are saved, and only cells
 * without these keys have them: a kind that takes another key now does not change the list.
 */
const OTHERWISE: ReadonlySet<string> = new Set([
  'id',
  'template',
  'stage',
  'value',
  'from',
  'piece',
  'measured',
  'measured_under',
  'locked',
  'folded',
  'rows',
  'steps',
])

/** The same for two cells that differ only in what is filled in, ticked or folded. */
export function fingerprint(cell: Cell): string {
  const entries = Object.entries(cell).filter(([key]) => !OTHERWISE.has(key))
  const steps = cell.kind === 'steps' ? cell.steps.map(({ text, reading }) => [text, reading ?? null]) : []
  return textMark(JSON.stringify([...entries.sort(([a], [b]) => (a < b ? -1 : 1)), steps]))
}

/** What an earlier version's job is known by. */
export function olderJob({ cells }: Worksheet): OlderJob {
  const rows = cells.flatMap((cell) => (cell.kind === 'table' ? [[cell.name, rowsMark(cell.rows)]] : []))
  return {
    cells: [...new Set(cells.map(fingerprint))],
    example: Object.fromEntries(cells.flatMap((cell) => (cell.kind === 'given' ? [[cell.name, cell.value]] : []))),
    ...(rows.length > 0 ? { rows: Object.fromEntries(rows) } : {}),
  }
}

/** The jobs of an earlier version that a worksheet was made from, in its own order; none where it is composed already. */
export function olderJobsIn(worksheet: Worksheet, { jobs }: OlderJobs): readonly string[] {
  if (isComposed(worksheet)) return []
  const places = new Map<string, number>()
  for (const [at, cell] of worksheet.cells.entries()) {
    const mark = fingerprint(cell)
    if (!places.has(mark)) places.set(mark, at)
  }
  return Object.entries(jobs)
    .flatMap(([name, { cells }]) => {
      const found = cells.flatMap((mark) => places.get(mark) ?? [])
      return found.length >= ENOUGH * cells.length ? [{ name, first: Math.min(...found) }] : []
    })
    .sort((a, b) => a.first - b.first)
    .map(({ name }) => name)
}

/**
 * Composes a worksheet of an earlier version again from the parts of its jobs, which `partsOfJobs` has by name. What is
 * filled in stays by name; a value that is still the example's counts as the example's. Cells that were added or edited
 * stay, with the cells they read.
 */
export function arranged(
  library: PartLibrary,
  worksheet: Worksheet,
  older: OlderJobs,
  partsOfJobs: ReadonlyMap<string, readonly ChosenPart[]>,
): Recomposed {
  const from = olderJobsIn(worksheet, older).flatMap((name) => {
    const [was, parts] = [older.jobs[name], partsOfJobs.get(name)]
    return was && parts ? [{ was, parts }] : []
  })
  const example = new Map(from.toReversed().flatMap(({ was }) => Object.entries(was.example)))
  const exampleRows = new Map(from.toReversed().flatMap(({ was }) => Object.entries(was.rows ?? {})))
  const known = new Set(from.flatMap(({ was }) => was.cells))
  const givens = new Map(
    worksheet.cells.flatMap((cell): [string, Filled][] =>
      cell.kind === 'given' && cell.value.trim() !== ''
        ? namesNow(library, cell.name).map((name) => [name, filled(cell, example.get(cell.name))])
        : [],
    ),
  )
  const rows = new Map(
    worksheet.cells.flatMap((cell): [string, FilledRows][] =>
      cell.kind === 'table'
        ? [
            [
              cell.name,
              {
                rows: cell.rows,
                from: rowsMark(cell.rows) === exampleRows.get(cell.name) ? 'example' : 'typed',
              },
            ],
          ]
        : [],
    ),
  )
  const { title } = worksheet
  const parts = from.flatMap((one) => one.parts)
  const { worksheet: composed } = compose(library, { title, parts, givens, rows, examples: false })
  const own = ownCells(worksheet.cells, known, composed.cells)
  const current = withComposedIds(worksheet.cells, own, composed.cells)
  const base = current.filter((_, at) => !own.has(worksheet.cells[at] as Cell))
  const cells = merged(current, base, composed.cells)
  return {
    change: {
      do: 'arrange',
      cells,
      parts: composed.parts ?? [],
      given: Object.fromEntries([...givens].map(([name, one]) => [name, { ...one }])),
    },
    cells,
    first: cells.find(isHeading)?.id,
    asks: composed.cells.filter((cell): cell is Given => cell.kind === 'given' && cell.value.trim() === ''),
    replaced: [],
  }
}

/** The published names that a name of an earlier version means today. */
const namesNow = ({ names, aliases }: PartLibrary, name: string): readonly string[] =>
  names.has(name) ? [name] : (aliases.get(name) ?? [])

const filled = ({ value, piece }: Given, example: string | undefined): Filled => ({
  value,
  from: value === example ? 'example' : 'typed',
  ...(piece ? { piece } : {}),
})

/** The words of a cell that may be names of others. */
const wordsOf = ({ id, ...cell }: Cell): readonly string[] => JSON.stringify(cell).match(/[A-Za-z_]\w*/g) ?? []

/** The cells that were added or edited, and those that they read and that the new composition does not have. */
function ownCells(cells: readonly Cell[], known: ReadonlySet<string>, composed: readonly Cell[]): ReadonlySet<Cell> {
  const there = new Set(composed.flatMap((cell) => (isNamed(cell) ? [cell.name] : [])))
  const byName = new Map(cells.flatMap((cell) => (isNamed(cell) ? [[cell.name, cell] as const] : [])))
  const own = new Set(cells.filter((cell) => !known.has(fingerprint(cell))))
  // Cells that are added to the set while it is walked are walked too.
  for (const cell of own)
    for (const word of wordsOf(cell)) {
      const read = byName.get(word)
      if (read && !there.has(word)) own.add(read)
    }
  return own
}

/** The cells of the sheet, those of its jobs with the ids of what is composed under their names, and the own with others. */
function withComposedIds(cells: readonly Cell[], own: ReadonlySet<Cell>, composed: readonly Cell[]): readonly Cell[] {
  const byName = new Map(composed.flatMap((cell) => (isNamed(cell) ? [[cell.name, cell.id] as const] : [])))
  const ids = new Set(composed.map(({ id }) => id))
  const taken = new Set([...ids, ...cells.map(({ id }) => id)])
  return cells.map((cell) => {
    const id = isNamed(cell) && !own.has(cell) ? byName.get(cell.name) : undefined
    if (id !== undefined) return { ...cell, id }
    return ids.has(cell.id) ? { ...cell, id: freshId(cell.id, taken) } : cell
  })
}

function freshId(id: string, taken: ReadonlySet<string>): string {
  let n = 2
  while (taken.has(`${id}_${n}`)) n++
  return `${id}_${n}`
}
