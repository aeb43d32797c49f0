import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import type { Plugin } from 'vite'
import type { PublishedRow } from '../src/functions/published/report.ts'
import type { FunctionRecord } from '../src/language/index.ts'
import { madeModule } from './made.ts'
import { validationPage, validationStyle } from './published/page.ts'

interface Made {
  readonly FUNCTIONS: readonly FunctionRecord[]
  readonly checkedFunctions: () => ReadonlyMap<string, readonly string[]>
  readonly publishedRows: () => readonly PublishedRow[]
}

/** The package's version and its day: that of the commit where git knows it, so that the same source gives the same page. */
function version(): string {
  const { version: number } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
    version: string
  }
  try {
    const commit = ['log', '-1', '--format=%h of %cs']
    return `${number} (${execFileSync('git', commit, { encoding: 'utf8', stdio: 'pipe' }).trim()})`
  } catch {
    return `${number}, built ${new Date().toISOString().slice(0, 10)}`
  }
}

/**
 * Compares every published value while the site is built. The guide fetches the comparisons as data when a function’s
 * record is opened; the validation page lists them all, to be printed.
 */
export const published = (): Plugin =>
  madeModule<Made>({
    plugin: 'evenfield-published',
    name: 'virtual:published',
    entry: 'vite/published/all.ts',
    write: ({ FUNCTIONS, checkedFunctions, publishedRows }, { place }) => {
      const rows = publishedRows()
      const byId = new Map(rows.map((row) => [row.id, row]))
      const checked = checkedFunctions()
      const inFunctions = new Set([...checked.values()].flat())
      const groups = [
        ...FUNCTIONS.flatMap(({ name }) => {
          const ids = checked.get(name)
          return ids ? [[name, ids.map((id) => byId.get(id) as PublishedRow)] as const] : []
        }),
        ['units and arithmetic', rows.filter(({ id }) => !inFunctions.has(id))] as const,
      ]
      const unchecked = FUNCTIONS.filter(({ name }) => !checked.has(name)).map(({ name }) => name)
      // Page and style are in one folder of the built site.
      const ofThis = version()
      const style = place('validation', 'css', validationStyle(ofThis)).replace(/^.*\//, './')
      const page = validationPage({ style, version: ofThis, groups, rows, unchecked })
      const sources = [...new Set(rows.map(({ source }) => source))]
      const data = {
        sources,
        rows: rows.map(({ read_at: _, source, ...row }) => ({ ...row, source: sources.indexOf(source) })),
        functions: Object.fromEntries(checked),
      }
      return [
        `export const PUBLISHED = ${JSON.stringify(place('published', 'json', JSON.stringify(data)))}`,
        `export const VALIDATION = ${JSON.stringify(place('validation', 'html', page))}`,
      ].join('\n')
    },
  })
