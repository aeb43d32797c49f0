import { renameAllIn } from '../../language/index.ts'
import { isHeading } from '../document/names.ts'
import { followNames } from '../renaming/follow-names.ts'
import type { Cell } from '../schema/document.ts'
import { namesRead, withTexts } from './cell-names.ts'
import { defined, type Gathering } from './gather.ts'
import { readBy } from './join-names.ts'
import { isPlace, type Part, type PartCell, type PartLibrary } from './part-library.ts'
import { type Filled, type Filling, type Sections, sectionsOf, shown } from './sections.ts'
import * as words from './words.ts'

/** What distinguishes a set-up from the first: a prefix of its names, and its title. */
export interface SetUpName {
  /** Goes before each of its names, with an underscore: `raking` makes `raking_aperture`. */
  readonly prefix: string
  readonly title: string
}

/** Whether each set-up has a role for itself. */
export const isInSetUp = (library: PartLibrary, role: string): boolean =>
  library.roles.some((one) => one.role === role && one.in_set_up === true)

/** What a role's name is called in a later set-up. */
export const prefixedName = (prefix: string, name: string): string => `${prefix}_${name}`

/** A later set-up with what its parts give, and what its names are called in the sheet. */
export interface LaterSetUp extends SetUpName {
  readonly gathering: Gathering
  readonly names: ReadonlyMap<string, string>
}

/** The sections of a later set-up: those of the roles it has for itself, under its prefix. */
export function laterSections(
  filling: Filling,
  { prefix, title, gathering, names }: LaterSetUp,
  alsoThere: ReadonlySet<string>,
): Sections {
  const { library } = filling
  const givens = new Map(
    [...names].flatMap(([name, own]): [string, Filled][] => {
      const filled = filling.givens.get(own) ?? filling.givens.get(name)
      return filled ? [[name, filled]] : []
    }),
  )
  const sections = sectionsOf({ ...filling, givens }, gathering, {
    only: ({ in_set_up }) => in_set_up === true,
    alsoThere: new Set([...alsoThere].filter((name) => !isInSetUp(library, library.names.get(name)?.role ?? ''))),
  })
  const own = sections.cells.filter((cell) => cell.kind !== 'given' || names.has(cell.name))
  const cells = withRepeated(withoutLonely(withoutEmpty(own)), repeated(library, gathering, names))
  return {
    names: new Set(names.values()),
    cells: cells.map((cell): Cell => {
      const name = 'name' in cell && typeof cell.name === 'string' ? names.get(cell.name) : undefined
      const heading = isHeading(cell) ? { text: `${title}: ${cell.text}`, set_up: prefix } : {}
      return {
        ...followNames(cell, names, cells),
        ...(name === undefined ? {} : { name }),
        ...heading,
        id: prefixedName(prefix, cell.id),
      } as Cell
    }),
  }
}

/**
 * The names of a gathering that belong to the set-up, each with what it is called in the sheet: those of the roles it has
 * for itself, and results of shared roles that its own cells read and that hang on it, such as the finest pattern on the
 * sensor, which hangs on the magnification.
 */
export function ownNames(library: PartLibrary, prefix: string, gathering: Gathering): ReadonlyMap<string, string> {
  const parts = gathering.parts.filter(({ role }) => isInSetUp(library, role))
  const cellsOf = (list: readonly Part[]): readonly PartCell[] =>
    list.flatMap((part) => (gathering.sections.get(part) ?? []).filter((cell): cell is PartCell => !isPlace(cell)))
  const ofParts = parts.flatMap(({ cells }) =>
    cells.flatMap((cell) => (!isPlace(cell) && cell.name !== undefined ? [cell.name] : [])),
  )
  const published = [...library.names].flatMap(([name, { role, in_every_set_up }]) =>
    isInSetUp(library, role) && !in_every_set_up ? name : [],
  )
  // Nothing reads a piece of kit by name: it fills in other givens.
  const isThere = (name: string): boolean => gathering.names.has(name) || library.names.get(name)?.entry === 'kit'
  const own = new Set([...ofParts, ...published].filter(isThere))
  const shared = new Map(
    [
      ...cellsOf(gathering.parts.filter(({ role }) => !isInSetUp(library, role))),
      ...[...gathering.derived.values()],
    ].flatMap((cell): [string, PartCell][] =>
      cell.kind === 'result' && cell.name !== undefined && !own.has(cell.name) ? [[cell.name, cell]] : [],
    ),
  )
  const hangsOn = (name: string, seen: ReadonlySet<string> = new Set()): boolean => {
    if (own.has(name)) return true
    const cell = seen.has(name) ? undefined : shared.get(name)
    return cell !== undefined && namesRead(cell).some((one) => hangsOn(one, new Set([...seen, name])))
  }
  const found = new Set<string>()
  const follow = (cell: PartCell): void => {
    for (const name of namesRead(cell)) {
      const read = shared.get(name)
      if (!read || found.has(name) || !hangsOn(name)) continue
      found.add(name)
      follow(read)
    }
  }
  for (const cell of cellsOf(parts)) follow(cell)
  for (const [name, cell] of gathering.derived) if (own.has(name)) follow(cell)
  return new Map([...own, ...found].map((name) => [name, prefixedName(prefix, name)] as const))
}

