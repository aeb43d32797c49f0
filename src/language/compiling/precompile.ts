import type { TypedNode } from '../checking/typed-tree.ts'
import { calledBy } from '../evaluating/call-table.ts'
import type { Step } from '../evaluating/closures.ts'
import type { Input } from '../evaluating/compiled-formula.ts'
import type { FormulaCompiler, ParsedForCompiling } from '../evaluating/formula-compiler.ts'
import {
  exactly,
  LIST_CALL,
  PART_CALL,
  type PrecompiledFormulas,
  type PrecompiledMeaning,
  type PrecompiledProgram,
  type PrecompiledStep,
  type PrecompiledType,
} from '../evaluating/precompiled.ts'
import { checkFormula } from '../fixing/check-formula.ts'
import { namesIn } from '../syntax/names-in.ts'
import { type ParsedFormula, parseFormula } from '../syntax/parsed-formula.ts'
import type { Scope } from '../values/scope.ts'
import type { Type, Value } from '../values/types.ts'
import { stepsOf } from './computable.ts'
import { conditionOf } from './condition-split.ts'
import { compileResultOf } from './full-compiler.ts'
import { lower } from './lower.ts'

/**
 * Reads formulas with the checker, and notes what it is asked: every formula, and what it means for the types it is
 * checked with. That is done when the site is built, so that the page can do without parser and checker.
 */
export class Precompiler implements FormulaCompiler {
  private readonly types: PrecompiledType[] = []
  private readonly places = new Map<string, number>()
  private readonly formulas = new Map<
    string,
    { mentions: readonly string[]; meanings: Map<string, PrecompiledMeaning> }
  >()

  get prepared(): PrecompiledFormulas {
    const formulas = [...this.formulas].map(([text, { mentions, meanings }]) => [
      text,
      { mentions, meanings: [...meanings.values()] },
    ])
    return { types: this.types, formulas: Object.fromEntries(formulas) }
  }

  read(text: string): ParsedForCompiling {
    const parsed = parseFormula(text)
    const mentions = [...new Set(namesIn(parsed).map(({ name }) => name))]
    if (!this.formulas.has(text)) this.formulas.set(text, { mentions, meanings: new Map() })
    return { mentions, check: (scope) => this.check(text, parsed, mentions, scope) }
  }

  private check(text: string, parsed: ParsedFormula, mentions: readonly string[], scope: Scope) {
    const checked = checkFormula(parsed, scope)
    const found = compileResultOf(checked, text)
    const { root, limits } = checked
    if (!found.meaning || !root) return found
    const types = mentions.map((name) => {
      const type = scope.typeOf(name)
      return type === undefined || type === 'unknown' ? -1 : this.place(type)
    })
    const { warnings, calls } = found.meaning
    this.formulas.get(text)?.meanings.set(types.join(), {
      types,
      uses: found.uses,
      whole: this.program(root, checked.mayBeInfinite),
      calls: calls.map(({ name }) => name),
      warnings,
      ...(limits ? { limits: { of: this.program(limits.of, false), relative: limits.relative } } : {}),
      ...(root.type.kind === 'yes or no' ? { condition: conditionOf(root, (part) => this.program(part, true)) } : {}),
    })
    return found
  }

  private place(type: Type): number {
    const key = exactly(type)
    const known = this.places.get(key)
    if (known !== undefined) return known
    // Its operands come before it.
    const prepared = this.plain(type)
    const place = this.types.push(prepared) - 1
    this.places.set(key, place)
    return place
  }

  private plain(type: Type): PrecompiledType {
    switch (type.kind) {
      case 'number':
        return {
          number: type.dimension.key,
          ...(type.notation ? { notation: type.notation } : {}),
          ...(type.level ? { level: true as const } : {}),
        }
      case 'list':
        return { list: this.place(type.of) }
      case 'record':
        return {
          record: type.name,
          parts: Object.fromEntries(Object.entries(type.parts).map(([name, part]) => [name, this.place(part)])),
        }
      default:
        return type.kind
    }
  }

  private program(root: TypedNode, mayBeInfinite: boolean): PrecompiledProgram {
    const { text, inputs, spans } = lower(root)
    return {
      type: this.place(root.type),
      steps: stepsOf(text).map((step) => this.step(step)),
      inputs: inputs.map(plainInput),
      spans: spans.flatMap(({ from, to }) => [from, to]),
      ...(mayBeInfinite ? { infinite: true } : {}),
    }
  }

  private step(step: Step): PrecompiledStep {
    if (typeof step !== 'object') return step
    if (!('call' in step)) return step.map((one) => this.step(one))
    const called = calledBy(step.call)
    const nothing = (): number[] => new Array(step.count).fill(0)
    if (called === 'list') return { call: LIST_CALL, types: nothing() }
    if (called === 'part') return { call: PART_CALL, types: nothing() }
    return { call: called.record.name, types: called.types.map((type) => this.place(type)) }
  }
}

function plainInput(input: Input): PrecompiledProgram['inputs'][number] {
  if ('cell' in input) return input.cell
  const { constant } = input
  if (constant === Number.POSITIVE_INFINITY) return []
  if (!survives(constant)) throw new Error(`The constant ${String(constant)} cannot be written as data.`)
  return [constant]
}

const survives = (value: Value): boolean => {
  if (typeof value !== 'object') return typeof value !== 'number' || (Number.isFinite(value) && !Object.is(value, -0))
  return Object.values(value).every(survives)
}
