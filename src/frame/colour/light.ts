import {
  apply,
  type Lab,
  labOf as labUnder,
  lightness,
  type Matrix,
  type Triple,
  WHITES,
} from '../../functions/acceptance/colour-space.ts'
import type { Picture } from '../decode/index.ts'
import type { Encoding } from './encoding.ts'

/** A picture with the light behind its codes, by tables of every code. */
export interface LitPicture extends Picture {
  /** The greatest code. */
  readonly most: number
  /** Linear light of every code of each channel. */
  readonly light: readonly Float64Array[]
  /** What every code of each channel adds to Y of the D50 connection space. */
  readonly luminance: readonly Float64Array[]
  readonly matrix: Matrix | undefined
}

/** A picture with the linear light of each channel, 0 to 1, by the curves of its encoding. */
export function withLight(picture: Picture, { curves, matrix }: Encoding): LitPicture {
  const most = 2 ** picture.bits - 1
  const tables = new Map<unknown, Float64Array>()
  const light = curves.map((curve) => {
    const known = tables.get(curve)
    if (known) return known
    const table = Float64Array.from({ length: most + 1 }, (_, code) => curve(code / most))
    tables.set(curve, table)
    return table
  })
  const luminance = matrix ? light.map((table, i) => table.map((value) => value * (matrix[1][i] as number))) : light
  return { ...picture, most, light, luminance, matrix }
}

/** L*a*b* for D50 (ISO/CIE 11664-4) of a linear light: one value three times for grey. */
export function labOf(light: Triple, matrix: Matrix | undefined): Lab {
  if (!matrix) return { L: lightness(light[0]), a: 0, b: 0 }
  return labUnder(apply(matrix, light), WHITES.D50)
}
