import { describe, expect, it } from 'vitest'
import { call, formula, MM } from '../call.ts'

describe('film on a panel', () => {
  it('is exposed as a panel dimmed by its density, placed above the mid-tone', () => {
    const bare = call('panel_exposure', 1000)
    expect(2 ** bare).toBeCloseTo((100 * 1000) / 12.5, 6)
    expect(call('panel_exposure', 1000, 0.3)).toBeCloseTo(bare + Math.log2(10 ** -0.3), 12)
    // More exposure for the placement is a lower exposure value.
    expect(call('panel_exposure', 1000, 0.1, 2.32)).toBeCloseTo(10.31, 2)
  })

  it('fits the sensor either way round', () => {
    expect(call('film_magnification', 56 * MM, 41.5 * MM, 36 * MM, 24 * MM)).toBeCloseTo(24 / 41.5, 12)
    expect(call('film_magnification', 41.5 * MM, 56 * MM, 36 * MM, 24 * MM, 1 * MM)).toBeCloseTo(24 / 43.5, 12)
    expect(formula('film_magnification(film_gate("6x6").width, film_gate("6x6").height, 36 mm, 24 mm)')).toBeCloseTo(
      24 / 56,
      12,
    )
  })

  it('is lit from every part of the pupil past its edge', () => {
    const [w, gap, distance, pupil] = [42 * MM, 50 * MM, 300 * MM, 20 * MM]
    // The line from (−pupil/2, distance) through (w, 0), carried on to −gap.
    const slope = (w + pupil / 2) / distance
    expect(call('panel_margin', w, gap, distance, pupil)).toBeCloseTo(slope * gap, 12)
  })
})
