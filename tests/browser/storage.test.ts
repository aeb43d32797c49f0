import { randomBytes } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium, type Page } from 'playwright-core'
import { build } from 'vite'
import { beforeAll, describe, expect } from 'vitest'
import { CHROMIUM, CHROMIUM_ARGS } from '../../scripts/chromium.mjs'
import type * as Storage from '../../src/storage/index.ts'
import { SHEET } from '../storage/sheets.ts'
import { test } from './harness.ts'

declare const storage: typeof Storage
declare const store: Storage.Store

/** No server: every address of it is answered by the test. */
const ORIGIN = 'http://evenfield.localhost'
let script = ''

beforeAll(async () => {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: { write: false, minify: false, lib: { entry: 'src/storage/index.ts', formats: ['iife'], name: 'storage' } },
  })
  const [first] = [built].flat()
  if (!first || !('output' in first)) throw new Error('Nothing was built.')
  script = first.output[0].code
})

/** A page with nothing but the storage in it, as a global. */
async function open(context: BrowserContext, path = '/'): Promise<Page> {
  await context.route(`${ORIGIN}/**`, (route) =>
    route.request().url().endsWith('.js')
      ? route.fulfill({ contentType: 'text/javascript; charset=utf-8', body: script })
      : route.fulfill({
          contentType: 'text/html; charset=utf-8',
          body: '<!doctype html><script src="/storage.js"></script>',
        }),
  )
  const page = await context.newPage()
  await page.goto(ORIGIN + path)
  await openStore(page)
  return page
}

const openStore = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    Object.assign(globalThis, { store: await storage.openStore() })
  })

/** What some work in the page results in: its value, or the problem and the message of its StoreError. */
const outcome = (page: Page, work: (sheet: typeof SHEET) => Promise<unknown>, sheet = SHEET): Promise<unknown> =>
  page.evaluate(
    async ([text, given]) => {
      try {
        // biome-ignore lint/security/noGlobalEval: a test's own text, in a page of its own.
        return await globalThis.eval(`(${text})`)(given)
      } catch (error) {
        const { problem, message } = error as Storage.StoreError
        return { problem, message }
      }
    },
    [work.toString(), sheet] as const,
  )