/** A section all of whose givens are asked in the first set-up has nothing left to say. */
const withoutEmpty = (cells: readonly Cell[]): readonly Cell[] =>
  cells.filter((cell, at) => {
    const next = cells[at + 1]
    return !isHeading(cell) || (next !== undefined && !isHeading(next))
  })

/** A given that is alone under a heading goes to the first section that reads it. */
function withoutLonely(cells: readonly Cell[]): readonly Cell[] {
  const sections = cells.reduce<Cell[][]>((all, cell) => {
    if (isHeading(cell) || all.length === 0) all.push([cell])
    else all.at(-1)?.push(cell)
    return all
  }, [])
  return sections.flatMap((section) => {
    if (isLonely(section)) return section.slice(1).some((cell) => readerOf(cell, sections)) ? [] : section
    const coming = sections
      .filter(isLonely)
      .flatMap((lonely) =>
        lonely.slice(1).some((cell) => readerOf(cell, sections) === section) ? lonely.slice(1) : [],
      )
    const at = section.findLastIndex(({ kind }) => kind === 'given') + 1
    return at === 0 ? [...section, ...coming] : [...section.slice(0, at), ...coming, ...section.slice(at)]
  })
}

const isLonely = ([heading, ...givens]: readonly Cell[]): boolean =>
  isHeading(heading) && heading.part === undefined && givens.every(({ kind }) => kind === 'given')

const readerOf = (cell: Cell, sections: readonly Cell[][]): Cell[] | undefined =>
  'name' in cell && typeof cell.name === 'string'
    ? sections.find((section) => !isLonely(section) && section.some((one) => readBy(one).has(cell.name as string)))
    : undefined

/** The results and checks of shared roles that a later set-up has for itself as well. */
function repeated(library: PartLibrary, gathering: Gathering, names: ReadonlyMap<string, string>): readonly Cell[] {
  const ofParts = gathering.parts
    .filter(({ role }) => !isInSetUp(library, role))
    .flatMap((part) => gathering.sections.get(part) ?? [])
    .filter((cell): cell is PartCell => !isPlace(cell) && (cell.kind === 'result' || cell.kind === 'check'))
  const derived = [...gathering.derived].flatMap(([name, cell]) =>
    isInSetUp(library, library.names.get(name)?.role ?? '') ? [] : [cell],
  )
  return [...ofParts, ...derived].flatMap((cell): Cell[] =>
    cell.name !== undefined && names.has(cell.name) ? [{ ...shown(cell), id: cell.name } as unknown as Cell] : [],
  )
}

/** The cells of sections with others at the end of the first section. */
function withRepeated(cells: readonly Cell[], more: readonly Cell[]): readonly Cell[] {
  if (more.length === 0) return cells
  const next = cells.findIndex((cell, at) => at > 0 && isHeading(cell))
  const end = next < 0 ? cells.length : next
  const last = cells.slice(0, end).findLastIndex(({ kind }) => kind !== 'note') + 1
  return [...cells.slice(0, last), ...more, ...cells.slice(last)]
}

/** The names that are put together over the set-ups and that shared cells of the first read: results, and implicit texts. */
export function summedNamesOf(library: PartLibrary, { parts, names }: Gathering): ReadonlySet<string> {
  const read = new Set(
    parts
      .filter(({ role }) => !isInSetUp(library, role))
      .flatMap(({ cells }) => cells.flatMap((cell) => (isPlace(cell) ? [] : namesRead(cell)))),
  )
  return new Set(
    [...library.names].flatMap(([name, { inline, over_set_ups }]) =>
      over_set_ups !== undefined && (inline === undefined ? names : read).has(name) ? [name] : [],
    ),
  )
}

/** What is added up over the set-ups: implicit texts, and the names in them that later set-ups provide. */
export interface OverSetUps {
  readonly texts: ReadonlyMap<string, string>
  readonly elsewhere: ReadonlySet<string>
}

/**
 * The implicit names whose texts are added up over the set-ups, each with its sum: `frames + 1` for a set-up in tiles and
 * one in one frame. Each set-up’s text is in its own names.
 */
