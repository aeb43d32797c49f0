import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Variable, variablesOf } from '../../../src/worksheet/advice/choices.ts'
import { MAX_CHANGES, search } from '../../../src/worksheet/advice/search.ts'
import { type ModelOptions, type Setting, TrialModel, type Tried } from '../../../src/worksheet/advice/trial-model.ts'
import type { Cell, Given } from '../../../src/worksheet/index.ts'
import { check, given, result, sheetOf } from '../make.ts'

const NO_MARGIN = { margin: '0 %' }
const free = (name: string, now: number, least: number, most: number, step = 1): Given =>
  given(name, String(now), { advice: { change: 'freely', step, least, most } })

interface Searched {
  readonly plans: readonly string[]
  readonly costs: readonly number[]
  readonly nearest: string
  readonly short: number
  readonly model: TrialModel
}

function searched(
  cells: readonly Cell[],
  options: Partial<ModelOptions> = {},
  from?: Readonly<Record<string, string>>,
): Searched {
  const sheet = sheetOf(cells)
  const variables = variablesOf(sheet, [])
  const model = new TrialModel(sheet, variables, { targets: ['k'], level: 'agreement', budget: 100_000, ...options })
  const start = new Map(
    Object.entries(from ?? {}).map(([name, text]) => {
      const place = variables.findIndex((variable) => variable.name === name)
      return [place, (variables[place] as Variable).choices.findIndex((choice) => choice.cells[0]?.value === text)]
    }),
  )
  const found = from ? search(model, start) : search(model)
  const said = (set: Setting): string =>
    [...set]
      .sort(([one], [other]) => one - other)
      .map(([place, choice]) => `${variables[place]?.name} ${variables[place]?.choices[choice]?.cells[0]?.value}`)
      .join(', ')
  return {
    plans: found.plans.map(({ set }) => said(set)),
    costs: found.plans.map(({ cost }) => cost),
    nearest: said(found.nearest.set),
    short: found.nearest.shortfall,
    model,
  }
}

/** The cheapest of all settings that reach every goal. */
function cheapest(model: TrialModel): Tried | undefined {
  let found: Tried | undefined
  const visit = (place: number, set: Setting): void => {
    const variable = model.variables[place]
    if (!variable) {
      const tried = model.try(set)
      if (set.size > 0 && tried.shortfall <= 0 && (!found || tried.cost < found.cost)) found = tried
      return
    }
    for (const choice of variable.choices.keys())
      visit(place + 1, choice === variable.now ? set : new Map(set).set(place, choice))
  }
  visit(0, new Map())
  return found
}

