import type { Part, PartLibrary } from './part-library.ts'
import * as words from './words.ts'

/** A part of a sheet's set, and why it is there. */
export interface ChosenPart {
  readonly part: string
  /** Chosen by hand before a job's leading part, that before the others, these by rank. */
  readonly by?: 'hand' | 'lead'
}

/** A role's part that gives way to another of the set. */
export interface Replaced {
  readonly part: string
  readonly by: string
}

export interface Winners {
  /** The part that fills each role, in the order of roles. */
  readonly parts: readonly Part[]
  readonly replaced: readonly Replaced[]
}

export class UnknownPart extends Error {
  constructor(readonly part: string) {
    super(words.noPart(part))
    this.name = 'UnknownPart'
  }
}

/** What a choice comes before: the higher first. */
const PRECEDENCE = { hand: 2, lead: 1 } as const

/**
 * For each role, the part of the set that fills it. The order of the set does not matter: a part chosen by hand
 * comes first, then a job's leading part, then rank, then the name. What a winner needs joins the set, and all is
 * decided again.
 */
export function choose(library: PartLibrary, set: readonly ChosenPart[]): Winners {
  const known = new Map<string, ChosenPart['by']>()
  for (const { part, by } of set) {
    if (!library.parts.has(part)) throw new UnknownPart(part)
    const before = known.get(part)
    if (!known.has(part) || (by && (!before || PRECEDENCE[by] > PRECEDENCE[before]))) known.set(part, by)
  }
  for (;;) {
    const winners = decide(library, known)
    const lacking = winners.parts.flatMap(({ needs = [] }) => needs).filter((id) => !known.has(id))
    if (lacking.length === 0) return winners
    for (const id of lacking) known.set(id, undefined)
  }
}

function decide(library: PartLibrary, known: ReadonlyMap<string, ChosenPart['by']>): Winners {
  const precedence = (id: string): number => {
    const by = known.get(id)
    return by ? PRECEDENCE[by] : 0
  }
  const parts: Part[] = []
  const claimed = new Map<string, string>()
  const replaced: Replaced[] = []
  for (const { role } of library.roles) {
    const candidates = [...known.keys()]
      .map((id) => library.parts.get(id) as Part)
      .filter((part) => part.role === role)
      .sort((a, b) => precedence(b.id) - precedence(a.id) || b.rank - a.rank || (a.id < b.id ? -1 : 1))
    const claim = claimed.get(role)
    const [winner, ...others] = candidates
    if (claim !== undefined) replaced.push(...candidates.map(({ id }) => ({ part: id, by: claim })))
    else if (winner) {
      parts.push(winner)
      for (const other of winner.claims ?? []) claimed.set(other, winner.id)
      replaced.push(...others.map(({ id }) => ({ part: id, by: winner.id })))
    }
  }
  return { parts, replaced }
}
