import { INPUTS } from '../canvas/words.ts'

/** The texts in and below a drawing of the lens between the lamps. */
export const SHADOW_WORDS = {
  lampOut: 'The distance of a lamp from the lens’s axis',
  lampHeight: 'The height of the lamps',
  width: INPUTS.originalWidth,
  frontHeight: 'The height of the lens over the original',
  barrelRadius: 'The radius of the lens',
  lampRadius: 'The radius of a lamp',
  unknown: 'lamps, original and lens each need a place and a size.',
  overBarrel: 'The lamp is over the lens: it is drawn beside it only.',
  head: (scale: string) => `${scale}, a cut through lens and lamps`,
  headShort: (scale: string) => scale,
  inShadow: (strip: string) => [`${strip} in shadow`, strip],
  introduction: (scale: string) =>
    `The lens, two lamps and the original in a cut through their middles, drawn at ${scale}.`,
  shaded: (strip: string) =>
    `The lens blocks the light of each lamp over a strip ${strip} wide at the edge of the original that is away from it.`,
  passes: 'The light of each lamp reaches the far edge of the original past the lens.',
} as const
