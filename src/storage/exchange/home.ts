import type { Worksheet } from '../../worksheet/schema/document.ts'
import type { Store } from '../store/types.ts'
import { originOf } from './origin.ts'

/** A sheet of this browser that a copy belongs to. */
export interface Home {
  readonly id: string
  readonly worksheet: Worksheet
  /** The sheet as it was sent, where that revision is still here. */
  readonly before: Worksheet | undefined
}

/** The sheet of this browser a copy belongs to: the one it was sent from, else one that came from the same. */
export async function homeOf(store: Store, copy: Worksheet): Promise<Home | undefined> {
  const origin = originOf(copy)
  if (!origin) return undefined
  const summaries = await store.list()
  const own = summaries.find(({ id }) => id === origin.sheet)
  for (const { id } of own ? [own] : summaries) {
    const worksheet = await store.load(id).catch(() => undefined)
    if (!worksheet || !(own || originOf(worksheet)?.sheet === origin.sheet)) continue
    const before = await store.revision(id, origin.at).catch(() => undefined)
    return { id, worksheet, before }
  }
  return undefined
}
