import { PLAN_HEADS } from '../../worksheet/run/words.ts'
import type { DrawingKind } from '../../worksheet/schema/drawing-kinds.ts'
import { TITLES } from '../canvas/words.ts'
import { type DrawingLoader, LOADERS } from '../loaders.ts'

/** The type of an input of a drawing. */
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
  | 'rows of numbers'
  | 'records'
  | 'angle'
  | 'time'
  | 'times'
  | 'pixels'
  | 'texts'

/** An input of a drawing. */
export interface DrawingInput {
  /** The key of the input in a cell, and the usual name of the cell it reads. */
  readonly name: string
  /** Its label in Build. */
  readonly label: string
  readonly type: InputType
}

/** A kind of drawing. */
export interface DrawingEntry {
  /** Its name in the list of kinds, and its title if a cell gives none. */
  readonly title: string
  readonly inputs: readonly DrawingInput[]
  /** What it cannot be drawn without: of each group, one input at least. */
  readonly needs: readonly (readonly string[])[]
  /** Loads the function that draws it. */
  readonly load: DrawingLoader
}

const input = (name: string, label: string, type: InputType = 'length'): DrawingInput => ({ name, label, type })

// The inputs that several kinds have.
const ORIGINAL_WIDTH = input('original_width', 'Width of the original')
const ORIGINAL_HEIGHT = input('original_height', 'Height of the original')
const THICKNESS = input('original_thickness', 'Thickness of the original')
const FIELD_WIDTH = input('field_width', 'Width of the field')
const FIELD_HEIGHT = input('field_height', 'Height of the field')
const TO_SENSOR = input('original_to_sensor', PLAN_HEADS.track)
const TO_LENS = input('lens_to_original', 'Lens to original')
const CLEAR_DISTANCE = input('clear_distance', 'Clear distance')
const COLUMN_HEIGHT = input('column_height', 'Mark on the column, above the board')
const ENTRANCE_DISTANCE = input('entrance_distance', 'Entrance pupil to original')
const LAMPS = input('lamps', 'Lamps (list)', 'lamps')
const SPREAD_ALLOWED = input('limit', 'Spread allowed', 'stops')
const MAGNIFICATION = input('magnification', 'Magnification', 'number')
const READINGS: readonly DrawingInput[] = [
  input('readings', 'Readings, five or nine in reading order', 'numbers'),
  input('readings_in_stops', 'Readings in EV', 'numbers'),
  input('readings_in_apertures', 'Readings in f-numbers', 'numbers'),
]

