import { describe, expect, it } from 'vitest'
import { advice, call, MM, NM, UM } from '../call.ts'

interface Depth {
  readonly in_front: number
  readonly behind: number
  readonly total: number
}

/**
 * Blur at the sensor of a point that lies z (m) behind the plane in focus, from a lens of two principal planes and two
 * pupils: the point's image by the lens equation, and the cone to it from the exit pupil.
 */
function blurOf(z: number, n: number, m: number, f: number, p: number): number {
  const u = f * (1 + 1 / m) + z
  const v = (f * u) / (u - f)
  const exitPupil = f * (1 - p)
  const sensor = f * (1 + m)
  return (((p * f) / n) * Math.abs(v - sensor)) / (v - exitPupil)
}

const CASES = [
  [11, 12 * UM, 0.25, 60 * MM, 1],
  [5.6, 20 * UM, 0.02, 50 * MM, 0.7],
  [16, 10 * UM, 1.5, 100 * MM, 1.6],
  [22, 30 * UM, 0.05, 35 * MM, 1.2],
] as const

describe('depth_of_field', () => {
  it('ends where the blur at the sensor reaches what is acceptable', () => {
    for (const [n, c, m, f, p] of CASES) {
      const { in_front, behind, total } = call<Depth>('depth_of_field', n, c, m, f, p)
      expect(blurOf(-in_front, n, m, f, p) / c).toBeCloseTo(1, 9)
      expect(blurOf(behind, n, m, f, p) / c).toBeCloseTo(1, 9)
      expect(total).toBeCloseTo(in_front + behind, 12)
    }
  })

  it('is nearly 2 N c (1 + m/p)/m² up close', () => {
    const { total } = call<Depth>('depth_of_field', 8, 10 * UM, 1, 100 * MM, 0.8)
    expect(total / (2 * 8 * 10 * UM * (1 + 1 / 0.8))).toBeCloseTo(1, 5)
  })

  it('reaches to infinity from the hyperfocal distance on', () => {
    const [n, c, f] = [16, 30 * UM, 50 * MM]
    const m = (n * c) / f
    const { in_front, behind, total } = call<Depth>('depth_of_field', n, c, m, f)
    expect(behind).toBe(Number.POSITIVE_INFINITY)
    expect(total).toBe(Number.POSITIVE_INFINITY)
    // Half the distance, from the entrance pupil.
    expect(in_front).toBeCloseTo(call('entrance_distance', f, m) / 2, 9)
    expect(call<Depth>('depth_of_field', n, c, m * 1.001, f).behind).toBeLessThan(Number.POSITIVE_INFINITY)
  })
})

describe('aperture_for_depth', () => {
  it('is undone by depth_of_field', () => {
    for (const [n, c, m, f, p] of CASES) {
      const { total } = call<Depth>('depth_of_field', n, c, m, f, p)
      expect(call('aperture_for_depth', total, c, m, f, p) / n).toBeCloseTo(1, 9)
    }
  })

  it('keeps its digits for a thin sheet', () => {
    const n = call('aperture_for_depth', 1e-9, 12 * UM, 0.25, 60 * MM)
    expect(call<Depth>('depth_of_field', n, 12 * UM, 0.25, 60 * MM).total / 1e-9).toBeCloseTo(1, 9)
  })
})

describe('best_aperture', () => {
  it('makes the blur at both ends least, however the two parts are put together', () => {
    const [depth, m, p] = [8 * MM, 0.3, 0.8]
    const best = call('best_aperture', depth, m, p)
    const parts = (n: number) => {
      const effective = call('effective_aperture', n, m, p)
      return [(m * m * depth) / 2 / effective, call('airy_diameter', effective)] as const
    }
    for (const together of [(a: number, b: number) => a + b, Math.hypot]) {
      const at = (n: number) => together(...parts(n))
      let least = 1
      for (let n = 1; n < 60; n += 0.01) if (at(n) < at(least)) least = n
      expect(least).toBeCloseTo(best, 1)
    }
  })

  it('takes its defocus from the very depth that depth_of_field gives', () => {
    const [depth, m, f] = [4 * MM, 0.3, 100 * MM]
    const best = call('best_aperture', depth, m)
    const blur = call('airy_diameter', call('effective_aperture', best, m))
    expect(call<Depth>('depth_of_field', best, blur, m, f).total / depth).toBeCloseTo(1, 2)
  })
})

