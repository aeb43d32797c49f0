/** Data as JSON has it. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json }

type JsonObject = { readonly [key: string]: Json }

/**
 * How one value becomes another: `[value]` takes its place, 0 removes it, and an object changes the parts it names, also
 * those of a list, whose `length` shortens it.
 */
export type Patch = readonly [Json] | 0 | { readonly [key: string]: Patch }

/** A patch that does not fit what it is applied to. */
export class PatchMisfit extends Error {}

/** Longer lists are of no worksheet. */
const MOST_ITEMS = 100_000

const isObject = (value: Json | undefined): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
const isList = (value: Json | undefined): value is readonly Json[] => Array.isArray(value)
const sizeOf = (value: unknown): number => JSON.stringify(value).length
const partOf = (value: JsonObject | readonly Json[], key: string): Json | undefined =>
  Object.hasOwn(value, key) ? (value as JsonObject)[key] : undefined

/** The shortest patch that makes one value into another; undefined where they are the same. */
export function difference(before: Json | undefined, after: Json): Patch | undefined {
  if (before === after) return undefined
  const whole: Patch = [after]
  if (!(isObject(before) && isObject(after)) && !(isList(before) && isList(after))) return whole
  const parts: Record<string, Patch> = {}
  if (isList(before) && isList(after) && after.length < before.length) parts.length = [after.length]
  if (isObject(before)) for (const key of Object.keys(before)) if (!Object.hasOwn(after, key)) parts[key] = 0
  for (const [key, value] of Object.entries(after)) {
    const changed = difference(partOf(before, key), value)
    if (changed !== undefined) parts[key] = changed
  }
  if (Object.keys(parts).length === 0) return undefined
  return sizeOf(parts) < sizeOf(whole) ? parts : whole
}

/** The value a patch makes of another. Throws PatchMisfit. */
export function patched(before: Json | undefined, patch: Patch): Json {
  if (Array.isArray(patch)) {
    if (patch.length !== 1) throw new PatchMisfit()
    return patch[0] as Json
  }
  if (typeof patch !== 'object' || patch === null) throw new PatchMisfit()
  const parts = patch as { readonly [key: string]: Patch }
  if (isList(before)) return patchedList(before, parts)
  if (!isObject(before)) throw new PatchMisfit()
  const after = new Map<string, Json>(Object.entries(before))
  for (const [key, part] of Object.entries(parts)) {
    if (part === 0) after.delete(key)
    else after.set(key, patched(after.get(key), part))
  }
  return Object.fromEntries(after)
}

function patchedList(before: readonly Json[], parts: { readonly [key: string]: Patch }): Json {
  const after = [...before]
  for (const [key, part] of Object.entries(parts)) {
    if (key === 'length') {
      const length = patched(undefined, part)
      if (typeof length !== 'number' || !(length >= 0 && length <= after.length)) throw new PatchMisfit()
      after.length = Math.trunc(length)
      continue
    }
    const at = /^\d{1,6}$/.test(key) ? Number(key) : Number.NaN
    // Keys that are numbers come in their order: an item may be added at the end and nowhere beyond it.
    if (!(at <= after.length && at < MOST_ITEMS)) throw new PatchMisfit()
    after[at] = patched(after[at], part)
  }
  return after
}
