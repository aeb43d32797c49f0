import type { Value } from '../../language/index.ts'
import type { Sheet } from '../editing/sheet.ts'
import { slackOf } from '../engine/condition.ts'
import { type Layout, VALUE } from '../engine/engine-view.ts'
import { isWithinMargin, marginOf } from '../engine/margin.ts'
import type { Node } from '../engine/node.ts'
import { computeInto, downstreamOf, upstreamOf } from '../engine/partial-recompute.ts'
import { type Choice, levelRank, type Variable } from './choices.ts'
import { gapOf } from './gap.ts'
import type { Level } from './plan.ts'

/** Which choice of each changed variable: by the variable's place, the choice's place. */
export type Setting = ReadonlyMap<number, number>

/** A setting with how far it is from all aimed at, and what it costs. */
export interface Tried {
  readonly set: Setting
  /** Zero when every check aimed at passes and none that passed fails. */
  readonly shortfall: number
  readonly cost: number
}

/** A check, or a result with a target value, as the search sees it. */
export interface Goal {
  readonly name: string
  readonly position: number
  /** Negative while it fails, as a share of the limit. */
  readonly slack: (values: readonly Value[]) => number
  /** How far it is from being reached, where slack has no size: as a share of what is compared; undefined where nothing is. */
  readonly share?: (values: readonly Value[]) => number | undefined
  /** Whether it is reached, from its own value and the slack. */
  readonly isMet: (value: Value, slack: number) => boolean
  /** How much slack is required: none for a pass, the margin for a pass with room. */
  readonly required: number
  /** Within this much slack a pass is marginal. */
  readonly margin: number
  readonly passed: boolean
  readonly start: number
  /** The places of the variables it depends on. */
  readonly variables: ReadonlySet<number>
  /** Judged only by typing the plan into a whole sheet: it is behind a formula that takes long. */
  readonly deferred: boolean
}

/** Evaluations that one call of a costly function is worth; every other formula counts as one. */
const COSTLY: Readonly<Record<string, number>> = { field_evenness: 200, even_area: 10_000, place_lamps: 10_000 }
const DEFERRED_FROM = 5000

/** What a failing condition without a size counts as, in shares of a limit. */
const NO_SIZE = 3
const ANY_FAILURE = 0.02
const DOES_NOT_COMPUTE = 50
/** A pass without room costs a little, so that of two similar plans the safer is taken. */
const LEFT_MARGINAL = 0.5
/** A check that fails already is not to fail by more. */
const MADE_WORSE = 0.75
const NOTICEABLE = 0.01

export interface Aim {
  readonly id: string
  readonly value: number
  /** As a share of the value. */
  readonly within: number
}

export interface ModelOptions {
  /** The names of the checks to make pass. */
  readonly targets: readonly string[]
  /** Whether the targets are to pass with room: for a check that is marginal. */
  readonly withRoom?: boolean
  /** A result that is to have a value, in coherent SI, within a share of it. */
  readonly aim?: Aim
  /** Whether a plan may break checks that pass; they are named afterwards. */
  readonly mayBreak?: boolean
  readonly level: Level
  /** How many evaluations of formulas may be spent. */
  readonly budget: number
}

/** Tries settings on a copy of the engine's values: one evaluation costs microseconds, and the sheet is left as it is. */
export class TrialModel {
  readonly goals: readonly Goal[]
  readonly targets: readonly Goal[]
  private readonly layout: Layout
  private readonly values: Value[]
  private readonly weights: readonly number[]
  private readonly watched: Uint8Array
  private readonly paths = new Map<string, readonly number[]>()
  private spent = 0

  constructor(
    sheet: Sheet,
    readonly variables: readonly Variable[],
    private readonly options: ModelOptions,
  ) {
    this.layout = sheet.engine.layout
    this.values = this.layout.values.slice()
    this.weights = this.layout.order.map(weightOf)
    const aims = options.aim ? this.aimOf(sheet, options.aim) : []
    this.goals = [...this.goalsOf(sheet), ...aims]
    this.targets = this.goals.filter((goal) => aims.includes(goal) || options.targets.includes(goal.name))
    this.watched = new Uint8Array(this.layout.order.length)
    for (const goal of this.goals)
      if (!goal.deferred || this.targets.includes(goal))
        for (const at of upstreamOf(this.layout, [goal.position])) this.watched[at] = 1
  }

  get isSpent(): boolean {
    return this.spent >= this.options.budget
  }

  mayChange(variable: number): boolean {
    return levelRank((this.variables[variable] as Variable).level) <= levelRank(this.options.level)
  }

  /** Computes the sheet with some variables set otherwise. `failing` collects the goals that are not met. */
  try(set: Setting, failing?: Goal[]): Tried {
    const changed = [...set.keys()].sort((a, b) => a - b)
    const path = this.pathOf(changed)
    let cost = 0
    for (const place of changed) {
      const { choice, positions } = this.choice(place, set.get(place) as number)
      positions.forEach((at, i) => {
        this.values[at] = choice.values[i] as Value
      })
      cost += choice.cost
    }
    this.spent += 1 + path.reduce((sum, at) => sum + (this.weights[at] as number), 0)
    const computes = computeInto(this.values, this.layout, path)
    const judged = computes ? this.judge(changed, failing) : { shortfall: DOES_NOT_COMPUTE, cost: 0 }
    for (const at of path) this.values[at] = this.layout.values[at] as Value
    for (const place of changed)
      for (const at of (this.variables[place] as Variable).positions) this.values[at] = this.layout.values[at] as Value
    return { set, shortfall: judged.shortfall, cost: cost + judged.cost }
  }

