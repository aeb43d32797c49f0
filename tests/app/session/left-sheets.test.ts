import 'fake-indexeddb/auto'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { LEFT } from '../../../src/app/session/any-left.ts'
import { Autosave } from '../../../src/app/session/autosave.ts'
import { LeftSheets } from '../../../src/app/session/left-sheets.ts'
import { UnsavedSheets } from '../../../src/app/session/unsaved-sheets.ts'
import { openStore } from '../../../src/storage/index.ts'
import { sheetSaying, simulatedLocal } from '../../storage/simulated/tabs.ts'

let stores = 0

/** A page over a store of its own, and what it has announced. */
async function page() {
  const local = simulatedLocal()
  const store = await openStore({ name: `left sheets ${++stores}` })
  const unsaved = new UnsavedSheets()
  const announced: string[] = []
  const left = new LeftSheets(store, unsaved, { local, locks: undefined, tell: (id) => announced.push(id) })
  const typing = (id: string, job: string): Autosave => {
    const autosave = new Autosave(store, id)
    autosave.take({ seen: [], worksheet: sheetSaying(job) })
    return autosave
  }
  return { store, local, left, unsaved, announced, typing }
}

test('what was typed in a sheet never saved before is saved by the next page, and announced once', async () => {
  const { store, local, left, announced, typing } = await page()
  expect(left.leave([typing('a', 'left at once')])).toBe(true)
  await left.takeUp()
  await left.takeUp()
  expect((await store.load('a'))?.job).toBe('left at once')
  expect(announced).toEqual(['a'])
  expect(Object.keys(local)).toEqual([])
})

test('what was saved after all is not saved again', async () => {
  const { store, local, left, announced, typing } = await page()
  const autosave = typing('a', 'saved in time')
  left.leave([autosave])
  await autosave.flush()
  await left.takeUp()
  expect(announced).toEqual([])
  expect(await store.revisions('a')).toEqual([])
  expect(Object.keys(local)).toEqual([])
})

test('over a state that another tab has saved since, what was left becomes a revision', async () => {
  const { store, left, typing } = await page()
  left.leave([typing('a', 'left')])
  await store.save('a', sheetSaying('by another tab'))
  await left.takeUp()
  expect((await store.load('a'))?.job).toBe('by another tab')
  const [revision] = await store.revisions('a')
  expect((await store.revision('a', revision?.at ?? 0))?.job).toBe('left')
})

test('unreadable data under a key of ours is removed, and nothing is saved', async () => {
  const text = fc.oneof(
    fc.string(),
    fc.json(),
    fc.jsonValue().map((worksheet) => JSON.stringify({ seen: 0, worksheet })),
    fc.constantFrom('null', '{}', '{"seen":[]}', '{"seen":[],"worksheet":null}', '[]'),
  )
  await fc.assert(
    fc.asyncProperty(fc.string(), text, async (id, rubbish) => {
      const { store, local, left } = await page()
      local.setItem(LEFT + id, rubbish)
      await left.takeUp()
      expect(Object.keys(local)).toEqual([])
      expect(await store.list()).toEqual([])
    }),
    { numRuns: 60 },
  )
})

test('a sheet of a newer version stays left for it, and those beside it are saved', async () => {
  const { store, local, left, typing } = await page()
  const newer = { ...sheetSaying('newer'), version: 999 }
  local.setItem(`${LEFT}newer`, JSON.stringify({ seen: [], worksheet: newer }))
  left.leave([typing('a', 'ours')])
  await left.takeUp()
  expect((await store.load('a'))?.job).toBe('ours')
  expect(Object.keys(local)).toEqual([`${LEFT}newer`])
})

test('where there is no room, or no local storage, the page learns that nothing is left', async () => {
  const full: Storage = Object.create(simulatedLocal(), {
    setItem: {
      value: () => {
        throw new DOMException('', 'QuotaExceededError')
      },
    },
  })
  const { store, unsaved, typing } = await page()
  for (const local of [full, undefined]) {
    const left = new LeftSheets(store, unsaved, { local, locks: undefined, tell: () => {} })
    expect(left.leave([])).toBe(true)
    expect(left.leave([typing('a', 'typed')])).toBe(false)
    await left.takeUp()
  }
})
