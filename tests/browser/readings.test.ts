import { expect } from 'vitest'
import { test } from './harness.ts'
import { pressInHead } from './head.ts'

test('a reading older than a change of the lamps says so, its checks wait, and one press confirms it', async ({
  open,
}) => {
  const { page } = await open({ background: true, path: '#new/flat-sheet' })
  // Each also stands at its step.
  const cellOf = (label: string) =>
    page
      .locator('given-cell')
      .filter({ has: page.getByLabel(label, { exact: true }) })
      .first()
  const field = (label: string) => cellOf(label).getByRole('textbox')
  const note = cellOf('Light at the original').locator('outdated-note')
  await field('Light at the original').fill('820')
  await field('Lamps from the centre line').fill('1150')
  await note
    .getByText(/^measured \d+ \w+ \d{4}, \d\d:\d\d before Lamps from the centre line changed$/)
    .waitFor({ state: 'attached' })
  await page
    .getByText('Light at the original to be measured again', { exact: false })
    .first()
    .waitFor({ state: 'attached' })
  await page.getByRole('button', { name: 'Light at the original (measure again)' }).waitFor({ state: 'attached' })
  // What is confirmed is read under the lamps as they are now; undo takes the confirmation back.
  await note.getByRole('button', { name: 'Still correct: Light at the original' }).click()
  await expect.poll(() => note.count()).toBe(0)
  await page.keyboard.press('Control+z')
  await note.waitFor()
  // Read again, it counts at once.
  await field('Light at the original').fill('790')
  await expect.poll(() => note.count()).toBe(0)
  // At the stand it is the same.
  await field('Lamps above the board').fill('1000')
  await pressInHead(page, 'At the stand')
  await page.locator('stand-switch').getByRole('button', { name: 'All figures' }).click()
  await page
    .locator('stand-overview li')
    .filter({ hasText: 'Light at the original' })
    .getByText('measured before Lamps above the board changed')
    .waitFor()
})
