import { isHeading } from '../document/names.ts'
import { followNames } from '../renaming/follow-names.ts'
import type { Cell } from '../schema/document.ts'
import { defined, type Gathering } from './gather.ts'
import { isPlace, type PartLibrary } from './part-library.ts'
import { type Filled, type Filling, type Sections, sectionsOf } from './sections.ts'
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

/** The sections of a later set-up: those of the roles it has for itself, under its prefix. */
export function laterSections(filling: Filling, { prefix, title }: SetUpName, gathering: Gathering): Sections {
  const { library } = filling
  const names = new Map([...ownNames(library, gathering)].map((name) => [name, prefixedName(prefix, name)] as const))
  const givens = new Map(
    [...names].flatMap(([name, own]): [string, Filled][] => {
      const filled = filling.givens.get(own) ?? filling.givens.get(name)
      return filled ? [[name, filled]] : []
    }),
  )
  const { cells } = sectionsOf({ ...filling, givens }, gathering, { only: ({ in_set_up }) => in_set_up === true })
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

/** The names of a gathering that belong to the set-up, and not to what the set-ups share. */
function ownNames(library: PartLibrary, gathering: Gathering): ReadonlySet<string> {
  const ofParts = gathering.parts
    .filter(({ role }) => isInSetUp(library, role))
    .flatMap(({ cells }) => cells.flatMap((cell) => (!isPlace(cell) && 'name' in cell ? [cell.name as string] : [])))
  const published = [...library.names].flatMap(([name, { role }]) => (isInSetUp(library, role) ? name : []))
  // Nothing reads a piece of kit by name: it fills in other givens.
  const isThere = (name: string): boolean => gathering.names.has(name) || library.names.get(name)?.entry === 'kit'
  return new Set([...ofParts, ...published].filter(isThere))
}

/** The names that are added up over the set-ups for the roles they share: from each to the name of its sum. */
const summedNames = (library: PartLibrary, names: ReadonlySet<string>): ReadonlyMap<string, string> =>
  new Map(
    [...library.names].flatMap(([name, { over_set_ups }]): [string, string][] =>
      over_set_ups === 'sum' && names.has(name) ? [[name, `all_${name}`]] : [],
    ),
  )

/** Shared cells read the sum over the set-ups in the place of the first one's figure. */
export function withSums(
  library: PartLibrary,
  { cells, names }: Sections,
  prefixes: readonly string[],
): readonly Cell[] {
  const sums = summedNames(library, names)
  if (prefixes.length === 0 || sums.size === 0) return cells
  let role = ''
  return cells.flatMap((cell): Cell[] => {
    if (cell.kind === 'note' && typeof cell.fills_role === 'string') role = cell.fills_role
    if (!isInSetUp(library, role)) return [followNames(cell, sums, cells)]
    const sum = 'name' in cell && typeof cell.name === 'string' ? sums.get(cell.name) : undefined
    if (sum === undefined) return [cell]
    const { name, unit, label } = cell as { name: string; unit?: string; label?: string }
    const formula = [name, ...prefixes.map((prefix) => prefixedName(prefix, name))].join(' + ')
    return [
      cell,
      defined({ kind: 'result', id: sum, name: sum, label: words.allSetUps(label ?? name), unit, formula }) as Cell,
    ]
  })
}
