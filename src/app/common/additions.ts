import { type Cell, freeName, isNamed } from '../../worksheet/index.ts'

/** The kinds of cell that can be added. */
export const ADDITIONS = [
  'given',
  'result',
  'check',
  'note',
  'section',
  'drawing',
  'steps',
  'table',
  'range',
  'variants',
  'run',
  'frame',
  'function',
] as const
export type Addition = (typeof ADDITIONS)[number]

/** An id for a new cell, unlike any other. */
export const cellId = (): string => {
  const bytes = crypto.getRandomValues(new Uint8Array(6))
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** A copy of a cell with a free name, to be placed below the original. */
export function copyOf(cell: Cell, cells: readonly Cell[]): Cell {
  const copy = { ...cell, id: cellId() }
  return isNamed(copy) ? { ...copy, name: freeName(copy.name, cells) } : copy
}

/** The kind of cell that Alt N adds below another: the same kind, or a given. */
export const kindBelow = (cell: Cell): Addition =>
  cell.kind === 'note' && cell.role !== 'heading'
    ? 'note'
    : cell.kind === 'given' || cell.kind === 'result' || cell.kind === 'check'
      ? cell.kind
      : 'given'
