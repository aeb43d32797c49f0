import fc from 'fast-check'
import { expect, test } from 'vitest'
import { edited, sequences } from './edits.ts'
import { asked, report } from './report.ts'

const SEQUENCES = asked('EDIT_SEQUENCES', 200)
const SEED = asked('EDIT_SEED', 5)

test(`${SEQUENCES} sequences of edits end in what a fresh computation gives, and undo leads back`, () => {
  let edits = 0
  let ran = 0
  fc.assert(
    fc.property(sequences, (sequence) => {
      edits += edited(sequence)
      ran++
    }),
    { numRuns: SEQUENCES, seed: SEED },
  )
  report('edits', { seed: SEED, sequences: ran, edits })
  expect(ran).toBe(SEQUENCES)
}, 7_200_000)
