import { expect, it } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { variablesOf } from '../../../src/worksheet/advice/choices.ts'
import { planText } from '../../../src/worksheet/advice/plan-text.ts'
import { type Given, Sheet } from '../../../src/worksheet/index.ts'
import { composed, PART_IDS, READ } from '../compose/sets.ts'

/** The furthest changes of each given that a suggestion may make in a sheet of one part, as sentences. */
function sentencesOf(part: string): string[] {
  const sheet = new Sheet(composed([{ part, by: 'hand' }], READ), LIBRARY)
  return variablesOf(sheet, []).flatMap(({ givens: [given], choices }) => {
    const { name, value: before } = given as Given
    return [choices[0], choices.at(-1)].flatMap((choice) => {
      const changed = choice?.cells[0]
      const text = changed?.value
      return text === undefined || text === before
        ? []
        : planText(sheet, {
            changes: [{ given: name, before, text }],
            cells: [],
            level: 'setting',
            passes: [],
            marginal: [],
            breaks: [],
            again: { readings: [], checks: [] },
            cost: 1,
          })
    })
  })
}

it('says every change by its verb, and never sets one thing to another', () => {
  const all = PART_IDS.flatMap(sentencesOf)
  expect(all.length).toBeGreaterThan(100)
  // What is agreed with the client is agreed on, whichever way it goes; the rest is moved, turned, raised, opened.
  const generic = all.filter((sentence) => /^(Set|Increase|Reduce) |^Agree on .* instead of /.test(sentence))
  expect([...new Set(generic)]).toEqual([])
  expect(all.filter((sentence) => sentence.includes('{}'))).toEqual([])
  // One of a thing is not several.
  expect(all.filter((sentence) => /(?<!\S)1 [a-z]{2,}s\b/.test(sentence))).toEqual([])
})
