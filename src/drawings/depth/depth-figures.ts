import { nearestMark } from '../../units/index.ts'
import type { DrawingInputs } from '../canvas/drawing-options.ts'
import { numberReader } from '../canvas/number-inputs.ts'
import { apertureMarks } from '../plots/axes.ts'

/** What blurs an image at the sensor at an f-number: diameters in metres. */
export interface Blur {
  readonly defocus: number
  readonly diffraction: number
  readonly pixel: number
  /** Root of the sum of squares. */
  readonly together: number
}

/** All that a drawing of the depth shows. */
export interface DepthFigures {
  readonly depth: number | undefined
  readonly magnification: number
  readonly pupilRatio: number
  readonly wavelength: number
  readonly pitch: number | undefined
  /** Allowed, of defocus. */
  readonly allowed: number | undefined
  readonly aperture: number | undefined
  /** The f-numbers drawn, wide to small. */
  readonly range: readonly [number, number]
  /** Where defocus and diffraction together are least; undefined without a depth. */
  readonly best: number | undefined
  /** The mark of the lens nearest to it. */
  readonly bestMark: string | undefined
  /** From which defocus alone is no more than allowed. */
  readonly needed: number | undefined
  blurAt(aperture: number): Blur
  readonly omissions: readonly string[]
}

const AIRY = 2.44
const USUAL_RANGE = [2.8, 32] as const
const SCALE_ENDS = [0.5, 128] as const

/** Undefined where not even the magnification is known; then why stands in `cannot`. */
export function readDepth(inputs: DrawingInputs, omissions: string[]): DepthFigures | undefined {
  const read = numberReader(omissions)
  const depth = read.positive(inputs.depth, 'The depth wanted', 100)
  const magnification = read.positive(inputs.magnification, 'The magnification', 1000)
  const pitch = read.positive(inputs.pitch, 'The pixel', 0.01)
  const allowed = read.positive(inputs.blur, 'The blur allowed', 1)
  const aperture = read.positive(inputs.aperture, 'The aperture set', 1000)
  const pupilRatio = read.positive(inputs.pupil_ratio, 'The pupil ratio', 100) ?? 1
  const wavelength = read.positive(inputs.wavelength, 'The wavelength', 1e-4) ?? 550e-9
  const widest = read.positive(inputs.widest, 'The widest aperture', 1000)
  const smallest = read.positive(inputs.smallest, 'The smallest aperture', 1000)
  if (magnification === undefined) return undefined

  const atWork = 1 + magnification / pupilRatio
  const best = depth === undefined ? undefined : (magnification * Math.sqrt(depth / (2 * AIRY * wavelength))) / atWork
  const needed =
    depth === undefined || allowed === undefined ? undefined : (depth * magnification ** 2) / (2 * allowed * atWork)
  const blurAt = (number: number): Blur => {
    const effective = number * atWork
    const defocus = depth === undefined ? 0 : (depth * magnification ** 2) / (2 * effective)
    const diffraction = AIRY * wavelength * effective
    const pixel = pitch ?? 0
    return { defocus, diffraction, pixel, together: Math.hypot(defocus, diffraction, pixel) }
  }
  const range = rangeOf(widest, smallest, [aperture, best])
  return {
    depth,
    magnification,
    pupilRatio,
    wavelength,
    pitch,
    allowed,
    aperture,
    range,
    best,
    bestMark: best === undefined ? undefined : markFor(best, widest, smallest),
    needed,
    blurAt,
    omissions,
  }
}

/** The lens's own where given, else the usual one and what has to be marked. */
function rangeOf(
  widest: number | undefined,
  smallest: number | undefined,
  marked: readonly (number | undefined)[],
): readonly [number, number] {
  const shown = marked.filter((one) => one !== undefined && one >= SCALE_ENDS[0] && one <= SCALE_ENDS[1]) as number[]
  const from = widest ?? Math.min(USUAL_RANGE[0], ...shown)
  const to = smallest ?? Math.max(USUAL_RANGE[1], ...shown)
  const clamp = (value: number) => Math.min(SCALE_ENDS[1], Math.max(SCALE_ENDS[0], value))
  // At least a stop, so that there is something to see.
  return [clamp(Math.min(from, to)), Math.max(clamp(Math.min(from, to)) * Math.SQRT2, clamp(Math.max(from, to)))]
}

/** The mark nearest to an aperture, among those the lens has. */
function markFor(aperture: number, widest = 0, smallest = Number.POSITIVE_INFINITY): string | undefined {
  const nearest = nearestMark('aperture', Math.min(Math.max(aperture, widest), smallest))
  const marks = apertureMarks(widest, smallest)
  if (nearest && marks.some(({ text }) => text === nearest.text)) return nearest.text
  return marks.length === 0 ? undefined : (aperture < (marks[0]?.exact ?? 0) ? marks[0] : marks.at(-1))?.text
}
