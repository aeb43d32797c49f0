/** Round values, 1, 2 or 5 times a power of ten apart and `most` of them at most, from one value to another. */
export function roundTicks(from: number, to: number, most: number, least = 0): readonly number[] {
  const span = to - from
  if (!(span > 0) || !Number.isFinite(span)) return []
  const wanted = Math.max(span / Math.max(1, most), least)
  const decade = 10 ** Math.floor(Math.log10(wanted))
  const step = ([1, 2, 5].find((one) => one * decade >= wanted * (1 - 1e-9)) ?? 10) * decade
  const first = Math.ceil(from / step - 1e-9)
  const count = Math.floor(to / step + 1e-9) - first + 1
  return Array.from({ length: Math.max(0, count) }, (_, at) => Number(((first + at) * step).toPrecision(12)) + 0)
}
