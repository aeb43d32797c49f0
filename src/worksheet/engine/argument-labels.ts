import type { Callable } from '../../language/index.ts'
import { partOf } from './words.ts'

/** The arguments of a call as they are written, given the text after its opening bracket. */
function argumentsIn(text: string): string[] {
  const found = ['']
  let depth = 1
  for (const sign of text) {
    depth += '([{'.includes(sign) ? 1 : ')]}'.includes(sign) ? -1 : 0
    if (depth === 0) break
    if (depth === 1 && sign === ',') found.push('')
    else found[found.length - 1] += sign
  }
  return found.map((one) => one.trim())
}

/** What is written for a parameter in each call of its function in a formula. */
function* writtenFor(parameter: string, { name, parameters }: Callable, formula: string): Generator<string> {
  const place = parameters.findIndex((one) => one.name === parameter)
  if (place < 0) return
  for (const call of formula.matchAll(new RegExp(`\\b${name}\\(`, 'g'))) {
    const given = argumentsIn(formula.slice(call.index + call[0].length))
    const named = given.find((one) => one.startsWith(`${parameter}:`))
    yield named?.slice(parameter.length + 1).trim() ?? given[place] ?? ''
  }
}

/**
 * What a function says of its arguments, each by the label of the cell that is given for it: “Focal length” for “focal”.
 * An argument that is not one cell, or differs between two calls, keeps its name.
 */
export const withLabels = (
  text: string,
  formula: string,
  calls: readonly Callable[],
  labelOf: (name: string) => string | undefined,
): string =>
  text.replace(/“(\w+)”/g, (quoted, parameter: string) => {
    const written = new Set(calls.flatMap((call) => [...writtenFor(parameter, call, formula)]))
    const [, name, part] = /^(\w+)(?:\.(\w+))?$/.exec([...written].join()) ?? []
    const label = name && labelOf(name)
    return label ? `“${part ? partOf(label, part) : label}”` : quoted
  })
