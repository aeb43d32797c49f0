import { rowsMark } from '../document/rows-mark.ts'
import type { Advice, Cell, GivenSource } from '../schema/document.ts'
import { defined, type Gathering } from './gather.ts'
import { isPlace, type Part, type PartCell, type PartLibrary, type PublishedName, type Role } from './part-library.ts'
import { setUpDrawing } from './set-up-drawing.ts'

export interface Filled {
  readonly value: string
  readonly from: GivenSource
  /** A piece of kit's own figures. */
  readonly piece?: Readonly<Record<string, string>>
}

export interface FilledRows {
  readonly rows: readonly (readonly string[])[]
  readonly from: GivenSource
}

/** What a sheet is filled in with. */
export interface Filling {
  readonly library: PartLibrary
  readonly givens: ReadonlyMap<string, Filled>
  /** The rows of tables, by name. */
  readonly rows: ReadonlyMap<string, FilledRows>
  /** Whether what is not filled in takes the example of the part that owns it. */
  readonly examples: boolean
}

export interface Sections {
  readonly cells: readonly Cell[]
  readonly names: ReadonlySet<string>
}

/** Which roles' sections are made, and what a drawing of the set-up has besides what it gathers. */
export interface SectionOptions {
  readonly only?: (role: Role) => boolean
  readonly alsoThere?: ReadonlySet<string>
}

/** The roles whose section shows the set-up drawing: the first of them that the sheet has. */
const DRAWN_WITH: ReadonlySet<string> = new Set(['framing', 'closeness', 'light'])

/** The cells of every role, in the order of roles, each as a section with its heading. */
export function sectionsOf(
  filling: Filling,
  gathering: Gathering,
  { only, alsoThere = new Set() }: SectionOptions = {},
): Sections {
  const { library } = filling
  const { names } = gathering
  const drawing = setUpDrawing(library, gathering, new Set([...names, ...alsoThere]))
  const placed = placedNames(library, gathering, only)
  const cells: Cell[] = []
  let drawn = false
  for (const role of library.roles) {
    if (only && !only(role)) continue
    const section = sectionOf(filling, gathering, role, placed)
    if (section.length === 0) continue
    cells.push(...section)
    if (!drawing || drawn || !DRAWN_WITH.has(role.role)) continue
    cells.splice(cells.length - trailingNotes(section), 0, drawing)
    drawn = true
  }
  if (drawing && !drawn) cells.push(drawing)
  return { cells, names }
}

function trailingNotes(section: readonly Cell[]): number {
  const from = section.findLastIndex(({ kind }) => kind !== 'note')
  return section.length - 1 - from
}

function sectionOf(filling: Filling, gathering: Gathering, role: Role, placed: ReadonlySet<string>): Cell[] {
  const { library } = filling
  const { asked, derived } = gathering
  const part = gathering.parts.find((one) => one.role === role.role)
  const body = (part ? (gathering.sections.get(part) ?? []) : []).flatMap((cell): PartCell[] => {
    if (!isPlace(cell)) return [completed(filling, gathering, shown(cell))]
    const known = library.names.get(cell.given)
    if (!known || !part || !isPlacedBy(library, part, cell.given)) return []
    const { given: name, ...said } = cell
    const wanted = known.entry === 'kit' ? fillsOf(known, asked) !== undefined : asked.has(name)
    return wanted ? [givenCell(filling, gathering, name, { ...known, ...said }, asked)] : []
  })
  // What no part places: givens asked of the role, and derived results.
  const own = namesOfRoles(library).get(role.role) ?? []
  const more = [
    ...own.flatMap(([name, known]) =>
      placed.has(name) || known.entry === 'kit' || !asked.has(name)
        ? []
        : [givenCell(filling, gathering, name, known, asked)],
    ),
    ...own.flatMap(([name]): PartCell[] => {
      const cell = derived.get(name)
      return cell ? [completed(filling, gathering, shown(cell))] : []
    }),
  ]
  const afterGivens = body.findIndex((cell) => !isGiven(cell))
  const at = afterGivens < 0 ? body.length : afterGivens
  const all = [...body.slice(0, at), ...more, ...body.slice(at)]
  if (all.length === 0) return []
  return [headingOf(role, part), ...all].map((cell, index) => withId(filling, cell, role.role, index))
}

const isGiven = (cell: PartCell): boolean => cell.kind === 'given'

