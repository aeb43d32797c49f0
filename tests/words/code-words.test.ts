import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))

/** Words that comments, test titles and documents no longer use, and what they say now. */
const RETIRED_PROSE: readonly (readonly [RegExp, string])[] = [
  [/\breckon(s|ed|ings?)?\b/i, 'compute, estimate'],
  [/\bmend(s|ed|ing)?\b/i, 'fix, suggestion'],
  [/\bsought\b/i, 'searched, looked for'],
  [/\bheed(s|ed|ing)?\b/i, 'observe'],
  [/\b(un)?told\b/i, 'shown, reported'],
  [/\b(is|are|was|were|be|been|not|nothing) kept\b/i, 'saved, stored'],
  [/\b(bears?|bearing|borne?|bore) (the|a|an|one|no|its|their) names?\b/i, 'has a name, is named'],
  [/\b(comes?|came) to the same\b/i, 'gives the same'],
  [/\bat hand\b/i, 'available'],
  [/\bfor whoever\b/i, 'for those who'],
  [/\b(one’s|one's) own\b/i, 'the user’s own'],
  [/\bhangs? on (?!a (wall|column))/i, 'depend on'],
  [/\bto and fro\b/i, 'back and forth'],
  [/\bseldom known\b/i, 'fine adjustments'],
  [/\bcircles? of cells\b|\bin a circle\b/i, 'cycle'],
  [
    /\bas (it|they) (stands?|stood)\b|\b(it|that|which|who) stands\b|\bstands? (beside|behind|before|in the way)\b/i,
    'is',
  ],
]

/** The same in identifiers, as words of a camel-cased or snake-cased name. */
const RETIRED_NAMES: ReadonlySet<string> = new Set([
  ...['reckon', 'reckoned', 'reckoning', 'mend', 'mends', 'mended', 'sought', 'heed', 'heeded', 'told', 'untold'],
  ...['wanting', 'keeper', 'footing', 'lookalikes'],
])

const isCode = (path: string): boolean => /\.(ts|mjs|mts)$/.test(path) && !/syntax\/parser(\.terms)?\.ts$/.test(path)

function* filesUnder(folder: string): Generator<string> {
  for (const path of readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })) {
    const file = `${folder}/${path}`
    if (statSync(join(ROOT, file)).isFile() && !file.startsWith('tests/words/')) yield file
  }
}

const read = (file: string): string => readFileSync(join(ROOT, file), 'utf8')

/** The comments and test titles of a file, line by line. */
function* proseOf(text: string): Generator<string> {
  for (const line of text.split('\n')) {
    const comment = /^\s*(?:\/\/|\/?\*)(.*)$|\s\/\/ (.*)$/.exec(line)
    if (comment) yield comment[1] ?? comment[2] ?? ''
    const title = /\b(?:describe|it|test)(?:\.\w+)*\(\s*(['`])(.*?)\1/.exec(line)
    if (title) yield title[2] as string
  }
}

/** The words of the identifiers in a file; texts and comments are left out. */
function namesOf(text: string): Set<string> {
  const code = text
    .replace(/\/\*[\s\S]*?\*\/|(^|\s)\/\/.*$/gm, ' ')
    .replace(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g, ' ')
  const words = code.match(/[A-Za-z_$][\w$]*/g) ?? []
  return new Set(words.flatMap((word) => word.split(/[_$\d]+|(?<=[a-z])(?=[A-Z])/).map((part) => part.toLowerCase())))
}

test('comments, test titles and documents use no retired word', () => {
  const code = ['src', 'scripts', 'vite', 'tests'].flatMap((folder) => [...filesUnder(folder)]).filter(isCode)
  const documents = [...filesUnder('docs'), 'README.md', 'DEVELOPERS.md', 'CONTRIBUTING.md'].filter((file) =>
    file.endsWith('.md'),
  )
  const lines = [
    ...code.flatMap((file) => [...proseOf(read(file))].map((line) => [file, line] as const)),
    ...documents.flatMap((file) =>
      read(file)
        .split('\n')
        .map((line) => [file, line] as const),
    ),
  ]
  expect(lines.length).toBeGreaterThan(5000)
  const found = lines.flatMap(([file, line]) =>
    RETIRED_PROSE.filter(([pattern]) => pattern.test(line)).map(([, now]) => `${file}: ${line.trim()} (now: ${now})`),
  )
  expect(found).toEqual([])
})

test('identifiers use no retired word', () => {
  const files = ['src', 'scripts', 'vite', 'tests'].flatMap((folder) => [...filesUnder(folder)]).filter(isCode)
  const found = files.flatMap((file) =>
    [...namesOf(read(file))].filter((word) => RETIRED_NAMES.has(word)).map((word) => `${file}: ${word}`),
  )
  expect(found).toEqual([])
})

test('a retired word would be found', () => {
  expect([...proseOf("  // It is told so.\n  test('bears the name', () => {")]).toHaveLength(2)
  expect([...namesOf("const toldBy = 'mend'")]).toEqual(expect.arrayContaining(['told', 'by']))
  expect([...namesOf("const toldBy = 'mend'")]).not.toContain('mend')
})
