import { readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { cruise, type ICruiseResult, type IModule } from 'dependency-cruiser'
import { beforeAll, describe, expect, it } from 'vitest'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))

/** For each room, the rooms below it: what it may import. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  units: [],
  language: ['units'],
  functions: ['units', 'language'],
  frame: ['units', 'language', 'functions'],
  worksheet: ['units', 'language', 'functions'],
  drawings: ['units', 'language', 'functions', 'worksheet'],
  storage: ['units', 'language', 'functions', 'worksheet'],
  kit: ['units', 'language', 'functions', 'worksheet', 'storage'],
  cells: ['units', 'language', 'functions', 'frame', 'worksheet', 'drawings', 'storage', 'kit'],
  app: ['units', 'language', 'functions', 'frame', 'worksheet', 'drawings', 'storage', 'kit', 'cells'],
  cli: ['units', 'language', 'functions', 'frame', 'worksheet', 'drawings', 'storage', 'kit'],
  worker: [],
}

/** Rooms that compute without a page; language/editor is the one exception. */
const WITHOUT_PAGE = ['units', 'language', 'functions', 'frame', 'worksheet']
const PAGE_PACKAGES = /node_modules\/(lit|lit-html|lit-element|@lit|@lit-labs|@codemirror|codemirror|idb)\//

const MAX_FILES_IN_FOLDER = 40
const MAX_LINES = 400
/** Files that are one table or one list of records, which a split would only scatter. */
const LONG_BY_NATURE = /^src\/language\/syntax\/parser/
let modules: readonly IModule[]

beforeAll(async () => {
  // swc reads the types as well: an import of a type is an arrow too.
  const { output } = await cruise(['src'], {
    baseDir: ROOT,
    parser: 'swc',
    tsPreCompilationDeps: true,
    doNotFollow: { path: ['node_modules'] },
    ruleSet: { forbidden: [{ name: 'no cycles', severity: 'error', from: {}, to: { circular: true } }] },
    validate: true,
  })
  modules = (output as ICruiseResult).modules.filter(({ source }) => source.startsWith('src/'))
})

const roomOf = (path: string): string => path.split('/')[1] as string

const arrows = (): [string, string][] =>
  modules.flatMap(({ source, dependencies }) =>
    dependencies.map(({ resolved }) => [source, resolved] as [string, string]),
  )

/** The cycles among things joined by arrows, each as the names on it. */
function cycles(joined: ReadonlyMap<string, ReadonlySet<string>>): string[] {
  const done = new Set<string>()
  const found: string[] = []
  const visit = (name: string, path: readonly string[]): void => {
    const at = path.indexOf(name)
    if (at >= 0) found.push([...path.slice(at), name].join(' → '))
    if (at >= 0 || done.has(name)) return
    for (const next of joined.get(name) ?? []) visit(next, [...path, name])
    done.add(name)
  }
  for (const name of joined.keys()) visit(name, [])
  return found
}

describe('imports', () => {
  it('are read: the arrows of the whole source are there', () => {
    expect(modules.length).toBeGreaterThan(300)
    expect(arrows().length).toBeGreaterThan(1000)
  })

  it('never form a cycle of files', () => {
    const inCycle = arrows().filter(
      ([from, to]) =>
        modules.find(({ source }) => source === from)?.dependencies.find(({ resolved }) => resolved === to)?.circular,
    )
    expect(inCycle).toEqual([])
  })

  it('point one way between rooms', () => {
    const wrong = arrows().filter(([from, to]) => {
      const [a, b] = [roomOf(from), roomOf(to)]
      return to.startsWith('src/') && a !== b && !MAY_IMPORT[a]?.includes(b)
    })
    expect(wrong).toEqual([])
  })

  it('point one way between the folders of a room', () => {
    const joined = new Map<string, Set<string>>()
    for (const [from, to] of arrows()) {
      const [a, b] = [dirname(from), dirname(to)]
      const inFolders = a.split('/').length > 2 && b.split('/').length > 2
      if (a === b || !inFolders || roomOf(from) !== roomOf(to)) continue
      joined.set(a, (joined.get(a) ?? new Set()).add(b))
    }
    expect(cycles(joined)).toEqual([])
  })

  it('bring no page into what computes', () => {
    const wrong = arrows().filter(
      ([from, to]) =>
        WITHOUT_PAGE.includes(roomOf(from)) && !from.startsWith('src/language/editor/') && PAGE_PACKAGES.test(to),
    )
    expect(wrong).toEqual([])
  })

  it('know every room', () => {
    expect(readdirSync(join(ROOT, 'src')).filter((room) => !(room in MAY_IMPORT))).toEqual([])
  })

  it('a cycle would be found', () => {
    const ring = new Map([
      ['a', new Set(['b'])],
      ['b', new Set(['c'])],
      ['c', new Set(['a'])],
    ])
    expect(cycles(ring)).toEqual(['a → b → c → a'])
  })
})

describe('the tree', () => {
  const files = readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' })
    .map((path) => `src/${path}`)
    .filter((path) => path.endsWith('.ts') && statSync(join(ROOT, path)).isFile())

  it(`holds at most ${MAX_FILES_IN_FOLDER} files in a folder`, () => {
    const counts = new Map<string, number>()
    for (const path of files) counts.set(dirname(path), (counts.get(dirname(path)) ?? 0) + 1)
    expect([...counts].filter(([, count]) => count > MAX_FILES_IN_FOLDER)).toEqual([])
  })

  it(`holds no file of more than ${MAX_LINES} lines`, () => {
    const long = files.filter(
      (path) => !LONG_BY_NATURE.test(path) && readFileSync(join(ROOT, path), 'utf8').split('\n').length > MAX_LINES + 1,
    )
    expect(long).toEqual([])
  })
})

describe('the README of a room', () => {
  const rooms = readdirSync(join(ROOT, 'src')).filter((room) => readdirSync(join(ROOT, 'src', room)).length > 1)

  it.each(rooms)('of %s names its folders, and no other', (room) => {
    const folders = readdirSync(join(ROOT, 'src', room), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name)
    const text = readFileSync(join(ROOT, 'src', room, 'README.md'), 'utf8')
    const named = [...text.matchAll(/(?<![\w/])([\w-]+)\/(?![\w-])/g)].map(([, name]) => name)
    expect([...new Set(named)].sort()).toEqual(folders.sort())
  })
})

it('every exported function has a description', () => {
  const missing: string[] = []
  let found = 0
  for (const { source } of modules) {
    if (!source.startsWith('src/') || /\/words\.ts$|\.d\.ts$/.test(source)) continue
    const lines = readFileSync(join(ROOT, source), 'utf8').split('\n')
    lines.forEach((line, at) => {
      const name =
        /^export (?:async )?function (\w+)/.exec(line)?.[1] ??
        /^export const (\w+)(?:: [^=]+)? = (?:async )?(?:<[^>]*>)?\(.*(?:=>|\(|\)|: )/.exec(line)?.[1]
      if (!name) return
      found++
      if (!lines[at - 1]?.trimEnd().endsWith('*/')) missing.push(`${source}: ${name}`)
    })
  }
  expect(found).toBeGreaterThan(500)
  expect(missing).toEqual([])
})
