import { afterEach, expect, test, vi } from 'vitest'
import { linearAxis } from '../../src/drawings/plots/axes.ts'
import { sampled } from '../../src/drawings/range/sampled.ts'
import type { RangeTable } from '../../src/worksheet/analysis/followed.ts'

afterEach(() => vi.restoreAllMocks())

/** A range from 0 to 10 over a result that oscillates, where each figure takes so many ms to compute. */
function table(ms: number): { table: RangeTable; computed: () => number } {
  let clock = 0
  let computed = 0
  vi.spyOn(performance, 'now').mockImplementation(() => clock)
  const figures = [0, 5, 10]
  const at = (figure: number) => {
    clock += ms
    computed++
    return [Math.sin(20 * figure)]
  }
  const followed = [{ figures: figures.map((one) => Math.sin(20 * one)), present: undefined, unit: undefined }]
  return { table: { figures, followed, at } as unknown as RangeTable, computed: () => computed }
}

const x = linearAxis([0, 10], [0, 400], '')

test('a result that is quick to compute is drawn at many places, closer where its curve bends', () => {
  const { table: quick, computed } = table(0)
  expect(sampled(quick, x).length).toBe(computed() + 3)
  expect(computed()).toBeGreaterThan(500)
})

test.each([2, 7, 40, 1_000])(
  'one that takes %i ms at each place is drawn within a moment, over the whole range',
  (ms) => {
    const { table: slow, computed } = table(ms)
    const places = sampled(slow, x).map(({ figure }) => figure)
    expect(computed() * ms).toBeLessThanOrEqual(Math.max(250 + ms, 2 * ms))
    expect([places[0], places.at(-1)]).toEqual([0, 10])
    const gaps = places.slice(1).map((figure, at) => figure - (places[at] as number))
    expect(Math.max(...gaps)).toBeLessThanOrEqual(5)
  },
)
