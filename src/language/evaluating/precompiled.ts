import { Dimension, type Notation } from '../../units/index.ts'
import type { Diagnostic } from '../values/diagnostic.ts'
import { eachOperatorNamed } from '../values/each-operators.ts'
import type { Callable, Library } from '../values/function-record.ts'
import type { Scope } from '../values/scope.ts'
import { level, list, number, record, TEXT, type Type, type Value, YES_NO } from '../values/types.ts'
import { listFunction, partFunction, recordFunction } from './call-table.ts'
import { type Call, compile, type Step } from './closures.ts'
import type { Computable } from './compiled-formula.ts'
import type {
  CompiledFormula,
  CompileResult,
  Condition,
  FormulaCompiler,
  ParsedForCompiling,
} from './formula-compiler.ts'

/** Formulas as the checker understood them when the site was built, as plain data. */
export interface PrecompiledFormulas {
  readonly types: readonly PrecompiledType[]
  readonly formulas: Readonly<Record<string, PrecompiledFormula>>
}

/** Refers to other types by their place in the list. */
export type PrecompiledType =
  | { readonly number: string; readonly notation?: Notation; readonly level?: true }
  | { readonly list: number }
  | { readonly record: string; readonly parts: Readonly<Record<string, number>> }
  | 'yes or no'
  | 'text'

export interface PrecompiledFormula {
  readonly mentions: readonly string[]
  readonly meanings: readonly PrecompiledMeaning[]
}

/** What a formula means where the words it mentions have these types. */
export interface PrecompiledMeaning {
  /** By mention, the place of its type; -1 where there is no such cell. */
  readonly types: readonly number[]
  readonly uses: readonly string[]
  readonly whole: PrecompiledProgram
  readonly calls: readonly string[]
  readonly warnings: readonly Diagnostic[]
  readonly limits?: { readonly of: PrecompiledProgram; readonly relative: boolean }
  readonly condition?: Condition<PrecompiledProgram>
}

export interface PrecompiledProgram {
  readonly type: number
  readonly steps: readonly PrecompiledStep[]
  /** A cell's name, or a constant in brackets; nothing in them where it is infinite. */
  readonly inputs: readonly (string | readonly [Value] | readonly [])[]
  /** From, to, from, to, … */
  readonly spans: readonly number[]
  readonly infinite?: true
}

/** As `Step`, a function called by its own name for arguments of these types. */
export type PrecompiledStep = number | string | readonly PrecompiledStep[] | PrecompiledCall
export interface PrecompiledCall {
  readonly call: string
  readonly types: readonly number[]
}

/** How a list is made, and a part of a record taken; no function can be called so. */
export const LIST_CALL = '{}'
export const PART_CALL = '.'

/** A type as text, down to the way it is written: what a formula means depends on that. */
export function exactly(type: Type): string {
  if (type.kind === 'number') return `${type.dimension.key} ${type.notation ?? ''}${type.level ? 'level' : ''}`
  if (type.kind === 'list') return `[${exactly(type.of)}]`
  if (type.kind !== 'record') return type.kind
  return `${type.name}{${Object.entries(type.parts).map(([name, part]) => `${name}:${exactly(part)}`)}}`
}

const isBranch = (step: PrecompiledStep): step is readonly PrecompiledStep[] => Array.isArray(step)

const mapped = <A, B>(condition: Condition<A>, make: (ready: A) => B): Condition<B> => {
  if ('both' in condition) {
    const { both, left, right } = condition
    return { both, left: mapped(left, make), right: mapped(right, make) }
  }
  const { whole, so, order } = condition
  if (!order) return { whole: make(whole), so }
  return { whole: make(whole), so, order: { ...order, left: make(order.left), right: make(order.right) } }
}

/** The types of prepared formulas, and their programs made ready. */
class Table {
  private readonly types: Type[] = []
  private readonly keys: readonly string[]
  private readonly made = new Map<PrecompiledMeaning, CompiledFormula>()

  constructor(private readonly prepared: PrecompiledFormulas) {
    for (const type of prepared.types) this.types.push(this.typeOf(type))
    this.keys = this.types.map(exactly)
  }

