import type { KitSort } from '../worksheet/index.ts'

/** What a studio calls a sort of equipment, one and several. */
export const SORT_LABELS: Readonly<Record<KitSort, readonly [one: string, several: string]>> = {
  camera: ['Camera', 'Cameras'],
  phone: ['Phone', 'Phones'],
  lens: ['Lens', 'Lenses'],
  tube: ['Extension tube', 'Extension tubes'],
  'close-up lens': ['Close-up lens', 'Close-up lenses'],
  lamp: ['Lamp', 'Lamps'],
  meter: ['Meter', 'Meters'],
  filter: ['Filter', 'Filters'],
  stand: ['Stand', 'Stands'],
}

interface Words {
  readonly label: string
  /** Where to find it. */
  readonly hint?: string
  /** Before its figure in a line of several, where the figure alone does not say what it is. */
  readonly short?: string
}

/** What a figure is called, by its name; the same name means the same in every sort. */
export const FIGURE_LABELS: Readonly<Record<string, Words>> = {
  sensor: { label: 'Sensor, width × height', hint: 'in the manual' },
  sensor_pixels: { label: 'Pixels, across × down', hint: 'of a full picture' },
  bits: { label: 'Bits a channel', hint: 'of the raw file', short: 'bits' },
  mass: { label: 'Weight', hint: 'on a kitchen scale' },
  focal: { label: 'Focal length' },
  aperture: { label: 'Aperture, fixed' },
  widest: { label: 'Widest aperture' },
  smallest: { label: 'Smallest aperture', short: 'to' },
  lens_greatest: { label: 'Greatest magnification', hint: 'by itself, without tubes', short: 'as close as' },
  nearest: { label: 'Nearest focus', hint: 'from the sensor', short: 'from' },
  pupil_ratio: {
    label: 'Pupil ratio',
    hint: 'exit over entrance pupil, seen from behind and in front',
    short: 'pupil ratio',
  },
  principal_inset: { label: 'Front rim to front principal plane', short: 'principal plane' },
  thread: { label: 'Filter thread', short: 'thread' },
  length: { label: 'Length' },
  power: { label: 'Power' },
  intensity: { label: 'Intensity', hint: 'or one reading, below' },
  reading: { label: 'A meter’s reading', hint: 'straight in front of it' },
  reading_distance: { label: 'at a distance of', short: 'at' },
  guide_number: { label: 'Guide number', hint: 'at ISO 100', short: 'guide number' },
  beam_angle: { label: 'Beam angle', hint: 'full, between half intensities', short: 'beam' },
  power_steps: { label: 'Power steps', hint: 'from full, such as 0; −1; −2', short: 'steps' },
  energy: { label: 'Flash energy', short: 'flash' },
  colour_temperature: { label: 'Colour temperature' },
  rendering: { label: 'Colour rendering, Ra', short: 'Ra' },
  radius: { label: 'From its middle to its inner edge', short: 'radius' },
  receptor: { label: 'Receptor' },
  constant: { label: 'Calibration constant', hint: 'K or C in the manual', short: 'constant' },
  step: { label: 'Reads in steps of', short: 'steps of' },
  shift: { label: 'Takes', hint: 'as a negative number of stops' },
  column_least: { label: 'Column, lowest mark', short: 'column' },
  column_most: { label: 'Column, highest mark', short: 'to' },
  load: { label: 'Carries at most', short: 'carries' },
  arm: { label: 'Reach of the arm', hint: 'from the column to the lens', short: 'reach' },
  board: { label: 'Baseboard, width × depth', short: 'board' },
}
