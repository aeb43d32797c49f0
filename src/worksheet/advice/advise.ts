import type { Value } from '../../language/index.ts'
import { idsOnExamples } from '../analysis/provenance.ts'
import { readMeasured } from '../document/measured.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Cell, Check, Given } from '../schema/document.ts'
import { type Choice, levelRank, type Variable, variablesOf } from './choices.ts'
import { EXACT, withExactChoices } from './exact-choices.ts'
import type { KitPiece } from './kit-suggestions.ts'
import { reasonForNone, saysMore } from './no-plan.ts'
import {
  type CheckAdvice,
  LEVELS,
  type Level,
  type Plan,
  type PlannedChange,
  type SheetAdvice,
  type TargetAdvice,
} from './plan.ts'
import { search } from './search.ts'
import { type Aim, type Setting, TrialModel, type Tried } from './trial-model.ts'

/** Evaluations of formulas that one search at one level may spend: the same sheet gets the same advice on any machine. */
const BUDGET_OF_CHECK = 120_000
const BUDGET_OF_SHEET = 240_000
/** One figure is aimed at, and by hand: there is time to look at pairs of settings as well. */
const BUDGET_OF_TARGET = 480_000
const MAX_PLANS = 3
/** How many of the cheapest plans are typed into a whole sheet before a level is given up. */
const MAX_TYPED = 6

type State = ReturnType<Sheet['checkState']>

/** Whether a check passes, with or without room. */
export const passes = (state: State | undefined): boolean => state === 'pass' || state === 'marginal'

/** Advice on every check of a sheet that fails or is marginal, and one plan for all that fail. */
export function adviseSheet(sheet: Sheet, pieces: readonly KitPiece[] = []): SheetAdvice {
  const adviser = new Adviser(sheet, variablesOf(sheet, pieces))
  const checks = new Map<string, CheckAdvice>()
  for (const { name } of adviser.failing) checks.set(name, adviser.forCheck(name))
  const solvable = [...checks].filter(([, { plans }]) => plans.length > 0)
  // Nobody’s own figures are to be changed for the sake of an example’s, unless there is nothing else.
  const onExamples = idsOnExamples(sheet)
  const own = solvable.filter(([name]) => !onExamples.has((sheet.named(name) as Cell).id))
  const plan = adviser.forAll(own.length > 0 ? own : solvable)
  for (const { name } of adviser.marginal) {
    const advice = adviser.forMarginal(name)
    if (advice.plans.length > 0) checks.set(name, advice)
  }
  return { checks, ...(plan ? { plan } : {}) }
}

/** Advice on one check, by its cell's id. */
export function adviseCheck(sheet: Sheet, id: string, pieces: readonly KitPiece[] = []): CheckAdvice {
  const cell = sheet.cell(id)
  if (cell?.kind !== 'check') return { plans: [] }
  const adviser = new Adviser(sheet, variablesOf(sheet, pieces))
  const state = sheet.checkState(id)
  if (state === 'fail') return adviser.forCheck(cell.name)
  return state === 'marginal' ? adviser.forMarginal(cell.name) : { plans: [] }
}

/** How near to a target still counts as reached, as shares of it: exactly, else as near as marks and pieces allow. */
const NEAR = [EXACT, 0.005, 0.02, 0.05]

/** Plans that bring a result to a target value, as typed, and break nothing. */
export function adviseTarget(sheet: Sheet, id: string, text: string, pieces: readonly KitPiece[] = []): TargetAdvice {
  const node = sheet.engine.node(id)
  if (!node?.type) return { plans: [] }
  const reading = readMeasured(text, node.type, node.unit)
  if (reading?.error) return { plans: [], error: reading.error.message }
  if (typeof reading?.value !== 'number') return { plans: [] }
  const { value } = reading
  const adviser = new Adviser(sheet, withExactChoices(sheet, variablesOf(sheet, pieces), id, value))
  return { plans: adviser.forTarget(id, value) }
}

/** What a plan is made for. */
interface Purpose {
  readonly targets: readonly string[]
  readonly mayBreak?: boolean
  readonly withRoom?: boolean
  readonly aim?: Aim
  /** Changes to go on from. */
  readonly from?: Setting
}

/** What a search at one level found. */
interface Found {
  readonly plans: readonly Plan[]
  /** What each of the plans sets. */
  readonly sets: readonly Setting[]
  readonly nearest: Tried
  readonly isExhausted: boolean
}

