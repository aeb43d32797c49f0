import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import {
  type Cell,
  DocumentError,
  FORMAT,
  MAX_DOCUMENT_LENGTH,
  readDocument,
  Sheet,
  VERSION,
  type Worksheet,
  writeDocument,
} from '../../../src/worksheet/index.ts'
import { JOBS, readTemplate } from '../../templates/open.ts'
import { JOBS_OF_VERSION_1, textOfVersion1 } from './version-1.ts'

const sheet = (cells: unknown[], more: object = {}): string =>
  JSON.stringify({ format: FORMAT, version: VERSION, title: 'A sheet', cells, ...more })
const given = { kind: 'given', id: 'g', name: 'width', value: '5 mm' }

function refusal(json: string): DocumentError {
  try {
    readDocument(json)
  } catch (error) {
    if (error instanceof DocumentError) return error
    throw error
  }
  return expect.unreachable('The document was read.')
}

describe('a document', () => {
  it('is read as it is, unknown keys and all', () => {
    const json = sheet(
      [
        { ...given, later: { deep: [1, null] } },
        { kind: 'note', id: 'n', text: '', colour: 'red' },
      ],
      {
        kit: { lamps: [] },
      },
    )
    expect(readDocument(json)).toEqual(JSON.parse(json))
    expect(JSON.parse(writeDocument(readDocument(json)))).toEqual(JSON.parse(json))
  })

  test.each([
    ['not JSON', '{', '', /not JSON/],
    ['empty', '', '', /not JSON/],
    ['null', 'null', 'format', /not a worksheet/],
    ['a list', '[]', 'format', /not a worksheet/],
    ['of another format', '{"format":"other"}', 'format', /“evenfield-worksheet”/],
    ['without cells', JSON.stringify({ format: FORMAT, version: VERSION, title: '' }), 'cells', /cells/],
    ['of version 0', sheet([], { version: 0 }), 'version', /version/],
    ['of a version in words', sheet([], { version: '1' }), 'version', /version/],
    ['with a cell of an unknown kind', sheet([given, { kind: 'spell', id: 'x' }]), 'cells[1].kind', /cells\[1\]\.kind/],
    ['with a cell that is text', sheet(['given']), 'cells[0]', /cells\[0\]/],
    ['with a number for a text', sheet([{ ...given, value: 5 }]), 'cells[0].value', /cells\[0\]\.value/],
    ['with an odd name', sheet([{ ...given, name: 'a b' }]), 'cells[0].name', /A name is a letter/],
    ['with a name of a prototype', sheet([{ ...given, name: '__proto__' }]), 'cells[0].name', /A name is a letter/],
    ['with one id twice', sheet([given, { ...given, name: 'w' }]), 'cells[1].id', /two cells have the id “g”/],
    ['with an unknown entry', sheet([{ ...given, entry: 'guess' }]), 'cells[0].entry', /entry/],
    [
      'with an odd input of a drawing',
      sheet([{ kind: 'drawing', id: 'd', drawing: 'set-up', from: { 'a b': '1' } }]),
      'cells[0].from.a b',
      /from/,
    ],
  ])('%s is refused, its place named', (_, json, place, says) => {
    const error = refusal(json)
    expect(error.place).toBe(place)
    expect(error.message).toMatch(says)
    expect(error.message).not.toContain('\n')
    expect(error.isNewer).toBe(false)
  })

  it('of a newer version is distinguished from a bad one', () => {
    const error = refusal(sheet([{ kind: 'spell' }], { version: VERSION + 1 }))
    expect(error).toMatchObject({ isNewer: true, place: 'version' })
    expect(error.message).toMatch(/newer version/)
  })

  it('too large, too long or nested too deep is refused before it is walked', () => {
    expect(refusal(`${'['.repeat(100_000)}${']'.repeat(100_000)}`).message).toMatch(/nested too deep/)
    expect(refusal(' '.repeat(MAX_DOCUMENT_LENGTH + 1)).message).toMatch(/too large/)
    const many = Array.from({ length: 20_001 }, (_, i) => ({ kind: 'note', id: `n${i}`, text: '' }))
    expect(refusal(sheet(many)).place).toBe('cells')
    expect(refusal(sheet([{ ...given, value: 'x'.repeat(1_000_001) }])).place).toBe('cells[0].value')
  })

  it('with brackets in its texts is not nested', () => {
    expect(readDocument(sheet([{ ...given, value: '[{"\\'.repeat(100) }])).cells).toHaveLength(1)
  })

  it('with a key named __proto__ changes no prototype, and drops the key', () => {
    const json = sheet([]).replace(
      '"cells":[]',
      '"cells":[{"kind":"note","id":"n","text":"","__proto__":{"polluted":1}}],"__proto__":{"polluted":1}',
    )
    const read = readDocument(json)
    expect(({} as { polluted?: number }).polluted).toBeUndefined()
    expect((read as { polluted?: number }).polluted).toBeUndefined()
    expect((read.cells[0] as { polluted?: number }).polluted).toBeUndefined()
    expect(JSON.stringify(read)).not.toContain('polluted')
  })

  it('with names used twice is read; the sheet says what is wrong', () => {
    expect(readDocument(sheet([given, { ...given, id: 'h' }])).cells).toHaveLength(2)
  })
})

