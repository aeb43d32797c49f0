import type { Variable } from './choices.ts'
import type { Setting, Tried } from './trial-model.ts'

/** The most changes in one plan; a technician would not follow more. */
export const MAX_CHANGES = 4
/** How many unfinished plans of one size are lengthened. */
const WIDTH = 8
const FIRST_LOOK = 14
const LATER_LOOK = 10
const GRID_LOOK = 9
const POLISHED = 6
const TINY = 1e-12
/** A plan that costs less than so much a change is not worth improving by a longer one. */
const CHEAP_PER_CHANGE = 1.15

/** The places of the variables that something aimed at depends on. */
interface Aimed {
  readonly variables: ReadonlySet<number>
}

/** What a search asks of the model that it tries settings on. */
export interface Trials {
  readonly variables: readonly Pick<Variable, 'choices' | 'now' | 'ordered'>[]
  readonly goals: readonly Aimed[]
  readonly targets: readonly Aimed[]
  readonly isSpent: boolean
  mayChange(place: number): boolean
  /** `failing` collects what is not reached. */
  try(set: Setting, failing?: Aimed[]): Tried
}

type Searched = Trials['variables'][number]

export interface SearchResult {
  /** Plans that reach every goal, the cheapest first. */
  readonly plans: readonly Tried[]
  /** The setting that comes nearest. */
  readonly nearest: Tried
}

const isBetter = (a: Tried, b: Tried): boolean =>
  a.shortfall < b.shortfall - TINY || (a.shortfall <= b.shortfall + TINY && a.cost < b.cost - TINY)

const best = (list: Tried[]): Tried[] => list.sort((a, b) => (isBetter(a, b) ? -1 : isBetter(b, a) ? 1 : 0))

const keyOf = (set: Setting): string => [...set.keys()].sort((a, b) => a - b).join()

/**
 * Looks for the fewest changes that reach every goal. Plans grow by one change at a time (a beam search over the texts
 * that may be typed); each is improved one change after the other, and those that do are trimmed. The same sheet and
 * budget give the same plans.
 * @param from changes to go on from, as those of a plan that breaks what it need not
 */
export function search(model: Trials, from: Setting = new Map()): SearchResult {
  const start = model.try(from)
  let nearest = start
  let front: Tried[] = [start]
  let plans: Tried[] = []
  let hasLookedFurther = false
  for (let size = from.size + 1; size <= MAX_CHANGES && !model.isSpent; size++) {
    const grown = best(lengthened(model, front)).slice(0, WIDTH * 2)
    const list = best(size > 1 ? grown.map((one) => improved(model, one)) : grown)
    if (size === 2 && (list[0]?.shortfall ?? 1) > 0) {
      list.push(
        ...best(pairs(model))
          .slice(0, 4)
          .map((one) => improved(model, one)),
      )
      best(list)
    }
    const first = list[0]
    if (first && first.shortfall < nearest.shortfall) nearest = first
    const done = list.filter(({ shortfall }) => shortfall <= 0)
    if (done.length > 0) {
      plans = [...plans, ...done.slice(0, POLISHED).map((one) => polished(model, one))].sort((a, b) => a.cost - b.cost)
      // Two small changes may be better than one large one, so one size more is looked at.
      if (hasLookedFurther || (plans[0] as Tried).cost < (size + 1) * CHEAP_PER_CHANGE) break
      hasLookedFurther = true
    } else if (plans.length > 0) break
    front = list.filter(({ shortfall }) => shortfall > 0).slice(0, WIDTH)
    if (front.length === 0 && size > 1) break
  }
  return { plans: distinct(plans), nearest: plans[0] ?? nearest }
}

function distinct(plans: readonly Tried[]): Tried[] {
  const seen = new Set<string>()
  return plans.filter(({ set }) => {
    const key = JSON.stringify([...set].sort(([a], [b]) => a - b))
    return !seen.has(key) && seen.add(key)
  })
}

/** Every plan of the front with one change more, among the variables that a goal it misses depends on. */
function lengthened(model: Trials, front: readonly Tried[]): Tried[] {
  const found = new Map<string, Tried>()
  for (const { set } of front) {
    const failing: Aimed[] = []
    model.try(set, failing)
    const open = new Set(failing.flatMap(({ variables }) => [...variables]))
    for (const place of [...open].sort((a, b) => a - b)) {
      if (model.isSpent) return [...found.values()]
      if (!model.mayChange(place) || set.has(place)) continue
      const tried = along(model, set, place, FIRST_LOOK)
      // Where staying as it is was best, the plan has not grown.
      if (!tried.set.has(place)) continue
      const key = keyOf(tried.set)
      const known = found.get(key)
      if (!known || isBetter(tried, known)) found.set(key, tried)
    }
  }
  return [...found.values()]
}

function withChoice(model: Trials, set: Setting, place: number, choice: number): Setting {
  const next = new Map(set)
  if (choice === (model.variables[place] as Searched).now) next.delete(place)
  else next.set(place, choice)
  return next
}

