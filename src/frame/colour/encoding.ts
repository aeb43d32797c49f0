import { bradford, luminanceOf, type Matrix, multiply, WHITES } from '../../functions/acceptance/colour-space.ts'
import { RGB_SPACES, type RgbSpace, srgbLinear, toTristimulus } from '../../functions/acceptance/rgb-spaces.ts'
import { matrixOf } from './matrix.ts'
import * as words from './words.ts'

/** From a code, 0 to 1, to linear light. */
export type Curve = (code: number) => number

/** How the codes of a picture encode light and colour. */
export interface Encoding {
  readonly name: string
  /** Of red, green and blue; of grey one. */
  readonly curves: readonly Curve[]
  /** From linear light to XYZ of the D50 connection space; a grey has none. */
  readonly matrix: Matrix | undefined
}

type Point = readonly [number, number]
const BT709 = [
  [0.3127, 0.329],
  [0.64, 0.33],
  [0.3, 0.6],
  [0.15, 0.06],
] as const satisfies readonly Point[]

const lightnessCurve: Curve = (code) => luminanceOf(100 * code)

/** Encodings that are called by their names when a picture’s numbers are theirs. */
const KNOWN: readonly Encoding[] = Object.entries(RGB_SPACES as Readonly<Record<string, RgbSpace>>).map(
  ([name, { red, green, blue, white, decode }]) => {
    const native = toTristimulus({ red, green, blue, white, decode })
    const matrix = white === 'D50' ? native : multiply(bradford(WHITES[white], WHITES.D50), native)
    return { name, curves: [decode, decode, decode], matrix }
  },
)

/** One of the known RGB spaces, with its curves and primaries. */
export const named = (name: keyof typeof RGB_SPACES): Encoding => KNOWN.find((one) => one.name === name) as Encoding

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

const same = (one: Curve, other: Curve): boolean =>
  CODES.every((code) => Math.abs(one(code) - other(code)) <= SAME_CURVE)

const samePrimaries = (one: Matrix, other: Matrix): boolean =>
  one.flat().every((value, i) => Math.abs(value - (other.flat()[i] as number)) <= SAME_PRIMARY)

/** The exponent, where a curve is a plain power of the code. */
function exponentOf(curve: Curve): number | undefined {
  const exponent = Math.log(curve(0.5)) / Math.log(0.5)
  const rounded = Math.round(exponent * 100) / 100
  return rounded > 0 && same(curve, (code) => code ** rounded) ? rounded : undefined
}

/** What an encoding is called by its numbers, not by what its file says; undefined where it has no common name. */
export function knownName({ curves, matrix }: Pick<Encoding, 'curves' | 'matrix'>): string | undefined {
  if (curves.every((curve) => same(curve, (code) => code))) return 'linear'
  if (matrix) {
    const known = KNOWN.find(
      (one) =>
        samePrimaries(one.matrix as Matrix, matrix) && curves.every((curve, i) => same(curve, one.curves[i] as Curve)),
    )
    return known?.name
  }
  const [curve] = curves as [Curve]
  const known = GREY_CURVES.find(([, one]) => same(curve, one))?.[0]
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
  const [white, red, green, blue] = (chromaticities ?? BT709) as readonly [Point, Point, Point, Point]
  const matrix = grey ? undefined : matrixOf(white, red, green, blue)
  if (!grey && !matrix) return undefined
  const curves = grey ? [curve] : [curve, curve, curve]
  const plain = gamma === undefined ? 'sRGB' : `gamma ${Math.round(100 / gamma) / 100}`
  const described = grey || !chromaticities ? plain : words.ownPrimaries(plain)
  return { name: knownName({ curves, matrix }) ?? described, curves, matrix }
}
