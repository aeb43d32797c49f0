import { describe, expect, it } from 'vitest'
import { call } from '../functions/call.ts'

/**
 * IEC 61966-2-1:1999, sRGB: linear below 0.04045 with slope 1/12.92, above it ((v + 0.055)/1.055)^2.4 (from memory).
 * Lab of the primaries adapted to D50 as ICC sRGB profiles hold them: red 54.29 80.81 69.89, green 87.82 −79.29 80.99,
 * blue 29.57 68.30 −112.03 (from memory, to about 0.03 for the white point’s digits).
 */
describe('sRGB', () => {
  it('is linear at the foot and a power above', () => {
    expect(call('srgb_linear', 0)).toBe(0)
    expect(call('srgb_linear', 1)).toBe(1)
    expect(call('srgb_linear', 0.04045)).toBeCloseTo(0.04045 / 12.92, 15)
    expect(call('srgb_linear', 0.0405)).toBeCloseTo(((0.0405 + 0.055) / 1.055) ** 2.4, 15)
  })

  it('joins its two pieces to the digits of the standard', () => {
    expect(0.04045 / 12.92).toBeCloseTo(((0.04045 + 0.055) / 1.055) ** 2.4, 7)
  })

  it('puts a mid grey of 8 bits where published tables do', () => {
    // Code 118 is nearest an 18 % grey; 188 nearest a half (from memory).
    expect(call('linear_from_code', 118, 255)).toBeCloseTo(0.181, 3)
    expect(call('linear_from_code', 188, 255)).toBeCloseTo(0.503, 3)
  })

  it('has its primaries in D50 Lab where ICC profiles have them', () => {
    for (const [rgb, lab] of [
      [
        [1, 0, 0],
        [54.29, 80.81, 69.89],
      ],
      [
        [0, 1, 0],
        [87.82, -79.29, 80.99],
      ],
      [
        [0, 0, 1],
        [29.57, 68.3, -112.03],
      ],
    ] as const) {
      const found = call<{ L: number; a: number; b: number }>('lab_from_srgb', ...rgb)
      expect(Math.abs(found.L - lab[0])).toBeLessThan(0.03)
      expect(Math.abs(found.a - lab[1])).toBeLessThan(0.03)
      expect(Math.abs(found.b - lab[2])).toBeLessThan(0.03)
    }
  })
})
