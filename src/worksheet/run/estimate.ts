/** Frames, time at the originals in s, and data in bit, copies included. */
export interface Amount {
  readonly frames: number
  readonly time: number
  readonly data: number
}

export const NOTHING: Amount = { frames: 0, time: 0, data: 0 }

/** An amount of work added to a sum: frames, seconds, bits. */
export const addTo = (sum: Amount, { frames, time, data }: Amount): Amount => ({
  frames: sum.frames + frames,
  time: sum.time + time,
  data: sum.data + data,
})

/** How the work goes besides the originals themselves; times in s. */
export interface Pace {
  readonly setupTime: number
  /** At work before each break. */
  readonly spell?: number | undefined
  /** Of each break; without a spell, of all of them together. */
  readonly breakTime: number
  /** Working time per day. */
  readonly day?: number | undefined
}

/** Work with what comes on top of it. */
export interface Total extends Amount {
  readonly count: number
  readonly setups: number
  readonly setupTime: number
  readonly breaks: number
  /** All of the time, in s. */
  readonly all: number
  readonly days: number | undefined
}

/** One original as the estimate needs it. */
export interface Estimate {
  readonly planned: Amount
  readonly done: boolean
  /** As it was, in s and frames, where it was noted. */
  readonly actualTime?: number | undefined
  readonly actualFrames?: number | undefined
}

/** What was done, beside what was planned for it, and what is left. */
export interface Progress {
  readonly done: {
    readonly count: number
    readonly planned: Amount
    /** How many originals have a noted time, what was planned for those, and what it was. */
    readonly timed: { readonly count: number; readonly planned: number; readonly actual: number }
    readonly counted: { readonly count: number; readonly planned: number; readonly actual: number }
  }
  readonly left: Total
  /** What is left, at the rate of what was done; only where enough is done to go by. */
  readonly expected?: Total | undefined
}

/** Fewer do not give a rate. */
export const ENOUGH = 5

/** The breaks in so much work: one after each spell but the last. */
function breaksIn(work: number, { spell, breakTime }: Pace): number {
  if (work <= 0) return 0
  if (spell === undefined || spell <= 0) return breakTime
  return Math.max(0, Math.ceil(work / spell - 1e-9) - 1) * breakTime
}

/** The time a run takes with its set-ups and breaks, and the days that makes, from frames, seconds and bits. */
export function totalOf(work: Amount, count: number, setups: number, pace: Pace): Total {
  const setupTime = setups * pace.setupTime
  const breaks = breaksIn(work.time + setupTime, pace)
  const all = work.time + setupTime + breaks
  const days = pace.day !== undefined && pace.day > 0 ? all / pace.day : undefined
  return { ...work, count, setups, setupTime, breaks, all, days }
}

/** @param setupsLeft the number of set-ups with an original that is not done. */
export function progressOf(originals: readonly Estimate[], setupsLeft: number, pace: Pace): Progress {
  let planned = NOTHING
  let undone = NOTHING
  let count = 0
  // Time by the frame, where no time was planned.
  let framesTimed = 0
  const timed = { count: 0, planned: 0, actual: 0 }
  const counted = { count: 0, planned: 0, actual: 0 }
  for (const one of originals) {
    if (!one.done) {
      undone = addTo(undone, one.planned)
      continue
    }
    count++
    planned = addTo(planned, one.planned)
    if (one.actualTime !== undefined) {
      timed.count++
      timed.planned += one.planned.time
      timed.actual += one.actualTime
      framesTimed += one.planned.frames
    }
    if (one.actualFrames !== undefined) {
      counted.count++
      counted.planned += one.planned.frames
      counted.actual += one.actualFrames
    }
  }
  const left = totalOf(undone, originals.length - count, setupsLeft, pace)
  const progress = { done: { count, planned, timed, counted }, left }
  if (left.count === 0 || (timed.count < ENOUGH && counted.count < ENOUGH)) return progress
  const time =
    timed.count < ENOUGH
      ? left.time
      : timed.planned > 0
        ? (left.time * timed.actual) / timed.planned
        : framesTimed > 0
          ? (left.frames * timed.actual) / framesTimed
          : left.time
  const share = counted.count >= ENOUGH && counted.planned > 0 ? counted.actual / counted.planned : 1
  const work = { frames: Math.round(left.frames * share), time, data: left.data * share }
  return { ...progress, expected: totalOf(work, left.count, setupsLeft, pace) }
}