  private judge(changed: readonly number[], failing?: Goal[]): { shortfall: number; cost: number } {
    let shortfall = 0
    let cost = 0
    for (const goal of this.goals) {
      const isTarget = this.targets.includes(goal)
      const isTouched = changed.some((place) => goal.variables.has(place))
      if (!isTarget && (goal.deferred || !isTouched)) continue
      const slack = this.slackOf(goal)
      if (!isTarget && !goal.passed) {
        if (slack < goal.start - NOTICEABLE) cost += MADE_WORSE
        continue
      }
      if (!isTarget && this.options.mayBreak) continue
      const required = isTarget ? goal.required : 0
      const isMet = goal.isMet(this.values[goal.position] as Value, slack) && (required === 0 || slack > required)
      if (!isMet) {
        const short = Number.isFinite(slack) ? Math.max(0, required - slack) : this.sizeOf(goal)
        shortfall += ANY_FAILURE + short / (1 + short)
        failing?.push(goal)
      } else if (isWithinMargin(slack, goal.margin) && (isTarget || goal.start > goal.margin)) cost += LEFT_MARGINAL
    }
    return { shortfall, cost }
  }

  private slackOf({ slack }: Goal): number {
    try {
      return slack(this.values)
    } catch {
      // A part of the condition that does not compute leaves it without a size.
      return Number.NEGATIVE_INFINITY
    }
  }

  /** What a limit of zero leaves of a figure is far off until it is reached, but nearer is better. */
  private sizeOf({ share }: Goal): number {
    const size = share?.(this.values)
    return size === undefined ? NO_SIZE : Math.min(NO_SIZE, size)
  }

  private choice(place: number, at: number): { choice: Choice; positions: readonly number[] } {
    const { choices, positions } = this.variables[place] as Variable
    return { choice: choices[at] as Choice, positions }
  }

  /** What has to be computed anew when some variables change, as far as a watched check depends on it. */
  private pathOf(changed: readonly number[]): readonly number[] {
    const key = changed.join()
    const known = this.paths.get(key)
    if (known) return known
    const below = downstreamOf(
      this.layout,
      changed.flatMap((place) => (this.variables[place] as Variable).positions),
    )
    const path: number[] = []
    for (let at = 0; at < below.length; at++) if (below[at] && this.watched[at]) path.push(at)
    this.paths.set(key, path)
    return path
  }

  /** The variables a position depends on, and what computing it costs. */
  private behind(position: number): { readonly variables: ReadonlySet<number>; readonly weight: number } {
    const upstream = new Set(upstreamOf(this.layout, [position]))
    const variables = this.variables.flatMap(({ positions }, i) =>
      positions.some((at) => upstream.has(at)) ? [i] : [],
    )
    const weight = [...upstream].reduce((sum, at) => sum + (this.weights[at] as number), 0)
    return { variables: new Set(variables), weight }
  }

  private aimOf({ engine }: Sheet, { id, value: target, within }: Aim): Goal[] {
    const node = engine.node(id)
    if (!node || engine.isDuplicate(node) || engine.state(node) !== VALUE) return []
    const position = engine.positionOf(node)
    const scale = Math.max(Math.abs(target), Number.MIN_VALUE)
    const slack = (values: readonly Value[]): number => within - Math.abs((values[position] as number) - target) / scale
    const { variables } = this.behind(position)
    return [
      {
        name: node.cell.name,
        position,
        slack,
        isMet: (_, left) => left >= 0,
        margin: 0,
        required: 0,
        passed: false,
        start: slack(this.layout.values),
        variables,
        deferred: false,
      },
    ]
  }

  private goalsOf(sheet: Sheet): Goal[] {
    const { engine } = sheet
    return sheet.cells.flatMap((cell) => {
      if (cell.kind !== 'check') return []
      const node = engine.node(cell.id)
      const condition = node?.compiled?.condition
      if (!node || !condition || engine.isDuplicate(node) || engine.state(node) !== VALUE) return []
      const { of: slackBy, names } = slackOf(condition())
      const places = new Map(names.map((name) => [name, engine.positionOf(engine.named(name) as Node)]))
      const position = engine.positionOf(node)
      const cellsOf = (values: readonly Value[]) => (name: string) => values[places.get(name) as number] as Value
      const slack = (values: readonly Value[]): number => slackBy(cellsOf(values))
      const start = gapOf(condition(), cellsOf(this.layout.values))
      const margin = marginOf(cell.margin)
      const { variables, weight } = this.behind(position)
      return [
        {
          name: cell.name,
          position,
          slack,
          share: (values) => {
            const gap = gapOf(condition(), cellsOf(values))
            // Against what it is off by now, for a figure whose limit is zero.
            return gap && gap.off / Math.max(Math.abs(gap.limit), start?.off ?? 0, Number.MIN_VALUE)
          },
          isMet: (value) => value === true,
          margin,
          required: this.options.withRoom ? margin : 0,
          passed: engine.value(node) === true,
          start: slack(this.layout.values),
          variables,
          deferred: weight >= DEFERRED_FROM,
        },
      ]
    })
  }
}

const weightOf = (node: Node): number =>
  (node.compiled?.calls ?? []).reduce((sum, { name }) => sum + (COSTLY[name] ?? 0), 1)
