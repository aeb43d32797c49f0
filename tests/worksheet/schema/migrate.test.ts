import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import {
  type Cell,
  type Check,
  FORMAT,
  isNamed,
  readDocument,
  Sheet,
  VERSION,
  writeDocument,
} from '../../../src/worksheet/index.ts'
import { migrate, STEPS, type Step } from '../../../src/worksheet/schema/migrate.ts'
import { seen } from '../make.ts'

const examples = new URL('examples/', import.meta.url)
const textOf = (path: string): string => readFileSync(new URL(path, examples), 'utf8')
const VERSIONS = Array.from({ length: VERSION }, (_, at) => at + 1)

test('there is a step to every version, and an example of each', () => {
  expect(STEPS).toHaveLength(VERSION - 1)
  for (const version of VERSIONS)
    expect(readdirSync(new URL(`version-${version}/`, examples))).toContain('example.json')
})

test.each(VERSIONS)('the example of version %i opens and computes', (version) => {
  const sheet = new Sheet(readDocument(textOf(`version-${version}/example.json`)), LIBRARY)
  expect(sheet.worksheet.version).toBe(VERSION)
  expect(seen(sheet, 'r')).toBe('1:11.7')
  expect(sheet.check('c').state).toBe('pass')
  expect(sheet.checkSummary.errors).toBe(0)
})

test('the example of this version is read as it is: unknown keys, reserved keys and cells of later versions', () => {
  const text = textOf(`version-${VERSION}/example.json`)
  expect(readDocument(text)).toEqual(JSON.parse(text))
  expect(new Sheet(readDocument(text), LIBRARY).worksheet.cells.map(({ kind }) => kind)).toContain('frame')
})

/** What each sheet of version 1 computed when version 1 was the newest: values in coherent SI, and check states. */
const FIGURES = JSON.parse(textOf('figures-of-version-1.json')) as Record<
  string,
  { readonly cells: Record<string, unknown>; readonly checks: Record<string, string> }
>

/** The check states of version 1, by what they are called now. */
const STATE_NOW: Readonly<Record<string, string>> = {
  holds: 'pass',
  close: 'marginal',
  fails: 'fail',
  waits: 'waiting',
}

/** The same figures to ten digits: the order of additions may change, their sum not. */
const close = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value ?? null), (_, part) =>
    typeof part === 'number' ? Number(part.toPrecision(10)) : part,
  )

test.each(Object.keys(FIGURES))('%s, saved by version 1, gives the same figures', (name) => {
  const sheet = new Sheet(readDocument(textOf(`version-1/${name}.json`)), LIBRARY)
  sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
  const figures = { cells: {} as Record<string, unknown>, checks: {} as Record<string, string> }
  for (const cell of sheet.cells.filter(isNamed)) {
    const outcome = sheet.outcome(cell.id)
    figures.cells[cell.name] = outcome.state === 'value' ? outcome.value : null
    if (cell.kind === 'check') figures.checks[cell.name] = sheet.check(cell.id).state
  }
  const then = FIGURES[name] as (typeof FIGURES)[string]
  // A function may give more than it did then; what it gave is the same.
  expect(close(figures.cells)).toMatchObject(close(then.cells) as object)
  const states = Object.entries(then.checks).map(([check, state]) => [check, STATE_NOW[state]])
  expect(figures.checks).toEqual(Object.fromEntries(states))
})

const KIND_NOW: Readonly<Record<string, string>> = { schedule: 'table' }

test.each(readdirSync(new URL('version-1/', examples)))('%s keeps every text on its way from version 1', (file) => {
  const before = JSON.parse(textOf(`version-1/${file}`))
  const after = JSON.parse(writeDocument(readDocument(textOf(`version-1/${file}`))))
  const texts = (data: unknown): string[] =>
    typeof data === 'string' ? [data] : typeof data === 'object' && data ? Object.values(data).flatMap(texts) : []
  const sorted = (data: unknown): string[] => texts(data).sort()
  const renamed = {
    ...before,
    cells: before.cells.map((cell: Cell) => ({ ...cell, kind: KIND_NOW[cell.kind] ?? cell.kind })),
  }
  expect(sorted(after)).toEqual(sorted(renamed))
})

test('keys that version 1 preserved without knowing them, and version 2 gives a meaning, are preserved', () => {
  const sheet = readDocument(
    JSON.stringify({
      format: FORMAT,
      version: 1,
      title: '',
      parts: 3,
      cells: [
        { kind: 'given', id: 'a', name: 'a', value: '1', from: 'a friend' },
        { kind: 'check', id: 'b', name: 'b', condition: 'a > 0', message: '', holds: 'Yes.', passes: [1] },
      ],
    }),
  )
  expect(sheet).toMatchObject({
    version: VERSION,
    parts_of_version_1: 3,
    cells: [{ from_of_version_1: 'a friend' }, { passes: 'Yes.', passes_of_version_1: [1] }],
  })
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

/** Margins as version 1 took them, and what they are written as now. */
test.each([
  ['5 %', '5 %'],
  ['0.05', '5 %'],
  ['5', '500 %'],
  ['10 mm', '1 %'],
  ['f/8', '800 %'],
  ['-3 %', '0 %'],
  ['5 ± 1 %', '500 %'],
  ['ten', undefined],
  ['', undefined],
])('a margin of %s in version 1 keeps the check as it was', (before, after) => {
  const check = { kind: 'check', id: 'c', name: 'c', condition: '1 < 2', message: '', margin: before }
  const read = readDocument(JSON.stringify({ format: FORMAT, version: 1, title: '', cells: [check] }))
  expect((read.cells[0] as Check).margin_of_version_1).toBe(before === 'ten' ? 'ten' : undefined)
  expect((read.cells[0] as Check).margin).toBe(after)
})
