import type { TableCell } from '../schema/document.ts'
import { namesInText, namesRead, operand, withTexts } from './cell-names.ts'
import { type GivenPlace, isPlace, type Part, type PartCell, type PartLibrary } from './part-library.ts'
import * as words from './words.ts'

/** What a set of winning parts gives: its cells, what is derived, and what has to be asked. */
export interface Gathering {
  readonly parts: readonly Part[]
  /** The cells of parts that are in the sheet, by part, in the part's order, placeholders of asked givens included. */
  readonly sections: ReadonlyMap<Part, readonly (PartCell | GivenPlace)[]>
  /** Derived results, by name. */
  readonly derived: ReadonlyMap<string, PartCell>
  /** The names that are asked. */
  readonly asked: ReadonlySet<string>
  /** Every name the sheet will have. */
  readonly names: ReadonlySet<string>
  /** The texts of implicit names, as they go into formulas. */
  readonly texts: ReadonlyMap<string, string>
}

/** What a set-up's gathering takes besides its parts. */
export interface GatheringOptions {
  /** Texts of implicit names, before those of the library and of parts. */
  readonly texts?: ReadonlyMap<string, string>
  /** Names that other set-ups of the sheet provide. */
  readonly elsewhere?: ReadonlySet<string>
  /** Names that other set-ups of the sheet read; of an implicit one, those in its text. */
  readonly readElsewhere?: ReadonlySet<string>
  /** Which parts are gathered for themselves: of others come the cells that something reads. All where nothing is said. */
  readonly only?: (part: Part) => boolean
  /** The parts that a later set-up has chosen for itself. */
  readonly chosen?: ReadonlySet<string>
  /** Checks of parts that are not gathered for themselves, to be taken as well where nothing has to be asked for them. */
  readonly judged?: ReadonlySet<string>
  /** Names of the first set-up that the others share with it. */
  readonly shared?: ReadonlySet<string>
}

type Named = PartCell & { readonly name: string }
const isNamedCell = (cell: PartCell): cell is Named => 'name' in cell && typeof cell.name === 'string'

export class Unpublished extends Error {
  constructor(readonly missing: string) {
    super(words.noProvider(missing))
    this.name = 'Unpublished'
  }
}

/**
 * Gathers the cells of parts: those a part always has, and for each name they read who provides it, a part, a
 * derivation, or else a given to ask. Follows what these read in turn.
 */
export function gather(
  library: PartLibrary,
  parts: readonly Part[],
  {
    texts: more = new Map(),
    elsewhere = new Set(),
    readElsewhere = new Set(),
    only = () => true,
    chosen = new Set(),
    judged = new Set(),
    shared = new Set(),
  }: GatheringOptions = {},
): Gathering {
  const texts = implicit(library, parts, more, chosen)
  const isFilled = (role: string): boolean => parts.some((part) => part.role === role)
  const isMeant = ({ only_if: only }: PartCell): boolean => !only || !isFilled(only.no) || isFilled(only.or)
  const cells = new Map(
    parts.map((part) => [
      part,
      part.cells.flatMap((cell) => (isPlace(cell) ? cell : isMeant(cell) ? withTexts(cell, texts) : [])),
    ]),
  )
  const providers = new Map<string, PartCell>()
  for (const list of cells.values())
    for (const cell of list)
      if (!isPlace(cell) && isNamedCell(cell) && !providers.has(cell.name)) providers.set(cell.name, cell)
  const columns = columnsOf(parts)
  const taken = new Set<PartCell>()
  const derived = new Map<string, PartCell>()
  const asked = new Set<string>()
  const names = new Set<string>()

  const derivation = (name: string): PartCell | undefined => {
    const known = library.names.get(name)
    if (known?.derive === undefined) return undefined
    if (known.unless_asked && !known.unless_asked.some((one) => providers.has(one))) return undefined
    const { derive, label, unit, hint, more_exact, stand } = known
    const cell = { kind: 'result', name, label, unit, formula: derive, hint, more_exact, stand }
    return withTexts(defined(cell) as PartCell, texts)
  }
  const take = (cell: PartCell): void => {
    taken.add(cell)
    if (isNamedCell(cell)) names.add(cell.name)
    for (const name of namesRead(cell, columns)) need(name)
  }
  const need = (name: string): void => {
    if (names.has(name) || elsewhere.has(name)) return
    const provider = providers.get(name)
    if (provider) {
      take(provider)
      return
    }
    names.add(name)
    const formula = derivation(name)
    if (formula) {
      derived.set(name, formula)
      for (const one of namesRead(formula)) need(one)
    } else if (library.names.has(name)) asked.add(name)
    else throw new Unpublished(name)
  }
  const own = new Map([...cells].filter(([part]) => only(part)))
  const all = [...own.values()].flat().filter((cell): cell is PartCell => !isPlace(cell))
  for (const cell of all) if (!cell.if_read && !cell.if_provided && !cell.needs_given && !cell.unless) take(cell)
  // The greatest of several is known without a figure that would have to be asked for it alone.
  const isWorth = (name: string): boolean =>
    library.names.get(name)?.over_set_ups !== 'greatest' || providers.has(name) || derivation(name) !== undefined
  // A text over the rows of a table also has the names of columns.
  for (const name of readElsewhere)
    for (const one of texts.has(name) ? namesInText(texts.get(name) as string) : isWorth(name) ? [name] : [])
      if (library.names.has(one) || providers.has(one)) need(one)
  for (const cell of all) if (cell.needs_given && asked.has(cell.needs_given)) take(cell)
  for (const cell of all) if (cell.unless && !names.has(cell.unless)) take(cell)
  // What is there without being asked: in the sheet, provided by a part, or derived from such.
  const available = (name: string, seen: ReadonlySet<string> = new Set()): boolean => {
    if (names.has(name) || elsewhere.has(name) || shared.has(name)) return true
    if (seen.has(name)) return false
    const cell = providers.get(name) ?? derivation(name)
    return cell !== undefined && namesRead(cell).every((one) => available(one, new Set([...seen, name])))
  }
  for (const cell of all) if (cell.if_provided && namesRead(cell).every((name) => available(name))) take(cell)
  for (const cell of [...cells.values()].flat())
    if (
      !isPlace(cell) &&
      isNamedCell(cell) &&
      judged.has(cell.name) &&
      namesRead(cell).every((name) => available(name))
    )
      take(cell)
  askAtLeastOne(own, taken, need)
  return {
    parts,
    sections: new Map(
      [...cells].map(([part, list]) => [
        part,
        list.flatMap((cell): (PartCell | GivenPlace)[] =>
          isPlace(cell) ? [cell] : taken.has(cell) ? [withInputs(cell, names)] : [],
        ),
      ]),
    ),
    derived,
    asked,
    names,
    texts,
  }
}

