import { plural } from '../../units/plural.ts'
import { INPUTS } from '../canvas/words.ts'
import { EVENNESS_WORDS } from '../evenness/words.ts'

/** The texts in and below a drawing of the readings. */
export const READINGS_WORDS = {
  originalWidth: INPUTS.originalWidth,
  originalHeight: INPUTS.originalHeight,
  limit: EVENNESS_WORDS.limit,
  readingsUnknown: 'no readings are known.',
  notPositive: 'The readings are not drawn: each must be a number above zero.',
  notFiveOrNine: (count: number) =>
    `The readings are not drawn: there are ${count}, but five (corners and centre) or nine are needed.`,
  sizeAssumed: 'The original is drawn 4:3: its size is unknown.',
  brightest: (figure: string) => [`brightest ${figure}`, 'brightest'],
  dimmest: (figure: string) => [`dimmest ${figure}`, 'dimmest'],
  spread: (spread: string) => `Spread ${spread}`,
  spreadOf: (spread: string, limit: string) => `Spread ${spread}, ${limit} allowed`,
  introduction: (count: number, unit: string) => `${plural(count, 'reading')} in ${unit} over the original.`,
  at: (place: string, figure: string) => `${place} ${figure}`,
  list: (list: string) => `In reading order: ${list}.`,
  extremes: (brightest: string, dimmest: string, spread: string) =>
    `Brightest ${brightest}, dimmest ${dimmest}, spread ${spread}.`,
  lux: 'lx',
  ev: 'EV',
  apertures: 'f-numbers',
}
