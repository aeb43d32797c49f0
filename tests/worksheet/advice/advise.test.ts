import { describe, expect, test } from 'vitest'
import { adviseCheck, adviseSheet, adviseTarget, passes, statesOf } from '../../../src/worksheet/advice/advise.ts'
import type { CheckAdvice, Plan } from '../../../src/worksheet/advice/plan.ts'
import type { Cell, Given } from '../../../src/worksheet/index.ts'
import type { Advice } from '../../../src/worksheet/schema/document.ts'
import { check, given, result, sheetOf } from '../make.ts'

const NO_MARGIN = { margin: '0 %' }
const changeable = (
  name: string,
  now: number,
  least: number,
  most: number,
  change: Advice['change'] = 'freely',
): Given => given(name, String(now), { advice: { change, step: 1, least, most } })

const typed = (plan: Plan | undefined): string | undefined =>
  plan?.changes.map(({ given: name, text }) => `${name} ${text}`).join(', ')
const all = (advice: CheckAdvice | undefined): readonly (string | undefined)[] => (advice?.plans ?? []).map(typed)

describe('advice on one check', () => {
  test('is none where it passes with room, waits, is in error or is no check', () => {
    const sheet = sheetOf([
      changeable('a', 10, 1, 40),
      given('empty', ''),
      check('sure', 'a >= 5'),
      check('waits', 'a + empty >= 20'),
      check('broken', 'a + gone >= 20'),
    ])
    for (const id of ['sure', 'waits', 'broken', 'a', 'nowhere']) expect(adviseCheck(sheet, id)).toEqual({ plans: [] })
    expect([...adviseSheet(sheet).checks.keys()]).toEqual([])
    expect(adviseSheet(sheet)).not.toHaveProperty('plan')
  })

  test('is one plan of each level that has one, settings first, each changing other givens', () => {
    const sheet = sheetOf([
      changeable('set', 10, 1, 40),
      changeable('kit', 10, 1, 40, 'by kit'),
      changeable('agreed', 10, 1, 40, 'agree'),
      check('k', 'set + kit + agreed >= 40', NO_MARGIN),
    ])
    const { plans } = adviseCheck(sheet, 'k')
    expect(adviseCheck(sheet, 'k')).not.toHaveProperty('none')
    expect(plans.map((plan) => [typed(plan), plan.level])).toEqual([
      ['set 20', 'setting'],
      ['kit 20', 'kit'],
      ['agreed 20', 'agreement'],
    ])
    expect(adviseSheet(sheet).checks.get('k')?.plans).toEqual(plans)
  })

  test('goes on to equipment and agreements where settings do not reach, and says the dearest of its changes', () => {
    const cells = (most: number): Cell[] => [
      changeable('set', 10, 1, most),
      changeable('kit', 10, 1, 12, 'by kit'),
      changeable('agreed', 10, 1, 40, 'agree'),
      check('k', 'set + kit + agreed >= 40', NO_MARGIN),
    ]
    const levels = (most: number) =>
      adviseCheck(sheetOf(cells(most)), 'k').plans.map((plan) => [typed(plan), plan.level])
    expect(levels(18)[0]).toEqual(['set 18, kit 12', 'kit'])
    expect(levels(10)[0]).toEqual(['agreed 20', 'agreement'])
    expect(levels(40)[0]).toEqual(['set 20', 'setting'])
    const dearestFirst = sheetOf([...cells(18).slice(1, 2), ...cells(18).slice(0, 1), ...cells(18).slice(2)])
    expect(adviseCheck(dearestFirst, 'k').plans[0]).toMatchObject({ level: 'kit' })
  })

  test('leaves a piece of kit as it is where the studio has none', () => {
    const sheet = sheetOf([
      given('lens', '', { entry: 'kit', kit: 'lens', advice: { change: 'by kit' } }),
      changeable('a', 10, 1, 40),
      result('total', 'a + 1'),
      check('k', 'a >= 20', NO_MARGIN),
    ])
    expect(all(adviseCheck(sheet, 'k'))).toEqual(['a 20'])
    expect(typed(adviseSheet(sheet).plan)).toBe('a 20')
    expect(adviseTarget(sheet, 'total', '31').plans.map(typed)).toEqual(['a 30'])
  })

  test('counts a check behind a costly formula once a plan is typed', () => {
    const costly = [
      changeable('a', 10, 1, 40),
      changeable('b', 10, 1, 40, 'by kit'),
      result('placed', 'place_lamps(0.6 m, 0.45 m, 1.2 m).met'),
      check('other', '(placed or not placed) and a <= 15', NO_MARGIN),
    ]
    const either = adviseCheck(sheetOf([...costly, check('k', 'a + b >= 30', NO_MARGIN)]), 'k')
    expect(all(either)).toEqual(['b 20'])
    expect(adviseCheck(sheetOf([...costly, check('k', 'a >= 20', NO_MARGIN)]), 'k').plans).toEqual([])
  })

  test('of a marginal check is how to get room, by settings or equipment, but not at the cost of an agreement', () => {
    const near = (change: Advice['change']) =>
      adviseCheck(sheetOf([changeable('a', 20, 1, 40, change), check('k', 'a >= 20')]), 'k')
    expect(all(near('freely'))).toEqual(['a 23'])
    expect(all(near('by kit'))).toEqual(['a 23'])
    expect(near('agree')).toEqual({ plans: [] })
    const both = sheetOf([
      changeable('kit', 20, 1, 40, 'by kit'),
      changeable('a', 20, 1, 40),
      check('k', 'a + kit >= 40'),
    ])
    // Settings are enough: no other equipment is offered beside.
    expect(adviseCheck(both, 'k').plans.map(({ level }) => level)).toEqual(['setting'])
    const checks = adviseSheet(both).checks
    expect([...checks.keys()]).toEqual(['k'])
    const none = sheetOf([changeable('a', 20, 1, 21), check('k', 'a >= 20')])
    expect(adviseSheet(none).checks.size).toBe(0)
  })

  test('tells what a plan makes pass, and what it leaves marginal', () => {
    const sheet = sheetOf([
      changeable('a', 10, 1, 40),
      given('b', '10', { fixed: true }),
      check('k', 'a >= 20', NO_MARGIN),
      check('also', 'a >= 19', NO_MARGIN),
      check('close', 'a <= 21'),
      check('close_already', 'b >= 9.5'),
      check('still', 'a >= 100'),
    ])
    const [plan] = adviseCheck(sheet, 'k').plans
    expect(plan).toMatchObject({
      changes: [{ given: 'a', before: '10', text: '20' }],
      cells: [{ id: 'a', value: '20' }],
      passes: ['k', 'also'],
      marginal: ['close'],
      breaks: [],
      again: { readings: [], checks: [] },
    })
    expect(plan).not.toHaveProperty('gives')
    // What it was made for comes first.
    const later = sheetOf([
      changeable('a', 10, 1, 40),
      check('also', 'a >= 19', NO_MARGIN),
      check('k', 'a >= 20', NO_MARGIN),
    ])
    expect(adviseCheck(later, 'k').plans[0]?.passes).toEqual(['k', 'also'])
    // What it was made for is named as marginal too.
    const tight = sheetOf([changeable('a', 10, 1, 20), check('k', 'a >= 20')])
    expect(adviseCheck(tight, 'k').plans[0]).toMatchObject({ passes: ['k'], marginal: ['k'] })
  })

  test('says why there is none, with the changes that come nearest', () => {
    const sheet = sheetOf([changeable('a', 10, 1, 15), changeable('b', 1, 1, 1), check('k', 'a >= 20', NO_MARGIN)])
    const { plans, none } = adviseCheck(sheet, 'k')
    expect(plans).toEqual([])
    expect(none).toMatchObject({ kind: 'out of reach', nearest: [{ given: 'a', before: '10', text: '15' }] })
    const fixed = sheetOf([given('a', '10', { fixed: true }), check('k', 'a >= 20')])
    expect(adviseCheck(fixed, 'k').none).toMatchObject({ kind: 'fixed', nearest: [] })
  })

  test('says what comes nearest by whatever may be changed, in the order of the sheet', () => {
    const sheet = sheetOf([
      changeable('kit', 10, 1, 12, 'by kit'),
      changeable('set', 10, 1, 15),
      check('k', 'set + kit >= 40', NO_MARGIN),
    ])
    expect(adviseCheck(sheet, 'k').none?.nearest).toEqual([
      { given: 'kit', before: '10', text: '12' },
      { given: 'set', before: '10', text: '15' },
    ])
  })

  test('says that none was found where there was more to try than may be tried', () => {
    const sheet = sheetOf([
      changeable('a', 12, 1, 40),
      result('placed', 'place_lamps(0.6 m, 0.45 m, a * 0.1 m).met'),
      check('k', 'placed and a > 100', NO_MARGIN),
    ])
    expect(adviseCheck(sheet, 'k')).toMatchObject({ plans: [], none: { kind: 'not found' } })
  })

  test('brings givens together that always take the same text, and types nothing that is there already', () => {
    const sheet = sheetOf([
      given('left', '5', { advice: { change: 'freely', step: 1, least: 1, most: 9, with: 'right' } }),
      given('right', '8', { advice: { change: 'freely', step: 1, least: 1, most: 9 } }),
      check('k', 'left >= 8', NO_MARGIN),
    ])
    expect(adviseCheck(sheet, 'k').plans[0]?.changes).toEqual([{ given: 'left', before: '5', text: '8' }])
  })
})

