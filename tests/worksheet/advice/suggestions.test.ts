import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { type Suggestions, suggestionsFor, suggestionsToward } from '../../../src/worksheet/advice/suggestions.ts'
import type { Cell, Sheet } from '../../../src/worksheet/index.ts'
import { open } from '../../templates/open.ts'
import { check, given, result, sheetOf } from '../make.ts'

const words = ({ mends }: Suggestions): string[] => mends.map(({ given, shown }) => `${given} ${shown}`)
const offered = (condition: string, ...cells: Cell[]): string[] =>
  words(suggestionsFor(sheetOf([...cells, check('k', condition)]), 'k'))

/** Every mend, applied, does what it says; each is one step of undo. */
function expectMended(sheet: Sheet, id: string, states: readonly string[]): void {
  const before = sheet.worksheet
  for (const mend of suggestionsFor(sheet, id).mends) {
    sheet.apply(mend.change)
    expect(states, `${mend.given} ${mend.shown}`).toContain(sheet.check(id).state)
    sheet.undo()
    expect(sheet.worksheet).toEqual(before)
  }
}

describe('the mends of a check', () => {
  it('name the given and what to change it to, rounded to the side where it holds', () => {
    expect(
      offered(
        'carriage <= column',
        given('carriage', '1083.2 mm', { fixed: true }),
        given('column', '1060', { unit: 'mm' }),
      ),
    ).toEqual(['column 1100 mm'])
    expect(offered('2 * a <= 111 mm', given('a', '60 mm'))).toEqual(['a 55 mm'])
  })

  it('put the smallest change first', () => {
    expect(offered('a <= b', given('a', '120 mm'), given('b', '100 mm'))).toEqual(['a 100 mm', 'b 120 mm'])
    expect(offered('a * c^4 <= 1 m', given('a', '1.1 m'), given('c', '1'))).toEqual(['c 0.97', 'a 1000 mm'])
  })

  it('offer every root', () => {
    expect(offered('(x - 2) * (x - 3) >= 0', given('x', '2.4'))).toEqual(['x 2', 'x 3'])
  })

  it('find where a condition holds between two that do not', () => {
    expect(offered('abs(x - 7) <= 0.01', given('x', '2'))).toEqual([expect.stringMatching(/^x (6\.99|7)/)])
  })

  it('keep to what is marked on the equipment', () => {
    expect(offered('n >= 9.3', given('n', 'f/8', { unit: 'f/' }))).toEqual(['n f/10'])
    expect(offered('t <= 1/110 s', given('t', '1/60', { unit: '1/ s' }))).toEqual(['t 1/125 s'])
    expect(offered('m >= 1:9.7', given('m', '1:10.5', { unit: '1:' }))).toEqual(['m 1:9.7'])
  })

  it('choose among what the cell says there is', () => {
    const lens = given('focal', '60', { unit: 'mm', options: ['35', '50', '60', '90'] })
    expect(offered('focal <= 55 mm', lens)).toEqual(['focal 50'])
    const film = given('film', 'slow', { entry: 'choice', options: ['slow', 'quick', 'fast'] })
    expect(offered('film != "slow"', film)).toEqual(['film quick', 'film fast'])
    expect(offered('not glossy', given('glossy', 'yes', { entry: 'yes or no' }))).toEqual(['glossy no'])
  })

  it('stay within the range of the given', () => {
    expect(offered('a >= 50 mm', given('a', '30 mm', { unit: 'mm', most: '40 mm' }))).toEqual([])
  })

  it('leave alone what is fixed, and what does not bear on it', () => {
    expect(offered('a >= 50 mm', given('a', '30 mm', { fixed: true }), given('b', '1'))).toEqual([])
  })

  it('that holds, but is close, clear its margin', () => {
    const sheet = sheetOf([given('a', '100 mm'), check('k', 'a <= 105 mm')])
    expect(words(suggestionsFor(sheet, 'k'))).toEqual(['a 94 mm'])
    expectMended(sheet, 'k', ['pass'])
  })

  it('are none where nothing would do, and tell how near one comes', () => {
    const sheet = sheetOf([given('a', '30 mm', { most: '40 mm', unit: 'mm' }), check('k', 'a >= 50 mm')])
    expect(suggestionsFor(sheet, 'k')).toEqual({ mends: [], nearest: { given: 'a', shown: '40 mm', short: '20 %' } })
  })

  it('keep limits and the way a given is typed', () => {
    const sheet = sheetOf([given('a', '60 ± 1', { unit: 'mm' }), check('k', 'a <= 50 mm')])
    expect(suggestionsFor(sheet, 'k').mends[0]?.change).toMatchObject({ cell: { value: '50 ± 1' } })
  })

  it('change nothing by being looked for', () => {
    const sheet = sheetOf([given('a', '60 mm'), check('k', 'a <= 50 mm')])
    const before = sheet.worksheet
    suggestionsFor(sheet, 'k')
    expect(sheet.worksheet).toBe(before)
    expect(sheet.canUndo).toBe(false)
  })
})

