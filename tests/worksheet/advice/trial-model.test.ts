import { describe, expect, test } from 'vitest'
import { variablesOf } from '../../../src/worksheet/advice/choices.ts'
import { type Goal, type ModelOptions, TrialModel } from '../../../src/worksheet/advice/trial-model.ts'
import type { Cell } from '../../../src/worksheet/index.ts'
import { check, given, result, sheetOf } from '../make.ts'

const steps = (least: number, most: number, more: object = {}) => ({
  change: 'freely' as const,
  step: 1,
  least,
  most,
  ...more,
})
const a = given('a', '10', { advice: steps(1, 40) })
const b = given('b', '10', { advice: steps(1, 40) })

/** A sheet on which givens can be set otherwise, by their names. */
function trying(cells: readonly Cell[], options: Partial<ModelOptions>) {
  const sheet = sheetOf(cells)
  const variables = variablesOf(sheet, [])
  const model = new TrialModel(sheet, variables, { targets: [], level: 'agreement', budget: 10_000, ...options })
  const place = (name: string): number => variables.findIndex((variable) => variable.name === name)
  const set = (figures: Readonly<Record<string, string>>) =>
    new Map(
      Object.entries(figures).map(([name, text]) => {
        const at = variables[place(name)]?.choices.findIndex(({ cells }) => cells[0]?.value === text) ?? -1
        if (at < 0) throw new Error(`“${name}” is never ${text}.`)
        return [place(name), at]
      }),
    )
  return {
    sheet,
    model,
    place,
    with(figures: Readonly<Record<string, string>>) {
      const failing: Goal[] = []
      const { shortfall, cost } = model.try(set(figures), failing)
      return { shortfall, cost, failing: failing.map(({ name }) => name) }
    },
  }
}
/** What a change of a setting by some doublings costs by itself. */
const priced = (doublings: number): number => 1 + doublings

describe('a sheet tried with other givens', () => {
  const one = () =>
    trying([a, b, result('sum', 'a + b'), check('k', 'sum >= 30', { margin: '0 %' })], { targets: ['k'] })

  test('falls short by as much as a check fails by, and a little for that it fails at all', () => {
    const model = one()
    // 20 of 30: short by a third.
    expect(model.with({})).toEqual({ shortfall: expect.closeTo(0.02 + 1 / 3 / (4 / 3), 9), cost: 0, failing: ['k'] })
    expect(model.with({ a: '17' })).toMatchObject({ shortfall: expect.closeTo(0.02 + 0.1 / 1.1, 9), failing: ['k'] })
    expect(model.with({ a: '20' })).toEqual({ shortfall: 0, cost: expect.closeTo(priced(1), 9), failing: [] })
    expect(model.with({ a: '20', b: '5' })).toMatchObject({
      cost: expect.closeTo(priced(1) + priced(1), 9),
      failing: ['k'],
    })
    expect(model.with({ a: '20', b: '20' }).shortfall).toBe(0)
  })

  test('leaves the sheet as it is, whatever was tried before', () => {
    const model = one()
    const before = [...model.sheet.engine.layout.values]
    const first = model.with({ a: '12' })
    model.with({ a: '20', b: '40' })
    model.with({ b: '1' })
    expect(model.with({ a: '12' })).toEqual(first)
    expect(model.sheet.engine.layout.values).toEqual(before)
  })

  test('is far off where it does not compute', () => {
    const model = trying([a, result('r', '1 / (a - 12)'), check('k', 'r > 3')], { targets: ['k'] })
    expect(model.with({ a: '12' })).toMatchObject({ shortfall: 50, cost: priced(Math.log2(1.2)) })
    expect(model.with({ a: '13' }).shortfall).toBeLessThan(1)
  })

  test('is nearer the nearer it comes to a limit of zero, and never farther than three', () => {
    const model = trying([a, check('k', 'a - 15 >= 0')], { targets: ['k'] })
    const short = (size: number): unknown => expect.closeTo(0.02 + size / (1 + size), 9)
    expect(model.with({})).toMatchObject({ shortfall: short(1), failing: ['k'] })
    expect(model.with({ a: '14' }).shortfall).toEqual(short(1 / 5))
    expect(model.with({ a: '1' }).shortfall).toEqual(short(14 / 5))
    expect(model.with({ a: '15' }).shortfall).toBe(0)
    const far = trying([a, check('k', 'a - 11 >= 0')], { targets: ['k'] })
    expect(far.with({ a: '1' }).shortfall).toEqual(short(3))
  })

  test('is as far off as can be by what has no figure', () => {
    const way = given('way', 'near', { entry: 'choice', options: ['near', 'far'], advice: { change: 'freely' } })
    const model = trying([way, a, check('k', 'way = "far"')], { targets: ['k'] })
    expect(model.with({})).toMatchObject({ shortfall: expect.closeTo(0.02 + 3 / 4, 9), failing: ['k'] })
    expect(model.with({ way: 'far' })).toEqual({ shortfall: 0, cost: 1.5, failing: [] })
  })

  test('has no size where a part of the condition does not compute', () => {
    const model = trying([a, b, check('k', 'a > 12 and 1 / (b - 10) > 0')], { targets: ['k'] })
    expect(model.with({})).toMatchObject({ shortfall: expect.any(Number), failing: ['k'] })
    expect(model.with({ a: '13' }).shortfall).toBe(50)
    expect(model.with({ a: '15', b: '11' }).shortfall).toBe(0)
  })
})

