import type { Worksheet } from '../../worksheet/schema/document.ts'

/**
 * Where a copy comes from: the id of the sheet in the browser it was sent from, and the time of the revision that was
 * sent. It stays with the copy, so that what is measured in it can be taken over when it comes back.
 */
export interface Origin {
  readonly sheet: string
  readonly at: number
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
