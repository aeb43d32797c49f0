import { newId } from './new-id.ts'
import { readable, writable } from './readable.ts'
import { freeTime, isDue, latestFirst, named, type Revision, revisionsToDrop } from './revision.ts'
import { StoreError } from './store-error.ts'
import { asArchived, newestFirst, now, stateOf, summarise, withChecks } from './summary.ts'
import type { RawRevision, Store, Summary } from './types.ts'

interface Entry {
  readonly summary: Summary
  readonly data: unknown
  readonly history?: unknown
  readonly past: readonly RawRevision[]
}

/** A store that lasts as long as the tab. */
export function openMemory(problem: StoreError | undefined): Store {
  const sheets = new Map<string, Entry>()
  const settings = new Map<string, unknown>()

  const update = (id: string, how: (entry: Entry) => Partial<Entry>) => {
    const entry = sheets.get(id)
    if (entry) sheets.set(id, { ...entry, ...how(entry) })
  }
  const summaries = (isIncluded: (summary: Summary) => boolean) =>
    newestFirst([...sheets.values()].map(({ summary }) => summary).filter(isIncluded))
  const linesOf = (past: readonly RawRevision[], sheet: string): readonly Revision[] =>
    past.map(({ worksheet: _, ...line }) => ({ ...line, sheet }))
  const pastOf = (id: string): readonly RawRevision[] => sheets.get(id)?.past ?? []
  const add = (id: string, revision: RawRevision): number => {
    const at = freeTime(revision.at, linesOf(pastOf(id), id))
    update(id, ({ past }) => ({ past: [...past, structuredClone({ ...revision, at })] }))
    return at
  }
  const read = async (id: string) => {
    const entry = structuredClone(sheets.get(id))
    if (!entry) return undefined
    const { data, summary, history } = entry
    return { worksheet: await readable(data), summary, ...(history === undefined ? {} : { history }) }
  }
  const rawRevision = async (id: string, at: number): Promise<unknown> =>
    structuredClone(pastOf(id).find((one) => one.at === at)?.worksheet)

  return {
    persistent: false,
    problem,
    async save(id, worksheet, { seen = [], history, checks } = {}) {
      await writable(worksheet)
      const before = sheets.get(id)
      if (before && !seen.includes(stateOf(before.summary))) throw new StoreError('elsewhere')
      const summary = summarise(id, worksheet, newId(), { before: before?.summary, checks })
      if (before && isDue(before.summary.changed, summary.changed)) {
        const stamp = stateOf(before.summary)
        if (!before.past.some((one) => one.stamp === stamp))
          add(id, { at: before.summary.changed, stamp, worksheet: before.data })
        const gone = new Set(revisionsToDrop(linesOf(pastOf(id), id), summary.changed).map(({ at }) => at))
        update(id, ({ past }) => ({ past: past.filter(({ at }) => !gone.has(at)) }))
      }
      sheets.set(id, { ...structuredClone({ summary, data: worksheet, history }), past: pastOf(id) })
      return summary
    },
    read,
    load: async (id) => (await read(id))?.worksheet,
    async raw(id) {
      const entry = sheets.get(id)
      return entry && structuredClone({ data: entry.data, summary: entry.summary })
    },
    list: async () => summaries(({ removed }) => removed === undefined),
    listRemoved: async () => summaries(({ removed }) => removed !== undefined),
    remove: async (id) => update(id, ({ summary }) => ({ summary: { ...summary, removed: Date.now() } })),
    archive: async (id, archived) => update(id, ({ summary }) => ({ summary: asArchived(summary, archived) })),
    noteChecks: async (id, checks) => update(id, ({ summary }) => ({ summary: withChecks(summary, checks) })),
    restore: async (id) =>
      update(id, ({ summary: { removed: _, ...summary } }) => ({
        summary,
      })),
    async erase(id) {
      sheets.delete(id)
    },
    revisions: async (id) => latestFirst(linesOf(pastOf(id), id)),
    async revision(id, at) {
      const data = await rawRevision(id, at)
      return data === undefined ? undefined : readable(data)
    },
    rawRevision,
    async saveRevision(id, mark, worksheet) {
      const entry = sheets.get(id)
      if (!entry) return undefined
      if (worksheet) return add(id, { at: now(), ...mark, worksheet })
      const stamp = stateOf(entry.summary)
      const saved = entry.past.find((one) => one.stamp === stamp)
      if (!saved) return add(id, { at: entry.summary.changed, stamp, ...mark, worksheet: entry.data })
      update(id, ({ past }) => ({ past: past.map((one) => (one === saved ? { ...one, ...mark } : one)) }))
      return saved.at
    },
    async nameRevision(id, at, name) {
      update(id, ({ past }) => ({
        past: past.map((one) => {
          if (one.at !== at) return one
          const { sheet: _, ...line } = named({ ...one, sheet: id }, name)
          return { ...line, worksheet: one.worksheet }
        }),
      }))
    },
    async import({ data, summary }, past) {
      if (sheets.has(summary.id)) return false
      sheets.set(summary.id, { summary, data: structuredClone(data), past: [] })
      for (const one of past) add(summary.id, one)
      return true
    },
    async importRevisions(id, past) {
      const known = new Set(pastOf(id).map(({ at }) => at))
      for (const one of past) if (!known.has(one.at)) add(id, one)
    },
    setting: async (name) => structuredClone(settings.get(name)),
    async saveSetting(name, value) {
      settings.set(name, structuredClone(value))
    },
    sleep() {},
    close() {},
  }
}
