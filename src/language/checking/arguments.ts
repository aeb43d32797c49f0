import { nearest } from '../../units/index.ts'
import { type Diagnostic, fix, problem } from '../values/diagnostic.ts'
import type { Callable, Parameter, ParameterType } from '../values/function-record.ts'
import { describeType, sameType, TEXT, type Type, YES_NO } from '../values/types.ts'
import type { Constant, TypedNode } from './typed-tree.ts'

/** An argument as written: its name where it has one, and its checked value, or undefined where that is in error. */
export interface Written {
  readonly name?: { readonly text: string; readonly from: number; readonly to: number }
  readonly value: TypedNode | 'infinity' | undefined
  readonly from: number
  readonly to: number
}

interface Span {
  readonly from: number
  readonly to: number
}

/** How a call looks: `mask_size(width, lens_height, mask_height)`. */
export const signature = (record: Callable): string =>
  `${record.name}(${record.parameters.map((p) => p.name + (p.default === undefined ? '' : ` = ${p.default}`)).join(', ')}${record.variadic ? ', …' : ''})`

/** The dimension that arguments of type `any` have agreed on so far. */
interface Agreement {
  type?: Type
  parameter?: string
}

/**
 * Puts a call's arguments in the parameters' order, defaults filled in by `readDefault`.
 * Undefined, with diagnostics told to `report`, where they do not fit.
 */
export function matchArguments(
  record: Callable,
  written: readonly Written[],
  call: Span,
  report: (diagnostic: Diagnostic) => void,
  readDefault: (parameter: Parameter) => TypedNode,
): TypedNode[] | undefined {
  const { parameters } = record
  const taken: (Written | undefined)[] = parameters.map(() => undefined)
  const extra: Written[] = []
  let fits = true
  const refuse = (diagnostic: Diagnostic): void => {
    fits = false
    report(diagnostic)
  }
  let place = 0
  let named: string | undefined
  for (const one of written) {
    if (one.name) {
      named = one.name.text
      const index = parameters.findIndex((p) => p.name === named)
      if (index < 0) refuse(unknownArgument(record, one.name))
      else if (taken[index]) refuse(problem(`«${named}» is given twice.`, one.from, one.to))
      else taken[index] = one
    } else if (named !== undefined) {
      refuse(
        problem(
          `After the named argument «${named}» the rest must be named too: ${signature(record)}.`,
          one.from,
          one.to,
        ),
      )
    } else if (place < parameters.length) taken[place++] = one
    else if (record.variadic) extra.push(one)
    else refuse(problem(`${record.name} takes ${count(parameters.length)}: ${signature(record)}.`, one.from, one.to))
  }
  const missing = parameters.filter((p, i) => !taken[i] && p.default === undefined)
  if (missing.length > 0)
    refuse(
      problem(
        `${record.name} lacks ${missing.map((p) => `«${p.name}» (${p.about})`).join(', ')}: ${signature(record)}.`,
        call.from,
        call.to,
      ),
    )
  if (!fits) return undefined
  const agreement: Agreement = {}
  const args: TypedNode[] = []
  const all = [
    ...parameters.map((p, i) => [p, taken[i]] as const),
    ...extra.map((one) => [parameters.at(-1) as Parameter, one] as const),
  ]
  for (const [parameter, one] of all) {
    if (!one) args.push(readDefault(parameter))
    else if (one.value === 'infinity') args.push(infinityFor(parameter, one, refuse))
    else if (one.value === undefined) fits = false
    else {
      const value = asListWherePossible(parameter, one.value)
      const misfit = misfitOf(parameter, value, agreement, record)
      if (misfit) refuse(misfit)
      args.push(value)
    }
  }
  return fits ? args : undefined
}

const count = (n: number): string => (n === 1 ? 'one argument' : `${n} arguments`)

function unknownArgument(record: Callable, name: { text: string } & Span): Diagnostic {
  const near = nearest(
    name.text,
    record.parameters.map((p) => p.name),
  )
  return problem(
    `${record.name} has no argument «${name.text}».${near ? ` Did you mean «${near}»?` : ` It takes ${signature(record)}.`}`,
    name.from,
    name.to,
    near ? [fix(near, name.from, name.to)] : [],
  )
}

function infinityFor(parameter: Parameter, at: Span, refuse: (d: Diagnostic) => void): TypedNode {
  const type = parameter.type
  if (type.kind !== 'number') refuse(problem(`«${parameter.name}» cannot be infinite.`, at.from, at.to))
  return { op: 'constant', value: Number.POSITIVE_INFINITY, type: type as Type, from: at.from, to: at.to }
}

