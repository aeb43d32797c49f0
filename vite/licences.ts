import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import type { Plugin } from 'vite'

/** The licence texts of what the site contains, at the root of the site. */
const LICENCES_FILE = 'licences.txt'

interface Package {
  readonly name: string
  readonly version: string
  readonly license?: string
  readonly dependencies?: Readonly<Record<string, string>>
}

const read = (folder: string): Package => JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Package

/** Where a package lies that another one asks for: beside it, or nearer to the root. */
function find(name: string, from: string, root: string): string | undefined {
  for (let folder = from; folder.startsWith(root); folder = join(folder, '..')) {
    const found = join(folder, 'node_modules', name)
    if (existsSync(join(found, 'package.json'))) return found
    if (folder === root) break
  }
  return undefined
}

/** The folders of a project's dependencies and of theirs, by name and version. */
function packagesOf(project: string): ReadonlyMap<string, string> {
  const root = resolve(project)
  const found = new Map<string, string>()
  const walk = (folder: string): void => {
    for (const name of Object.keys(read(folder).dependencies ?? {})) {
      const other = find(name, folder, root)
      if (!other) continue
      const key = `${name} ${read(other).version}`
      if (found.has(key)) continue
      found.set(key, other)
      walk(other)
    }
  }
  walk(root)
  return found
}

/** The licence texts of every library and font a project depends on, one after another. */
export function licenceTexts(root: string): string {
  const sections = [...packagesOf(root)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, folder]) => {
      const files = readdirSync(folder).filter((name) => /^(licen[cs]e|copying|notice|ofl)/i.test(name))
      const texts = files.map((name) => readFileSync(join(folder, name), 'utf8').trim())
      const { license } = read(folder)
      return [`${key} (${license ?? 'licence as below'})`, ...texts].join('\n\n')
    })
  return `Evenfield contains the following libraries and fonts, each under its own licence.\n\n${sections.join(`\n\n${'-'.repeat(72)}\n\n`)}\n`
}

/** Puts the licence texts beside the site; it is not among the files stored for use without a network. */
export function licences(): Plugin {
  let root: string
  return {
    name: 'evenfield-licences',
    apply: 'build',
    configResolved(config) {
      root = config.root
    },
    generateBundle: {
      order: 'post',
      handler() {
        this.emitFile({ type: 'asset', fileName: LICENCES_FILE, source: licenceTexts(root) })
      },
    },
  }
}