describe('in a browser', () => {
  test('a sheet saved is there when the browser is closed and opened again', async () => {
    const profile = mkdtempSync(join(tmpdir(), 'evenfield-'))
    const launch = () =>
      chromium.launchPersistentContext(profile, {
        executablePath: CHROMIUM,
        args: CHROMIUM_ARGS,
      })
    try {
      const before = await launch()
      const page = await open(before)
      expect(await page.evaluate(() => store.persistent)).toBe(true)
      const saved = await page.evaluate((sheet) => store.save('a', sheet), SHEET)
      await page.evaluate(() => store.saveSetting('face', 'dim'))
      await before.close()

      const after = await launch()
      const again = await open(after)
      expect(await again.evaluate(() => store.list())).toEqual([saved])
      expect(saved).toMatchObject({ id: 'a', title: SHEET.title, cells: 4, changes: 1 })
      expect(await again.evaluate(() => store.load('a'))).toEqual(SHEET)
      expect(await again.evaluate(() => store.setting('face'))).toBe('dim')
      await after.close()
    } finally {
      rmSync(profile, { recursive: true, force: true })
    }
  })

  test('the list is newest first, and removed sheets come back', async ({ browser }) => {
    const context = await browser.newContext()
    const page = await open(context)
    const titles = await page.evaluate(async (sheet) => {
      const shown = async () => (await store.list()).map(({ title }) => title).join(' ')
      const steps: string[] = []
      for (const title of ['a', 'b', 'c']) await store.save(title, { ...sheet, title })
      steps.push(await shown())
      const [a] = (await store.list()).filter(({ id }) => id === 'a')
      await store.save('a', { ...sheet, title: 'a' }, { seen: [a?.stamp ?? ''] })
      steps.push(await shown())
      await store.remove('b')
      steps.push(await shown(), (await store.listRemoved()).map(({ id }) => id).join(' '))
      await store.restore('b')
      steps.push(await shown())
      await store.erase('b')
      steps.push(await shown(), String(await store.load('b')))
      return steps
    }, SHEET)
    expect(titles).toEqual(['c b a', 'a c b', 'a c', 'b', 'a c b', 'a c', 'undefined'])
    await context.close()
  })

  test('a full disk is reported; what was saved stays, and saving goes on once there is room', async ({ browser }) => {
    const context = await browser.newContext()
    const page = await open(context)
    const cdp = await context.newCDPSession(page)
    await cdp.send('Storage.overrideQuotaForOrigin', { origin: ORIGIN, quotaSize: 300_000 })
    await page.evaluate((sheet) => store.save('a', sheet), SHEET)
    // The browser packs what it saves: only what cannot be packed takes the room.
    const large = { ...SHEET, later: randomBytes(1_500_000).toString('base64') }
    expect(await outcome(page, (sheet) => store.save('b', sheet), large)).toMatchObject({
      problem: 'full',
      message: expect.stringMatching(/no room left/),
    })
    expect(await page.evaluate(() => store.load('a'))).toEqual(SHEET)
    expect(await page.evaluate(() => store.load('b'))).toBeUndefined()
    await cdp.send('Storage.overrideQuotaForOrigin', { origin: ORIGIN })
    expect(await outcome(page, (sheet) => store.save('b', sheet), large)).toMatchObject({ id: 'b', changes: 1 })
    await context.close()
  })

  test('where the browser refuses, the store says so and works while the tab lasts', async ({ browser }) => {
    const context = await browser.newContext()
    const page = await open(context)
    // A frame of no origin may keep nothing, as a page where site data is switched off.
    await page.evaluate(() => {
      const frame = document.createElement('iframe')
      frame.setAttribute('sandbox', 'allow-scripts')
      frame.src = '/frame'
      document.body.append(frame)
    })
    await expect.poll(() => page.frames().length).toBe(2)
    const frame = page.frames()[1]
    await frame?.waitForLoadState()
    const answered = await frame?.evaluate(async (sheet) => {
      const opened = await storage.openStore()
      await opened.save('a', sheet)
      return {
        saved: opened.persistent,
        problem: opened.problem?.problem,
        message: opened.problem?.message,
        found: await opened.load('a'),
      }
    }, SHEET)
    expect(answered).toEqual({
      saved: false,
      problem: 'refused',
      message: expect.stringMatching(/Save the sheet as a file before closing/),
      found: SHEET,
    })
    await context.close()
  })

  test('a newer version in another tab is let through, and reported here', async ({ browser }) => {
    const context = await browser.newContext()
    const page = await open(context)
    await page.evaluate((sheet) => store.save('a', sheet), SHEET)
    const other = await context.newPage()
    await other.goto(`${ORIGIN}/other`)
    await other.evaluate(
      () =>
        new Promise((resolve, reject) => {
          const request = indexedDB.open('evenfield', 99)
          request.onsuccess = () => {
            request.result.close()
            resolve(undefined)
          }
          request.onerror = reject
        }),
    )
    expect(await outcome(page, (sheet) => store.save('b', sheet))).toMatchObject({
      problem: 'outdated',
      message: expect.stringMatching(/was updated in another tab/),
    })
    await page.reload()
    await openStore(page)
    expect(await page.evaluate(() => store.problem?.problem)).toBe('outdated')
    expect(await outcome(page, () => store.list())).toMatchObject({ problem: 'outdated' })
    await context.close()
  })

  test('a connection the browser has closed is opened again', async ({ browser }) => {
    const context = await browser.newContext()
    const page = await open(context)
    await page.evaluate((sheet) => store.save('a', sheet), SHEET)
    // The site data is cleared under the open page, which closes every connection.
    const cdp = await context.newCDPSession(page)
    await cdp.send('Storage.clearDataForOrigin', { origin: ORIGIN, storageTypes: 'indexeddb' })
    // The clearing may still go on; until it is over, saving fails and is tried again, as the app does.
    await expect.poll(() => outcome(page, (sheet) => store.save('b', sheet))).toMatchObject({ id: 'b' })
    expect(await page.evaluate(async () => (await store.list()).map(({ id }) => id))).toEqual(['b'])
    await context.close()
  })

  test('behind an older Evenfield in another tab each tab says so, and goes on when that one closes', async ({
    browser,
  }) => {
    const context = await browser.newContext()
    const old = await open(context, '/old')
    await old.evaluate(async () => {
      store.close()
      await new Promise((settle) => {
        const gone = indexedDB.deleteDatabase('evenfield')
        gone.onsuccess = settle
      })
      // Of the first version, and deaf to anyone who wants to upgrade it.
      await new Promise((settle) => {
        const request = indexedDB.open('evenfield', 1)
        request.onupgradeneeded = () => {
          for (const name of ['worksheets', 'summaries']) request.result.createObjectStore(name, { keyPath: 'id' })
          request.result.createObjectStore('settings')
        }
        request.onsuccess = () => {
          Object.assign(globalThis, { deaf: request.result })
          settle(undefined)
        }
      })
    })
    const second = await open(context, '/second')
    expect(await second.evaluate(() => store.problem?.problem)).toBe('blocked')
    // The request of a third tab waits behind that of the second, and is not even notified that it is blocked.
    const third = await open(context, '/third')
    expect(await third.evaluate(() => store.problem?.problem)).toBe('silent')
    await old.close()
    for (const page of [second, third]) await expect.poll(() => outcome(page, () => store.list())).toEqual([])
    await context.close()
  })

  test('a saved sheet that cannot be read is named with the place, and the others open', async ({ browser }) => {
    const context = await browser.newContext()
    const page = await open(context)
    await page.evaluate(async (sheet) => {
      await store.save('a', sheet)
      const bad = { ...sheet, cells: [{ kind: 'given', id: 'x', name: 'x' }] }
      const [summary] = await store.list()
      if (summary) await store.import({ data: bad, summary: { ...summary, id: 'b' } }, [])
    }, SHEET)
    expect(
      await outcome(page, (sheet) => store.save('c', { ...sheet, cells: [{ kind: 'given' } as never] })),
    ).toMatchObject({ problem: 'unwritable', message: expect.stringMatching(/cells\[0\]/) })
    expect(await outcome(page, () => store.load('b'))).toMatchObject({
      problem: 'unreadable',
      message: expect.stringMatching(/cells\[0\]\.value/),
    })
    expect(await page.evaluate(() => store.load('a'))).toEqual(SHEET)
    expect(await page.evaluate(async () => (await store.list()).length)).toBe(2)
    await context.close()
  })

  test('a link made here opens here', async ({ browser }) => {
    const context = await browser.newContext()
    const page = await open(context)
    expect(await page.evaluate(async (sheet) => storage.fromLink(await storage.toLink(sheet)), SHEET)).toEqual(SHEET)
    const refused = page.evaluate(async (sheet) => {
      const link = await storage.toLink(sheet)
      return storage.fromLink(link.slice(0, -5)).catch((error: Error) => `${error.name}: ${error.message}`)
    }, SHEET)
    expect(await refused).toBe(
      'LinkError: This link was cut short or altered on the way. Ask for it again, or for the file.',
    )
    await context.close()
  })

  test('a file saved is the sheet, under its title', async ({ browser }) => {
    const context = await browser.newContext()
    const page = await open(context)
    const download = page.waitForEvent('download')
    await page.evaluate((sheet) => {
      // The window to choose a place cannot be driven; a browser without one downloads.
      Reflect.deleteProperty(window, 'showSaveFilePicker')
      return storage.saveFile(sheet)
    }, SHEET)
    const file = await download
    expect(file.suggestedFilename()).toBe('Feuille-à-plat-420-297.evenfield.json')
    const stream = await file.createReadStream()
    let text = ''
    for await (const chunk of stream) text += chunk
    expect(JSON.parse(text)).toEqual(SHEET)
    await context.close()
  })
})
