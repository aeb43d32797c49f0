import fc from 'fast-check'
import { vi } from 'vitest'
import { openStore } from '../../../src/storage/index.ts'
import { drained, FAULTS, type Plan, SimulatedDatabases } from './database.ts'
import { LIMIT_MS, SHEET_ID, SimulatedLocks, SimulatedMessages, sheetSaying, simulatedLocal, Tab } from './tabs.ts'

/** One thing that happens in the simulated browser. */
export type Step =
  | {
      readonly do: 'type' | 'flush' | 'leave' | 'open' | 'take over' | 'crash'
      readonly tab: number
    }
  /** So many turns after a save has begun. */
  | { readonly do: 'go to sleep' | 'reload'; readonly tab: number; readonly turns: number }
  | { readonly do: 'wait'; readonly ms: number }
  | { readonly do: 'fail'; readonly tab: number; readonly plan: Plan }
  | { readonly do: 'close'; readonly tab: number; readonly isNotified: boolean }
  | { readonly do: 'messages'; readonly isLost: boolean }
  | { readonly do: 'mute'; readonly tab: number; readonly isMute: boolean }
  | { readonly do: 'clock'; readonly ms: number }

export interface Setting {
  readonly tabs: number
  readonly hasLocks: boolean
  readonly hasMessages: boolean
}

export const settings: fc.Arbitrary<Setting> = fc.record({
  tabs: fc.integer({ min: 1, max: 3 }),
  hasLocks: fc.boolean(),
  hasMessages: fc.boolean(),
})

const HOUR = 3_600_000
const tab = fc.integer({ min: 0, max: 2 })
const plan = fc.record({ fault: fc.constantFrom(...FAULTS), step: fc.integer({ min: 0, max: 9 }) })

const of = <const Do extends string>(...names: Do[]) => fc.record({ do: fc.constantFrom(...names), tab })

const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 8, arbitrary: of('type') },
  { weight: 6, arbitrary: fc.record({ do: fc.constant('wait' as const), ms: fc.constantFrom(50, 400, 1200, 6000) }) },
  { weight: 5, arbitrary: fc.record({ do: fc.constant('fail' as const), tab, plan }) },
  { weight: 6, arbitrary: of('flush', 'leave', 'open', 'open', 'take over') },
  { weight: 1, arbitrary: of('crash') },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constantFrom('go to sleep' as const, 'reload' as const),
      tab,
      turns: fc.integer({ min: 0, max: 12 }),
    }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('close' as const), tab, isNotified: fc.boolean() }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('messages' as const), isLost: fc.boolean() }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('mute' as const), tab, isMute: fc.boolean() }) },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('clock' as const), ms: fc.constantFrom(-HOUR, HOUR, 300 * 24 * HOUR) }),
  },
)

export const steps = fc.array(step, { minLength: 5, maxLength: 40 })

/** What a run was found to have done. */
export interface Tally {
  runs: number
  typed: number
  acknowledged: number
  faults: number
  refused: number
}

/** Lets timers and the database go on for a while. */
async function pass(ms: number): Promise<void> {
  await drained(40)
  const step = ms > 5000 ? 1000 : 250
  for (let left = ms; left > 0; left -= step) {
    await vi.advanceTimersByTimeAsync(Math.min(step, left))
    await drained(20)
  }
}

/** What lies in the store, as a tab without faults reads it. */
class Witness {
  /** Every text that was the sheet's saved state at some time, and by which tab's typing it came. */
  private current: string | undefined
  private readonly store = openStore({ name: 'sheets#witness' })

  constructor(private readonly tabs: readonly Tab[]) {}

  async look(): Promise<{ current: string | undefined; past: ReadonlySet<string> }> {
    const store = await this.settled(this.store)
    const raw = await this.settled(store.raw(SHEET_ID))
    const past = new Set<string>()
    for (const { at } of await this.settled(store.revisions(SHEET_ID)))
      past.add(textOf(await this.settled(store.rawRevision(SHEET_ID, at))))
    return { current: raw && textOf(raw.data), past }
  }

  /** Looks at what became of the saved state since last time: anyone who wrote over it must have seen it, or it is a revision. */
  async compare(): Promise<void> {
    const before = this.current
    const { current, past } = await this.look()
    this.current = current
    if (before === undefined || current === before) return
    if (current === undefined) throw new Error(`“${before}” is gone from the store.`)
    const writer = this.tabs.find(({ name }) => current.startsWith(`${name} `))
    if (writer?.seen.has(before) || past.has(before)) return
    throw new Error(`“${current}” was written over “${before}”, which ${writer?.name} has not seen.`)
  }

