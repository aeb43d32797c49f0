import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { openStore } from '../../../src/storage/index.ts'
import { stateOf } from '../../../src/storage/store/summary.ts'
import type { Store } from '../../../src/storage/store/types.ts'
import { SHEET } from '../sheets.ts'
import { drained, FAULTS, type Plan, SimulatedDatabases } from './database.ts'

const LIMIT_MS = 1000
const MINUTE = 60_000

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'Date', 'performance'], now: Date.UTC(2026, 4, 1, 12) })
})
afterEach(() => {
  vi.useRealTimers()
})

/** Waits for some work while the database and the clock go on. */
async function settled<T>(work: Promise<T>): Promise<T> {
  let isOver = false
  const watched = work.finally(() => {
    isOver = true
  })
  watched.catch(() => {})
  for (let turn = 0; turn < 20 && !isOver; turn++) {
    for (let step = 0; step < 200 && !isOver; step++) await drained(1)
    if (!isOver) await vi.advanceTimersByTimeAsync(LIMIT_MS / 4)
  }
  if (!isOver) throw new Error('It never ended.')
  return watched
}

const opened = (tab: string): Promise<Store> =>
  settled(openStore({ name: `sheets#${tab}`, openingLimit: LIMIT_MS, transactionLimit: LIMIT_MS }))

/** All there is in the database, but for what is drawn by lot or read from the clock. */
async function contents(): Promise<unknown> {
  const store = await opened('witness')
  const found: unknown[] = []
  for (const { id } of [...(await settled(store.list())), ...(await settled(store.listRemoved()))]) {
    const raw = await settled(store.raw(id))
    const { stamp: _, changed: __, removed, ...summary } = raw?.summary ?? { stamp: '', changed: 0, id }
    const past: unknown[] = []
    for (const { at, name, why } of await settled(store.revisions(id)))
      past.push({ name, why, worksheet: await settled(store.rawRevision(id, at)) })
    const saved = await settled(store.read(id))
    found.push({ ...summary, removed: removed !== undefined, data: raw?.data, history: saved?.history, past })
  }
  const result = { found, setting: await settled(store.setting('face')) }
  store.close()
  return result
}

/** A sheet with a past, and a state that is due to become a revision when it is written over. */
async function prepared(): Promise<Store> {
  const store = await opened('user')
  const first = await settled(store.save('a', SHEET))
  vi.setSystemTime(Date.now() + 2 * MINUTE)
  await settled(store.save('a', { ...SHEET, title: 'second' }, { seen: [stateOf(first)] }))
  await settled(store.saveSetting('face', 'dim'))
  vi.setSystemTime(Date.now() + 2 * MINUTE)
  return store
}

const third = { ...SHEET, title: 'third' }
const summary = { id: 'b', title: 'b', changed: 1, cells: 4, stamp: 'b' }

const WORKS: Readonly<Record<string, (store: Store, seen: string[]) => Promise<unknown>>> = {
  'saving over a state': (store, seen) => store.save('a', third, { seen, history: { steps: 1 } }),
  'saving a new sheet': (store, seen) => store.save('new', third, { seen }),
  'saving a revision': (store) => store.saveRevision('a', { name: 'As agreed' }),
  'saving another state as a revision': (store) => store.saveRevision('a', { name: 'Typed elsewhere' }, third),
  'naming a revision': async (store) => {
    const [line] = await store.revisions('a')
    return store.nameRevision('a', line?.at ?? 0, 'named')
  },
  'removing a sheet': (store) => store.remove('a'),
  'restoring a sheet': (store) => store.restore('a'),
  'erasing a sheet': (store) => store.erase('a'),
  'taking a sheet in': (store) => store.import({ data: third, summary }, [{ at: 3, worksheet: SHEET }]),
  'taking revisions in': (store) => store.importRevisions('a', [{ at: 3, worksheet: SHEET }]),
  'saving a setting': (store) => store.saveSetting('face', 'light'),
}

describe('whatever fails at whichever step, it is all done or not at all, and is done when tried again', () => {
  test.each(Object.entries(WORKS))('%s', async (name, work) => {
    let failures = 0
    for (const fault of FAULTS)
      for (let step = 0, isLast = false; !isLast; step++) {
        const databases = new SimulatedDatabases()
        const store = await prepared()
        const seen = [stateOf((await settled(store.raw('a')))?.summary as never)]
        const before = await contents()
        const plan: Plan = { fault, step }
        databases.fail('user', plan)
        const failure = await settled(work(store, seen)).then(
          () => undefined,
          (error) => error,
        )
        const after = await contents()
        isLast = plan.atCommit === true || step > 40
        databases.heal()
        if (failure) {
          failures++
          expect(failure.name, `${fault} at ${step}: ${failure.message}`).toBe('StoreError')
          if (fault !== 'answer lost') expect(after, `${fault} at ${step}`).toEqual(before)
          if (failure.attempt) seen.push(failure.attempt)
          await settled(work(store, seen))
        }
        // What was done although the answer was lost is done twice when it is tried again.
        const isTwice = fault === 'answer lost' && failure
        if (!(isTwice && name === 'saving another state as a revision'))
          expect(countless(await contents(), isTwice), `${fault} at ${step}`).toEqual(
            countless(await expected(name), isTwice),
          )
        store.close()
      }
    expect(failures).toBeGreaterThan(0)
  })
})

/** The contents, for some cases without how often each sheet was saved. */
const countless = (contents: unknown, isSo: boolean): unknown =>
  isSo ? JSON.parse(JSON.stringify(contents, (key, value) => (key === 'changes' ? undefined : value))) : contents

const results = new Map<string, unknown>()

/** What the database has when nothing goes wrong. */
async function expected(name: string): Promise<unknown> {
  const known = results.get(name)
  if (known) return known
  new SimulatedDatabases()
  const store = await prepared()
  const seen = [stateOf((await settled(store.raw('a')))?.summary as never)]
  await settled((WORKS[name] as (typeof WORKS)[string])(store, seen))
  const found = await contents()
  store.close()
  results.set(name, found)
  return found
}
