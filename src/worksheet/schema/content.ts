/** Data from outside with keys that may be any. */
export type Loose = Readonly<Record<string, unknown>>

/** Whether data has keys. */
export const isRecord = (data: unknown): data is Loose =>
  typeof data === 'object' && data !== null && !Array.isArray(data)

/** Whether two contents are the same without regard to the order of keys, which a file or a link may change. */
export function isSame(a: unknown, b: unknown): boolean {
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((one, at) => isSame(one, b[at]))
  if (!isRecord(a) || !isRecord(b)) return Object.is(a, b)
  const keys = Object.keys(a)
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && isSame(a[key], b[key]))
}