const text = fc.string({ unit: 'binary', maxLength: 30 })
const name = fc.stringMatching(/^[A-Za-z][A-Za-z0-9_]{0,12}$/)
const maybe = (...keys: string[]) => fc.record(Object.fromEntries(keys.map((key) => [key, text])), { requiredKeys: [] })
const named = fc.record({ name })
const unknown = fc.record({ later: fc.jsonValue({ maxDepth: 3 }) }, { requiredKeys: [] })
const cellWithoutId = fc.oneof(
  fc.tuple(
    fc.record({ kind: fc.constant('given'), value: text }),
    named,
    maybe('label', 'unit', 'hint', 'least'),
    unknown,
  ),
  fc.tuple(fc.record({ kind: fc.constant('result'), formula: text }), named, maybe('label', 'unit', 'hint'), unknown),
  fc.tuple(
    fc.record({ kind: fc.constant('check'), condition: text, message: text }),
    named,
    maybe('passes', 'margin'),
    unknown,
  ),
  fc.tuple(fc.record({ kind: fc.constant('note'), text }), unknown, fc.constant({}), fc.constant({})),
)
const worksheets = fc.record({ title: text, cells: fc.array(cellWithoutId, { maxLength: 8 }) }).map(
  ({ title, cells }): Worksheet => ({
    format: FORMAT,
    version: VERSION,
    title,
    cells: cells.map((parts, i) => Object.assign({ id: `c${i}` }, ...parts) as Cell),
  }),
)

test('any document survives a round trip, through a sheet too', () => {
  fc.assert(
    fc.property(worksheets, (worksheet) => {
      // What JSON itself cannot tell apart (−0) is not asked for.
      const plain = JSON.parse(JSON.stringify(worksheet), (key, value) => (key === '__proto__' ? undefined : value))
      const read = readDocument(writeDocument(worksheet))
      expect(read).toEqual(plain)
      const open = new Sheet(read, LIBRARY)
      for (const cell of open.cells) if (cell.kind !== 'note') open.outcome(cell.id)
      expect(open.worksheet).toBe(read)
      expect(writeDocument(readDocument(writeDocument(open.worksheet)))).toBe(writeDocument(read))
    }),
    { numRuns: 300 },
  )
})

test.each(JOBS)('the sheet of the job %s is a document', (name) => {
  const read = readDocument(writeDocument(readTemplate(name)))
  expect(read.cells.length).toBeGreaterThan(0)
})

test.each(JOBS_OF_VERSION_1)('the sheet %s of version 1 opens, and computes as it did', (job) => {
  const text = textOfVersion1(job)
  const read = readDocument(text)
  const older = JSON.parse(text) as { readonly cells: readonly { readonly id: string }[] }
  expect(read.cells.map(({ id }) => id)).toEqual(older.cells.map(({ id }) => id))
  const sheet = new Sheet(read, LIBRARY)
  for (const cell of sheet.cells)
    if (cell.kind === 'result') expect(sheet.outcome(cell.id).state, cell.name).toBe('value')
})
