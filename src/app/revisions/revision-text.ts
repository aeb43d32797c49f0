import type { Store } from '../../storage/store/types.ts'
import { clock } from '../common/words.ts'

const dayAndTime = (time: number): string => {
  const at = new Date(time)
  return `${at.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })}, ${clock(at)}`
}

/** Which revision of a sheet this is, for a paper to be told from an older one. */
export async function revisionText(store: Store, id: string): Promise<string> {
  try {
    const [kept, past] = await Promise.all([store.read(id), store.revisions(id)])
    if (!kept) return 'not yet kept'
    const { changes, changed } = kept.summary
    const said = `${changes === undefined ? '' : `change ${changes}, `}${dayAndTime(changed)}`
    const named = past.find(({ name }) => name !== undefined)
    return named ? `${said}; the last named is «${named.name}»` : said
  } catch {
    // A store that fails says so where the sheet is kept; the paper goes out all the same.
    return ''
  }
}
