import type { Callable } from '../values/function-record.ts'
import { guarded, type Implementation } from '../values/guards.ts'
import { ComputeError, NotYet } from '../values/operations.ts'
import type { RecordValue, Type, Value } from '../values/types.ts'
import { VALUE_WORDS } from '../values/words.ts'

/** What lowered formulas call, by generated name: the one table of functions the evaluator sees. */
export const FUNCTION_TABLE: Record<string, Implementation> = Object.create(null)

/** What a generated name means: a function for arguments of these types, or what makes a list or takes a part. */
export type Called = { readonly record: Callable; readonly types: readonly Type[] } | 'list' | 'part'

const names = new Map<Callable, Map<string, string>>()
const behind = new Map<string, Called>()
let next = 0

function register(implementation: Implementation, called: Called): string {
  const name = `f_${next++}`
  FUNCTION_TABLE[name] = implementation
  behind.set(name, called)
  return name
}

const typeKey = (type: Type): string => {
  if (type.kind === 'number') return type.dimension.key
  return type.kind === 'list' ? `[${typeKey(type.of)}]` : type.kind
}

const ANY_KINDS: ReadonlySet<string> = new Set(['any', 'list of any', 'any or list'])

/** The generated name of a function for arguments of these types; one name where the types make no difference. */
export function recordFunction(record: Callable, types: readonly Type[]): string {
  const byTypes = names.get(record) ?? new Map<string, string>()
  names.set(record, byTypes)
  // Range messages show units, so functions of any dimension are separate too.
  const depends = record.computeFor ?? record.parameters.some(({ type }) => ANY_KINDS.has(type.kind))
  const key = depends ? types.map(typeKey).join() : ''
  const known = byTypes.get(key)
  if (known) return known
  const name = register(guarded(record, types), { record, types })
  byTypes.set(key, name)
  return name
}

const LIST = register((...items: Value[]) => items, 'list')
const PART = register((record, part) => partOf(record as RecordValue, part as string), 'part')

/** A part of a record. An empty one has not been measured yet; one with other parts never gets this one. */
function partOf(record: RecordValue, part: string): Value {
  const value = record[part]
  if (value !== undefined) return value
  if (Object.keys(record).length === 0) throw new NotYet(VALUE_WORDS.partNotYet(part))
  throw new ComputeError(VALUE_WORDS.noPart(part))
}

/** The generated name of what makes a list of its arguments. */
export const listFunction = (): string => LIST
/** The generated name of what takes a part of a record. */
export const partFunction = (): string => PART

/** What a generated name calls. */
export const calledBy = (name: string): Called => behind.get(name) as Called
