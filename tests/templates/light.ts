/** Illuminance in lx of a lamp at (x, y, z), aimed at (ax, ay, 0), at the point (px, py); cosine power n. Metres and cd. */
export function luxAt(
  [x, y, z]: readonly [number, number, number],
  [ax, ay]: readonly [number, number],
  cd: number,
  n: number,
  px: number,
  py: number,
): number {
  const d = Math.hypot(px - x, py - y, z)
  const axis = Math.hypot(ax - x, ay - y, z)
  const cosine = ((px - x) * (ax - x) + (py - y) * (ay - y) + z * z) / (d * axis)
  return (cd * cosine ** n * (z / d)) / d ** 2
}

/** The spread in stops over a field of 2 w × 2 h, looked at every hundredth of it. */
export function spreadOver(w: number, h: number, light: (x: number, y: number) => number): number {
  const seen: number[] = []
  for (let i = -50; i <= 50; i++) for (let j = -50; j <= 50; j++) seen.push(light((w * i) / 50, (h * j) / 50))
  return Math.log2(Math.max(...seen) / Math.min(...seen))
}
