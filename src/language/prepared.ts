import { Dimension, type Notation } from '../units/index.ts'
import { type Call, compile, type Step } from './compile.ts'
import type { Diagnostic } from './diagnostic.ts'
import type { Computable } from './formula.ts'
import type { Callable, Library } from './function-record.ts'
import type { Condition, Meaning, Reader, ReadFormula, Understood } from './meaning.ts'
import { listFunction, partFunction, recordFunction } from './registry.ts'
import type { Scope } from './scope.ts'
import { list, number, record, TEXT, type Type, type Value, YES_NO } from './types.ts'

/** Formulas as the checker understood them when the site was built, as plain data. */
export interface PreparedFormulas {
  readonly types: readonly PreparedType[]
  readonly formulas: Readonly<Record<string, PreparedFormula>>
}

/** Refers to other types by their place in the list. */
export type PreparedType =
  | { readonly number: string; readonly notation?: Notation }
  | { readonly list: number }
  | { readonly record: string; readonly parts: Readonly<Record<string, number>> }
  | 'yes or no'
  | 'text'

export interface PreparedFormula {
  readonly mentions: readonly string[]
  readonly meanings: readonly PreparedMeaning[]
}

/** What a formula means where the words it mentions have these types. */
export interface PreparedMeaning {
  /** By mention, the place of its type; -1 where there is no such cell. */
  readonly types: readonly number[]
  readonly uses: readonly string[]
  readonly whole: PreparedProgram
  readonly calls: readonly string[]
  readonly warnings: readonly Diagnostic[]
  readonly limits?: { readonly of: PreparedProgram; readonly relative: boolean }
  readonly condition?: Condition<PreparedProgram>
}

export interface PreparedProgram {
  readonly type: number
  readonly steps: readonly PreparedStep[]
  /** A cell's name, or a constant in brackets; nothing in them where it is infinite. */
  readonly inputs: readonly (string | readonly [Value] | readonly [])[]
  /** From, to, from, to, … */
  readonly spans: readonly number[]
  readonly infinite?: true
}

/** As `Step`, a function called by its own name for arguments of these types. */
export type PreparedStep = number | string | readonly PreparedStep[] | PreparedCall
export interface PreparedCall {
  readonly call: string
  readonly types: readonly number[]
}

/** How a list is made, and a part of a record taken; no function can be called so. */
export const LIST_CALL = '{}'
export const PART_CALL = '.'

/** A type as text, down to the way it is written: what a formula means hangs on that. */
export function exactly(type: Type): string {
  if (type.kind === 'number') return `${type.dimension.key} ${type.notation ?? ''}`
  if (type.kind === 'list') return `[${exactly(type.of)}]`
  if (type.kind !== 'record') return type.kind
  return `${type.name}{${Object.entries(type.parts).map(([name, part]) => `${name}:${exactly(part)}`)}}`
}

const isBranch = (step: PreparedStep): step is readonly PreparedStep[] => Array.isArray(step)

/** The types of prepared formulas, and their programs made ready. */
class Table {
  readonly types: Type[] = []
  readonly keys: readonly string[]

  constructor(private readonly prepared: PreparedFormulas) {
    for (const type of prepared.types) this.types.push(this.typeOf(type))
    this.keys = this.types.map(exactly)
  }

  find(text: string): PreparedFormula | undefined {
    return Object.hasOwn(this.prepared.formulas, text) ? this.prepared.formulas[text] : undefined
  }

  private at(place: number): Type {
    return this.types[place] as Type
  }

  private typeOf(type: PreparedType): Type {
    if (type === 'yes or no') return YES_NO
    if (type === 'text') return TEXT
    if ('number' in type) return number(Dimension.of(type.number.split(' ').map(Number)), type.notation)
    if ('list' in type) return list(this.at(type.list))
    return record(type.record, Object.fromEntries(Object.entries(type.parts).map(([name, at]) => [name, this.at(at)])))
  }

