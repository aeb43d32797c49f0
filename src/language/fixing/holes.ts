import { type Dimension, UNITS } from '../../units/index.ts'
import { anyOf } from '../../units/plural.ts'
import { checkUnits } from '../checking/check.ts'
import { CHECK_WORDS as W } from '../checking/words.ts'
import type { ParsedFormula } from '../syntax/parsed-formula.ts'
import { type Diagnostic, fix, problem } from '../values/diagnostic.ts'
import type { Scope } from '../values/scope.ts'
import { describeType, list, number, sameType, TEXT, type Type, YES_NO } from '../values/types.ts'

/** A word that no cell can be named, since names start with a letter. */
const HOLE = '_hole'
const MOST_CELLS = 400
const MOST_SHOWN = 8

/** What may be required: every kind of quantity that has a unit, and the kinds of value of the sheet. */
function probes(scope: Scope): Type[] {
  const types = new Map<string, Type>()
  const add = (type: Type): void => {
    types.set(JSON.stringify(type.kind === 'number' ? number(type.dimension) : type), type)
  }
  const dimensions = new Set<Dimension>(UNITS.map(({ dimension }) => dimension))
  for (const dimension of dimensions) add(number(dimension))
  add(YES_NO)
  add(TEXT)
  let looked = 0
  for (const name of scope.names()) {
    if (++looked > MOST_CELLS) break
    const type = scope.typeOf(name)
    if (type !== undefined && type !== 'unknown') add(type)
  }
  for (const dimension of dimensions) add(list(number(dimension)))
  return [...types.values()]
}

/** What the formula gives with a value of this type in the hole: undefined where that is an error. */
function tried(text: string, scope: Scope, at: number, type: Type): { readonly gives: Type | undefined } | undefined {
  const inside: Scope = { ...scope, typeOf: (name) => (name === HOLE ? type : scope.typeOf(name)), names: () => [] }
  const { diagnostics, root } = checkUnits(text.slice(0, at) + HOLE + text.slice(at + 1), inside)
  if (diagnostics.some(({ severity }) => severity === 'error')) return undefined
  const gives = root?.type
  if (!gives || scope.declared === undefined) return { gives }
  return gives.kind === 'number' && gives.dimension === scope.declared ? { gives } : undefined
}

/** What each `?` of a formula must be, with the cells of the sheet that fit, found by trying every kind of value. */
export function explainHoles({ tree, evened }: ParsedFormula, scope: Scope): Diagnostic[] {
  const places: number[] = []
  tree?.iterate({
    enter(node) {
      if (node.type.isError) places.length = 0
      if (node.name === 'Hole') places.push(node.from)
    },
  })
  if (places.length === 0 || places.length > 8 || scope.isDraft)
    return places.map((at) => problem(W.holeNeeds(W.anything), at, at + 1))
  const all = probes(scope)
  return places.map((at) => explainHole(evened, scope, at, all))
}

function explainHole(text: string, scope: Scope, at: number, all: readonly Type[]): Diagnostic {
  const found = all.flatMap((type) => {
    const result = tried(text, scope, at, type)
    return result ? [{ type, gives: result.gives }] : []
  })
  // Arithmetic takes lists as well, but where one number fits, one number is most likely meant.
  const isOne = found.some(({ type, gives }) => type.kind === 'number' && gives?.kind === 'number')
  const accepted = found
    .filter(({ type, gives }) => !(isOne && type.kind === 'list' && gives?.kind === 'list'))
    .map(({ type }) => type)
  const isAccepted = (type: Type): boolean => accepted.some((one) => sameType(one, type))
  const cells = cellsThatFit(scope, isAccepted)
  const fixes = cells.slice(0, MOST_SHOWN).map((name) => fix(name, at, at + 1))
  const fitting =
    cells.length > 0
      ? W.holeFits(cells.slice(0, MOST_SHOWN), cells.length - MOST_SHOWN)
      : accepted.length > 0
        ? W.holeNothingFits
        : ''
  return problem(W.holeNeeds(inWords(accepted, all)) + fitting, at, at + 1, fixes)
}

function cellsThatFit(scope: Scope, passes: (type: Type) => boolean): string[] {
  const found: string[] = []
  let looked = 0
  for (const name of scope.names()) {
    if (++looked > MOST_CELLS) break
    const type = scope.typeOf(name)
    if (type === undefined || type === 'unknown') continue
    if (passes(type)) found.push(name)
    else if (type.kind === 'record')
      for (const [part, of] of Object.entries(type.parts)) if (passes(of)) found.push(`${name}.${part}`)
  }
  return found
}

/** Kinds of value in words: `a length or a list of lengths`; all quantities together are one. */
function inWords(accepted: readonly Type[], all: readonly Type[]): string {
  if (accepted.length === 0 || accepted.length === all.length) return W.anything
  const numbers = accepted.filter(({ kind }) => kind === 'number')
  const everyNumber = numbers.length === all.filter(({ kind }) => kind === 'number').length
  const others = accepted.filter((type) => type.kind !== 'number' || !everyNumber)
  const lists = others.filter(({ kind }) => kind === 'list')
  const shown =
    lists.length > 3
      ? [...others.filter(({ kind }) => kind !== 'list').map(describeType), W.list]
      : others.map(describeType)
  const words = [...new Set([...(everyNumber ? [W.anyNumber] : []), ...shown])].slice(0, 5)
  return anyOf(words)
}
