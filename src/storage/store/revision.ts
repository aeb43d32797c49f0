/** A line of a sheet's past, readable without the sheet itself. */
export interface Revision {
  readonly sheet: string
  /** When the sheet stood so, in milliseconds since 1970; unique within the sheet. */
  readonly at: number
  /** A revision with a name is kept for ever. */
  readonly name?: string
  /** What it was kept before: «before a restore». */
  readonly why?: string
}

const MINUTE = 60_000
const HOUR = 60 * MINUTE
const DAY = 24 * HOUR
const WEEK = 7 * DAY

/** How much of the past is kept: one revision of each span, once the whole span is older than `after`. */
const SPANS = [
  { span: WEEK, after: 30 * DAY },
  { span: DAY, after: DAY },
  { span: HOUR, after: HOUR },
] as const

const spanOf = (at: number, span: number): number => Math.floor(at / span)

/** The stretch of time of which one revision is kept. Whole spans age, so that thinning often or seldom comes to the same. */
function stretch(at: number, now: number): string {
  const coarse = SPANS.find(({ span, after }) => (spanOf(at, span) + 1) * span <= now - after)
  const span = coarse?.span ?? MINUTE
  return `${span} ${spanOf(at, span)}`
}

/** Whether what stands since `at` becomes a revision when it is written over `now`: the last of each minute does. */
export const isDue = (at: number, now: number): boolean => spanOf(at, MINUTE) !== spanOf(now, MINUTE)

/**
 * Those of a sheet's revisions that are let go: all but the last of each minute, of each hour once that is over for
 * an hour, of each day after a day, of each week after a month. What has a name stays; what was kept before a restore
 * stays as long as minutes do.
 */
export function revisionsToDrop(revisions: readonly Revision[], now: number): readonly Revision[] {
  const last = new Map<string, Revision>()
  const gone: Revision[] = []
  for (const revision of [...revisions].sort((a, b) => b.at - a.at)) {
    if (revision.name !== undefined) continue
    const place = stretch(revision.at, now)
    if (revision.why !== undefined && place.startsWith(`${MINUTE} `)) continue
    if (last.has(place)) gone.push(revision)
    else last.set(place, revision)
  }
  return gone
}

export const latestFirst = (revisions: readonly Revision[]): readonly Revision[] =>
  [...revisions].sort((a, b) => b.at - a.at)

/** The revision under another name; an empty one takes the name away. */
export const named = ({ name: _, ...revision }: Revision, name: string): Revision =>
  name.trim() === '' ? revision : { ...revision, name: name.trim() }
