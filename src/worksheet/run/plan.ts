import { fitMagnification } from '../../functions/camera/fit.ts'
import type { TilePlan } from '../../functions/camera/tile-plan.ts'
import { type Allowed, fewestSetups } from '../../functions/work/setups.ts'
import {
  type Amount,
  addTo,
  type Estimate,
  NOTHING,
  type Pace,
  type Progress,
  progressOf,
  type Total,
  totalOf,
} from './estimate.ts'
import { ratioText, samplingText } from './plan-text.ts'
import { type AvailableLens, type Means, type Range, Reach, withinTrack } from './reach.ts'
import { type Face, framesAt, greatestMagnification } from './tiles.ts'
import * as words from './words.ts'

/** One original of the list; lengths in m, sampling in px/m, times in s, data in bit. */
export interface Original extends Face {
  /** Its place in the list, from 0. */
  readonly row: number
  readonly title: string
  readonly thickness: number
  /** Wanted at the original. */
  readonly sampling: number
  /** Originals of different exposure classes share no set-up. */
  readonly exposure: string
  /** It is not taken in parts. */
  readonly inOneFrame?: boolean
  /** Pages or sides to take. */
  readonly pages: number
  readonly frameTime: number
  /** To lay it on and take it off. */
  readonly originalTime: number
  readonly frameData: number
  readonly done: boolean
  readonly actualTime?: number | undefined
  readonly actualFrames?: number | undefined
}

/** A row the planner cannot read. */
export interface UnreadableOriginal {
  readonly row: number
  readonly title: string
  readonly why: string
  readonly done: boolean
}

/** The camera, the lens and the column; lengths in m. */
export interface Rig extends Pace {
  readonly sensor: { readonly width: number; readonly height: number }
  /** Length per pixel. */
  readonly pitch: number
  readonly lens?: AvailableLens | undefined
  readonly column?:
    | {
        /** From the sensor up to the mark on the carriage. */
        readonly offset: number
        readonly least?: number | undefined
        readonly most?: number | undefined
      }
    | undefined
  /** Copies stored of each frame, the first included. */
  readonly copies: number
}

/** The same originals once more, in another set-up of the sheet. */
export interface Pass {
  readonly title: string
  readonly list: readonly (Original | UnreadableOriginal)[]
  readonly rig: Rig
}

export interface Planned extends Amount {
  readonly original: Original
  readonly tiles: TilePlan
  /** Why it is taken in parts. */
  readonly tiled?: string | undefined
  /** The carriage's mark on the column, the original's thickness included. */
  readonly height?: number | undefined
}

export interface PlannedSetup extends Amount {
  readonly magnification: number
  /** What it gives, in px/m: at least what each of its originals asks. */
  readonly sampling: number
  readonly exposure: string
  readonly means: Means | undefined
  /** From original to sensor, in m. */
  readonly track: number | undefined
  /** Of the carriage's mark, from the thinnest original to the thickest. */
  readonly heights?: { readonly least: number; readonly most: number } | undefined
  readonly originals: readonly Planned[]
}

/** Why a row is in no set-up. */
export type Cause = 'unread' | 'reach' | 'column' | 'overlap' | 'tiles' | 'one frame'

export interface Unplanned {
  readonly row: number
  readonly title: string
  readonly cause: Cause
  readonly why: string
  readonly done: boolean
}

export interface RunPlan {
  readonly setups: readonly PlannedSetup[]
  readonly unplanned: readonly Unplanned[]
  /** Done, and in no set-up because only what is left is planned. */
  readonly leftOut: readonly (Original | UnreadableOriginal)[]
  readonly total: Total
  /** Of the whole list, whatever is planned of it. */
  readonly progress: Progress
}

/** More frames of one original are taken to be a slip in a unit. */
const MOST_TILES = 10_000

interface Candidate {
  readonly original: Original
  /** The fewest frames it can be taken in, over all set-ups. */
  readonly amount: Amount
  readonly allowed: Omit<Allowed, 'exposureClass'>
}

/**
 * Puts originals into set-ups that share magnification, means of getting closer and exposure: the fewest there can be
 * while every original is taken in the fewest frames its required sampling allows.
 *
 * An original in one frame allows every magnification from required sampling × pitch to where it fills the sensor; one
 * too large for that, from there to where one more frame would be needed. Both are intervals, cut to what the lens
 * and its tubes reach, so that the fewest points that touch all of them are the fewest set-ups.
 *
 * In working order: the exposures as they first come in the list; in each from the lowest camera to the highest, which
 * goes one way and is always set from below, so that play in its drive does not count, and tubes only come off; in a
 * set-up first what is taken whole, then by thickness, then as listed.
 */