/** A result with the constants of meters that a measured value of it may be converted by, a picture with what it is read under. */
function completed({ library }: Filling, gathering: Gathering, { settings, ...cell }: PartCell): PartCell {
  if (settings) return defined({ ...cell, read_under: settingsIn(library, gathering, settings) }) as PartCell
  const unit = cell.kind === 'result' ? (cell.unit as string | undefined) : undefined
  const constants = unit === undefined ? undefined : constantsFor(library, gathering, { unit })
  return constants ? { ...cell, constants } : cell
}

/** The givens that a part places in its own section, of the parts whose sections are made. */
function placedNames(library: PartLibrary, { parts }: Gathering, only: SectionOptions['only']): ReadonlySet<string> {
  const isMade = (part: Part): boolean => !only || library.roles.some((one) => one.role === part.role && only(one))
  return new Set(
    parts
      .filter(isMade)
      .flatMap((part) =>
        part.cells.filter(isPlace).flatMap(({ given }) => (isPlacedBy(library, part, given) ? given : [])),
      ),
  )
}

type Names = readonly (readonly [string, PublishedName])[]
const NAMES_OF_ROLES = new WeakMap<PartLibrary, ReadonlyMap<string, Names>>()

/** The names of each role, looked up once a library: there are hundreds, and a sheet has dozens of roles. */
function namesOfRoles(library: PartLibrary): ReadonlyMap<string, Names> {
  const known = NAMES_OF_ROLES.get(library)
  if (known) return known
  const roles = new Map<string, (readonly [string, PublishedName])[]>()
  for (const entry of library.names) {
    const { role } = entry[1]
    const names = roles.get(role)
    if (names) names.push(entry)
    else roles.set(role, [entry])
  }
  NAMES_OF_ROLES.set(library, roles)
  return roles
}

const headingOf = (role: Role, part: Part | undefined): PartCell =>
  defined({
    kind: 'note',
    role: 'heading',
    text: part?.title ?? role.title,
    about: part?.about,
    stage: part?.stage ?? role.stage,
    fills_role: role.role,
    part: part?.id,
  }) as PartCell

/** Whether a part places a given in its own section: one of its role, or of a role it decides as well. */
function isPlacedBy(library: PartLibrary, part: Part, name: string): boolean {
  const role = library.names.get(name)?.role ?? ''
  return part.role === role || (part.claims ?? []).includes(role)
}

/** Which of its figures a piece of kit fills in: those of givens that are asked. */
function fillsOf({ fills = {} }: PublishedName, asked: ReadonlySet<string>): Record<string, string> | undefined {
  const own = Object.entries(fills).filter(([, name]) => asked.has(name))
  return own.length > 0 ? Object.fromEntries(own) : undefined
}

/** The constants of meters that a reading of light may be converted by: those the set-up asks for. */
function constantsFor(
  { names }: PartLibrary,
  { asked }: Gathering,
  { entry = 'quantity', unit }: Pick<PublishedName, 'entry' | 'unit'>,
): Record<string, string> | undefined {
  const sign = entry === 'quantity' || entry === 'list' ? CONVERTED_BY[unit ?? ''] : undefined
  if (sign === undefined) return undefined
  const own = [...names].flatMap(([name, { converts }]): [string, string][] =>
    converts !== undefined && sign.includes(converts) && asked.has(name) ? [[converts, name]] : [],
  )
  return own.length > 0 ? Object.fromEntries(own) : undefined
}

/** By the unit asked: an exposure value may be typed as light on the original or off it. */
const CONVERTED_BY: Readonly<Record<string, string>> = { lx: 'C', 'cd/m²': 'K', EV: 'CK' }

/** What a reading is taken under, of what the set-up has: `lamps` and `camera` each stand for the cells that place them. */
function settingsIn(
  { settings, names: known }: PartLibrary,
  { names, asked }: Gathering,
  under: readonly string[] | undefined,
): string[] | undefined {
  const isThere = (name: string): boolean => {
    const one = known.get(name)
    return one?.entry === 'kit' ? fillsOf(one, asked) !== undefined : names.has(name)
  }
  const found = (under ?? []).flatMap((one) => settings[one] ?? []).filter(isThere)
  return found.length > 0 ? [...new Set(found)] : undefined
}

const GIVEN_KEYS = [
  ...['label', 'unit', 'options', 'more_exact', 'hint', 'least', 'most', 'whole', 'fixed', 'stand', 'sort', 'reading'],
] as const

