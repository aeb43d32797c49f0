import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Allowed, allowedFor, fewestSetups } from '../../../src/functions/work/setups.ts'
import { seeded } from '../../random.ts'
import { call, MM, UM } from '../call.ts'

/** The fewest points that touch every interval, by trying every set of upper limits. */
function bruteForce(originals: readonly Allowed[]): number {
  const candidates = [...new Set(originals.map(({ most }) => most))]
  for (let size = 0; size <= candidates.length; size++)
    for (let set = 0; set < 2 ** candidates.length; set++) {
      const chosen = candidates.filter((_, i) => (set >> i) & 1)
      if (chosen.length === size && originals.every(({ least, most }) => chosen.some((m) => m >= least && m <= most)))
        return size
    }
  throw new Error('unreachable')
}

const original = fc
  .tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 8 }), fc.integer({ min: 1, max: 2 }))
  .map(([least, more, exposureClass]): Allowed => ({ least, most: least + more, exposureClass }))

describe('set-ups', () => {
  it('are as few as any plan can have, and serve every original once', () => {
    fc.assert(
      fc.property(fc.array(original, { maxLength: 9 }), (originals) => {
        const { setups, unfit } = fewestSetups(originals)
        expect(unfit).toEqual([])
        const served = setups.flatMap(({ originals: members }) => members)
        expect([...served].sort((a, b) => a - b)).toEqual(originals.map((_, i) => i))
        for (const { magnification, exposureClass, originals: members } of setups)
          for (const i of members) {
            const { least, most, exposureClass: own } = originals[i] as Allowed
            expect(own).toBe(exposureClass)
            expect(magnification).toBeGreaterThanOrEqual(least)
            expect(magnification).toBeLessThanOrEqual(most)
          }
        const fewest = [1, 2].reduce(
          (sum, each) => sum + bruteForce(originals.filter(({ exposureClass }) => exposureClass === each)),
          0,
        )
        expect(setups.length).toBe(fewest)
      }),
      { seed: 11, numRuns: 150 },
    )
  })

  it('leave out what no single frame serves', () => {
    expect(
      fewestSetups([
        { least: 2, most: 1, exposureClass: 1 },
        { least: 1, most: 2, exposureClass: 1 },
      ]),
    ).toMatchObject({ unfit: [0], setups: [{ originals: [1] }] })
  })

  it('still serve an original that fits exactly', () => {
    // 0.6 m at 400 ppi on 36 mm of 3.81 µm pixels: both limits are 0.06.
    const camera = { sensorWidth: 36 * MM, sensorHeight: 24 * MM, pixelPitch: 3.81 * UM, border: 0, turn: true }
    const exact = allowedFor(0.6, 0.4, 400 / 0.0254, 1, camera)
    expect(exact.least).toBeCloseTo(exact.most, 12)
    expect(fewestSetups([exact]).unfit).toEqual([])
  })

  it('take in a hundred thousand originals, each once', () => {
    const random = seeded(1)
    const originals = Array.from({ length: 100_000 }, () => {
      const least = 0.02 + random() * 0.5
      return { least, most: least * (1 + random()), exposureClass: 1 + Math.floor(random() * 3) }
    })
    const { setups } = fewestSetups(originals)
    expect(setups.reduce((sum, { originals: members }) => sum + members.length, 0)).toBe(100_000)
  })

  it('by the language number each original’s set-up', () => {
    interface Plan {
      count: number
      magnifications: number[]
      originals: number[]
      setup_of: number[]
    }
    const plan = call<Plan>(
      'setups_for',
      [0.3, 0.9, 0.32],
      [0.2, 0.6, 0.2],
      [800, 300, 800].map((ppi) => ppi / 0.0254),
      36 * MM,
      24 * MM,
      3 * UM,
    )
    expect(plan.count).toBe(2)
    expect(plan.magnifications.map((m) => +m.toFixed(6))).toEqual([0.04, 0.1125])
    expect(plan.originals).toEqual([1, 2])
    expect(plan.setup_of).toEqual([2, 1, 2])
    expect(() => call('setups_for', [0.3], [0.2, 0.2], [300 / 0.0254], 36 * MM, 24 * MM, 3 * UM)).toThrow(
      '“heights” has 2',
    )
    expect(() => call('setups_for', [0.3], [0.2], [1, 2], 36 * MM, 24 * MM, 3 * UM)).toThrow('one for all')
    expect(() => call('setups_for', [3], [2], [300 / 0.0254], 36 * MM, 24 * MM, 3 * UM)).toThrow('Original 1')
  })
})
