import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { test } from './harness.ts'
import { given } from './head.ts'

const row = (page: Page, label: string): Locator =>
  page.locator('result-cell').filter({ has: page.getByRole('button', { name: label, exact: true }) })
const figure = (page: Page, label: string): Locator => row(page, label).locator('.figure')

test('a check that fails offers suggestions; one press applies one, one undo takes it back', async ({ open }) => {
  const { page } = await open({ background: true, path: '#new/flat-sheet' })
  await given(page, 'Highest mark of the column').fill('900')
  const check = page.locator('check-cell').filter({ hasText: 'the column is 17.0 mm short' })
  // The column is as long as it is; the border is a setting.
  await expect.poll(() => check.getByRole('button', { name: /column reaches/i }).count()).toBe(0)
  const border = await given(page, 'Border around the original').inputValue()
  await check
    .getByRole('button', { name: /leave a border of/i })
    .first()
    .click()
  await expect.poll(() => given(page, 'Border around the original').inputValue()).not.toBe(border)
  await page
    .locator('check-cell')
    .filter({ hasText: /(Pass|Marginal)( \(with the example’s figures\))?: the column is high enough/ })
    .waitFor({ state: 'attached' })
  await page.keyboard.press('Control+z')
  await expect.poll(() => given(page, 'Border around the original').inputValue()).toBe(border)
  await expect.poll(() => given(page, 'Highest mark of the column').inputValue()).toBe('900')
})

test('a part that would help is offered beside the check: one press adds it, one undo takes it away', async ({
  open,
}) => {
  const { page } = await open({ background: true, path: '#new/flat-sheet' })
  const heading = (name: string) => page.locator('fill-face .heading').getByRole('button', { name, exact: true })
  await page
    .getByRole('button', { name: /Take it in \d+ frames\./ })
    .first()
    .click()
  await heading('Frames').waitFor()
  expect(await heading('Frame').count()).toBe(0)
  expect(await page.getByRole('textbox', { name: 'Original', exact: true }).inputValue()).toBe('420 x 297')
  await page.keyboard.press('Control+z')
  await heading('Frame').waitFor()
  expect(await heading('Frames').count()).toBe(0)
})

test('a measured value shows beside the computed one and is used in its place until it is cleared', async ({
  open,
}) => {
  const { page } = await open({ background: true, path: '#new/flat-sheet' })
  const cell = row(page, 'Original to sensor')
  await cell.getByRole('button', { name: 'Measure', exact: true }).click()
  // The field is fetched when it is asked for.
  await cell.getByRole('textbox', { name: 'Original to sensor, measured' }).waitFor()
  await page.keyboard.type('921')
  await cell.filter({ hasText: 'measured 921 mm, 4 mm over' }).waitFor()
  await expect.poll(() => figure(page, 'Original to sensor').textContent()).toBe('917')
  await expect.poll(() => figure(page, 'Set the column to').textContent()).toBe('921')
  // Who measures is saved with it, once the initials are given.
  await cell.getByLabel('Your initials (optional)').fill('LM')
  await cell.getByRole('textbox', { name: 'Original to sensor, measured' }).fill('922')
  await cell.getByRole('button', { name: 'Original to sensor', exact: true }).click()
  await cell.getByText(/^This value was measured \d+ \w+ \d{4}, \d\d:\d\d by LM\.$/).waitFor()
  await cell.getByRole('button', { name: 'Original to sensor', exact: true }).click()
  await cell.getByRole('button', { name: 'Clear', exact: true }).click()
  await expect.poll(() => figure(page, 'Set the column to').textContent()).toBe('917')
})

test('a result unfolds into its working by keyboard, and a name in it leads to its cell', async ({ open }) => {
  const { page } = await open({ background: true, path: '#new/flat-sheet' })
  const cell = row(page, 'Original to sensor')
  await cell.getByRole('button', { name: 'Original to sensor', exact: true }).press('Enter')
  await cell.filter({ hasText: '= original_to_sensor(60 mm, 1:13.2, 0 mm)' }).waitFor()
  await cell.getByRole('link', { name: 'focal' }).press('Enter')
  await expect
    .poll(() =>
      page.evaluate(() => {
        let at: Element | null = document.activeElement
        while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
        return (at as HTMLInputElement | null)?.value
      }),
    )
    .toBe('60')
})

test('limits typed into a given show on what they reach', async ({ open }) => {
  const { page } = await open({ background: true, path: '#new/flat-sheet' })
  await given(page, 'Focal length').fill('60 ± 1')
  await expect.poll(() => figure(page, 'Original to sensor').textContent()).toBe('917 ± 15')
})

test('light typed as an exposure value is taken in lux, and the constant it is converted with is named', async ({
  open,
}) => {
  const { page } = await open({ background: true, path: '#new/flat-sheet' })
  const lit = given(page, 'Light at the original').first()
  const read = page
    .locator('given-cell')
    .filter({ hasText: 'read as 640 lx, by the meter’s constant C = 250 (ISO 2720)' })
    .first()
  await lit.fill('8 EV')
  await read.waitFor()
  await lit.fill('640')
  await expect.poll(() => read.count()).toBe(0)
})
