import type { Change } from '../document/change.ts'
import { freeNameBeside, type Heading, isNamed } from '../document/names.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Stage } from '../format/format.ts'
import { followNames } from '../renaming/follow-names.ts'
import type { Cell, Given, NamedCell, Result } from '../schema/document.ts'
import { asMeasured, cellsNamed, misfit, readBy, setBy, typeIn, wouldCycle } from './join-names.ts'
import { type Part, partsOf, placeFor, stagesOf } from './join-place.ts'
import { tidied } from './join-tidy.ts'
import { VOCABULARY } from './vocabulary.ts'

/** What is to be set into a sheet as a section. */
export interface IncomingSection {
  /** The template's name, saved with its headings. */
  readonly key: string
  readonly title: string
  readonly cells: readonly Cell[]
  /** For headings that name none. */
  readonly stage?: Stage
}

/**
 * What becomes of a name that is already in the sheet. `keep`: the sheet's cell serves both. `measured`: the result
 * that comes takes the place of the sheet's given, whose value goes on as measured. `computed`: the same, its value
 * dropped. `both`: the cell that comes takes another name.
 */
export type Resolution = 'keep' | 'measured' | 'computed' | 'both'

/** A name that is in the sheet and comes again. */
export interface NameClash {
  readonly name: string
  readonly there: NamedCell
  readonly coming: NamedCell
  readonly way: Resolution
  /** What one may choose among; with one alone nothing is asked. */
  readonly ways: readonly Resolution[]
  /** The names mean different things, or may: it is asked whether they join. */
  readonly clashes: boolean
  /** Why they cannot join, where they cannot. */
  readonly why?: string
  /** Of both: what the cell that comes is named. */
  readonly newName?: string
  /** Of measured: the value, as text the result reads. */
  readonly measured?: string
}

export interface JoinPlan {
  readonly meetings: readonly NameClash[]
  /** The cells that come in, headings among them, as they will be. */
  readonly cells: readonly Cell[]
  /** The whole as one change, one step of undo; undefined where all of it is there already. */
  readonly change: Change | undefined
  /** The first cell that comes in. */
  readonly first: string | undefined
}

export interface JoinOptions {
  /** What was chosen for a name; where nothing was, the first of its ways. */
  readonly choices?: ReadonlyMap<string, Resolution>
  readonly freshId: () => string
}

/** Plans how a template is set into a sheet; the sheet's library must include the functions it calls. Nothing is changed. */
export function planJoin(
  sheet: Sheet,
  coming: IncomingSection,
  { choices = new Map(), freshId }: JoinOptions,
): JoinPlan {
  const meetings = meet(sheet, coming.cells, choices)
  const newNames = meetings.flatMap(({ name, newName }) => (newName === undefined ? [] : [[name, newName] as const]))
  const renamed = withNewNames(coming.cells, new Map(newNames))
  const { parts, replaced } = whatComes(sheet.cells, renamed, meetings, coming)
  const removed = new Set(replaced.keys())
  const left = sheet.cells.filter(({ id }) => !removed.has(id))
  const stages = stagesOf(parts, coming.stage)
  const placed = parts.map((part, at) => ({
    at: placeFor(stages[at], left),
    cells: [
      headingOf(part, coming, stages[at], freshId),
      ...part.cells.map((cell) => ({ ...cell, id: freshId() })),
    ] as Cell[],
  }))
  const cells = placed.flatMap((one) => one.cells)
  if (placed.length === 0) return { meetings, cells: [], change: undefined, first: undefined }
  const places = [...new Set(placed.map(({ at }) => at))].sort((a, b) => b - a)
  const changes: Change[] = [
    ...[...removed].map((id): Change => ({ do: 'remove', id })),
    // From the end on, so that each place still is where it was.
    ...places.map(
      (at): Change => ({
        do: 'insert',
        at,
        cells: placed.filter((one) => one.at === at).flatMap((one) => one.cells),
      }),
    ),
  ]
  return { meetings, cells, change: { do: 'several', changes }, first: cells[0]?.id }
}

/** Every name that is in both, and what becomes of it. */
function meet(sheet: Sheet, cells: readonly Cell[], choices: ReadonlyMap<string, Resolution>): NameClash[] {
  const pairs = pairsOf(sheet, cells)
  const taken = namesTaken([...sheet.cells, ...cells])
  const apart = (pair: Pair): boolean =>
    pair.why !== undefined || (pair.clashes && (choices.get(pair.name) ?? 'both') === 'both')
  const newNames = new Map(pairs.filter(apart).map(({ name }) => [name, freeAmong(name, taken)]))
  // Which cell has each name in the end: whether a result may take a given's place depends on those before it.
  const namedCells = new Map([...cellsNamed(withNewNames(cells, newNames)), ...cellsNamed(sheet.cells)])
  const setGivens = new Set(sheet.cells.flatMap(setBy))
  return pairs.map((pair): NameClash => {
    const { name, there, coming, clashes, why } = pair
    const joined: readonly Resolution[] =
      why === undefined ? waysToJoin(sheet, there, coming, { setGivens, namedCells }) : []
    const ways: readonly Resolution[] = clashes ? ['both', ...joined] : joined
    const chosen = choices.get(name)
    const newName = newNames.get(name)
    const way = newName !== undefined ? 'both' : ((joined.find((one) => one === chosen) ?? joined[0]) as Resolution)
    if (way === 'measured' || way === 'computed') namedCells.set(name, coming)
    const measured = way === 'measured' ? asMeasured(sheet, there as Given, coming as Result) : undefined
    return {
      ...{ name, there, coming, way, ways, clashes },
      ...(why === undefined ? {} : { why }),
      ...(newName === undefined ? {} : { newName }),
      ...(measured === undefined ? {} : { measured }),
    }
  })
}