export function planRun(
  list: readonly (Original | UnreadableOriginal)[],
  rig: Rig,
  options: { readonly left?: boolean; readonly later?: readonly Pass[] } = {},
): RunPlan {
  const first = planPass(list, rig, options.left === true)
  const later = (options.later ?? []).map(({ title, list: again, rig: other }) => {
    const pass = planPass(
      again.map((one) => inSetUp(one, title)),
      other,
      options.left === true,
    )
    return { ...pass, unplanned: pass.unplanned.map((one) => ({ ...one, why: words.inSetUp(title, one.why) })) }
  })
  const passes = [first, ...later]
  const setups = passes.flatMap((pass) => pass.setups)
  const setupsLeft = setups.filter(({ originals }) => originals.some(({ original }) => !original.done)).length
  // An original is one, in however many set-ups it is taken.
  const rows = new Set(setups.flatMap(({ originals }) => originals.map(({ original }) => original.row)))
  return {
    setups,
    unplanned: passes.flatMap(({ unplanned }) => unplanned),
    leftOut: first.leftOut,
    total: totalOf(setups.reduce(addTo, NOTHING), rows.size, setups.length, rig),
    progress: progressOf(overPasses(passes.flatMap(({ feasible }) => feasible)), setupsLeft, rig),
  }
}

const inSetUp = (one: Original | UnreadableOriginal, title: string): Original | UnreadableOriginal =>
  'why' in one ? one : { ...one, exposure: one.exposure === '' ? title : `${title}, ${one.exposure}` }

/** What is planned for each original over all passes; what it took is noted once. */
function overPasses(feasible: readonly Candidate[]): Estimate[] {
  const rows = new Map<number, Estimate>()
  for (const { amount, original } of feasible) {
    const { row, done, actualTime, actualFrames } = original
    rows.set(row, { planned: addTo(rows.get(row)?.planned ?? NOTHING, amount), done, actualTime, actualFrames })
  }
  return [...rows.values()]
}

interface PlannedPass {
  readonly setups: readonly PlannedSetup[]
  readonly unplanned: readonly Unplanned[]
  readonly leftOut: readonly (Original | UnreadableOriginal)[]
  readonly feasible: readonly Candidate[]
}

function planPass(list: readonly (Original | UnreadableOriginal)[], rig: Rig, onlyLeft: boolean): PlannedPass {
  const reach = new Reach(rig.lens)
  const unplanned: Unplanned[] = []
  const leftOut: (Original | UnreadableOriginal)[] = []
  const feasible: Candidate[] = []
  const candidates: Candidate[] = []
  for (const one of list) {
    const found = 'why' in one ? refused(one, 'unread', one.why) : candidateOf(one, rig, reach)
    if ('amount' in found) feasible.push(found)
    if (onlyLeft && one.done) leftOut.push(one)
    else if ('amount' in found) candidates.push(found)
    else unplanned.push(found)
  }
  return { setups: setupsOf(candidates, rig, reach), unplanned, leftOut, feasible }
}

function setupsOf(candidates: readonly Candidate[], rig: Rig, reach: Reach): PlannedSetup[] {
  const classes = new Map<string, number>()
  const classOf = (exposure: string): number => {
    const known = classes.get(exposure) ?? classes.size
    classes.set(exposure, known)
    return known
  }
  return fewestSetups(
    candidates.map(({ original, allowed }) => ({ ...allowed, exposureClass: classOf(original.exposure) })),
  )
    .setups.toSorted((a, b) => a.exposureClass - b.exposureClass || b.magnification - a.magnification)
    .map(({ magnification, originals }) =>
      setupOf(
        magnification,
        originals.map((i) => candidates[i] as Candidate),
        rig,
        reach,
      ),
    )
}