describe('a search', () => {
  test('of one given among many figures finds the nearest that does, wherever that is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 600 }),
        fc.integer({ min: 1, max: 600 }),
        fc.integer({ min: 0, max: 40 }),
        (now, low, width) => {
          fc.pre(now < low || now > low + width)
          const high = Math.min(600, low + width)
          const cells = [free('a', now, 1, 600), check('k', `a >= ${low} and a <= ${high}`, NO_MARGIN)]
          const { plans, nearest, short } = searched(cells)
          expect(plans).toEqual([`a ${now < low ? low : high}`])
          expect(nearest).toBe(plans[0])
          expect(short).toBe(0)
        },
      ),
    )
  })

  test('of a figure below zero, or through it, does as well', () => {
    for (const [now, low, high] of [
      [-300, -37, -35],
      [-300, 35, 37],
      [300, -37, -35],
    ] as const) {
      const cells = [
        free('a', now, -300, 300),
        check('k', `a + 1000 >= ${1000 + low} and a + 1000 <= ${1000 + high}`, NO_MARGIN),
      ]
      expect(searched(cells).plans).toEqual([`a ${now < low ? low : high}`])
    }
  })

  test('of one choice takes the one that does, the cheapest first', () => {
    const way = given('way', 'a', { entry: 'choice', options: ['a', 'b', 'c', 'd'], advice: { change: 'freely' } })
    const cells = [way, result('r', 'when(way = "c", 5, when(way = "d", 7, 1))'), check('k', 'r >= 5')]
    // `c` passes at its limit, which costs a little.
    expect(searched(cells).plans).toEqual(['way d'])
  })

  test('of several givens finds as cheap a plan as any, where each helps by itself', () => {
    const figure = fc.integer({ min: 1, max: 9 })
    fc.assert(
      fc.property(
        figure,
        figure,
        figure,
        fc.integer({ min: 4, max: 27 }),
        fc.integer({ min: 1, max: 10 }),
        (a, b, c, sum, most) => {
          const cells = [
            free('a', a, 1, 10),
            free('b', b, 1, 10),
            free('c', c, 1, 10),
            check('k', `a + b + c >= ${sum}`, NO_MARGIN),
            check('other', `a <= ${most}`, NO_MARGIN),
          ]
          const { plans, costs, model } = searched(cells)
          const best = cheapest(model)
          fc.pre(a + b + c < sum)
          if (!best) expect(plans).toEqual([])
          else {
            expect(plans.length).toBeGreaterThan(0)
            expect(costs[0]).toBeCloseTo(best.cost, 9)
            expect([...costs]).toEqual([...costs].sort((one, other) => one - other))
            expect(new Set(plans).size).toBe(plans.length)
          }
        },
      ),
    )
  })

  test('of two that count together finds a plan wherever there is one, nearly as cheap as any', () => {
    const figure = fc.integer({ min: 1, max: 15 })
    fc.assert(
      fc.property(figure, figure, fc.integer({ min: 2, max: 225 }), figure, (a, b, area, most) => {
        fc.pre(a * b < area)
        const product = [
          free('a', a, 1, 15),
          free('b', b, 1, 15),
          check('k', `a * b >= ${area}`, NO_MARGIN),
          check('other', `a <= ${most}`, NO_MARGIN),
        ]
        const { costs, model } = searched(product)
        const best = cheapest(model)
        expect(costs.length > 0).toBe(best !== undefined)
        if (best) expect(costs[0]).toBeLessThan(best.cost + 0.5)
      }),
    )
    fc.assert(
      fc.property(
        figure,
        figure,
        fc.integer({ min: 2, max: 30 }),
        fc.integer({ min: 0, max: 5 }),
        (a, b, low, width) => {
          fc.pre(a + b < low || a + b > low + width)
          const window = [
            free('a', a, 1, 15),
            free('b', b, 1, 15),
            check('k', `a + b >= ${low} and a + b <= ${low + width}`, NO_MARGIN),
            check('other', 'a - b <= 5', NO_MARGIN),
          ]
          const { costs, model } = searched(window)
          expect(costs.length > 0).toBe(cheapest(model) !== undefined)
        },
      ),
    )
  })

  test('needs no more changes than the goals do: each change of a plan is needed', () => {
    const cells = [
      free('a', 1, 1, 10),
      free('b', 1, 1, 10),
      free('c', 1, 1, 10),
      check('k', 'a >= 5', NO_MARGIN),
      check('l', 'b >= 5', NO_MARGIN),
    ]
    expect(searched(cells, { targets: ['k', 'l'] }).plans).toEqual(['a 5, b 5'])
    expect(searched(cells, { targets: ['l'] }).plans).toEqual(['b 5'])
  })

  test('finds two givens that do nothing unless both are changed', () => {
    const cells = [
      given('one', 'no', { entry: 'yes or no', advice: { change: 'freely' } }),
      given('two', 'no', { entry: 'yes or no', advice: { change: 'freely' } }),
      free('a', 1, 1, 10),
      check('k', 'one and two'),
    ]
    expect(searched(cells).plans).toEqual(['one yes, two yes'])
    const quantities = [
      free('a', 10, 1, 40),
      free('b', 10, 1, 40),
      check('k', 'a * b >= 390 and a + b <= 42', NO_MARGIN),
    ]
    const [one, other] = (searched(quantities).plans[0]?.match(/\d+/g) ?? []).map(Number) as [number, number]
    expect(one * other).toBeGreaterThanOrEqual(390)
    expect(one + other).toBeLessThanOrEqual(42)
  })

  test('keeps what one change would break whole with another', () => {
    const cells = [
      free('a', 10, 1, 40),
      free('b', 10, 1, 40),
      check('k', 'a >= 20', NO_MARGIN),
      check('other', 'a + b <= 25', NO_MARGIN),
    ]
    expect(searched(cells).plans[0]).toBe('a 20, b 5')
    expect(searched(cells, { mayBreak: true }).plans[0]).toBe('a 20')
  })

  test(`takes no more than ${MAX_CHANGES} changes`, () => {
    const needing = (count: number) => {
      const names = Array.from({ length: count }, (_, i) => `g${i}`)
      return [
        ...names.map((name) => free(name, 1, 1, 2)),
        check('k', `${names.join(' + ')} >= ${2 * count}`, NO_MARGIN),
      ]
    }
    expect(searched(needing(4)).plans).toEqual(['g0 2, g1 2, g2 2, g3 2'])
    const five = searched(needing(5))
    expect(five.plans).toEqual([])
    expect(five.nearest.split(', ')).toHaveLength(4)
    expect(five.short).toBeGreaterThan(0)
  })

  test('says what comes nearest where nothing does', () => {
    const none = searched([free('a', 10, 1, 15), check('k', 'a >= 20', NO_MARGIN)])
    expect(none).toMatchObject({ plans: [], nearest: 'a 15' })
    expect(none.short).toBeGreaterThan(0)
    expect(searched([free('a', 10, 1, 15), free('b', 1, 1, 5), check('k', 'b >= 20', NO_MARGIN)]).nearest).toBe('b 5')
    expect(
      searched([free('a', 10, 1, 15), given('b', '1', { fixed: true }), check('k', 'b >= 20', NO_MARGIN)]).nearest,
    ).toBe('')
  })

  test('changes only what is at its level', () => {
    const agreed: Given = { ...free('b', 1, 1, 20), advice: { change: 'agree', step: 1, least: 1, most: 20 } }
    const cells = [free('a', 1, 1, 3), agreed, check('k', 'a + b >= 10', NO_MARGIN)]
    expect(searched(cells, { level: 'setting' })).toMatchObject({ plans: [], nearest: 'a 3' })
    expect(searched(cells, { level: 'agreement' }).plans[0]).toBe('b 9')
  })

  test('offers two small changes beside one large one', () => {
    const cells = [free('a', 10, 1, 100), free('b', 10, 1, 100), check('k', 'a * b >= 1600', NO_MARGIN)]
    const { plans } = searched(cells)
    // Four times one of them is as many doublings as twice both, and one change less.
    expect(plans[0]).toMatch(/^[ab] 16[0-9]$|^[ab] 100$|^a \d+, b \d+$/)
    expect(plans.some((plan) => plan.includes(', '))).toBe(true)
  })

  test('goes on from changes that are given, and keeps what they are needed for', () => {
    const cells = [
      free('a', 10, 1, 40),
      free('b', 10, 1, 40),
      check('k', 'a >= 20', NO_MARGIN),
      check('other', 'a + b <= 25', NO_MARGIN),
    ]
    expect(searched(cells, {}, { a: '20' }).plans[0]).toBe('a 20, b 5')
    expect(searched(cells, {}, { a: '40' }).plans[0]).toBe('a 20, b 5')
  })

  test('ends when its evaluations are spent, with what it has found', () => {
    const cells = [free('a', 10, 1, 600), free('b', 10, 1, 600), check('k', 'a + b >= 700', NO_MARGIN)]
    const spent = searched(cells, { budget: 60 })
    expect(spent.model.isSpent).toBe(true)
    expect(spent.short).toBeGreaterThan(0)
    expect(spent.nearest).not.toBe('')
    expect(searched(cells, { budget: 1 }).nearest).toBe('')
  })

  test('gives the same for the same sheet', () => {
    const cells = [
      free('a', 3, 1, 60),
      free('b', 7, 1, 60),
      free('c', 5, 1, 60),
      check('k', 'a * b + c >= 900', NO_MARGIN),
    ]
    const [one, other] = [searched(cells), searched(cells)]
    expect([one.plans, one.costs, one.nearest]).toEqual([other.plans, other.costs, other.nearest])
    expect(one.plans.length).toBeGreaterThan(0)
  })
})
