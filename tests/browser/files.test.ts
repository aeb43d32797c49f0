import { readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { SHEET } from '../storage/sheets.ts'
import { test, violations } from './harness.ts'
import { given, pressInHead, saved } from './head.ts'

const shelf = (page: Page): Promise<void> => page.getByRole('link', { name: 'Evenfield' }).click()
const sheets = (page: Page): Promise<string[]> => page.locator('shelf-page [data-open] b').allInnerTexts()
const file = (title: string, more: object = {}) => ({
  name: `${title}.json`,
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify({ ...SHEET, title, ...more })),
})

/** The picker is the system's own and cannot be driven; without it files are downloads. */
const withoutPicker = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, 'showSaveFilePicker')
  })
}

/** Lets files go over the page, as from the desktop. */
const drop = (page: Page, files: readonly { name: string; text: string }[]): Promise<void> =>
  page.evaluate((files) => {
    const transfer = new DataTransfer()
    for (const { name, text } of files) transfer.items.add(new File([text], name))
    window.dispatchEvent(new DragEvent('dragover', { dataTransfer: transfer, cancelable: true }))
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, cancelable: true }))
  }, files)

test('several files at once: the good come in, the bad are named', async ({ open }) => {
  const { page } = await open()
  await page.locator('#file').setInputFiles([file('One'), file('Two'), file('Bad', { cells: [{}] })])
  await page
    .getByRole('alert')
    .filter({ hasText: /2 sheets imported\. Bad\.json cannot be opened.*Your own sheets are unchanged/ })
    .waitFor()
  await expect.poll(async () => (await sheets(page)).sort()).toEqual(['One', 'Two'])
})

test('files dropped on an open sheet come in, and the open one is saved', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await given(page, 'Job').fill('typed just before')
  const texts = ['One', 'Two'].map((title) => ({ name: `${title}.json`, text: JSON.stringify({ ...SHEET, title }) }))
  await drop(page, texts)
  await page.getByRole('status').filter({ hasText: '2 sheets imported.' }).waitFor()
  await expect.poll(async () => (await sheets(page)).sort()).toEqual(['A flat sheet on a copy stand', 'One', 'Two'])
  await drop(page, texts.slice(0, 1))
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe('One')
})

test('a backup goes out, comes into a fresh browser whole, and merges without losing either side', {
  timeout: 120_000,
}, async ({ open }) => {
  const first = await open()
  await withoutPicker(first.page)
  await first.page.goto(`${first.site}#new/flat-sheet`)
  await first.page.reload()
  await given(first.page, 'Job').fill('as agreed')
  await saved(first.page)
  await pressInHead(first.page, 'Revisions')
  await first.page.getByLabel('Name for the sheet as it is now').fill('Agreed')
  await first.page.getByRole('button', { name: 'Save as a revision' }).click()
  await first.page.locator('revisions-panel').filter({ hasText: 'Saved as “Agreed”.' }).waitFor()
  await shelf(first.page)
  await first.page.getByText('Backup', { exact: true }).click()
  const downloading = first.page.waitForEvent('download')
  await first.page.getByRole('button', { name: 'Save a backup' }).click()
  const download = await downloading
  expect(download.suggestedFilename()).toMatch(/^evenfield-backup-\d{4}-\d\d-\d\d\.json$/)
  expect(await violations(first.page)).toEqual([])
  const path = join(tmpdir(), `evenfield-${process.pid}.backup.json`)
  await download.saveAs(path)
  expect(JSON.parse(await readFile(path, 'utf8')).sheets).toHaveLength(1)

  const second = await open()
  await second.page.locator('#file').setInputFiles(path)
  await second.page.getByRole('status').filter({ hasText: '1 sheet imported from the backup.' }).waitFor()
  await second.page.locator('shelf-page [data-open]').click()
  await expect.poll(() => given(second.page, 'Job').inputValue()).toBe('as agreed')
  await pressInHead(second.page, 'Revisions')
  await second.page.locator('revisions-panel').filter({ hasText: 'Agreed, today' }).waitFor()

  await given(second.page, 'Job').fill('as changed')
  await saved(second.page)
  await shelf(second.page)
  await second.page.locator('#file').setInputFiles(path)
  await second.page.getByRole('status').filter({ hasText: 'was imported as a copy' }).waitFor()
  await expect
    .poll(async () => (await sheets(second.page)).sort())
    .toEqual(['A flat sheet on a copy stand', 'A flat sheet on a copy stand, from a backup'])
  await second.page.locator('#file').setInputFiles(path)
  await second.page.getByRole('status').filter({ hasText: '1 sheet was here already.' }).waitFor()
  await expect.poll(async () => (await sheets(second.page)).length).toBe(2)
})

