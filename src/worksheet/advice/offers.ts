import { withFigures } from '../compose/figures.ts'
import type { PartLibrary, Part as SheetPart } from '../compose/part-library.ts'
import { isComposed, partsInSetUp, partsOf, setUpsOf, withParts } from '../compose/recompose.ts'
import { prefixedName } from '../compose/set-ups.ts'
import type { Sheet } from '../editing/sheet.ts'
import { VALUE } from '../engine/engine-view.ts'
import { upstreamOf } from '../engine/partial-recompute.ts'
import type { Cell, Check, Given } from '../schema/document.ts'
import { adviseCheck, passes, statesOf } from './advise.ts'
import { labelNamed } from './plan-text.ts'
import { adviceWords } from './words.ts'

/**
 * Roles that say how the picture is taken, on which many checks depend. Which original, lamps and other equipment there are
 * is not for advice to change, nor by what something is judged; a part of another role helps only the checks it answers.
 */
const WAYS: ReadonlySet<string> = new Set(['framing', 'closeness'])

/** A part that is offered, and what pressing it does: `Take it in 4 frames`. */
export interface Offer {
  readonly part: string
  readonly text: string
  /** The later set-up it is for; none for the first. */
  readonly setUp?: string
  /** Names of checks that passed before and fail once it is added; each has a suggestion then. */
  readonly fails: readonly string[]
  /** The same as a sentence; empty where nothing fails. */
  readonly then: string
}

/** One set-up of the sheet: its prefix and title, none for the first. */
interface Place {
  readonly setUp?: { readonly prefix: string; readonly title: string }
  readonly chosen: ReadonlySet<string>
}

/**
 * The parts that would make a failing check pass, by the check's name: each is put into a copy of the sheet, what it asks is
 * filled in from its own example, and all is computed. A part is not offered where a check that passed then fails and
 * no plan makes it pass, or where one of its own fails by the figures of the sheet; what then fails is said. Each set-up
 * is offered parts for its own checks.
 */
export function offersFor(library: PartLibrary, sheet: Sheet): ReadonlyMap<string, readonly Offer[]> {
  const found = new Map<string, Offer[]>()
  const { worksheet } = sheet
  const before = statesOf(sheet)
  const allFailing = [...before].flatMap(([name, state]) => (state === 'fail' ? [name] : []))
  if (!isComposed(worksheet) || allFailing.length === 0) return found
  const later = setUpsOf(worksheet)
  const prefixOf = (name: string): string | undefined =>
    later.find(({ prefix }) => name.startsWith(prefixedName(prefix, '')))?.prefix
  const places: readonly Place[] = [
    { chosen: new Set(partsOf(worksheet).map(({ part }) => part)) },
    ...later.map((setUp) => ({
      setUp,
      chosen: new Set(partsInSetUp(library, worksheet, setUp.prefix).map(({ id }) => id)),
    })),
  ]
  for (const place of places) {
    const failing = allFailing.filter((name) => prefixOf(name) === place.setUp?.prefix)
    if (failing.length === 0) continue
    for (const part of library.parts.values())
      for (const [name, offer] of offersOf(library, sheet, place, part, before, failing))
        found.set(name, [...(found.get(name) ?? []), offer])
  }
  return found
}

/** The failing checks of a set-up that a part helps, each with the offer. */
function offersOf(
  library: PartLibrary,
  sheet: Sheet,
  { setUp, chosen }: Place,
  part: SheetPart,
  before: ReturnType<typeof statesOf>,
  failing: readonly string[],
): readonly (readonly [string, Offer])[] {
  const nameIn = (name: string): string => (setUp ? prefixedName(setUp.prefix, name) : name)
  const answers = new Map(Object.entries(part.answers ?? {}).map(([gone, own]) => [nameIn(gone), own.map(nameIn)]))
  const isWay = WAYS.has(part.role)
  if (chosen.has(part.id) || part.never_with?.some((other) => chosen.has(other))) return []
  if (!(isWay || failing.some((name) => answers.has(name)))) return []
  const { change, cells, asks } = withParts(library, sheet.worksheet, [{ part: part.id, by: 'hand' }], setUp?.prefix)
  if (!change) return []
  const trial = sheet.trial(filledIn(library, part, cells, asks, nameIn))
  const after = statesOf(trial)
  // A check of the part that gives way may be gone: what judges the same in its place has to pass.
  const isHelped = (name: string): boolean => {
    const judges = after.has(name) ? (isWay ? [name] : []) : (answers.get(name) ?? [])
    return judges.length > 0 && judges.every((judge) => passes(after.get(judge)))
  }
  const helped = failing.filter(isHelped)
  if (helped.length === 0) return []
  // What depends on the figures of the part's example is not judged: they are still to be filled in.
  const broken = [...before].flatMap(([name, state]) => (passes(state) && after.get(name) === 'fail' ? [name] : []))
  if (!broken.every((name) => hasPlan(trial, name)) || failsByItself(trial, cells, asks, before)) return []
  // A figure that all set-ups share has its plain name.
  const own = (part.press ?? part.offer).replace(
    /\{(\w+)\}/g,
    (_, name: string) => `{${trial.named(nameIn(name)) ? nameIn(name) : name}}`,
  )
  const text = withFigures(own, trial)
  const then = broken.length === 0 ? '' : adviceWords.breaks(broken.map((name) => labelNamed(trial, name)))
  const offer = setUp
    ? { part: part.id, text: adviceWords.inSetUp(setUp.title, text), setUp: setUp.prefix, fails: broken, then }
    : { part: part.id, text, fails: broken, then }
  return helped.map((name) => [name, offer] as const)
}

/** Whether a check that comes with a part fails by the figures the sheet has, whatever is filled in for the part. */
function failsByItself(
  { engine }: Sheet,
  cells: readonly Cell[],
  asks: readonly Given[],
  before: ReturnType<typeof statesOf>,
): boolean {
  const asked = new Set(asks.map(({ id }) => id))
  return cells.some((cell) => {
    if (cell.kind !== 'check' || before.has(cell.name) || cell.needs_measured) return false
    const node = engine.node(cell.id)
    if (!node || engine.state(node) !== VALUE || engine.value(node) !== false) return false
    const behind = upstreamOf(engine.layout, [engine.positionOf(node)])
    return !behind.some((at) => asked.has(engine.layout.order[at]?.cell.id ?? ''))
  })
}

function hasPlan(sheet: Sheet, name: string): boolean {
  const cell = sheet.named(name)
  return cell !== undefined && adviseCheck(sheet, cell.id).plans.length > 0
}

/** The sheet with an example in each given that the part asks for, judged before anything is measured. */
function filledIn(
  library: PartLibrary,
  part: SheetPart,
  cells: readonly Cell[],
  asks: readonly Given[],
  nameIn: (name: string) => string,
): Cell[] {
  const asked = new Set(asks.map(({ id }) => id))
  const names = new Map([...library.names.keys()].map((name) => [nameIn(name), name] as const))
  return cells.map((cell) => {
    if (cell.kind === 'check') return withoutReadings(cell)
    if (cell.kind !== 'given' || !asked.has(cell.id)) return cell
    const name = names.get(cell.name) ?? cell.name
    const { usual, example } = library.names.get(name) ?? {}
    const value = part.example?.[name] ?? part.usual?.[name] ?? usual ?? example ?? cell.options?.[0]
    return value === undefined ? cell : { ...cell, value }
  })
}

const withoutReadings = ({ needs_measured: _, ...check }: Check): Check => check