describe('other checks', () => {
  const two = (options: Partial<ModelOptions> = {}, margin = '0 %') =>
    trying([a, b, check('k', 'a >= 20', { margin }), check('other', 'a + b <= 25', { margin })], {
      targets: ['k'],
      ...options,
    })

  test('that pass must go on passing', () => {
    expect(two().with({ a: '20' })).toMatchObject({
      shortfall: expect.closeTo(0.02 + 0.2 / 1.2, 9),
      failing: ['other'],
    })
    expect(two().with({ a: '20', b: '5' })).toMatchObject({ shortfall: 0, failing: [] })
    expect(two().with({})).toMatchObject({ failing: ['k'] })
  })

  test('may fail where that is allowed', () => {
    expect(two({ mayBreak: true }).with({ a: '20' })).toMatchObject({ shortfall: 0, failing: [] })
  })

  test('that fail already may go on failing, at a cost where they fail by more', () => {
    const failing = trying([a, b, check('k', 'a >= 20', { margin: '0 %' }), check('other', 'a + b <= 10')], {
      targets: ['k'],
    })
    expect(failing.with({ a: '20' })).toEqual({ shortfall: 0, cost: expect.closeTo(priced(1) + 0.75, 9), failing: [] })
    expect(failing.with({ a: '20', b: '1' }).cost).toBeCloseTo(priced(1) + priced(Math.log2(10)) + 0.75, 9)
    const helped = trying([a, b, check('k', 'a >= 20', { margin: '0 %' }), check('other', 'a + b >= 100')], {
      targets: ['k'],
    })
    expect(helped.with({ a: '20' }).cost).toBeCloseTo(priced(1), 9)
    const hardly = trying([a, b, check('k', 'a >= 20', { margin: '0 %' }), check('other', 'a + 9990 <= 5000')], {
      targets: ['k'],
    })
    expect(hardly.with({ a: '20' }).cost).toBeCloseTo(priced(1), 9)
    const unmoved = trying([a, b, check('k', 'a >= 20', { margin: '0 %' }), check('other', 'max(a, 40) <= 10')], {
      targets: ['k'],
    })
    expect(unmoved.with({ a: '20' }).cost).toBeCloseTo(priced(1), 9)
  })

  test('that nothing of what is changed reaches count for nothing', () => {
    const apart = trying([a, b, check('k', 'a >= 20', { margin: '0 %' }), check('other', 'b <= 5')], { targets: ['k'] })
    expect(apart.with({ a: '20' })).toEqual({ shortfall: 0, cost: priced(1), failing: [] })
  })

  test('that depend on one of several changes must go on passing as well', () => {
    const model = trying([a, b, check('k', 'a >= 20', { margin: '0 %' }), check('other', 'b >= 8')], { targets: ['k'] })
    expect(model.with({ a: '20', b: '4' }).failing).toEqual(['other'])
    const pair = [
      given('left', '10', { advice: steps(1, 40, { with: 'right' }) }),
      given('right', '10', { advice: steps(1, 40) }),
    ]
    const together = trying([a, ...pair, check('k', 'a >= 20'), check('other', 'right >= 8')], { targets: ['k'] })
    expect(together.with({ a: '40', left: '4' }).failing).toEqual(['other'])
  })

  test('that are left marginal cost half a change, where they were not before', () => {
    expect(two({}, '10 %').with({ a: '23', b: '1' })).toMatchObject({ shortfall: 0 })
    const cost = (figures: Record<string, string>) => two({}, '10 %').with(figures).cost
    // 23 of 20 has room; 24 of 25 has not, and had before.
    expect(cost({ a: '23', b: '1' })).toBeCloseTo(priced(Math.log2(2.3)) + priced(Math.log2(10)) + 0.5, 9)
    expect(cost({ a: '22', b: '1' })).toBeCloseTo(priced(Math.log2(2.2)) + priced(Math.log2(10)) + 1, 9)
    expect(cost({ a: '21', b: '1' })).toBeCloseTo(priced(Math.log2(2.1)) + priced(Math.log2(10)) + 0.5, 9)
    const before = trying([a, b, check('k', 'a >= 20', { margin: '0 %' }), check('other', 'a + b <= 21')], {
      targets: ['k'],
    })
    expect(before.with({ a: '20', b: '1' }).cost).toBeCloseTo(priced(1) + priced(Math.log2(10)), 9)
  })

  test('that wait, are in error or have the name of another are none', () => {
    const cells = [
      a,
      given('empty', ''),
      check('k', 'a >= 20'),
      check('waits', 'a + empty <= 12'),
      check('broken', 'a + gone <= 12'),
      { ...check('k', 'a <= 12'), id: 'second' },
    ]
    expect(trying(cells, { targets: ['k'] }).model.goals.map(({ name }) => name)).toEqual(['k'])
  })
})

