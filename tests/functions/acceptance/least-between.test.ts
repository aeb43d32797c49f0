import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leastBetween } from '../../../src/functions/acceptance/least-between.ts'

describe('golden section', () => {
  it('finds the least of a parabola', () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (at) => {
        expect(Math.abs(leastBetween(-60, 60, (x) => (x - at) ** 2, 1e-5) - at)).toBeLessThan(1e-5)
      }),
      { seed: 18 },
    )
  })

  it('ends at an end where the function only rises or falls, even without a width', () => {
    expect(leastBetween(0, 1, (x) => x, 1e-9)).toBeLessThan(1e-8)
    expect(leastBetween(0, 1, (x) => -x, 0)).toBeGreaterThan(1 - 1e-8)
  })
})
