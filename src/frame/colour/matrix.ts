/** Three rows of three. */
export type Matrix = readonly [number, number, number, number, number, number, number, number, number]
export type Triple = readonly [number, number, number]

/** The white of the profile connection space (ICC.1:2022, 7.2.16). */
export const D50: Triple = [0.9642, 1, 0.8249]

export const times = (m: Matrix, [x, y, z]: Triple): Triple => [
  m[0] * x + m[1] * y + m[2] * z,
  m[3] * x + m[4] * y + m[5] * z,
  m[6] * x + m[7] * y + m[8] * z,
]

export function product(m: Matrix, n: Matrix): Matrix {
  const column = (i: number): Triple => times(m, [n[i] as number, n[i + 3] as number, n[i + 6] as number])
  const [a, b, c] = [column(0), column(1), column(2)]
  return [a[0], b[0], c[0], a[1], b[1], c[1], a[2], b[2], c[2]]
}

export function inverse(m: Matrix): Matrix {
  const [a, b, c, d, e, f, g, h, i] = m
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
  return [
    (e * i - f * h) / det,
    (c * h - b * i) / det,
    (b * f - c * e) / det,
    (f * g - d * i) / det,
    (a * i - c * g) / det,
    (c * d - a * f) / det,
    (d * h - e * g) / det,
    (b * g - a * h) / det,
    (a * e - b * d) / det,
  ]
}

/** The linear Bradford transform (ICC.1:2022, annex E). */
const BRADFORD: Matrix = [0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296]

const xyzOf = ([x, y]: readonly [number, number]): Triple => [x / y, 1, (1 - x - y) / y]

/** No entry of a matrix of real primaries comes near this; those of primaries nearly on a line do. */
const LARGEST = 10

/** From linear red, green and blue to XYZ of the D50 connection space; undefined where the primaries lie on a line. */
export function matrixOf(
  white: readonly [number, number],
  red: readonly [number, number],
  green: readonly [number, number],
  blue: readonly [number, number],
): Matrix | undefined {
  const [r, g, b] = [red, green, blue].map(([x, y]): Triple => [x, y, 1 - x - y]) as [Triple, Triple, Triple]
  const primaries: Matrix = [r[0], g[0], b[0], r[1], g[1], b[1], r[2], g[2], b[2]]
  const from = xyzOf(white)
  const [s, t, u] = times(inverse(primaries), from)
  const native = product(primaries, [s, 0, 0, 0, t, 0, 0, 0, u])
  const [cone, aim] = [times(BRADFORD, from), times(BRADFORD, D50)]
  const scaled: Matrix = [aim[0] / cone[0], 0, 0, 0, aim[1] / cone[1], 0, 0, 0, aim[2] / cone[2]]
  const matrix = product(product(product(inverse(BRADFORD), scaled), BRADFORD), native)
  return matrix.every((value) => Math.abs(value) < LARGEST) ? matrix : undefined
}
