import { expect } from 'vitest'
import { test } from './harness.ts'

test('a sheet on the app’s own server is shown for what it is, and saved when asked', async ({ open }) => {
  const visit = await open()
  const { page } = visit
  const file = { format: 'evenfield-worksheet', version: 2, title: 'Ferry Lane maps', cells: [] }
  await page.route('**/sheets/maps.json', (route) => route.fulfill({ json: file }))
  await page.evaluate(() => {
    location.hash = 'open=sheets/maps.json'
  })
  await page.getByText(/This worksheet of 0 cells is on this server/).waitFor()
  await page.getByRole('button', { name: 'Save a copy' }).click()
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe('Ferry Lane maps')
})

test('a sheet on another server is not asked for', async ({ open }) => {
  const { page } = await open({ path: '#open=https://elsewhere.example/maps.json' })
  await page
    .getByRole('alert')
    .filter({ hasText: /Only sheets on the same server/ })
    .waitFor()
})
