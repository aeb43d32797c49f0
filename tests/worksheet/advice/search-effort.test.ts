import { describe, expect, test } from 'vitest'
import { MAX_CHANGES, search } from '../../../src/worksheet/advice/search.ts'
import type { Setting, Tried } from '../../../src/worksheet/advice/trial-model.ts'
import { seeded } from '../../random.ts'
import { InventedTrials, type Problem } from './invented-trials.ts'

const PROBLEMS = 240

/** A problem of two to nine variables and one to four goals, most of them within reach; the same for the same seed. */
function problemOf(seed: number): Problem {
  const random = seeded(seed * 7919 + 1)
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T
  const whole = (least: number, most: number): number => least + Math.floor(random() * (most - least + 1))
  const variables = Array.from({ length: whole(2, 9) }, () => {
    const count = pick([2, 3, 5, 9, 11, 12, 13, 15, 16, 17, 40, 120, 600])
    const kind = pick(['steps', 'ratios', 'ratios', 'through zero', 'below zero', 'choice'])
    const values = Array.from({ length: count }, (_, i) => {
      if (kind === 'ratios') return 2 ** ((6 * i) / count)
      if (kind === 'steps') return 1 + (60 * i) / count
      if (kind === 'through zero') return (60 * i) / (count - 1) - 20
      return kind === 'below zero' ? i - count : Math.round(40 * random())
    })
    return { values, now: whole(0, count - 1), ordered: kind !== 'choice' }
  })
  const fixed = variables.flatMap((_, place) => (random() < 0.1 ? [place] : []))
  // Goals about what a few changes give can be reached together; about anything else, hardly ever.
  const aims = variables.map(({ values, now }, place) =>
    fixed.includes(place) || random() < 0.5 ? (values[now] as number) : pick(values),
  )
  const isTogether = random() < 0.8
  const goals = Array.from({ length: whole(1, 5) }, () => {
    const of = new Map<number, number>()
    for (let k = whole(1, Math.min(4, variables.length)); k > 0; k--)
      of.set(whole(0, variables.length - 1), pick([-1, 0.5, 1, 1, 2]))
    const by = pick(['sum', 'sum', 'least'] as const)
    const terms = [...of].map(([place, weight]) => {
      const { values } = variables[place] as { readonly values: readonly number[] }
      return weight * (isTogether ? (aims[place] as number) : pick(values))
    })
    const middle = by === 'sum' ? terms.reduce((sum, term) => sum + term, 0) : Math.min(...terms)
    const width = pick([0.5, 3, 20])
    return { of, by, from: middle - width, to: pick([middle + width, Number.POSITIVE_INFINITY]) }
  })
  return { variables, goals, fixed }
}

const problems = Array.from({ length: PROBLEMS }, (_, i) => problemOf(i + 1)).filter(
  (problem) => new InventedTrials(problem).targets.length > 0,
)
const said = (set: Setting): string =>
  [...set]
    .sort(([one], [other]) => one - other)
    .map(([place, choice]) => `${place}→${choice}`)
    .join(' ')

describe('a search through invented problems', () => {
  test.each(problems.map((problem, i) => [i, problem] as const))(
    'tries what may be tried, and gives plans that no small step makes cheaper: %i',
    (_, problem) => {
      const trials = new InventedTrials(problem)
      const { plans, nearest } = search(trials)
      const mayBeTried = (set: Setting): boolean =>
        set.size <= MAX_CHANGES &&
        [...set].every(([place, choice]) => {
          const { values, now } = problem.variables[place] as Problem['variables'][number]
          return choice in values && choice !== now && !problem.fixed.includes(place)
        })
      expect(trials.tried.filter((set) => !mayBeTried(set))).toEqual([])
      expect(plans.map(({ cost }) => cost)).toEqual(plans.map(({ cost }) => cost).sort((a, b) => a - b))
      expect(new Set(plans.map(({ set }) => said(set))).size).toBe(plans.length)
      for (const plan of plans) {
        expect(plan.shortfall).toBe(0)
        for (const simpler of neighbours(problem, plan)) {
          const { shortfall, cost } = trials.judged(simpler)
          if (shortfall <= 0)
            expect(cost, `${said(simpler)} for ${said(plan.set)}`).toBeGreaterThanOrEqual(plan.cost - 1e-9)
        }
      }
      const least = Math.min(...trials.tried.map((set) => trials.judged(set).shortfall))
      expect(nearest.shortfall).toBe(plans.length > 0 ? 0 : least)
    },
  )

  test('gives the plans it gave, after as many tries', async () => {
    const effort = (problem: Problem, budget?: number): { readonly line: string; readonly tried: number } => {
      const trials = new InventedTrials(problem, budget)
      const { plans, nearest } = search(trials)
      const found = plans.map(({ set, cost }) => `${said(set)} (${cost.toFixed(2)})`).join(', ')
      const none = `none, nearest ${said(nearest.set) || 'as it is'} (${nearest.shortfall.toFixed(3)})`
      const tried = trials.tried.length
      return { line: `${found || none}, ${tried} tried`, tried }
    }
    const lines = problems.map((problem, i) => {
      const { line, tried } = effort(problem)
      return `${i}: ${line}; with half as many: ${effort(problem, Math.ceil(tried / 2)).line}`
    })
    await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('search-effort.txt')
  })
})

/** A plan without one of its changes, or with one of them a step less or more. */
function neighbours(problem: Problem, { set }: Tried): Setting[] {
  return [...set].flatMap(([place, choice]) => {
    const without = new Map(set)
    without.delete(place)
    const { values, now } = problem.variables[place] as Problem['variables'][number]
    const stepped = [choice - 1, choice + 1].filter((next) => next >= 0 && next < values.length && next !== now)
    return [without, ...stepped.map((next) => new Map(set).set(place, next))]
  })
}
