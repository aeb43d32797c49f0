import { expect, it } from 'vitest'
import { DocumentError, readData, VERSION } from '../../../src/worksheet/index.ts'
import { newerIn } from '../../../src/worksheet/schema/newer-document.ts'
import { readNewer } from '../../../src/worksheet/schema/read-newer.ts'
import { given, note, result } from '../make.ts'

const newer = (more: Readonly<Record<string, unknown>> = {}) => ({
  format: 'evenfield-worksheet',
  version: VERSION + 1,
  title: 'From tomorrow',
  cells: [given('a', '1 mm'), { kind: 'hologram', id: 'h', depth: 3 }, { ...result('b', 'a * 2'), glow: 'soft' }],
  ...more,
})

it('shows what this version knows, counts what it does not, and keeps the whole as it came', () => {
  const data = newer()
  const before = structuredClone(data)
  const read = readNewer(data)
  expect(read.worksheet.cells.map(({ id }) => id)).toEqual(['a', 'b'])
  expect(read).toMatchObject({ version: VERSION + 1, unknown: 1, worksheet: { title: 'From tomorrow' } })
  expect(read.original).toBe(data)
  expect(data).toEqual(before)
})

it('opens without what is of another kind in its outline, and without cells where there is no list of them', () => {
  expect(readNewer(newer({ title: { en: 'A' } })).worksheet).toMatchObject({ title: '' })
  expect(readNewer(newer({ cells: { first: note('n', '') } })).worksheet.cells).toEqual([])
})

it('refuses two cells of one id, as any worksheet', () => {
  expect(() => readNewer(newer({ cells: [note('n', ''), note('n', '')] }))).toThrow(DocumentError)
})

it('is found in what went wrong, however deep', () => {
  const data = newer()
  let error: unknown
  try {
    readData(data)
  } catch (caught) {
    error = caught
  }
  expect(newerIn(new Error('outer', { cause: new Error('inner', { cause: error }) }))).toBe(data)
  expect(newerIn(new Error('outer', { cause: new DocumentError('bad', 'cells') }))).toBeUndefined()
  expect(newerIn(undefined)).toBeUndefined()
})