/** A part that only asks, such as a flat sheet alone, asks for what is its own although nothing reads it yet. */
function askAtLeastOne(
  cells: ReadonlyMap<Part, readonly (PartCell | GivenPlace)[]>,
  taken: ReadonlySet<PartCell>,
  need: (name: string) => void,
): void {
  for (const [, list] of cells) {
    if (list.some((cell) => !isPlace(cell) && taken.has(cell))) continue
    const [first] = list.filter(isPlace)
    if (first) need(first.given)
  }
}

/** The columns of the parts' tables. */
const columnsOf = (parts: readonly Part[]): ReadonlySet<string> =>
  new Set(
    parts.flatMap(({ cells }) =>
      cells.flatMap((cell) =>
        !isPlace(cell) && cell.kind === 'table' ? (cell as unknown as TableCell).columns.map(({ name }) => name) : [],
      ),
    ),
  )

/** The texts of implicit names: a part's own before the name's, a later role's before an earlier one's. */
function implicit(
  library: PartLibrary,
  parts: readonly Part[],
  more: ReadonlyMap<string, string>,
  chosen: ReadonlySet<string>,
): ReadonlyMap<string, string> {
  const provided = new Set(
    parts.flatMap(({ cells }) => cells.flatMap((cell) => (isPlace(cell) || !isNamedCell(cell) ? [] : [cell.name]))),
  )
  const own = new Map([
    ...[...library.names].flatMap(([name, { inline }]) => (inline === undefined ? [] : [[name, inline] as const])),
    ...parts.flatMap(({ inline = {} }) => Object.entries(inline)),
    ...parts.flatMap(({ id, inline_where_chosen = {} }) => (chosen.has(id) ? Object.entries(inline_where_chosen) : [])),
    ...more,
  ])
  const ofChosen = new Set(
    parts.flatMap(({ id, inline_where_chosen = {} }) => (chosen.has(id) ? Object.keys(inline_where_chosen) : [])),
  )
  const left = [...own].filter(([name]) => !provided.has(name) || ofChosen.has(name))
  let texts = new Map(left.map(([name, text]) => [name, operand(text)]))
  // An implicit name may be derived from another: `rises` is half of `face_height`.
  for (let depth = 0; depth < 4; depth++) {
    const now = texts
    texts = new Map(left.map(([name, text]) => [name, operand(inserted(text, now))]))
  }
  return texts
}

const inserted = (text: string, texts: ReadonlyMap<string, string>): string =>
  withTexts({ kind: 'result', name: 'text', formula: text }, texts).formula as string

/** A drawing without the optional inputs that the sheet does not have. */
function withInputs(cell: PartCell, names: ReadonlySet<string>): PartCell {
  if (!cell.optional) return cell
  const { from, optional } = cell as unknown as { from: Record<string, string>; optional: readonly string[] }
  const has = (text: string): boolean => namesInText(text).every((name) => names.has(name))
  return {
    ...cell,
    from: Object.fromEntries(Object.entries(from).filter(([key, text]) => !optional.includes(key) || has(text))),
  } as PartCell
}

/** Without the keys that are undefined. */
export const defined = <T extends object>(record: T): T =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as T
