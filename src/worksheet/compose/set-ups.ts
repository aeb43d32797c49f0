import { renameAllIn } from '../../language/index.ts'
import { isHeading, isNamed } from '../document/names.ts'
import { followNames } from '../renaming/follow-names.ts'
import type { Cell } from '../schema/document.ts'
import { namesRead, withTexts } from './cell-names.ts'
import { defined, type Gathering } from './gather.ts'
import { readBy } from './join-names.ts'
import { isPlace, type PartCell, type PartLibrary } from './part-library.ts'
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
  /** What all set-ups share and this is the first to need: asked in its sections, under its own name. */
  readonly shared: ReadonlySet<string>
  /** What is shared and asked before. */
  readonly taken: ReadonlySet<string>
}

/** The sections of a later set-up: those of the roles it has for itself, and the checks of others that it is judged by. */
export function laterSections(
  filling: Filling,
  { prefix, title, gathering, names, shared }: LaterSetUp,
  alsoThere: ReadonlySet<string>,
): Sections {
  const { library } = filling
  const givens = new Map(
    [...names, ...[...shared].map((name) => [name, name] as const)].flatMap(([name, own]): [string, Filled][] => {
      const filled = filling.givens.get(own) ?? filling.givens.get(name)
      return filled ? [[name, filled]] : []
    }),
  )
  const judging = judgingRoles(library, gathering)
  const sections = sectionsOf({ ...filling, givens }, gathering, {
    only: ({ role, in_set_up }) => in_set_up === true || judging.has(role),
    alsoThere: new Set([...alsoThere].filter((name) => !isInSetUp(library, library.names.get(name)?.role ?? ''))),
  })
  const isOwn = (name: string): boolean => names.has(name) || shared.has(name)
  const own = sections.cells.filter((cell) => !('name' in cell) || isOwn(cell.name as string))
  const said = new Set(own.map(({ id }) => id))
  const more = repeated(gathering, names).filter(({ id }) => !said.has(id))
  const cells = withRepeated(withoutLonely(withoutEmpty(own)), more)
  return {
    names: new Set([...names.values(), ...shared]),
    cells: cells.map((cell): Cell => {
      const name = isNamed(cell) ? names.get(cell.name) : undefined
      const heading = isHeading(cell) ? { text: `${title}: ${cell.text}`, set_up: prefix } : {}
      return {
        ...followNames(cell, names, cells),
        ...(name === undefined ? {} : { name }),
        ...heading,
        id: shared.has(cell.id) ? cell.id : prefixedName(prefix, cell.id),
      } as Cell
    }),
  }
}

/** The shared roles with a check that this set-up is judged by. */
const judgingRoles = (library: PartLibrary, { sections }: Gathering): ReadonlySet<string> =>
  new Set(
    [...sections].flatMap(([{ role }, cells]) =>
      !isInSetUp(library, role) && cells.some((cell) => !isPlace(cell) && cell.kind === 'check') ? role : [],
    ),
  )

/** What a set-up has for itself, by name: what its parts compute, and published names of their roles. */
function namesOfRoles(library: PartLibrary, { parts, names }: Gathering): ReadonlySet<string> {
  const ofParts = parts.flatMap(({ role, cells }) =>
    isInSetUp(library, role) ? cells.flatMap((cell) => (isPlace(cell) ? [] : (cell.name ?? []))) : [],
  )
  const published = [...library.names].flatMap(([name, { role, in_every_set_up }]) =>
    isInSetUp(library, role) && !in_every_set_up ? name : [],
  )
  // Nothing reads a piece of kit by name: it fills in other givens.
  const isThere = (name: string): boolean => names.has(name) || library.names.get(name)?.entry === 'kit'
  return new Set([...ofParts, ...published].filter(isThere))
}

/** The cells of parts that a gathering has, and those that are derived. */
const cellsOf = ({ sections, derived }: Gathering): readonly PartCell[] => [
  ...[...sections.values()].flat().filter((cell): cell is PartCell => !isPlace(cell)),
  ...derived.values(),
]

/**
 * The results and checks of shared roles, by name, that depend on names a set-up has for itself, other than by what
 * is put together over the set-ups.
 */
function hanging(library: PartLibrary, gathering: Gathering, own: ReadonlySet<string>): ReadonlyMap<string, PartCell> {
  const shared = new Map(
    cellsOf(gathering).flatMap((cell): [string, PartCell][] =>
      (cell.kind === 'result' || cell.kind === 'check') && cell.name !== undefined && !own.has(cell.name)
        ? [[cell.name, cell]]
        : [],
    ),
  )
  const hangs = (name: string, seen: ReadonlySet<string> = new Set()): boolean => {
    if (own.has(name)) return library.names.get(name)?.over_set_ups === undefined
    const cell = seen.has(name) ? undefined : shared.get(name)
    return cell !== undefined && namesRead(cell).some((one) => hangs(one, new Set([...seen, name])))
  }
  return new Map([...shared].filter(([name]) => hangs(name)))
}

/**
 * The checks of shared roles that depend on what each set-up has for itself, such as whether a frame shades the
 * picture: each is judged in every set-up.
 */
