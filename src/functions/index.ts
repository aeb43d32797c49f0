import type { FunctionRecord, Library } from '../language/index.ts'
import { CARE } from './care.ts'
import { CLOSE_FOCUS } from './close-focus.ts'
import { COLOUR } from './colour.ts'
import { DEPTH_OF_FIELD } from './depth.ts'
import { EXPOSURE } from './exposure.ts'
import { FILM } from './film.ts'
import { FILTERS } from './filters.ts'
import { FLASH_AND_TIME } from './flash-and-time.ts'
import { FRAMING } from './framing.ts'
import { LIGHTING } from './lighting.ts'
import { MATHS } from './maths.ts'
import { RUN } from './run.ts'
import { SAMPLING } from './sampling.ts'
import { SQUARENESS } from './squareness.ts'

/** Every function of the language, in the order of the guide. */
export const FUNCTIONS: readonly FunctionRecord[] = [
  ...MATHS,
  ...FRAMING,
  ...CLOSE_FOCUS,
  ...SAMPLING,
  ...DEPTH_OF_FIELD,
  ...EXPOSURE,
  ...FILTERS,
  ...FLASH_AND_TIME,
  ...LIGHTING,
  ...SQUARENESS,
  ...COLOUR,
  ...CARE,
  ...RUN,
  ...FILM,
]

export const LIBRARY: Library = new Map(FUNCTIONS.map((record) => [record.name, record]))