/** The best choice of one variable, the others as they are: a coarse look, then ever finer about the best. */
function along(model: Trials, set: Setting, place: number, looks: number): Tried {
  const variable = model.variables[place] as Searched
  const known = new Map<number, Tried>()
  let found: Tried | undefined
  let at = variable.now
  const look = (choice: number): void => {
    if (known.has(choice) || choice < 0 || choice >= variable.choices.length || model.isSpent) return
    const tried = model.try(withChoice(model, set, place, choice))
    known.set(choice, tried)
    if (!found || isBetter(tried, found)) {
      found = tried
      at = choice
    }
  }
  const coarse = coarseChoices(variable, looks)
  for (const choice of coarse) look(choice)
  if (coarse.length < variable.choices.length) {
    const near = coarse.indexOf(at)
    let low = coarse[Math.max(0, near - 1)] as number
    let high = coarse[Math.min(coarse.length - 1, near + 1)] as number
    while (high - low > 2 && !model.isSpent) {
      const stride = Math.max(1, Math.floor((high - low) / 8))
      for (let choice = low; choice <= high; choice += stride) look(choice)
      low = Math.max(low, at - stride)
      high = Math.min(high, at + stride)
      if (stride === 1) break
    }
  }
  return found ?? model.try(set)
}

/** The choices looked at first: what is set now, its neighbours, the ends, and some evenly by ratio. */
function coarseChoices({ choices, now, ordered }: Searched, looks: number): number[] {
  const last = choices.length - 1
  if (!ordered || choices.length <= looks + 2) return choices.map((_, i) => i)
  const found = new Set([now, Math.max(0, now - 1), Math.min(last, now + 1), 0, last])
  const value = (i: number): number => choices[i]?.values[0] as number
  const [low, high] = [value(0), value(last)]
  const from = low > 0 ? low : high / 200
  for (let k = 0; k < looks; k++) {
    const aim =
      from > 0 && high > from ? from * (high / from) ** (k / (looks - 1)) : low + ((high - low) * k) / (looks - 1)
    let [a, b] = [0, last]
    while (a < b) {
      const middle = (a + b) >> 1
      if (value(middle) < aim) a = middle + 1
      else b = middle
    }
    found.add(a)
  }
  return [...found].sort((a, b) => a - b)
}

/** One variable of a plan after the other, for as long as it helps, at most twice round. */
function improved(model: Trials, start: Tried): Tried {
  let found = start
  for (let round = 0; round < 2; round++) {
    let hasMoved = false
    for (const place of found.set.keys()) {
      if (model.isSpent) return found
      const tried = along(model, found.set, place, LATER_LOOK)
      if (isBetter(tried, found)) {
        found = tried
        hasMoved = true
      }
    }
    if (!hasMoved) break
  }
  return found
}

/** Pairs of variables that some check depends on together, over a coarse grid: what neither does alone. */
function pairs(model: Trials): Tried[] {
  const open = new Set(model.targets.flatMap(({ variables }) => [...variables]))
  const places = model.variables.map((_, i) => i).filter((i) => model.mayChange(i))
  const share = (i: number, j: number): boolean =>
    model.goals.some(({ variables }) => variables.has(i) && variables.has(j))
  const found: Tried[] = []
  for (const i of places)
    if (open.has(i))
      for (const j of places) {
        if (j === i || (open.has(j) && j < i) || !share(i, j)) continue
        const tried = gridOf(model, i, j)
        if (tried) found.push(tried)
        if (model.isSpent) return found
      }
  return found
}

function gridOf(model: Trials, i: number, j: number): Tried | undefined {
  const [first, second] = [model.variables[i] as Searched, model.variables[j] as Searched]
  let found: Tried | undefined
  for (const a of coarseChoices(first, GRID_LOOK))
    for (const b of coarseChoices(second, GRID_LOOK)) {
      if (a === first.now || b === second.now) continue
      if (model.isSpent) return found
      const tried = model.try(
        new Map([
          [i, a],
          [j, b],
        ]),
      )
      if (!found || isBetter(tried, found)) found = tried
    }
  return found
}

/** A plan without the changes it does not need, each of the others as small as can be. */
function polished(model: Trials, plan: Tried): Tried {
  let found = plan
  const take = (set: Setting): boolean => {
    if (set.size === 0) return false
    const tried = model.try(set)
    const isSmaller = tried.shortfall <= 0 && (tried.set.size < found.set.size || tried.cost < found.cost - TINY)
    if (isSmaller) found = tried
    return isSmaller
  }
  for (const place of [...found.set.keys()]) take(without(found.set, place))
  for (let round = 0; round < 3; round++) {
    const before = found.cost
    for (const place of [...found.set.keys()]) {
      const { choices, now, ordered } = model.variables[place] as Searched
      if (!ordered) {
        for (let choice = 0; choice < choices.length; choice++)
          if (choice !== now) take(new Map(found.set).set(place, choice))
        continue
      }
      for (let stride = Math.max(1, choices.length >> 2); stride >= 1; stride >>= 1)
        for (const side of [-stride, stride]) {
          const choice = (found.set.get(place) as number) + side
          if (choice >= 0 && choice < choices.length && choice !== now) take(new Map(found.set).set(place, choice))
        }
    }
    if (before - found.cost < TINY) break
  }
  return found
}

function without(set: Setting, place: number): Setting {
  const next = new Map(set)
  next.delete(place)
  return next
}