describe('a plan that would break another check', () => {
  test('breaks none with a further change', () => {
    const sheet = sheetOf([
      changeable('a', 10, 1, 40),
      changeable('b', 10, 1, 40, 'by kit'),
      check('k', 'a >= 20', NO_MARGIN),
      check('other', 'a + b <= 25', NO_MARGIN),
    ])
    expect(all(adviseCheck(sheet, 'k'))).toContain('a 20, b 5')
    for (const { breaks } of adviseCheck(sheet, 'k').plans) expect(breaks).toEqual([])
  })

  test('is offered where it gains more than it breaks, which is named', () => {
    const breaking = (gains: number) =>
      adviseCheck(
        sheetOf([
          changeable('a', 10, 1, 40),
          ...Array.from({ length: gains }, (_, i) => check(`k${i}`, 'a >= 20', NO_MARGIN)),
          check('other', 'a <= 15', NO_MARGIN),
        ]),
        'k0',
      )
    expect(breaking(2).plans).toMatchObject([{ passes: ['k0', 'k1'], breaks: ['other'], changes: [{ text: '20' }] }])
    expect(breaking(2)).not.toHaveProperty('none')
    expect(breaking(1).plans).toEqual([])
    expect(breaking(1).none).toMatchObject({ nearest: [{ given: 'a', text: '15' }] })
  })
})

