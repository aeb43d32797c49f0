import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { gzipSync } from 'node:zlib'
import { install, ROOT } from './install.mjs'

export const LIMIT = 75_000

/** The formula editor, which waits for a formula to be opened. */
const EDITOR = /src\/language\/editor\/index\.ts$/

/** The scripts index.html names, and all they need: statically, and where `lazy` says so, through dynamic imports too. */
function scriptsOf(output, html, lazy = () => false) {
  const chunks = new Map(output.filter(({ type }) => type === 'chunk').map((chunk) => [chunk.fileName, chunk]))
  const tags = html.matchAll(/<(?:script\b[^>]*\bsrc|link\b[^>]*\brel="modulepreload"[^>]*\bhref)="\.?\/?([^"]+)"/g)
  const found = new Set()
  const add = (name) => {
    if (found.has(name)) return
    found.add(name)
    const { imports = [], dynamicImports = [] } = chunks.get(name) ?? {}
    for (const needed of [...imports, ...dynamicImports.filter((file) => lazy(chunks.get(file)))]) add(needed)
  }
  for (const [, name] of tags) add(name)
  return [...found]
}

const kB = (bytes) => `${(bytes / 1000).toFixed(1)} kB`

/** Builds the site into dist and measures its script, gzipped. */
export async function build({ root = ROOT, logLevel = 'warn' } = {}) {
  const vite = await import('vite')
  const { output } = await vite.build({ root, logLevel })
  const dist = join(root, 'dist')
  const html = readFileSync(join(dist, 'index.html'), 'utf8')
  const size = (name) => gzipSync(readFileSync(join(dist, name))).length
  const sum = (names) => names.reduce((total, name) => total + size(name), 0)
  const first = scriptsOf(output, html)
  const withoutEditor = scriptsOf(output, html, (chunk) => !EDITOR.test(chunk?.facadeModuleId ?? ''))
  return { dist, scripts: first.length, first: sum(first), withoutEditor: sum(withoutEditor) }
}

/** Builds, prints the sizes, and says whether what loads first is within the limit. */
export async function buildAndReport(options) {
  const { scripts, first, withoutEditor } = await build(options)
  console.log(`Script that loads first: ${kB(first)} gzipped; the limit is ${kB(LIMIT)}.`)
  console.log(`All that can load before a formula is opened: ${kB(withoutEditor)} gzipped.`)
  if (scripts === 0) console.log('The page loads no script at all: the build is broken.')
  if (first > LIMIT) console.log(`What loads first is ${kB(first - LIMIT)} too much.`)
  return scripts > 0 && first <= LIMIT
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  install()
  try {
    process.exitCode = (await buildAndReport()) ? 0 : 1
  } catch (error) {
    console.error(error)
    process.exitCode = 1
  }
}
