import type { Cell } from '../../worksheet/index.ts'
import { newCell } from '../common/new-cell.ts'
import type { OpenSheet } from '../open/open-sheet.ts'

/** Adds an example of the guide as the last result of a sheet. Gives the id of the new cell. */
export function putExample(open: OpenSheet, formula: string): string {
  const { cells } = open.sheet
  const cell = { ...newCell('result', cells), formula } as Cell
  open.apply({ do: 'add', cell, at: cells.length })
  return cell.id
}
