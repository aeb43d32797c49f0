import { nearestMark } from '../../units/index.ts'
import type { DrawingInputs } from '../canvas/drawing-options.ts'
import type { Metres } from '../canvas/measures.ts'
import { numberReader } from '../canvas/number-inputs.ts'
import { apertureMarks } from '../plots/axes.ts'
import { DEPTH_WORDS as WORDS } from './words.ts'

/** The causes of blur at the sensor at an f-number, as diameters. */
export interface Blur {
  readonly defocus: Metres
  readonly diffraction: Metres
  readonly pixel: Metres
  /** The root of the sum of the squares of the three. */
  readonly together: Metres
}

/** The figures that the plot shows. */
export interface DepthFigures {
  readonly depth: Metres | undefined
  readonly magnification: number
  readonly pupilRatio: number
  readonly wavelength: Metres
  readonly pitch: Metres | undefined
  /** The diameter allowed for defocus. */
  readonly allowed: Metres | undefined
  readonly aperture: number | undefined
  /** The range of f-numbers of the plot. */
  readonly range: readonly [number, number]
  /** The f-number with the least blur from defocus and diffraction together; undefined without a depth. */
  readonly best: number | undefined
  /** The nearest marked aperture of the lens. */
  readonly bestMark: string | undefined
  /** The f-number from which defocus alone is within what is allowed. */
  readonly needed: number | undefined
  blurAt(aperture: number): Blur
  readonly omissions: readonly string[]
}

/** Diameter of the Airy disc to its first dark ring: 2.44 × wavelength × f-number. */
const AIRY = 2.44
const USUAL_RANGE = [2.8, 32] as const
const SCALE_ENDS = [0.5, 128] as const

/** Reads the inputs; undefined without a usable magnification. Unusable inputs are reported as omissions. */
export function readDepth(inputs: DrawingInputs, omissions: string[]): DepthFigures | undefined {
  const read = numberReader(omissions)
  const depth = read.positive(inputs.depth, WORDS.depth, 100)
  const magnification = read.positive(inputs.magnification, WORDS.magnification, 1000)
  const pitch = read.positive(inputs.pitch, WORDS.pixel, 0.01)
  const allowed = read.positive(inputs.blur, WORDS.blur, 1)
  const aperture = read.positive(inputs.aperture, WORDS.aperture, 1000)
  const pupilRatio = read.positive(inputs.pupil_ratio, WORDS.pupilRatio, 100) ?? 1
  const wavelength = read.positive(inputs.wavelength, WORDS.wavelength, 1e-4) ?? 550e-9
  const widest = read.positive(inputs.widest, WORDS.widest, 1000)
  const smallest = read.positive(inputs.smallest, WORDS.smallest, 1000)
  if (magnification === undefined) return undefined

  const pupilFactor = 1 + magnification / pupilRatio
  const best =
    depth === undefined ? undefined : (magnification * Math.sqrt(depth / (2 * AIRY * wavelength))) / pupilFactor
  const needed =
    depth === undefined || allowed === undefined
      ? undefined
      : (depth * magnification ** 2) / (2 * allowed * pupilFactor)
  const blurAt = (number: number): Blur => {
    const effective = number * pupilFactor
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

/** The range of the lens if given, otherwise the usual range extended to the marked apertures. */
function rangeOf(
  widest: number | undefined,
  smallest: number | undefined,
  marked: readonly (number | undefined)[],
): readonly [number, number] {
  const shown = marked.filter((one) => one !== undefined && one >= SCALE_ENDS[0] && one <= SCALE_ENDS[1]) as number[]
  const from = widest ?? Math.min(USUAL_RANGE[0], ...shown)
  const to = smallest ?? Math.max(USUAL_RANGE[1], ...shown)
  const clamp = (value: number) => Math.min(SCALE_ENDS[1], Math.max(SCALE_ENDS[0], value))
  // The range is at least one stop.
  return [clamp(Math.min(from, to)), Math.max(clamp(Math.min(from, to)) * Math.SQRT2, clamp(Math.max(from, to)))]
}

/** The mark nearest to an f-number among those of the lens. */
function markFor(aperture: number, widest = 0, smallest = Number.POSITIVE_INFINITY): string | undefined {
  const nearest = nearestMark('aperture', Math.min(Math.max(aperture, widest), smallest))
  const marks = apertureMarks(widest, smallest)
  if (nearest && marks.some(({ text }) => text === nearest.text)) return nearest.text
  return marks.length === 0 ? undefined : (aperture < (marks[0]?.exact ?? 0) ? marks[0] : marks.at(-1))?.text
}
