import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { definition } from '../../../src/cells/forms/build-row.ts'
import { readGiven } from '../../../src/worksheet/document/read-given.ts'
import type { Cell, Given } from '../../../src/worksheet/index.ts'

/** A minus from the keyboard before a figure, or a space between a figure and its degree sign. */
const AS_TYPED = /(?<![\p{L}\d_)])-\.?\d|\d\s+°(?!\p{L})/u

const givens = readdirSync('templates/released')
  .filter((file) => file.endsWith('.json'))
  .flatMap((file) => (JSON.parse(readFileSync(`templates/released/${file}`, 'utf8')) as { cells?: Cell[] }).cells ?? [])
  .filter((cell): cell is Given => cell.kind === 'given')

test('limits of a given are shown as figures are, in Build and where a value is outside them', () => {
  const limited = givens.filter(({ least, most }) => AS_TYPED.test(`${least ?? ''} ${most ?? ''}`))
  // Some are written with what a keyboard has; else this test would show nothing.
  expect(limited.map(({ name }) => name)).toContain('curl')
  for (const cell of limited) {
    expect(definition({ cell })).not.toMatch(AS_TYPED)
    for (const value of ['-1e6 °', '1e6 °']) {
      const { error } = readGiven({ ...cell, value })
      if (error) expect(error.message).not.toMatch(AS_TYPED)
    }
  }
})
