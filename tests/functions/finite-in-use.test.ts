import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { type Parameter, type Range, Refusal, type Type, type Value } from '../../src/language/index.ts'

const SUBJECTS = new Set(['lighting', 'squareness', 'colour', 'care', 'run', 'film'])
const DEGREE = Math.PI / 180

/** A number within a range, over the sizes a stand and its room may have. */
function within({ above, least, below, most, whole }: Range = {}): fc.Arbitrary<number> {
  const floor = Math.max(least ?? above ?? -1e6, -1e6)
  const ceiling = Math.min(most ?? below ?? 1e6, 1e6)
  return fc
    .oneof(
      fc.double({ min: floor, max: ceiling, noNaN: true }),
      fc.double({ min: -6, max: 5, noNaN: true }).map((e) => 10 ** e),
      fc.constantFrom(0, 0.1, 0.5, 1, 2, 100),
    )
    .map((x) => (whole ? Math.round(x) : Math.abs(x) < 1e-6 ? 0 : x))
    .filter(
      (x) =>
        (above === undefined || x > above) &&
        (least === undefined || x >= least) &&
        (below === undefined || x < below) &&
        (most === undefined || x <= most),
    )
}

const lamp = fc.record({
  x: within({ least: -5, most: 5 }),
  y: within({ least: -5, most: 5 }),
  z: within({ above: 0, most: 5 }),
  aim_x: within({ least: -5, most: 5 }),
  aim_y: within({ least: -5, most: 5 }),
  intensity: within({ least: 0 }),
  beam_angle: within({ least: DEGREE, most: 179 * DEGREE }),
})
const cost = fc.record({ amount: within(), currency: fc.constantFrom('EUR', 'USD') })

function argumentFor({ name, type, range, choices }: Parameter): fc.Arbitrary<unknown> {
  const ofType = (kind: Type): fc.Arbitrary<unknown> => {
    if (kind.kind === 'record') return kind.name === 'lamp' ? lamp : cost
    return kind.kind === 'text' ? fc.constantFrom('tone', 'FADGI', 'A, B; tone: 2, 3') : within(range)
  }
  if (choices) return fc.constantFrom(...choices)
  if (name === 'currency') return fc.constantFrom('EUR', 'euro')
  if (name === 'grid') return fc.integer({ min: 1, max: 4 })
  if (name === 'lot') return fc.integer({ min: 1, max: 2000 })
  if (type.kind === 'yes or no') return fc.boolean()
  if (type.kind === 'list') return fc.array(ofType(type.of), { maxLength: 4 })
  if (type.kind === 'list of any' || type.kind === 'any list') return fc.array(within(range), { maxLength: 5 })
  if (type.kind === 'any or list') return fc.oneof(within(range), fc.array(within(range), { maxLength: 5 }))
  return type.kind === 'any' ? within(range) : ofType(type)
}

/** The first number in a value that is none, if any. */
function unsound(value: Value, mayBeInfinite: boolean): boolean {
  if (typeof value === 'number') return Number.isNaN(value) || !(mayBeInfinite || Number.isFinite(value))
  return typeof value === 'object' && Object.values(value).some((part) => unsound(part, mayBeInfinite))
}

describe('within its ranges', () => {
  for (const record of FUNCTIONS.filter(({ subject }) => SUBJECTS.has(subject)))
    it(`${record.name} gives a number or a reason`, () => {
      fc.assert(
        fc.property(fc.tuple(...record.parameters.map(argumentFor)), (given) => {
          try {
            const value = (record.compute as (...args: unknown[]) => Value)(...given)
            expect(unsound(value, record.mayBeInfinite === true), JSON.stringify(value)).toBe(false)
            ;(record.advise as ((...args: unknown[]) => unknown) | undefined)?.(...given)
          } catch (error) {
            if (!(error instanceof Refusal)) throw error
            expect(record.parameters.map(({ name }) => name)).toContain(error.argument)
            expect(error.message).toMatch(/[.?]$|"$/)
          }
        }),
        { numRuns: ['place_lamps', 'even_area', 'field_evenness'].includes(record.name) ? 25 : 150, seed: 517 },
      )
    })
})