describe('what is aimed at', () => {
  test('may be room to the limit as well', () => {
    const model = trying([a, check('k', 'a >= 10')], { targets: ['k'], withRoom: true })
    expect(model.with({})).toMatchObject({ failing: ['k'], shortfall: expect.closeTo(0.02 + 0.1 / 1.1, 9) })
    expect(model.with({ a: '11' }).failing).toEqual(['k'])
    expect(model.with({ a: '12' })).toEqual({
      shortfall: 0,
      cost: expect.closeTo(priced(Math.log2(1.2)), 9),
      failing: [],
    })
  })

  test('with room asks none of the other checks', () => {
    const model = trying([a, check('k', 'a >= 10'), check('other', 'a <= 12.5')], { targets: ['k'], withRoom: true })
    expect(model.with({ a: '12' })).toMatchObject({ shortfall: 0, failing: [] })
    expect(model.with({ a: '13' }).failing).toEqual(['other'])
  })

  test('may be a value of a result, within a share of it', () => {
    const cells = [
      a,
      given('c', ''),
      result('r', '2 * a'),
      result('waits', 'c'),
      check('k', 'a <= 30', { margin: '0 %' }),
    ]
    const aimed = (id: string, value: number, within: number) => trying(cells, { aim: { id, value, within } })
    expect(aimed('r', 30, 0.1).with({ a: '15' })).toEqual({ shortfall: 0, cost: priced(Math.log2(1.5)), failing: [] })
    expect(aimed('r', 30, 0.1).with({ a: '14' })).toMatchObject({ shortfall: 0 })
    expect(aimed('r', 30, 0.1).with({ a: '13' })).toMatchObject({
      shortfall: expect.closeTo(0.02 + (4 / 30 - 0.1) / (1 + 4 / 30 - 0.1), 9),
      failing: ['r'],
    })
    expect(aimed('r', 30, 0.1).with({ a: '17' }).failing).toEqual(['r'])
    expect(aimed('r', 80, 0.1).with({ a: '40' }).failing).toEqual(['k'])
    expect(aimed('waits', 30, 0.1).model.targets).toEqual([])
    expect(aimed('nowhere', 30, 0.1).model.targets).toEqual([])
    const second = { ...result('r', '3 * a'), id: 'second' }
    expect(trying([...cells, second], { aim: { id: 'second', value: 30, within: 0.1 } }).model.targets).toEqual([])
    expect(aimed('r', 0, 0.1).with({ a: '1' }).failing).toEqual(['r'])
  })
})

