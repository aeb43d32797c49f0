import fc from 'fast-check'
import { expect, test } from 'vitest'
import { asked } from '../endurance/report.ts'
import { camera, sides, together } from './givens.ts'
import { filled } from './trace.ts'

const RUNS = asked('PHOTOGRAPHS', 200)
const SEED = process.env.PHOTOGRAPHS_SEED === undefined ? {} : { seed: Number(process.env.PHOTOGRAPHS_SEED) }

/** The vergence of light from a point at a distance before thin lenses, and the magnification so far, carried to its image. */
function traced(
  distance: number,
  lenses: readonly (readonly [power: number, gap: number])[],
): { image: number; magnification: number } {
  let vergence = -1 / distance
  let magnification = 1
  for (const [power, gap] of lenses) {
    const after = vergence + power
    magnification *= vergence / after
    vergence = after / (1 - gap * after)
  }
  return { image: 1 / vergence, magnification: Math.abs(magnification) }
}

test('what getting closer says to screw on and set gives the magnification, with the original in focus', () => {
  const met = { tubes: 0, 'close-up lens': 0, both: 0 }
  fc.assert(
    fc.property(
      together(
        camera,
        fc.record({
          original: sides(8, 120),
          border: fc.constantFrom('0', '2'),
          closer_by: fc.constantFrom('tubes', 'close-up lens', 'both'),
          lens_greatest: fc.constantFrom('1:8', '1:4', '1:2'),
          principal_inset: fc.constantFrom('10', '25'),
          powers: fc.constantFrom('2', '4', '10', '2, 10', '3, 5'),
          spacing: fc.constantFrom('5', '8'),
          both_tube: fc.constantFrom('12', '20', '36'),
          both_power: fc.constantFrom('2', '5', '10'),
        }),
      ),
      (texts) => {
        const sheet = filled('getting-closer', { ...texts, principal_gap: '0' })
        const way = sheet.value('closer_by') as keyof typeof met
        const check = { tubes: 'tubes_reach', 'close-up lens': 'closeup_covers', both: 'both_cover' }[way]
        if (!['pass', 'marginal'].includes(sheet.state(check))) return
        met[way]++
        const focal = sheet.number('focal')
        const inset = sheet.number('principal_inset')
        const m = sheet.number('magnification')
        const focus = sheet.number('focus_set')
        const powers =
          way === 'tubes' ? [] : way === 'both' ? [sheet.number('both_power')] : (sheet.value('powers') as number[])
        const extension =
          focal * (1 + focus) +
          (way === 'tubes' ? sheet.number('tube_length') : way === 'both' ? sheet.number('both_tube') : 0)
        // The room is measured from the front of what is screwed on, or of the lens itself.
        const room = sheet.number('room')
        const found = powers.length
          ? traced(room, [
              ...powers.map(
                (power, at) => [power, at === powers.length - 1 ? inset : sheet.number('spacing')] as const,
              ),
              [1 / focal, 0],
            ])
          : traced(room + inset, [[1 / focal, 0]])
        expect(found.image / extension, JSON.stringify(texts)).toBeCloseTo(1, 6)
        expect(found.magnification / m).toBeCloseTo(1, 6)
      },
    ),
    { numRuns: RUNS, ...SEED },
  )
  for (const [way, times] of Object.entries(met)) expect(times, way).toBeGreaterThan(0)
}, 3_600_000)
