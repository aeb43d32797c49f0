import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const SRC = fileURLToPath(new URL('../../src', import.meta.url))

const STYLED = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((path) => /\.(ts|css)$/.test(path))

/** Where a pattern stands in the sources, by file and line. */
const places = (pattern: RegExp): string[] =>
  STYLED.flatMap((path) =>
    readFileSync(join(SRC, path), 'utf8')
      .split('\n')
      .flatMap((line, at) => (pattern.test(line) ? [`${path}:${at + 1} ${line.trim()}`] : [])),
  )

test('no underline is given as a shorthand of several values, which WebKit leaves out altogether', () => {
  expect(STYLED.length).toBeGreaterThan(100)
  expect(places(/text-decoration:\s*[\w-]+\s+[^;\s]/)).toEqual([])
})
