import type { Callable, Library } from '../language/index.ts'
import type { SubjectFile } from './index.ts'

/** The same subjects as in index.ts, each fetched when it is asked for. */
export const LOADERS: Readonly<Record<SubjectFile, () => Promise<readonly Callable[]>>> = {
  maths: async () => (await import('./maths/maths.ts')).MATHS,
  statistics: async () => (await import('./acceptance/statistics.ts')).STATISTICS,
  framing: async () => (await import('./camera/framing.ts')).FRAMING,
  perspective: async () => (await import('./camera/perspective.ts')).PERSPECTIVE,
  'measured-lens': async () => (await import('./camera/measured-lens.ts')).MEASURED_LENS,
  'close-focus': async () => (await import('./camera/close-focus.ts')).CLOSE_FOCUS,
  sampling: async () => (await import('./camera/sampling.ts')).SAMPLING,
  tiles: async () => (await import('./camera/tiles.ts')).TILES,
  depth: async () => (await import('./camera/depth.ts')).DEPTH_OF_FIELD,
  exposure: async () => (await import('./camera/exposure.ts')).EXPOSURE,
  filters: async () => (await import('./light/filters.ts')).FILTERS,
  'flash-and-time': async () => (await import('./light/flash-and-time.ts')).FLASH_AND_TIME,
  lamps: async () => (await import('./lamps/lamps.ts')).LAMP_LIGHT,
  'lamp-places': async () => (await import('./light/lamp-places.ts')).LAMP_PLACES,
  'nearest-pair': async () => (await import('./light/nearest-pair.ts')).NEAREST_PAIR,
  'lens-shadow': async () => (await import('./light/lens-shadow.ts')).LENS_SHADOW,
  'light-readings': async () => (await import('./light/light-readings.ts')).LIGHT_READINGS,
  squareness: async () => (await import('./acceptance/squareness.ts')).SQUARENESS,
  'delta-e': async () => (await import('./acceptance/delta-e.ts')).DELTA_E,
  encodings: async () => (await import('./acceptance/encodings.ts')).ENCODINGS,
  illuminants: async () => (await import('./acceptance/illuminants.ts')).ILLUMINANTS,
  acceptance: async () => (await import('./acceptance/acceptance.ts')).ACCEPTANCE,
  'over-time': async () => (await import('./acceptance/over-time.ts')).OVER_TIME,
  care: async () => (await import('./work/care.ts')).CARE,
  heat: async () => (await import('./work/heat.ts')).HEAT,
  run: async () => (await import('./work/run.ts')).RUN,
  naming: async () => (await import('./work/naming.ts')).NAMING,
  files: async () => (await import('./work/files.ts')).FILES,
  film: async () => (await import('./film/film.ts')).FILM,
}

/** The functions defined in the given files. */
export async function functionsOf(files: Iterable<SubjectFile>): Promise<Library> {
  const subjects: (readonly Callable[])[] = await Promise.all([...new Set(files)].map((file) => LOADERS[file]()))
  return new Map(subjects.flat().map((record) => [record.name, record]))
}
