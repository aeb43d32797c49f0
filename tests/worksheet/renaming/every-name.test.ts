import { describe, expect, test } from 'vitest'
import { isNamed } from '../../../src/worksheet/document/names.ts'
import type { Cell } from '../../../src/worksheet/index.ts'
import { followNames } from '../../../src/worksheet/renaming/follow-names.ts'
import { JOBS, readTemplate } from '../../templates/open.ts'

/** Keys whose text may equal a name by chance: what people read, and names of kinds, roles, columns and units. */
const NOT_NAMES =
  /\.(label|hint|text|title|value|measure|id|kind|name|options\.\d+|phase|part|sort|unit|fills_role|stage|drawing|least|offer|press|about|sources?)$/

/** The paths in a cell to texts that are just this name. */
const mentions = (data: unknown, name: string, path = ''): string[] =>
  typeof data === 'string'
    ? data === name && !NOT_NAMES.test(path)
      ? [path]
      : []
    : typeof data === 'object' && data !== null
      ? Object.entries(data).flatMap(([key, value]) => mentions(value, name, `${path}.${key}`))
      : []

describe.each(JOBS)('in %s', (job) => {
  test('a new name is followed by all that refers to the cell', () => {
    const { cells } = readTemplate(job)
    const named = cells.filter(isNamed)
    const names = new Map(named.map(({ name }) => [name, `renamed_${name}`]))
    const renamed = cells.map((cell): Cell => followNames(cell, names, cells))
    const left = renamed.flatMap((cell) =>
      named.flatMap(({ name }) => mentions(cell, name).map((path) => `${name} in ${cell.kind}${path}`)),
    )
    expect(left).toEqual([])
  })
})
