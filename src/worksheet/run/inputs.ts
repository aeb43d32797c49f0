import type { Type } from '../../language/index.ts'
import { wholeNumber } from '../../language/values/words.ts'
import {
  DATA,
  type Dimension,
  LENGTH,
  NONE,
  PIXEL_PITCH,
  RECIPROCAL_LENGTH,
  SAMPLING,
  TIME,
} from '../../units/index.ts'
import { anAmountOfData, aPlainNumber } from '../../units/words.ts'

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

export const RUN_GROUPS = {
  original: 'Each original',
  camera: 'Camera, lens and column',
  work: 'How the work goes',
  done: 'What was done',
} as const
export type RunGroup = keyof typeof RUN_GROUPS

/** One thing the plan of the run is fed with. */
export interface RunInput {
  /** Under which a cell feeds it: `from: { "width": "width" }`. */
  readonly name: string
  /** As the Build face and messages call it. */
  readonly label: string
  readonly is: RunInputSort
  /** Whether its formula is over a row of the table and the sheet, or over the sheet alone. */
  readonly over: 'row' | 'sheet'
  /** Under which heading the Build face puts it. */
  readonly group: RunGroup
  /** Nothing is planned without it. */
  readonly needed?: true
  /** Where nothing feeds it. */
  readonly otherwise?: string
  /** What feeds it at first: the first of these whose every name there is, columns before cells of the sheet. */
  readonly usually: readonly string[]
}

type Make = (name: string, label: string, is: RunInputSort, usually: readonly string[], otherwise?: string) => RunInput

const over =
  (group: RunGroup, where: RunInput['over']): Make =>
  (name, label, is, usually, otherwise) => ({
    name,
    label,
    is,
    over: where,
    group,
    usually,
    ...(otherwise === undefined ? {} : { otherwise }),
  })
const needed = (input: RunInput): RunInput => ({ ...input, needed: true })

const original = over('original', 'row')
const camera = over('camera', 'sheet')
const work = over('work', 'sheet')
const workInRow = over('work', 'row')
const done = over('done', 'row')

/** All that a run cell may be fed with, in the order the Build face shows it. */
export const RUN_INPUTS: readonly RunInput[] = [
  original('title', 'Name or number of the original', 'words', ['title', 'number', 'name', 'reference'], 'its row'),
  needed(original('width', 'Width of the original', 'length', ['width', 'original_width'])),
  needed(original('height', 'Height of the original', 'length', ['height', 'original_height'])),
  original('thickness', 'Thickness of the original', 'length', ['thickness', 'original_thickness'], '0 mm'),
  needed(original('sampling', 'Required sampling', 'sampling', ['wanted_sampling', 'sampling'])),
  original('exposure', 'Exposure class', 'words', ['exposure', 'exposure_class', 'surface'], 'one for all'),
  original('pages', 'Pages or sides to take of each', 'count', ['pages', 'sides', 'quantity'], '1'),
  original('border', 'Border around it', 'length', ['border'], '0 mm'),
  original('overlap', 'Minimum overlap of frames, where one is not enough', 'length', ['overlap', 'tile_overlap']),
  original('turn', 'It may be turned by 90°', 'yes or no', ['turn', 'may_turn'], 'yes'),
  original('one_frame', 'It is taken in one frame', 'yes or no', ['one_frame'], 'no'),
  needed(camera('sensor_width', 'Width of the sensor', 'length', ['sensor_width', 'sensor.width'])),
  needed(camera('sensor_height', 'Height of the sensor', 'length', ['sensor_height', 'sensor.height'])),
  needed(camera('pitch', 'Pixel pitch', 'pixel pitch', ['pitch', 'sensor.width / sensor_pixels.width'])),
  camera('focal', 'Focal length of the lens', 'length', ['focal']),
  camera('lens_greatest', 'Maximum magnification of the lens alone', 'number', ['lens_greatest'], 'any'),
  camera('tubes', 'Extension tubes available', 'lengths', ['tubes'], 'none'),
  camera('closeups', 'Close-up lenses available', 'powers', ['closeups', 'powers'], 'none'),
  camera('closeup_spacing', 'From one close-up lens to the next', 'length', ['closeup_spacing', 'spacing'], '0 mm'),
  camera('closeup_inset', 'Last close-up lens to front principal plane', 'length', ['principal_inset'], '0 mm'),
  camera('principal_gap', 'Principal gap', 'length', ['principal_gap'], '0 mm'),
  camera('sensor_to_carriage', 'Sensor up to the mark on the carriage', 'length', ['sensor_to_carriage'], '0 mm'),
  camera('column_least', 'Lowest position of the mark', 'length', ['column_least', 'column_lowest']),
  camera('column_greatest', 'Highest position of the mark', 'length', ['column_greatest', 'column_highest']),
  workInRow('frame_time', 'Time for each frame', 'time', ['frame_time', 'per_frame'], '0 s'),
  workInRow(
    'original_time',
    'Time to place an original and remove it',
    'time',
    ['original_time', 'per_original'],
    '0 s',
  ),
  work('setup_time', 'Time to change the set-up', 'time', ['setup_time', 'per_setup'], '0 s'),
  work('spell', 'Working time before each break', 'time', ['spell', 'work_spell']),
  work('break_time', 'Each break; without the one above, all breaks together', 'time', ['break_time', 'breaks'], '0 s'),
  work('day_time', 'Working time per day', 'time', ['day_time']),
  workInRow('frame_data', 'Data of one frame', 'data', ['frame_data'], 'not computed'),
  work('copies', 'Copies of each frame, including the first', 'count', ['copies'], '1'),
  done('done', 'Done: a tick, or when it was done', 'done', ['done'], 'no'),
  done('actual_time', 'Time it took', 'time', ['actual_time', 'time_taken']),
  done('actual_frames', 'Frames it took', 'count', ['actual_frames', 'frames_taken']),
]

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
  number: aPlainNumber,
  count: wholeNumber,
  time: 'a time',
  data: anAmountOfData,
  'yes or no': 'yes or no',
  words: 'a text or a number',
  done: 'yes or no, or a date',
}

/** What an input of a run takes, in a few words. */
export const sortText = (sort: RunInputSort): string => IN_WORDS[sort]
