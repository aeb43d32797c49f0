import { readFile, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { test } from './harness.ts'
import { given, pressInHead, saved } from './head.ts'

/** Sections out of sight are not rendered: their inner text would be empty. */
const figures = (page: Page): Promise<string[]> => page.locator('result-cell .figure, check-cell p').allTextContents()

test('what was typed is there after a reload, and on the shelf', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await given(page, 'Focal length').fill('80')
  await given(page, 'Job').fill('Sluice House, survey of 1871')
  await saved(page)
  const before = await figures(page)
  await page.reload()
  await expect.poll(() => given(page, 'Focal length').inputValue()).toBe('80')
  await expect.poll(() => figures(page)).toEqual(before)
  await page.getByRole('link', { name: 'Evenfield' }).click()
  await page
    .locator('shelf-page')
    .getByRole('link', { name: /copy stand.*saved today/ })
    .click()
  await expect.poll(() => given(page, 'Job').inputValue()).toBe('Sluice House, survey of 1871')
})

test('leaving the page at once loses nothing', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await given(page, 'Focal length').fill('81')
  await page.getByRole('link', { name: 'Evenfield' }).click()
  await page
    .locator('shelf-page')
    .getByRole('link', { name: /copy stand.*saved today/ })
    .click()
  await expect.poll(() => given(page, 'Focal length').inputValue()).toBe('81')
})

test('a template that was only looked at is not saved', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await given(page, 'Focal length').waitFor()
  await page.getByRole('link', { name: 'Evenfield' }).click()
  await page.getByRole('heading', { name: 'What are you photographing?' }).waitFor()
  expect(await page.getByRole('heading', { name: 'Your sheets' }).count()).toBe(0)
})

test('a link opened in a fresh profile says what it is, and gives the same figures', async ({ open }) => {
  const first = await open({ path: '#new/flat-sheet' })
  await given(first.page, 'Focal length').fill('75 mm ± 0.5 mm')
  await pressInHead(first.page, 'Share')
  const link = first.page.getByLabel('Link to a copy of this sheet')
  await expect.poll(() => link.inputValue()).toMatch(/#s=[12]\./)
  await first.page
    .locator('share-panel')
    .filter({ hasText: /About .* characters/ })
    .waitFor()
  const address = await link.inputValue()

  const second = await open({ path: address.slice(first.site.length) })
  await second.page
    .locator('copy-page')
    .filter({ hasText: /worksheet of \d+ cells/ })
    .waitFor()
  await second.page.getByRole('button', { name: 'Save a copy' }).click()
  await expect.poll(() => given(second.page, 'Focal length').inputValue()).toBe('75 mm ± 0.5 mm')
  await expect.poll(() => figures(second.page)).toEqual(await figures(first.page))
})

test('a link that is left leaves nothing behind', async ({ open }) => {
  const first = await open({ path: '#new/two-lamps' })
  await pressInHead(first.page, 'Share')
  const link = first.page.getByLabel('Link to a copy of this sheet')
  await expect.poll(() => link.inputValue()).toMatch(/#s=[12]\./)
  const second = await open({ path: (await link.inputValue()).slice(first.site.length) })
  await second.page.getByRole('button', { name: 'Cancel' }).click()
  await second.page.getByRole('heading', { name: 'What are you photographing?' }).waitFor()
  expect(await second.page.getByRole('heading', { name: 'Your sheets' }).count()).toBe(0)
})

test('a broken link is reported on the shelf', async ({ open }) => {
  const { page } = await open({ path: '#s=1.AAAA' })
  await page
    .getByRole('alert')
    .filter({ hasText: /cut short or altered/ })
    .waitFor()
})

test('a sheet goes out as a file and comes in as a copy; a bad file leaves everything as it was', async ({ open }) => {
  const { page } = await open({ path: '#new/getting-closer' })
  // The picker is the system's own and cannot be driven; without it the file is a download.
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  await pressInHead(page, 'Share')
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save as a file' }).click()
  const path = join(tmpdir(), `evenfield-${process.pid}.evenfield.json`)
  await (await downloading).saveAs(path)
  expect(JSON.parse(await readFile(path, 'utf8')).format).toBe('evenfield-worksheet')

  await page.getByRole('link', { name: 'Evenfield' }).click()
  await page.locator('#file').setInputFiles(path)
  // The sheet it was sent from is in this browser, so that it could also be taken over into that.
  await page
    .locator('copy-page')
    .filter({ hasText: /This is a copy of your sheet/ })
    .waitFor()
  await page.getByRole('button', { name: 'Save a separate copy' }).click()
  await page.locator('fill-face').waitFor()
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toMatch(/Getting closer/)

  await page.getByRole('link', { name: 'Evenfield' }).click()
  const bad = join(tmpdir(), `evenfield-${process.pid}.bad.json`)
  await writeFile(bad, '{"format":"evenfield-worksheet","version":1,"title":"Bad","cells":[{"kind":"given","id":"a"}]}')
  await page.locator('#file').setInputFiles(bad)
  await page
    .getByRole('alert')
    .filter({ hasText: /cells\[0\]\.name/ })
    .waitFor()
  expect(
    await page
      .locator('shelf-page')
      .getByRole('link', { name: /Getting closer/ })
      .count(),
  ).toBe(2)
})

test('a saved sheet is duplicated, removed, and put back', async ({ open }) => {
  const { page } = await open({ path: '#new/two-lamps' })
  await given(page, 'Job').fill('Sluice House, panel')
  await saved(page)
  await page.getByRole('link', { name: 'Evenfield' }).click()
  const sheets = page.locator('shelf-page [data-open]')
  await page.getByRole('button', { name: /^Duplicate/ }).click()
  await expect.poll(() => sheets.count()).toBe(2)
  await page.getByRole('button', { name: /^Remove .*copy$/ }).click()
  await expect.poll(() => sheets.count()).toBe(1)
  const undo = page.getByRole('button', { name: 'Undo' })
  await expect.poll(() => undo.evaluate((one) => one.matches(':focus'))).toBe(true)
  await undo.press('Enter')
  await expect.poll(() => sheets.count()).toBe(2)
})

test('a page put to sleep right after the last key leaves what was typed to the next page, and starts afresh when woken', async ({
  open,
}) => {
  const { page, context, site } = await open({ path: '#new/flat-sheet' })
  const before = await given(page, 'Job').inputValue()
  await given(page, 'Job').fill('Sluice House')
  await saved(page)
  const address = page.url()
  // As the browser does it: nothing of the page runs between the last key and its sleep.
  await given(page, 'Job').evaluate((field: HTMLInputElement) => {
    field.value = 'Sluice House, left at once'
    field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }))
    dispatchEvent(new PageTransitionEvent('pagehide', { persisted: true }))
  })
  const next = await context.newPage()
  await next.goto(`${site}#`)
  await next.locator('sheet-list', { hasText: 'Sluice House, left at once' }).waitFor()
  await next.goto(address)
  await expect.poll(() => given(next, 'Job').inputValue()).toBe('Sluice House, left at once')
  await next.close()

  await page.evaluate(() => dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true })))
  await saved(page)
  await expect.poll(() => given(page, 'Job').inputValue()).toBe('Sluice House, left at once')
  expect(await page.evaluate(() => Object.keys(localStorage).filter((key) => key.includes('left')))).toEqual([])
  // The steps of undo came along.
  await page.getByRole('button', { name: /Undo/ }).first().click()
  await expect.poll(() => given(page, 'Job').inputValue()).toBe(before)
})
