import { describe, expect, it } from 'vitest'
import table from '../../shared/reference/ciede2000-pairs.json'
import { call } from '../functions/call.ts'

/** The paper's values themselves are checked in published.test.ts. */
describe('CIEDE2000', () => {
  it('has the paper’s 34 pairs', () => {
    expect(table.pairs).toHaveLength(34)
  })

  it('is the same either way round', () => {
    for (const [L1, a1, b1, L2, a2, b2] of table.pairs)
      expect(call('delta_e_2000', L2, a2, b2, L1, a1, b1)).toBeCloseTo(call('delta_e_2000', L1, a1, b1, L2, a2, b2), 12)
  })
})