export function judgedInEach(library: PartLibrary, gathering: Gathering): ReadonlySet<string> {
  const found = hanging(library, gathering, namesOfRoles(library, gathering))
  const counted = new Set(library.roles.flatMap(({ role, over_set_ups }) => (over_set_ups ? role : [])))
  const ofThose = new Set(
    gathering.parts.flatMap(({ role, cells }) => (counted.has(role) ? cells.map((cell) => cell.name) : [])),
  )
  return new Set([...found].flatMap(([name, { kind }]) => (kind === 'check' && !ofThose.has(name) ? name : [])))
}

/**
 * The names of a gathering that belong to the set-up, each with what it is called in the sheet: those of the roles it has
 * for itself, and of shared roles the results and checks that depend on it and that its own cells read or that it is judged
 * by, such as the finest pattern on the sensor, which depends on the magnification.
 */
export function ownNames(library: PartLibrary, prefix: string, gathering: Gathering): ReadonlyMap<string, string> {
  const own = namesOfRoles(library, gathering)
  const hang = hanging(library, gathering, own)
  const found = new Set<string>()
  const follow = (cell: PartCell): void => {
    for (const name of namesRead(cell)) {
      const read = hang.get(name)
      if (!read || found.has(name)) continue
      found.add(name)
      follow(read)
    }
  }
  for (const part of gathering.parts)
    if (isInSetUp(library, part.role))
      for (const cell of gathering.sections.get(part) ?? []) if (!isPlace(cell)) follow(cell)
  for (const [name, cell] of gathering.derived) if (own.has(name)) follow(cell)
  for (const [name, cell] of hang)
    if (cell.kind === 'check') {
      found.add(name)
      follow(cell)
    }
  return new Map([...own, ...found].map((name) => [name, prefixedName(prefix, name)] as const))
}

/** Of equipment and room, what a set-up needs and nothing before it does, with the kit that fills it in. */
export function sharedFrom(
  { names }: PartLibrary,
  gathering: Gathering,
  isThere: (name: string) => boolean,
): ReadonlySet<string> {
  const shared = [...names].flatMap(([name, { in_every_set_up }]) => (in_every_set_up && !isThere(name) ? name : []))
  const needed = new Set(shared.filter((name) => gathering.names.has(name)))
  // A piece is chosen where the first of its figures is asked.
  const kit = shared.filter((name) => {
    const fills = Object.values(names.get(name)?.fills ?? {})
    return fills.some((one) => needed.has(one)) && !fills.some(isThere)
  })
  return new Set([...needed, ...kit])
}

/** A section all of whose givens are asked in another set-up has nothing left to say. */
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
    const coming = sections.filter(isLonely).flatMap((lonely) => {
      const readers = lonely.slice(1).map((cell) => readerOf(cell, sections))
      const first = readers.find((one) => one !== undefined)
      return lonely.slice(1).filter((_, at) => (readers[at] ?? first) === section)
    })
    const at = section.findLastIndex(({ kind }) => kind === 'given') + 1
    return at === 0 ? [...section, ...coming] : [...section.slice(0, at), ...coming, ...section.slice(at)]
  })
}

const isLonely = ([heading, ...givens]: readonly Cell[]): boolean =>
  isHeading(heading) && heading.part === undefined && givens.every(({ kind }) => kind === 'given')

const readerOf = (cell: Cell, sections: readonly Cell[][]): Cell[] | undefined =>
  isNamed(cell)
    ? sections.find((section) => !isLonely(section) && section.some((one) => readBy(one).has(cell.name)))
    : undefined

/** The results that a later set-up has for itself, also those of shared roles; its checks are in sections of their own. */
const repeated = (gathering: Gathering, names: ReadonlyMap<string, string>): readonly Cell[] =>
  cellsOf(gathering).flatMap((cell): Cell[] =>
    cell.kind === 'result' && cell.name !== undefined && names.has(cell.name)
      ? [{ ...shown(cell), id: cell.name } as unknown as Cell]
      : [],
  )

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
    [...library.names].flatMap(([name, { over_set_ups }]): [string, string][] => {
      if (over_set_ups !== 'sum') return []
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
    if (typeof cell.fills_role === 'string') role = cell.fills_role
    if (!isInSetUp(library, role)) return [followNames(cell, wholes, cells)]
    const whole = isNamed(cell) ? wholes.get(cell.name) : undefined
    if (whole === undefined) return [cell]
    const { name, unit, label = name } = cell as { name: string; unit?: string; label?: string }
    const isSum = library.names.get(name)?.over_set_ups === 'sum'
    const each = [name, ...later.flatMap((setUp) => setUp.names.get(name) ?? [])]
    const formula = isSum || each.length === 1 ? each.join(' + ') : `max(${each.join(', ')})`
    const title = isSum ? words.allSetUps(label) : words.mostOfSetUps(label)
    return [cell, defined({ kind: 'result', id: whole, name: whole, label: title, unit, formula }) as Cell]
  })
  const own = summed.findIndex((cell) => typeof cell.fills_role === 'string' && isInSetUp(library, cell.fills_role))
  return own < 0 ? [...summed, ...more] : [...summed.slice(0, own), ...withRepeated(summed.slice(own), more)]
}
