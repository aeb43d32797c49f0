import { expect } from 'vitest'
import { foldedAsOthers } from './folds.ts'
import { test } from './harness.ts'
import { pressInHead } from './head.ts'

test('a function is found by any word, read, and its example put into the sheet with one press', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await pressInHead(page, 'Functions')
  await page.getByText(/^\d+ functions\.$/).waitFor()
  await page.getByLabel('Find a function by any word').fill('mirror glossy zone')
  await page.getByText(/^(One function|\d functions)\.$/).waitFor()
  await page.getByText('mirror_zone(half_width').click()
  await page.getByText('Source: derived: law of reflection').waitFor()
  await page.getByRole('button', { name: 'Add to the sheet' }).first().click()
  await page.getByRole('link', { name: 'Build', exact: true }).waitFor()
  const last = page.locator('build-cell').last()
  await expect.poll(() => last.locator('.figure').first().textContent()).toBe('450')
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await expect.poll(() => page.locator('build-cell .figure', { hasText: /^450$/ }).count()).toBe(0)
})

test('words that no function has say so', async ({ open }) => {
  const { page } = await open({ path: '#new/two-lamps/functions' })
  await page.getByText(/^\d+ functions\.$/).waitFor()
  await page.getByLabel('Find a function by any word').fill('submarine')
  await page.getByText('No function matches these words. Try fewer words, or others.').waitFor()
})

test('a function shows the published values it was checked with, and the page of them all', async ({ open }) => {
  const { page } = await open({ path: '#new/two-lamps/functions' })
  await page.getByLabel('Find a function by any word').fill('lens_to_sensor')
  await page.getByText('lens_to_sensor(focal').click()
  await page.getByText('How this was checked').click()
  expect(await foldedAsOthers(page, 'published-checks')).toBe(true)
  const row = page.getByRole('row').filter({ hasText: 'lens_to_sensor(8 in, 5)' })
  await row.getByText('48 in').first().waitFor()
  await row.getByText('The Sinclair Handbook of Photography').waitFor()
  const address = await page
    .getByRole('link', { name: 'All published values on one page, to print' })
    .getAttribute('href')
  await page.goto(new URL(address as string, page.url()).href)
  await page.getByRole('heading', { name: 'lens_to_sensor', exact: true }).waitFor()
  await page
    .getByText('All agree within the rounding of the printed figure, or within what is said beside the source.')
    .waitFor()
})
