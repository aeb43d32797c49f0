import type { FunctionRecord } from '../language/index.ts'
import { CARE } from './care.ts'
import { CLOSE_FOCUS } from './close-focus.ts'
import { COLOUR } from './colour.ts'
import { DEPTH_OF_FIELD } from './depth.ts'
import { EXPOSURE } from './exposure.ts'
import { FILM } from './film.ts'
import { FILTERS } from './filters.ts'
import { FLASH_AND_TIME } from './flash-and-time.ts'
import { FRAMING } from './framing.ts'
import { LAMP_PLACES } from './lamp-places.ts'
import { LAMP_LIGHT } from './lamps.ts'
import { LIGHT_READINGS } from './light-readings.ts'
import { MATHS } from './maths.ts'
import { NAMING } from './naming.ts'
import { RUN } from './run.ts'
import { SAMPLING } from './sampling.ts'
import { SQUARENESS } from './squareness.ts'
import { TILES } from './tiles.ts'

/** The functions by the file they stand in, in the order of the guide. */
export const SUBJECTS = {
  maths: MATHS,
  framing: FRAMING,
  'close-focus': CLOSE_FOCUS,
  sampling: SAMPLING,
  tiles: TILES,
  depth: DEPTH_OF_FIELD,
  exposure: EXPOSURE,
  filters: FILTERS,
  'flash-and-time': FLASH_AND_TIME,
  lamps: LAMP_LIGHT,
  'lamp-places': LAMP_PLACES,
  'light-readings': LIGHT_READINGS,
  squareness: SQUARENESS,
  colour: COLOUR,
  care: CARE,
  run: RUN,
  naming: NAMING,
  film: FILM,
} as const satisfies Readonly<Record<string, readonly FunctionRecord[]>>

export type SubjectFile = keyof typeof SUBJECTS

/** Every function of the language. */
export const FUNCTIONS: readonly FunctionRecord[] = Object.values(SUBJECTS).flat()

export const LIBRARY: ReadonlyMap<string, FunctionRecord> = new Map(FUNCTIONS.map((record) => [record.name, record]))
