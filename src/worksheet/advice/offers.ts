import { withFigures } from '../compose/figures.ts'
import type { PartLibrary, Part as SheetPart } from '../compose/part-library.ts'
import { isComposed, partsOf, withParts } from '../compose/recompose.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Cell, Check, Given } from '../schema/document.ts'
import { adviseCheck, passes, statesOf } from './advise.ts'

/** Roles that say how the work is done. What the original and the equipment are is not for advice to change. */
const WAYS: ReadonlySet<string> = new Set(['framing', 'closeness', 'support', 'light', 'glare', 'flicker', 'sharpness'])

/** A part that is offered, and what pressing it does: `Take it in 4 frames`. */
export interface Offer {
  readonly part: string
  readonly text: string
}

/**
 * The parts that would make a failing check pass, by the check's name: each is put into a copy of the sheet, what it asks is
 * filled in from its own example, and all is computed. A part is not offered where a check that passed then fails and no
 * plan makes it pass again.
 */
export function offersFor(library: PartLibrary, sheet: Sheet): ReadonlyMap<string, readonly Offer[]> {
  const found = new Map<string, Offer[]>()
  const { worksheet } = sheet
  const before = statesOf(sheet)
  const failing = [...before].flatMap(([name, state]) => (state === 'fail' ? [name] : []))
  if (!isComposed(worksheet) || failing.length === 0) return found
  const chosen = new Set(partsOf(worksheet).map(({ part }) => part))
  for (const part of library.parts.values()) {
    if (chosen.has(part.id) || !WAYS.has(part.role)) continue
    const { change, cells, asks } = withParts(library, worksheet, [{ part: part.id, by: 'hand' }])
    if (!change) continue
    const trial = sheet.trial(filledIn(library, part, cells, asks))
    const after = statesOf(trial)
    const fresh = [...after].filter(([name]) => !before.has(name))
    const isAnswered = fresh.length > 0 && fresh.every(([, state]) => state !== 'fail')
    // A check of the part that gives way may be gone: another question is asked in its place, which has to pass.
    const helped = failing.filter((name) => (after.has(name) ? passes(after.get(name)) : isAnswered))
    if (helped.length === 0) continue
    const broken = [...before].flatMap(([name, state]) => (passes(state) && after.get(name) === 'fail' ? [name] : []))
    if (!broken.every((name) => hasPlan(trial, name))) continue
    const offer = { part: part.id, text: withFigures(part.press ?? part.offer, trial) }
    for (const name of helped) found.set(name, [...(found.get(name) ?? []), offer])
  }
  return found
}

function hasPlan(sheet: Sheet, name: string): boolean {
  const cell = sheet.named(name)
  return cell !== undefined && adviseCheck(sheet, cell.id).plans.length > 0
}

/** The sheet with an example in each given that the part asks for, judged before anything is measured. */
function filledIn(library: PartLibrary, part: SheetPart, cells: readonly Cell[], asks: readonly Given[]): Cell[] {
  const asked = new Set(asks.map(({ id }) => id))
  return cells.map((cell) => {
    if (cell.kind === 'check') return withoutReadings(cell)
    if (cell.kind !== 'given' || !asked.has(cell.id)) return cell
    const { usual, example } = library.names.get(cell.name) ?? {}
    const value = part.example?.[cell.name] ?? part.usual?.[cell.name] ?? usual ?? example ?? cell.options?.[0]
    return value === undefined ? cell : { ...cell, value }
  })
}

const withoutReadings = ({ needs_measured: _, ...check }: Check): Check => check