function givenCell(
  filling: Filling,
  gathering: Gathering,
  name: string,
  known: PublishedName,
  asked: ReadonlySet<string>,
): PartCell {
  const said: Record<string, unknown> = { ...known, ...saidElsewhere(filling.library, gathering.parts, name) }
  const filled = fillIn(filling, gathering.parts, name, known)
  const isKit = known.entry === 'kit'
  const advice = worded(filling.library.names.get(name)?.advice, said.advice as Advice | undefined)
  const change = (said.change as string | undefined) ?? advice?.change
  return defined({
    kind: 'given',
    name,
    entry: known.entry === 'quantity' ? undefined : known.entry,
    ...Object.fromEntries(GIVEN_KEYS.map((key) => [key, said[key] === false ? undefined : said[key]])),
    ...(change === 'never' ? { fixed: true } : {}),
    value: filled?.value ?? '',
    from: filled ? { kind: filled.from, text: filled.value } : undefined,
    piece: filled?.piece,
    fills: isKit ? fillsOf(known, asked) : undefined,
    constants: constantsFor(filling.library, gathering, known),
    read_under: settingsIn(filling.library, gathering, known.read_under),
    advice: isKit || !advice ? undefined : change === 'never' ? ifDecidable(advice) : { ...advice, change },
  }) as PartCell
}

/** Advice that a part gives otherwise is said in the words of the name, where it has no words of its own. */
const worded = ({ more, less, to }: Partial<Advice> = {}, own: Advice | undefined): Advice | undefined =>
  own && ({ ...defined({ more, less, to }), ...own } as Advice)

/** What may never be changed is fixed, and needs no more said than what would have to be there in its place. */
const ifDecidable = ({ otherwise }: Advice): Advice | undefined =>
  otherwise === undefined ? undefined : { change: 'never', otherwise }

/** What parts of other roles say otherwise about a given. */
const saidElsewhere = (library: PartLibrary, parts: readonly Part[], name: string): Record<string, unknown> =>
  Object.assign(
    {},
    ...parts
      .filter((part) => !isPlacedBy(library, part, name))
      .flatMap(({ labels, cells }) => [
        labels?.[name] ?? {},
        ...cells.flatMap((cell) => {
          if (!isPlace(cell) || cell.given !== name) return []
          const { given: _, ...said } = cell
          return [said]
        }),
      ]),
  )

/** What is filled in: as given, else the usual value, else an example; readings are left empty. */
function fillIn(
  { library, givens, examples }: Filling,
  parts: readonly Part[],
  name: string,
  known: PublishedName,
): Filled | undefined {
  const filled = givens.get(name)
  if (filled) return filled
  const owner = parts.find((part) => isPlacedBy(library, part, name))
  const ordered = owner ? [owner, ...parts.filter((part) => part !== owner)] : parts
  const usual = ordered.find((part) => part.usual?.[name] !== undefined)?.usual?.[name] ?? known.usual
  if (usual !== undefined) return { value: usual, from: 'usual' }
  if (!examples || known.reading || known.entry === 'kit') return undefined
  // Figures of one role agree with each other: a part of another has its say only where nobody fills the role.
  const giving = owner ? [owner] : parts
  const example = giving.find((part) => part.example?.[name] !== undefined)?.example?.[name] ?? known.example
  return example === undefined ? undefined : { value: example, from: 'example' }
}

/** A cell without what only composing needs. */
export function shown(cell: PartCell): PartCell {
  const {
    if_read: _read,
    if_provided: _provided,
    optional: _optional,
    needs_given: _given,
    only_if: _only,
    unless: _unless,
    ...rest
  } = cell
  return rest as PartCell
}

function withId({ rows, library, examples }: Filling, cell: PartCell, role: string, index: number): Cell {
  const { key, ...rest } = cell as PartCell & { readonly name?: string; readonly role?: string }
  if (rest.kind === 'note') return { ...rest, id: `${rest.role ?? 'note'}_${role}_${index}` } as unknown as Cell
  const id = rest.name ?? `${rest.kind}_${key ?? role}`
  if (rest.kind !== 'table') return { ...rest, id } as unknown as Cell
  const name = rest.name ?? ''
  const filled = rows.get(name)?.rows ?? (examples ? exampleRows(library, name) : [])
  const from = rows.get(name)?.from ?? (filled.length > 0 ? 'example' : undefined)
  return {
    ...rest,
    id,
    rows: filled,
    ...(from ? { from: { kind: from, text: rowsMark(filled) } } : {}),
  } as unknown as Cell
}

const exampleRows = (library: PartLibrary, name: string): readonly (readonly string[])[] =>
  [...library.parts.values()].find((part) => part.example_rows?.[name])?.example_rows?.[name] ?? []
