import { describe, expect, it, test } from 'vitest'
import { adviseCheck, adviseSheet } from '../../../src/worksheet/advice/advise.ts'
import { variablesOf } from '../../../src/worksheet/advice/choices.ts'
import { reasonForNone } from '../../../src/worksheet/advice/no-plan.ts'
import type { NoPlan } from '../../../src/worksheet/advice/plan.ts'
import { noPlanText } from '../../../src/worksheet/advice/plan-text.ts'
import type { Cell, Given } from '../../../src/worksheet/index.ts'
import type { FullSheet } from '../../../src/worksheet/renaming/full-sheet.ts'
import { check, given, result, sheetOf } from '../make.ts'

const reasonOf = (sheet: FullSheet, name: string): string => {
  const none = adviseSheet(sheet).checks.get(name)?.none
  return noPlanText(sheet, none as NoPlan)
}

describe('a check without a plan', () => {
  it('says how near it comes in its own unit, and which equipment would do', () => {
    const sheet = sheetOf([
      given('column_reach', '1200', {
        unit: 'mm',
        label: 'Column',
        fixed: true,
        advice: { change: 'never', otherwise: 'a column that reaches {}' },
      }),
      given('face', '143', { unit: 'mm', label: 'Face', fixed: true }),
      result('carriage', '1200 mm + face', { unit: 'mm' }),
      check('reaches', 'carriage <= column_reach', { margin: '0 %' }),
    ])
    expect(reasonOf(sheet, 'reaches')).toBe(
      'No setting that a suggestion may change has an effect on this check. It is 143 mm over its limit of 1200 mm. It would pass with a column that reaches 1400 mm.',
    )
  })

  it('names what it cannot get past where nothing may be decided', () => {
    const sheet = sheetOf([
      given('opens_safely', '110', { unit: '°', label: 'Opening allowed by the custodian', fixed: true }),
      given('opened_to', '130', { unit: '°', label: 'Opened to', fixed: true }),
      check('gently', 'opened_to <= opens_safely'),
    ])
    expect(reasonOf(sheet, 'gently')).toBe(
      'No setting that a suggestion may change has an effect on this check. It is 20° over its limit of 110°. What limits it: Opened to 130°; Opening allowed by the custodian 110°.',
    )
  })

  it.each([true, undefined])(
    'is left to its own message where it judges an answer or a count; a reading: %s',
    (reading) => {
      const sheet = sheetOf([
        given('rights', 'asked', { entry: 'choice', options: ['asked', 'permitted'], fixed: true, reading }),
        check('clear', 'rights = "permitted"'),
      ])
      expect(adviseSheet(sheet).checks.get('clear')).toEqual({ plans: [] })
      expect(adviseCheck(sheet, 'clear')).toEqual({ plans: [] })
      const counted = sheetOf([
        given('due', '95', { fixed: true }),
        given('counted', '94', { fixed: true, reading: true }),
        check('agree', 'counted = due'),
      ])
      expect(adviseCheck(counted, 'agree')).toEqual({ plans: [] })
    },
  )

  it('shows marks and ratios themselves, not a difference of them', () => {
    const sheet = sheetOf([
      given('widest', 'f/16', { unit: 'f/', label: 'Smallest aperture', fixed: true }),
      given('set', 'f/22', { unit: 'f/', label: 'Aperture', fixed: true }),
      check('on_lens', 'set <= widest'),
    ])
    expect(reasonOf(sheet, 'on_lens')).toContain('It is f/22, and its limit is f/16.')
  })

  it('of a limit of zero comes nearer step by step, and says what is left', () => {
    const sheet = sheetOf([
      given('out', '300', {
        unit: 'mm',
        label: 'Lamps',
        advice: { change: 'freely', step: 10, least: 100, most: 500 },
      }),
      given('zone', '520', { unit: 'mm', label: 'Mirror zone', fixed: true }),
      given('glossy', 'yes', { entry: 'yes or no', label: 'Glossy', fixed: true }),
      result('clearance', 'out - zone', { unit: 'mm' }),
      check('clear', 'not glossy or clearance > 0 mm'),
    ])
    expect(reasonOf(sheet, 'clear')).toBe(
      'Not within reach. The nearest is 20 mm short of the 0 mm required: increase Lamps from 300 mm to 500 mm. What limits it: Glossy yes; Mirror zone 520 mm.',
    )
  })

  it('of two quantities that have to be both within their limits gives the one that is farther off', () => {
    const sheet = sheetOf([
      given('board', '100 x 80', { entry: 'size', unit: 'mm', label: 'Board', fixed: true }),
      given('original', '110 x 120', { entry: 'size', unit: 'mm', label: 'Original', fixed: true }),
      check('fits', 'original.width <= board.width and original.height <= board.height'),
      check('fits_turned', 'original.width <= board.width or original.height <= board.height'),
    ])
    expect(reasonOf(sheet, 'fits')).toContain('It is 40 mm over its limit of 80 mm.')
    expect(reasonOf(sheet, 'fits_turned')).toContain('It is 10 mm over its limit of 100 mm.')
  })
})

