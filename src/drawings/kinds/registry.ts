import type { DrawingKind } from '../../worksheet/schema/drawing-kinds.ts'
import { type DrawingLoader, LOADERS } from '../loaders.ts'

/** What an input of a drawing is. */
export type InputType =
  | 'length'
  | 'stops'
  | 'f-number'
  | 'number'
  | 'pixel pitch'
  | 'lamps'
  | 'yes or no'
  | 'f-numbers'
  | 'stops, a list'
  | 'lengths'
  | 'numbers'
  | 'records'
  | 'angle'
  | 'pixels'
  | 'texts'

/** One thing a drawing is fed with. */
export interface DrawingInput {
  /** Under which a cell feeds it, and the usual name of the cell that does. */
  readonly name: string
  /** As the Build face calls it. */
  readonly label: string
  readonly type: InputType
}

/** All that is to be said of a kind of drawing. */
export interface DrawingEntry {
  /** What it is called in a list of kinds, and its title where a cell gives none. */
  readonly title: string
  readonly inputs: readonly DrawingInput[]
  /** Fetches what draws it. */
  readonly load: DrawingLoader
}

const input = (name: string, label: string, type: InputType = 'length'): DrawingInput => ({ name, label, type })

/** The kinds of drawing, in the order they are offered. */
export const DRAWINGS: Readonly<Record<DrawingKind, DrawingEntry>> = {
  'set-up': {
    title: 'The set-up, to scale',
    inputs: [
      input('original_width', 'Width of the original'),
      input('original_height', 'Height of the original'),
      input('original_thickness', 'Thickness of the original'),
      input('field_width', 'Width of the field'),
      input('field_height', 'Height of the field'),
      input('original_to_sensor', 'Original to sensor'),
      input('lens_to_original', 'Lens to original'),
      input('clear_distance', 'Clear distance'),
      input('column_height', 'Mark on the column, above the board'),
      input('entrance_distance', 'Entrance pupil to original'),
      input('lamps', 'Lamps, a list', 'lamps'),
      input('mirror_zone', 'Half-width of the mirror zone at the lamps’ height'),
      input('upright', 'The original stands upright, on an easel or a wall', 'yes or no'),
      input('lean', 'How far its upper edge leans back', 'angle'),
      input('centre_height', 'Its centre above the floor'),
    ],
    load: LOADERS['set-up'],
  },
  evenness: {
    title: 'Evenness of the light',
    inputs: [
      input('lamps', 'Lamps, a list', 'lamps'),
      input('original_width', 'Width of the original'),
      input('original_height', 'Height of the original'),
      input('limit', 'Spread allowed', 'stops'),
      input('readings', 'Readings taken, five or nine in reading order', 'numbers'),
      input('readings_in_stops', 'The same, where the meter reads EV', 'numbers'),
      input('readings_in_apertures', 'The same, where it reads f-numbers', 'numbers'),
    ],
    load: LOADERS.evenness,
  },
  depth: {
    title: 'Blur against aperture',
    inputs: [
      input('depth', 'Depth wanted'),
      input('magnification', 'Magnification', 'number'),
      input('pitch', 'Pixel pitch', 'pixel pitch'),
      input('aperture', 'Aperture set', 'f-number'),
      input('blur', 'Blur allowed, at the sensor'),
      input('pupil_ratio', 'Pupil ratio', 'number'),
      input('wavelength', 'Wavelength of the light'),
      input('widest', 'Widest aperture of the lens', 'f-number'),
      input('smallest', 'Smallest aperture of the lens', 'f-number'),
    ],
    load: LOADERS.depth,
  },
  tiles: {
    title: 'The original in parts',
    inputs: [
      input('original_width', 'Width of the original'),
      input('original_height', 'Height of the original'),
      input('field_width', 'Width of one frame'),
      input('field_height', 'Height of one frame'),
      input('border', 'Border left round it'),
      input('overlap', 'Least overlap'),
      input('turn', 'The frame may lie either way round', 'yes or no'),
      input('row_order', 'Every row from the left, not back and forth', 'yes or no'),
      input('moves_board', 'The board moves, not the camera', 'yes or no'),
    ],
    load: LOADERS.tiles,
  },
  squareness: {
    title: 'The frame, out of square',
    inputs: [
      input('tilt', 'Tilt along the height of the frame', 'angle'),
      input('tilt_across', 'Tilt along its width', 'angle'),
      input('field_width', 'Width of the field'),
      input('field_height', 'Height of the field'),
      input('entrance_distance', 'Entrance pupil to original'),
      input('pixels_width', 'Pixels along the width', 'pixels'),
      input('pixels_height', 'Pixels along the height', 'pixels'),
      input('allowed_pixels', 'Opposite edges may differ by', 'pixels'),
    ],
    load: LOADERS.squareness,
  },
  ledger: {
    title: 'Stops, from the reading to the setting',
    inputs: [
      input('start', 'Light value metered', 'stops'),
      input('stops', 'Stops added or taken, a list', 'stops, a list'),
      input('names', 'What each is for, a list of texts', 'texts'),
    ],
    load: LOADERS.ledger,
  },
  patches: {
    title: 'Patches against their aims',
    inputs: [
      input('differences', 'Differences, a list', 'numbers'),
      input('names', 'Names of the patches, a list of texts', 'texts'),
      input('limit', 'Allowed for a patch', 'number'),
      input('mean_limit', 'Allowed for the mean', 'number'),
      input('sorted', 'The worst first', 'yes or no'),
    ],
    load: LOADERS.patches,
  },
}
