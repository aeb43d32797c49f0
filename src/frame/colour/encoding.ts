import { luminanceOf } from '../../functions/acceptance/colour-space.ts'
import { srgbLinear } from '../../functions/acceptance/rgb-spaces.ts'
import { type Matrix, matrixOf } from './matrix.ts'

/** From a code, 0 to 1, to linear light. */
export type Curve = (code: number) => number

/** How the codes of a picture stand for light and colour. */
export interface Encoding {
  readonly name: string
  /** Of red, green and blue; of grey one. */
  readonly curves: readonly Curve[]
  /** From linear light to XYZ of the D50 connection space; a grey has none. */
  readonly matrix: Matrix | undefined
}

type Point = readonly [number, number]
const D65: Point = [0.3127, 0.329]
const D50_POINT: Point = [0.3457, 0.3585]
const BT709 = [
  [0.64, 0.33],
  [0.3, 0.6],
  [0.15, 0.06],
] as const satisfies readonly Point[]

const lightnessCurve: Curve = (code) => luminanceOf(100 * code)
/** ISO 22028-2: a straight start that meets the power at 1/512. */
const romm: Curve = (code) => (code < 16 / 512 ? code / 16 : code ** 1.8)
const rec2020: Curve = (code) => (code < 4.5 * 0.018054 ? code / 4.5 : ((code + 0.0993) / 1.0993) ** (1 / 0.45))

const rgb = (
  name: string,
  curve: Curve,
  white: Point,
  [red, green, blue]: readonly [Point, Point, Point],
): Encoding => ({
  name,
  curves: [curve, curve, curve],
  matrix: matrixOf(white, red, green, blue) as Matrix,
})

export const SRGB = rgb('sRGB', srgbLinear, D65, BT709)
export const ADOBE_RGB = rgb('Adobe RGB (1998)', (code) => code ** (563 / 256), D65, [
  [0.64, 0.33],
  [0.21, 0.71],
  [0.15, 0.06],
])

/** Encodings that are called by their names when a picture’s numbers are theirs. */
export const KNOWN: readonly Encoding[] = [
  SRGB,
  ADOBE_RGB,
  rgb('ROMM RGB', romm, D50_POINT, [
    [0.7347, 0.2653],
    [0.1596, 0.8404],
    [0.0366, 0.0001],
  ]),
  rgb('Display P3', srgbLinear, D65, [
    [0.68, 0.32],
    [0.265, 0.69],
    [0.15, 0.06],
  ]),
  rgb('eciRGB v2', lightnessCurve, D50_POINT, [
    [0.67, 0.33],
    [0.21, 0.71],
    [0.14, 0.08],
  ]),
  rgb('Rec. 2020', rec2020, D65, [
    [0.708, 0.292],
    [0.17, 0.797],
    [0.131, 0.046],
  ]),
]

export const GREY_SRGB: Encoding = { name: 'sRGB', curves: [srgbLinear], matrix: undefined }

const GREY_CURVES: readonly (readonly [string, Curve])[] = [
  ['sRGB', srgbLinear],
  ['L*', lightnessCurve],
]

/** Curves of one encoding agree within this, in linear light; sRGB and a plain power of 2.2 are four times as far apart. */
const SAME_CURVE = 0.002
/** Profiles round their numbers, and their makers adapted the whites in slightly different ways. */
const SAME_PRIMARY = 0.002

const CODES = Array.from({ length: 65 }, (_, i) => i / 64)

const alike = (one: Curve, other: Curve): boolean =>
  CODES.every((code) => Math.abs(one(code) - other(code)) <= SAME_CURVE)

/** The exponent, where a curve is a plain power of the code. */
function exponentOf(curve: Curve): number | undefined {
  const exponent = Math.log(curve(0.5)) / Math.log(0.5)
  const rounded = Math.round(exponent * 100) / 100
  return rounded > 0 && alike(curve, (code) => code ** rounded) ? rounded : undefined
}

/** What an encoding is called by its numbers, not by what its file says; undefined where it has no common name. */
export function knownName({ curves, matrix }: Pick<Encoding, 'curves' | 'matrix'>): string | undefined {
  if (curves.every((curve) => alike(curve, (code) => code))) return 'linear'
  if (matrix) {
    const known = KNOWN.find(
      (one) =>
        (one.matrix as Matrix).every((value, i) => Math.abs(value - (matrix[i] as number)) <= SAME_PRIMARY) &&
        curves.every((curve, i) => alike(curve, one.curves[i] as Curve)),
    )
    return known?.name
  }
  const [curve] = curves as [Curve]
  const known = GREY_CURVES.find(([, one]) => alike(curve, one))?.[0]
  const exponent = exponentOf(curve)
  return known ?? (exponent === undefined ? undefined : `gamma ${exponent}`)
}

/** The encoding that gAMA and cHRM chunks of a PNG describe; undefined where the chromaticities make no colours. */
export function fromChunks(
  gamma: number | undefined,
  chromaticities: readonly Point[] | undefined,
  grey: boolean,
): Encoding | undefined {
  const curve: Curve = gamma === undefined ? srgbLinear : (code) => code ** (1 / gamma)
  const [white, red, green, blue] = (chromaticities ?? [D65, ...BT709]) as readonly [Point, Point, Point, Point]
  const matrix = grey ? undefined : matrixOf(white, red, green, blue)
  if (!grey && !matrix) return undefined
  const curves = grey ? [curve] : [curve, curve, curve]
  const plain = gamma === undefined ? 'sRGB' : `gamma ${Math.round(100 / gamma) / 100}`
  const described = grey || !chromaticities ? plain : `${plain}, the picture’s own primaries`
  return { name: knownName({ curves, matrix }) ?? described, curves, matrix }
}
