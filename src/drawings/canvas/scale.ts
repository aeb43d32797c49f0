/** CSS px in a millimetre on paper. */
export const PX_PER_MM = 96 / 25.4

/** A drawing scale. */
export interface Scale {
  /** As written on a drawing: `1:20`. */
  readonly name: string
  /** How many times smaller than life. */
  readonly ratio: number
  /** CSS px for a metre. */
  readonly pxPerMetre: number
}

/**
 * The steps within a decade. Beside 1, 2 and 5 those in between that drawings do use: with only three steps a narrow
 * column of text would leave more than half of its width empty.
 */
const STEPS = [1, 1.5, 2, 2.5, 3, 4, 5, 7.5]

/**
 * The largest round scale, never larger than life, at which a world in metres fits a view in px. It holds where the
 * view is shown `enlarged` times.
 */
export function fitScale(
  world: { width: number; height: number },
  view: { width: number; height: number },
  enlarged = 1,
): Scale {
  const lifeSize = (PX_PER_MM * 1000) / enlarged
  const needed = Math.max(1, (world.width * lifeSize) / view.width, (world.height * lifeSize) / view.height)
  const decade = 10 ** Math.floor(Math.log10(needed))
  const step = [...STEPS, 10].find((one) => one * decade >= needed * (1 - 1e-9)) ?? 10
  const ratio = Number((step * decade).toPrecision(3))
  return { name: `1:${ratio}`, ratio, pxPerMetre: lifeSize / ratio }
}

/** A round length in the unit, for a bar of about so many px. */
export function barLength(scale: Scale, about: number, unitInMetres: number): number {
  const length = about / scale.pxPerMetre / unitInMetres
  const decade = 10 ** Math.floor(Math.log10(length))
  const step = [5, 2, 1].find((one) => one * decade <= length) ?? 1
  return Number((step * decade).toPrecision(3)) * unitInMetres
}
