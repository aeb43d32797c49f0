/** CSS pixels per millimetre on paper. */
export const PX_PER_MM = 96 / 25.4

/** A drawing scale. */
export interface Scale {
  /** As written in a drawing: `1:20`. */
  readonly name: string
  /** The reduction: 20 for a scale of 1:20. */
  readonly ratio: number
  /** CSS pixels per metre. */
  readonly pxPerMetre: number
}

/**
 * Scale steps within a decade. Steps between 1, 2 and 5 are included because with these three alone a narrow
 * column could leave more than half of its width empty.
 */
const STEPS = [1, 1.5, 2, 2.5, 3, 4, 5, 7.5]

/**
 * The largest round scale, at most 1:1, at which a world in metres fits a view in pixels. It is true when the
 * view is shown `zoom` times larger.
 */
export function fitScale(
  world: { width: number; height: number },
  view: { width: number; height: number },
  zoom = 1,
): Scale {
  const lifeSize = (PX_PER_MM * 1000) / zoom
  const needed = Math.max(1, (world.width * lifeSize) / view.width, (world.height * lifeSize) / view.height)
  const decade = 10 ** Math.floor(Math.log10(needed))
  const step = [...STEPS, 10].find((one) => one * decade >= needed * (1 - 1e-9)) ?? 10
  const ratio = Number((step * decade).toPrecision(3))
  return { name: `1:${ratio}`, ratio, pxPerMetre: lifeSize / ratio }
}

/** A round length in the unit, in metres, for a scale bar about `about` pixels long. */
export function barLength(scale: Scale, about: number, unitInMetres: number): number {
  const length = about / scale.pxPerMetre / unitInMetres
  const decade = 10 ** Math.floor(Math.log10(length))
  const step = [5, 2, 1].find((one) => one * decade <= length) ?? 1
  return Number((step * decade).toPrecision(3)) * unitInMetres
}
