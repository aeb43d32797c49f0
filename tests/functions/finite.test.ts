import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { type Parameter, type Range, Refusal, type Value } from '../../src/language/index.ts'

const SUBJECTS = new Set(['maths', 'close-focus', 'sampling', 'depth', 'exposure'])

/** A number within a range, over many sizes: physics may meet a nanometre and a kilometre. */
function within({ above, least, below, most, whole }: Range = {}): fc.Arbitrary<number> {
  const floor = least ?? above ?? -1e6
  const ceiling = Math.min(most ?? below ?? 1e6, 1e6)
  return (
    fc
      .oneof(
        fc.double({ min: floor, max: ceiling, noNaN: true }),
        fc.double({ min: -9, max: 6, noNaN: true }).map((e) => 10 ** e),
        fc.constantFrom(0, 0.1, 0.5, 1, 2, 100),
      )
      // What is smaller than a nanometre is none of physics here.
      .map((x) => (whole ? Math.round(x) : Math.abs(x) < 1e-9 ? 0 : x))
      .filter(
        (x) =>
          (above === undefined || x > above) &&
          (least === undefined || x >= least) &&
          (below === undefined || x < below) &&
          (most === undefined || x <= most),
      )
  )
}

function argumentFor({ type, range }: Parameter): fc.Arbitrary<unknown> {
  if (type.kind === 'yes or no') return fc.boolean()
  if (type.kind === 'list of any' || (type.kind === 'list' && type.of.kind === 'number'))
    return fc.array(within(range), { minLength: 0, maxLength: 5 })
  return within(range)
}

/** Whether every number in a value is one. */
function sound(value: Value, mayBeInfinite: boolean): boolean {
  if (typeof value === 'number') return !Number.isNaN(value) && (mayBeInfinite || Number.isFinite(value))
  if (typeof value !== 'object') return true
  return Object.values(value).every((part) => sound(part, mayBeInfinite))
}

describe('within its ranges', () => {
  for (const record of FUNCTIONS.filter(({ subject }) => SUBJECTS.has(subject))) {
    if (record.parameters.some(({ type }) => type.kind === 'list' && type.of.kind === 'record')) continue
    it(`${record.name} gives a number or a reason`, () => {
      const args = fc.tuple(...record.parameters.map(argumentFor))
      fc.assert(
        fc.property(args, (given) => {
          try {
            const value = (record.compute as (...args: unknown[]) => Value)(...given)
            expect(sound(value, record.mayBeInfinite === true)).toBe(true)
          } catch (error) {
            if (!(error instanceof Refusal)) throw error
            // A refusal names an argument that exists and ends as a sentence does.
            expect(record.parameters.map(({ name }) => name)).toContain(error.argument)
            expect(error.message).toMatch(/[.?]$/)
          }
        }),
        { numRuns: 200, seed: 517 },
      )
    })
  }
})
