import type { Change } from '../document/change.ts'
import { isNamed } from '../document/names.ts'
import type { Cell, Given, Worksheet } from '../schema/document.ts'
import type { ChosenPart, Replaced } from './choose-parts.ts'
import { compose } from './compose.ts'
import type { PartLibrary } from './part-library.ts'
import type { Filled, FilledRows } from './sections.ts'

/** What becomes of a composed sheet when parts are added to it. */
export interface Recomposed {
  /** One change, one step of undo; undefined where every part is there already. */
  readonly change: Change | undefined
  readonly cells: readonly Cell[]
  /** Where to look first: the heading of what is new. */
  readonly first: string | undefined
  /** The givens it asks that the sheet did not have. */
  readonly asks: readonly Given[]
  /** Parts of the sheet that give way. */
  readonly replaced: readonly Replaced[]
}

/** Whether a worksheet is composed of parts, and can take more. */
export const isComposed = ({ parts, setups }: Worksheet): boolean => parts !== undefined && setups === undefined

/** The parts a composed worksheet has. */
export const partsOf = ({ parts = [] }: Worksheet): readonly ChosenPart[] =>
  parts.map(({ part, by }) => ({ part, ...(by === 'hand' || by === 'lead' ? { by } : {}) }))

/**
 * Adds parts to a composed sheet. Givens stay by name, also those that a new part computes: should the part go again, they
 * are back. Cells that the user added, and cells of parts that were edited, stay as they are.
 */
export function withParts(library: PartLibrary, worksheet: Worksheet, added: readonly ChosenPart[]): Recomposed {
  const { title, cells: current } = worksheet
  const before = partsOf(worksheet)
  const set = [...before, ...added]
  const kept = keptGivens(worksheet)
  const filling = { title, givens: kept, rows: rowsOf(current), examples: false }
  const base = compose(library, { ...filling, parts: before }).worksheet.cells
  const { worksheet: composed, replaced } = compose(library, { ...filling, parts: set })
  const cells = merged(current, base, composed.cells)
  const there = new Set(current.map(({ id }) => id))
  const fresh = cells.filter(({ id }) => !there.has(id))
  const known = new Set(before.map(({ part }) => part))
  const isNew = set.some(({ part }) => !known.has(part))
  return {
    change: isNew
      ? {
          do: 'arrange',
          cells,
          parts: composed.parts ?? [],
          given: Object.fromEntries([...kept].map(([name, filled]) => [name, { ...filled }])),
        }
      : undefined,
    cells,
    first: firstOf(cells, fresh, known),
    asks: fresh.filter((cell): cell is Given => cell.kind === 'given' && cell.value.trim() === ''),
    replaced: replaced.filter(({ part, by }) => known.has(part) && !known.has(by)),
  }
}

/** Where to look first: the heading of the first new part, else of the first new cell. */
function firstOf(cells: readonly Cell[], fresh: readonly Cell[], known: ReadonlySet<string>): string | undefined {
  const isHeading = (cell: Cell): boolean => cell.kind === 'note' && cell.role === 'heading'
  const ofPart = cells.find((cell) => isHeading(cell) && typeof cell.part === 'string' && !known.has(cell.part))
  const [first] = fresh
  const above = first && cells.slice(0, cells.indexOf(first) + 1).findLast(isHeading)
  return (ofPart ?? above ?? first)?.id
}

/** What is filled in, by name: now, and before a part computed it. */
function keptGivens({ cells, given }: Worksheet): ReadonlyMap<string, Filled> {
  const older = Object.entries((given ?? {}) as Record<string, Filled>)
  const now = cells.flatMap((cell): [string, Filled][] => {
    if (cell.kind !== 'given' || cell.value.trim() === '') return []
    const { value, from, piece } = cell
    return [[cell.name, { value, from: from?.text === value ? from.kind : 'typed', ...(piece ? { piece } : {}) }]]
  })
  return new Map([...older, ...now])
}

const rowsOf = (cells: readonly Cell[]): ReadonlyMap<string, FilledRows> =>
  new Map(
    cells.flatMap((cell): [string, FilledRows][] => {
      if (cell.kind !== 'table') return []
      const { kind } = (cell.from ?? {}) as { readonly kind?: FilledRows['from'] }
      return [[cell.name, { rows: cell.rows, from: kind ?? 'typed' }]]
    }),
  )

/**
 * The cells of the new composition, with what the sheet has beyond it: added cells after the one they followed, edits of
 * composed cells, measured values and ticks. A composed cell that was removed stays away.
 */
function merged(current: readonly Cell[], base: readonly Cell[], composed: readonly Cell[]): Cell[] {
  const mine = new Map(current.map((cell) => [cell.id, cell]))
  const bases = new Map(base.map((cell) => [cell.id, cell]))
  const own = current.filter(({ id }) => !bases.has(id))
  const taken = new Set(own.filter(isNamed).map(({ name }) => name))
  const next = composed.flatMap((cell): Cell[] => {
    const there = mine.get(cell.id)
    const was = bases.get(cell.id)
    if (was && !there) return []
    if (isNamed(cell) && taken.has(cell.name)) return []
    if (!there || !was) return [cell]
    return [same(there, was) ? ({ ...cell, ...stateOf(there, cell) } as Cell) : there]
  })
  for (const cell of own) {
    const at = current.indexOf(cell)
    const before = current.slice(0, at).findLast(({ id }) => next.some((one) => one.id === id))
    next.splice(before ? next.findIndex(({ id }) => id === before.id) + 1 : 0, 0, cell)
  }
  return next
}

const STATE = new Set(['value', 'from', 'piece', 'measured', 'folded', 'rows', 'steps'])
const withoutState = (cell: Cell): string =>
  JSON.stringify(
    Object.entries(cell)
      .filter(([key]) => !STATE.has(key))
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  )

/** Whether a cell is as it was composed, but for what one fills in. */
const same = (a: Cell, b: Cell): boolean => withoutState(a) === withoutState(b)

/** What is filled in, ticked off or folded in a cell, to go on in its new form. */
function stateOf(there: Cell, next: Cell): Partial<Cell> {
  const folded = there.kind === 'note' && there.folded ? { folded: true } : {}
  const measured = there.kind === 'result' && there.measured !== undefined ? { measured: there.measured } : {}
  if (there.kind !== 'steps' || next.kind !== 'steps') return { ...folded, ...measured } as Partial<Cell>
  const done = new Set(there.steps.filter((step) => step.done).map(({ text }) => text))
  return { steps: next.steps.map((step) => (done.has(step.text) ? { ...step, done: true } : step)) }
}
