import { agree, plural } from '../../units/plural.ts'

/** The heads of the columns of a plan. */
export const PLAN_HEADS = {
  setUp: 'Set-up',
  magnification: 'Magnification',
  column: 'Column',
  track: 'Original to sensor',
  exposure: 'Exposure, equipment',
  originals: 'Originals',
  frames: 'Frames',
  time: 'Time',
} as const

export const lensAlone = 'lens alone'
export const tubes = (pieces: number, lengths: string): string => `${agree(pieces, 'tube', 'tubes')} ${lengths}`
export const closeUps = (pieces: number, powers: string): string =>
  `close-up ${agree(pieces, 'lens', 'lenses')} ${powers}`
export const tiles = (across: number, down: number, turned: boolean): string =>
  `${across} × ${down} frames${turned ? ', turned' : ''}`
export const days = (count: number): string => plural(count, 'day')
export const frames = (count: number): string => plural(count, 'frame')
export const originals = (count: number): string => plural(count, 'original')
export const setUps = (count: number): string => plural(count, 'set-up')
export const fromTo = (low: string, high: string): string => `${low} to ${high}`
export const row = (number: number): string => `Row ${number}`

/** What a figure of a row must be. */
export const LIMITS = {
  above: 'more than 0',
  'none under': '0 or more',
  whole: 'a whole number from 1 to a million',
} as const

export const notPlanned = (why: string): string => `Not planned: ${why}`

/** Why an original is not in the plan of a run, and why an input gives nothing: what is wrong and what to do. */

export const noFormula = 'no formula is given'
export const otherSort = (sort: string, formula: string): string => `must be ${sort}; “${formula}” is not`
export const moreThanZero = 'must be more than 0'
export const notBelowZero = 'must not be less than 0'
export const eachMoreThanZero = 'each must be more than 0'
export const mustBe = (limit: string): string => `it must be ${limit}.`
export const emptyInput = 'nothing is filled in.'
export const noFigure = (column: string): string => `${column} has no figure in this row.`
export const tooManyCloseups = (found: number, most: number): string =>
  `There are ${found} close-up lenses; at most ${most} can be combined. Leave some out.`

export const nextMagnification = (whole: string, least: string): string =>
  `It would fit one frame at ${whole}, which none of the lenses and tubes gives; the next magnification is ${least}.`
export const columnTooShort = (whole: string, least: string): string =>
  `It would fit one frame at ${whole}, for which the column is too short; the next magnification is ${least}.`
export const tooLarge = (sampling: string): string => `Too large for one frame at ${sampling}.`
export const notInOneFrame = (sampling: string): string =>
  `One frame does not reach ${sampling}. Agree on a lower sampling for it, or take it in several frames.`
export const inSetUp = (setUp: string, why: string): string => `${setUp}: ${why}`
export const noHeight =
  'The column is too short for this lens at any magnification. Check its range and the thickness of the original.'
export const outOfReach = (sampling: string, need: string, greatest: string): string =>
  `${sampling} needs ${need}; the lens with its tubes and close-up lenses reaches ${greatest}. Lower the sampling, add a tube or a close-up lens, or use another lens.`
export const tooLow = (least: string): string =>
  `At ${least} the camera would be lower than the column allows. Lower the sampling, raise the original, or use a longer lens.`
export const overlapMissing = (why: string): string =>
  `${why} It takes overlapping frames, and their overlap is not filled in. Fill it in, or lower the sampling.`
export const overlapTooLong = (least: string, overlap: string, side: string): string =>
  `It takes more than one frame, and at ${least} the overlap of ${overlap} is as long as the frame’s shorter side, ${side}. Reduce the overlap, or lower the sampling.`
export const tooManyFrames = (frames: string): string =>
  `It would take ${frames} frames. Check its size, its sampling and their units.`
