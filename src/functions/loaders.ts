import type { Callable, Library } from '../language/index.ts'
import type { SubjectFile } from './index.ts'

/** The same subjects as in index.ts, each fetched when it is asked for. */
export const LOADERS: Readonly<Record<SubjectFile, () => Promise<readonly Callable[]>>> = {
  maths: () => import('./maths/maths.ts').then((file) => file.MATHS),
  statistics: () => import('./acceptance/statistics.ts').then((file) => file.STATISTICS),
  framing: () => import('./camera/framing.ts').then((file) => file.FRAMING),
  perspective: () => import('./camera/perspective.ts').then((file) => file.PERSPECTIVE),
  'measured-lens': () => import('./camera/measured-lens.ts').then((file) => file.MEASURED_LENS),
  'close-focus': () => import('./camera/close-focus.ts').then((file) => file.CLOSE_FOCUS),
  sampling: () => import('./camera/sampling.ts').then((file) => file.SAMPLING),
  tiles: () => import('./camera/tiles.ts').then((file) => file.TILES),
  depth: () => import('./camera/depth.ts').then((file) => file.DEPTH_OF_FIELD),
  exposure: () => import('./camera/exposure.ts').then((file) => file.EXPOSURE),
  filters: () => import('./light/filters.ts').then((file) => file.FILTERS),
  'flash-and-time': () => import('./light/flash-and-time.ts').then((file) => file.FLASH_AND_TIME),
  lamps: () => import('./lamps/lamps.ts').then((file) => file.LAMP_LIGHT),
  'lamp-places': () => import('./light/lamp-places.ts').then((file) => file.LAMP_PLACES),
  'nearest-pair': () => import('./light/nearest-pair.ts').then((file) => file.NEAREST_PAIR),
  'lens-shadow': () => import('./light/lens-shadow.ts').then((file) => file.LENS_SHADOW),
  'light-readings': () => import('./light/light-readings.ts').then((file) => file.LIGHT_READINGS),
  squareness: () => import('./acceptance/squareness.ts').then((file) => file.SQUARENESS),
  'delta-e': () => import('./acceptance/delta-e.ts').then((file) => file.DELTA_E),
  encodings: () => import('./acceptance/encodings.ts').then((file) => file.ENCODINGS),
  illuminants: () => import('./acceptance/illuminants.ts').then((file) => file.ILLUMINANTS),
  acceptance: () => import('./acceptance/acceptance.ts').then((file) => file.ACCEPTANCE),
  'over-time': () => import('./acceptance/over-time.ts').then((file) => file.OVER_TIME),
  care: () => import('./work/care.ts').then((file) => file.CARE),
  heat: () => import('./work/heat.ts').then((file) => file.HEAT),
  run: () => import('./work/run.ts').then((file) => file.RUN),
  naming: () => import('./work/naming.ts').then((file) => file.NAMING),
  files: () => import('./work/files.ts').then((file) => file.FILES),
  film: () => import('./film/film.ts').then((file) => file.FILM),
}

/** The functions defined in the given files. */
export async function functionsOf(files: Iterable<SubjectFile>): Promise<Library> {
  const subjects: (readonly Callable[])[] = await Promise.all([...new Set(files)].map((file) => LOADERS[file]()))
  return new Map(subjects.flat().map((record) => [record.name, record]))
}
