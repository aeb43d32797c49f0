import type { KitSort } from '../worksheet/index.ts'

/** What a studio calls a sort of equipment, one and several. */
export const SORT_WORDS: Readonly<Record<KitSort, readonly [one: string, several: string]>> = {
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
}

/** What a figure is called, by its name; the same name means the same in every sort. */
export const FIGURE_WORDS: Readonly<Record<string, Words>> = {
  sensor: { label: 'Sensor, width × height', hint: 'in the manual' },
  sensor_pixels: { label: 'Pixels, across × down', hint: 'of a full picture' },
  bits: { label: 'Bits a channel', hint: 'of the raw file' },
  mass: { label: 'Weight', hint: 'on a kitchen scale' },
  focal: { label: 'Focal length' },
  aperture: { label: 'Aperture, fixed' },
  widest: { label: 'Widest aperture' },
  smallest: { label: 'Smallest aperture' },
  lens_greatest: { label: 'Greatest magnification', hint: 'by itself, without tubes' },
  nearest: { label: 'Nearest focus', hint: 'from the sensor' },
  pupil_ratio: { label: 'Pupil ratio', hint: 'exit over entrance pupil, seen from behind and in front' },
  principal_inset: { label: 'Front rim to front principal plane' },
  thread: { label: 'Filter thread' },
  length: { label: 'Length' },
  power: { label: 'Power' },
  intensity: { label: 'Intensity', hint: 'or one reading, below' },
  reading: { label: 'A meter’s reading', hint: 'straight in front of it' },
  reading_distance: { label: 'at a distance of' },
  guide_number: { label: 'Guide number', hint: 'at ISO 100' },
  beam_angle: { label: 'Beam angle', hint: 'full, between half intensities' },
  power_steps: { label: 'Power steps', hint: 'from full, such as 0; −1; −2' },
  energy: { label: 'Flash energy' },
  colour_temperature: { label: 'Colour temperature' },
  rendering: { label: 'Colour rendering, Ra' },
  radius: { label: 'From its middle to its inner edge' },
  receptor: { label: 'Receptor' },
  constant: { label: 'Calibration constant', hint: 'K or C in the manual' },
  step: { label: 'Reads in steps of' },
  shift: { label: 'Takes', hint: 'as a negative number of stops' },
  column_least: { label: 'Column, lowest mark' },
  column_most: { label: 'Column, highest mark' },
  load: { label: 'Carries at most' },
  arm: { label: 'Reach of the arm', hint: 'from the column to the lens' },
  board: { label: 'Baseboard, width × depth' },
}
