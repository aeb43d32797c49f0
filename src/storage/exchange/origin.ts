import type { Worksheet } from '../../worksheet/schema/document.ts'
import type { Store } from '../store/types.ts'

/**
 * Where a copy comes from: the id of the sheet in the browser it was sent from, and the time of the revision that was
 * sent. It stays with the copy, so that what is measured in it can be taken over when it comes back.
 */
export interface Origin {
  readonly sheet: string
  readonly at: number
}

/** A sheet of this browser that a copy belongs to. */
export interface Home {
  readonly id: string
  readonly worksheet: Worksheet
  /** The sheet as it was sent, where that revision is still here. */
  readonly before: Worksheet | undefined
}

/** The year 2100, in milliseconds since 1970: no honest clock is past it. */
const LATEST = 4_102_444_800_000

/** Reads the origin a document from outside says it has. */
export function originOf(worksheet: Worksheet): Origin | undefined {
  const { origin } = worksheet as { readonly origin?: unknown }
  if (typeof origin !== 'object' || origin === null) return undefined
  const { sheet, at } = origin as Partial<Record<keyof Origin, unknown>>
  const isId = typeof sheet === 'string' && /^[\w-]{1,64}$/.test(sheet)
  return isId && typeof at === 'number' && at > 0 && at <= LATEST ? { sheet, at } : undefined
}

/** The worksheet with where it was sent from, so that it is recognised when it comes back. */
export const withOrigin = (worksheet: Worksheet, origin: Origin): Worksheet => ({ ...worksheet, origin }) as Worksheet

/** For a copy that is a separate job. */
export function withoutOrigin(worksheet: Worksheet): Worksheet {
  const { origin: _, ...rest } = worksheet as Worksheet & { readonly origin?: unknown }
  return rest as Worksheet
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
