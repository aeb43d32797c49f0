import {
  apply,
  bradford,
  inverse,
  type Matrix,
  multiply,
  type Triple,
  tristimulus,
  WHITES,
} from '../../functions/acceptance/colour-space.ts'

type Point = readonly [x: number, y: number]

/** No entry of a matrix of real primaries comes near this; those of primaries nearly on a line do. */
const LARGEST = 10

/** A matrix of columns, each XYZ. */
export const ofColumns = ([r, g, b]: readonly [Triple, Triple, Triple]): Matrix => [
  [r[0], g[0], b[0]],
  [r[1], g[1], b[1]],
  [r[2], g[2], b[2]],
]

/** From linear red, green and blue to XYZ of the D50 connection space; undefined where the primaries lie on a line. */
export function matrixOf(white: Point, red: Point, green: Point, blue: Point): Matrix | undefined {
  const xyz = ([x, y]: Point): Triple => tristimulus({ x, y })
  const primaries = ofColumns([red, green, blue].map(([x, y]): Triple => [x, y, 1 - x - y]) as [Triple, Triple, Triple])
  const [r, g, b] = apply(inverse(primaries), xyz(white))
  const native = multiply(primaries, [
    [r, 0, 0],
    [0, g, 0],
    [0, 0, b],
  ])
  const matrix = multiply(bradford(xyz(white), WHITES.D50), native)
  return matrix.flat().every((value) => Math.abs(value) < LARGEST) ? matrix : undefined
}