class Adviser {
  readonly failing: readonly Check[]
  readonly marginal: readonly Check[]
  private readonly before: ReadonlyMap<string, State>
  /** Those of the variables: at another, there is nothing more to change. */
  private readonly levels: readonly Level[]

  constructor(
    private readonly sheet: Sheet,
    private readonly variables: readonly Variable[],
  ) {
    this.before = statesOf(sheet)
    const inState = (state: State): Check[] =>
      sheet.cells.filter((cell): cell is Check => cell.kind === 'check' && this.before.get(cell.name) === state)
    this.failing = inState('fail')
    this.marginal = inState('marginal')
    this.levels = LEVELS.filter((level) => variables.some((variable) => variable.level === level))
  }

  forCheck(name: string): CheckAdvice {
    const plans: Plan[] = []
    let nearest: Tried | undefined
    let isExhausted = false
    for (const level of this.levels) {
      const found = this.plansAt({ targets: [name] }, level)
      isExhausted ||= found.isExhausted
      nearest = !nearest || found.nearest.shortfall < nearest.shortfall ? found.nearest : nearest
      this.addTo(plans, found.plans)
    }
    if (plans.length > 0) return { plans }
    const breaking = this.breaking(name)
    if (breaking) return { plans: [breaking] }
    const changes = nearest ? this.changesOf(nearest.set) : []
    const none = reasonForNone(this.sheet, name, this.variables, { changes, isExhausted })
    return saysMore(this.sheet, none) ? { plans, none } : { plans }
  }

  /** A plan that breaks another check: with further changes that keep it whole where there are such, else as it is. */
  private breaking(name: string): Plan | undefined {
    for (const level of this.levels) {
      const breaking = this.plansAt({ targets: [name], mayBreak: true }, level)
      for (const from of breaking.sets)
        for (const repairing of this.levels.slice(this.levels.indexOf(level))) {
          const [whole] = this.plansAt({ targets: [name], from }, repairing).plans
          if (whole) return whole
        }
      // One that breaks as many as it makes pass would only lead back and forth when it is followed.
      const gain = breaking.plans.find(isGain)
      if (gain) return gain
    }
    return undefined
  }

  /** A plan that gives a marginal check its margin and breaks nothing, by settings or else by equipment. */
  forMarginal(name: string): CheckAdvice {
    for (const level of this.levels) {
      if (level === 'agreement') break
      const [plan] = this.plansAt({ targets: [name], withRoom: true }, level).plans
      if (plan) return { plans: [plan] }
    }
    return { plans: [] }
  }

  /** Plans that bring a result to a value, as near as the marks allow. */
  forTarget(id: string, value: number): readonly Plan[] {
    const plans: Plan[] = []
    for (const within of NEAR) {
      for (const level of this.levels) {
        const found = this.plansAt({ targets: [], aim: { id, value, within } }, level, BUDGET_OF_TARGET).plans
        // Several changes are not worth a few tenths of a per cent.
        this.addTo(plans, within > EXACT ? found : found.filter(isOneChange), sameChanges)
      }
      // What marks and pieces reach is offered beside what is exact.
      if (plans.length > 0 && within > EXACT) break
    }
    return plans
  }

  /** One plan for all checks that can be made to pass alone; where they pull apart, for as many as go together. */
  forAll(solvable: readonly (readonly [string, CheckAdvice])[]): Plan | undefined {
    // The dearest is given up first.
    let names = [...solvable]
      .sort(([, a], [, b]) => (a.plans[0] as Plan).cost - (b.plans[0] as Plan).cost)
      .map(([name]) => name)
    while (names.length > 0) {
      for (const level of this.levels) {
        const plan = this.plansAt({ targets: names }, level, BUDGET_OF_SHEET).plans[0]
        if (plan) return plan
      }
      names = names.slice(0, -1)
    }
    return undefined
  }

  private addTo(plans: Plan[], found: readonly Plan[], isSame = sameGivens): void {
    const plan = found.find((one) => !plans.some((other) => isSame(one, other)))
    if (plan && plans.length < MAX_PLANS) plans.push(plan)
  }

  private plansAt(purpose: Purpose, level: Level, budget = BUDGET_OF_CHECK): Found {
    const model = new TrialModel(this.sheet, this.variables, { ...purpose, level, budget })
    const { plans, nearest } = search(model, purpose.from)
    const found: Plan[] = []
    const sets: Setting[] = []
    for (const { set, cost } of plans.slice(0, MAX_TYPED)) {
      const plan = this.typed(set, cost, purpose)
      if (!plan) continue
      found.push(plan)
      sets.push(set)
      if (found.length === MAX_PLANS) break
    }
    return { plans: found, sets, nearest, isExhausted: model.isSpent }
  }

