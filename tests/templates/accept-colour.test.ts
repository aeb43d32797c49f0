import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open } from './open.ts'

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('accept-colour')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

describe('six of the published pairs of Sharma, Wu and Dalal (2005) as patches', () => {
  // Pairs 31, 7, 34, 17, 18 and 1 of their table 1, as in shared/reference/ciede2000-pairs.json.
  const sheet = open('accept-colour', {
    white_aim: '90.8027, -2.0831, 1.4410',
    white_measured: '91.1528, -1.6435, 0.0447',
    grey_aim: '50, 0, 0',
    grey_measured: '50, -1, 2',
    black_aim: '2.0776, 0.0795, -1.1350',
    black_measured: '0.9033, -0.0636, -0.5514',
    red_aim: '50, 2.5, 0',
    red_measured: '73, 25, -18',
    green_aim: '50, 2.5, 0',
    green_measured: '61, -5, 29',
    blue_aim: '50, 2.6772, -79.7751',
    blue_measured: '50, 0, -82.7485',
    mean_limit: '12',
  })

  test.each([
    ['white_off', 1.4441],
    ['grey_off', 2.3669],
    ['black_off', 0.9082],
    ['red_off', 27.1492],
    ['green_off', 22.8977],
    ['blue_off', 2.0425],
  ])('%s is %d', (name, published) => {
    expect(sheet.number(name)).toBeCloseTo(published, 4)
  })

  test('their mean and worst follow', () => {
    expect(sheet.number('mean_off')).toBeCloseTo((1.4441 + 2.3669 + 0.9082 + 27.1492 + 22.8977 + 2.0425) / 6, 4)
    expect(sheet.number('worst_off')).toBeCloseTo(27.1492, 4)
  })
})

test('without the lightness weighting a difference in L* alone is that difference', () => {
  const sheet = open('accept-colour', {
    lightness_weighting: 'no',
    grey_aim: '80, 0, 0',
    grey_measured: '83, 0, 0',
  })
  expect(sheet.number('grey_off')).toBeCloseTo(3, 12)
})

test('with it, the same difference counts less: S_L = 1 + 0.015 (L − 50)²/sqrt(20 + (L − 50)²), L the mean', () => {
  const sheet = open('accept-colour', { grey_aim: '80, 0, 0', grey_measured: '83, 0, 0' })
  const from50 = 31.5 ** 2
  expect(sheet.number('grey_off')).toBeCloseTo(3 / (1 + (0.015 * from50) / Math.sqrt(20 + from50)), 9)
})

test('the studio’s own table grades the mean', () => {
  // The mean at the defaults is 1.05.
  const own = { scheme: 'the studio’s own', own_table: 'gold, silver; colour mean: 1, 1.1' }
  expect(open('accept-colour', own).value('class')).toBe('silver')
  expect(open('accept-colour', { ...own, own_table: 'gold, silver; colour mean: 0.5, 1' }).value('class')).toBe('below')
})

test('a table that cannot be read leaves the class alone in error; the checks still compute', () => {
  const sheet = open('accept-colour', { scheme: 'the studio’s own', own_table: 'fine' })
  expect(sheet.problems.map((one) => one.split(':')[0])).toEqual(['class_mean', 'class_worst', 'class'])
  expect(sheet.problems[0]).toMatch(/^class_mean: “scheme” names no table/)
  expect(sheet.state('mean_passes')).toBe('pass')
  expect(sheet.message('mean_passes')).not.toContain('—')
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['mean_passes', {}, { mean_limit: '1' }],
    ['worst_passes', {}, { red_measured: '60, 54.8, 29.5' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('accept-colour', held), open('accept-colour', failed), check)
  })
})

test('the class is by the edition of the table that is named; without one by the newest', () => {
  const classOf = (scheme: string): unknown => open('accept-colour', { scheme }).value('class')
  expect(classOf('FADGI 2023')).toBe(classOf('FADGI'))
  for (const scheme of ['FADGI 2016', 'ISO 19264-1']) expect(classOf(scheme)).toMatch(/star|^[ABC]$/)
})

test('a patch with too few values says how many it has and which is needed', () => {
  const { sheet } = open('accept-colour', { white_measured: '96' })
  const outcome = sheet.outcome(sheet.named('white_off')?.id ?? '')
  expect(outcome.state === 'error' && outcome.diagnostics[0]?.message).toBe(
    'The list has 1 value, and value 2 of it is needed.',
  )
})
