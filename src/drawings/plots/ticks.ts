/** At most `most` round values between two values, their step 1, 2 or 5 times a power of ten and at least `least`. */
export function roundTicks(from: number, to: number, most: number, least = 0): readonly number[] {
  const span = to - from
  if (!(span > 0) || !Number.isFinite(span)) return []
  const interval = Math.max(span / Math.max(1, most), least)
  const decade = 10 ** Math.floor(Math.log10(interval))
  const step = ([1, 2, 5].find((one) => one * decade >= interval * (1 - 1e-9)) ?? 10) * decade
  const first = Math.ceil(from / step - 1e-9)
  const count = Math.floor(to / step + 1e-9) - first + 1
  return Array.from({ length: Math.max(0, count) }, (_, at) => Number(((first + at) * step).toPrecision(12)) + 0)
}
