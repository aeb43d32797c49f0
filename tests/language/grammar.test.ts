import { readFileSync } from 'node:fs'
import { buildParserFile } from '@lezer/generator'
import { expect, test } from 'vitest'

const read = (file: string): string =>
  readFileSync(new URL(`../../src/language/syntax/${file}`, import.meta.url), 'utf8')

test('the committed parser is what the grammar makes', () => {
  const made = buildParserFile(read('formula.grammar'), {
    fileName: 'src/language/syntax/formula.grammar',
    typeScript: true,
    warn: (message) => expect.unreachable(message),
  })
  expect(read('parser.ts')).toBe(made.parser)
  expect(read('parser.terms.ts')).toBe(made.terms)
})