describe('one plan for a whole sheet', () => {
  test('makes all pass that can pass together', () => {
    const sheet = sheetOf([
      changeable('a', 10, 1, 40),
      changeable('b', 10, 1, 40),
      check('k', 'a >= 20', NO_MARGIN),
      check('l', 'b <= 5', NO_MARGIN),
      check('never', 'a >= 100', NO_MARGIN),
    ])
    const { plan, checks } = adviseSheet(sheet)
    expect(typed(plan)).toBe('a 20, b 5')
    expect([...(plan?.passes ?? [])].sort()).toEqual(['k', 'l'])
    expect(checks.get('never')?.plans).toEqual([])
  })

  test('gives the dearest up where they pull apart', () => {
    const apart = (low: number, high: number) =>
      adviseSheet(
        sheetOf([
          changeable('a', 20, 1, 80),
          check('k', `a >= ${high}`, NO_MARGIN),
          check('l', `a <= ${low}`, NO_MARGIN),
        ]),
      )
    expect(typed(apart(19, 40).plan)).toBe('a 19')
    expect(typed(apart(10, 21).plan)).toBe('a 21')
    const three = adviseSheet(
      sheetOf([
        changeable('a', 20, 1, 80),
        changeable('b', 20, 1, 80),
        check('k', 'a >= 22', NO_MARGIN),
        check('l', 'b >= 24', NO_MARGIN),
        check('m', 'a + b <= 20', NO_MARGIN),
      ]),
    )
    expect(typed(three.plan)).toBe('a 22, b 24')
    expect(apart(10, 21).plan?.passes).toEqual(['k'])
  })
})

