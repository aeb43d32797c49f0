import type { Stage } from '../format/format.ts'
import type { Advice, Cell } from '../schema/document.ts'

/** What a part decides: in the order of a sheet's sections. */
export interface Role {
  readonly role: string
  /** The section's title where no part fills the role and something of it is asked. */
  readonly title: string
  readonly stage: Stage
  /** Each set-up of a sheet has this role for itself; the others are shared by all set-ups. */
  readonly in_set_up?: boolean
  /** It counts what all set-ups give together, so its checks are judged once. */
  readonly over_set_ups?: boolean
}

/** A published name: who owns it, and how it is asked, derived or left implicit where no part provides it. */
export interface PublishedName {
  readonly role: string
  /** As a given's, or `check`. */
  readonly entry?: string
  readonly unit?: string
  readonly label?: string
  readonly hint?: string
  readonly options?: readonly string[]
  readonly least?: string
  readonly most?: string
  readonly whole?: boolean
  readonly more_exact?: boolean
  readonly stand?: boolean
  readonly fixed?: boolean
  readonly sort?: string
  readonly fills?: Readonly<Record<string, string>>
  /** The constant of the meter for light on the original, C, or off it, K: readings are converted by it. */
  readonly converts?: 'C' | 'K'
  readonly means?: string
  /** Filled in by reading an instrument or a picture, or by counting: never from an example. */
  readonly reading?: boolean
  /** For a reading: the settings that decide what is read, by the names that `settings` has for them. */
  readonly read_under?: readonly string[]
  /** A habit of the trade. */
  readonly usual?: string
  readonly example?: string
  /** Put in the place of the name in formulas where no part provides it; nothing is shown. */
  readonly inline?: string
  /** The formula of the result where no part provides it. */
  readonly derive?: string
  /** Derived only where a part provides one of these; asked otherwise. */
  readonly unless_asked?: readonly string[]
  /**
   * How the set-ups of a sheet are put together for the roles they share: results added up, or the greatest of them where
   * they are never on at the same time; implicit texts added up.
   */
  readonly over_set_ups?: 'sum' | 'greatest'
  /** Of the equipment or the room, which all set-ups of a sheet share, though their role does not: asked once. */
  readonly in_every_set_up?: boolean
  /** Names of older sheets that mean this one. */
  readonly aliases?: readonly string[]
  readonly advice?: Advice
}

/** Where a given goes within its part's section, with what the part says otherwise about it. */
export interface GivenPlace {
  readonly given: string
  readonly [key: string]: unknown
}

/** A cell of a part, before it has an id. */
export interface PartCell {
  readonly kind: Cell['kind']
  readonly name?: string
  /** Only in the sheet where something reads it. */
  readonly if_read?: boolean
  /** Only in the sheet where all it reads is there without being asked for it. */
  readonly if_provided?: boolean
  /** Inputs of a drawing that are left out where nothing provides them. */
  readonly optional?: readonly string[]
  /** Only where the sheet does not have this name. */
  readonly unless?: string
  /** Only where this name is a given. */
  readonly needs_given?: string
  /**
   * Only where no part fills the role `no`, or one fills the role `or`: lamps are compared with flash where either may
   * be chosen.
   */
  readonly only_if?: { readonly no: string; readonly or: string }
  /** For a frame: what its picture is taken under, as `read_under` of a name. */
  readonly settings?: readonly string[]
  /** For a drawing, a range or a run: the last part of its id. */
  readonly key?: string
  readonly [key: string]: unknown
}

/** A step at the stand, with its phase in the order of work. */
export interface PartStep {
  readonly phase: string
  readonly text: string
  readonly reading?: string
  /** The figures that are set at it. */
  readonly sets?: readonly string[]
}

export interface Part {
  readonly id: string
  readonly role: string
  readonly title: string
  readonly about: string
  /** What it is called where it is offered. */
  readonly offer: string
  /** What one does by adding it, with the names of its results in braces: `Take it in {frames} frames`. */
  readonly press?: string
  readonly stage: Stage
  /** If a set has several parts for one role, the highest fills it. */
  readonly rank: number
  /** Roles it decides as well. */
  readonly claims?: readonly string[]
  /** Checks of the part it takes the place of, each with its own checks that judge the same. */
  readonly answers?: Readonly<Record<string, readonly string[]>>
  /** Parts beside which it is not offered: a volume is not hung on a wall. */
  readonly never_with?: readonly string[]
  /** Parts it cannot do without. */
  readonly needs?: readonly string[]
  /** The part that a job brings in its place where the sheet has another role already: lots ask for sizes of their own. */
  readonly instead?: { readonly beside: string; readonly part: string }
  readonly usual?: Readonly<Record<string, string>>
  readonly example?: Readonly<Record<string, string>>
  readonly inline?: Readonly<Record<string, string>>
  /** As `inline`, where a later set-up has chosen the part for itself, and not taken it over from the first. */
  readonly inline_where_chosen?: Readonly<Record<string, string>>
  /** Roles that a later set-up goes without that has chosen the part for itself. */
  readonly leaves_where_chosen?: readonly string[]
  /** What is said otherwise about givens of other roles. */
  readonly labels?: Readonly<Record<string, Readonly<Record<string, unknown>>>>
  readonly example_rows?: Readonly<Record<string, readonly (readonly string[])[]>>
  readonly cells: readonly (PartCell | GivenPlace)[]
  readonly steps: readonly PartStep[]
}

