import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { test } from './harness.ts'
import { saved } from './head.ts'

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

/** A page of the same browser, with a sheet saved there, that answers so. */
async function shelfThat(first: Page, answer: Parameters<typeof answering>[1]): Promise<Page> {
  const page = await first.context().newPage()
  await answering(page, answer)
  await page.goto(first.url().replace(/#.*/, ''))
  await backups(page)
  return page
}

/** Saves a sheet: the backup is offered to those who have something to lose. */
async function saveSheet(page: Page): Promise<void> {
  await page.getByLabel('Job', { exact: true }).fill('changed today')
  await saved(page)
}

test('what the browser answered is said in plain words, and it can be asked again', async ({ open }) => {
  const { page: first, context } = await open({ path: '#new/flat-sheet' })
  await saveSheet(first)

  const agrees = await shelfThat(first, 'agrees')
  await says(agrees, /saves your sheets until you delete them/)
  await says(agrees, /some browsers, mainly on phones and tablets, delete what a page has saved/)

  await says(
    await shelfThat(first, 'refuses'),
    /may delete saved sheets when disk space runs low: it has not granted permanent storage/,
  )
  await says(await shelfThat(first, 'says nothing'), /does not say whether it may delete saved sheets/)

  const again = await shelfThat(first, 'agrees when asked again')
  await says(again, /has not granted permanent storage/)
  await again.getByRole('button', { name: 'Ask for permanent storage again' }).click()
  await says(again, /saves your sheets until you delete them/)

  await context.addInitScript(() => Object.assign(globalThis, { GestureEvent: class {} }))
  await says(
    await shelfThat(first, 'agrees'),
    /deletes what a page has saved when you have not opened the page for seven days.*home screen/,
  )
})

test('the backup is recalled once changed sheets went two weeks without one, and when it was made is said', async ({
  open,
}) => {
  const { page, context } = await open({ path: '#new/flat-sheet' })
  await saveSheet(page)
  await page.getByRole('link', { name: 'Evenfield' }).click()
  await page.locator('shelf-page [data-open]').waitFor()
  const reminder = page.locator('shelf-page .problem')
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
