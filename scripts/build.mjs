import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { gzipSync } from 'node:zlib'
import { install, ROOT } from './install.mjs'

export const LIMIT = 75_000

/** Every script the page loads before the user does anything: its module scripts and all they import statically. */
function firstScripts(output, html) {
  const chunks = new Map(output.filter(({ type }) => type === 'chunk').map((chunk) => [chunk.fileName, chunk]))
  const tags = html.matchAll(/<(?:script\b[^>]*\bsrc|link\b[^>]*\brel="modulepreload"[^>]*\bhref)="\.?\/?([^"]+)"/g)
  const found = new Set()
  const add = (name) => {
    if (found.has(name)) return
    found.add(name)
    for (const imported of chunks.get(name)?.imports ?? []) add(imported)
  }
  for (const [, name] of tags) add(name)
  return [...found]
}

const kB = (bytes) => `${(bytes / 1000).toFixed(1)} kB`

/** Builds the site into dist and measures what loads first. */
export async function build({ root = ROOT, logLevel = 'warn' } = {}) {
  const vite = await import('vite')
  const { output } = await vite.build({ root, logLevel })
  const dist = join(root, 'dist')
  const html = readFileSync(join(dist, 'index.html'), 'utf8')
  const files = firstScripts(output, html).map((name) => ({
    name,
    size: gzipSync(readFileSync(join(dist, name))).length,
  }))
  return { dist, files, total: files.reduce((sum, { size }) => sum + size, 0) }
}

/** Builds, prints the size of what loads first, and says whether it is within the limit. */
export async function buildAndReport(options) {
  const { files, total } = await build(options)
  for (const { name, size } of files) console.log(`  ${name}  ${kB(size)} gzipped`)
  console.log(`Script that loads first: ${kB(total)} gzipped; the limit is ${kB(LIMIT)}.`)
  if (files.length === 0) console.log('The page loads no script at all: the build is broken.')
  if (total > LIMIT) console.log(`That is ${kB(total - LIMIT)} too much.`)
  return files.length > 0 && total <= LIMIT
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