/** A sheet whose check `k` fails, and why nothing makes it pass. */
const noneOf = (condition: string, ...cells: readonly Cell[]): NoPlan => {
  const { none } = adviseCheck(sheetOf([...cells, check('k', condition, { margin: '0 %' })]), 'k')
  if (!none) throw new Error('There is a plan.')
  return none
}
const free = (name: string, now: number, least: number, most: number, more: Partial<Given> = {}): Given =>
  given(name, String(now), { advice: { change: 'freely', step: 1, least, most }, ...more })
const fact = (name: string, value: string, more: Partial<Given> = {}): Given =>
  given(name, value, { fixed: true, ...more })

test('a search that ended early has not shown that nothing is within reach', () => {
  const sheet = sheetOf([free('a', 10, 1, 20), check('k', 'a >= 100')])
  const kind = (isExhausted: boolean) =>
    reasonForNone(sheet, 'k', variablesOf(sheet, []), { changes: [], isExhausted }).kind
  expect([kind(true), kind(false)]).toEqual(['not found', 'out of reach'])
})

describe('by how much a check fails', () => {
  test.each<[string, readonly Cell[], NoPlan['short']]>([
    ['a <= 100 mm', [fact('a', '130', { unit: 'mm' })], { is: '130 mm', limit: '100 mm', off: '30 mm', isOver: true }],
    ['a >= 100 mm', [fact('a', '70', { unit: 'mm' })], { is: '70 mm', limit: '100 mm', off: '30 mm', isOver: false }],
    ['10 cm >= a', [fact('a', '130', { unit: 'mm' })], { is: '100 mm', limit: '130 mm', off: '30 mm', isOver: false }],
    [
      '2 * a <= b',
      [fact('a', '13', { unit: 'cm' }), fact('b', '100', { unit: 'mm' })],
      { is: '260 mm', limit: '100 mm', off: '160 mm', isOver: true },
    ],
    [
      'a + b <= 10 cm',
      [fact('a', '13', { unit: 'cm' }), fact('b', '1', { unit: 'm' })],
      { is: '1130 mm', limit: '100 mm', off: '1030 mm', isOver: true },
    ],
    [
      'a < b',
      [fact('a', '130', { unit: 'mm' }), fact('b', '13', { unit: 'cm' })],
      { is: '130 mm', limit: '130 mm', isOver: false },
    ],
    // Of marks, ratios, levels and temperatures a difference says nothing.
    ['a <= f/8', [fact('a', 'f/11', { unit: 'f/' })], { is: 'f/11', limit: 'f/8', isOver: true }],
    [
      'max(a, b) <= f/8',
      [fact('a', 'f/11', { unit: 'f/' }), fact('b', 'f/4', { unit: 'f/' })],
      { is: 'f/11', limit: 'f/8', isOver: true },
    ],
    [
      '2 * a <= b',
      [fact('a', '1:5', { unit: '1:' }), fact('b', '1:10', { unit: '1:' })],
      { is: '1:2.5', limit: '1:10', isOver: true },
    ],
    ['a <= 1:10', [fact('a', '1:5', { unit: '1:' })], { is: '1:5', limit: '1:10', isOver: true }],
    ['a <= 10 EV', [fact('a', '12', { unit: 'EV' })], { is: '12 EV', limit: '10 EV', isOver: true }],
    [
      'a <= b',
      [fact('a', '25', { unit: '°C' }), fact('b', '20', { unit: '°C' })],
      { is: '25 °C', limit: '20 °C', isOver: true },
    ],
    ['a = 100 mm', [fact('a', '130', { unit: 'mm' })], undefined],
    [
      '30 cm >= a.width',
      [fact('a', '40 x 20', { entry: 'size', unit: 'cm' })],
      { is: '300 mm', limit: '400 mm', off: '100 mm', isOver: false },
    ],
    ['3 >= a', [fact('a', '400', { unit: '%' })], { is: '300 %', limit: '400 %', off: '100 %', isOver: false }],
  ])('%s is shown in the unit of its cells', (condition, cells, short) => {
    expect(noneOf(condition, ...cells).short).toEqual(short)
  })

  test('is said of the nearest, where something may be changed', () => {
    const none = noneOf('a <= 100', free('a', 130, 110, 200))
    expect(none).toMatchObject({
      kind: 'out of reach',
      short: { is: '110', limit: '100', off: '10' },
      nearest: [{ given: 'a', before: '130', text: '110' }],
      against: undefined,
      againstShort: undefined,
    })
  })

  test('is said of the check that would then fail as well', () => {
    const a = given('a', '10', { label: 'Height', advice: { change: 'freely', marks: [10, 90] } })
    const none = noneOf(
      'a >= 100',
      a,
      check('fails', 'a >= 1000', { margin: '0 %' }),
      check('low', 'a <= 80', { margin: '0 %' }),
      check('lower', 'a <= 70', { margin: '0 %' }),
    )
    expect(none).toMatchObject({
      kind: 'out of reach',
      nearest: [{ given: 'a', text: '90' }],
      short: { is: '90', limit: '100', off: '10', isOver: false },
      against: 'low',
      againstShort: { is: '90', limit: '80', off: '10', isOver: true },
    })
    // One that passes by a little passes all the same.
    expect(noneOf('a >= 100', a, check('close', 'a <= 10.5'))).toMatchObject({ against: undefined, nearest: [] })
    const marginal = noneOf('a >= 100', a, check('close', 'a - 40 <= 45'), check('closer', '85 >= a'))
    expect(marginal.against).toBe('close')
    const failing = noneOf('a >= 100', a, check('fails', 'a <= 5', { margin: '0 %' }))
    expect(failing).toMatchObject({ against: undefined, againstShort: undefined, nearest: [{ text: '90' }] })
  })
})