describe('a search', () => {
  test('may change what is at its level or below', () => {
    const cells = [
      given('set', '1', { advice: steps(1, 3) }),
      given('kit', '1', { advice: { ...steps(1, 3), change: 'by kit' } }),
      given('agreed', '1', { advice: { ...steps(1, 3), change: 'agree' } }),
      check('k', 'set + kit + agreed > 5'),
    ]
    const allowed = (level: ModelOptions['level']) => {
      const { model } = trying(cells, { targets: ['k'], level })
      return [0, 1, 2].map((place) => model.mayChange(place))
    }
    expect(allowed('setting')).toEqual([true, false, false])
    expect(allowed('kit')).toEqual([true, true, false])
    expect(allowed('agreement')).toEqual([true, true, true])
  })

  test('knows what each goal depends on', () => {
    const { model, place } = trying([a, b, result('sum', 'a + 1'), check('k', 'sum > 20'), check('other', 'b < 20')], {
      targets: ['k'],
    })
    expect(model.goals.map(({ name, variables }) => [name, [...variables]])).toEqual([
      ['k', [place('a')]],
      ['other', [place('b')]],
    ])
    expect(model.targets.map(({ name }) => name)).toEqual(['k'])
  })

  test('spends one for each try, and one for each formula it computes', () => {
    const cells = [
      a,
      b,
      result('sum', 'a + b'),
      result('unseen', '2 * a'),
      check('k', 'sum > 30'),
      check('other', 'b < 20'),
    ]
    const { model, with: tried } = trying(cells, { targets: ['k'], budget: 6 })
    expect(model.isSpent).toBe(false)
    // The sum and its check, and one for trying: nothing judges the other result.
    tried({ a: '11' })
    expect(model.isSpent).toBe(false)
    tried({ a: '12' })
    expect(model.isSpent).toBe(true)
  })

  test('leaves what takes long to the whole sheet, where it is not aimed at', () => {
    const cells = [
      given('a', '12', { advice: steps(1, 40) }),
      result('placed', 'place_lamps(0.6 m, 0.45 m, a * 0.1 m).met'),
      check('slow', 'placed'),
      check('k', 'a >= 20', { margin: '0 %' }),
    ]
    const left = trying(cells, { targets: ['k'], mayBreak: true })
    expect(left.model.goals.map(({ name, deferred }) => [name, deferred])).toEqual([
      ['slow', true],
      ['k', false],
    ])
    const before = left.model.isSpent
    expect(left.with({ a: '20' })).toEqual({ shortfall: 0, cost: expect.any(Number), failing: [] })
    expect([before, left.model.isSpent]).toEqual([false, false])
    const aimed = trying(cells, { targets: ['slow'], budget: 10_000 })
    aimed.with({ a: '13' })
    expect(aimed.model.isSpent).toBe(true)
  })
})