describe('contrast_at', () => {
  it('is the overlap of two discs', () => {
    for (const nu of [0.1, 0.35, 0.5, 0.9]) {
      // Discs of diameter 1 a distance nu apart: strips of the common part, over the disc.
      const strips = 20_000
      let common = 0
      for (let i = 0; i < strips; i++) {
        const x = nu / 2 + ((i + 0.5) / strips) * (0.5 - nu / 2)
        common += 4 * Math.sqrt(0.25 - x * x) * ((0.5 - nu / 2) / strips)
      }
      const overlap = common / (Math.PI / 4)
      const frequency = nu / (500 * NM * 8)
      expect(call('contrast_at', frequency, 8, 500 * NM)).toBeCloseTo(overlap, 5)
    }
  })

  it('is full for a plain surface and gone from the cut-off on', () => {
    const cutoff = call('diffraction_cutoff', 11)
    expect(call('contrast_at', 0, 11)).toBe(1)
    expect(call('contrast_at', cutoff * (1 - 1e-12), 11)).toBeCloseTo(0, 12)
    expect(call('contrast_at', cutoff * 2, 11)).toBe(0)
    expect(advice('contrast_at', cutoff * 1.1, 11, 550 * NM)).toContain('cut-off')
    expect(advice('contrast_at', cutoff * 0.9, 11, 550 * NM)).toBeUndefined()
  })
})

describe('acceptable blur', () => {
  it('is seen under the same angle on any print', () => {
    const near = call('blur_from_print', 36 * MM, 0.3)
    const far = call('blur_from_print', 36 * MM, 0.6, 0.2 * MM, 0.5)
    expect(far).toBeCloseTo(near, 12)
  })

  it('is counted in pixels', () => {
    expect(call('blur_from_pixels', 5 * UM)).toBeCloseTo(10 * UM, 12)
  })
})

describe('focus_steps', () => {
  it('cover the depth with none to spare', () => {
    for (const depth of [1, 4.9, 5, 5.1, 9, 20, 33.3])
      for (const overlap of [0, 0.2, 0.5]) {
        const steps = call('focus_steps', depth, 5, overlap)
        const covered = (n: number) => 5 + (n - 1) * 5 * (1 - overlap)
        expect(covered(steps)).toBeGreaterThanOrEqual(depth - 1e-9)
        if (steps > 1) expect(covered(steps - 1)).toBeLessThan(depth)
      }
  })

  it('are not one more by rounding', () => {
    expect(call('focus_steps', 0.9, 0.1, 0.2)).toBe(11)
    expect(call('focus_steps', 0.7, 0.1, 0)).toBe(7)
  })

  it('are one frame where everything is sharp', () => {
    expect(call('focus_steps', 0.02, Number.POSITIVE_INFINITY)).toBe(1)
  })
})

describe('page_bulge', () => {
  it('gives back the arc it was found from', () => {
    for (const [chord, radius, half] of [
      [0, 0.3, 0.4],
      [0, 0.1, 1.2],
      [0, 5, 0.001],
      [0, 0.1, 2.6],
    ] as const) {
      const arc = 2 * radius * half
      const across = chord + 2 * radius * Math.sin(half)
      expect(call('page_bulge', across, arc) / (radius * (1 - Math.cos(half)))).toBeCloseTo(1, 7)
    }
  })

  it('has the trade’s value, and none for a flat page', () => {
    expect(call('page_bulge', 0.2, 0.21)).toBeCloseTo(0.0276, 4)
    expect(call('page_bulge', 0.2, 0.2)).toBe(0)
    expect(() => call('page_bulge', 0.21, 0.2)).toThrow('shorter')
  })
})
