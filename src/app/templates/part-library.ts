import { PARTS } from 'virtual:templates'
import { type PartFiles, type PartLibrary, partLibrary } from '../../worksheet/compose/part-library.ts'
import { fetched } from './prepared-template.ts'

let fetching: Promise<PartLibrary> | undefined

/** The parts sheets are composed of; fetched when one is first added to. Rejects where they cannot be fetched. */
export function parts(): Promise<PartLibrary> {
  fetching ??= fetched<PartFiles>(PARTS)
    .then(({ roles, names, parts: files }) => partLibrary(roles, names, files))
    .catch((error: unknown) => {
      fetching = undefined
      throw error
    })
  return fetching
}
