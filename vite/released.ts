import type { Plugin } from 'vite'
import type { Worksheet } from '../src/worksheet/index.ts'
import { madeModule } from './made.ts'

interface Made {
  readonly released: readonly { readonly job: string; readonly digest: string; readonly worksheet?: Worksheet }[]
}

/** Writes out the jobs of every release, which links refer to. The page has their addresses. */
export const releasedJobs = (): Plugin =>
  madeModule<Made>({
    plugin: 'evenfield-released-jobs',
    name: 'virtual:released-jobs',
    entry: 'vite/released/all.ts',
    write: ({ released }, { place, follow }) => {
      const addresses: Record<string, Record<string, string>> = {}
      for (const { job, digest, worksheet } of released) {
        follow(job)
        addresses[job] = {
          ...addresses[job],
          [digest]: worksheet ? place(`${job}-released`, 'json', JSON.stringify(worksheet)) : '',
        }
      }
      return `export const RELEASED = ${JSON.stringify(addresses)}`
    },
  })
