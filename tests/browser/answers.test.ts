import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { test, violations } from './harness.ts'
import { heard, listen } from './heard.ts'

const given = (page: Page, label: string) => page.getByRole('textbox', { name: label, exact: true })
const sections = (page: Page): Promise<string[]> => page.locator('answers-page .sections b').allInnerTexts()

test('answers compose a sheet, which grows as one answers and opens as one made it', async ({ open }) => {
  const { page } = await open()
  await page.getByRole('link', { name: 'Compose a sheet from a few answers' }).click()
  await page.getByRole('heading', { name: 'Compose a sheet' }).waitFor()
  await expect.poll(() => sections(page)).toContain('Frame')
  expect(await sections(page)).not.toContain('Frames')

  await given(page, 'Original').fill('980 x 730')
  await given(page, 'Sampling required').fill('300')
  await given(page, 'Sensor').fill('36 x 24')
  await given(page, 'Pixels').fill('6000 x 4000')
  await given(page, 'Focal length').fill('60')
  // One frame falls short: the parts change, and why is said. The field keeps the focus.
  await expect.poll(() => sections(page)).toContain('Frames')
  await page.getByText(/^One frame gives \d+ ppi of the 300 ppi required\.$/).waitFor()
  expect(await given(page, 'Focal length').evaluate((one) => one.matches(':focus'))).toBe(true)
  await page.locator('given-cell[data-cell=glossy]').getByText('Yes', { exact: true }).click()
  await page.getByText('It is glossy, varnished or under glass.').waitFor()
  await page.getByLabel('Name of the job').fill('Tithe maps')
  expect(await violations(page)).toEqual([])

  // What is answered is there again after a reload.
  await expect.poll(() => page.locator('answers-page dl').textContent()).toContain('Frames')
  await page.reload()
  await expect.poll(() => given(page, 'Original').inputValue()).toBe('980 x 730')

  await page.getByRole('button', { name: 'Make this sheet' }).click()
  await page.locator('fill-face given-cell').first().waitFor()
  expect(page.url()).toMatch(/#sheet\//)
  expect(await given(page, 'Original').inputValue()).toBe('980 x 730')
  // No example: what was not answered is empty.
  expect(await given(page, 'Highest mark of the column').inputValue()).toBe('')
  expect(await page.locator('example-bar p').count()).toBe(0)
})

test('a kind may be chosen by keyboard, and what was typed stays', async ({ open }) => {
  const { page } = await open({ path: '#answers' })
  await given(page, 'Sampling required').fill('400')
  await page.getByRole('radio', { name: /A bound volume/ }).focus()
  await page.keyboard.press('Space')
  await expect.poll(() => sections(page)).toContain('Volume')
  await given(page, 'Leaves').fill('300')
  await page.getByRole('radio', { name: /^Film/ }).check()
  await expect.poll(() => sections(page)).toContain('Light panel')
  await expect.poll(() => given(page, 'Sampling required').inputValue()).toBe('400')
  await page.getByRole('radio', { name: /A bound volume/ }).check()
  await expect.poll(() => given(page, 'Leaves').inputValue()).toBe('300')
  await page.getByRole('button', { name: 'Clear all answers' }).click()
  await expect.poll(() => given(page, 'Sampling required').inputValue()).toBe('')
})

for (const dim of [false, true])
  test(`on a phone nothing overflows and axe finds nothing, ${dim ? 'dim' : 'light'}`, async ({ open }) => {
    const { page } = await open({ path: '#answers', width: 390, height: 844, dim })
    await given(page, 'Original').fill('420 x 297')
    await page.getByRole('button', { name: 'Make this sheet' }).waitFor()
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    expect(await violations(page)).toEqual([])
  })

test('the state of the checks is announced once typing pauses, not at every key', async ({ open }) => {
  const { page } = await open({ path: '#answers' })
  const state = page.locator('answers-page [role=status]')
  await expect.poll(() => state.textContent()).toMatch(/checks need more figures/)
  // The clock stands still between keys: on a busy machine a key takes longer than a pause.
  await page.clock.install({ time: 0 })
  await page.clock.pauseAt(1000)
  await listen(page)
  await given(page, 'Original').focus()
  for (const key of '9800') {
    await page.keyboard.press(key)
    await page.clock.runFor(200)
  }
  expect(await heard(page)).toEqual([])
  await page.clock.resume()
  await expect.poll(() => heard(page)).toEqual([expect.stringMatching(/^\d+ cells have errors\./)])
})
