import { describeType, FULL_COMPILER, namesIn, sameType, type Type } from '../../language/index.ts'
import { readMeasured } from '../document/measured.ts'
import { namesShown } from '../document/message-places.ts'
import { isNamed } from '../document/names.ts'
import { declaredUnit } from '../document/read-given.ts'
import type { Sheet } from '../editing/sheet.ts'
import { formulaOf } from '../engine/node.ts'
import { kindOf } from '../kinds/index.ts'
import type { Cell, Given, NamedCell, Result } from '../schema/document.ts'
import { namesInTable } from '../table/table-node.ts'
import { joiningOf } from './join-kinds.ts'
import * as words from './words.ts'

/** The type of a named cell of a sheet, where it is known. */
export function typeIn(sheet: Sheet, name: string): Type | undefined {
  const type = sheet.scopeFor().typeOf(name)
  return type === 'unknown' ? undefined : type
}

/** The names a cell computes, draws or speaks with. */
export function readBy(cell: Cell): ReadonlySet<string> {
  if (cell.kind === 'steps' || cell.kind === 'range' || cell.kind === 'variants') return new Set()
  const computed =
    cell.kind === 'result' || cell.kind === 'check'
      ? namesIn(formulaOf(cell)).map(({ name }) => name)
      : cell.kind === 'table'
        ? namesInTable(cell, FULL_COMPILER)
        : []
  return new Set([...computed, ...namesShown(cell, FULL_COMPILER)])
}

/** The givens a cell changes, varies or fills in: they must stay givens. */
export const setBy = (cell: Cell): readonly string[] => kindOf(cell).sets?.(cell) ?? []

const aKind = (cell: NamedCell): string => `a ${kindOf(cell).title.toLowerCase()}`

/** How a given or a result would be filled in, as the vocabulary says it. */
const entryOf = (cell: Given | Result): string => (cell.kind === 'given' ? (cell.entry ?? 'quantity') : 'quantity')

/** Why one cell cannot replace another of its name; undefined where it can. */
export function misfit(
  there: NamedCell,
  coming: NamedCell,
  types: { readonly there: Type | undefined; readonly coming: Type | undefined },
): string | undefined {
  const joining = joiningOf(there)
  const misfit = there.kind === coming.kind ? joining.misfit?.(there, coming) : undefined
  if (misfit !== undefined) return misfit
  if (there.kind === coming.kind && !joining.byValue) return undefined
  if (!joining.byValue || !joiningOf(coming).byValue) return words.otherKinds(aKind(there), aKind(coming))
  const [a, b] = [there as Given | Result, coming as Given | Result]
  if (types.there && types.coming)
    return sameType(types.there, types.coming)
      ? undefined
      : words.otherKinds(describeType(types.there), describeType(types.coming))
  // Not filled in, or in error: what is declared must do.
  const alike = entryOf(a) === entryOf(b) && (a.unit ?? '') === (b.unit ?? '')
  return alike ? undefined : words.kindUnknown
}

/** The value of a given as a measured value of a result; undefined where it cannot be one. */
export function asMeasured(sheet: Sheet, given: Given, result: Result): string | undefined {
  const outcome = sheet.outcome(given.id)
  if (outcome.state !== 'value') return undefined
  const { unit } = declaredUnit(result.unit)
  // A bare number takes its field's unit, and the result's may be another.
  return [given.value, outcome.readAs].find((text) => readMeasured(text, outcome.type, unit)?.value === outcome.value)
}

/** Whether a name, computed by a formula, would be computed from itself. */
export function wouldCycle(name: string, formula: string, namedCells: ReadonlyMap<string, NamedCell>): boolean {
  const seen = new Set<string>()
  const open = namesIn(formula).map((one) => one.name)
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (at === name) return true
    const named = namedCells.get(at)
    if (!named || seen.has(at)) continue
    seen.add(at)
    if (named.kind === 'table') open.push(...namesInTable(named, FULL_COMPILER))
    else open.push(...namesIn(formulaOf(named)).map((one) => one.name))
  }
  return false
}

/** The named cells by name; if two have one name, the first. */
export const cellsNamed = (cells: readonly Cell[]): Map<string, NamedCell> => {
  const namedCells = new Map<string, NamedCell>()
  for (const cell of cells) if (isNamed(cell) && !namedCells.has(cell.name)) namedCells.set(cell.name, cell)
  return namedCells
}
