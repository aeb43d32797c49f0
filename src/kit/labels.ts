import type { KitSort } from '../worksheet/index.ts'

/** The name of each sort of equipment, in the singular and the plural. */
export const SORT_LABELS: Readonly<Record<KitSort, readonly [one: string, several: string]>> = {
  camera: ['Camera', 'Cameras'],
  phone: ['Phone', 'Phones'],
  lens: ['Lens', 'Lenses'],
  tube: ['Extension tube', 'Extension tubes'],
  'close-up lens': ['Close-up lens', 'Close-up lenses'],
  lamp: ['Lamp', 'Lamps'],
  meter: ['Meter', 'Meters'],
  filter: ['Filter', 'Filters'],
  stand: ['Copy stand', 'Copy stands'],
}

/** A sort with its article: `a lens`, `an extension tube`. */
export function aSort(sort: KitSort): string {
  const name = SORT_LABELS[sort][0].toLowerCase()
  return `${/^[aeio]/.test(name) ? 'an' : 'a'} ${name}`
}

interface Words {
  readonly label: string
  /** Where to find the figure, or how it is meant. */
  readonly hint?: string
  /** A word before the figure in a line of several, where the figure alone is not clear. */
  readonly short?: string
}

/** The label of each figure by its name; a name means the same in every sort. */
export const FIGURE_LABELS: Readonly<Record<string, Words>> = {
  sensor: { label: 'Sensor, width × height', hint: 'in the manual' },
  sensor_pixels: { label: 'Pixels, across × down', hint: 'of a full picture' },
  bits: { label: 'Bits per channel', hint: 'of the raw file', short: 'bits' },
  mass: { label: 'Weight', hint: 'on a kitchen scale' },
  focal: { label: 'Focal length' },
  aperture: { label: 'Aperture, fixed' },
  widest: { label: 'Widest aperture' },
  smallest: { label: 'Smallest aperture', short: 'to' },
  lens_greatest: { label: 'Maximum magnification', hint: 'without tubes', short: 'up to' },
  nearest: { label: 'Closest focus', hint: 'from the sensor', short: 'from' },
  pupil_ratio: {
    label: 'Pupil ratio',
    hint: 'exit pupil over entrance pupil, seen from behind and in front',
    short: 'pupil ratio',
  },
  principal_inset: { label: 'Front rim to front principal plane', short: 'principal plane' },
  thread: { label: 'Filter thread', short: 'thread' },
  length: { label: 'Length' },
  power: { label: 'Power' },
  intensity: { label: 'Intensity', hint: 'or enter one meter reading below' },
  reading: { label: 'Meter reading', hint: 'straight in front of the lamp' },
  reading_distance: { label: 'Distance of the reading', short: 'at' },
  guide_number: { label: 'Guide number', hint: 'at ISO 100', short: 'guide number' },
  beam_angle: { label: 'Beam angle', hint: 'full, between half intensities', short: 'beam' },
  power_steps: { label: 'Power steps', hint: 'from full power, such as 0; −1; −2', short: 'steps' },
  energy: { label: 'Flash energy', short: 'flash' },
  colour_temperature: { label: 'Colour temperature' },
  rendering: { label: 'Colour rendering, Ra', short: 'Ra' },
  radius: { label: 'Centre to inner edge', short: 'radius' },
  receptor: { label: 'Receptor' },
  constant: { label: 'Calibration constant', hint: 'K or C in the manual', short: 'constant' },
  step: { label: 'Reading step', short: 'steps of' },
  shift: { label: 'Light lost', hint: 'as a negative number of stops' },
  column_least: { label: 'Column, lowest mark', short: 'column' },
  column_most: { label: 'Column, highest mark', short: 'to' },
  load: { label: 'Maximum load', short: 'carries' },
  arm: { label: 'Reach of the arm', hint: 'from the column to the lens', short: 'reach' },
  board: { label: 'Baseboard, width × depth', short: 'board' },
}