function setupOf(magnification: number, members: readonly Candidate[], rig: Rig, reach: Reach): PlannedSetup {
  const means = reach.meansFor(magnification)
  const track = means?.track(magnification)
  const height = track !== undefined && rig.column ? track + rig.column.offset : undefined
  const originals = members
    .map(({ original, amount, allowed }): Planned => {
      // Rounding to just below its least magnification could add a frame.
      const tiles = framesAt(original, rig.sensor, magnification) ?? framesAt(original, rig.sensor, allowed.least)
      return {
        original,
        ...amount,
        tiles: tiles as TilePlan,
        height: height === undefined ? undefined : height + original.thickness,
        tiled: (tiles as TilePlan).count > 1 ? tooLarge(original, rig, allowed.least) : undefined,
      }
    })
    .sort(
      (a, b) =>
        Number(a.tiles.count > 1) - Number(b.tiles.count > 1) ||
        a.original.thickness - b.original.thickness ||
        a.original.row - b.original.row,
    )
  const thicknesses = originals.map(({ original }) => original.thickness)
  return {
    magnification,
    sampling: magnification / rig.pitch,
    exposure: (members[0] as Candidate).original.exposure,
    means,
    track,
    heights:
      height === undefined
        ? undefined
        : { least: height + leastOf(thicknesses), most: height - leastOf(thicknesses.map((one) => -one)) },
    originals,
    ...originals.reduce(addTo, NOTHING),
  }
}

const leastOf = (values: readonly number[]): number => values.reduce((least, one) => Math.min(least, one), Infinity)

const refused = ({ row, title, done }: UnreadableOriginal | Original, cause: Cause, why: string): Unplanned => ({
  row,
  title,
  done,
  cause,
  why,
})

const millimetres = (length: number): string => `${Number((length * 1e3).toPrecision(4))} mm`

/** Why an original is taken in parts. */
function tooLarge(original: Original, rig: Rig, least: number): string {
  const { sensor, pitch } = rig
  const { width, height, border, turn, sampling } = original
  const whole = fitMagnification(width, height, sensor.width, sensor.height, border, turn)
  if (whole < sampling * pitch * (1 - 1e-9)) return words.tooLarge(samplingText(sampling))
  const column = withinColumn(original, rig)
  const isTooHigh = typeof column === 'object' && column.least > whole * (1 + 1e-9)
  return (isTooHigh ? words.columnTooShort : words.nextMagnification)(ratioText(whole), ratioText(least))
}

/** The magnifications the column allows an original; undefined where nothing is said of the column. */
function withinColumn({ thickness }: Original, { lens, column }: Rig): Range | undefined | 'none' {
  if (!lens || !column || (column.least === undefined && column.most === undefined)) return undefined
  const over = column.offset + thickness
  const end = (height: number | undefined): number | undefined => (height === undefined ? undefined : height - over)
  return withinTrack(lens, end(column.least), end(column.most)) ?? 'none'
}

function candidateOf(original: Original, rig: Rig, reach: Reach): Candidate | Unplanned {
  const { sensor, pitch, copies } = rig
  const { sampling, overlap, pages, frameTime, originalTime, frameData } = original
  const need = sampling * pitch
  const column = withinColumn(original, rig)
  if (column === 'none') return refused(original, 'column', words.noHeight)
  const least = reach.up(Math.max(need, column?.least ?? 0))
  if (least === undefined)
    return refused(
      original,
      'reach',
      words.outOfReach(samplingText(sampling), ratioText(need), ratioText(reach.greatest)),
    )
  if (column && least > column.most * (1 + 1e-9)) return refused(original, 'column', words.tooLow(ratioText(least)))
  const frames = framesAt(original, sensor, least)
  if (original.inOneFrame && frames?.count !== 1)
    return refused(original, 'one frame', words.notInOneFrame(samplingText(sampling)))
  if (!frames)
    return refused(
      original,
      'overlap',
      overlap === undefined
        ? words.overlapMissing(tooLarge(original, rig, least))
        : words.overlapTooLong(
            ratioText(least),
            millimetres(overlap),
            millimetres(Math.min(sensor.width, sensor.height) / least),
          ),
    )
  if (frames.count > MOST_TILES) return refused(original, 'tiles', words.tooManyFrames(frames.count.toPrecision(3)))
  const end = Math.min(greatestMagnification(frames.count, original, sensor), column?.most ?? Infinity)
  const count = frames.count * pages
  return {
    original,
    amount: { frames: count, time: originalTime + count * frameTime, data: count * frameData * copies },
    allowed: { least, most: Math.max(least, reach.down(end) ?? least) },
  }
}
