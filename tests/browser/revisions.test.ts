import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { test, violations } from './harness.ts'
import { given, pressInHead, saved } from './head.ts'

const lines = (page: Page): Promise<string[]> => page.locator('revisions-panel li .line > span').allInnerTexts()

test('revisions are named, compared in words and restored, and a restore is undone', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await given(page, 'Focal length').fill('80')
  await saved(page)
  await pressInHead(page, 'Revisions')
  await page.locator('revisions-panel').filter({ hasText: 'None yet' }).waitFor()
  const name = page.getByLabel('Name for the sheet as it is now')
  await name.fill('As agreed')
  await name.press('Enter')
  await expect.poll(() => lines(page)).toEqual([expect.stringMatching(/^As agreed, today \d\d:\d\d$/)])

  await given(page, 'Focal length').fill('60')
  await saved(page)
  await page.getByRole('button', { name: /^Compare As agreed/ }).click()
  const comparison = page.locator('revisions-panel .comparison')
  await comparison.filter({ hasText: /Givens.*Focal length.*80 mm, then 60 mm/s }).waitFor()
  await comparison.filter({ hasText: /Results.*Original to sensor.*mm, then 917 mm/s }).waitFor()
  expect(await violations(page)).toEqual([])

  await page.getByRole('button', { name: /^Restore As agreed/ }).click()
  await expect.poll(() => given(page, 'Focal length').inputValue()).toBe('80')
  await expect
    .poll(() => lines(page))
    .toEqual([expect.stringMatching(/^today \d\d:\d\d before a restore$/), expect.stringMatching(/^As agreed/)])
  await page.reload()
  await expect.poll(() => given(page, 'Focal length').inputValue()).toBe('80')
  await pressInHead(page, 'Revisions')
  await page.getByRole('button', { name: /^Restore today/ }).click()
  await expect.poll(() => given(page, 'Focal length').inputValue()).toBe('60')
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => given(page, 'Focal length').inputValue()).toBe('80')
})

test('what was a minute ago is a revision once it is typed over', async ({ open }) => {
  // The clock stays installed, so that this profile serves no other test.
  const { page, context } = await open()
  await context.clock.install()
  await page.goto(`${page.url()}#new/flat-sheet`)
  await given(page, 'Focal length').fill('80')
  await context.clock.runFor(1000)
  await saved(page)
  await context.clock.runFor(120_000)
  await given(page, 'Focal length').fill('90')
  await context.clock.runFor(1000)
  await saved(page)
  await pressInHead(page, 'Revisions')
  await expect.poll(() => lines(page)).toHaveLength(1)
  await page.getByRole('button', { name: /^Compare today/ }).click()
  await page
    .locator('revisions-panel .comparison')
    .filter({ hasText: /Focal length.*80 mm, then 90 mm/s })
    .waitFor()
})

test('a removed sheet is in the bin after a reload, restored from it, and erased for good once asked', async ({
  open,
}) => {
  const { page } = await open({ path: '#new/two-lamps' })
  await given(page, 'Job').fill('Sluice House, panel')
  await saved(page)
  await page.getByRole('link', { name: 'Evenfield' }).click()
  await page.getByRole('button', { name: /^Remove / }).click()
  await expect.poll(() => page.locator('shelf-page [data-open]').count()).toBe(0)
  await page.reload()
  const bin = page.getByText('Removed sheets (1)')
  await bin.click()
  await page.getByRole('button', { name: /^Restore / }).click()
  await expect.poll(() => page.locator('shelf-page [data-open]').count()).toBe(1)
  await page.locator('removed-sheets').filter({ hasText: 'is back among your sheets' }).waitFor()

  await page.getByRole('button', { name: /^Remove / }).click()
  await expect.poll(() => page.locator('shelf-page [data-open]').count()).toBe(0)
  await page.reload()
  await bin.click()
  await page.getByRole('button', { name: /^Erase / }).click()
  expect(await violations(page)).toEqual([])
  await expect
    .poll(() => page.getByRole('button', { name: 'Cancel' }).evaluate((one) => one.matches(':focus')))
    .toBe(true)
  await page.getByRole('button', { name: 'Cancel' }).press('Enter')
  await page.getByRole('button', { name: /^Erase / }).click()
  await page.getByRole('button', { name: 'Erase', exact: true }).click()
  await page.locator('removed-sheets').filter({ hasText: 'is erased' }).waitFor()
  await page.reload()
  await page.getByRole('heading', { name: 'What are you photographing?' }).waitFor()
  expect(await page.getByText('Removed sheets').count()).toBe(0)
})
