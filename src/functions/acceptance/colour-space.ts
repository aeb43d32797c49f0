/** A colour in CIELAB: lightness L*, and a* and b*. */
export interface Lab {
  readonly L: number
  readonly a: number
  readonly b: number
}

export type Triple = readonly [number, number, number]
export type Matrix = readonly [Triple, Triple, Triple]

/** A chromaticity in CIE 1931 x, y. */
export interface Chromaticity {
  readonly x: number
  readonly y: number
}

/** Tristimulus values of a chromaticity, with Y = 1. */
export const tristimulus = ({ x, y }: Chromaticity): Triple => [x / y, 1, (1 - x - y) / y]

/**
 * Tristimulus values of the white points, with Y = 1: D50 as ICC.1 fixes it for the profile connection space and
 * ANSI/I3A IT10.7666 for ROMM RGB; D65 from the chromaticity that IEC 61966-2-1 prints.
 */
export const WHITES = {
  D50: [0.9642, 1, 0.8249],
  D65: tristimulus({ x: 0.3127, y: 0.329 }),
} as const satisfies Readonly<Record<string, Triple>>

export type White = keyof typeof WHITES

/** The product of a matrix and a column of three, such as linear RGB to tristimulus values. */
export const apply = (matrix: Matrix, [x, y, z]: Triple): Triple =>
  matrix.map(([a, b, c]) => a * x + b * y + c * z) as unknown as Triple

const column = (matrix: Matrix, i: 0 | 1 | 2): Triple => [matrix[0][i], matrix[1][i], matrix[2][i]]

/** The product of two matrices: first `other`, then `one`. */
export function multiply(one: Matrix, other: Matrix): Matrix {
  const columns = ([0, 1, 2] as const).map((i) => apply(one, column(other, i))) as unknown as Matrix
  return ([0, 1, 2] as const).map((i) => column(columns, i)) as unknown as Matrix
}

const cross = ([a, b, c]: Triple, [d, e, f]: Triple): Triple => [b * f - c * e, c * d - a * f, a * e - b * d]
const dot = ([a, b, c]: Triple, [d, e, f]: Triple): number => a * d + b * e + c * f

/** The inverse of a matrix whose rows are not in one plane. */
export function inverse([u, v, w]: Matrix): Matrix {
  const [vw, wu, uv] = [cross(v, w), cross(w, u), cross(u, v)]
  const determinant = dot(u, vw)
  return ([0, 1, 2] as const).map((i) => [
    vw[i] / determinant,
    wu[i] / determinant,
    uv[i] / determinant,
  ]) as unknown as Matrix
}

/** Cone responses of the Bradford transform (K. M. Lam, 1985; as ICC.1 annex E prints it). */
const BRADFORD: Matrix = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
]

/** The linear Bradford adaptation of tristimulus values from one white to another, each white with Y = 1. */
export function bradford(from: Triple, to: Triple): Matrix {
  const [source, target] = [apply(BRADFORD, from), apply(BRADFORD, to)]
  const gains: Matrix = [
    [target[0] / source[0], 0, 0],
    [0, target[1] / source[1], 0],
    [0, 0, target[2] / source[2]],
  ]
  return multiply(inverse(BRADFORD), multiply(gains, BRADFORD))
}

const EPSILON = 216 / 24389
const KAPPA = 24389 / 27

/** L* of a relative luminance from 0 to 1 (ISO/CIE 11664-4). */
export const lightness = (Y: number): number => (Y > EPSILON ? 116 * Math.cbrt(Y) - 16 : KAPPA * Y)

/** The relative luminance of an L*. */
export const luminanceOf = (L: number): number => (L > KAPPA * EPSILON ? ((L + 16) / 116) ** 3 : L / KAPPA)

/** CIELAB of tristimulus values seen under a white with Y = 1 (ISO/CIE 11664-4). */
export function labOf(xyz: Triple, white: Triple): Lab {
  const f = (ratio: number): number => (ratio > EPSILON ? Math.cbrt(ratio) : (KAPPA * ratio + 16) / 116)
  const [x, y, z] = xyz.map((value, i) => f(value / (white[i] as number))) as unknown as Triple
  return { L: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) }
}
