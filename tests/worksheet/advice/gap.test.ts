import { describe, expect, test } from 'vitest'
import type { Condition, Value } from '../../../src/language/index.ts'
import { gapOf } from '../../../src/worksheet/advice/gap.ts'
import type { Node } from '../../../src/worksheet/engine/node.ts'
import { check, given, sheetOf } from '../make.ts'

const NAMES = ['a', 'b', 'n', 'zero'] as const
type Figures = Partial<Record<(typeof NAMES)[number], number>>

/** What decides a failing condition: the left side, the limit, and by how much it is past it. */
function gap(condition: string, figures: Figures): string {
  const { engine } = sheetOf([...NAMES.map((name) => given(name, '1')), check('k', condition)])
  const parts = (engine.node('k') as Node).compiled?.condition() as Condition
  const found = gapOf(parts, (name): Value => figures[name as keyof Figures] ?? 0)
  return found ? `${found.is} against ${found.limit}, off by ${found.off}` : 'none'
}

describe('what a condition fails by', () => {
  test.each<[string, Figures, string]>([
    ['a <= b', { a: 130, b: 100 }, '130 against 100, off by 30'],
    ['a >= b', { a: 70, b: 100 }, '70 against 100, off by 30'],
    ['a < b', { a: 100, b: 100 }, '100 against 100, off by 0'],
    ['not a > b', { a: 130, b: 100 }, '130 against 100, off by 30'],
    ['not a <= b', { a: 70, b: 100 }, '70 against 100, off by 30'],
    ['2 * a <= b + 10', { a: 60, b: 100 }, '120 against 110, off by 10'],
    ['a <= b', { a: 70, b: 100 }, 'none'],
    ['a = b', { a: 130, b: 100 }, 'none'],
    ['a = b', { a: 100, b: 100 }, 'none'],
    ['1 / zero < a', { a: 3 }, 'none'],
  ])('of %s with %o is %s', (condition, figures, expected) => {
    expect(gap(condition, figures)).toBe(expected)
  })

  test.each<[string, Figures, string]>([
    // Of two that both have to hold, the one that is farther off, as a share of its limit.
    ['a <= 100 and b <= 100', { a: 130, b: 150 }, '150 against 100, off by 50'],
    ['a <= 100 and b <= 100', { a: 150, b: 130 }, '150 against 100, off by 50'],
    ['a <= 100 and b <= 10', { a: 130, b: 15 }, '15 against 10, off by 5'],
    ['a <= 100 and b <= 100', { a: 130, b: 80 }, '130 against 100, off by 30'],
    ['a <= 100 and b <= 100', { a: 80, b: 130 }, '130 against 100, off by 30'],
    ['a <= 100 and b <= 100', { a: 80, b: 80 }, 'none'],
    ['a <= 100 and b <= 100', { a: 130, b: 130 }, '130 against 100, off by 30'],
    // Of two that would each do, the nearer one.
    ['a <= 100 or b <= 100', { a: 130, b: 150 }, '130 against 100, off by 30'],
    ['a <= 100 or b <= 100', { a: 150, b: 130 }, '130 against 100, off by 30'],
    ['a <= 100 or b <= 100', { a: 150, b: 80 }, 'none'],
    ['a <= 100 or b <= 100', { a: 80, b: 150 }, 'none'],
    ['not (a > 100 or b > 100)', { a: 130, b: 150 }, '150 against 100, off by 50'],
    // One that has no figure: of two that are both needed there is none, of two that would each do the other.
    ['a = 1 and b <= 100', { a: 2, b: 150 }, 'none'],
    ['b <= 100 and a = 1', { a: 2, b: 150 }, 'none'],
    ['a = 2 and b <= 100', { a: 2, b: 150 }, '150 against 100, off by 50'],
    ['b <= 100 and a = 2', { a: 2, b: 150 }, '150 against 100, off by 50'],
    ['a = 1 or b <= 100', { a: 2, b: 150 }, '150 against 100, off by 50'],
    ['b <= 100 or a = 1', { a: 2, b: 150 }, '150 against 100, off by 50'],
    ['a = 1 or n = 1', { a: 2, n: 2 }, 'none'],
    // Of a limit of zero the figure itself is what it is a share of: all of it.
    ['a <= 0 and b <= 100', { a: 1, b: 150 }, '1 against 0, off by 1'],
    ['a <= 0 and b <= 100', { a: 1, b: 250 }, '250 against 100, off by 150'],
    ['a > 0 or b <= 100', { b: 150 }, '0 against 0, off by 0'],
    // Where the first decides, the second need not compute.
    ['n = 0 or 1 / n < 3', { n: 0 }, 'none'],
    ['a = 1 and 1 / zero < 3', { a: 2 }, 'none'],
    ['a <= 100 and 1 / zero < 3', { a: 130 }, 'none'],
  ])('in two parts, of %s with %o, is %s', (condition, figures, expected) => {
    expect(gap(condition, figures)).toBe(expected)
  })

  test('hides no error of ours', () => {
    const { engine } = sheetOf([given('a', '1'), check('k', 'a <= 100')])
    const parts = (engine.node('k') as Node).compiled?.condition() as Condition
    const broken = (): never => {
      throw new TypeError('broken')
    }
    expect(() => gapOf(parts, broken)).toThrow('broken')
  })
})
