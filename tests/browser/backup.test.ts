import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { test } from './harness.ts'

const DAY = 24 * 3_600_000

const backups = async (page: Page): Promise<void> => {
  await page.getByText('Backup', { exact: true }).click()
  await page.locator('backup-panel').getByRole('button', { name: 'Save a backup' }).waitFor()
}
const says = (page: Page, words: RegExp): Promise<void> =>
  page.locator('backup-panel').filter({ hasText: words }).waitFor()

/** What the browser answers, before the page asks. */
const answering = (page: Page, answer: 'agrees' | 'refuses' | 'agrees when asked again' | 'says nothing') =>
  page.addInitScript((answer) => {
    let agrees = answer === 'agrees'
    Object.defineProperty(navigator, 'storage', {
      value:
        answer === 'says nothing'
          ? undefined
          : {
              persisted: async () => agrees,
              persist: async () => {
                agrees ||= answer === 'agrees when asked again'
                return agrees
              },
            },
    })
  }, answer)

test.for([
  ['agrees', /has agreed to save your sheets until you delete them/],
  ['refuses', /may delete saved sheets by itself when the disk runs short\. It was asked not to, and has not agreed/],
  ['says nothing', /does not say whether it may delete saved sheets/],
] as const)('what the browser answered is said in plain words: it %s', async ([answer, words], { open }) => {
  const { page } = await open()
  await answering(page, answer)
  await page.reload()
  await page.locator('shelf-page').waitFor()
  await backups(page)
  await says(page, words)
  await says(page, /some browsers, on phones and tablets above all, delete what a page has saved/)
})

test('a browser that has not agreed can be asked again', async ({ open }) => {
  const { page } = await open()
  await answering(page, 'agrees when asked again')
  await page.reload()
  await backups(page)
  await says(page, /has not agreed/)
  await page.getByRole('button', { name: 'Ask the browser again' }).click()
  await says(page, /has agreed to save your sheets/)
})

test('an engine that deletes what was not visited for a week is named, and what helps', async ({ open }) => {
  const { page } = await open()
  await page.addInitScript(() => Object.assign(globalThis, { GestureEvent: class {} }))
  await page.reload()
  await backups(page)
  await says(page, /deletes what a page has saved when you do not open the page for seven days.*home screen/)
})

test('the backup is recalled once changed sheets went two weeks without one, and when it was made is said', async ({
  open,
}) => {
  const { page, context } = await open({ path: '#new/flat-sheet' })
  await page.getByLabel('Job', { exact: true }).fill('changed today')
  await page
    .locator('sheet-head')
    .filter({ hasText: /Saved \d\d:\d\d/ })
    .waitFor()
  await page.getByRole('link', { name: 'Evenfield' }).click()
  await page.locator('shelf-page [data-open]').waitFor()
  const reminder = page.locator('shelf-page .trouble')
  expect(await reminder.count()).toBe(0)
  await backups(page)
  await says(page, /No backup was made in this browser yet/)

  await context.clock.setFixedTime(Date.now() + 15 * DAY)
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  await page.reload()
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  await reminder.filter({ hasText: 'No backup was made yet of 1 sheet' }).waitFor()
  await backups(page)
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save a backup' }).click()
  await downloading
  await says(page, /The last backup was made today/)
  await reminder.waitFor({ state: 'detached' })
})
