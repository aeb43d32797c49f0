import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bisect } from '../../src/units/index.ts'

const within = fc.double({ min: -1e6, max: 1e6, noNaN: true, noDefaultInfinity: true })

describe('halving', () => {
  it('ends with the threshold between the two sides, as near as doubles are', () => {
    fc.assert(
      fc.property(within, within, within, (edge, one, other) => {
        const [from, to] = [Math.min(one, other, edge) - 1, Math.max(one, other, edge) + 1]
        const { failing, passing } = bisect((x) => x >= edge, { failing: from, passing: to })
        expect(failing).toBeLessThan(edge)
        expect(passing).toBeGreaterThanOrEqual(edge)
        expect(passing - failing).toBeLessThanOrEqual(Math.max(4 * Number.EPSILON * Math.abs(edge), 1e-50))
      }),
      { seed: 18 },
    )
  })

  it('takes the sides in either order', () => {
    const { failing, passing } = bisect((x) => x <= 2, { failing: 10, passing: 0 })
    expect(passing).toBe(2)
    expect(failing).toBeGreaterThan(2)
  })

  it('stops as near as asked, or after a number of halvings', () => {
    const near = bisect((x) => x >= 1, { failing: 0, passing: 8 }, { tolerance: ({ passing }) => 0.3 * passing })
    expect(near.passing - near.failing).toBeLessThanOrEqual(0.3 * near.passing)
    expect(near.passing - near.failing).toBeGreaterThan(0.1 * near.passing)
    const tries: number[] = []
    bisect((x) => tries.push(x) > 0, { failing: 0, passing: 1 }, { halvings: 5 })
    expect(tries).toEqual([0.5, 0.25, 0.125, 0.0625, 0.03125])
  })
})
