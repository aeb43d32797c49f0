import { provenanceOfRows } from '../analysis/provenance.ts'
import type { Change } from '../document/change.ts'
import { isHeading, isNamed } from '../document/names.ts'
import { readUnder } from '../document/reading.ts'
import { asMade, entryFilledAs, filledAs, without } from '../kinds/filled-in.ts'
import { followNames } from '../renaming/follow-names.ts'
import { isSame } from '../schema/content.ts'
import type { Cell, Frame, Given, Worksheet } from '../schema/document.ts'
import type { ChosenPart, Replaced } from './choose-parts.ts'
import { type Composition, compose, partsOfSetUp, type SetUp } from './compose.ts'
import type { OfferedSetUp, Part, PartLibrary } from './part-library.ts'
import type { Filled, FilledRows } from './sections.ts'
import { prefixedName } from './set-ups.ts'

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
export const isComposed = ({ parts }: Worksheet): boolean => parts !== undefined

/** The parts of a composed worksheet’s first set-up, or of a later one. */
export const partsOf = ({ parts = [] }: Worksheet, prefix?: string): readonly ChosenPart[] =>
  parts.flatMap(({ part, by, setup }) =>
    setup === prefix ? [{ part, ...(by === 'hand' || by === 'lead' ? { by } : {}) }] : [],
  )

/** The later set-ups of a composed worksheet. */
export const setUpsOf = (worksheet: Worksheet): readonly SetUp[] =>
  (worksheet.setups ?? []).map(({ name, title }) => ({
    prefix: name,
    title: title ?? name,
    parts: partsOf(worksheet, name),
  }))

/** The parts that fill the roles of a later set-up: its own, and those it takes over from the first. */
export const partsInSetUp = (library: PartLibrary, worksheet: Worksheet, prefix: string): readonly Part[] =>
  partsOfSetUp(library, partsOf(worksheet), partsOf(worksheet, prefix))

/**
 * Adds parts to a composed sheet, to its first set-up or to a later one. Givens stay by name, also those that a new part computes: should the part go again, they
 * are back. Cells that the user added, and cells of parts that were edited, stay as they are.
 */
export function withParts(
  library: PartLibrary,
  worksheet: Worksheet,
  added: readonly ChosenPart[],
  prefix?: string,
): Recomposed {
  const parts = partsOf(worksheet)
  const setUps = setUpsOf(worksheet)
  const more = (before: readonly ChosenPart[]): ChosenPart[] => [...withoutHand(library, before, added), ...added]
  return prefix === undefined
    ? recomposed(library, worksheet, { parts: more(parts), setUps })
    : recomposed(library, worksheet, {
        parts,
        setUps: setUps.map((one) => (one.prefix === prefix ? { ...one, parts: more(one.parts) } : one)),
      })
}

/** The parts of a job as they are added to a sheet: where it has what one of them would ask for itself, another instead. */
export const partsBeside = (
  library: PartLibrary,
  worksheet: Worksheet,
  added: readonly ChosenPart[],
): readonly ChosenPart[] => {
  const there = new Set(partsOf(worksheet).map(({ part }) => library.parts.get(part)?.role))
  return added.map((one) => {
    const { instead } = library.parts.get(one.part) ?? {}
    return instead && there.has(instead.beside) ? { ...one, part: instead.part } : one
  })
}

/** Adds another set-up to a composed sheet: it starts from what is filled in for the first. */
export const withSetUp = (library: PartLibrary, worksheet: Worksheet, setUp: SetUp): Recomposed =>
  recomposed(library, worksheet, {
    parts: partsOf(worksheet),
    setUps: [...setUpsOf(worksheet).filter(({ prefix }) => prefix !== setUp.prefix), setUp],
  })

/** A set-up that is offered, under a prefix and a title the sheet does not have. */
export function offeredSetUp(worksheet: Worksheet, { prefix, title, parts }: OfferedSetUp): SetUp {
  const taken = new Set(setUpsOf(worksheet).map((one) => one.prefix))
  const number = Array.from({ length: taken.size + 1 }, (_, at) => at + 1).find(
    (n) => !taken.has(n === 1 ? prefix : `${prefix}${n}`),
  ) as number
  const own = number === 1 ? { prefix, title } : { prefix: `${prefix}${number}`, title: `${title} ${number}` }
  return { ...own, parts: parts.map((part) => ({ part, by: 'hand' })) }
}

