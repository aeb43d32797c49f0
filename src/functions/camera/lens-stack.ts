/** A ray-transfer matrix (A B; C D) on height and angle. */
export type RayMatrix = readonly [a: number, b: number, c: number, d: number]

const after = ([a, b, c, d]: RayMatrix, [e, f, g, h]: RayMatrix): RayMatrix => [
  a * e + b * g,
  a * f + b * h,
  c * e + d * g,
  c * f + d * h,
]
const lens = (power: number): RayMatrix => [1, 0, -power, 1]
const gap = (distance: number): RayMatrix => [1, distance, 0, 1]

/** Power (1/m), front focus (m, in front of the first lens) and back focus (m, behind the last) of thin lenses a spacing apart, listed from the original's side. */
export function stackOf(
  powers: readonly number[],
  spacing: number,
): { power: number; frontFocus: number; backFocus: number } {
  let system: RayMatrix = [1, 0, 0, 1]
  powers.forEach((power, i) => {
    system = after(lens(power), i === 0 ? system : after(gap(spacing), system))
  })
  // A ray from the front focus at distance x leaves parallel: C x + D = 0.
  const power = -system[2]
  return { power, frontFocus: system[3] / power, backFocus: system[0] / power }
}
