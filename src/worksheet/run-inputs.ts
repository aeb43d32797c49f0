import { namesIn, type Type } from '../language/index.ts'
import { DATA, type Dimension, LENGTH, NONE, PIXEL_PITCH, RECIPROCAL_LENGTH, SAMPLING, TIME } from '../units/index.ts'

/** What an input of the plan is. */
export type RunInputSort =
  | 'length'
  | 'lengths'
  | 'powers'
  | 'sampling'
  | 'pixel pitch'
  | 'number'
  | 'count'
  | 'time'
  | 'data'
  | 'yes or no'
  | 'words'
  | 'done'

/** One thing the plan of the run is fed with. */
export interface RunInput {
  /** Under which a cell feeds it: `from: { "width": "width" }`. */
  readonly name: string
  /** As the Build face and messages call it. */
  readonly label: string
  readonly is: RunInputSort
  /** Whether its formula is over a row of the schedule and the sheet, or over the sheet alone. */
  readonly over: 'row' | 'sheet'
  /** Nothing is planned without it. */
  readonly needed?: true
  /** Where nothing feeds it. */
  readonly otherwise?: string
  /** What feeds it at first: the first of these whose every name there is, columns before cells of the sheet. */
  readonly usually: readonly string[]
}

const row = (
  name: string,
  label: string,
  is: RunInputSort,
  usually: readonly string[],
  otherwise?: string,
): RunInput => ({ name, label, is, over: 'row', usually, ...(otherwise === undefined ? {} : { otherwise }) })
const sheet = (
  name: string,
  label: string,
  is: RunInputSort,
  usually: readonly string[],
  otherwise?: string,
): RunInput => ({ ...row(name, label, is, usually, otherwise), over: 'sheet' })
const needed = (input: RunInput): RunInput => ({ ...input, needed: true })

/** All that a run cell may be fed with, in the order the Build face shows it. */
export const RUN_INPUTS: readonly RunInput[] = [
  row('title', 'Name or number of the original', 'words', ['title', 'number', 'name', 'reference'], 'its row'),
  needed(row('width', 'Width of the original', 'length', ['width', 'original_width'])),
  needed(row('height', 'Height of the original', 'length', ['height', 'original_height'])),
  row('thickness', 'Thickness of the original', 'length', ['thickness', 'original_thickness'], '0 mm'),
  needed(row('sampling', 'Wanted sampling', 'sampling', ['wanted_sampling', 'sampling'])),
  row('exposure', 'Exposure class', 'words', ['exposure', 'exposure_class', 'surface'], 'one for all'),
  row('pages', 'Pages or sides to take of each', 'count', ['pages', 'sides', 'quantity'], '1'),
  row('border', 'Border left round it', 'length', ['border'], '0 mm'),
  row('overlap', 'Least overlap of frames, where one is not enough', 'length', ['overlap', 'tile_overlap']),
  row('turn', 'It may lie either way round', 'yes or no', ['turn', 'may_turn'], 'yes'),
  row('frame_time', 'Time for each frame', 'time', ['frame_time', 'per_frame'], '0 s'),
  row('original_time', 'Time to lay an original on and take it off', 'time', ['original_time', 'per_original'], '0 s'),
  row('frame_data', 'Data of one frame', 'data', ['frame_data'], 'not reckoned'),
  row('done', 'Done: a tick, or when it was done', 'done', ['done'], 'no'),
  row('actual_time', 'Time it took', 'time', ['actual_time', 'time_taken']),
  row('actual_frames', 'Frames it took', 'count', ['actual_frames', 'frames_taken']),
  needed(sheet('sensor_width', 'Width of the sensor', 'length', ['sensor_width', 'sensor.width'])),
  needed(sheet('sensor_height', 'Height of the sensor', 'length', ['sensor_height', 'sensor.height'])),
  needed(sheet('pitch', 'Pixel pitch', 'pixel pitch', ['pitch', 'sensor.width / sensor_pixels.width'])),
  sheet('focal', 'Focal length of the lens', 'length', ['focal']),
  sheet('lens_greatest', 'Greatest magnification of the lens alone', 'number', ['lens_greatest'], 'any'),
  sheet('tubes', 'Extension tubes at hand', 'lengths', ['tubes'], 'none'),
  sheet('closeups', 'Close-up lenses at hand', 'powers', ['closeups', 'powers'], 'none'),
  sheet('closeup_spacing', 'From one close-up lens to the next', 'length', ['closeup_spacing', 'spacing'], '0 mm'),
  sheet(
    'closeup_inset',
    'From the last close-up lens to the front principal plane',
    'length',
    ['principal_inset'],
    '0 mm',
  ),
  sheet('principal_gap', 'Principal gap', 'length', ['principal_gap'], '0 mm'),
  sheet(
    'sensor_to_carriage',
    'From the sensor up to the mark on the carriage',
    'length',
    ['sensor_to_carriage'],
    '0 mm',
  ),
  sheet('column_least', 'Lowest the mark can stand', 'length', ['column_least', 'column_lowest']),
  sheet('column_greatest', 'Highest the mark can stand', 'length', ['column_greatest', 'column_highest']),
  sheet('setup_time', 'Time to change the set-up', 'time', ['setup_time', 'per_setup'], '0 s'),
  sheet('spell', 'At work before each break', 'time', ['spell', 'work_spell']),
  sheet(
    'break_time',
    'Each break; without the row above, all breaks together',
    'time',
    ['break_time', 'breaks'],
    '0 s',
  ),
  sheet('day_time', 'At the stand in a day', 'time', ['day_time']),
  sheet('copies', 'Copies kept of each frame, the first included', 'count', ['copies'], '1'),
]

