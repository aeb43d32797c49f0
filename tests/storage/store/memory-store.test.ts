import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { newId, openStore } from '../../../src/storage/index.ts'
import { asStoreError, StoreError } from '../../../src/storage/store/store-error.ts'
import { STORAGE_WORDS } from '../../../src/storage/words.ts'
import { SHEET, saveOver } from '../sheets.ts'

describe('where nothing can be saved', () => {
  // A browser that saves nothing has no IndexedDB; in Node, tests that ran before may have added one.
  beforeAll(() => vi.stubGlobal('indexedDB', undefined))
  afterAll(() => vi.unstubAllGlobals())

  test('the store says so, and works while the tab lasts', async () => {
    const store = await openStore()
    expect(store.persistent).toBe(false)
    expect(store.problem).toBeInstanceOf(StoreError)
    expect(store.problem?.problem).toBe('refused')
    expect(store.problem?.message).toBe(STORAGE_WORDS.refused)

    await store.save('a', SHEET)
    expect(await store.load('a')).toEqual(SHEET)
    expect(await store.load('b')).toBeUndefined()
  })

  test('what is saved does not change with the sheet on screen', async () => {
    const store = await openStore()
    const sheet = structuredClone(SHEET)
    await store.save('a', sheet)
    sheet.title = 'other'
    expect((await store.load('a'))?.title).toBe(SHEET.title)
  })

  test('sheets are listed newest first, the bin apart', async () => {
    const store = await openStore()
    for (const id of ['a', 'b', 'c']) await store.save(id, { ...SHEET, title: id })
    await saveOver(store, 'a', { ...SHEET, title: 'a again' })
    expect((await store.list()).map(({ title }) => title)).toEqual(['a again', 'c', 'b'])
    expect((await store.list())[0]?.cells).toBe(4)

    await store.remove('c')
    expect((await store.list()).map(({ id }) => id)).toEqual(['a', 'b'])
    expect((await store.listRemoved()).map(({ id }) => id)).toEqual(['c'])
    await store.restore('c')
    expect((await store.list()).map(({ id }) => id)).toEqual(['a', 'c', 'b'])
    await store.erase('c')
    expect(await store.load('c')).toBeUndefined()
  })

  test('a line says the job, what it is of and how its checks are, and stays in the archive while it is edited', async () => {
    const store = await openStore()
    const original = {
      kind: 'given',
      id: 'o',
      name: 'original',
      entry: 'size',
      unit: 'mm',
      value: '980 x 730',
    } as const
    const sheet = { ...SHEET, job: 'Ferry Lane', cells: [original] }
    const checks = { pass: 3, marginal: 0, fail: 1, waiting: 2 }
    await store.save('a', sheet, { checks })
    expect((await store.list())[0]).toMatchObject({ job: 'Ferry Lane', of: '980 x 730 mm', checks })
    await store.archive('a', true)
    expect((await store.list())[0]?.archived).toBeGreaterThan(0)
    // Saved where nothing was computed: what was known of its checks may no longer be true.
    const example = { ...original, from: { kind: 'example', text: '980 x 730' } } as const
    await saveOver(store, 'a', { ...sheet, cells: [example] })
    const [line] = await store.list()
    expect(line?.checks).toBeUndefined()
    expect(line?.of).toBeUndefined()
    expect(line?.archived).toBeGreaterThan(0)
    // Opened, it is computed, and the line says so; it stays the same state of the sheet.
    await store.noteChecks('a', checks)
    await store.noteChecks('a', { ...checks, fail: 9 })
    expect((await store.list())[0]).toEqual({ ...line, checks })
    await store.archive('a', false)
    expect((await store.list())[0]?.archived).toBeUndefined()
  })

  test('settings are saved under their names', async () => {
    const store = await openStore()
    expect(await store.setting('face')).toBeUndefined()
    await store.saveSetting('face', { dim: true })
    expect(await store.setting('face')).toEqual({ dim: true })
  })
})

test('what the browser throws is put in words', () => {
  const thrown = (name: string) => asStoreError(new DOMException('low-level words', name))
  expect(thrown('QuotaExceededError').message).toMatch(/no room left/)
  expect(thrown('SecurityError').problem).toBe('refused')
  expect(thrown('VersionError').problem).toBe('outdated')
  expect(thrown('DataError').message).toBe(
    'This browser could not save the sheet. Save it as a file. Saving is retried automatically. (low-level words)',
  )
})

test('ids do not repeat', () => {
  const ids = new Set(Array.from({ length: 1000 }, newId))
  expect(ids.size).toBe(1000)
  expect([...ids][0]).toMatch(/^[0-9a-f]{24}$/)
})
