import { clip } from '../../units/index.ts'
import { freeNameBeside, isNamed } from '../document/names.ts'
import { FORMAT, MAX_CELLS, VERSION } from '../format/format.ts'
import { kindOf } from '../kinds/index.ts'
import type { Renaming } from '../kinds/kind.ts'
import { followNames } from '../renaming/follow-names.ts'
import { isSame } from '../schema/content.ts'
import type { Cell, FunctionCell } from '../schema/document.ts'
import { DocumentError, parseJson, readData } from '../schema/read-document.ts'
import { readLines } from './lines.ts'
import * as words from './words.ts'

/** What a text of cells says it is, in the place of a worksheet's own format. */
const CLIPPING = 'evenfield-cells'
/** A text longer than this is refused before it is read. */
export const LARGEST_CLIPPING = 4_000_000
const MOST_LINES = 500

/** Why a text cannot be pasted as cells: what is wrong, where, and what to do. */
export class ClippingError extends Error {}

/** Cells to copy, with the functions of the sheet that their formulas call, and those that these call. */
export function withFunctions(cells: readonly Cell[], sheet: readonly Cell[]): readonly Cell[] {
  const functions = sheet.filter((cell): cell is FunctionCell => cell.kind === 'function')
  const chosen = new Set<Cell>(cells)
  const open = [...cells]
  for (let cell = open.pop(); cell; cell = open.pop()) {
    const text = JSON.stringify(cell.kind === 'table' ? { ...cell, rows: [] } : cell)
    for (const one of functions)
      if (!chosen.has(one) && callOf(one.name).test(text)) {
        chosen.add(one)
        open.push(one)
      }
  }
  return chosen.size === cells.length ? cells : sheet.filter((cell) => chosen.has(cell))
}

const callOf = (name: string): RegExp => new RegExp(`(?<![\\w.])${name}(?=\\s*\\()`, 'g')

/** Cells as a text to be pasted into any sheet, readable by eye. Ids stay behind: each sheet gives its own. */
export function clippingOf(cells: readonly Cell[]): string {
  const bare = cells.map(({ id: _, ...cell }) => cell)
  return `${JSON.stringify({ format: CLIPPING, version: VERSION, cells: bare }, null, 2)}\n`
}

/**
 * The cells in a text: those copied from a sheet, a whole worksheet’s, or lines as they are written on paper,
 * `name [unit] = formula`. They have passed the schema; their ids mean nothing. Throws ClippingError.
 */
export const readClipping = (text: string): readonly Cell[] => readClipped(text).cells

/** The cells in a text, and the lines of it that are none. */
export interface Clipped {
  readonly cells: readonly Cell[]
  /** A sentence for each line that was left out. */
  readonly leftOut: readonly string[]
}

/** The same, with what was left out. Throws ClippingError where nothing is left. */
export function readClipped(text: string): Clipped {
  if (text.trim() === '') throw new ClippingError(words.noText)
  if (text.length > LARGEST_CLIPPING) throw new ClippingError(words.tooLarge)
  return /^\s*[{[]/.test(text) ? { cells: cellsOfJson(text), leftOut: [] } : cellsOfLines(text)
}

function cellsOfJson(text: string): Cell[] {
  try {
    return readData(asWorksheet(parseJson(text))).cells
  } catch (error) {
    if (!(error instanceof DocumentError)) throw error
    throw new ClippingError(words.unreadableCells(error.message))
  }
}

function asWorksheet(data: unknown): unknown {
  const { format, version, cells } = (data ?? {}) as { format?: unknown; version?: unknown; cells?: unknown }
  if ((format !== CLIPPING && format !== FORMAT) || !Array.isArray(cells)) throw new ClippingError(words.noCells)
  if (cells.length > MAX_CELLS) throw new ClippingError(words.tooManyCells(cells.length, MAX_CELLS))
  const withIds = cells.map((cell: unknown, at) => (typeof cell === 'object' && cell ? { ...cell, id: `${at}` } : cell))
  return { format: FORMAT, version, title: '', cells: withIds }
}

/** The cells of lines; where none of them is one, why. */
function cellsOfLines(text: string): Clipped {
  const lines = text.split('\n').filter((line) => line.trim() !== '')
  if (lines.length > MOST_LINES) throw new ClippingError(words.tooManyLines(lines.length, MOST_LINES))
  const { cells, leftOut } = readLines(text)
  if (cells.length === 0) throw new ClippingError(lines.length === 1 ? words.noLine : words.noLines)
  return { cells, leftOut: leftOut.map(({ line, text, why }) => words.leftOut(line, clip(text), why)) }
}

/**
 * The cells as they can be added to a sheet: under fresh ids and, where a name is taken, a free one that
 * follows through their own formulas. What they name and do not bring is the sheet’s own from then on.
 */
export function fitted(clipped: readonly Cell[], others: readonly Cell[], newId: () => string): Cell[] {
  const there = new Set(others.filter(isNamed).map(({ name }) => name))
  const own = new Set(clipped.filter(isNamed).map(({ name }) => name))
  // A free name is neither one that stays in use nor one that is itself about to be replaced.
  const taken = new Set([...there, ...own])
  const used = new Set<string>()
  const names = new Map<string, string>()
  const named = clipped.map((cell): Cell => {
    if (!isNamed(cell)) return cell
    const stays = !there.has(cell.name) && !used.has(cell.name) && freeNameBeside(cell.name, new Set()) === cell.name
    const name = stays ? cell.name : freeNameBeside(cell.name, taken)
    // If two cells have one name, formulas mean the first.
    if (!stays && !used.has(cell.name)) names.set(cell.name, name)
    used.add(cell.name)
    taken.add(name)
    return stays ? cell : { ...cell, name }
  })
  const followed = named.map((cell) => (names.size > 0 ? followNames(cell, names, clipped) : cell))
  return withOwnFunctions(followed, others).map((cell) => ({ ...cell, id: newId() }))
}

const definition = ({ id: _, label: __, ...rest }: FunctionCell): object => rest

/** Functions the sheet has already stay behind; one that is another under the same name gets a free name in the calls too. */
function withOwnFunctions(clipped: readonly Cell[], others: readonly Cell[]): readonly Cell[] {
  const there = new Map(others.flatMap((cell) => (cell.kind === 'function' ? [[cell.name, cell] as const] : [])))
  const names = new Map<string, string>()
  const left = clipped.filter((cell) => {
    const same = cell.kind === 'function' ? there.get(cell.name) : undefined
    if (!same || cell.kind !== 'function') return true
    if (isSame(definition(same), definition(cell))) return false
    names.set(cell.name, freeNameBeside(cell.name, new Set(there.keys())))
    return true
  })
  if (names.size === 0) return left
  const calls = (text: string): string =>
    [...names].reduce((changed, [from, to]) => changed.replace(callOf(from), to), text)
  const renaming: Renaming = {
    one: (name) => name,
    formula: calls,
    message: (text) => text.replace(/\{([^{}]*)\}/g, (_, inside: string) => `{${calls(inside)}}`),
    inRow: (_, change) => change(renaming),
  }
  return left.map((cell) => {
    if (cell.kind !== 'function') return kindOf(cell).renamed(cell, renaming, clipped)
    return {
      ...cell,
      name: names.get(cell.name) ?? cell.name,
      formula: calls(cell.formula ?? ''),
      examples: (cell.examples ?? []).map((example) => ({ ...example, formula: calls(example.formula) })),
    }
  })
}
