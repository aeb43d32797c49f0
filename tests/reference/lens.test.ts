import { describe, expect, it } from 'vitest'
import { call, MM, UM } from '../functions/call.ts'

interface Depth {
  readonly in_front: number
  readonly behind: number
}

describe('thin lenses of the textbooks', () => {
  it('OpenStax, College Physics, 25.6: a bulb 0.750 m from a lens of 0.500 m', () => {
    // Looked up as reprinted: image at 1.50 m, magnification −2.00.
    const m = call('magnification_at', 0.5, 0.75)
    expect(m).toBeCloseTo(2, 12)
    expect(call('lens_to_sensor', 0.5, m)).toBeCloseTo(1.5, 12)
  })

  it('a college-physics solution manual, chapter 23 (looked up as reprinted): object at twice the focal length', () => {
    for (const f of [0.15, 0.2]) {
      expect(call('magnification_at', f, 2 * f)).toBeCloseTo(1, 12)
      expect(call('lens_to_sensor', f, 1)).toBeCloseTo(2 * f, 12)
    }
  })

  it('the same: object and screen 1.50 m apart, a lens of 0.240 m, the smaller image 0.250', () => {
    expect(call('magnification_from_track', 0.24, 1.5)).toBeCloseTo(0.25, 12)
    expect(call('lens_to_original', 0.24, 0.25)).toBeCloseTo(1.2, 12)
  })
})

describe('close-up lenses', () => {
  it('1, 2, 3, 4 and 5 dpt focus at 1000, 500, 333, 250 and 200 mm (a published table, looked up)', () => {
    const table = [1000, 500, 333, 250, 200]
    table.forEach((mm, i) => {
      expect(call('closeup_distance', i + 1) / MM).toBeCloseTo(mm, -0.3)
    })
  })

  it('+3 dpt on a lens focused at 1.5 m focuses at 0.273 m (encyclopaedia example, looked up as quoted)', () => {
    expect(call('closeup_distance', 3, 1.5)).toBeCloseTo(0.273, 3)
  })

  it('adds powers in contact: 2.5 and 0.5 dpt make 3 dpt (textbook exercise)', () => {
    const { power } = call<{ power: number }>('closeup_stack', [2.5, 0.5], 0)
    expect(power).toBeCloseTo(3, 12)
  })
})

describe('depth of field in print', () => {
  /** Magnification of a lens focused on a distance from its front principal plane. */
  const focusedOn = (f: number, distance: number) => call('magnification_at', f, distance)

  it('Hawkins and Avon, Photography, 1979 (looked up as quoted): 70 mm, f/22, 0.021 mm, 10.606 m: sharp from 5.338 m', () => {
    const u = 10.606
    const { in_front, behind } = call<Depth>('depth_of_field', 22, 21 * UM, focusedOn(70 * MM, u), 70 * MM)
    // The near limit quoted, F u (F + c f)/(F² + u f c), is an approximation, here 1 part in 300 off.
    expect(u - in_front).toBeCloseTo(5.338, 1)
    // The book focuses at f²/(N c), one focal length short of the hyperfocal distance: far beyond a kilometre.
    expect(behind).toBeGreaterThan(1000)
  })

  it('a naval training manual, Photography (Basic) (looked up): 155 mm, f/2.8, hyperfocal 554 ft, 10 ft: 9.8 to 10.2 ft', () => {
    const foot = 0.3048
    const blur = 0.155 ** 2 / (2.8 * 554 * foot)
    const { in_front, behind } = call<Depth>('depth_of_field', 2.8, blur, focusedOn(0.155, 10 * foot), 0.155)
    expect(10 - in_front / foot).toBeCloseTo(9.8, 1)
    expect(10 + behind / foot).toBeCloseTo(10.2, 1)
  })

  it('an optics primer (looked up): 50 mm, f/22, 0.03 mm: focused at about 3.75 m, sharp from about 1.9 m to infinity', () => {
    const m = (22 * 30 * UM) / (50 * MM)
    const u = call('lens_to_original', 50 * MM, m)
    // The primer prints 3.75 m; f²/(N c) + f is 3.84 m.
    expect(u).toBeCloseTo(3.838, 3)
    const { in_front, behind } = call<Depth>('depth_of_field', 22, 30 * UM, m, 50 * MM)
    expect(u - in_front).toBeCloseTo(1.9, 1)
    expect(behind).toBe(Number.POSITIVE_INFINITY)
  })
})

describe('diffraction in print', () => {
  it('W. J. Smith, Practical Optical System Layout, 1997, pp. 120–121 (looked up as quoted): half contrast near 40 %, a tenth near 80 % of the cut-off', () => {
    const cutoff = call('diffraction_cutoff', 8)
    expect(call('contrast_at', 0.4 * cutoff, 8)).toBeCloseTo(0.5, 1)
    expect(call('contrast_at', 0.8 * cutoff, 8)).toBeCloseTo(0.1, 1)
  })

  it('Goodman, Introduction to Fourier Optics (from memory): 0.391 at half the cut-off', () => {
    expect(call('contrast_at', 0.5 * call('diffraction_cutoff', 8), 8)).toBeCloseTo(0.391, 3)
  })

  it('first dark ring at 1.22 (from memory, Hecht, Optics): the first zero of J₁ over π', () => {
    expect(3.8317059702 / Math.PI).toBeCloseTo(1.22, 2)
    expect(call('airy_diameter', 10, 500e-9)).toBeCloseTo(12.2 * UM, 12)
  })
})
