import type { SubjectFile } from '../../functions/index.ts'
import { LOADERS } from '../../functions/loaders.ts'
import type { Callable, Library } from '../../language/index.ts'

/** The functions defined in the given files. */
export async function functionsOf(files: Iterable<SubjectFile>): Promise<Library> {
  const subjects: (readonly Callable[])[] = await Promise.all([...new Set(files)].map((file) => LOADERS[file]()))
  return new Map(subjects.flat().map((record) => [record.name, record]))
}
