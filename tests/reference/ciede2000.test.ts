import { describe, expect, it } from 'vitest'
import table from '../../shared/reference/ciede2000-pairs.json'
import { call } from '../functions/call.ts'

/**
 * G. Sharma, W. Wu and E. N. Dalal, The CIEDE2000 color-difference formula: implementation notes, supplementary test
 * data, and mathematical observations, Color Research and Application 30(1), 2005, Table 1 (looked up in transcription).
 */
describe('CIEDE2000', () => {
  it('has the paper’s 34 pairs', () => {
    expect(table.pairs).toHaveLength(34)
  })

  for (const [i, pair] of table.pairs.entries()) {
    const expected = pair[6] as number
    it(`of pair ${i + 1} is ${expected.toFixed(4)}, either way round`, () => {
      const [L1, a1, b1, L2, a2, b2] = pair as [number, number, number, number, number, number]
      expect(Math.abs(call('delta_e_2000', L1, a1, b1, L2, a2, b2) - expected)).toBeLessThanOrEqual(0.5e-4)
      expect(Math.abs(call('delta_e_2000', L2, a2, b2, L1, a1, b1) - expected)).toBeLessThanOrEqual(0.5e-4)
    })
  }
})