/** Takes a later set-up away; what was filled in for it is stored, should it come again. */
export const withoutSetUp = (library: PartLibrary, worksheet: Worksheet, prefix: string): Recomposed =>
  recomposed(library, worksheet, {
    parts: partsOf(worksheet),
    setUps: setUpsOf(worksheet).filter((one) => one.prefix !== prefix),
  })

function recomposed(
  library: PartLibrary,
  worksheet: Worksheet,
  next: Required<Pick<Composition, 'parts' | 'setUps'>>,
): Recomposed {
  const sheet = withSharedOnce(library, worksheet)
  const { title, cells: current } = sheet
  const before = partsOf(worksheet)
  const kept = keptGivens(sheet)
  const filling = { title, givens: kept, rows: rowsOf(current), examples: false }
  const base = compose(library, { ...filling, parts: before, setUps: setUpsOf(worksheet) }).worksheet
  const { worksheet: composed, replaced } = compose(library, { ...filling, ...next })
  const cells = merged(current, base.cells, composed.cells)
  const there = new Set(current.map(({ id }) => id))
  const fresh = cells.filter(({ id }) => !there.has(id))
  const known = new Set(before.map(({ part }) => part))
  const isNew = JSON.stringify([base.parts, base.setups]) !== JSON.stringify([composed.parts, composed.setups])
  return {
    change: isNew
      ? {
          do: 'arrange',
          cells,
          parts: composed.parts ?? [],
          setups: composed.setups ?? [],
          given: Object.fromEntries([...kept].map(([name, filled]) => [name, { ...filled }])),
        }
      : undefined,
    cells,
    first: firstOf(cells, fresh, known),
    asks: fresh.filter((cell): cell is Given => cell.kind === 'given' && cell.value.trim() === ''),
    replaced: replaced.filter(({ part, by }) => known.has(part) && !known.has(by)),
  }
}

/**
 * A worksheet saved while each set-up still had a given of its own for what they share now, such as the reach of the
 * column: one is left under the shared name, with the first figure that is filled in, and all cells read that one.
 */
function withSharedOnce(library: PartLibrary, worksheet: Worksheet): Worksheet {
  const { cells, setups = [] } = worksheet
  const given = Object.entries((worksheet.given ?? {}) as Record<string, Filled>)
  const shared = [...library.names].flatMap(([name, { in_every_set_up }]) => (in_every_set_up ? name : []))
  const older = new Map(setups.flatMap((one) => shared.map((name) => [prefixedName(one.name, name), name] as const)))
  const nameOf = (name: string): string => older.get(name) ?? name
  const named = cells.filter((cell): cell is Given => cell.kind === 'given')
  if (![...named.map(({ name }) => name), ...given.map(([name]) => name)].some((name) => older.has(name)))
    return worksheet
  const said = new Set<string>()
  return {
    ...worksheet,
    given: Object.fromEntries(
      // What was filled in for the first set-up goes before the others.
      [...given.filter(([name]) => older.has(name)).reverse(), ...given.filter(([name]) => !older.has(name))].map(
        ([name, filled]) => [nameOf(name), { ...filled }],
      ),
    ),
    cells: cells.flatMap((cell): Cell[] => {
      const next = followNames(cell, older, cells)
      const name = next.kind === 'given' ? nameOf(next.name) : ''
      if (next.kind !== 'given' || !shared.includes(name)) return [next]
      if (said.has(name)) return []
      said.add(name)
      const filled = named.find((one) => nameOf(one.name) === name && one.value.trim() !== '') ?? next
      const { value, from, piece } = filled
      const { from: _, piece: _piece, ...rest } = next
      return [{ ...rest, id: name, name, value, ...(from ? { from } : {}), ...(piece ? { piece } : {}) } as Given]
    }),
  }
}

/** What was chosen by hand for a role gives way to what is chosen by hand now. */
function withoutHand(
  library: PartLibrary,
  before: readonly ChosenPart[],
  added: readonly ChosenPart[],
): readonly ChosenPart[] {
  const roleOf = (part: string): string | undefined => library.parts.get(part)?.role
  const roles = new Set(added.filter(({ by }) => by === 'hand').map(({ part }) => roleOf(part)))
  return before.map((one) => (one.by === 'hand' && roles.has(roleOf(one.part)) ? { part: one.part } : one))
}

