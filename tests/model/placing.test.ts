import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { asked } from '../endurance/report.ts'
import type { Filled } from '../templates/open.ts'
import { millimetres, sides } from './givens.ts'
import { filled, has, size, type Texts } from './trace.ts'

/**
 * One rule for the place that is computed and for the lamps that are judged: a place is found exactly where the checks
 * allow one, and it passes them when its figures are typed as they are shown.
 */
const CHECKS = ['even_enough', 'lamps_low', 'lamps_clear'] as const
const RUNS = asked('PLACES', 24)

const lamps = fc.record({
  lens_height: millimetres(200, 3000),
  lamp_radius: fc.constantFrom('0', '20', '100', '300'),
  glossy: fc.constantFrom('yes', 'no'),
  beam_angle: fc.constantFrom('40', '60', '90', '120'),
  even_limit: fc.constantFrom('0.05', '0.1', '0.2'),
  curl: fc.constantFrom('0', '5', '-15'),
})
/** How far lamps may be: a fixed length, or as many times what is needed without a limit. */
const reaches = fc.oneof(fc.constantFrom('600', '1500', '4000'), fc.double({ min: 0.9, max: 1.1, noNaN: true }))

const JOBS: readonly { name: string; parts?: readonly string[]; more: fc.Arbitrary<Texts> }[] = [
  { name: 'two-lamps', more: fc.record({ original: sides(20, 3000) }) },
  {
    name: 'two lamps over tiles',
    parts: ['sheet', 'tiles', 'column', 'placed', 'lamps-clear'],
    more: fc.record({
      original: sides(50, 1500),
      moves: fc.constantFrom('the camera', 'the board'),
      wanted_sampling: fc.constantFrom('200', '400', '800'),
      border: fc.constantFrom('0', '10'),
    }),
  },
]

const SIDES = { left_out: 0, right_out: 0, left_height: 1, right_height: 1, lamp_aim: 2 } as const
const lampsAt = (place: readonly string[]): Texts =>
  Object.fromEntries(Object.entries(SIDES).map(([given, at]) => [given, place[at] as string]))

const isPassed = (state: string): boolean => state === 'pass' || state === 'marginal'
const isFound = (sheet: Filled): boolean => sheet.state('a_place_found') !== 'fail'
const farthest = (sheet: Filled): number => {
  const { x, z } = sheet.value('advice') as { x: number; z: number }
  return Math.hypot(x, z) * 1000
}

describe.each(JOBS)('the place of two lamps in $name', ({ name, parts, more }) => {
  test('is found exactly where there is one that its checks allow, and passes them typed in', () => {
    const met = new Set<boolean>()
    fc.assert(
      fc.property(lamps, more, reaches, (own, others, reach) => {
        const open = (texts: Texts): Filled => filled(name, { ...own, ...others, ...texts }, parts)
        const lamp_reach =
          typeof reach === 'string' ? reach : String(Math.max(100, farthest(open({ lamp_reach: '20000' })) * reach))
        const sheet = open({ lamp_reach })
        const said = JSON.stringify({ ...own, ...others, lamp_reach })
        met.add(isFound(sheet))
        if (isFound(sheet)) {
          const shown = ['advised_out', 'advised_height', 'advised_aim'].map((one) => sheet.shown(one).text)
          const typed = open({ lamp_reach, ...lampsAt(shown) })
          for (const check of CHECKS) expect(typed.state(check), `${check} ${said} ${shown}`).toMatch(/pass|marginal/)
          return
        }
        const most = Number(lamp_reach)
        const radius = Number(own.lamp_radius)
        const half = has(sheet, 'to_light_width')
          ? sheet.number('to_light_width') * 500
          : size(sheet, 'original')[0] * 500
        for (const out of [0.4, 0.55, 0.7, 0.8, 0.9])
          for (const up of [0.2, 0.4, 0.55, 0.7]) {
            const [x, z] = [Math.floor(out * most), Math.floor(up * most)]
            if (x ** 2 + z ** 2 > most ** 2 || z + radius > x || z < radius) continue
            for (const past of [0, 0.5, 1]) {
              const place = [x, z, Math.floor(past * half)].map(String)
              const typed = open({ lamp_reach, ...lampsAt(place) })
              expect(
                CHECKS.every((check) => isPassed(typed.state(check))),
                `${said} ${place}`,
              ).toBe(false)
            }
          }
      }),
      { numRuns: RUNS },
    )
    expect([...met].sort()).toEqual([false, true])
  })
})
