import { clip, nearest } from '../../units/index.ts'
import { type Diagnostic, fix, problem } from '../values/diagnostic.ts'
import type { Callable, Parameter, ParameterType } from '../values/function-record.ts'
import { describeType, isLevel, sameType, TEXT, type Type, YES_NO } from '../values/types.ts'
import type { CheckContext } from './check-context.ts'
import { fixesToward, type Required } from './expression.ts'
import { asDifference, asLevel, levelMisfit, levelProblem } from './levels.ts'
import type { TypedNode } from './typed-tree.ts'
import { CHECK_WORDS as W } from './words.ts'

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

/** What the arguments of type `any` agree on: the first of them, and its item's type. */
interface Agreement {
  first?: { readonly type: Type; readonly parameter: string }
}

/**
 * Puts a call's arguments in the parameters' order, defaults filled in by `readDefault`. Returns undefined where they
 * do not fit, after reporting why.
 */
export function matchArguments(
  c: CheckContext,
  record: Callable,
  written: readonly Written[],
  call: Span,
  readDefault: (parameter: Parameter) => TypedNode,
): TypedNode[] | undefined {
  const { parameters } = record
  const taken: (Written | undefined)[] = parameters.map(() => undefined)
  const extra: Written[] = []
  let fits = true
  const refuse = (diagnostic: Diagnostic): void => {
    if (diagnostic.severity === 'error') fits = false
    c.report(diagnostic)
  }
  let place = 0
  let named: string | undefined
  for (const one of written) {
    if (one.name) {
      named = one.name.text
      const index = parameters.findIndex((p) => p.name === named)
      if (index < 0) refuse(unknownArgument(record, one.name))
      else if (taken[index]) refuse(problem(W.givenTwice(named), one.from, one.to))
      else taken[index] = one
    } else if (named !== undefined) refuse(problem(W.afterNamed(named, signature(record)), one.from, one.to))
    else if (place < parameters.length) taken[place++] = one
    else extra.push(one)
  }
  if (!record.variadic && extra.length > 0) refuse(tooMany(c, record, taken[parameters.length - 1], extra))
  const missing = parameters.filter((p, i) => !taken[i] && p.default === undefined)
  if (missing.length > 0) refuse(missingArguments(c, record, missing, written, call))
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
      const misfit = misfitOf(c, parameter, value, agreement, record)
      if (misfit) refuse(misfit)
      args.push(value)
    }
  }
  return fits ? args : undefined
}

/** What is left over is taken out, with what joins it to the last argument that is taken. */
function tooMany(c: CheckContext, record: Callable, last: Written | undefined, extra: readonly Written[]): Diagnostic {
  const { from } = extra[0] as Written
  const { to } = extra.at(-1) as Written
  return problem(W.tooMany(record.name, record.parameters.length, signature(record)), from, to, [
    fix('', last?.to ?? from, to, W.remove(c.text.slice(from, to))),
  ])
}

/** Cells named like the missing arguments fill them; a fix that does not fit is not shown. */
function missingArguments(
  c: CheckContext,
  record: Callable,
  missing: readonly Parameter[],
  written: readonly Written[],
  call: Span,
): Diagnostic {
  const end = call.to - 1
  const join = written.length > 0 ? ', ' : ''
  const fixes = missing.every(({ name }) => c.scope.typeOf(name) !== undefined)
    ? [
        fix(
          join + missing.map(({ name }) => `${name}: ${name}`).join(', '),
          end,
          end,
          W.addArguments(missing.map(({ name }) => name)),
        ),
      ]
    : []
  const about = missing.map((p) => `“${p.name}” (${p.about})`)
  return problem(W.missing(record.name, about, signature(record)), call.from, call.to, fixes)
}

function unknownArgument(record: Callable, name: { text: string } & Span): Diagnostic {
  const near = nearest(
    name.text,
    record.parameters.map((p) => p.name),
  )
  return problem(
    W.noArgument(record.name, name.text, near, signature(record)),
    name.from,
    name.to,
    near ? [fix(near, name.from, name.to)] : [],
  )
}

function infinityFor(parameter: Parameter, at: Span, refuse: (d: Diagnostic) => void): TypedNode {
  const type = parameter.type
  if (type.kind !== 'number') refuse(problem(W.cannotBeInfinite(parameter.name), at.from, at.to))
  return { op: 'constant', value: Number.POSITIVE_INFINITY, type: type as Type, from: at.from, to: at.to }
}

