import { RESERVED } from '../../language/index.ts'
import { kindOf } from '../kinds/index.ts'
import { followNames } from '../renaming/follow-names.ts'
import type { Cell } from '../schema/document.ts'
import { readBy } from './join-names.ts'
import type { PartCell } from './part-library.ts'

const NO_ID = 'cell'

const inFormulas = new Map<string, readonly string[]>()

/** The names a formula reads. Only for the formulas of parts: what is found is remembered. */
export function namesInText(formula: string): readonly string[] {
  const names = inFormulas.get(formula) ?? namesRead({ kind: 'result', name: 'formula', formula })
  inFormulas.set(formula, names)
  return names
}

/** Cells of parts never change, so what they read is found once. */
const known = new WeakMap<PartCell, readonly string[]>()
const everything = new WeakMap<PartCell, readonly string[]>()

/** The names a part's cell reads, without the inputs of a drawing that may be missing. */
export function namesRead(cell: PartCell, columns?: ReadonlySet<string>): readonly string[] {
  const names = known.get(cell) ?? readFrom(cell, cell.optional)
  known.set(cell, names)
  // A table and its run also read columns, which are no names of the sheet.
  const inRows = columns && (cell.kind === 'run' || cell.kind === 'table')
  return inRows ? names.filter((name) => !columns.has(name)) : names
}

function allNamesIn(cell: PartCell): readonly string[] {
  const names = everything.get(cell) ?? readFrom(cell, [])
  everything.set(cell, names)
  return names
}

function readFrom(cell: PartCell, optional: readonly string[] = []): readonly string[] {
  const whole = { ...cell, id: NO_ID } as unknown as Cell
  if (whole.kind === 'range') return kindOf(whole).listed?.(whole) ?? []
  const needed = whole.kind === 'drawing' ? { ...whole, from: without(whole.from, optional) } : whole
  return [...readBy(needed)].filter((name) => !RESERVED.has(name))
}

const without = (from: Readonly<Record<string, string>>, left: readonly string[]): Record<string, string> =>
  Object.fromEntries(Object.entries(from).filter(([key]) => !left.includes(key)))

/** A cell with texts put in the place of names; the same cell where none of them occurs. */
export function withTexts(cell: PartCell, texts: ReadonlyMap<string, string>): PartCell {
  if (!allNamesIn(cell).some((name) => texts.has(name))) return cell
  const { id: _, ...rest } = followNames({ ...cell, id: NO_ID } as unknown as Cell, texts, [])
  const put = withoutFactorOne(rest as PartCell)
  // A formula that is a name alone becomes the text, which needs no parentheses there.
  const whole = typeof cell.formula === 'string' ? texts.get(cell.formula) : undefined
  return whole === undefined ? put : { ...put, formula: whole.replace(/^\((.*)\)$/s, '$1') }
}

/** `frames * 1` is `frames`. */
function withoutFactorOne(cell: PartCell): PartCell {
  const { formula, condition, columns } = cell
  return {
    ...cell,
    ...(typeof formula === 'string' ? { formula: withoutOne(formula) } : {}),
    ...(typeof condition === 'string' ? { condition: withoutOne(condition) } : {}),
    ...(Array.isArray(columns) ? { columns: columns.map(withoutFactorOne) } : {}),
  }
}

const withoutOne = (formula: string): string => formula.replace(/ \* 1$/, '')

/** A text as it goes into a formula: in parentheses where it is more than one operand. */
export const operand = (text: string): string => (/^[\w.]+$|^[\d.]+ \w+$/.test(text) ? text : `(${text})`)
