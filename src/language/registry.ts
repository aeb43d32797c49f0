import type { Callable } from './function-record.ts'
import { guarded, type Implementation } from './guarded.ts'
import type { RecordValue, Type, Value } from './types.ts'

/** What lowered formulas call, by generated name: the one table of functions the evaluator sees. */
export const FUNCTION_TABLE: Record<string, Implementation> = Object.create(null)

const names = new Map<Callable, Map<string, string>>()
let next = 0

function register(implementation: Implementation): string {
  const name = `f_${next++}`
  FUNCTION_TABLE[name] = implementation
  return name
}

const typeKey = (type: Type): string => {
  if (type.kind === 'number') return type.dimension.key
  return type.kind === 'list' ? `[${typeKey(type.of)}]` : type.kind
}

/** The generated name of a function for arguments of these types; one name where the types make no difference. */
export function recordFunction(record: Callable, types: readonly Type[]): string {
  const byTypes = names.get(record) ?? new Map<string, string>()
  names.set(record, byTypes)
  // Range messages show units, so functions of any dimension are kept apart too.
  const depends =
    record.computeFor ?? record.parameters.some((p) => p.type.kind === 'any' || p.type.kind === 'list of any')
  const key = depends ? types.map(typeKey).join(';') : ''
  const known = byTypes.get(key)
  if (known) return known
  const name = register(guarded(record, types))
  byTypes.set(key, name)
  return name
}

const LIST = register((...items: Value[]) => items)
const PART = register((record, part) => (record as RecordValue)[part as string] as Value)

export const listFunction = (): string => LIST
export const partFunction = (): string => PART
