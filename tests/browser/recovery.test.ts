import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { SHEET } from '../storage/sheets.ts'
import { test, violations } from './harness.ts'
import { given, pressInHead, saved } from './head.ts'
import { spoil } from './spoil.ts'

const shelf = (page: Page): Promise<void> => page.getByRole('link', { name: 'Evenfield' }).click()
const file = (name: string, content: object) => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify(content)),
})

/** The file a press downloads. */
async function downloaded(page: Page, press: () => Promise<void>): Promise<string> {
  // Where the browser can ask for a place to save to, a test cannot answer: it is given the download.
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  const downloading = page.waitForEvent('download')
  await press()
  return readFile(await (await downloading).path(), 'utf8')
}

test('a saved sheet that cannot be read can be saved as it is, and goes back to a revision', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await given(page, 'Job').fill('as agreed')
  await saved(page)
  await pressInHead(page, 'Revisions')
  await given(page, 'Name for the sheet as it is now').fill('Agreed')
  await page.getByRole('button', { name: 'Save as a revision' }).click()
  await page.locator('revisions-panel').filter({ hasText: 'Saved as “Agreed”.' }).waitFor()
  await shelf(page)
  await page.locator('shelf-page [data-open]').waitFor()
  await spoil(page)

  await page.locator('shelf-page [data-open]').click()
  await page.getByRole('heading', { name: 'This sheet cannot be read' }).waitFor()
  expect(await page.locator('unreadable-page [role=alert]').textContent()).toMatch(/cells\[0\]/)
  expect(await violations(page)).toEqual([])
  const text = await downloaded(page, () => page.getByRole('button', { name: 'Save it unchanged' }).click())
  expect(JSON.parse(text)).toMatchObject({ job: 'as agreed', cells: [{ kind: 'given', id: 'x', name: 'x' }] })

  await page.getByRole('button', { name: 'Restore the revision of' }).click()
  await expect.poll(() => given(page, 'Job').inputValue()).toBe('as agreed')
  await pressInHead(page, 'Revisions')
  await page.locator('revisions-panel').filter({ hasText: 'could not be read' }).waitFor()
})

test('what was measured in a copy is taken over in one step, which can be undone also after the page was left', async ({
  open,
}) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await given(page, 'Job').fill('at the stand')
  await saved(page)
  const before = await given(page, 'Focal length').inputValue()
  await pressInHead(page, 'Share')
  const text = await downloaded(page, () =>
    page.locator('share-panel').getByRole('button', { name: 'Save as a file' }).click(),
  )
  const copy = JSON.parse(text) as { cells: { kind: string; label?: string; value?: string }[] }
  const cells = copy.cells.map((cell) => (cell.label === 'Focal length' ? { ...cell, value: '81.5 mm' } : cell))

  await shelf(page)
  await page.locator('#file').setInputFiles(file('back.json', { ...copy, cells }))
  await page.locator('copy-page').filter({ hasText: 'This is a copy of your sheet' }).waitFor()
  const row = page.locator('copy-page tbody tr').filter({ hasText: 'Focal length' }).first()
  expect(await row.textContent()).toMatch(/81\.5 mm/)
  expect(await violations(page)).toEqual([])
  await page.getByRole('button', { name: 'Take over 1' }).click()
  await expect.poll(() => given(page, 'Focal length').inputValue()).toBe('81.5 mm')
  await saved(page)

  await page.reload()
  await expect.poll(() => given(page, 'Focal length').inputValue()).toBe('81.5 mm')
  await pressInHead(page, 'Undo')
  await expect.poll(() => given(page, 'Focal length').inputValue()).toBe(before)
  await saved(page)
  await page.reload()
  await expect.poll(() => given(page, 'Focal length').inputValue()).toBe(before)
  await pressInHead(page, 'Redo')
  await expect.poll(() => given(page, 'Focal length').inputValue()).toBe('81.5 mm')
})

test('a backup of many sheets comes in only when asked for', async ({ open }) => {
  const { page } = await open()
  const sheets = Array.from({ length: 30 }, (_, at) => ({
    id: `sheet-${at}`,
    changed: 1,
    worksheet: { ...SHEET, title: `Sheet ${at}` },
  }))
  const backup = file('backup.json', { format: 'evenfield-backup', version: 1, sheets })
  const question = page.getByRole('alertdialog').filter({ hasText: 'This backup has 30 sheets' })
  await page.locator('#file').setInputFiles(backup)
  await question.waitFor()
  expect(await violations(page)).toEqual([])
  await page.getByRole('button', { name: 'Cancel' }).click()
  await question.waitFor({ state: 'detached' })
  expect(await page.locator('shelf-page [data-open]').count()).toBe(0)
  await page.locator('#file').setInputFiles(backup)
  await page.getByRole('button', { name: 'Import them' }).click()
  await page.getByRole('status').filter({ hasText: '30 sheets imported from the backup.' }).waitFor()
})

test('site data deleted under an open sheet is reported as such, and the sheet is saved again', async ({ open }) => {
  const { page, context, site } = await open({ path: '#new/flat-sheet' })
  await given(page, 'Job').fill('before')
  await saved(page)
  const session = await context.newCDPSession(page)
  await session.send('Storage.clearDataForOrigin', { origin: new URL(site).origin, storageTypes: 'indexeddb' })
  await page
    .getByRole('alert')
    .filter({ hasText: /were deleted \(its site data was cleared\)/ })
    .waitFor()
  await given(page, 'Job').fill('after')
  await saved(page)
  await shelf(page)
  await page.locator('shelf-page [data-open]').waitFor()
  await page.reload()
  await page.locator('shelf-page [data-open]').click()
  await expect.poll(() => given(page, 'Job').inputValue()).toBe('after')
})

test('a database that never answers is reported as such, and the sheet works and can be saved as a file', async ({
  open,
}) => {
  const { page, context, site } = await open()
  await context.addInitScript(() => {
    const { open } = IDBFactory.prototype
    IDBFactory.prototype.open = function () {
      const request = open.call(this, 'another')
      request.addEventListener = () => {}
      return request
    }
    // The page waits seconds for an answer, several times over: here ten times as fast.
    const { setTimeout: later } = globalThis
    globalThis.setTimeout = ((run: TimerHandler, delay = 0) => later(run, delay / 10)) as typeof setTimeout
  })
  await page.goto(`${site}#new/flat-sheet`)
  await page.reload()
  await given(page, 'Job').fill('typed meanwhile')
  await page
    .getByRole('alert')
    .filter({ hasText: /storage of this browser does not respond/ })
    .first()
    .waitFor()
  const text = await downloaded(page, () => page.getByRole('button', { name: 'Save as a file' }).first().click())
  expect(JSON.parse(text)).toMatchObject({ job: 'typed meanwhile' })
})
