import type { Worksheet } from '../worksheet/document.ts'
import type { Store, Summary } from './store.ts'
import type { StoreError } from './store-error.ts'
import { newestFirst, summarise } from './summary.ts'

/** A store that lasts as long as the tab. */
export function openMemory(trouble: StoreError | undefined): Store {
  const sheets = new Map<string, Worksheet>()
  const summaries = new Map<string, Summary>()
  const settings = new Map<string, unknown>()
  const change = (id: string, how: (summary: Summary) => Summary) => {
    const summary = summaries.get(id)
    if (summary) summaries.set(id, how(summary))
  }
  return {
    kept: false,
    trouble,
    async save(id, worksheet) {
      const summary = summarise(id, worksheet)
      sheets.set(id, structuredClone(worksheet))
      summaries.set(id, summary)
      return summary.changed
    },
    load: async (id) => structuredClone(sheets.get(id)),
    list: async () => newestFirst([...summaries.values()].filter((one) => one.removed === undefined)),
    listRemoved: async () => newestFirst([...summaries.values()].filter((one) => one.removed !== undefined)),
    remove: async (id) => change(id, (summary) => ({ ...summary, removed: Date.now() })),
    restore: async (id) => change(id, ({ removed: _, ...summary }) => summary),
    async erase(id) {
      sheets.delete(id)
      summaries.delete(id)
    },
    setting: async (name) => structuredClone(settings.get(name)),
    async keepSetting(name, value) {
      settings.set(name, structuredClone(value))
    },
    close() {},
  }
}