/** The kinds of drawing, in the order in which they are offered. */
export const DRAWINGS: Readonly<Record<DrawingKind, DrawingEntry>> = {
  'set-up': {
    title: TITLES['set-up'],
    inputs: [
      ORIGINAL_WIDTH,
      ORIGINAL_HEIGHT,
      THICKNESS,
      FIELD_WIDTH,
      FIELD_HEIGHT,
      TO_SENSOR,
      TO_LENS,
      CLEAR_DISTANCE,
      COLUMN_HEIGHT,
      ENTRANCE_DISTANCE,
      LAMPS,
      input('mirror_zone', 'Half-width of the mirror zone at the lamps’ height'),
      input('upright', 'The original is upright, on an easel or a wall', 'yes or no'),
      input('lean', 'Lean of its upper edge', 'angle'),
      input('centre_height', 'Height of its centre above the floor'),
    ],
    needs: [
      [
        'original_width',
        'field_width',
        'original_to_sensor',
        'lens_to_original',
        'clear_distance',
        'column_height',
        'entrance_distance',
        'lamps',
      ],
    ],
    load: LOADERS['set-up'],
  },
  column: {
    title: TITLES.column,
    inputs: [
      COLUMN_HEIGHT,
      input('column_reach', 'Reach of the column'),
      TO_SENSOR,
      TO_LENS,
      CLEAR_DISTANCE,
      ENTRANCE_DISTANCE,
      ORIGINAL_WIDTH,
      THICKNESS,
      FIELD_WIDTH,
    ],
    needs: [['column_height', 'original_to_sensor']],
    load: LOADERS.column,
  },
  evenness: {
    title: TITLES.evenness,
    inputs: [LAMPS, ORIGINAL_WIDTH, ORIGINAL_HEIGHT, SPREAD_ALLOWED, ...READINGS],
    needs: [['lamps'], ['original_width'], ['original_height']],
    load: LOADERS.evenness,
  },
  depth: {
    title: TITLES.depth,
    inputs: [
      input('depth', 'Depth required'),
      MAGNIFICATION,
      input('pitch', 'Pixel pitch', 'pixel pitch'),
      input('aperture', 'Aperture set', 'f-number'),
      input('blur', 'Blur allowed, at the sensor'),
      input('pupil_ratio', 'Pupil ratio', 'number'),
      input('wavelength', 'Wavelength of the light'),
      input('widest', 'Widest aperture of the lens', 'f-number'),
      input('smallest', 'Smallest aperture of the lens', 'f-number'),
    ],
    needs: [['magnification']],
    load: LOADERS.depth,
  },
  readings: {
    title: TITLES.readings,
    inputs: [...READINGS, SPREAD_ALLOWED, ORIGINAL_WIDTH, ORIGINAL_HEIGHT],
    needs: [['readings', 'readings_in_stops', 'readings_in_apertures']],
    load: LOADERS.readings,
  },
  'depth-zone': {
    title: TITLES['depth-zone'],
    inputs: [input('depth', 'Depth of field'), input('unevenness', 'Height of the sheet above flat')],
    needs: [['depth']],
    load: LOADERS['depth-zone'],
  },
  time: {
    title: TITLES.time,
    inputs: [input('time', 'Exposure time', 'time'), input('set_time', 'Time set', 'time')],
    needs: [['time']],
    load: LOADERS.time,
  },
  tiles: {
    title: TITLES.tiles,
    inputs: [
      ORIGINAL_WIDTH,
      ORIGINAL_HEIGHT,
      input('field_width', 'Width of one frame'),
      input('field_height', 'Height of one frame'),
      input('border', 'Border around it'),
      input('overlap', 'Minimum overlap'),
      input('turn', 'The frame may be turned', 'yes or no'),
      input('row_order', 'Every row starts at the left', 'yes or no'),
      input('moves_board', 'The board moves instead of the camera', 'yes or no'),
    ],
    needs: [['original_width'], ['original_height'], ['field_width'], ['field_height']],
    load: LOADERS.tiles,
  },
  squareness: {
    title: TITLES.squareness,
    inputs: [
      input('tilt', 'Tilt along the height of the frame', 'angle'),
      input('tilt_across', 'Tilt along the width of the frame', 'angle'),
      FIELD_WIDTH,
      FIELD_HEIGHT,
      ENTRANCE_DISTANCE,
      input('pixels_width', 'Pixels along the width', 'pixels'),
      input('pixels_height', 'Pixels along the height', 'pixels'),
      input('allowed_pixels', 'Difference allowed between opposite edges', 'pixels'),
    ],
    needs: [
      ['tilt', 'tilt_across'],
      ['field_width', 'field_height'],
      ['entrance_distance'],
      ['pixels_width'],
      ['pixels_height'],
    ],
    load: LOADERS.squareness,
  },
  ledger: {
    title: TITLES.ledger,
    inputs: [
      input('start', 'Light value metered', 'stops'),
      input('stops', 'Stops added or subtracted (list)', 'stops, a list'),
      input('names', 'Reason for each (list of texts)', 'texts'),
    ],
    needs: [['stops']],
    load: LOADERS.ledger,
  },
  patches: {
    title: TITLES.patches,
    inputs: [
      input('differences', 'Differences (list)', 'numbers'),
      input('names', 'Names of the patches (list of texts)', 'texts'),
      input('limit', 'Difference allowed for a patch', 'number'),
      input('mean_limit', 'Mean difference allowed', 'number'),
      input('sorted', 'Worst patches first', 'yes or no'),
    ],
    needs: [['differences']],
    load: LOADERS.patches,
  },
  'measured-light': {
    title: TITLES['measured-light'],
    inputs: [
      input('measured', 'Light of the fields, rows from above', 'rows of numbers'),
      input('covers', 'Part of the picture measured: left, top, width, height as shares', 'numbers'),
      LAMPS,
      input('field_width', 'Width that the frame covers'),
      input('field_height', 'Height that the frame covers'),
      MAGNIFICATION,
      input('exit_distance', 'Exit pupil to sensor'),
      SPREAD_ALLOWED,
    ],
    needs: [['measured']],
    load: LOADERS['measured-light'],
  },
  'over-time': {
    title: TITLES['over-time'],
    inputs: [
      input('time', 'Times since the first (list)', 'times'),
      input('changes', 'Changes since the first (list)', 'stops, a list'),
      input('limit', 'Change allowed, either way', 'stops'),
    ],
    needs: [['time'], ['changes']],
    load: LOADERS['over-time'],
  },
  'lens-shadow': {
    title: TITLES['lens-shadow'],
    inputs: [
      input('lamp_out', 'Lens’s axis to the middle of a lamp'),
      input('lamp_height', 'Original up to the middle of the lamps'),
      input('width', 'Width of the original'),
      input('front_height', 'Original up to the front of the lens'),
      input('barrel_radius', 'Radius of the lens'),
      input('lamp_radius', 'Radius of a lamp'),
    ],
    needs: [['lamp_out'], ['lamp_height'], ['width'], ['front_height'], ['barrel_radius']],
    load: LOADERS['lens-shadow'],
  },
}