test('a mend applied makes the check hold', () => {
  const size = fc.integer({ min: 10, max: 5000 }).map((n) => n / 10)
  const FORMULAS = [
    'a * b / c',
    'a + b - c',
    'a / (b + c)',
    'sqrt(a * b) - c',
    'max(a, b) / c',
    'a * (1 - c / b)^2',
    'floor(a / c) + b',
  ]
  let mended = 0
  fc.assert(
    fc.property(
      fc.tuple(size, size, size),
      fc.constantFrom(...FORMULAS),
      fc.constantFrom('<=', '>='),
      fc.double({ min: 0.2, max: 5, noNaN: true }),
      ([a, b, c], formula, sign, off) => {
        const cells = [
          given('a', `${a}`),
          given('b', `${b}`),
          given('c', `${c}`),
          result('f', formula),
          result('g', 'f * 2'),
        ]
        const now = sheetOf(cells).outcome('g')
        if (now.state !== 'value') return
        const limit = ((now.value as number) * off).toPrecision(4).replace('e+', 'e')
        const sheet = sheetOf([...cells, check('k', `g ${sign} ${limit.startsWith('-') ? `(${limit})` : limit}`)])
        if (sheet.check('k').state !== 'fail') return
        mended += suggestionsFor(sheet, 'k').mends.length
        expectMended(sheet, 'k', ['pass', 'marginal'])
      },
    ),
    { numRuns: 40 },
  )
  expect(mended).toBeGreaterThan(10)
})

describe('from what a result should be', () => {
  const toward = (text: string, ...cells: Cell[]) => suggestionsToward(sheetOf(cells), 'r', text)

  it('givens are found that bring it there', () => {
    const found = toward('30 mm', given('a', '10 mm'), given('b', '2'), result('r', 'a * b', { unit: 'mm' }))
    expect(words(found).sort()).toEqual(['a 15 mm', 'b 3'])
    expect(found.mends[0]?.gives).toBe('30 mm')
  })

  it('several roots are all offered', () => {
    expect(words(toward('2', given('x', '4'), result('r', 'abs(x - 3)')))).toEqual(['x 5', 'x 1'])
  })

  it('a marked scale gives its nearest mark, and says what it comes to', () => {
    const found = toward('100', given('n', 'f/8', { unit: 'f/' }), result('r', 'n^2'))
    expect(found.mends).toMatchObject([{ given: 'n', shown: 'f/10', gives: '100' }])
  })

  it('what cannot be read says why; what cannot be reached says how near it comes', () => {
    expect(toward('5 s', given('a', '10 mm'), result('r', 'a'))).toMatchObject({
      mends: [],
      why: expect.stringMatching(/length/),
    })
    expect(toward('-1', given('x', '4', { least: '0' }), result('r', 'x + 1')).nearest).toMatchObject({ given: 'x' })
  })
})

test('a column too short: a taller one, a shorter lens', () => {
  const { sheet } = open('flat-sheet', { column_reach: '900' })
  const id = sheet.named('column_reaches')?.id as string
  expect(sheet.check(id).state).toBe('fail')
  const found = words(suggestionsFor(sheet, id))
  expect(found.some((one) => one.startsWith('column_reach '))).toBe(true)
  expect(found.some((one) => one.startsWith('focal '))).toBe(true)
  expectMended(sheet, id, ['pass', 'marginal'])
})
