import type { Cell } from '../schema/document.ts'
import type { Kind } from './index.ts'

/** Where the cells of one kind hold what is filled in at work: typed, measured, photographed, counted or ticked. */
interface FilledIn {
  /** Keys of the cell itself. */
  readonly keys?: readonly string[]
  /** Keys of each entry of a list it has. */
  readonly each?: Readonly<Record<string, readonly string[]>>
}

/** What is filled in at work, by kind of cell; all else is how a cell was made. */
const FILLED_IN: Readonly<Record<Kind, FilledIn>> = {
  given: { keys: ['value', 'piece', 'from', 'measured_under'] },
  result: { keys: ['measured', 'measured_under'] },
  check: {},
  note: {},
  drawing: {},
  steps: { each: { steps: ['done', 'taken'] } },
  table: { keys: ['rows', 'from'] },
  range: {},
  variants: {},
  run: {},
  frame: {
    keys: ['picture', 'readings', 'series', 'measured_under'],
    each: { areas: ['box', 'from', 'to', 'length', 'corners', 'size', 'outline', 'patches'] },
  },
  function: {},
}

/** The same without some keys. */
export const without = (cell: object, keys: readonly string[]): object =>
  Object.fromEntries(Object.entries(cell).filter(([key]) => !keys.includes(key)))

/** Something with some keys of another in the place of its own. */
const withKeysOf = <T extends object>(into: T, from: T, keys: readonly string[]): T =>
  Object.assign(
    without(into, keys),
    Object.fromEntries(Object.entries(from).filter(([key]) => keys.includes(key))),
  ) as T

/** A cell without what is filled in at work. */
export function asMade(cell: Cell): object {
  const { keys = [], each = {} } = FILLED_IN[cell.kind]
  return Object.fromEntries(
    Object.entries(without(cell, keys)).map(([key, value]) => {
      const inEach = each[key]
      return [key, inEach && Array.isArray(value) ? value.map((one: object) => without(one, inEach)) : value]
    }),
  )
}

/** A cell with what is filled in in another of its kind, the entries of its lists aside. */
export const filledAs = <C extends Cell>(into: C, from: C): C => withKeysOf(into, from, FILLED_IN[into.kind].keys ?? [])

/** An entry of a list, such as a step, with what is filled in in another. */
export const entryFilledAs = <T extends object>(into: T, from: T, kind: Kind, list: string): T =>
  withKeysOf(into, from, FILLED_IN[kind].each?.[list] ?? [])
