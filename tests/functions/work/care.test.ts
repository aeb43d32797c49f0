import { describe, expect, it } from 'vitest'
import { FUNCTIONS } from '../../../src/functions/index.ts'
import { advice, call, formula } from '../call.ts'

describe('light on the original', () => {
  it('adds up over time and flashes', () => {
    expect(call('light_dose', 2000, 90)).toBe(180_000)
    expect(call('flash_dose', 25, 8)).toBe(200)
    expect(formula('dose_share(light_dose(1000 lx, 15 h), "high")')).toBeCloseTo(1, 12)
  })

  it('over a year’s share says stop', () => {
    expect(advice('dose_share', 15_001 * 3600, 'high')).toContain('stop')
    expect(advice('dose_share', 15_001 * 3600, 'medium')).toBeUndefined()
    expect(call('dose_share', 1e12, 'none')).toBe(0)
  })
})

describe('the mains', () => {
  it('are warned of above 80 % and not at it', () => {
    expect(call('lamp_current', 2300, 230, 0.8)).toBeCloseTo(12.5, 12)
    expect(advice('circuit_share', 12.8, 16)).toBeUndefined()
    expect(advice('circuit_share', 12.9, 16)).toContain('licensed electrician')
  })
})

describe('a stand', () => {
  it('with its ballast balances the safe moment about the tipping edge', () => {
    const g = 9.80665
    const moment = call('overhang_moment', 4, 0.6)
    const ballast = call('ballast_for', moment, 0.3, 5, 0.25, 2)
    expect(ballast * g * 0.3 + 5 * g * 0.25).toBeCloseTo(2 * 4 * g * 0.6, 9)
  })

  it('heavy enough needs none', () => {
    expect(call('ballast_for', 1, 0.3, 50, 0.25)).toBe(0)
  })
})

describe('safety', () => {
  it('is said beside every result that touches it', () => {
    const safety = (name: string) => (FUNCTIONS.find((record) => record.name === name)?.safety ?? []).join(' ')
    expect(safety('lamp')).toContain('Hot lamps')
    expect(safety('flash_energy_for')).toContain('capacitors')
    for (const name of ['lamp_current', 'circuit_share'])
      expect(safety(name)).toContain('local codes and a licensed electrician')
    for (const name of ['overhang_moment', 'ballast_for']) expect(safety(name)).toContain('tethered')
    for (const name of ['light_dose', 'flash_dose', 'dose_share']) expect(safety(name)).toContain('custodian')
  })
})
