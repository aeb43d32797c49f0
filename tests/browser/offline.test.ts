import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Locator, Page, Request } from 'playwright-core'
import { expect } from 'vitest'
import { serve } from '../../scripts/serve.mjs'
import { test as base, type Visit, whole } from './harness.ts'
import { pressInHead, saved } from './head.ts'

const DIST = fileURLToPath(new URL('../../dist', import.meta.url))

interface Site {
  readonly url: string
  /** No request is answered from here on. */
  stop(): Promise<void>
  /** Puts another release in the folder. */
  release(version: string): Promise<void>
}

/** The built site in a folder and on a port of its own. */
async function ownSite(): Promise<Site & { remove(): Promise<void> }> {
  const root = await mkdtemp(join(tmpdir(), 'evenfield-site-'))
  await cp(DIST, root, { recursive: true })
  const { url, close } = await serve({ root, base: '/copy/of/it/' })
  const page = await readFile(join(root, 'index.html'), 'utf8')
  const worker = await readFile(join(root, 'worker.js'), 'utf8')
  return {
    url,
    stop: close,
    release: async (version) => {
      const revision = /(url:`index\.html`,revision:`|"url":"index\.html","revision":")\w+/
      expect(worker).toMatch(revision)
      await writeFile(join(root, 'index.html'), page.replace('<html', `<html data-release="${version}"`))
      await writeFile(join(root, 'worker.js'), worker.replace(revision, `$1${version}`))
    },
    remove: async () => {
      await close()
      await rm(root, { recursive: true })
    },
  }
}

const test = base.extend<{ site: Site }>({
  // biome-ignore lint/correctness/noEmptyPattern: vitest reads what a fixture needs from its pattern.
  site: async ({}, use) => {
    const site = await ownSite()
    await use(site)
    await site.remove()
  },
})

const WORKERS = { context: { serviceWorkers: 'allow' } } as const

const isKept = (page: Page): Promise<boolean> =>
  page.evaluate(async () => (await navigator.serviceWorker.ready).active !== null)
const release = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.documentElement.dataset.release)
const lens = (page: Page): Locator => page.getByLabel('Focal length', { exact: true })

/**
 * A worker is stored in the browser's own time. Under the debugger one that is still answering a page is never replaced:
 * pages are to be at rest when a newer one is asked for.
 */
const INSTALLED = { timeout: 60_000 }

/** Follows what a page asks for. Gives what waits until it asks for nothing: it is whole, and no request is under way. */
function followRequests(page: Page): () => Promise<void> {
  const underWay = new Set<Request>()
  page.on('request', (request) => underWay.add(request))
  page.on('requestfinished', (request) => underWay.delete(request))
  page.on('requestfailed', (request) => underWay.delete(request))
  return async () => {
    await whole(page)
    await page.waitForLoadState('networkidle')
    await expect.poll(() => underWay.size).toBe(0)
  }
}

/** As when a tab that was left is looked at again. */
const lookAgain = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')))

/** With the server gone the browser itself may say that it found nothing newer. */
const withoutNetwork = (visit: Visit): number =>
  visit.provoked.push(/ERR_(CONNECTION_REFUSED|FAILED)|error occurred when fetching the script/)

test('after one visit it opens and works with the server stopped, the formula editor too', {
  timeout: 120_000,
}, async ({ open, site }) => {
  const visit = await open({ site: site.url, ...WORKERS })
  const { page, context } = visit
  expect(await isKept(page)).toBe(true)
  await site.stop()
  withoutNetwork(visit)
  await expect(fetch(site.url)).rejects.toThrow()

  await page.reload()
  await page.getByRole('link', { name: /^A flat sheet/ }).click()
  await lens(page).fill('75')
  await page.locator('drawing-cell svg').first().waitFor()
  await saved(page)
  await pressInHead(page, 'Build')
  await page
    .getByRole('button', { name: /^Edit the formula/ })
    .first()
    .click()
  await page.locator('.cm-content').waitFor()

  const next = await context.newPage()
  await next.goto(page.url())
  await next.locator('build-face').waitFor()
  await pressInHead(next, 'Fill in')
  await expect.poll(() => lens(next).inputValue()).toBe('75')
})

// Under the debugger Chromium at times never replaces a worker although its pages are at rest: another browser then does.
test('a newer Evenfield says so, is used when asked, and loses nothing typed', { timeout: 180_000, retry: 2 }, async ({
  open,
  site,
}) => {
  const visit = await open({ site: site.url, path: '#new/flat-sheet', ...WORKERS })
  const { page, context } = visit
  const atRest = followRequests(page)
  expect(await isKept(page)).toBe(true)
  await page.reload()
  const other = await context.newPage()
  const otherAtRest = followRequests(other)
  await other.goto(`${site.url}#new/two-lamps`)
  await other.locator('fill-face').waitFor()
  await otherAtRest()
  await page.bringToFront()
  await lens(page).fill('82')
  await atRest()

  await site.release('second')
  await lookAgain(page)
  const word = page.locator('update-bar').getByRole('button', { name: 'Use it' })
  await word.waitFor(INSTALLED)
  expect(await release(page)).toBe(undefined)
  await lens(page).fill('83')
  await saved(page)
  await atRest()
  await otherAtRest()
  await word.click()
  await expect.poll(() => release(page).catch(() => ''), INSTALLED).toBe('second')
  await expect.poll(() => lens(page).inputValue()).toBe('83')
  await expect.poll(() => page.locator('update-bar button').count()).toBe(0)

  // The other tab is not torn from under anyone who types there.
  const there = other.locator('update-bar').getByRole('button', { name: 'Load it here' })
  await there.waitFor(INSTALLED)
  expect(await release(other)).toBe(undefined)
  await there.click()
  await expect.poll(() => release(other).catch(() => ''), INSTALLED).toBe('second')
})

test('it can be installed: a manifest whose icons are there, within its own folder', async ({ open }) => {
  const { page, site } = await open()
  const href = await page.locator('link[rel="manifest"]').getAttribute('href')
  const address = new URL(href ?? '', site)
  const manifest = await (await fetch(address)).json()
  expect(new URL(manifest.start_url, address).href).toBe(site)
  expect(new URL(manifest.scope, address).href).toBe(site)
  expect(manifest.display).toBe('standalone')
  for (const { src, sizes } of manifest.icons) {
    const bytes = new DataView(await (await fetch(new URL(src, address))).arrayBuffer())
    expect(`${bytes.getUint32(16)}x${bytes.getUint32(20)}`).toBe(sizes)
  }
})
