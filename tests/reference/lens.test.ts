import { describe, expect, it } from 'vitest'
import { call, UM } from '../functions/call.ts'

describe('thin lenses of the textbooks', () => {
  it('OpenStax, College Physics, 25.6: a bulb 0.750 m from a lens of 0.500 m', () => {
    // Looked up as reprinted: image at 1.50 m, magnification −2.00.
    const m = call('magnification_at', 0.5, 0.75)
    expect(m).toBeCloseTo(2, 12)
    expect(call('lens_to_sensor', 0.5, m)).toBeCloseTo(1.5, 12)
  })
})

describe('close-up lenses', () => {
  it('adds powers in contact: 2.5 and 0.5 dpt make 3 dpt (textbook exercise)', () => {
    const { power } = call<{ power: number }>('closeup_stack', [2.5, 0.5], 0)
    expect(power).toBeCloseTo(3, 12)
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
