import type { Sheet } from '../editing/sheet.ts'
import type { Node } from '../engine/node.ts'
import { upstreamOf } from '../engine/partial-recompute.ts'
import type { Advice, Check, Given } from '../schema/document.ts'
import { levelOf, type Variable, variablesOf } from './choices.ts'
import type { NoPlan, PlannedChange } from './plan.ts'
import { search } from './search.ts'
import { TrialModel } from './trial-model.ts'

const BUDGET_OF_FACT = 4000
const MAX_DECISIONS = 3
/** A fixed given is tried up to this factor above and below its value. */
const FACT_WITHIN = 8

/** Why a failing check has no plan: what it judges, how near it gets, and what would have to be otherwise. */
export function reasonForNone(
  sheet: Sheet,
  name: string,
  variables: readonly Variable[],
  nearest: readonly PlannedChange[],
): NoPlan {
  const { engine } = sheet
  const node = engine.named(name) as Node
  const upstream = upstreamOf(engine.layout, [engine.positionOf(node)]).map((at) => engine.layout.order[at] as Node)
  const decisions = decisionsFor(sheet, name, upstream)
  if (upstream.some(isReading))
    return {
      kind: 'readings',
      settings: settingsBehind(sheet, upstream, variables),
      short: undefined,
      nearest: [],
      against: undefined,
      decisions: [],
    }
  const hasVariable = upstream.some(({ cell }) =>
    variables.some(({ givens }) => givens.some(({ id }) => id === cell.id)),
  )
  if (!hasVariable)
    return { kind: 'fixed', settings: [], short: shortOf(sheet, name, []), nearest: [], against: undefined, decisions }
  return {
    kind: 'out of reach',
    settings: [],
    short: shortOf(sheet, name, nearest),
    nearest,
    against: againstOf(sheet, name, nearest),
    decisions,
  }
}

/** A result that was measured, or a given that is a reading: changing a setting does not change what was read. */
const isReading = ({ cell, measured }: Node): boolean =>
  measured?.value !== undefined || (cell.kind === 'given' && cell.reading === true)

/** What may be set freely and decides what was read: the settings behind the formula of what was measured. */
function settingsBehind(sheet: Sheet, upstream: readonly Node[], variables: readonly Variable[]): string[] {
  const { engine } = sheet
  const behind = new Set<Node>()
  const open = upstream.filter(isReading)
  for (let node = open.pop(); node; node = open.pop()) {
    if (behind.has(node)) continue
    behind.add(node)
    open.push(...engine.needsOf(node))
  }
  const ids = new Set([...behind].map(({ cell }) => cell.id))
  return variables
    .filter(({ level, givens }) => level === 'setting' && givens.some(({ id }) => ids.has(id)))
    .map(({ name }) => name)
}

/** A copy of the sheet with changes typed in. */
function withChanges(sheet: Sheet, changes: readonly PlannedChange[]): Sheet {
  const texts = new Map(changes.map(({ given, text }) => [given, text] as const))
  return sheet.trial(
    sheet.cells.map((cell) => {
      const text = cell.kind === 'given' ? texts.get(cell.name) : undefined
      return text === undefined ? cell : ({ ...cell, value: text } as Given)
    }),
  )
}

/** How far a check falls short with some changes made, as a share of its limit. */
function shortOf(sheet: Sheet, name: string, changes: readonly PlannedChange[]): number | undefined {
  const trial = changes.length > 0 ? withChanges(sheet, changes) : sheet
  const model = new TrialModel(trial, [], { targets: [name], level: 'setting', budget: 1 })
  const slack = model.targets[0]?.start
  return slack !== undefined && Number.isFinite(slack) && slack < 0 ? -slack : undefined
}

/** The check that passes now and fails with the nearest changes. */
function againstOf(sheet: Sheet, name: string, changes: readonly PlannedChange[]): string | undefined {
  if (changes.length === 0) return undefined
  const trial = withChanges(sheet, changes)
  return sheet.cells.find(
    (cell): cell is Check =>
      cell.kind === 'check' &&
      cell.name !== name &&
      ['pass', 'marginal'].includes(sheet.checkState(cell.id)) &&
      trial.checkState(cell.id) === 'fail',
  )?.name
}

/** Facts that may not be changed by a setting, each tried alone: what each would have to be. */
function decisionsFor(sheet: Sheet, name: string, upstream: readonly Node[]): PlannedChange[] {
  const facts = upstream.flatMap(({ cell, measured }) => {
    const isFact = cell.kind === 'given' && levelOf(cell) === undefined && (cell.entry ?? 'quantity') === 'quantity'
    return isFact && !measured && cell.reading !== true ? [cell] : []
  })
  const asked: Advice = { change: 'agree', within: FACT_WITHIN }
  return facts
    .flatMap((fact) => {
      const { fixed: _, ...free } = fact as Given
      const trial = sheet.trial(sheet.cells.map((cell) => (cell === fact ? { ...free, advice: asked } : cell)))
      const variables = variablesOf(trial, []).filter((variable) => variable.name === fact.name)
      const model = new TrialModel(trial, variables, {
        targets: [name],
        level: 'agreement',
        budget: BUDGET_OF_FACT,
      })
      const found = search(model).plans[0]
      const [place, choice] = found ? ([...found.set][0] ?? []) : []
      const text =
        place === undefined || choice === undefined ? undefined : variables[place]?.choices[choice]?.cells[0]?.value
      return found && text !== undefined
        ? [{ cost: found.cost, change: { given: fact.name, before: fact.value, text } }]
        : []
    })
    .sort((a, b) => a.cost - b.cost)
    .slice(0, MAX_DECISIONS)
    .map(({ change }) => change)
}