/** The one drawing of a set-up: an input is drawn where the sheet has all it reads. */
export interface SetUpDrawing {
  readonly title: string
  readonly needs: readonly string[]
  readonly any: readonly string[]
  readonly from: Readonly<Record<string, string>>
  readonly moves: readonly string[]
}

/** What there may be to photograph, and the parts a sheet for it starts from. */
export interface OriginalKind {
  readonly kind: string
  readonly title: string
  readonly about: string
  readonly parts: readonly string[]
  readonly lead?: string
}

/** A part that is chosen where a check fails without it, a given has a value, or a result beside a cell is over a figure. */
export interface ChoosingRule {
  readonly part: string
  /** Parts that come with it. */
  readonly with?: readonly string[]
  readonly where:
    | { readonly fails: string }
    | { readonly given: string; readonly is: string }
    | { readonly result: string; readonly over: number; readonly beside: string }
  /** Why, with the names of results and givens in braces. */
  readonly because: string
}

/** How a sheet is composed from a few answers. */
export interface Choosing {
  /** The first is taken where nothing is answered. */
  readonly kinds: readonly OriginalKind[]
  /** The part that takes the place of the camera where a phone is all there is. */
  readonly phone: string
  /** The part that counts several originals alike. */
  readonly several: string
  /** The givens that are asked, in order, as far as the sheet has them. */
  readonly asks: readonly string[]
  /** Judged in this order, each on the sheet with what the ones before it chose. */
  readonly rules: readonly ChoosingRule[]
  /** The results that are shown while one answers, as far as the sheet has them. */
  readonly figures: readonly string[]
}

/** A set-up that can follow the first: what it is called, and the parts it has in the place of the first one’s. */
export interface OfferedSetUp {
  readonly prefix: string
  readonly title: string
  readonly about: string
  readonly parts: readonly string[]
}

export interface PartLibrary {
  readonly roles: readonly Role[]
  readonly phases: readonly string[]
  /** For each thing that is set, the names that say how. */
  readonly settings: Readonly<Record<string, readonly string[]>>
  readonly drawing: SetUpDrawing
  readonly choosing: Choosing
  readonly setUps: readonly OfferedSetUp[]
  readonly names: ReadonlyMap<string, PublishedName>
  readonly parts: ReadonlyMap<string, Part>
  /** From each older name to those that took its place. */
  readonly aliases: ReadonlyMap<string, readonly string[]>
}

/** Whether a cell of a part only says where a given goes. */
export const isPlace = (cell: PartCell | GivenPlace): cell is GivenPlace => 'given' in cell

interface NamesFile {
  readonly names: Readonly<Record<string, PublishedName>>
}

interface RolesFile {
  readonly roles: readonly Role[]
  readonly phases: readonly string[]
  readonly settings: Readonly<Record<string, readonly string[]>>
  readonly drawing: SetUpDrawing
  readonly choosing: Choosing
  readonly set_ups: readonly OfferedSetUp[]
}

/** The files of `templates/parts`, read. */
export interface PartFiles {
  readonly roles: RolesFile
  readonly names: NamesFile
  readonly parts: Readonly<Record<string, Omit<Part, 'id'>>>
}

/** Puts the files of `templates/parts` together; each part's id is its file's name. */
export function partLibrary(
  roles: RolesFile,
  names: NamesFile,
  parts: Readonly<Record<string, Omit<Part, 'id'>>>,
): PartLibrary {
  const aliases = new Map<string, string[]>()
  for (const [name, { aliases: older = [] }] of Object.entries(names.names))
    for (const alias of older) aliases.set(alias, [...(aliases.get(alias) ?? []), name])
  return {
    roles: roles.roles,
    phases: roles.phases,
    settings: roles.settings,
    drawing: roles.drawing,
    choosing: roles.choosing,
    setUps: roles.set_ups,
    names: new Map(Object.entries(names.names)),
    parts: new Map(Object.entries(parts).map(([id, part]) => [id, { ...part, id }])),
    aliases,
  }
}

/**
 * The names of a sheet that an older name means, among those the sheet has: `raking_lean` is what all set-ups share now,
 * and `raking_now` the `raking_illuminance` of the set-up.
 */
export function namesFor(
  { names, aliases }: PartLibrary,
  older: string,
  has: (name: string) => boolean,
  prefixes: readonly string[] = [],
): readonly string[] {
  const ofSetUps = prefixes.flatMap((prefix) => {
    if (!older.startsWith(`${prefix}_`)) return []
    const name = older.slice(prefix.length + 1)
    const now = [...(names.get(name)?.in_every_set_up ? [name] : []), ...(aliases.get(name) ?? [])]
    return now.map((one) => (names.get(one)?.in_every_set_up ? one : `${prefix}_${one}`))
  })
  return [...(aliases.get(older) ?? []), ...ofSetUps].filter(has)
}
