import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { DocumentError, readData } from '../../../src/worksheet/schema/read-document.ts'

type Json = Readonly<Record<string, unknown>>
const EXAMPLE: Json = JSON.parse(readFileSync(new URL('examples/version-2/example.json', import.meta.url), 'utf8'))

/** Every place of a document, as the keys that lead to it. */
function* placesOf(value: unknown, path: readonly (string | number)[] = []): Generator<readonly (string | number)[]> {
  if (path.length > 0) yield path
  if (typeof value === 'object' && value !== null)
    for (const [key, one] of Object.entries(value))
      yield* placesOf(one, [...path, Array.isArray(value) ? Number(key) : key])
}

/** A copy with another value at a place; without the key where the value is undefined. */
function damaged(document: Json, path: readonly (string | number)[], value: unknown): unknown {
  const copy = structuredClone(document)
  const last = path.at(-1) as string
  const holder = path.slice(0, -1).reduce<unknown>((at, key) => (at as Json)[key], copy) as Record<string, unknown>
  if (value === undefined) delete holder[last]
  else holder[last] = value
  return copy
}

const messageOf = (document: unknown): string => {
  try {
    readData(document)
    return ''
  } catch (error) {
    if (error instanceof DocumentError) return error.message
    throw error
  }
}

const PLACES = [...placesOf(EXAMPLE)]
const VALUES = [undefined, null, 7, -1.5, true, 'x', 'y'.repeat(100_001), [], {}, [[]], '9 not a name']

test.each([
  [['cells'], 7, 'At “cells”: this must be a list, not 7.'],
  [['cells', 0, 'id'], undefined, 'At “cells[0].id”: this is missing.'],
  [['title'], 7, 'At “title”: this must be a text, not 7.'],
  [
    ['cells'],
    [{ kind: 'range', id: 'a', count: 1.5, results: [] }],
    'At “cells[0].count”: this must be a whole number, not 1.5.',
  ],
  [
    ['cells'],
    [{ kind: 'range', id: 'a', count: 900, results: [] }],
    'At “cells[0].count”: this must be at most 200, not 900.',
  ],
  [
    ['cells'],
    [{ kind: 'range', id: 'a', by: 'yards', results: [] }],
    'At “cells[0].by”: this must be "even steps", "stops" or "marks", not "yards".',
  ],
])('%j with %j is reported as %s', (path, value, message) => {
  expect(messageOf(damaged(EXAMPLE, path, value))).toBe(message)
})

test('wherever a document is damaged, the error says where and what in plain words', () => {
  let refused = 0
  fc.assert(
    fc.property(fc.constantFrom(...PLACES), fc.constantFrom(...VALUES), (path, value) => {
      const message = messageOf(damaged(EXAMPLE, path, value))
      if (message === '') return
      refused++
      expect(message).not.toMatch(/Invalid|Expected|received|undefined|[<>]=|Array|Object/)
      expect(message).toMatch(/^[A-Z].*\.$/s)
      expect(message).not.toMatch(/must be ,|\/\^/)
      expect(message.length).toBeLessThan(500)
    }),
    { numRuns: 3000 },
  )
  expect(refused).toBeGreaterThan(300)
})
