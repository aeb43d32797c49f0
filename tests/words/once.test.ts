import { expect, test } from 'vitest'
import { literalsOf, wordsIn } from './literals.ts'

/** The catalogues, and the records that have texts of their own. */
const SOURCES = import.meta.glob<string>(
  [
    '../../src/**/words.ts',
    '../../src/cli/help.ts',
    '../../src/kit/labels.ts',
    '../../src/drawings/kinds/registry.ts',
    '../../src/worksheet/run/inputs.ts',
  ],
  { query: '?raw', import: 'default', eager: true },
)

/** Texts that are written more than once on purpose, and why. */
const TWICE = new Set([
  // Values of the format, not texts on screen.
  'yes or no',
  'date and time',
  'pixel pitch',
  // Keys to press.
  'Alt ↑, Alt ↓',
  'stops, a list',
  // The inputs of drawings, those of a run and the figures of kit are labelled each in their own record.
  'Width of the original',
  'Height of the original',
  'Thickness of the original',
  'Border around it',
  'Pixel pitch',
  'Pupil ratio',
  // Verbs that agree in number with what is counted.
  'has an error',
])

/** Texts of two words or more that stand in more than one place, with the files they stand in. */
function repeated(sources: Readonly<Record<string, string>>): string[] {
  const places = new Map<string, string[]>()
  for (const [path, code] of Object.entries(sources))
    for (const text of literalsOf(path, code)) {
      const said = text.trim()
      if (wordsIn(said) >= 2 && said.includes(' ')) places.set(said, [...(places.get(said) ?? []), path])
    }
  return [...places]
    .filter(([text, files]) => files.length > 1 && !TWICE.has(text))
    .map(([text, files]) => `“${text}”: ${files.map((file) => file.replace('../../src/', '')).join(', ')}`)
}

test('a text of two words or more is written once in all catalogues', () => {
  expect(Object.keys(SOURCES).length).toBeGreaterThan(60)
  expect(repeated(SOURCES)).toEqual([])
})

test('a text that is written twice would be found, in quotes or in a template', () => {
  const found = repeated({
    'a/words.ts': "export const a = { one: 'Save it', two: (n: number) => `Add \u0024{n} rows` }",
    'b/words.ts': 'export const three = `Save it`\nexport const four = (m: string): string => `Add \u0024{m} rows`',
  })
  expect(found).toEqual(['“Save it”: a/words.ts, b/words.ts', '“Add … rows”: a/words.ts, b/words.ts'])
})