describe('what a check cannot get past', () => {
  test('is the facts it depends on, those nearest to its condition first, three at most', () => {
    const names = (none: NoPlan) => none.limits.map(({ name, is }) => `${name} ${is}`)
    const facts = ['p', 'q', 'r', 's'].map((name, at) => fact(name, `${at + 1}`, { unit: 'mm' }))
    expect(names(noneOf('far + s >= 1 m', ...facts, result('near', 'p + q'), result('far', 'near + r')))).toEqual([
      's 4 mm',
      'r 3 mm',
      'p 1 mm',
    ])
    expect(names(noneOf('far >= 1 m', ...facts, result('far', 'p + p')))).toEqual(['p 1 mm'])
    const both = [result('near', 'p + 1 mm'), result('far', 'p + 2 mm')]
    expect(names(noneOf('near + far >= 1 m', ...facts, ...both))).toEqual(['p 1 mm'])
  })

  test('is not what may be changed, unless there is nothing else', () => {
    const names = (none: NoPlan) => none.limits.map(({ name }) => name)
    expect(names(noneOf('a + p >= 100', free('a', 10, 1, 40), fact('p', '1')))).toEqual(['p'])
    expect(names(noneOf('a >= 100', free('a', 10, 1, 40)))).toEqual(['a'])
  })

  test('is named without its value where that is long, or left out where it has none', () => {
    const none = noneOf(
      '(glazed or empty > 1 mm) and sum(tubes) + page.width + placed.width >= 10 m',
      fact('tubes', '10, 20', { entry: 'list', unit: 'mm' }),
      fact('page', '300 x 200', { entry: 'size', unit: 'mm' }),
      result('placed', 'size(1 mm, 2 mm)'),
      fact('glazed', 'yes', { entry: 'yes or no' }),
      fact('empty', '', { unit: 'mm' }),
    )
    expect(none.limits).toEqual([
      { name: 'glazed', is: 'yes' },
      { name: 'tubes', is: '' },
      { name: 'page', is: '300 × 200 mm' },
    ])
  })
})

