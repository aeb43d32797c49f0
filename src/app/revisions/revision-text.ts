import type { Store } from '../../storage/store/types.ts'
import { dayAndTime } from '../../units/plural.ts'
import { revisionsWords as words } from './words.ts'

/** Which revision of a sheet this is, so that a paper can be distinguished from an older one. */
export async function revisionText(store: Store, id: string): Promise<string> {
  try {
    const [saved, past] = await Promise.all([store.read(id), store.revisions(id)])
    if (!saved) return words.notSavedYet
    const { changes, changed } = saved.summary
    const said =
      changes === undefined ? dayAndTime(new Date(changed)) : words.change(changes, dayAndTime(new Date(changed)))
    const lastNamed = past.flatMap(({ name }) => name ?? [])[0]
    return lastNamed !== undefined ? words.lastNamed(said, lastNamed) : said
  } catch {
    // A store that fails says so where the sheet is saved; the paper is printed all the same.
    return ''
  }
}
