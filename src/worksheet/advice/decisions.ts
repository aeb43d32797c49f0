import type { Value } from '../../language/index.ts'
import { readGiven } from '../document/read-given.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Node } from '../engine/node.ts'
import type { Advice, Given } from '../schema/document.ts'
import { levelOf, variablesOf } from './choices.ts'
import type { PlannedChange } from './plan.ts'
import { search } from './search.ts'
import { TrialModel } from './trial-model.ts'

const BUDGET_OF_DECISION = 12_000
const MAX_DECISIONS = 3
/** Equipment and room are tried up to this factor above and below what there is. */
const WITHIN = 8
/** What was agreed on is tried nearer: three times the blur is no longer the same work. */
const AGREED_WITHIN = 3
/** Sizes are tried larger, with both sides as they are to each other, in steps of this factor. */
const SIZE_STEP = 2 ** 0.25
const SIZE_STEPS = 12

/** A copy of a sheet with changes typed in. */
export function withChanges(sheet: Sheet, changes: readonly PlannedChange[]): Sheet {
  const texts = new Map(changes.map(({ given, text }) => [given, text] as const))
  return sheet.trial(
    sheet.cells.map((cell) => {
      const text = cell.kind === 'given' ? texts.get(cell.name) : undefined
      return text === undefined ? cell : ({ ...cell, value: text } as Given)
    }),
  )
}

/**
 * What no setting changes but somebody may decide: equipment, or what was agreed on beyond the usual range. Each is tried
 * alone; where none would do by itself, on top of the changes that come nearest.
 */
export function decisionsFor(
  sheet: Sheet,
  name: string,
  upstream: readonly Node[],
  nearest: readonly PlannedChange[],
): PlannedChange[] {
  const decidable = upstream.flatMap(({ cell }) =>
    cell.kind === 'given' && cell.reading !== true && isDecidable(cell) ? [cell] : [],
  )
  const alone = decisionsIn(sheet, name, decidable)
  if (alone.length > 0 || nearest.length === 0) return alone
  const changed = new Set(nearest.map(({ given }) => given))
  const on = decidable.filter((given) => !changed.has(given.name))
  return decisionsIn(withChanges(sheet, nearest), name, on)
}

function isDecidable(given: Given): boolean {
  const { advice, entry = 'quantity' } = given
  if (entry !== 'quantity' && entry !== 'size') return false
  const level = levelOf(given)
  // A fixed given that says nothing more is a fact: of the original, of safety, of what was counted.
  return level === undefined ? advice?.otherwise !== undefined : level === 'agreement' && entry === 'quantity'
}

/** What each given alone would have to be for a check to pass and nothing else to fail, the nearest first. */
function decisionsIn(sheet: Sheet, name: string, decidable: readonly Given[]): PlannedChange[] {
  if (decidable.length === 0) return []
  const freed = new Map(decidable.map((given) => [given.id, asFree(given)] as const))
  const trial = sheet.trial(sheet.cells.map((cell) => freed.get(cell.id) ?? cell))
  const names = new Set(decidable.map((given) => given.name))
  const found = variablesOf(trial, []).flatMap((variable) => {
    if (!names.has(variable.name)) return []
    const purpose = { targets: [name], level: 'agreement', budget: BUDGET_OF_DECISION } as const
    const plan = search(new TrialModel(trial, [variable], purpose)).plans[0]
    const choice = plan && [...plan.set.values()][0]
    const text = choice === undefined ? undefined : variable.choices[choice]?.cells[0]?.value
    const before = variable.givens[0]?.value
    if (!plan || text === undefined || before === undefined) return []
    return [{ cost: plan.cost, change: { given: variable.name, before, text } }]
  })
  return found
    .sort((a, b) => a.cost - b.cost)
    .slice(0, MAX_DECISIONS)
    .map(({ change }) => change)
}

/** A given as if it might be changed within wide limits. */
function asFree(given: Given): Given {
  const { fixed: _, ...free } = given
  const advice: Advice = {
    change: 'agree',
    within: given.advice?.change === 'agree' ? AGREED_WITHIN : WITHIN,
    ...(given.advice?.with ? { with: given.advice.with } : {}),
    ...(given.entry === 'size' ? { marks: sizesAbout(given) } : {}),
  }
  return { ...free, advice }
}

const sides = (value: Value | undefined): { readonly width: number; readonly height: number } | undefined => {
  const size = value as { readonly width?: unknown; readonly height?: unknown } | undefined
  const { width, height } = size ?? {}
  return typeof width === 'number' && typeof height === 'number' ? { width, height } : undefined
}

/** A size larger by steps, the nearest first, as typed in the given's own unit. */
function sizesAbout(given: Given): string[] {
  const size = sides(readGiven(given).value)
  const one = sides(readGiven({ ...given, value: '1 x 1' }).value)
  if (!size || !one) return []
  const figure = (side: number, unit: number, by: number): string => String(Number(((side / unit) * by).toPrecision(3)))
  return Array.from({ length: SIZE_STEPS }, (_, i) => SIZE_STEP ** (i + 1)).map(
    (by) => `${figure(size.width, one.width, by)} x ${figure(size.height, one.height, by)}`,
  )
}
