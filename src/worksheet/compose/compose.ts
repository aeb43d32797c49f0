import { FORMAT, VERSION } from '../format/format.ts'
import type { Cell, Worksheet } from '../schema/document.ts'
import { type ChosenPart, choose, type Replaced } from './choose-parts.ts'
import { gather } from './gather.ts'
import type { Part, PartLibrary } from './part-library.ts'
import { type Filled, type FilledRows, sectionsOf } from './sections.ts'
import { isInSetUp, laterSections, type SetUpName, withSums } from './set-ups.ts'
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
  const count = new Map([['set_up_count', `${setUps.length + 1}`]])
  const later = setUps.map((setUp) => ({
    ...setUp,
    gathering: gather(library, ofSetUp(library, winners, [...parts, ...setUp.parts]), count),
  }))
  const shared = new Set(
    later.flatMap(({ gathering }) =>
      [...gathering.asked].filter((name) => !isInSetUp(library, library.names.get(name)?.role ?? '')),
    ),
  )
  const first = sectionsOf(filling, gather(library, winners, count), { alsoAsked: shared })
  const others = later.map((setUp) => ({ ...setUp, ...laterSections(filling, setUp, setUp.gathering) }))
  const cells = [
    ...withSums(
      library,
      first,
      setUps.map(({ prefix }) => prefix),
    ),
    ...others.flatMap((setUp) => setUp.cells),
    ...stepsOf(library, winners, first.names),
    ...others.flatMap(({ gathering, names, prefix, title: of }) =>
      stepsOf(
        library,
        gathering.parts.filter(({ role }) => isInSetUp(library, role)),
        names,
        { prefix, title: of },
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

/** The parts of a later set-up: shared roles as in the first, the others by its own choice. */
function ofSetUp(library: PartLibrary, first: readonly Part[], set: readonly ChosenPart[]): readonly Part[] {
  const own = choose(library, set).parts
  return library.roles.flatMap(({ role, in_set_up }) => {
    const part = (in_set_up ? own : first).find((one) => one.role === role)
    return part ? [part] : []
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
