/** The line of one revision of a sheet, readable without the sheet itself. */
export interface Revision {
  readonly sheet: string
  /** When the sheet was saved so, in milliseconds since 1970; unique within the sheet. */
  readonly at: number
  /** Which saved state it is. Revisions of earlier versions, and states that were never the saved one, have none. */
  readonly stamp?: string
  /** Named revisions are never deleted. */
  readonly name?: string
  /** What it was saved before: “before a restore”. */
  readonly why?: string
  /** It left this browser in a link or a file, or came in one: what comes back is compared with it. */
  readonly shared?: boolean
}

const MINUTE = 60_000
const HOUR = 60 * MINUTE
const DAY = 24 * HOUR
const WEEK = 7 * DAY

/** One revision of each span stays, once the whole span is older than `after`. */
const SPANS = [
  { span: WEEK, after: 30 * DAY },
  { span: DAY, after: DAY },
  { span: HOUR, after: HOUR },
] as const

const spanOf = (at: number, span: number): number => Math.floor(at / span)

/** How many shared revisions stay, the latest: what was sent out long ago seldom comes back. */
const MOST_SHARED = 20

/** The stretch of time of which one revision stays. Whole spans age, so that thinning often or seldom gives the same. */
function stretch(at: number, now: number): string {
  const coarse = SPANS.find(({ span, after }) => (spanOf(at, span) + 1) * span <= now - after)
  const span = coarse?.span ?? MINUTE
  return `${span} ${spanOf(at, span)}`
}

/** Whether what was saved `at` becomes a revision when it is written over `now`: the last of each minute does. */
export const isDue = (at: number, now: number): boolean => spanOf(at, MINUTE) !== spanOf(now, MINUTE)

/**
 * Those of a sheet's revisions that are deleted: all but the last of each minute, of each hour once that is over for
 * an hour, of each day after a day, of each week after a month. A named one stays, and so do the latest shared ones;
 * one saved before a restore stays as long as minutes do.
 */
export function revisionsToDrop(revisions: readonly Revision[], now: number): readonly Revision[] {
  const last = new Set<string>()
  const gone: Revision[] = []
  let shared = 0
  for (const revision of [...revisions].sort((a, b) => b.at - a.at)) {
    if (revision.name !== undefined) continue
    if (revision.shared && ++shared <= MOST_SHARED) continue
    const place = stretch(revision.at, now)
    if (revision.why !== undefined && place.startsWith(`${MINUTE} `)) continue
    if (last.has(place)) gone.push(revision)
    else last.add(place)
  }
  return gone
}

/** The time, or the next after it at which the sheet has no revision. */
export function freeTime(at: number, revisions: readonly Revision[]): number {
  const taken = new Set(revisions.map((one) => one.at))
  let free = at
  while (taken.has(free)) free += 0.001
  return free
}

/** Revisions in the order of the list, the latest first. */
export const latestFirst = (revisions: readonly Revision[]): readonly Revision[] =>
  [...revisions].sort((a, b) => b.at - a.at)

/** The revision under another name; an empty one takes the name away. */
export const named = ({ name: _, ...revision }: Revision, name: string): Revision =>
  name.trim() === '' ? revision : { ...revision, name: name.trim() }
