import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { barLength, fitScale, PX_PER_MM } from '../../../src/drawings/canvas/scale.ts'

describe('the scale', () => {
  test('fits the world into the view', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 200, noNaN: true }),
        fc.double({ min: 1e-4, max: 200, noNaN: true }),
        (width, height) => {
          const { pxPerMetre, ratio } = fitScale({ width, height }, { width: 300, height: 400 })
          expect(width * pxPerMetre).toBeLessThanOrEqual(300.001)
          expect(height * pxPerMetre).toBeLessThanOrEqual(400.001)
          expect(ratio).toBeGreaterThanOrEqual(1)
        },
      ),
    )
  })

  test('is the largest that fits', () => {
    expect(fitScale({ width: 1.8, height: 0.1 }, { width: 230, height: 400 }).name).toBe('1:30')
    expect(fitScale({ width: 1.8, height: 0.1 }, { width: 226, height: 400 }).name).toBe('1:40')
  })

  test('is never larger than life', () => {
    expect(fitScale({ width: 0.001, height: 0.001 }, { width: 300, height: 300 }).name).toBe('1:1')
  })

  test('says how a figure of its size measures on paper', () => {
    const scale = fitScale({ width: 1, height: 1 }, { width: 400, height: 400 })
    expect(scale.pxPerMetre).toBeCloseTo((PX_PER_MM * 1000) / scale.ratio, 9)
  })

  test('carries a bar of a round length', () => {
    const scale = fitScale({ width: 1.8, height: 0.1 }, { width: 230, height: 400 })
    expect(barLength(scale, 90, 0.001)).toBeCloseTo(0.5, 9)
    expect(barLength(scale, 90, 0.0254)).toBeCloseTo(20 * 0.0254, 9)
  })
})
