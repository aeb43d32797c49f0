import { describe, expect, test } from 'vitest'
import type { Cell } from '../../../src/worksheet/index.ts'
import { type StudiedFigure, type Study, study } from '../../../src/worksheet/simulation/study.ts'
import { check, given, result, sheetOf } from '../make.ts'

const studied = (
  cells: readonly Cell[],
  names: readonly string[],
  more: { tries?: number; longest?: number } = {},
): Study => study(sheetOf(cells).engine, { tries: 50_000, seed: 1, names, ...more })
const figure = ({ figures }: Study, name: string): StudiedFigure =>
  figures.get(name) ?? expect.unreachable(`${name} has no figure`)

describe('a study', () => {
  test('ranks what contributes by the variance it has alone: of a sum, the squares of the limits', () => {
    const { influences } = figure(
      studied([given('a', '5 ± 3'), given('b', '7 ± 1'), result('sum', 'a + b')], ['sum']),
      'sum',
    )
    expect(influences.map(({ name }) => name)).toEqual(['a', 'b'])
    expect(influences[0]?.share).toBeCloseTo(0.9, 2)
    expect(influences[1]?.share).toBeCloseTo(0.1, 2)
  })

  // JCGM 101:2008, 9.4: a comparison loss X1² + X2² − (X1² + X2²)² about zero, where first-order uncertainties vanish.
  test('finds what contributes where the slope at the value is zero', () => {
    const { influences, sd } = figure(
      studied([given('a', '0 ± 3'), given('b', '0 ± 1'), result('squares', 'a^2 + b^2')], ['squares']),
      'squares',
    )
    // The variance of x² for x rectangular within ±w is 4 w⁴ / 45.
    expect(sd).toBeCloseTo(Math.sqrt((4 * 82) / 45), 1)
    expect(influences[0]?.share).toBeCloseTo(81 / 82, 2)
  })

  test('counts every try in a histogram, evenly for a rectangular quantity', () => {
    const { histogram } = figure(studied([given('a', '10 ± 1'), result('twice', '2 * a')], ['twice']), 'twice')
    const { from, to, counts } = histogram ?? expect.unreachable()
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(50_000)
    // Four units in forty classes, and at most one more class at either end for what comes late.
    expect(Math.abs(from - 18)).toBeLessThan(0.11)
    expect(Math.abs(to - 22)).toBeLessThan(0.11)
    const middle = counts.slice(2, -2)
    for (const count of middle) expect(Math.abs(count - 1250)).toBeLessThan(6 * Math.sqrt(1250))
  })

  test('counts a few tries, and a figure that is always the same, as well', () => {
    const few = figure(studied([given('a', '10 ± 1'), result('same', 'a')], ['same'], { tries: 100 }), 'same')
    expect(few.histogram?.counts.reduce((sum, count) => sum + count, 0)).toBe(100)
    const still = figure(studied([given('a', '10 ± 1'), result('one', 'a * 0 + 1')], ['one']), 'one')
    expect(still.sd).toBe(0)
    expect(still.influences).toEqual([])
  })

  test('ends early with the tries made until then, and says how many', () => {
    const early = studied([given('a', '10 ± 1'), result('same', 'a'), check('low', 'a < 10')], ['same', 'low'], {
      tries: 1_000_000,
      longest: 0,
    })
    expect(early.tries).toBe(1024)
    expect(early.passes.get('low')).toBeCloseTo(0.5, 1)
  })

  test('reports its progress up to the whole', () => {
    const shares: number[] = []
    study(
      sheetOf([given('a', '5 ± 3'), given('b', '7 ± 1'), result('sum', 'a + b')]).engine,
      { tries: 5000, seed: 1, names: ['sum'] },
      (share) => shares.push(share),
    )
    expect(shares.every((share, i) => i === 0 || share > (shares[i - 1] as number))).toBe(true)
    expect(shares.at(-1)).toBe(1)
  })

  test('computes only what its figures need', () => {
    const { figures } = studied([given('a', '5 ± 3'), result('one', 'a + 1'), result('other', 'a + 2')], ['one'])
    expect([...figures.keys()]).toEqual(['one'])
  })
})
