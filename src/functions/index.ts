import type { FunctionRecord } from '../language/index.ts'
import { ACCEPTANCE } from './acceptance/acceptance.ts'
import { DELTA_E } from './acceptance/delta-e.ts'
import { ENCODINGS } from './acceptance/encodings.ts'
import { ILLUMINANTS } from './acceptance/illuminants.ts'
import { OVER_TIME } from './acceptance/over-time.ts'
import { SQUARENESS } from './acceptance/squareness.ts'
import { STATISTICS } from './acceptance/statistics.ts'
import { CLOSE_FOCUS } from './camera/close-focus.ts'
import { DEPTH_OF_FIELD } from './camera/depth.ts'
import { EXPOSURE } from './camera/exposure.ts'
import { FRAMING } from './camera/framing.ts'
import { MEASURED_LENS } from './camera/measured-lens.ts'
import { PERSPECTIVE } from './camera/perspective.ts'
import { SAMPLING } from './camera/sampling.ts'
import { TILES } from './camera/tiles.ts'
import { FILM } from './film/film.ts'
import { LAMP_LIGHT } from './lamps/lamps.ts'
import { FILTERS } from './light/filters.ts'
import { FLASH_AND_TIME } from './light/flash-and-time.ts'
import { LAMP_PLACES } from './light/lamp-places.ts'
import { LENS_SHADOW } from './light/lens-shadow.ts'
import { LIGHT_READINGS } from './light/light-readings.ts'
import { NEAREST_PAIR } from './light/nearest-pair.ts'
import { MATHS } from './maths/maths.ts'
import { CARE } from './work/care.ts'
import { FILES } from './work/files.ts'
import { HEAT } from './work/heat.ts'
import { NAMING } from './work/naming.ts'
import { RUN } from './work/run.ts'

/** The functions by the file they are in, in the order of the guide. */
export const SUBJECTS = {
  maths: MATHS,
  statistics: STATISTICS,
  framing: FRAMING,
  perspective: PERSPECTIVE,
  'measured-lens': MEASURED_LENS,
  'close-focus': CLOSE_FOCUS,
  sampling: SAMPLING,
  tiles: TILES,
  depth: DEPTH_OF_FIELD,
  exposure: EXPOSURE,
  filters: FILTERS,
  'flash-and-time': FLASH_AND_TIME,
  lamps: LAMP_LIGHT,
  'lamp-places': LAMP_PLACES,
  'nearest-pair': NEAREST_PAIR,
  'lens-shadow': LENS_SHADOW,
  'light-readings': LIGHT_READINGS,
  squareness: SQUARENESS,
  'delta-e': DELTA_E,
  encodings: ENCODINGS,
  illuminants: ILLUMINANTS,
  acceptance: ACCEPTANCE,
  'over-time': OVER_TIME,
  care: CARE,
  heat: HEAT,
  run: RUN,
  naming: NAMING,
  files: FILES,
  film: FILM,
} as const satisfies Readonly<Record<string, readonly FunctionRecord[]>>

export type SubjectFile = keyof typeof SUBJECTS

/** Every function of the language. */
export const FUNCTIONS: readonly FunctionRecord[] = Object.values(SUBJECTS).flat()

export const LIBRARY: ReadonlyMap<string, FunctionRecord> = new Map(FUNCTIONS.map((record) => [record.name, record]))
