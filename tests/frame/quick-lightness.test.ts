import fc from 'fast-check'
import { expect, it } from 'vitest'
import { quickLightness } from '../../src/frame/colour/quick-lightness.ts'
import { lightness } from '../../src/functions/acceptance/colour-space.ts'

it('the quick L* is that of the definition, for any luminance', () => {
  fc.assert(
    fc.property(fc.double({ min: -0.1, max: 1.5, noNaN: true }), (Y) => {
      expect(Math.abs(quickLightness(Y) - lightness(Y))).toBeLessThan(1e-8)
    }),
    { numRuns: 2000 },
  )
  for (const Y of [0, 0.0088, 0.00886, 0.009, 0.00901, 1])
    expect(Math.abs(quickLightness(Y) - lightness(Y)), String(Y)).toBeLessThan(1e-8)
})