test('a full disk is reported until the sheet is saved, also on the shelf and after coming back; saving is tried again by itself', async ({
  open,
}) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.evaluate(() => {
    Reflect.deleteProperty(window, 'showSaveFilePicker')
    const { put } = IDBObjectStore.prototype
    IDBObjectStore.prototype.put = function (...given: [unknown, IDBValidKey?]) {
      if (document.documentElement.dataset.disk === 'full') throw new DOMException('', 'QuotaExceededError')
      return put.apply(this, given)
    }
  })
  const disk = (state: 'full' | 'free') =>
    page.evaluate((state) => {
      document.documentElement.dataset.disk = state
    }, state)
  await given(page, 'Job').fill('saved')
  await saved(page)
  await disk('full')
  const long = 'x'.repeat(20_000)
  await given(page, 'Job').fill(long)
  await page
    .getByRole('alert')
    .filter({ hasText: /no room left/ })
    .waitFor()
  await page.locator('sheet-head').filter({ hasText: 'Not saved' }).waitFor()
  await given(page, 'Focal length').fill('80')
  await expect
    .poll(() => page.locator('result-cell').filter({ hasText: 'Original to sensor' }).locator('.figure').textContent())
    .not.toBe('917')
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save as a file' }).click()
  const path = join(tmpdir(), `evenfield-${process.pid}.full.json`)
  await (await downloading).saveAs(path)
  expect(JSON.parse(await readFile(path, 'utf8')).job).toBe(long)
  expect(await violations(page)).toEqual([])

  // Left, it stays marked; come back to, it is as it was typed, and still not saved.
  await shelf(page)
  await page
    .locator('unsaved-bar')
    .filter({ hasText: /is not saved.*no room left/ })
    .waitFor()
  expect(await violations(page)).toEqual([])
  await page.locator('unsaved-bar').getByRole('link', { name: 'Open the sheet' }).click()
  await expect.poll(async () => (await given(page, 'Job').inputValue()).length).toBe(long.length)
  await page.locator('sheet-head').filter({ hasText: 'Not saved' }).waitFor()

  // Once there is room it is saved, without a key being pressed in it.
  await shelf(page)
  await page.locator('unsaved-bar').waitFor()
  await disk('free')
  await page.getByRole('button', { name: 'Try again' }).click()
  await page.locator('unsaved-bar').waitFor({ state: 'detached' })
  await page.reload()
  await page.locator('shelf-page [data-open]').click()
  await expect.poll(async () => (await given(page, 'Job').inputValue()).length).toBe(long.length)
})

test('a text too long for a sheet is refused with the reason, and the field shows what the sheet has', async ({
  open,
}) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  for (const field of ['Job', 'Focal length']) {
    const before = await given(page, field).inputValue()
    await given(page, field).fill('x'.repeat(20_001))
    await page
      .getByRole('alert')
      .filter({ hasText: /at most 20.000 fit/ })
      .waitFor()
    await expect.poll(() => given(page, field).inputValue()).toBe(before)
  }
  await given(page, 'Job').fill('short')
  await page.getByRole('alert').filter({ hasText: /fit/ }).waitFor({ state: 'detached' })
  await saved(page)
})

test('where the browser saves nothing, it says so and the sheet works', async ({ open }) => {
  const visit = await open()
  await visit.context.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('The operation is insecure.', 'SecurityError')
    }
  })
  await withoutPicker(visit.page)
  await visit.page.goto(`${visit.site}#new/flat-sheet`)
  await visit.page.reload()
  await given(visit.page, 'Job').fill('typed in a private window')
  await visit.page
    .getByRole('alert')
    .filter({ hasText: /saves nothing for this page/ })
    .waitFor()
  const downloading = visit.page.waitForEvent('download')
  await visit.page.getByRole('button', { name: 'Save as a file' }).click()
  expect((await downloading).suggestedFilename()).toBe('A-flat-sheet-on-a-copy-stand.evenfield.json')
  // Within the visit nothing is lost.
  await shelf(visit.page)
  await visit.page.locator('shelf-page [data-open]').click()
  await expect.poll(() => given(visit.page, 'Job').inputValue()).toBe('typed in a private window')
})

test('an upgrade blocked by another tab is reported, the sheet works, and is saved once that tab closes', async ({
  open,
}) => {
  const { page, context, site } = await open()
  const older = await context.newPage()
  // A page of the same site with nothing of ours running in it.
  await context.route(`${site}older`, (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html>' }))
  await older.goto(`${site}older`)
  await page.goto('about:blank')
  await older.evaluate(
    () =>
      new Promise((settle, fail) => {
        const dropping = indexedDB.deleteDatabase('evenfield')
        dropping.onsuccess = () => {
          const opening = indexedDB.open('evenfield', 1)
          opening.onupgradeneeded = () => {
            opening.result.createObjectStore('worksheets', { keyPath: 'id' })
            opening.result.createObjectStore('summaries', { keyPath: 'id' })
            opening.result.createObjectStore('settings')
          }
          opening.onsuccess = settle
          opening.onerror = fail
          // It hears of the newer version and does not let go.
        }
        dropping.onerror = fail
      }),
  )
  await page.goto(`${site}#new/flat-sheet`)
  await given(page, 'Job').fill('typed meanwhile')
  await page
    .getByRole('alert')
    .filter({ hasText: /another tab has an older version of Evenfield/i })
    .waitFor()
  await page.getByRole('button', { name: 'Save as a file' }).waitFor()
  await older.close()
  await saved(page)
  await page.reload()
  await expect.poll(() => given(page, 'Job').inputValue()).toBe('typed meanwhile')
})
