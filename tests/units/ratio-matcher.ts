import { expect } from 'vitest'

declare module 'vitest' {
  interface Matchers<T> {
    /** Equal to within a part of the expected value. */
    toBeCloseToRatio: (expected: number, within: number) => T
  }
}

expect.extend({
  toBeCloseToRatio(found: number, expected: number, within: number) {
    return {
      pass: Math.abs(found - expected) <= within * Math.abs(expected),
      message: () => `${found} is not within ${within} of ${expected}: off by ${found / expected - 1}`,
    }
  },
})