const LISTS: ReadonlySet<ParameterType['kind']> = new Set(['list', 'list of any', 'any list'])

/** A single value is a list of one where a list is required. */
function asListWherePossible(parameter: Parameter, value: TypedNode): TypedNode {
  if (!LISTS.has(parameter.type.kind) || value.type.kind === 'list') return value
  return { op: 'list', items: [value], type: { kind: 'list', of: value.type }, from: value.from, to: value.to }
}

/** Parameters that must agree in dimension with each other. */
const AGREEING: ReadonlySet<ParameterType['kind']> = new Set(['any', 'list of any', 'any or list'])

function misfitOf(
  c: CheckContext,
  parameter: Parameter,
  value: TypedNode,
  agreement: Agreement,
  record: Callable,
): Diagnostic | undefined {
  const { type: required } = parameter
  const found = value.type
  if (AGREEING.has(required.kind)) return disagreement(c, parameter, value, agreement, record)
  if (required.kind === 'any list') return undefined
  if (!sameType(found, required as Type))
    return wrong(c, record, parameter, value, describeType(required as Type), required)
  if (
    parameter.choices &&
    !parameter.open &&
    value.op === 'constant' &&
    !parameter.choices.includes(value.value as string)
  ) {
    const near = nearest(String(value.value), parameter.choices)
    const choices = near ? [near] : parameter.choices
    return problem(
      W.notAChoice(parameter.name, parameter.choices),
      value.from,
      value.to,
      choices.map((choice) => fix(`"${choice}"`, value.from, value.to)),
    )
  }
  return levelMisfit(c, value, required as Type, parameter.name)
}

/** Parameters that say `any` take numbers of one dimension, all of them levels or none. */
function disagreement(
  c: CheckContext,
  parameter: Parameter,
  value: TypedNode,
  agreement: Agreement,
  record: Callable,
): Diagnostic | undefined {
  const { kind } = parameter.type
  const found = value.type
  const item = found.kind === 'list' && kind !== 'any' ? found.of : found
  if (item.kind !== 'number')
    return wrong(
      c,
      record,
      parameter,
      value,
      kind === 'list of any' ? W.listOfNumbers : W.anyNumber,
      agreement.first?.type ?? parameter.type,
    )
  if (parameter.type.kind === 'list of any' && parameter.type.apart) return undefined
  const { first } = agreement
  if (first && !sameType(first.type, item))
    return wrong(c, record, parameter, value, W.sameKindAs(describeType(first.type), first.parameter), first.type)
  if (first && isLevel(first.type) !== isLevel(item))
    return levelProblem(
      c,
      W.levelAndDifference(W.takenTogether),
      value,
      isLevel(item) ? [asDifference(c, value)] : [asLevel(c, value)],
    )
  agreement.first ??= { type: item, parameter: parameter.name }
  if (record.differencesOnly && isLevel(item))
    return levelProblem(c, W.levelNotDifference(W.argumentOf(parameter.name, record.name)), value, [
      asDifference(c, value),
    ])
  return undefined
}

function wrong(
  c: CheckContext,
  record: Callable,
  parameter: Parameter,
  value: TypedNode,
  described: string,
  required: Required,
): Diagnostic {
  if (value.type.kind === 'list' && value.type.of.kind === 'number' && takesOne(parameter.type))
    return listTaken(c, record, value, required)
  return problem(
    W.wrongArgument(record.name, parameter.name, parameter.about, described, describeType(value.type)),
    value.from,
    value.to,
    fixesToward(c.scope, c.text, value, required),
  )
}

const takesOne = ({ kind }: ParameterType): boolean => kind === 'number' || kind === 'any'

/** Why a function of one value does not take a list, such as a column of a table; one figure of it fits. */
function listTaken(c: CheckContext, record: Callable, value: TypedNode, required: Required): Diagnostic {
  const { from, to } = value
  const text = c.text.slice(from, to)
  const ends = ['max', 'min'].map((name) => fix(`${name}(${text})`, from, to))
  return problem(W.listTaken(clip(text), record.name), from, to, [
    ...fixesToward(c.scope, c.text, value, required),
    ...ends,
  ])
}

/** The value of a default that needs no reading: yes, no, a text, infinity. */
export function plainDefault(text: string): { value: boolean | string | number; type: Type } | undefined {
  if (text === 'yes' || text === 'no') return { value: text === 'yes', type: YES_NO }
  if (text.startsWith('"')) return { value: text.slice(1, -1), type: TEXT }
  return undefined
}