interface Pair {
  readonly name: string
  readonly there: NamedCell
  readonly coming: NamedCell
  readonly clashes: boolean
  readonly why: string | undefined
}

function pairsOf(sheet: Sheet, cells: readonly Cell[]): Pair[] {
  const template = sheet.trial(cells)
  const own = cellsNamed(sheet.cells)
  return [...cellsNamed(cells).values()].flatMap((coming): Pair[] => {
    const { name } = coming
    const there = own.get(name)
    if (!there) return []
    const why = misfit(there, coming, { there: typeIn(sheet, name), coming: typeIn(template, name) })
    return [{ name, there, coming, why, clashes: why !== undefined || !VOCABULARY.has(name) }]
  })
}

interface JoinContext {
  /** Givens that cells of the sheet set: they stay givens. */
  readonly setGivens: ReadonlySet<string>
  readonly namedCells: ReadonlyMap<string, NamedCell>
}

function waysToJoin(
  sheet: Sheet,
  there: NamedCell,
  coming: NamedCell,
  { setGivens, namedCells }: JoinContext,
): readonly Resolution[] {
  if (there.kind !== 'given' || coming.kind !== 'result') return ['keep']
  if (setGivens.has(there.name) || wouldCycle(there.name, coming.formula, namedCells)) return ['keep']
  if (there.value.trim() === '') return ['computed', 'keep']
  return asMeasured(sheet, there, coming) === undefined ? ['keep', 'computed'] : ['measured', 'computed', 'keep']
}

/** Names no cell may take: those of cells, and of columns, which hide it in the formulas of a row. */
function namesTaken(cells: readonly Cell[]): Set<string> {
  return new Set([
    ...cells.flatMap((cell) => (isNamed(cell) ? [cell.name] : [])),
    ...cells.flatMap((cell) => (cell.kind === 'table' ? cell.columns.map(({ name }) => name) : [])),
  ])
}

function freeAmong(name: string, taken: Set<string>): string {
  const free = freeNameBeside(name, taken)
  taken.add(free)
  return free
}

/** The cells that come, with their new names, followed wherever they are used. */
function withNewNames(cells: readonly Cell[], newNames: ReadonlyMap<string, string>): readonly Cell[] {
  if (newNames.size === 0) return cells
  return cells.map((cell): Cell => {
    const name = isNamed(cell) ? newNames.get(cell.name) : undefined
    return followNames(name === undefined ? cell : ({ ...cell, name } as Cell), newNames, cells)
  })
}

interface Comes {
  readonly parts: readonly Part[]
  /** The givens that give way, by their ids. */
  readonly replaced: ReadonlyMap<string, Given>
}

/** Leaves out what is there already, and what nothing reads once that is left out. */
function whatComes(
  there: readonly Cell[],
  coming: readonly Cell[],
  meetings: readonly NameClash[],
  of: IncomingSection,
): Comes {
  const ways = new Map(meetings.map((one) => [one.coming.id, one]))
  const replaced = new Map<string, Given>()
  const kept = coming.flatMap((cell): Cell[] => {
    const meeting = ways.get(cell.id)
    if (!meeting || meeting.way === 'both') return [cell]
    if (meeting.way === 'keep') return []
    const given = meeting.there as Given
    replaced.set(given.id, given)
    return [inPlaceOf(given, cell as Result, meeting.measured)]
  })
  const left = there.filter(({ id }) => !replaced.has(id))
  const needed = withoutIdle(kept, coming, left)
  const cells = tidied(needed, left)
  return { parts: partsWorth(cells, coming, of), replaced }
}

/** A result in the place of a given, whose value goes on as measured. */
function inPlaceOf(given: Given, result: Result, measured: string | undefined): Result {
  const measure = result.measure ?? given.hint
  const stand = result.stand === true || given.stand === true
  const { more_exact: _, ...shown } = result
  return {
    ...(measured === undefined ? result : { ...shown, measured }),
    ...(measure === undefined ? {} : { measure }),
    ...(stand ? { stand } : {}),
  } as Result
}

/** Without the givens whose only readers are left out: nobody is asked for what nothing uses. */
function withoutIdle(kept: readonly Cell[], coming: readonly Cell[], there: readonly Cell[]): readonly Cell[] {
  const read = (cells: readonly Cell[]): Set<string> => new Set(cells.flatMap((cell) => [...readBy(cell)]))
  const before = read(coming)
  const now = read([...kept, ...there])
  return kept.filter((cell) => cell.kind !== 'given' || !before.has(cell.name) || now.has(cell.name))
}

/** The sections with anything in them; one that was empty in the template stays. */
function partsWorth(cells: readonly Cell[], coming: readonly Cell[], { title }: IncomingSection): Part[] {
  const empty = new Set(
    partsOf(coming).flatMap((part) => (part.heading && part.cells.length === 0 ? part.heading.id : [])),
  )
  const parts = partsOf(cells).filter((part) => part.cells.length > 0 || (part.heading && empty.has(part.heading.id)))
  const [first] = parts
  if (!first || first.heading) return parts
  const heading: Heading = { kind: 'note', id: '', role: 'heading', text: title }
  return [{ ...first, heading }, ...parts.slice(1)]
}

function headingOf({ heading }: Part, { key }: IncomingSection, stage: Stage | undefined, freshId: () => string): Cell {
  const { folded: _, ...shown } = heading as Heading
  return { ...shown, id: freshId(), template: key, ...(stage === undefined ? {} : { stage }) }
}