export function overSetUps(library: PartLibrary, first: Gathering, later: readonly LaterSetUp[]): OverSetUps {
  const texts = new Map(
    [...library.names].flatMap(([name, { inline, over_set_ups }]): [string, string][] => {
      if (inline === undefined || over_set_ups !== 'sum') return []
      const all = [
        first.texts.get(name),
        ...later.map(({ gathering, names }) => followText(gathering.texts.get(name), names)),
      ]
      return all.every((text) => text !== undefined) ? [[name, sumOf(all as string[])]] : []
    }),
  )
  return { texts, elsewhere: new Set(later.flatMap(({ names }) => [...names.values()])) }
}

const followText = (text: string | undefined, names: ReadonlyMap<string, string>): string | undefined =>
  text === undefined ? undefined : renameAllIn(text, names)

/** Texts added up, plain numbers at once. */
function sumOf(texts: readonly string[]): string {
  const numbers = texts.filter((text) => /^\d+$/.test(text))
  const others = texts.filter((text) => !/^\d+$/.test(text))
  const sum = numbers.reduce((all, text) => all + Number(text), 0)
  return [...others, ...(sum > 0 || others.length === 0 ? [`${sum}`] : [])].join(' + ')
}

/** The results that show what is added up without being a cell of any set-up, such as frames: at the end of the first section. */
export function sumCells(library: PartLibrary, { texts }: OverSetUps): readonly Cell[] {
  return [...texts].flatMap(([name, formula]): Cell[] => {
    const { label, unit } = library.names.get(name) ?? {}
    if (label === undefined) return []
    const sum = `all_${name}`
    return [defined({ kind: 'result', id: sum, name: sum, label: words.allSetUps(label), unit, formula }) as Cell]
  })
}

/** A run that plans the originals once for each set-up: with what differs in a later one. */
export function withRunsOf(cell: Cell, later: readonly LaterSetUp[], cells: readonly Cell[]): Cell {
  if (cell.kind !== 'run' || later.length === 0) return cell
  return {
    ...cell,
    set_ups: later.map(({ title, gathering, names }) => {
      const own = gathering.parts.flatMap(({ cells }) => cells).find((one) => !isPlace(one) && one.kind === 'run')
      const put = own && { ...withTexts(own as PartCell, gathering.texts), id: 'run' }
      const { from = {} } = put
        ? (followNames(put as unknown as Cell, names, cells) as { from?: Record<string, string> })
        : {}
      return { title, from: Object.fromEntries(Object.entries(from).filter(([key, text]) => cell.from[key] !== text)) }
    }),
  }
}

/** The names that are put together over the set-ups for the roles they share: from each to the name of the whole. */
const wholeNames = (library: PartLibrary, names: ReadonlySet<string>): ReadonlyMap<string, string> =>
  new Map(
    [...library.names].flatMap(([name, { over_set_ups }]): [string, string][] =>
      over_set_ups !== undefined && names.has(name) ? [[name, `all_${name}`]] : [],
    ),
  )

/**
 * Shared cells read the sum over the set-ups, or the greatest of them, in the place of the first one's figure; more sums
 * follow the first own section.
 */
export function withSums(
  library: PartLibrary,
  { cells, names }: Sections,
  later: readonly LaterSetUp[],
  more: readonly Cell[],
): readonly Cell[] {
  const wholes = wholeNames(library, names)
  if (later.length === 0) return cells
  let role = ''
  const summed = cells.flatMap((cell): Cell[] => {
    if (cell.kind === 'note' && typeof cell.fills_role === 'string') role = cell.fills_role
    if (!isInSetUp(library, role)) return [followNames(cell, wholes, cells)]
    const whole = 'name' in cell && typeof cell.name === 'string' ? wholes.get(cell.name) : undefined
    if (whole === undefined) return [cell]
    const { name, unit, label = name } = cell as { name: string; unit?: string; label?: string }
    const isSum = library.names.get(name)?.over_set_ups === 'sum'
    const each = [name, ...later.flatMap((setUp) => setUp.names.get(name) ?? [])]
    const formula = isSum || each.length === 1 ? each.join(' + ') : `max(${each.join(', ')})`
    const title = isSum ? words.allSetUps(label) : words.mostOfSetUps(label)
    return [cell, defined({ kind: 'result', id: whole, name: whole, label: title, unit, formula }) as Cell]
  })
  const own = summed.findIndex(
    (cell) => isHeading(cell) && typeof cell.fills_role === 'string' && isInSetUp(library, cell.fills_role),
  )
  return own < 0 ? [...summed, ...more] : [...summed.slice(0, own), ...withRepeated(summed.slice(own), more)]
}
