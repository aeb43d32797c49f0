import { PARTS } from 'virtual:templates'
import { type PartFiles, type PartLibrary, partLibrary } from '../../worksheet/compose/part-library.ts'
import { templateWords } from './words.ts'

let fetching: Promise<PartLibrary> | undefined

/** The parts sheets are composed of; fetched when one is first added to. Rejects where they cannot be fetched. */
export function parts(): Promise<PartLibrary> {
  fetching ??= fetched().catch((error: unknown) => {
    fetching = undefined
    throw error
  })
  return fetching
}

async function fetched(): Promise<PartLibrary> {
  const answer = await fetch(PARTS)
  if (!answer.ok) throw new Error(templateWords.notFetched)
  const { roles, names, parts: files }: PartFiles = await answer.json()
  return partLibrary(roles, names, files)
}
