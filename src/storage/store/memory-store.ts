import type { Worksheet } from '../../worksheet/schema/document.ts'
import { isDue, latestFirst, named, type Revision, revisionsToDrop } from './revision.ts'
import { StoreError } from './store-error.ts'
import { changesOf, newestFirst, summarise } from './summary.ts'
import type { SavedRevision, Store, Summary } from './types.ts'

interface Entry {
  summary: Summary
  worksheet: Worksheet
  past: readonly SavedRevision[]
}

/** A store that lasts as long as the tab. */
export function openMemory(problem: StoreError | undefined): Store {
  const sheets = new Map<string, Entry>()
  const settings = new Map<string, unknown>()

  const change = (id: string, how: (summary: Summary) => Summary) => {
    const entry = sheets.get(id)
    if (entry) entry.summary = how(entry.summary)
  }
  const summaries = (wanted: (summary: Summary) => boolean) =>
    newestFirst([...sheets.values()].map(({ summary }) => summary).filter(wanted))
  const lines = (id: string): readonly Revision[] =>
    latestFirst((sheets.get(id)?.past ?? []).map(({ worksheet: _, ...line }) => ({ ...line, sheet: id })))
  const addPast = (id: string, past: readonly SavedRevision[]) => {
    const entry = sheets.get(id)
    if (!entry) return
    const fresh = past.filter(({ at }) => !entry.past.some((one) => one.at === at))
    entry.past = [...entry.past, ...structuredClone(fresh)]
  }
  const write = (id: string, summary: Summary, worksheet: Worksheet) =>
    sheets.set(id, { summary, worksheet: structuredClone(worksheet), past: sheets.get(id)?.past ?? [] })

  return {
    persistent: false,
    problem,
    async save(id, worksheet, seen) {
      const before = sheets.get(id)
      if (before && seen !== undefined && changesOf(before.summary) !== seen) throw new StoreError('elsewhere')
      const summary = summarise(id, worksheet, before?.summary)
      if (before && isDue(before.summary.changed, summary.changed)) {
        addPast(id, [{ at: before.summary.changed, worksheet: before.worksheet }])
        const gone = new Set(revisionsToDrop(lines(id), summary.changed).map(({ at }) => at))
        before.past = before.past.filter(({ at }) => !gone.has(at))
      }
      write(id, summary, worksheet)
      return summary
    },
    async read(id) {
      const entry = sheets.get(id)
      return entry && structuredClone({ worksheet: entry.worksheet, summary: entry.summary })
    },
    load: async (id) => structuredClone(sheets.get(id)?.worksheet),
    list: async () => summaries(({ removed }) => removed === undefined),
    listRemoved: async () => summaries(({ removed }) => removed !== undefined),
    remove: async (id) => change(id, (summary) => ({ ...summary, removed: Date.now() })),
    restore: async (id) => change(id, ({ removed: _, ...summary }) => summary),
    async erase(id) {
      sheets.delete(id)
    },
    revisions: async (id) => lines(id),
    revision: async (id, at) => structuredClone(sheets.get(id)?.past.find((one) => one.at === at)?.worksheet),
    async saveRevision(id, mark, worksheet) {
      const entry = sheets.get(id)
      if (!entry) return
      if (worksheet) return addPast(id, [{ at: Date.now(), ...mark, worksheet }])
      const at = entry.summary.changed
      const kept = entry.past.find((one) => one.at === at)
      const line = { at, ...kept, ...mark, worksheet: entry.worksheet }
      entry.past = [...entry.past.filter((one) => one !== kept), line]
    },
    async nameRevision(id, at, name) {
      const entry = sheets.get(id)
      if (!entry) return
      entry.past = entry.past.map((one) => {
        if (one.at !== at) return one
        const { sheet: _, ...line } = named({ ...one, sheet: id }, name)
        return { ...line, worksheet: one.worksheet }
      })
    },
    async import({ summary, worksheet }, past) {
      if (sheets.has(summary.id)) return false
      write(summary.id, summary, worksheet)
      addPast(summary.id, past)
      return true
    },
    async importRevisions(id, past) {
      addPast(id, past)
    },
    setting: async (name) => structuredClone(settings.get(name)),
    async saveSetting(name, value) {
      settings.set(name, structuredClone(value))
    },
    close() {},
  }
}
