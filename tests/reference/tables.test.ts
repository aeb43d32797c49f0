import { describe, expect, it } from 'vitest'
import gates from '../../shared/reference/film-gates.json'
import iso2720 from '../../shared/reference/iso-2720.json'
import { formula } from '../functions/call.ts'

/** CIE 157:2004, limiting annual exposures 15 000, 150 000 and 600 000 lx h; none for materials that do not respond (as quoted; see the table’s sources). */
describe('CIE 157', () => {
  it('allows a year’s light by responsivity', () => {
    expect(formula('dose_share(15000 [lx h], "high")')).toBeCloseTo(1, 12)
    expect(formula('dose_share(150000 [lx h], "medium")')).toBeCloseTo(1, 12)
    expect(formula('dose_share(600000 [lx h], "low")')).toBeCloseTo(1, 12)
    expect(formula('dose_share(600000 [lx h], "none")')).toBe(0)
  })

  it('matches its own illuminances saved up for a year of 3000 hours', () => {
    // 50 lx and 200 lx over 3000 h (as quoted).
    expect(formula('dose_share(light_dose(50 lx, 3000 h), "medium")')).toBeCloseTo(1, 12)
    expect(formula('dose_share(light_dose(200 lx, 3000 h), "low")')).toBeCloseTo(1, 12)
  })
})

/** Frame of 135 film 36 × 24 mm and of 120 film 56 × 41.5, 56 × 56, 56 × 70, 56 × 84 mm (looked up; see the table’s sources). */
describe('film gates', () => {
  it('are the image’s, not the nominal names’', () => {
    const size = (name: string) => [formula(`film_gate("${name}").width`), formula(`film_gate("${name}").height`)]
    expect(size('135')).toEqual([0.036, 0.024])
    expect(size('6x4.5')).toEqual([0.056, 0.0415])
    expect(size('6x6')).toEqual([0.056, 0.056])
    expect(size('6x7')).toEqual([0.07, 0.056])
    expect(size('6x9')).toEqual([0.084, 0.056])
  })

  it('have the aspect the table of frame sizes prints', () => {
    for (const [name, aspect] of [
      ['6x4.5', 1.35],
      ['6x7', 1.25],
      ['6x8', 1.37],
      ['6x9', 1.5],
      ['6x12', 2.1],
      ['6x17', 3],
    ] as const) {
      const { width_mm, height_mm } = gates.gates[name]
      expect(Math.max(width_mm, height_mm) / Math.min(width_mm, height_mm)).toBeCloseTo(aspect, 1)
    }
  })

  it('name a source for every size', () => {
    for (const { source } of Object.values(gates.gates)) expect(Object.keys(gates.sources)).toContain(source)
  })
})

/** ISO 2720:1974, K from 10.6 to 13.4 (looked up as quoted); C from 240 to 400 flat, 320 to 540 domed (from memory). */
describe('ISO 2720', () => {
  it('leaves an exposure on a panel uncertain by a third of a stop between its limits of K', () => {
    const at = (K: number) => formula(`panel_exposure(1000 [cd/m^2], constant: ${K})`) as number
    const { least, most, usual } = iso2720.constants.K
    expect(at(least) - at(most)).toBeCloseTo(Math.log2(13.4 / 10.6), 12)
    expect(at(usual)).toBeLessThan(at(least))
    expect(at(usual)).toBeGreaterThan(at(most))
  })

  it('implies a mid-tone of 15.7 % at K = 12.5 and C = 250', () => {
    // The card both meters agree on: L = ρE/π and E/C = L/K.
    expect((Math.PI * iso2720.constants.K.usual) / iso2720.constants.C_flat.usual).toBeCloseTo(0.157, 3)
    expect(formula('luminance_from_lux(250 lx, 0.15708)')).toBeCloseTo(12.5, 3)
  })
})