describe('a check of what was read', () => {
  const read = (more: Partial<Given> = {}) =>
    given('light', '600', { unit: 'lx', reading: true, fixed: true, read_under: ['lamp'], ...more })

  test('names the settings behind the reading, and what it read', () => {
    const lamp = free('lamp', 500, 100, 900, { unit: 'mm', label: 'Lamps' })
    const none = noneOf('light >= 900 lx', lamp, read())
    expect(none).toMatchObject({ kind: 'readings', settings: ['lamp'], nearest: [], against: undefined })
    expect(none.limits).toEqual([{ name: 'light', is: '600 lx' }])
    expect(none.short).toEqual({ is: '600 lx', limit: '900 lx', off: '300 lx', isOver: false })
    expect(none.decisions).toEqual([])
  })

  test('names those behind the formula of what was measured, however far', () => {
    const cells = [
      free('lamp', 500, 100, 900, { unit: 'mm' }),
      free('beside', 500, 100, 900, { unit: 'mm' }),
      given('agreed', '5', { advice: { change: 'agree', step: 1, least: 1, most: 9 } }),
      result('out', 'lamp + 1 mm'),
      result('spread', 'out / 1 m + agreed', { measured: '7' }),
    ]
    const none = noneOf('spread <= most', ...cells, fact('most', '5'))
    expect(none).toMatchObject({ kind: 'readings', settings: ['lamp'] })
    // What it judges by is no reading.
    expect(none.limits).toEqual([{ name: 'spread', is: '7' }])
  })

  test('ends with readings that are taken under each other', () => {
    const lamp = free('lamp', 500, 100, 900, { unit: 'mm' })
    const meter = given('meter', '1', { reading: true, fixed: true, read_under: ['light'] })
    const none = noneOf('light >= 900 lx', lamp, meter, read({ read_under: ['meter', 'lamp'] }))
    expect(none.settings).toEqual(['lamp'])
  })

  test('is like any other where something it depends on may be set besides', () => {
    const none = noneOf('light * gain >= 9000 lx', free('gain', 1, 1, 2), read())
    expect(none).toMatchObject({ kind: 'out of reach', settings: [] })
    // Not where that would have to be agreed on.
    const agreed = given('gain', '1', { advice: { change: 'agree', step: 1, least: 1, most: 2 } })
    expect(noneOf('light * gain >= 9000 lx', agreed, read()).kind).toBe('readings')
  })

  test('counts what always takes the same text as set with the other', () => {
    const lamps = [
      given('left', '1', { advice: { change: 'freely', step: 1, least: 1, most: 2, with: 'right' } }),
      given('right', '1', { advice: { change: 'freely', step: 1, least: 1, most: 2 } }),
    ]
    expect(noneOf('light * right >= 9000 lx', ...lamps, read({ read_under: [] })).kind).toBe('out of reach')
    expect(noneOf('right >= 9', ...lamps).kind).toBe('out of reach')
    expect(noneOf('light >= 900 lx', ...lamps, read({ read_under: ['right'] })).settings).toEqual(['left'])
  })

  test('is a fact where the sheet does not say that it is a reading', () => {
    expect(noneOf('light >= 900 lx', fact('light', '600', { unit: 'lx' })).kind).toBe('fixed')
  })
})

