import type { TypedNode } from '../checking/typed-tree.ts'
import { compile, type Program, type Step } from '../evaluating/closures.ts'
import type { Computable } from '../evaluating/compiled-formula.ts'
import { lower } from './lower.ts'
import { parseLowered } from './reference.ts'

interface Token {
  readonly type: string
  readonly value: unknown
}

function stepsFrom(tokens: readonly Token[]): Step[] {
  const steps: Step[] = []
  /** A function's name comes before its arguments, its call behind them. */
  const called: string[] = []
  for (const { type, value } of tokens) {
    if (type === 'IVAR') {
      const index = /^a(\d+)$/.exec(value as string)?.[1]
      if (index === undefined) called.push(value as string)
      else steps.push(Number(index))
    } else if (type === 'IOP1') steps.push(value === '-' ? '~' : (value as string))
    else if (type === 'IOP2' || type === 'IOP3') steps.push(value as string)
    else if (type === 'IEXPR') steps.push(stepsFrom(value as Token[]))
    else if (type === 'IFUNCALL') {
      const call = called.pop()
      if (call === undefined) throw new Error('A lowered formula calls what is not a function.')
      steps.push({ call, count: value as number })
    } else throw new Error(`A lowered formula holds a token of kind ${type}.`)
  }
  if (called.length > 0) throw new Error('A lowered formula names a function without calling it.')
  return steps
}

/** The steps of a lowered formula, as expr-eval reads it. */
export const stepsOf = (lowered: string): Step[] =>
  stepsFrom((parseLowered(lowered) as unknown as { tokens: readonly Token[] }).tokens)

/** Formulas of one shape share one program; their constants come as arguments. */
const programs = new Map<string, Program>()
const MOST_PROGRAMS = 5000

/** The program of a lowered formula, made once for all cells that have the same one. */
export function programOf(lowered: string): Program {
  const known = programs.get(lowered)
  if (known) return known
  const program = compile(stepsOf(lowered))
  if (programs.size >= MOST_PROGRAMS) programs.clear()
  programs.set(lowered, program)
  return program
}

/** Makes a checked formula ready; throws ComputeError where it is nested too deep. */
export function computable(root: TypedNode, mayBeInfinite: boolean): Computable {
  const { text, inputs, spans } = lower(root)
  return { type: root.type, program: programOf(text), inputs, spans, mayBeInfinite }
}