/** A single value stands for a list of one. */
function asListWherePossible(parameter: Parameter, value: TypedNode): TypedNode {
  const wantsList = parameter.type.kind !== 'any or list' && parameter.type.kind.includes('list')
  if (!wantsList || value.type.kind === 'list') return value
  return { op: 'list', items: [value], type: { kind: 'list', of: value.type }, from: value.from, to: value.to }
}

const ANY_IN_WORDS = {
  any: 'a number or a quantity',
  'list of any': 'a list of numbers or quantities',
  'any or list': 'a number, a quantity or a list of them',
} as const

function misfitOf(
  parameter: Parameter,
  value: TypedNode,
  agreement: Agreement,
  record: Callable,
): Diagnostic | undefined {
  const wanted = parameter.type
  const found = value.type
  if (wanted.kind === 'any' || wanted.kind === 'list of any' || wanted.kind === 'any or list') {
    const listed = found.kind === 'list' ? found.of : undefined
    const item = wanted.kind === 'any' ? found : wanted.kind === 'list of any' ? listed : (listed ?? found)
    if (item?.kind !== 'number') return wrong(record, parameter, value, ANY_IN_WORDS[wanted.kind])
    if (wanted.kind === 'list of any' && wanted.apart) return undefined
    if (agreement.type && !sameType(agreement.type, item))
      return wrong(record, parameter, value, `${describeType(agreement.type)}, as «${agreement.parameter}» is`)
    agreement.type ??= item
    agreement.parameter ??= parameter.name
    return undefined
  }
  if (wanted.kind === 'any list') return found.kind === 'list' ? undefined : wrong(record, parameter, value, 'a list')
  if (!fitsType(found, wanted)) return wrong(record, parameter, value, describeType(wanted as Type))
  if (
    parameter.choices &&
    !parameter.open &&
    value.op === 'constant' &&
    !parameter.choices.includes(value.value as string)
  ) {
    const near = nearest(String(value.value), parameter.choices)
    return problem(
      `«${parameter.name}» is one of ${parameter.choices.map((c) => `"${c}"`).join(', ')}.`,
      value.from,
      value.to,
      near ? [fix(`"${near}"`, value.from, value.to)] : [],
    )
  }
  return undefined
}

/** An empty list fits every list. */
const fitsType = (found: Type, wanted: ParameterType): boolean =>
  sameType(found, wanted as Type) ||
  (found.kind === 'list' && wanted.kind === 'list' && (found as { empty?: boolean }).empty === true)

function wrong(record: Callable, parameter: Parameter, value: TypedNode, wanted: string): Diagnostic {
  const found = describeType(value.type)
  const fixes = unitFix(value, parameter)
  return problem(
    `«${parameter.name}» of ${record.name} is ${parameter.about}: wanted ${wanted}, found ${found}.`,
    value.from,
    value.to,
    fixes,
  )
}

const EXAMPLE_UNITS: Readonly<Record<string, string>> = {
  length: 'mm',
  time: 's',
  angle: 'deg',
  stops: 'stop',
  pixels: 'px',
  sampling: 'ppi',
  illuminance: 'lx',
  temperature: 'K',
  power: 'W',
  voltage: 'V',
  current: 'A',
  mass: 'kg',
  'luminous intensity': 'cd',
  'reciprocal length': 'dpt',
  frequency: 'Hz',
}

/** A number without a unit where a quantity is wanted may lack just its unit. */
export function unitFixFor(value: TypedNode, dimensionName: string): ReturnType<typeof fix>[] {
  const unit = EXAMPLE_UNITS[dimensionName]
  const bare = value.op === 'constant' && (value as Constant).bare
  return bare && unit ? [fix(` ${unit}`, value.to, value.to, `Add the unit ${unit}`)] : []
}

function unitFix(value: TypedNode, parameter: Parameter): ReturnType<typeof fix>[] {
  return parameter.type.kind === 'number' ? unitFixFor(value, parameter.type.dimension.name) : []
}

/** The value of a default that needs no reading: yes, no, a text, infinity. */
export function plainDefault(text: string): { value: boolean | string | number; type: Type } | undefined {
  if (text === 'yes' || text === 'no') return { value: text === 'yes', type: YES_NO }
  if (text.startsWith('"')) return { value: text.slice(1, -1), type: TEXT }
  return undefined
}
