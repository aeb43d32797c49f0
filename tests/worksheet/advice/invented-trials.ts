import type { Trials } from '../../../src/worksheet/advice/search.ts'
import type { Setting, Tried } from '../../../src/worksheet/advice/trial-model.ts'

/** What a search looks through, without a sheet: figures to choose from, and goals that are sums of them. */
export interface Problem {
  readonly variables: readonly { readonly values: readonly number[]; readonly now: number; readonly ordered: boolean }[]
  readonly goals: readonly InventedGoal[]
  /** The places of variables that may not be changed. */
  readonly fixed: readonly number[]
}

interface InventedGoal {
  /** The place of each variable it depends on, with its weight. */
  readonly of: ReadonlyMap<number, number>
  /** Whether the least of the figures counts, so that all must be large, or their sum. */
  readonly by: 'sum' | 'least'
  readonly from: number
  readonly to: number
}

/** Tries settings of an invented problem, and keeps what was tried. */
export class InventedTrials implements Trials {
  readonly variables: Trials['variables']
  readonly goals: readonly { readonly variables: ReadonlySet<number> }[]
  readonly targets: Trials['goals']
  readonly tried: Setting[] = []

  constructor(
    readonly problem: Problem,
    readonly budget = Number.POSITIVE_INFINITY,
  ) {
    this.variables = problem.variables.map(({ values, ...rest }) => ({
      ...rest,
      choices: values.map((value) => ({ cells: [], values: [value], cost: 0 })),
    }))
    this.goals = problem.goals.map(({ of }) => ({ variables: new Set(of.keys()) }))
    this.targets = this.goals.filter((_, i) => this.gap(problem.goals[i] as InventedGoal, new Map()) > 0)
  }

  get isSpent(): boolean {
    return this.tried.length >= this.budget
  }

  mayChange(place: number): boolean {
    return !this.problem.fixed.includes(place)
  }

  try(set: Setting, failing?: { readonly variables: ReadonlySet<number> }[]): Tried {
    this.tried.push(set)
    return this.judged(set, failing)
  }

  /** What trying a setting would give, which counts for nothing. */
  judged(set: Setting, failing?: { readonly variables: ReadonlySet<number> }[]): Tried {
    let shortfall = 0
    this.problem.goals.forEach((goal, i) => {
      const gap = this.gap(goal, set)
      if (gap <= 0) return
      shortfall += 0.02 + gap / (1 + gap)
      failing?.push(this.goals[i] as { readonly variables: ReadonlySet<number> })
    })
    let cost = 0
    for (const [place, choice] of set) cost += this.costOf(place, choice)
    return { set, shortfall, cost }
  }

  private costOf(place: number, choice: number): number {
    const { values, now, ordered } = this.problem.variables[place] as Problem['variables'][number]
    const [before, after] = [values[now] as number, values[choice] as number]
    if (!ordered) return 1.5
    return before > 0 && after > 0
      ? 1 + Math.abs(Math.log2(after / before))
      : 1 + Math.abs(after - before) / ((values.at(-1) as number) - (values[0] as number))
  }

  /** How far a goal is off; nothing where it is reached. */
  private gap({ of, by, from, to }: InventedGoal, set: Setting): number {
    const terms = [...of].map(([place, weight]) => {
      const { values, now } = this.problem.variables[place] as Problem['variables'][number]
      return weight * (values[set.get(place) ?? now] as number)
    })
    const reached = by === 'sum' ? terms.reduce((sum, term) => sum + term, 0) : Math.min(...terms)
    return Math.max(0, from - reached, reached - to) / Math.max(1, Math.abs(from))
  }
}
