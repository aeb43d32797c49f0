import 'fake-indexeddb/auto'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { openStore } from '../../../src/storage/index.ts'
import { stateOf } from '../../../src/storage/store/summary.ts'
import { SHEET } from '../sheets.ts'

const MINUTE = 60_000
const DAY = 24 * 60 * MINUTE

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date'], now: Date.UTC(2026, 4, 1, 12) })
})
afterEach(() => {
  vi.useRealTimers()
})

test('a clock that was once ahead stops no revision, and the sheet changed last stays the first of the list', async () => {
  const store = await openStore({ name: 'clock' })
  let seen = ''
  const save = async (title: string) => {
    const saved = await store.save('a', { ...SHEET, title }, { seen: [seen] })
    seen = stateOf(saved)
  }
  const past = async () =>
    Promise.all((await store.revisions('a')).map(async ({ at }) => (await store.revision('a', at))?.title))

  await save('before')
  vi.setSystemTime(Date.now() + 300 * DAY)
  await save('while the clock is ahead')
  vi.setSystemTime(Date.now() - 300 * DAY + 2 * MINUTE)
  await save('set right')
  vi.setSystemTime(Date.now() + 2 * MINUTE)
  await save('later')
  vi.setSystemTime(Date.now() + 2 * MINUTE)
  await save('now')
  expect((await past()).sort()).toEqual(['before', 'later', 'set right', 'while the clock is ahead'])

  await store.save('b', SHEET)
  expect((await store.list()).map(({ id }) => id)).toEqual(['b', 'a'])
  store.close()
})