  ready({ type, steps, inputs, spans, infinite }: PreparedProgram, library: Library): Computable {
    return {
      type: this.at(type),
      program: compile(steps.map((step) => this.step(step, library))),
      inputs: inputs.map((input) => {
        if (typeof input === 'string') return { cell: input }
        return { constant: input.length === 0 ? Number.POSITIVE_INFINITY : input[0] }
      }),
      spans: spans.flatMap((from, i) => (i % 2 === 0 ? [{ from, to: spans[i + 1] as number }] : [])),
      mayBeInfinite: infinite ?? false,
    }
  }

  private step(step: PreparedStep, library: Library): Step {
    if (typeof step !== 'object') return step
    if (isBranch(step)) return step.map((one) => this.step(one, library))
    return { call: this.functionOf(step, library), count: step.types.length } satisfies Call
  }

  private functionOf({ call, types }: PreparedCall, library: Library): string {
    if (call === LIST_CALL) return listFunction()
    if (call === PART_CALL) return partFunction()
    const known = types.map((type) => this.at(type))
    return recordFunction(library.get(call) as Callable, known)
  }
}

const mapped = <A, B>(condition: Condition<A>, make: (ready: A) => B): Condition<B> => {
  if ('both' in condition) {
    const { both, left, right } = condition
    return { both, left: mapped(left, make), right: mapped(right, make) }
  }
  const { whole, so, order } = condition
  if (!order) return { whole: make(whole), so }
  return { whole: make(whole), so, order: { ...order, left: make(order.left), right: make(order.right) } }
}

/**
 * Tells what formulas mean from what the build has prepared. What is not among it, or means something else for other
 * types, is left to the checker; where that is not here yet, `wanted` is called and nothing is known for now.
 */
export class PreparedReader implements Reader {
  private readonly table: Table
  private readonly made = new Map<PreparedMeaning, Meaning>()

  constructor(
    prepared: PreparedFormulas,
    private readonly wanted: () => void,
    private readonly checker?: Reader,
  ) {
    this.table = new Table(prepared)
  }

  read(text: string): ReadFormula {
    const found = this.table.find(text)
    if (!found) return this.left(text) ?? NOT_YET
    return { mentions: found.mentions, check: (scope) => this.check(found, scope) ?? this.left(text)?.check(scope) }
  }

  private left(text: string): ReadFormula | undefined {
    if (!this.checker) this.wanted()
    return this.checker?.read(text)
  }

  private check({ mentions, meanings }: PreparedFormula, scope: Scope): Understood | undefined {
    const types = mentions.map((name) => scope.typeOf(name))
    const keys = types.map((type) => (type === undefined || type === 'unknown' ? type : exactly(type)))
    const fits = ({ types: wanted, calls }: PreparedMeaning): boolean =>
      keys.every((key, i) => key === 'unknown' || key === this.table.keys[wanted[i] as number]) &&
      calls.every((name) => scope.library.has(name))
    const meaning = meanings.find(fits)
    if (!meaning) return undefined
    const { uses } = meaning
    // A cell in error leaves what names it without a meaning, and without a complaint of its own.
    if (types.includes('unknown')) return { errors: [], uses }
    return { meaning: this.ready(meaning, scope.library), errors: [], uses }
  }

  private ready(prepared: PreparedMeaning, library: Library): Meaning {
    const known = this.made.get(prepared)
    if (known) return known
    const { whole, calls, warnings, limits, condition } = prepared
    let parts: Condition | undefined
    const made: Meaning = {
      computable: this.table.ready(whole, library),
      warnings,
      calls: calls.map((name) => library.get(name) as Callable),
      ...(limits ? { limits: { of: this.table.ready(limits.of, library), relative: limits.relative } } : {}),
      condition: () => {
        parts ??= mapped(condition as Condition<PreparedProgram>, (part) => this.table.ready(part, library))
        return parts
      },
    }
    this.made.set(prepared, made)
    return made
  }
}

const NOT_YET: ReadFormula = { mentions: [], check: () => undefined }
