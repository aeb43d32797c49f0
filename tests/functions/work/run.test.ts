import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planTiles, tilesAlong } from '../../../src/functions/camera/tile-plan.ts'
import { advice, call, formula, MM } from '../call.ts'

describe('tiles', () => {
  it('cover the original with the overlap asked, and one fewer would not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        (span, tile, share) => {
          const overlap = tile * share
          const n = tilesAlong(span, tile, overlap)
          const reach = (count: number) => count * (tile - overlap) + overlap
          expect(reach(n)).toBeGreaterThanOrEqual(span * (1 - 1e-8))
          if (n > 1) expect(reach(n - 1)).toBeLessThan(span)
        },
      ),
      { seed: 5 },
    )
  })

  it('are not one more for a rounding error', () => {
    expect(tilesAlong(2000 * MM, 900 * MM, 800 * MM)).toBe(12)
    expect(tilesAlong(0.1 + 0.2, 0.3, 0.1)).toBe(1)
  })

  it('lie the way round that needs fewer', () => {
    expect(planTiles(1, 2, 0.9, 0.6, 0.1, true)).toEqual({ across: 2, down: 3, count: 6, turned: true })
    expect(planTiles(1, 2, 0.9, 0.6, 0.1, false)).toEqual({ across: 2, down: 4, count: 8, turned: false })
    expect(planTiles(0.5, 0.5, 0.9, 0.6, 0.1, true).turned).toBe(false)
  })
})

describe('data', () => {
  it('of a stitched picture reaches classic TIFF’s end at about 1.7 m square', () => {
    const limit = 2 ** 32 * 8
    const at = (side: number) => call('stitched_size', side, side, 400 / 0.0254, 3, 16)
    expect(at(1.69)).toBeLessThan(limit)
    expect(at(1.7)).toBeGreaterThan(limit)
    expect(advice('stitched_size', 1.7, 1.7, 400 / 0.0254, 3, 16)).toContain('4 GiB')
    expect(advice('stitched_size', 1.6, 1.6, 400 / 0.0254, 3, 16)).toBeUndefined()
  })

  it('takes bits as a number or as data, and nothing else', () => {
    expect(formula('frame_data(10 px, 10 px, 3, 16)')).toBe(4800)
    expect(formula('frame_data(10 px, 10 px, 3, 2 B)')).toBe(4800)
    expect(() => formula('frame_data(10 px, 10 px, 3, 16 mm)')).toThrow('“bits”')
  })

  it('fills a card and a run', () => {
    expect(call('card_frames', 8e9, 8e8)).toBe(10)
    expect(call('card_frames', 8e9, 8.1e8)).toBe(9)
    expect(call('run_data', 10, 8e8, 2)).toBe(1.6e10)
  })
})

describe('time and money', () => {
  it('add up', () => {
    expect(call('run_time', 100, 30, 3, 600, 1800)).toBe(3000 + 1800 + 1800)
    expect(formula('cost_total({cost_line(3, 1.5, "EUR"), cost_time(30 min, 40, "EUR")}).amount')).toBeCloseTo(24.5, 12)
  })

  it('are not added up across currencies', () => {
    expect(() => formula('cost_total({cost_line(3, 1.5, "EUR"), cost_line(1, 1, "CHF")})')).toThrow('EUR and CHF')
  })

  it('count a battery’s flashes whole', () => {
    // 0.3 Wh is 1080 J: three of 360 J, whatever the rounding.
    expect(call('battery_pops', 0.3 * 3600, 360)).toBe(3)
    expect(call('battery_pops', 1000, 360)).toBe(2)
  })
})
