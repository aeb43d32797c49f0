import { ChangeRefused } from '../document/change.ts'
import { isNamed, refusedName } from '../document/names.ts'
import * as words from '../document/words.ts'
import type { Cell } from '../schema/document.ts'
import { followNames } from './follow-names.ts'
import { withAreaRenamed } from './rename-area.ts'
import { refusedByColumn, withColumnRenamed } from './rename-in-table.ts'

/** A new name follows into every formula, message, drawing and list of names. */
function withCellRenamed(cells: readonly Cell[], id: string, name: string): Cell[] {
  const cell = cells.find((one) => one.id === id)
  if (!cell) throw new ChangeRefused(words.cellGone)
  if (!isNamed(cell)) throw new ChangeRefused(words.cellHasNoName)
  const from = cell.name
  if (from === name) return [...cells]
  const tables = cells.filter((other) => other.kind === 'table')
  const refused = [refusedName(name, cells, id), ...tables.map((other) => refusedByColumn(other, from, name))]
  for (const reason of refused) if (reason) throw new ChangeRefused(reason)
  const names = new Map([[from, name]])
  return cells.map((other): Cell => followNames(other.id === id ? ({ ...other, name } as Cell) : other, names, cells))
}

/** Renames cells, columns of tables and areas of frames. */
export const RENAMING = { cell: withCellRenamed, column: withColumnRenamed, area: withAreaRenamed }
