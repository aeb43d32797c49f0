import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { TestProject } from 'vitest/node'
import { build } from '../../scripts/build.mjs'
import { serve } from '../../scripts/serve.mjs'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
const DIST = join(ROOT, 'dist')
const SOURCES = [
  'src',
  'public',
  'vite',
  'templates',
  'shared',
  'index.html',
  'vite.config.ts',
  'package.json',
  'package-lock.json',
]
/** A sub-path, as where the site is put is not for us to choose. */
const BASE = '/some/where/'

declare module 'vitest' {
  interface ProvidedContext {
    site: string
  }
}

function changed(path: string): number {
  const found = statSync(path, { throwIfNoEntry: false })
  if (!found?.isDirectory()) return found?.mtimeMs ?? 0
  // A folder's own time tells of what was taken out of it.
  return Math.max(found.mtimeMs, ...readdirSync(path).map((name) => changed(join(path, name))))
}

/** Builds the site if its sources are newer, and serves it for the browser tests. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const built = changed(join(DIST, 'index.html'))
  if (SOURCES.some((source) => changed(join(ROOT, source)) > built)) await build({ root: ROOT, logLevel: 'error' })
  const site = await serve({ root: DIST, base: BASE })
  project.provide('site', site.url)
  return site.close
}