describe('what somebody may decide', () => {
  const decided = (none: NoPlan) => none.decisions.map(({ given: name, text }) => `${name} ${text}`)
  const column = (value: string) =>
    fact('column', value, { unit: 'mm', advice: { change: 'never', otherwise: 'a column that reaches {}' } })
  const agreed = (name: string, value: string, most: number) =>
    given(name, value, { unit: 'mm', advice: { change: 'agree', step: 1, least: 1, most } })

  test('is equipment, up to eight times what it is', () => {
    expect(decided(noneOf('column >= 5 m', column('1000')))).toEqual(['column 5000'])
    expect(decided(noneOf('column >= 9 m', column('1000')))).toEqual([])
    expect(decided(noneOf('column <= 20 cm', column('1000')))).toEqual(['column 200'])
    expect(decided(noneOf('table >= 5 m', fact('table', '1000', { unit: 'mm' })))).toEqual([])
  })

  test('is what was agreed on, beyond its usual range, up to three times', () => {
    expect(decided(noneOf('a >= 25 mm', agreed('a', '10', 12)))).toEqual(['a 25'])
    expect(decided(noneOf('a >= 35 mm', agreed('a', '10', 12)))).toEqual([])
  })

  test('is the nearest three, the cheapest first', () => {
    const names = ['p', 'q', 'r', 's']
    const cells = names.map((name, at) => agreed(name, `${10 * (at + 1)}`, 10 * (at + 1)))
    const found = noneOf('p + q + r + s >= 104 mm', ...cells)
    expect(decided(found)).toHaveLength(3)
    expect(decided(found)[0]).toBe('s 44')
  })

  test('may not break what passes', () => {
    const cells = [column('1000'), check('other', 'column <= 2 m', { margin: '0 %' })]
    expect(decided(noneOf('column >= 3 m', ...cells))).toEqual([])
    expect(decided(noneOf('column >= 1900 mm', ...cells))).toEqual(['column 1900'])
  })

  test('comes on top of the nearest changes where it would not do alone', () => {
    const cells = [free('a', 10, 1, 20, { unit: 'mm' }), column('10')]
    expect(decided(noneOf('a + column >= 95 mm', ...cells))).toEqual(['column 75'])
    expect(decided(noneOf('a + column >= 88 mm', ...cells))).toEqual(['column 78'])
    expect(decided(noneOf('a + column >= 110 mm', ...cells))).toEqual([])
  })

  test('is a larger size, both its sides in their proportion', () => {
    const board = fact('board', '400 x 200', {
      entry: 'size',
      unit: 'mm',
      advice: { change: 'never', otherwise: 'a board of {}' },
    })
    const [one] = noneOf('board.width >= 500 mm', board).decisions
    expect(one).toMatchObject({ given: 'board', before: '400 x 200' })
    const [width, height] = (one?.text.match(/\d+/g) ?? []).map(Number) as [number, number]
    expect(width / height).toBeCloseTo(2, 1)
    expect(width).toBeGreaterThanOrEqual(500)
    expect(width).toBeLessThan(600)
    // Eight times at most.
    expect(noneOf('board.width >= 3199 mm', board).decisions).toHaveLength(1)
    expect(noneOf('board.width >= 3300 mm', board).decisions).toEqual([])
    expect(noneOf('board.width <= 300 mm', board).decisions).toEqual([])
  })

  test('is not a reading, nor what was measured', () => {
    const reading = given('light', '600', { unit: 'lx', reading: true, advice: { change: 'agree', within: 2 } })
    expect(decided(noneOf('light >= 2000 lx', reading))).toEqual([])
  })

  test('takes the other lamp with it', () => {
    const lamps = [
      given('left', '10', { unit: 'mm', advice: { change: 'agree', step: 1, least: 1, most: 12, with: 'right' } }),
      given('right', '10', { unit: 'mm', advice: { change: 'agree', step: 1, least: 1, most: 12 } }),
    ]
    expect(decided(noneOf('left + right >= 50 mm', ...lamps))).toEqual(['left 25'])
  })
})