  /** Types a plan into a whole copy of the sheet; undefined where it does not do what it should. */
  private typed(set: Setting, cost: number, { targets, withRoom, mayBreak, aim }: Purpose): Plan | undefined {
    const trial = this.sheet.trial(this.cellsWith(set))
    const after = statesOf(trial)
    if (!targets.every((name) => (withRoom ? after.get(name) === 'pass' : passes(after.get(name))))) return undefined
    const aimed = aim && trial.outcome(aim.id)
    if (aim && !(aimed?.state === 'value' && isNear(aimed.value, aim))) return undefined
    const names = [...this.before.keys()]
    const lost = names.filter((name) => passes(this.before.get(name)) && !passes(after.get(name)))
    const readings = readingsToTake(trial, lost)
    // What is read again may pass as before, which only the reading can say.
    const breaks = lost.filter((name) => !readings.has(name))
    if (breaks.length > 0 && !mayBreak) return undefined
    const gained = names.filter((name) => this.before.get(name) === 'fail' && passes(after.get(name)))
    const isNewlyMarginal = (name: string): boolean =>
      after.get(name) === 'marginal' && (this.before.get(name) !== 'marginal' || targets.includes(name))
    return {
      changes: this.changesOf(set),
      cells: this.changedCells(set),
      level: [...set.keys()]
        .map((place) => (this.variables[place] as Variable).level)
        .reduce((a, b) => (levelRank(b) > levelRank(a) ? b : a), 'setting'),
      passes: [...targets, ...gained.filter((name) => !targets.includes(name))],
      marginal: names.filter(isNewlyMarginal),
      breaks,
      again: { readings: [...new Set([...readings.values()].flat())], checks: [...readings.keys()] },
      ...(aimed?.state === 'value' ? { gives: aimed.shown.text } : {}),
      cost,
    }
  }

  private changedCells(set: Setting): Given[] {
    return [...set].flatMap(([place, choice]) => ((this.variables[place] as Variable).choices[choice] as Choice).cells)
  }

  private cellsWith(set: Setting): readonly Cell[] {
    const changed = new Map(this.changedCells(set).map((cell) => [cell.id, cell]))
    return this.sheet.cells.map((cell) => changed.get(cell.id) ?? cell)
  }

  /** In the order of the sheet, and only where the text is another. */
  private changesOf(set: Setting): PlannedChange[] {
    return [...set]
      .sort(([a], [b]) => a - b)
      .flatMap(([place, choice]) => {
        const { givens, choices } = this.variables[place] as Variable
        return (choices[choice] as Choice).cells.flatMap(({ name, value }, i) => {
          const before = (givens[i] as Given).value
          return before === value ? [] : [{ given: name, before, text: value }]
        })
      })
  }
}

const isNear = (value: Value, aim: Aim): boolean =>
  typeof value === 'number' && Math.abs(value - aim.value) <= aim.within * Math.abs(aim.value) * (1 + 1e-9)

/** The checks that wait for readings older than what they depend on, each with the readings’ names. */
function readingsToTake(sheet: Sheet, checks: readonly string[]): ReadonlyMap<string, readonly string[]> {
  return new Map(
    checks.flatMap((name): [string, readonly string[]][] => {
      const readings = sheet.outdatedBeneath((sheet.named(name) as Cell).id)
      return readings.length > 0 ? [[name, readings]] : []
    }),
  )
}

/** The state of every check by its name; if two have one name, the first counts. */
export function statesOf(sheet: Sheet): Map<string, State> {
  const states = new Map<string, State>()
  for (const cell of sheet.cells)
    if (cell.kind === 'check' && !states.has(cell.name)) states.set(cell.name, sheet.checkState(cell.id))
  return states
}

const isGain = ({ passes: gained, breaks }: Plan): boolean => gained.length > breaks.length

/** Whether one figure is changed, in one given or in several that agree. */
const isOneChange = ({ changes }: Plan): boolean => new Set(changes.map(({ text }) => text)).size === 1

const sameChanges = (a: Plan, b: Plan): boolean => JSON.stringify(a.changes) === JSON.stringify(b.changes)

/** Two plans that change the same givens read as one choice. */
const sameGivens = (a: Plan, b: Plan): boolean =>
  JSON.stringify(a.changes.map(({ given }) => given)) === JSON.stringify(b.changes.map(({ given }) => given))