  find(text: string): ParsedForCompiling | undefined {
    if (!Object.hasOwn(this.prepared.formulas, text)) return undefined
    const { mentions, meanings } = this.prepared.formulas[text] as PrecompiledFormula
    return { mentions, check: (scope) => this.check(mentions, meanings, scope) }
  }

  private check(
    mentions: readonly string[],
    meanings: readonly PrecompiledMeaning[],
    scope: Scope,
  ): CompileResult | undefined {
    const keys = mentions.map((name) => {
      const type = scope.typeOf(name)
      return type === undefined || type === 'unknown' ? type : exactly(type)
    })
    const meaning = meanings.find(
      ({ types, calls }) =>
        keys.every((key, i) => key === 'unknown' || key === this.keys[types[i] as number]) &&
        calls.every((name) => scope.library.has(name)),
    )
    if (!meaning) return undefined
    const { uses } = meaning
    // What names a cell in error has no result, and no further error.
    return keys.includes('unknown')
      ? { errors: [], uses }
      : { meaning: this.meaningOf(meaning, scope.library), errors: [], uses }
  }

  private meaningOf(prepared: PrecompiledMeaning, library: Library): CompiledFormula {
    const known = this.made.get(prepared)
    if (known) return known
    const { whole, calls, warnings, limits, condition } = prepared
    let parts: Condition | undefined
    const made: CompiledFormula = {
      computable: this.ready(whole, library),
      warnings,
      calls: calls.map((name) => library.get(name) as Callable),
      ...(limits ? { limits: { of: this.ready(limits.of, library), relative: limits.relative } } : {}),
      condition: () => {
        parts ??= mapped(condition as Condition<PrecompiledProgram>, (part) => this.ready(part, library))
        return parts
      },
    }
    this.made.set(prepared, made)
    return made
  }

  private at(place: number): Type {
    return this.types[place] as Type
  }

  private typeOf(type: PrecompiledType): Type {
    if (type === 'yes or no') return YES_NO
    if (type === 'text') return TEXT
    if ('number' in type) {
      const dimension = Dimension.of(type.number.split(' ').map(Number))
      return type.level ? level(dimension) : number(dimension, type.notation)
    }
    if ('list' in type) return list(this.at(type.list))
    return record(type.record, Object.fromEntries(Object.entries(type.parts).map(([name, at]) => [name, this.at(at)])))
  }

  private ready({ type, steps, inputs, spans, infinite }: PrecompiledProgram, library: Library): Computable {
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

  private step(step: PrecompiledStep, library: Library): Step {
    if (typeof step !== 'object') return step
    if (isBranch(step)) return step.map((one) => this.step(one, library))
    return { call: this.functionOf(step, library), count: step.types.length } satisfies Call
  }

  private functionOf({ call, types }: PrecompiledCall, library: Library): string {
    if (call === LIST_CALL) return listFunction()
    if (call === PART_CALL) return partFunction()
    const known = types.map((type) => this.at(type))
    return recordFunction((eachOperatorNamed(call) ?? library.get(call)) as Callable, known)
  }
}

/**
 * Tells what formulas mean from what the build has prepared. For what is not among it, or means something else for other
 * types, nothing is known: `loadChecker` is called.
 */
export class PrecompiledCompiler implements FormulaCompiler {
  private readonly tables: readonly Table[]

  constructor(
    prepared: readonly PrecompiledFormulas[],
    private readonly loadChecker: () => void,
  ) {
    this.tables = prepared.map((one) => new Table(one))
  }

  read(text: string): ParsedForCompiling {
    const found = this.tables.flatMap((table) => table.find(text) ?? [])
    if (!found[0]) this.loadChecker()
    return { mentions: found[0]?.mentions ?? [], check: (scope) => this.check(found, scope) }
  }

  private check(found: readonly ParsedForCompiling[], scope: Scope): CompileResult | undefined {
    for (const one of found) {
      const understood = one.check(scope)
      if (understood) return understood
    }
    this.loadChecker()
    return undefined
  }
}
