import type { DrawingKind } from '../../worksheet/schema/drawing-kinds.ts'

/** The title of each kind of drawing, in the list of kinds and above a drawing whose cell gives none. */
export const TITLES: Readonly<Record<DrawingKind, string>> = {
  'set-up': 'The set-up, to scale',
  column: 'The column, to scale',
  evenness: 'Evenness of the light',
  readings: 'Readings over the original',
  depth: 'Blur against aperture',
  'depth-zone': 'Depth of field, to scale',
  time: 'Exposure time on the dial',
  tiles: 'The frames, to scale',
  squareness: 'The frame, out of square',
  ledger: 'Stops, from the reading to the setting',
  patches: 'Patches against their aims',
  'measured-light': 'The light measured in the frame',
  'over-time': 'The light over time',
  'lens-shadow': 'The lens between the lamps',
}

/** The inputs that several kinds of drawing have, as the start of a sentence. */
export const INPUTS = {
  originalWidth: 'The width of the original',
  originalHeight: 'The height of the original',
  lampName: (number: number, of: number) => (of === 1 ? 'The lamp' : `Lamp ${number}`),
}

/** Sentences that several kinds of drawing use. */
export const CANVAS_WORDS = {
  nothingToDraw: 'Nothing to draw yet',
  nothingDescribed: (reason: string) => `Nothing can be drawn yet: ${reason}`,
  notANumber: (what: string) => `${what} is left out: its value is not a number.`,
  notAboveZero: (what: string) => `${what} is left out: it must be above zero.`,
  tooLarge: (what: string, most: string) => `${what} is left out: it must be at most ${most}.`,
  times: (first: string, second: string) => `${first} × ${second}`,
}