  private async settled<T>(work: Promise<T>): Promise<T> {
    let isOver = false
    const watched = work.finally(() => {
      isOver = true
    })
    watched.catch(() => {})
    // What is never answered holds others up until it is given up.
    for (let turn = 0; turn < 40 && !isOver; turn++) {
      for (let step = 0; step < 100 && !isOver; step++) await drained(1)
      if (!isOver) await vi.advanceTimersByTimeAsync(LIMIT_MS / 4)
    }
    if (!isOver) throw new Error('The store does not answer the witness.')
    return watched
  }
}

const textOf = (data: unknown): string => (data as { job?: string }).job ?? ''

let runs = 0

/** Runs some steps in a fresh browser and checks after each; throws where something is lost or written over unseen. */
export async function run({ tabs: count, hasLocks, hasMessages }: Setting, what: readonly Step[], tally: Tally) {
  // A page killed in an earlier run would try again in this one.
  vi.clearAllTimers()
  runs++
  const names = new Set(['first', 'witness'])
  vi.setSystemTime(Date.UTC(2026, 4, 1, 12))
  const databases = new SimulatedDatabases(names)
  const locks = new SimulatedLocks()
  const messages = new SimulatedMessages()
  /** Texts the head called saved. */
  const saved = new Set<string>()
  const local = simulatedLocal()
  /** A page in one of the browser's tabs; the pages of one tab come one after the other. */
  const page = (place: string): Tab => {
    const name = `${place} of run ${runs}`
    names.add(name)
    const means = () => ({
      locks: hasLocks ? locks.forTab(name) : undefined,
      channel: hasMessages ? messages.channel() : undefined,
    })
    return new Tab(name, means, local, (text) => saved.add(text))
  }
  const places = Array.from({ length: count }, (_, at) => page(`tab${at}`))
  /** Every page there has been. */
  const tabs = [...places]
  const first = openStore({ name: 'sheets#first' })
  await pass(0)
  void (await first).save(SHEET_ID, sheetSaying('first'))
  await pass(0)
  for (const one of tabs) void one.start().then(() => one.open())
  await pass(LIMIT_MS)
  const witness = new Witness(tabs)
  await witness.compare()

  let typed = 0
  for (const one of what) {
    const place = 'tab' in one ? one.tab % count : 0
    const at = 'tab' in one ? places[place] : undefined
    if (one.do === 'wait') await pass(one.ms)
    else if (one.do === 'messages') messages.isLost = one.isLost
    else if (one.do === 'clock') vi.setSystemTime(Date.now() + one.ms)
    else if (at) {
      if (one.do === 'type') at.type(`${at.name} ${++typed}`)
      else if (one.do === 'flush') void at.flush()
      else if (one.do === 'leave') void at.leave()
      else if (one.do === 'open') void at.open()
      else if (one.do === 'take over') void at.session?.takeOver()
      else if (one.do === 'close') databases.close(at.name, one.isNotified)
      else if (one.do === 'fail') {
        databases.fail(at.name, { ...one.plan })
        tally.faults++
      } else if (one.do === 'mute') {
        if (one.isMute) databases.mute.add(at.name)
        else databases.mute.delete(at.name)
      } else if (one.do === 'crash' && at.isAlive) {
        at.isAlive = false
        databases.crash(at.name)
        locks.crash(at.name)
      } else if ((one.do === 'go to sleep' || one.do === 'reload') && at.isAlive) {
        void at.flush()
        await drained(one.turns)
        if (at.hide() && one.do === 'go to sleep') databases.asleep.add(at.name)
        else databases.crash(at.name)
        locks.crash(at.name)
        for (const other of tabs) void other.takeUp()
        const next = page(`tab${place}, page ${tabs.length}`)
        places[place] = next
        tabs.push(next)
        void next.start().then(() => next.open())
      }
    }
    await pass(0)
    for (const tab of tabs) tab.look()
    await witness.compare()
  }

  // Nothing goes wrong any more: what is not saved is saved by itself, within the longest time between two tries.
  databases.heal()
  messages.isLost = false
  const last = page('last')
  void last.start()
  for (let turn = 0; turn < 6; turn++) {
    await pass(20_000)
    for (const tab of tabs) tab.look()
    await witness.compare()
  }
  const { current, past } = await witness.look()
  const isThere = (text: string): boolean => current === text || past.has(text)
  for (const tab of tabs) {
    if (!tab.isAlive && !tab.isLeft) continue
    if (tab.isAlive && tab.isUnsaved) throw new Error(`${tab.name} still has something that is not saved.`)
    if (tab.last === undefined || isThere(tab.last)) continue
    // It was saved, and someone who saw it went on from there.
    const isReplaced = tabs.some((other) => other !== tab && other.seen.has(tab.last as string))
    if (!((saved.has(tab.last) || tab.isLeft) && isReplaced)) throw new Error(`“${tab.last}” is lost.`)
  }
  const left = Object.keys(local)
  if (left.length > 0) throw new Error(`${left.join(', ')} was never taken up.`)
  tally.runs++
  tally.typed += typed
  tally.acknowledged += saved.size
  tally.refused += past.size
}