/** Where to look first: the heading of the first new part, else of the first new cell. */
function firstOf(cells: readonly Cell[], fresh: readonly Cell[], known: ReadonlySet<string>): string | undefined {
  const ofPart = cells.find((cell) => isHeading(cell) && typeof cell.part === 'string' && !known.has(cell.part))
  const ofSetUp = fresh.find((cell) => isHeading(cell) && cell.set_up !== undefined)
  if (ofSetUp) return ofSetUp.id
  const [first] = fresh
  const above = first && cells.slice(0, cells.indexOf(first) + 1).findLast(isHeading)
  return (ofPart ?? above ?? first)?.id
}

/** What is filled in, by name: now, and before a part computed it. */
function keptGivens({ cells, given, setups = [] }: Worksheet): ReadonlyMap<string, Filled> {
  const older = Object.entries((given ?? {}) as Record<string, Filled>)
  // A field left empty in a later set-up would else be filled in from the first again.
  const ofSetUp = (name: string): boolean => setups.some((one) => name.startsWith(prefixedName(one.name, '')))
  const now = cells.flatMap((cell): [string, Filled][] => {
    if (cell.kind !== 'given' || (cell.value.trim() === '' && !ofSetUp(cell.name))) return []
    const { value, from, piece } = cell
    return [[cell.name, { value, from: from?.text === value ? from.kind : 'typed', ...(piece ? { piece } : {}) }]]
  })
  return new Map([...older, ...now])
}

const rowsOf = (cells: readonly Cell[]): ReadonlyMap<string, FilledRows> =>
  new Map(
    cells.flatMap((cell): [string, FilledRows][] =>
      cell.kind === 'table' ? [[cell.name, { rows: cell.rows, from: provenanceOfRows(cell) }]] : [],
    ),
  )

/**
 * The cells of the new composition, with what the sheet has beyond it: added cells after the one they followed, edits of
 * composed cells, measured values and ticks. A composed cell that was removed stays away.
 */
export function merged(current: readonly Cell[], base: readonly Cell[], composed: readonly Cell[]): Cell[] {
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

/** A cell as it was composed: the steps of a sheet are composed anew, and cells may be locked and folded. */
const asComposed = (cell: Cell): object =>
  without(asMade(cell), cell.kind === 'steps' ? ['locked', 'folded', 'steps'] : ['locked', 'folded'])

/** Whether a cell is as it was composed, apart from what is filled in. */
const same = (a: Cell, b: Cell): boolean => isSame(asComposed(a), asComposed(b))

/** What is filled in, locked, ticked off or folded in a cell, to go on in its new form. */
function stateOf(there: Cell, next: Cell): Partial<Cell> {
  const folded = there.kind === 'note' && there.folded ? { folded: true } : {}
  const locked = (there.kind === 'given' || there.kind === 'result') && there.locked ? { locked: true } : {}
  const measured = there.kind === 'result' && there.measured !== undefined ? { measured: there.measured } : {}
  const under = readUnder(there)
  const read = under ? { measured_under: under } : {}
  if (there.kind === 'frame' && next.kind === 'frame') return pictureOf(there, next)
  if (there.kind !== 'steps' || next.kind !== 'steps')
    return { ...folded, ...locked, ...measured, ...read } as Partial<Cell>
  const known = new Map(there.steps.map((step) => [step.text, step]))
  return {
    steps: next.steps.map((step) => {
      const { done, taken } = known.get(step.text) ?? {}
      return { ...step, ...(done ? { done } : {}), ...(taken === undefined ? {} : { taken }) }
    }),
  }
}

/** The picture that was measured in a cell, with the places of the areas it still has. */
function pictureOf(there: Frame, next: Frame): Frame {
  const known = new Map((there.areas ?? []).map((area) => [area.name, area]))
  const areas = next.areas?.map((area) => entryFilledAs(area, known.get(area.name) ?? area, 'frame', 'areas'))
  return { ...filledAs(next, there), ...(areas ? { areas } : {}) }
}
