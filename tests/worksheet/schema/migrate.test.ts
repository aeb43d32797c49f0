import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { readDocument, Sheet, VERSION } from '../../../src/worksheet/index.ts'
import { migrate, STEPS, type Step } from '../../../src/worksheet/schema/migrate.ts'
import { seen } from '../make.ts'

const examples = new URL('examples/', import.meta.url)
const example = (version: number): string => readFileSync(new URL(`v${version}.json`, examples), 'utf8')
const VERSIONS = Array.from({ length: VERSION }, (_, at) => at + 1)

test('there is a step to every version, and a kept example of each', () => {
  expect(STEPS).toHaveLength(VERSION - 1)
  expect(readdirSync(examples).sort()).toEqual(VERSIONS.map((version) => `v${version}.json`))
})

test.each(VERSIONS)('the example of version %i opens and computes', (version) => {
  const sheet = new Sheet(readDocument(example(version)), LIBRARY)
  expect(sheet.worksheet.version).toBe(VERSION)
  expect(seen(sheet, 'r')).toBe('1:11.7')
  expect(sheet.check('c').state).toBe('holds')
  expect(sheet.checkSummary.errors).toBe(0)
})

test('the example of this version is read as it is, unknown keys and all', () => {
  expect(readDocument(example(VERSION))).toEqual(JSON.parse(example(VERSION)))
})

describe('a chain of steps', () => {
  /** What later versions might have changed: a key renamed, then a title made into a record. */
  const steps: readonly Step[] = [
    ({ heading, ...rest }) => ({ ...rest, title: heading }),
    ({ title, ...rest }) => ({ ...rest, title: { words: title } }),
  ]

  it('takes a document from any version to the last', () => {
    expect(migrate({ version: 1, heading: 'Old', cells: [] }, steps)).toEqual({
      version: 3,
      title: { words: 'Old' },
      cells: [],
    })
    expect(migrate({ version: 2, title: 'Less old' }, steps)).toEqual({ version: 3, title: { words: 'Less old' } })
  })

  it('leaves the document it is given as it was', () => {
    const document = Object.freeze({ version: 1, heading: 'Old' })
    migrate(document, steps)
    expect(document).toEqual({ version: 1, heading: 'Old' })
  })

  it('leaves the newest, and what is no version of ours, alone', () => {
    for (const version of [3, 4, 0, -1, 1.5, '1', undefined, Number.NaN]) {
      const document = { version, title: 'x' }
      expect(migrate(document, steps)).toBe(document)
    }
  })
})
