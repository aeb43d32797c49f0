import {
  apply,
  bradford,
  type Chromaticity,
  inverse,
  type Lab,
  labOf,
  luminanceOf,
  type Matrix,
  multiply,
  type Triple,
  tristimulus,
  WHITES,
  type White,
} from './colour-space.ts'

/** An encoding of pictures: its primaries, its white, and how a code becomes linear. */
export interface RgbSpace {
  readonly red: Chromaticity
  readonly green: Chromaticity
  readonly blue: Chromaticity
  readonly white: White
  /** The linear value of a code, both from 0 to 1. */
  readonly decode: (code: number) => number
}

/** The linear value behind an sRGB value from 0 to 1 (IEC 61966-2-1). */
export const srgbLinear = (value: number): number =>
  value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4

/** Adobe RGB (1998), 4.3.1.2: 2 51/256. */
const ADOBE_EXPONENT = 563 / 256

/** ROMM RGB (ANSI/I3A IT10.7666): a straight foot below 16/512, a power of 1.8 above. */
const rommLinear = (code: number): number => (code < 16 / 512 ? code / 16 : code ** 1.8)

/** The encodings whose Lab values can be computed, by the names in their profiles. */
export const RGB_SPACES = {
  sRGB: {
    red: { x: 0.64, y: 0.33 },
    green: { x: 0.3, y: 0.6 },
    blue: { x: 0.15, y: 0.06 },
    white: 'D65',
    decode: srgbLinear,
  },
  'Adobe RGB (1998)': {
    red: { x: 0.64, y: 0.33 },
    green: { x: 0.21, y: 0.71 },
    blue: { x: 0.15, y: 0.06 },
    white: 'D65',
    decode: (code) => code ** ADOBE_EXPONENT,
  },
  'ROMM RGB': {
    red: { x: 0.7347, y: 0.2653 },
    green: { x: 0.1596, y: 0.8404 },
    blue: { x: 0.0366, y: 0.0001 },
    white: 'D50',
    decode: rommLinear,
  },
  'Display P3': {
    red: { x: 0.68, y: 0.32 },
    green: { x: 0.265, y: 0.69 },
    blue: { x: 0.15, y: 0.06 },
    white: 'D65',
    decode: srgbLinear,
  },
  'eciRGB v2': {
    red: { x: 0.670103092783505, y: 0.329896907216495 },
    green: { x: 0.209905660377358, y: 0.709905660377358 },
    blue: { x: 0.140061791967044, y: 0.08032955715757 },
    white: 'D50',
    decode: (code) => luminanceOf(100 * code),
  },
} as const satisfies Readonly<Record<string, RgbSpace>>

export type Encoding = keyof typeof RGB_SPACES

/** Tristimulus values of linear red, green and blue under the encoding’s own white, whose Y is 1. */
export function toTristimulus({ red, green, blue, white }: RgbSpace): Matrix {
  const primaries = [red, green, blue].map(tristimulus) as unknown as Matrix
  const columns: Matrix = ([0, 1, 2] as const).map((i) => primaries.map((primary) => primary[i])) as unknown as Matrix
  const [r, g, b] = apply(inverse(columns), WHITES[white])
  return columns.map(([x, y, z]) => [x * r, y * g, z * b]) as unknown as Matrix
}

/** From linear values to tristimulus values under a white, for each encoding and white computed once. */
const conversions = new Map<string, Matrix>()

function conversion(encoding: Encoding, white: White): Matrix {
  const key = `${encoding}, ${white}`
  let matrix = conversions.get(key)
  if (!matrix) {
    const space = RGB_SPACES[encoding]
    const own = toTristimulus(space)
    matrix = space.white === white ? own : multiply(bradford(WHITES[space.white], WHITES[white]), own)
    conversions.set(key, matrix)
  }
  return matrix
}

/**
 * CIELAB of a colour encoded from 0 to 1, adapted by Bradford where the encoding’s white is another.
 * @param white white point of the Lab values
 */
export function labFromRgb(codes: Triple, encoding: Encoding, white: White): Lab {
  const { decode } = RGB_SPACES[encoding]
  const linear = codes.map((code) => decode(code)) as unknown as Triple
  return labOf(apply(conversion(encoding, white), linear), WHITES[white])
}
