import { type Change, ChangeRefused } from '../document/change.ts'
import { isNamed, refusedName } from '../document/names.ts'
import * as words from '../document/words.ts'
import { MAX_CELLS } from '../format/format.ts'
import type { Cell, Worksheet } from '../schema/document.ts'

/** How a cell, the column of a table or the area of a frame gets another name that every formula follows. */
export interface Renaming {
  cell(cells: readonly Cell[], id: string, name: string): Cell[]
  column(cells: readonly Cell[], id: string, at: number, name: string): Cell[]
  area(cells: readonly Cell[], id: string, at: number, name: string): Cell[]
}

/** The document after a change; the one before is untouched, and unchanged cells are the same objects. */
export function applyChange(worksheet: Worksheet, change: Change, renaming?: Renaming): Worksheet {
  switch (change.do) {
    case 'title':
      return { ...worksheet, title: change.title }
    case 'job':
      return { ...worksheet, job: change.job }
    case 'add':
      return { ...worksheet, cells: added(worksheet.cells, change.cell, change.at) }
    case 'insert':
      return { ...worksheet, cells: inserted(worksheet.cells, change.cells, change.at) }
    case 'remove': {
      const at = placeOf(worksheet.cells, change.id)
      return { ...worksheet, cells: worksheet.cells.toSpliced(at, 1) }
    }
    case 'move': {
      const at = placeOf(worksheet.cells, change.id)
      const cell = worksheet.cells[at] as Cell
      const to = Math.max(0, Math.min(change.to, worksheet.cells.length - 1))
      return { ...worksheet, cells: worksheet.cells.toSpliced(at, 1).toSpliced(to, 0, cell) }
    }
    case 'replace':
      return { ...worksheet, cells: replaced(worksheet.cells, change.cell) }
    case 'rename':
      return { ...worksheet, cells: here(renaming).cell(worksheet.cells, change.id, change.name) }
    case 'rename column':
      return { ...worksheet, cells: here(renaming).column(worksheet.cells, change.id, change.column, change.name) }
    case 'rename area':
      return { ...worksheet, cells: here(renaming).area(worksheet.cells, change.id, change.area, change.name) }
    case 'arrange':
      return rearranged(worksheet, change)
    case 'several':
      return change.changes.reduce((before, one) => applyChange(before, one, renaming), worksheet)
  }
}

function rearranged(
  { setups: _, ...worksheet }: Worksheet,
  { cells, parts, setups = [], given }: Change & { readonly do: 'arrange' },
): Worksheet {
  return { ...worksheet, cells: arranged(cells), parts, given, ...(setups.length > 0 ? { setups } : {}) }
}

function arranged(cells: readonly Cell[]): Cell[] {
  if (cells.length > MAX_CELLS) throw new ChangeRefused(words.sheetFull)
  return [...cells]
}

function placeOf(cells: readonly Cell[], id: string): number {
  const at = cells.findIndex((cell) => cell.id === id)
  if (at < 0) throw new ChangeRefused(words.cellGone)
  return at
}

function refuse(reason: string | undefined): void {
  if (reason) throw new ChangeRefused(reason)
}

const added = (cells: readonly Cell[], cell: Cell, at: number): Cell[] => {
  if (isNamed(cell)) refuse(refusedName(cell.name, cells))
  return inserted(cells, [cell], at)
}

function inserted(cells: readonly Cell[], others: readonly Cell[], at: number): Cell[] {
  if (cells.length + others.length > MAX_CELLS) throw new ChangeRefused(words.sheetFull)
  const ids = new Set(cells.map(({ id }) => id))
  const names = new Set(cells.filter(isNamed).map(({ name }) => name))
  for (const other of others) {
    if (ids.has(other.id)) throw new ChangeRefused(words.sameId)
    ids.add(other.id)
    if (!isNamed(other)) continue
    refuse(names.has(other.name) ? words.nameTaken(other.name) : refusedName(other.name, []))
    names.add(other.name)
  }
  return cells.toSpliced(Math.max(0, Math.min(at, cells.length)), 0, ...others)
}

function replaced(cells: readonly Cell[], cell: Cell): Cell[] {
  const at = placeOf(cells, cell.id)
  const before = cells[at] as Cell
  const newName = isNamed(cell) && !(isNamed(before) && before.name === cell.name)
  if (newName) refuse(refusedName(cell.name, cells, cell.id))
  return cells.with(at, cell)
}

function here(renaming: Renaming | undefined): Renaming {
  if (!renaming) throw new ChangeRefused(words.renamingNotLoaded)
  return renaming
}
