import { renameIn } from '../language/index.ts'
import { type Change, ChangeRefused } from './change.ts'
import type { Cell, Worksheet } from './document.ts'
import { isNamed, refusedName } from './names.ts'

/** The document after a change; the one before is untouched, and unchanged cells are the same objects. */
export function applyChange(worksheet: Worksheet, change: Change): Worksheet {
  switch (change.do) {
    case 'title':
      return { ...worksheet, title: change.title }
    case 'job':
      return { ...worksheet, job: change.job }
    case 'add':
      return { ...worksheet, cells: added(worksheet.cells, change.cell, change.at) }
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
      return { ...worksheet, cells: renamed(worksheet.cells, change.id, change.name) }
    case 'several':
      return change.changes.reduce(applyChange, worksheet)
  }
}

function placeOf(cells: readonly Cell[], id: string): number {
  const at = cells.findIndex((cell) => cell.id === id)
  if (at < 0) throw new ChangeRefused('This cell is no longer in the sheet.')
  return at
}

function refuse(reason: string | undefined): void {
  if (reason) throw new ChangeRefused(reason)
}

function added(cells: readonly Cell[], cell: Cell, at: number): Cell[] {
  if (cells.some(({ id }) => id === cell.id)) throw new ChangeRefused('A cell with this id is already in the sheet.')
  if (isNamed(cell)) refuse(refusedName(cell.name, cells))
  return cells.toSpliced(Math.max(0, Math.min(at, cells.length)), 0, cell)
}

function replaced(cells: readonly Cell[], cell: Cell): Cell[] {
  const at = placeOf(cells, cell.id)
  const before = cells[at] as Cell
  const newName = isNamed(cell) && !(isNamed(before) && before.name === cell.name)
  if (newName) refuse(refusedName(cell.name, cells, cell.id))
  return cells.with(at, cell)
}

/** A new name follows into every formula, message and drawing. */
function renamed(cells: readonly Cell[], id: string, name: string): Cell[] {
  const cell = cells[placeOf(cells, id)] as Cell
  if (!isNamed(cell)) throw new ChangeRefused('This cell bears no name.')
  if (cell.name === name) return [...cells]
  refuse(refusedName(name, cells, id))
  const from = cell.name
  const follow = (text: string): string => renameIn(text, from, name)
  return cells.map((other): Cell => followed(other.id === id ? ({ ...other, name } as Cell) : other, follow))
}

function followed(cell: Cell, follow: (text: string) => string): Cell {
  switch (cell.kind) {
    case 'result':
      return keepIfSame(cell, { formula: follow(cell.formula) })
    case 'check': {
      const fill = (text: string): string => text.replace(/\{([^{}]*)\}/g, (_, inside: string) => `{${follow(inside)}}`)
      return keepIfSame(cell, {
        condition: follow(cell.condition),
        message: fill(cell.message),
        ...(cell.holds === undefined ? {} : { holds: fill(cell.holds) }),
      })
    }
    case 'drawing': {
      const from = Object.fromEntries(Object.entries(cell.from).map(([input, text]) => [input, follow(text)]))
      const next = { ...cell, from, ...(cell.moves ? { moves: cell.moves.map(follow) } : {}) }
      return JSON.stringify(next) === JSON.stringify(cell) ? cell : next
    }
    default:
      return cell
  }
}

/** The same object where nothing changed, so that nothing is recomputed. */
function keepIfSame<C extends Cell>(cell: C, texts: Partial<C>): C {
  const same = Object.entries(texts).every(([key, value]) => cell[key as keyof C] === value)
  return same ? cell : { ...cell, ...texts }
}
