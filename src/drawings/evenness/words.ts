import { plural } from '../../units/plural.ts'
import { INPUTS } from '../canvas/words.ts'

/** The texts in and below a map of the light. */
export const EVENNESS_WORDS = {
  // Omissions.
  originalWidth: INPUTS.originalWidth,
  originalHeight: INPUTS.originalHeight,
  limit: 'The spread allowed',
  noLamp: 'There is no lamp.',
  lampName: INPUTS.lampName,
  lampLeftOut: (which: string, reason: string) => `${which} is left out: ${reason}.`,
  lampTooFar: (most: string) => `its position or aim is unknown or more than ${most} away`,
  lampBelow: (distance: string) => `it is ${distance} below the original`,
  lampNotAbove: 'it is not above the original',
  intensityUnknown: 'its intensity is unknown',
  beamOutOfRange: 'its beam must be between 0° and 180°',
  readingsNotPositive: 'The readings are left out: each must be a number above zero.',
  readingsCount: (count: number) =>
    `The readings are left out: there are ${count}, but a comparison needs five (corners and centre) or nine.`,
  sizeUnknown: 'the size of the original is unknown.',
  noUsableLamp: 'no usable lamp is known.',
  noLight: 'none of the lamps lights the original.',

  // Labels in the map.
  isolines: (step: number) => `Stops from the mean, a line every ${step}`,
  spread: (spread: string | undefined) => `Spread ${spread ?? 'without limit: part is dark'}`,
  spreadOf: (spread: string, limit: string) => `${spread}, ${limit} allowed`,
  hatched: 'Hatched: darker than the limit allows',
  twoFigures: 'Upper figure computed, lower measured',
  measuredSpread: (spread: string) => `Measured spread ${spread}`,
  least: 'dimmest',
  greatest: 'brightest',
  labelled: (label: string, figure: string) => `${label} ${figure}`,
  dark: 'dark',
  mean: 'mean',
  limitLine: 'limit',

  // Places.
  centre: 'centre',
  upper: 'upper',
  lower: 'lower',
  left: 'left',
  right: 'right',
  edge: (side: string) => `${side} edge`,
  inFourCorners: 'in the four corners',
  at: (places: string) => `at the ${places}`,
  atCentre: 'at the centre',
  fromCentre: (offsets: string) => `${offsets} the centre`,
  across: (distance: string, right: boolean) => `${distance} ${right ? 'right of' : 'left of'}`,
  up: (distance: string, above: boolean) => `${distance} ${above ? 'above' : 'below'}`,

  // The description.
  noLightAtAll: 'no light at all',
  introduction: (lamps: number, size: string, step: number) =>
    `The light of ${plural(lamps, 'lamp')} over the original, ${size}, in stops from its mean by area, a line every ${step} stop.`,
  extremes: (greatest: string, least: string, spread: string) =>
    `Brightest ${greatest}; dimmest ${least}; spread ${spread}.`,
  extremeAt: (stops: string, place: string) => `${stops} ${place}`,
  withinLimit: (limit: string) => `${limit} is allowed: the whole original is within it.`,
  beyondLimit: (limit: string) => `${limit} is allowed: in the hatched part the light is further below the brightest.`,
  computed: (list: string) => `Computed, in reading order: ${list}.`,
  measured: (list: string, spread: string) =>
    `Measured, adjusted to the same mean: ${list}; their spread is ${spread}.`,
  worstPoint: (place: string, stops: string) => `They differ most at the ${place}, by ${stops}.`,
  noReading: 'no light',
  unlimited: 'without limit',
}
