import { FORMAT, VERSION } from '../format/format.ts'
import type { Cell, Worksheet } from '../schema/document.ts'
import { type ChosenPart, choose, type Replaced } from './choose-parts.ts'
import { gather } from './gather.ts'
import type { Part, PartLibrary } from './part-library.ts'
import { type Filled, type FilledRows, sectionsOf } from './sections.ts'
import {
  isInSetUp,
  judgedInEach,
  type LaterSetUp,
  laterSections,
  overSetUps,
  ownNames,
  type SetUpName,
  sharedFrom,
  sumCells,
  summedNamesOf,
  withRunsOf,
  withSums,
} from './set-ups.ts'
import { stepsOf } from './steps.ts'

/** Another set-up of the sheet: it starts from the first and may have other parts. */
export interface SetUp extends SetUpName {
  readonly parts: readonly ChosenPart[]
}

/** What a sheet is composed of. */
export interface Composition {
  readonly title: string
  readonly job?: string
  readonly parts: readonly ChosenPart[]
  readonly setUps?: readonly SetUp[]
  /** What is filled in, by name; what is not takes its usual value, else an example. */
  readonly givens?: ReadonlyMap<string, Filled>
  /** The rows of tables, by name. */
  readonly rows?: ReadonlyMap<string, FilledRows>
  /** Whether what is left takes an example: yes where nothing is said. */
  readonly examples?: boolean
}

export interface Composed {
  readonly worksheet: Worksheet
  /** Parts of the set that give way to another of their role. */
  readonly replaced: readonly Replaced[]
}

/** Composes a sheet from parts. The order in which parts and givens are listed does not matter. */
export function compose(library: PartLibrary, composition: Composition): Composed {
  const { title, job, parts, setUps = [], givens = new Map(), rows = new Map(), examples = true } = composition
  const { parts: winners, replaced } = choose(library, parts)
  const filling = { library, givens, rows, examples }
  const texts = new Map([['set_up_count', `${setUps.length + 1}`]])
  const shared = gather(library, winners, { texts })
  const readByShared = summedNamesOf(library, shared)
  const only = ({ role }: Part): boolean => isInSetUp(library, role)
  const isOfEach = (name: string): boolean => {
    const { role = '', in_every_set_up } = library.names.get(name) ?? {}
    return isInSetUp(library, role) && !in_every_set_up
  }
  const there = new Set([...shared.names].filter((name) => !isOfEach(name)))
  const asked = new Set(there)
  const later = setUps.map(({ prefix, title: of, parts: own }): LaterSetUp => {
    const chosen = new Set(own.map(({ part }) => part))
    const gathering = gather(library, partsOfSetUp(library, parts, own), {
      texts,
      chosen,
      only,
      readElsewhere: readByShared,
      judged: judgedInEach(library, shared),
      shared: there,
    })
    const names = ownNames(library, prefix, gathering)
    const fresh = sharedFrom(library, gathering, (name) => names.has(name) || asked.has(name))
    const taken = new Set(asked)
    for (const name of fresh) asked.add(name)
    return { prefix, title: of, gathering, names, shared: fresh, taken }
  })
  const readElsewhere = new Set(
    later.flatMap(({ gathering, names }) =>
      [...gathering.names].filter((name) => !names.has(name) && (there.has(name) || !asked.has(name))),
    ),
  )
  const alone = later.length === 0 ? shared : gather(library, winners, { texts, readElsewhere })
  const over = overSetUps(library, alone, later)
  const gathered =
    later.length === 0
      ? alone
      : gather(library, winners, {
          texts: new Map([...texts, ...over.texts]),
          elsewhere: over.elsewhere,
          readElsewhere,
        })
  const first = sectionsOf(filling, gathered)
  const others = later.map((setUp) => ({ ...setUp, sections: laterSections(filling, setUp, gathered.names) }))
  const summed = withSums(library, first, later, later.length === 0 ? [] : sumCells(library, over))
  const cells = [
    ...summed.map((cell) => withRunsOf(cell, later, summed)),
    ...others.flatMap(({ sections }) => sections.cells),
    ...stepsOf(library, gathered, first.names),
    ...others.flatMap(({ gathering, names, sections, prefix, title: of, shared: here, taken }) =>
      stepsOf(
        library,
        {
          ...gathering,
          // A reading for what the set-ups share is taken in each.
          parts: gathering.parts.map((part) =>
            only(part) ? part : { ...part, steps: part.steps.filter(({ reading = '' }) => names.has(reading)) },
          ),
        },
        sections.names,
        { prefix, title: of, shared: here, taken },
      ),
    ),
  ]
  return {
    worksheet: {
      format: FORMAT,
      version: VERSION,
      title,
      ...(job === undefined ? {} : { job }),
      cells: withoutRepeatedNotes(cells),
      parts: [
        ...sorted(parts),
        ...setUps.flatMap((setUp) => sorted(setUp.parts).map((one) => ({ ...one, setup: setUp.prefix }))),
      ],
      ...(setUps.length > 0 ? { setups: setUps.map(({ prefix: name, title: of }) => ({ name, title: of })) } : {}),
    },
    replaced,
  }
}

/** The set of parts as it is stored: each once, by name. */
function sorted(parts: readonly ChosenPart[]): { part: string; by?: string }[] {
  const best = new Map<string, ChosenPart>()
  for (const one of parts) {
    const known = best.get(one.part)
    if (!known || (one.by === 'hand' && known.by !== 'hand') || (one.by === 'lead' && !known.by))
      best.set(one.part, one)
  }
  return [...best.values()].sort((a, b) => (a.part < b.part ? -1 : 1))
}

/**
 * The parts of a later set-up: shared roles as in the first, the others by its own choice, which comes before what was
 * chosen by hand for the first.
 */
export function partsOfSetUp(
  library: PartLibrary,
  parts: readonly ChosenPart[],
  chosen: readonly ChosenPart[],
): readonly Part[] {
  const first = choose(library, parts).parts
  const roleOf = ({ part }: ChosenPart): string | undefined => library.parts.get(part)?.role
  const decided = new Set(chosen.filter(({ by }) => by !== undefined).map(roleOf))
  const taken = parts.map((one) => (decided.has(roleOf(one)) ? { part: one.part } : one))
  const own = choose(library, [...taken, ...chosen]).parts
  const byItself = new Set(chosen.map(({ part }) => part))
  const left = new Set(own.flatMap(({ id, leaves_where_chosen = [] }) => (byItself.has(id) ? leaves_where_chosen : [])))
  return library.roles.flatMap(({ role, in_set_up }) => {
    const part = (in_set_up ? own : first).find((one) => one.role === role)
    return part && (!left.has(role) || byItself.has(part.id)) ? [part] : []
  })
}

/** A caution or a remark that two parts share is said once. */
function withoutRepeatedNotes(cells: readonly Cell[]): Cell[] {
  const said = new Set<string>()
  return cells.filter((cell) => {
    if (cell.kind !== 'note' || cell.role === 'heading') return true
    if (said.has(cell.text)) return false
    said.add(cell.text)
    return true
  })
}
