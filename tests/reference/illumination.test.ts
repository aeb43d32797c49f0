import { describe, expect, it } from 'vitest'
import { diffuserPoints, illuminanceAt, type LampNumbers } from '../../src/functions/lamps/light-field.ts'
import { formula } from '../functions/call.ts'

const DIFFUSER = (2 * Math.PI) / 3

/** A uniform diffuse disc of luminance L facing the original from h, as rings × 6k patches of equal share of each ring. */
function disc(luminance: number, radius: number, h: number, rings: number): LampNumbers[] {
  const points: LampNumbers[] = []
  for (let k = 0; k < rings; k++) {
    const r = ((k + 0.5) / rings) * radius
    const count = 6 * k + 6
    const area = (Math.PI * radius ** 2 * (2 * k + 1)) / rings ** 2 / count
    for (let i = 0; i < count; i++) {
      const x = r * Math.cos((2 * Math.PI * i) / count)
      const y = r * Math.sin((2 * Math.PI * i) / count)
      points.push({ x, y, z: h, aim_x: x, aim_y: y, intensity: luminance * area, beam_angle: DIFFUSER })
    }
  }
  return points
}

/**
 * E = π L sin² α = π L R²/(R² + h²) on the axis of a uniform diffuse disc: Foote, Illumination from a radiating disk,
 * Bulletin of the Bureau of Standards 12, 1915, p. 583 (looked up); likewise Freeman and Hull, Optics, 2003, p. 354, as
 * cited by M. Jonasz, Axial irradiance due to an extended-area source, 2009 (looked up); IES Lighting Handbook (memory).
 */
describe('an extended source', () => {
  it('converges on the closed form of a uniform diffuse disc on its axis', () => {
    const [luminance, radius] = [5000, 0.3]
    for (const h of [0.3, 0.6, 1.5]) {
      const exact = (Math.PI * luminance * radius ** 2) / (radius ** 2 + h ** 2)
      const errors = [4, 8, 16, 32].map(
        (rings) => Math.abs(illuminanceAt(disc(luminance, radius, h, rings), 0, 0) - exact) / exact,
      )
      // Twice as fine is four times as near: the midpoint rule’s second order.
      errors.slice(1).forEach((error, i) => {
        expect((errors[i] as number) / error).toBeGreaterThan(3.8)
        expect((errors[i] as number) / error).toBeLessThan(4.2)
      })
      expect(errors[3]).toBeLessThan(1e-3)
    }
  })

  it('as a soft box’s grid converges on the closed form of a rectangle under its middle', () => {
    // Four quarters, each E = (L/2)(a/√(a² + h²) · atan(b/√(a² + h²)) + b/√(b² + h²) · atan(a/√(b² + h²))).
    const [width, height, h] = [0.8, 0.6, 1]
    const [a, b] = [width / 2, height / 2]
    const [p, q] = [Math.hypot(a, h), Math.hypot(b, h)]
    const luminance = 1000 / (width * height)
    const exact = 2 * luminance * ((a / p) * Math.atan(b / p) + (b / q) * Math.atan(a / q))
    const box: LampNumbers = { x: 0, y: 0, z: h, aim_x: 0, aim_y: 0, intensity: 1000, beam_angle: DIFFUSER }
    const errors = [2, 4, 8, 16].map((grid) =>
      Math.abs(illuminanceAt(diffuserPoints(box, width, height, grid), 0, 0) / exact - 1),
    )
    errors.slice(1).forEach((error, i) => {
      expect((errors[i] as number) / error).toBeGreaterThan(3.7)
    })
    expect(errors[3]).toBeLessThan(1e-3)
  })
})

/**
 * The point-by-point method, E = I cos θ/d²: textbook problems looked up at scribd.com/document/655165001
 * (Point by Point Calculation); the method itself as the IES Lighting Handbook gives it (memory). The lamps radiate
 * alike in all directions, so each is aimed at the point asked for. The problems come without printed answers; those
 * here are worked by hand.
 */
describe('the point-by-point method', () => {
  it('puts 6.25 lx below 100 cd at 4 m', () => {
    expect(formula('illuminance_at({lamp(0 m, 0 m, 4 m, intensity: 100 cd)})')).toBeCloseTo(100 / 16, 12)
  })

  it('puts 7.09 lx on the corners of a table 3 m square under 100 cd at 2.5 m', () => {
    // d² = 2.5² + 1.5² + 1.5² = 10.75 m²; cos θ = 2.5/3.2787; 100/10.75 · 0.7625.
    expect(
      formula('illuminance_at({lamp(0 m, 0 m, 2.5 m, aim_x: 1.5 m, aim_y: 1.5 m, intensity: 100 cd)}, 1.5 m, 1.5 m)'),
    ).toBeCloseTo(7.093, 3)
  })

  it('puts 20.6 lx in the middle of a lawn 4 m square under four lamps of 250 cd at 6 m', () => {
    // d² = 36 + 8 = 44 m²; cos θ = 6/6.6332; 4 · 250/44 · 0.90453.
    const corners = ['-2 m, -2 m', '2 m, -2 m', '2 m, 2 m', '-2 m, 2 m']
    const lamps = corners.map((corner) => `lamp(${corner}, 6 m, intensity: 250 cd)`).join(', ')
    expect(formula(`illuminance_at({${lamps}})`)).toBeCloseTo(20.558, 3)
  })
})
