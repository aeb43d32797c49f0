import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'

/** The scripts index.html names. */
const TAG = /<(?:script\b[^>]*\bsrc|link\b[^>]*\brel="modulepreload"[^>]*\bhref)="\.?\/?([^"]+)"/g

/** What is imported one after the other on the way to a sheet filled in, besides the functions it calls. */
const OPENING = ['src/app/opening.ts']

/** What follows by itself once a sheet stands: the mends of its checks, the handles of its lamps, what reads a formula nobody prepared. */
const FOLLOWING = [
  'src/worksheet/mends.ts',
  'src/cells/mend-list.ts',
  'src/cells/lamp-handles.ts',
  'src/app/knowing.ts',
]

/** Chunks and all they import statically. */
function closure(chunks, names) {
  const found = new Set()
  const add = (name) => {
    if (found.has(name)) return
    found.add(name)
    for (const needed of chunks.get(name)?.imports ?? []) add(needed)
  }
  for (const name of names) add(name)
  return [...found]
}

/** For each function, the file it stands in. */
async function filesOfFunctions(vite, root) {
  const index = join(root, 'src/functions/index.ts')
  const { module } = await vite.runnerImport(index, { root, configFile: false, logLevel: 'error' })
  return new Map(
    Object.entries(module.SUBJECTS).flatMap(([file, records]) =>
      records.map(({ name }) => [name, `src/functions/${file}.ts`]),
    ),
  )
}

/** The modules a template is opened with: its functions are found as src/app/library.ts finds them. */
function modulesFor(template, files) {
  const called = JSON.stringify(template.cells).match(/[A-Za-z_]\w*(?=\s*\()/g) ?? []
  return [...OPENING, ...new Set([...drawn(template).slice(0, 1), ...called.flatMap((name) => files.get(name) ?? [])])]
}

/** A drawing further down is fetched when it comes into view, or the page has rested. */
const drawn = ({ cells }) =>
  cells.filter(({ kind }) => kind === 'drawing').map(({ drawing }) => `src/drawings/${drawing}.ts`)

const KIT = ['src/cells/kit-field.ts', 'src/kit/studio.ts', 'src/kit/generic.ts', 'shared/kit.json']
const WIDE = ['steps', 'schedule', 'range', 'variants', 'run']

/** Cells whose elements are fetched when a sheet has one, into rows that already stand. */
function fetchedByCells({ cells }) {
  const wide = WIDE.filter((kind) => cells.some((cell) => cell.kind === kind))
  const upright = cells.some(({ kind, from }) => kind === 'drawing' && from.upright !== undefined)
  return [
    ...wide.map((kind) => `src/cells/${kind}-cell.ts`),
    ...(cells.some(({ entry }) => entry === 'kit') ? KIT : []),
    ...(wide.includes('schedule') ? ['src/worksheet/schedules.ts'] : []),
    ...(cells.some(({ kind }) => kind === 'result') ? ['src/cells/records-table.ts'] : []),
    ...(upright ? ['src/drawings/any-set-up.ts'] : []),
  ]
}

/**
 * What the browser fetches for the page itself, and, by template, for the page and a sheet opened from it to be filled
 * in: the scripts' names. Under `later` what follows by itself: its drawings altogether, tables and lists, mends, handles.
 */
export async function firstLoad({ vite, root, output, html }) {
  const chunks = new Map(output.filter(({ type }) => type === 'chunk').map((chunk) => [chunk.fileName, chunk]))
  const chunkOf = (module) => {
    const found = [...chunks.values()].find(({ moduleIds }) => moduleIds.includes(join(root, module)))
    if (!found) throw new Error(`No script of the built page holds ${module}.`)
    return found.fileName
  }
  const page = closure(
    chunks,
    [...html.matchAll(TAG)].map(([, name]) => name),
  )
  const files = await filesOfFunctions(vite, root)
  const folder = join(root, 'templates')
  const sheets = readdirSync(folder).map((file) => {
    const template = JSON.parse(readFileSync(join(folder, file), 'utf8'))
    const names = closure(chunks, [...page, ...modulesFor(template, files).map(chunkOf)])
    return [
      file.replace(/\.json$/, ''),
      { names, later: closure(chunks, [...drawn(template), ...fetchedByCells(template), ...FOLLOWING].map(chunkOf)) },
    ]
  })
  const part = (key) => Object.fromEntries(sheets.map(([name, one]) => [name, one[key]]))
  return { page, sheets: part('names'), later: part('later') }
}

export const gzipped = (path) => gzipSync(readFileSync(path), { level: 9 }).length
