import { describe, expect, it } from 'vitest'
import { advice, call, MM } from '../call.ts'

interface Stack {
  readonly power: number
  readonly front_focus: number
}
interface Choice {
  readonly tubes: readonly number[]
  readonly extension: number
  readonly least: number
  readonly greatest: number
  readonly covers: boolean
}

describe('tubes', () => {
  it('extend what the lens is already set to', () => {
    const m = call('tube_magnification', 50 * MM, 20 * MM, 0.15)
    // The image distance of the lens at 0.15, 20 mm added, is that of the lens equation at m.
    expect(50 * MM * 1.15 + 20 * MM).toBeCloseTo(50 * MM * (1 + m), 12)
    expect(call('extension_for', 50 * MM, m, 0.15)).toBeCloseTo(20 * MM, 12)
  })

  it('are not asked for where the lens alone magnifies more', () => {
    expect(() => call('extension_for', 50 * MM, 0.1, 0.15)).toThrow('no tube')
    expect(call('extension_for', 50 * MM, 0.15, 0.15)).toBe(0)
  })
})

describe('closeup_stack', () => {
  it('is the formula of two thin lenses', () => {
    for (const d of [0, 5 * MM, 30 * MM]) {
      const { power, front_focus } = call<Stack>('closeup_stack', [2, 5], d)
      expect(power).toBeCloseTo(2 + 5 - d * 10, 12)
      expect(front_focus).toBeCloseTo((1 - d * 5) / power, 12)
    }
  })

  it('sends the light of its front focus out parallel, by vergences lens after lens', () => {
    for (const powers of [[1], [1, 2, 4], [4, 1], [1, 2, 3, 4, 10]]) {
      const spacing = 8 * MM
      const { front_focus } = call<Stack>('closeup_stack', powers, spacing)
      let vergence = -1 / front_focus
      powers.forEach((power, i) => {
        if (i > 0) vergence = vergence / (1 - spacing * vergence)
        vergence += power
      })
      expect(vergence).toBeCloseTo(0, 9)
    }
  })

  it('has the trade’s value for three lenses', () => {
    expect(call<Stack>('closeup_stack', [1, 2, 4], 8 * MM).power).toBeCloseTo(6.8565, 4)
  })

  it('does not put the original at the reciprocal of its power', () => {
    const { power, front_focus } = call<Stack>('closeup_stack', [1, 4], 20 * MM)
    expect(front_focus).toBeLessThan(1 / power - 5 * MM)
  })

  it('advises ascending powers, and says nothing about those that ascend', () => {
    expect(advice('closeup_stack', [4, 2], 0)).toContain('ascend')
    expect(advice('closeup_stack', [2, 4], 0)).toBeUndefined()
    expect(advice('closeup_stack', [2, 2], 0)).toBeUndefined()
  })

  it('refuses lenses too far apart', () => {
    expect(() => call('closeup_stack', [5, 5], 250 * MM)).toThrow('spacing')
    expect(() => call('closeup_stack', [], 0)).toThrow('at least one')
  })
})

describe('closeup_magnification', () => {
  it('is that of both lenses imaging onto the sensor, by ray matrices', () => {
    const f = 100 * MM
    for (const own of [0.05, 0.2, 1])
      for (const power of [1, 3])
        for (const e of [0, 25 * MM]) {
          const v = f * (1 + own)
          // From the close-up lens to the sensor: lens, gap e, lens, gap v.
          const steps = [
            [1, 0, -power, 1],
            [1, e, 0, 1],
            [1, 0, -1 / f, 1],
            [1, v, 0, 1],
          ] as const
          let [a, b, c, d] = [1, 0, 0, 1]
          for (const [p, q, r, s] of steps) [a, b, c, d] = [p * a + q * c, p * b + q * d, r * a + s * c, r * b + s * d]
          // Sharp where the original lies x in front: A x + B = 0; then the magnification is A.
          const x = -b / a
          expect(x).toBeGreaterThan(0)
          expect(call('closeup_magnification', f, power, own, e)).toBeCloseTo(-a, 12)
          const u = f * (1 + 1 / own)
          expect(call('closeup_distance', power, u - e)).toBeCloseTo(x, 12)
        }
  })

  it('is f P with the lens at infinity, wherever the close-up lens is', () => {
    expect(call('closeup_magnification', 100 * MM, 3, 0, 30 * MM)).toBeCloseTo(0.3, 12)
    expect(call('closeup_distance', 4)).toBe(0.25)
  })

  it('refuses a close-up lens beyond what the lens is focused on', () => {
    expect(() => call('closeup_magnification', 100 * MM, 3, 1, 200 * MM)).toThrow('nearer')
  })

  it('leaves the aperture at work alone', () => {
    expect(call('closeup_effective_aperture', 8)).toBe(8)
    expect(call('closeup_effective_aperture', 8, 0.5, 2)).toBe(call('effective_aperture', 8, 0.5, 2))
  })
})

describe('tube_choices', () => {
  const tubes = [12, 20, 36].map((mm) => mm * MM)
  const choices = call<Choice[]>('tube_choices', tubes, 50 * MM, 0.8, 0, 0.15)

  it('holds every combination once, none among them', () => {
    const sums = [0, 12, 20, 36, 32, 48, 56, 68]
    expect(choices.map(({ extension }) => Math.round(extension / MM)).sort((a, b) => a - b)).toEqual(
      sums.sort((a, b) => a - b),
    )
  })

  it('reaches what the lens at each end of its focus and the tubes give', () => {
    for (const { tubes: used, extension, least, greatest, covers } of choices) {
      expect(used.reduce((sum, tube) => sum + tube, 0)).toBeCloseTo(extension, 12)
      expect(least).toBeCloseTo(call('tube_magnification', 50 * MM, extension, 0), 12)
      expect(greatest).toBeCloseTo(call('tube_magnification', 50 * MM, extension, 0.15), 12)
      expect(covers).toBe(least <= 0.8 && greatest >= 0.8)
    }
  })

  it('puts those that cover first, by extension; then the others, by how far they miss', () => {
    const shown = choices.map(({ extension, covers }) => `${covers ? '+' : '-'}${Math.round(extension / MM)}`)
    // At 0.8: 36 mm gives 0.72 to 0.87. 32 mm ends 0.01 short, 48 mm starts 0.16 above, and so on.
    expect(shown).toEqual(['+36', '-32', '-48', '-20', '-56', '-12', '-68', '-0'])
  })

  it('prefers fewer tubes for the same extension', () => {
    const same = call<Choice[]>('tube_choices', [12 * MM, 20 * MM, 32 * MM], 50 * MM, 0.7, 0, 0.15)
    expect(same.slice(0, 2).map(({ tubes: used }) => used.length)).toEqual([1, 2])
  })

  it('counts two equal tubes together, but not as two ways of taking one', () => {
    const pair = call<Choice[]>('tube_choices', [20 * MM, 20 * MM], 50 * MM, 0.4, 0, 0.15)
    expect(pair.map(({ extension }) => Math.round(extension / MM))).toEqual([20, 0, 40])
  })

  it('counts a magnification reached exactly as reached', () => {
    const exact = call<Choice[]>('tube_choices', [0.1 + 0.2], 1, 0.3, 0, 0)
    expect(exact[0]?.covers).toBe(true)
  })

  it('gives the shortest that covers, or says that none does', () => {
    expect(call<Choice>('best_tubes', choices).extension).toBeCloseTo(36 * MM, 12)
    const short = call<Choice[]>('tube_choices', [12 * MM], 50 * MM, 2, 0, 0.15)
    expect(() => call('best_tubes', short)).toThrow('None of “choices”')
  })
})
