import type { Callable } from '../language/index.ts'
import type { SubjectFile } from './index.ts'

/** The same subjects as in index.ts, each fetched when it is asked for. */
export const LOADERS: Readonly<Record<SubjectFile, () => Promise<readonly Callable[]>>> = {
  maths: async () => (await import('./maths.ts')).MATHS,
  framing: async () => (await import('./framing.ts')).FRAMING,
  'close-focus': async () => (await import('./close-focus.ts')).CLOSE_FOCUS,
  sampling: async () => (await import('./sampling.ts')).SAMPLING,
  tiles: async () => (await import('./tiles.ts')).TILES,
  depth: async () => (await import('./depth.ts')).DEPTH_OF_FIELD,
  exposure: async () => (await import('./exposure.ts')).EXPOSURE,
  filters: async () => (await import('./filters.ts')).FILTERS,
  'flash-and-time': async () => (await import('./flash-and-time.ts')).FLASH_AND_TIME,
  lamps: async () => (await import('./lamps.ts')).LAMP_LIGHT,
  'lamp-places': async () => (await import('./lamp-places.ts')).LAMP_PLACES,
  'light-readings': async () => (await import('./light-readings.ts')).LIGHT_READINGS,
  squareness: async () => (await import('./squareness.ts')).SQUARENESS,
  colour: async () => (await import('./colour.ts')).COLOUR,
  care: async () => (await import('./care.ts')).CARE,
  run: async () => (await import('./run.ts')).RUN,
  naming: async () => (await import('./naming.ts')).NAMING,
  film: async () => (await import('./film.ts')).FILM,
}
