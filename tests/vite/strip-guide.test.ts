import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Plugin, runnerImport } from 'vite'
import { describe, expect, it } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { LOADERS } from '../../src/functions/loaders.ts'
import type { FunctionRecord } from '../../src/language/index.ts'
import { GUIDE_KEYS, stripGuide } from '../../vite/strip-guide.ts'

const FOLDER = fileURLToPath(new URL('../../src/functions', import.meta.url))

const listing = (items: string): string => `export const LIST: readonly FunctionRecord[] = [${items}]`
const record = (more = ''): string =>
  `{ name: 'f', subject: 'maths', about: 'a', parameters: [], ${more} result: X, formula: 'f', source: 's', examples: [], compute: () => 0 }`

const strip: Plugin = {
  name: 'strip',
  enforce: 'pre',
  transform(code, id) {
    // The page never loads the index, where the lists are only put together.
    if (!id.startsWith(FOLDER) || id.endsWith('/index.ts')) return undefined
    return { code: stripGuide(code, id), map: null }
  },
}

describe('what only the guide reads', () => {
  it('is taken out of every record, and nothing else is', async () => {
    const { module } = await runnerImport<{ FUNCTIONS: FunctionRecord[] }>(join(FOLDER, 'index.ts'), {
      configFile: false,
      logLevel: 'error',
      plugins: [strip],
    })
    const keys = (one: object): string[] => Object.keys(one).sort()
    expect(module.FUNCTIONS.map(({ name }) => name)).toEqual(FUNCTIONS.map(({ name }) => name))
    for (const [i, { ...whole }] of FUNCTIONS.entries()) {
      for (const key of GUIDE_KEYS) Reflect.deleteProperty(whole, key)
      expect(keys(module.FUNCTIONS[i] as object), whole.name).toEqual(keys(whole))
    }
  })

  it('leaves the parameters’ words, which messages say', () => {
    const stripped = stripGuide(listing(record("safety: ['hot'],").replace('[]', "[p('x', 'about x')]")), 'a.ts')
    expect(stripped).toContain('about x')
    expect(stripped).toContain("safety: ['hot']")
    expect(stripped).not.toMatch(/subject|source|examples/)
  })

  it('leaves modules without records as they are', () => {
    for (const file of readdirSync(FOLDER, { recursive: true, encoding: 'utf8' })) {
      if (!file.endsWith('.ts')) continue
      const code = readFileSync(join(FOLDER, file), 'utf8')
      if (!code.includes('FunctionRecord[]')) expect(stripGuide(code, file)).toBe(code)
    }
  })

  it('is taken out of records made by map', () => {
    const code = listing(`...[['a'], ['b']].map(([name]): FunctionRecord => (${record()})), ...OTHERS`)
    expect(stripGuide(code, 'a.ts')).not.toMatch(/subject|about|source/)
  })
})

describe('a record that is not understood stops the build, with its line', () => {
  it.each([
    ['a call', '\nmakeRecord()'],
    ['a name', '\nRECORD'],
    ['a spread call', '\n...makeRecords()'],
    ['a spread inside', `\n${record('...COMMON,')}`],
    ['a computed key', `\n${record("['a' + 'b']: 1,")}`],
    ['a record that lacks a key', "\n{ name: 'f', compute: () => 0 }"],
    ['a map with a body', `\n...NAMES.map((name) => { return ${record()} })`],
  ])('%s', (_, items) => {
    expect(() => stripGuide(listing(items), 'a.ts')).toThrow(/^a\.ts:2: a function record/)
  })

  it('a list that is not written out', () => {
    expect(() => stripGuide('const A: readonly FunctionRecord[] = make()', 'a.ts')).toThrow(/^a\.ts:1/)
  })
})

it('each subject is fetched from the file it is named for', async () => {
  const { SUBJECTS } = await import('../../src/functions/index.ts')
  for (const [file, records] of Object.entries(SUBJECTS)) {
    expect(await LOADERS[file as keyof typeof LOADERS](), file).toBe(records)
    const path = readdirSync(FOLDER, { recursive: true, encoding: 'utf8' }).find(
      (one) => basename(one) === `${file}.ts`,
    )
    expect(Object.values(await import(join(FOLDER, path as string))), file).toContain(records)
  }
})
