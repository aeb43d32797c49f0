import { EVENNESS_WORDS } from '../evenness/words.ts'

/** The texts in and below the map of the light measured in a frame. */
export const MEASURED_LIGHT_WORDS = {
  // Omissions.
  nothingMeasured: 'no field has been measured.',
  notAGrid: 'The measured field is left out: it must be rows of numbers above zero, all of one length.',
  fieldWidth: 'The width that the frame covers',
  fieldHeight: 'The height that the frame covers',
  limit: EVENNESS_WORDS.limit,
  magnification: 'The magnification of the frame',
  exitDistance: 'The distance of the exit pupil',
  coversUnread: 'The part of the picture measured is not known: the whole picture is taken.',
  noField: 'The computed light is left out: how much of the original the frame covers is not known.',
  noLight: 'The computed light is left out: the lamps leave part of the frame dark.',

  // In the maps.
  lines: EVENNESS_WORDS.isolines,
  differenceEvery: (step: number) => `Difference, each ${step}`,
  linesOfDifference: (step: number) => `a line every ${step}`,
  measured: 'Measured',
  computed: 'Computed',
  withLens: 'Computed, with the lens',
  difference: 'Difference',
  headed: (title: string, spread: string) => `${title}: ${spread}`,
  limitLine: 'limit',
  hatched: (limit: string) => `Hatched: more than ${limit} below the brightest`,
  covers: (size: string) => `Covers ${size}; the frame’s upper edge is at the top`,

  // The description.
  introduction: (columns: number, rows: number, step: number) =>
    `The light of a frame of plain card in ${columns} by ${rows} fields, in stops from the mean, a line every ${step} stop.`,
  part: (title: string, greatest: string, where: string, least: string, there: string, spread: string) =>
    `${title}: brightest ${greatest} ${where}, dimmest ${least} ${there}, spread ${spread}.`,
  lensIncluded: 'What is computed includes the lens’s falloff by cos⁴; vignetting comes on top.',
  lensNotIncluded:
    'What is computed is the lamps’ light at the original; what is measured includes the lens’s falloff.',
  differ: (most: string, where: string, usual: string) =>
    `They differ by up to ${most}, ${where}; by ${usual} in the root mean square.`,
  beyond: (limit: string) =>
    `${limit} is allowed: in the hatched part the light measured is further below the brightest.`,
  within: (limit: string) => `${limit} is allowed: the whole frame is within it.`,
  row: (number: number) => `Row ${number}`,
  at: (column: number, row: number) => `in column ${column}, row ${row}`,
  tableHead: 'From above',
  both: (measured: string, computed: string) => `${measured} (${computed})`,
} as const