/** What a run of a schedule is fed with at first: by the usual names of columns and cells. */
export function runFedByName(columns: Iterable<string>, cells: Iterable<string>): Record<string, string> {
  const inRow = new Set(columns)
  const inSheet = new Set(cells)
  const from: Record<string, string> = {}
  for (const { name, over, usually } of RUN_INPUTS) {
    const all = (names: ReadonlySet<string>) => (formula: string) =>
      namesIn(formula).every((one) => names.has(one.name))
    const found = (over === 'row' && usually.find(all(inRow))) || usually.find(all(inSheet))
    if (found) from[name] = found
  }
  return from
}

const DIMENSIONS: Readonly<Partial<Record<RunInputSort, Dimension>>> = {
  length: LENGTH,
  lengths: LENGTH,
  powers: RECIPROCAL_LENGTH,
  sampling: SAMPLING,
  'pixel pitch': PIXEL_PITCH,
  number: NONE,
  count: NONE,
  time: TIME,
  data: DATA,
}

const isList = (sort: RunInputSort): boolean => sort === 'lengths' || sort === 'powers'

/** Whether what a formula gives can feed an input of this sort. */
export function fitsSort(type: Type, sort: RunInputSort): boolean {
  if (sort === 'words') return type.kind === 'text' || type.kind === 'number' || type.kind === 'yes or no'
  if (sort === 'done') return type.kind === 'yes or no' || type.kind === 'text'
  if (sort === 'yes or no') return type.kind === 'yes or no'
  const single = isList(sort) && type.kind === 'list' ? type.of : type
  return single.kind === 'number' && single.dimension === DIMENSIONS[sort]
}

const IN_WORDS: Readonly<Record<RunInputSort, string>> = {
  length: 'a length',
  lengths: 'a list of lengths',
  powers: 'a list of powers, in dioptres',
  sampling: 'a sampling, such as 300 ppi',
  'pixel pitch': 'a length per pixel',
  number: 'a plain number',
  count: 'a plain number',
  time: 'a time',
  data: 'an amount of data',
  'yes or no': 'yes or no',
  words: 'a text or a number',
  done: 'yes or no, or a date',
}

export const sortInWords = (sort: RunInputSort): string => IN_WORDS[sort]