describe('a plan that changes what something was read under', () => {
  const cells = (lamp: number, more: readonly Cell[] = []): Cell[] => [
    changeable('lamp', lamp, 1, 40),
    given('light', '600', {
      unit: 'lx',
      reading: true,
      fixed: true,
      read_under: ['lamp'],
      measured_under: { text: '600', figures: { lamp: '10' } },
    }),
    check('low', 'lamp <= 5', NO_MARGIN),
    check('lit', 'light >= 500 lx', NO_MARGIN),
    check('bright', 'light >= 400 lx', NO_MARGIN),
    check('dark', 'light <= 100 lx', NO_MARGIN),
    ...more,
  ]

  test('says what to read again, and which checks wait until then: they are neither passed nor broken', () => {
    const { plans } = adviseCheck(sheetOf(cells(10)), 'low')
    expect(plans.map(typed)).toEqual(['lamp 5'])
    expect(plans[0]).toMatchObject({
      passes: ['low'],
      breaks: [],
      again: { readings: ['light'], checks: ['lit', 'bright'] },
    })
  })

  test('is broken all the same where another check then fails', () => {
    const sheet = sheetOf(cells(10, [check('high', 'lamp >= 8', NO_MARGIN)]))
    expect(adviseCheck(sheet, 'low').plans).toEqual([])
  })
})

