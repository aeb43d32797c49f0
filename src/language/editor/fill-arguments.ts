import type { Callable, Parameter } from '../values/function-record.ts'
import type { Scope } from '../values/scope.ts'
import { isLevel, sameType, type Type } from '../values/types.ts'

/** What may be an argument: a cell, or a part of one. */
interface Candidate {
  readonly text: string
  /** Its name as that of a parameter: `original_width` for `original.width`. */
  readonly name: string
  readonly type: Type
}

function candidates(scope: Scope): Candidate[] {
  return [...scope.names()].flatMap((name) => {
    const type = scope.typeOf(name)
    if (type === undefined || type === 'unknown') return []
    if (type.kind !== 'record') return [{ text: name, name, type }]
    const parts = Object.entries(type.parts).map(([part, of]) => ({
      text: `${name}.${part}`,
      name: `${name}_${part}`,
      type: of,
    }))
    return [{ text: name, name, type }, ...parts]
  })
}

const fits = ({ type }: Parameter, found: Type): boolean => {
  if (type.kind === 'any') return found.kind === 'number'
  if (type.kind === 'any or list' || type.kind === 'list of any' || type.kind === 'any list') return false
  return sameType(type, found) && isLevel(type) === isLevel(found)
}

/** The cell of a parameter: of its name; of a required one else the only one whose name begins or ends with it. */
function found(parameter: Parameter, among: readonly Candidate[]): string | undefined {
  const fitting = among.filter(({ type }) => fits(parameter, type))
  const exact = fitting.find(({ name }) => name === parameter.name)
  if (exact || parameter.default !== undefined) return exact?.text
  const near = fitting.filter(
    ({ name }) => name.endsWith(`_${parameter.name}`) || name.startsWith(`${parameter.name}_`),
  )
  return near.length === 1 ? near[0]?.text : undefined
}

/**
 * The arguments of a call from the cells named like its parameters, a question mark for each required one that no cell
 * is named like. Undefined where there is no such cell at all.
 */
export function argumentsByName({ parameters, variadic }: Callable, scope: Scope): string | undefined {
  if (variadic) return undefined
  const among = candidates(scope)
  const texts = parameters.map((parameter) => found(parameter, among))
  if (texts.every((text) => text === undefined)) return undefined
  let leftOut = false
  return parameters
    .flatMap((parameter, at) => {
      const text = texts[at] ?? (parameter.default === undefined ? '?' : undefined)
      if (text === undefined) {
        leftOut = true
        return []
      }
      return [leftOut ? `${parameter.name}: ${text}` : text]
    })
    .join(', ')
}
