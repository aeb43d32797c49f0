import { readFileSync } from 'node:fs'
import type { KitPiece } from '../worksheet/advice/kit-suggestions.ts'
import { choosePiece } from '../worksheet/document/kit-given.ts'
import type { Cell, Given } from '../worksheet/index.ts'
import { InputError } from './input-error.ts'
import { templatesFolder } from './part-files.ts'
import * as words from './words.ts'

/** The kit of common equipment; the studio's own is in the browser. */
function readPieces(): readonly KitPiece[] {
  const text = readFileSync(new URL('../shared/kit.json', templatesFolder()), 'utf8')
  return (JSON.parse(text) as { readonly pieces: readonly KitPiece[] }).pieces
}

/** The cells with another piece of kit in a given, and its figures in those it fills in. Throws InputError where there is no such piece. */
export function withPiece(cells: readonly Cell[], given: Given, text: string): Cell[] {
  const asked = text.trim()
  if (asked === given.value && given.piece !== undefined) return [...cells]
  const pieces = readPieces().filter(({ sort }) => sort === given.sort)
  const found = pieces.find(({ name }) => name.toLowerCase() === asked.toLowerCase())
  if (asked !== '' && !found)
    throw new InputError(
      words.noSuchPiece(
        given.name,
        asked,
        given.sort ?? '',
        pieces.map(({ name }) => name),
        Object.values(given.fills ?? {}),
      ),
    )
  const change = choosePiece(cells, given, found ?? { name: '', figures: {} })
  const replaced = new Map<string, Cell>()
  if (change.do === 'several')
    for (const one of change.changes) if (one.do === 'replace') replaced.set(one.cell.id, one.cell)
  return cells.map((cell) => replaced.get(cell.id) ?? cell)
}