describe('a target value', () => {
  const sheet = sheetOf([
    changeable('a', 10, 1, 40),
    changeable('b', 10, 1, 40),
    given('name', 'x', { entry: 'text' }),
    given('empty', ''),
    result('sum', 'a + b', { unit: 'mm' }),
    result('total', 'a + b'),
    result('text', 'name'),
    result('waits', 'empty + 1'),
    check('k', 'a <= 25', NO_MARGIN),
  ])

  test('is hit by settings, and nothing else is broken', () => {
    const { plans } = adviseTarget(sheet, 'total', '30')
    expect(plans.map(typed)).toEqual(expect.arrayContaining(['a 20', 'b 20']))
    for (const { gives, breaks } of plans) expect([gives, breaks]).toEqual(['30', []])
    expect(adviseTarget(sheet, 'total', '50').plans.map(typed)).toContain('b 40')
    expect(adviseTarget(sheet, 'total', '50').plans.map(typed)).not.toContain('a 40')
  })

  test('has three plans at most, what marks reach beside what is exact', () => {
    const many = sheetOf([
      changeable('a', 10, 1, 40),
      changeable('b', 10, 1, 40, 'by kit'),
      changeable('c', 10, 1, 40, 'agree'),
      result('total', 'a + b + c'),
    ])
    const { plans } = adviseTarget(many, 'total', '40')
    expect(plans.map(typed)[0]).toBe('a 20')
    expect(plans).toHaveLength(3)
    const fine = (name: string, change: Advice['change']): Given =>
      given(name, '10', { advice: { change, step: 0.01, least: 10, most: 15 } })
    const exact = sheetOf([fine('a', 'freely'), fine('b', 'by kit'), fine('c', 'agree'), result('total', 'a + b + c')])
    expect(adviseTarget(exact, 'total', '34.03').plans.map(typed)).toEqual(['a 14.02', 'b 14.02', 'c 14.02'])
  })

  test('is come near to, as steps allow', () => {
    const { plans } = adviseTarget(sheet, 'total', '30.1')
    expect(plans.map(({ gives }) => gives)).toEqual(plans.map(() => '30'))
    expect(plans.length).toBeGreaterThan(0)
    expect(adviseTarget(sheet, 'total', '1000').plans).toEqual([])
  })

  test('is come near to in ever wider bounds, to 5 % at most', () => {
    const coarse = sheetOf([
      given('a', '10', { advice: { change: 'freely', step: 10, least: 10, most: 90 } }),
      result('total', 'a + 0'),
    ])
    const gives = (text: string) => adviseTarget(coarse, 'total', text).plans.map((plan) => plan.gives)
    expect(gives('50.2')).toEqual(['50'])
    expect(gives('50.9')).toEqual(['50'])
    expect(gives('52.5')).toEqual(['50'])
    expect(gives('53')).toEqual([])
  })

  test('that takes two changes has them, where no single one comes near', () => {
    const narrow = sheetOf([changeable('a', 10, 9, 14), changeable('b', 10, 9, 14), result('total', 'a + b')])
    expect(adviseTarget(narrow, 'total', '28').plans.map(typed)).toEqual(['a 14, b 14'])
  })

  test('is not hit exactly by several changes where one comes near', () => {
    const fine = sheetOf([
      changeable('a', 10, 1, 40),
      given('b', '10', { advice: { change: 'freely', step: 0.1, least: 9.5, most: 10.5 } }),
      result('total', 'a + b'),
    ])
    expect(adviseTarget(fine, 'total', '30.1').plans.map(typed)[0]).toBe('a 20')
  })

  test('that cannot be read is said to be so', () => {
    expect(adviseTarget(sheet, 'total', '30 kg x').error).toBeTruthy()
    expect(adviseTarget(sheet, 'total', '30 kg').error).toBeTruthy()
    expect(adviseTarget(sheet, 'total', '')).toEqual({ plans: [] })
    expect(adviseTarget(sheet, 'text', 'y').error).toMatch(/Only a quantity/)
    expect(adviseTarget(sheet, 'nowhere', '30')).toEqual({ plans: [] })
    expect(adviseTarget(sheet, 'sum', '30')).toEqual({ plans: [] })
  })
})

test('a check passes with room or without; of two with one name the first counts', () => {
  expect((['pass', 'marginal', 'fail', 'waiting', 'error', undefined] as const).map(passes)).toEqual([
    true,
    true,
    false,
    false,
    false,
    false,
  ])
  const sheet = sheetOf([given('a', '1'), check('k', 'a < 2'), { ...check('k', 'a > 2'), id: 'second' }])
  expect([...statesOf(sheet)]).toEqual([['k', 'pass']])
})

describe('one plan for a sheet that is half an example’s', () => {
  const sheet = (from: 'typed' | 'example') =>
    sheetOf([
      changeable('a', 10, 1, 40),
      given('theirs', '20', { from: { kind: 'example', text: '20' } }),
      given('mine', '15', { from: { kind: from, text: '15' } }),
      check('reaches_mine', 'a >= mine', NO_MARGIN),
      check('reaches_theirs', 'a >= theirs', NO_MARGIN),
    ])

  test('is for the checks of the user’s own figures, and changes nothing to suit the example’s', () => {
    expect(adviseSheet(sheet('typed')).plan).toMatchObject({
      changes: [{ given: 'a', text: '15' }],
      passes: ['reaches_mine'],
    })
    expect(all(adviseSheet(sheet('typed')).checks.get('reaches_theirs'))).toContain('a 20')
  })

  test('is for all checks where every one of them rests on the example', () => {
    expect(adviseSheet(sheet('example')).plan).toMatchObject({ passes: ['reaches_mine', 'reaches_theirs'] })
  })
})
