import type { Curve } from './encoding.ts'

const clamped = (value: number): number => (value > 0 ? Math.min(value, 1) : 0)

/** A curveType or parametricCurveType (ICC.1:2022, 10.6 and 10.18); undefined where it is neither or cut short. */
export function curveOf(body: Uint8Array): Curve | undefined {
  if (body.length < 12) return undefined
  const view = new DataView(body.buffer, body.byteOffset, body.byteLength)
  const kind = String.fromCharCode(...body.subarray(0, 4))
  if (kind === 'curv') return tabled(view)
  return kind === 'para' ? parametric(view) : undefined
}

function tabled(view: DataView): Curve | undefined {
  const count = view.getUint32(8)
  if (count === 0) return (code) => code
  if (12 + 2 * count > view.byteLength) return undefined
  if (count === 1) {
    const exponent = view.getUint16(12) / 256
    return exponent > 0 ? (code) => code ** exponent : undefined
  }
  const table = Float64Array.from({ length: count }, (_, i) => view.getUint16(12 + 2 * i) / 65535)
  return (code) => {
    const place = code * (count - 1)
    const below = Math.min(Math.floor(place), count - 2)
    const [low, high] = [table[below] as number, table[below + 1] as number]
    return low + (place - below) * (high - low)
  }
}

/** How many numbers each of the five kinds has. */
const NUMBERS = [1, 3, 4, 5, 7] as const

function parametric(view: DataView): Curve | undefined {
  const kind = view.getUint16(8)
  const count = NUMBERS[kind]
  if (count === undefined || 12 + 4 * count > view.byteLength) return undefined
  const [g, a, b, c, d, e, f] = Array.from({ length: 7 }, (_, i) =>
    i < count ? view.getInt32(12 + 4 * i) / 65536 : 0,
  ) as [number, number, number, number, number, number, number]
  if (!(g > 0) || (kind > 0 && a === 0)) return undefined
  const power = (code: number): number => Math.max(0, a * code + b) ** g
  const curve: Curve =
    kind === 0
      ? (code) => code ** g
      : kind === 1
        ? (code) => (code >= -b / a ? power(code) : 0)
        : kind === 2
          ? (code) => (code >= -b / a ? power(code) : 0) + c
          : kind === 3
            ? (code) => (code >= d ? power(code) : c * code)
            : (code) => (code >= d ? power(code) + e : c * code + f)
  return (code) => clamped(curve(code))
}
