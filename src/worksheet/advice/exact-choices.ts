import { bisect } from '../../units/index.ts'
import { RangeEvaluator } from '../analysis/range-evaluator.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Choice, Variable } from './choices.ts'

/** How near to its target a result is hit, as a share of it. */
export const EXACT = 0.0005
const HALVINGS = 60
/** The fewest digits that hit the target are typed. */
const DIGITS = [3, 4, 5, 6]

/**
 * The variables with the choices that bring a result to a target by themselves: figures between those that are tried, of
 * quantities that have no marks.
 */
export function withExactChoices(sheet: Sheet, variables: readonly Variable[], id: string, target: number): Variable[] {
  const { engine } = sheet
  const node = engine.node(id)
  if (!node) return [...variables]
  const goal = engine.positionOf(node)
  return variables.map((variable) => {
    const { between, positions } = variable
    if (!between) return variable
    const trial = new RangeEvaluator(engine.layout, positions, [goal])
    const missOf = (value: number): number => {
      const [found] = trial.with(positions.map(() => value))
      return typeof found === 'number' ? found - target : Number.NaN
    }
    const places = variable.choices.map(({ values }) => values[0] as number)
    const misses = places.map(missOf)
    const added = places.slice(1).flatMap((high, at): Choice[] => {
      const [first, last] = [misses[at] as number, misses[at + 1] as number]
      if (!(first * last < 0)) return []
      const value = crossing(missOf, places[at] as number, high, first)
      for (const digits of DIGITS) {
        const choice = between(value, digits)
        if (choice && Math.abs(missOf(choice.values[0] as number)) <= EXACT * Math.abs(target)) return [choice]
      }
      return []
    })
    return added.length === 0 ? variable : withChoices(variable, added)
  })
}

/** Where a miss changes its sign between two values. */
function crossing(missOf: (value: number) => number, from: number, to: number, missAtFrom: number): number {
  const isPast = (value: number): boolean => !(missOf(value) * missAtFrom > 0)
  const { failing, passing } = bisect(isPast, { failing: from, passing: to }, { halvings: HALVINGS })
  return (failing + passing) / 2
}

function withChoices(variable: Variable, added: readonly Choice[]): Variable {
  const current = variable.choices[variable.now]
  const choices = [...variable.choices, ...added].sort((a, b) => (a.values[0] as number) - (b.values[0] as number))
  return { ...variable, choices, now: choices.indexOf(current as Choice) }
}
