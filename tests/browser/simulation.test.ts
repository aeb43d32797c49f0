import { expect } from 'vitest'
import type { Cell } from '../../src/worksheet/index.ts'
import { test } from './harness.ts'
import { cellsOf, openSheet } from './open-sheet.ts'

const SHEET: Cell[] = [
  { kind: 'given', id: 'a', name: 'a', label: 'First side', unit: 'mm', value: '100 ± 3' },
  { kind: 'given', id: 'b', name: 'b', label: 'Second side', unit: 'mm', value: '100 ± 1' },
  { kind: 'given', id: 'z', name: 'z', label: 'Offset', unit: 'mm', value: '0 ± 3' },
  { kind: 'result', id: 's', name: 'sum', label: 'Sum', unit: 'mm', formula: 'a + b' },
  { kind: 'result', id: 'q', name: 'square', label: 'Square', unit: 'mm^2', formula: 'z^2' },
  { kind: 'check', id: 'c', name: 'fits', label: 'Fits', condition: 'sum < 203 mm', message: 'Too long.' },
]

test('a result is simulated when asked, follows what is typed, and shows what matters most', async ({ open }) => {
  const { page } = await open({ background: true })
  await openSheet(page, SHEET)
  const sum = page.locator('result-cell', { hasText: 'Sum' })
  await sum.getByRole('button', { name: 'Sum', exact: true }).click()
  const simulated = sum.locator('simulated-figure')
  await simulated.getByLabel('Tries').fill('20000')
  await simulated.getByRole('button', { name: 'Simulate', exact: true }).click()
  // The sum of two rectangular quantities: a standard deviation of √((3² + 1²)/3) mm.
  await simulated.getByText(/In 20\s000 tries .* mean 200 mm, standard deviation 1\.8\d* mm/).waitFor()
  await simulated.getByText('What matters most: First side 90 % and Second side 10 %.').waitFor()
  await simulated.getByText(/Fits passes in 9\d(\.\d)? % of the tries\./).waitFor()
  await simulated.locator('svg.drawing').waitFor()
  // What is typed is simulated by itself once it was asked for.
  await page.locator('given-cell', { hasText: 'First side' }).locator('input').first().fill('300 ± 3')
  await simulated.getByText(/mean 400 mm/).waitFor()
  await simulated.getByText(/Fits passes in 0 % of the tries\./).waitFor()
})

test('where limits are not linear, the simulation answers by itself; a check that may fail shows its share', async ({
  open,
}) => {
  const { page } = await open({ background: true })
  await openSheet(page, SHEET)
  const square = page.locator('result-cell', { hasText: 'Square' })
  await square.getByRole('button', { name: 'Square', exact: true }).click()
  // The mean of z² for z rectangular within ±w is w²/3.
  await square.getByText(/In 50\s000 tries .* mean (3|3\.0\d|2\.9\d) mm²/).waitFor()
  // P(a + b > 203): the trapezoid of widths 3 and 1 beyond 3 is 1/24 of the whole.
  await page
    .locator('check-cell')
    .getByText(/Passes in 95\.\d % of simulated tries\./)
    .waitFor()
})

test('a long simulation is cancelled, and how a given is distributed is set in Build', async ({ open }) => {
  const { page } = await open({ background: true })
  await openSheet(page, SHEET)
  const sum = page.locator('result-cell', { hasText: 'Sum' })
  await sum.getByRole('button', { name: 'Sum', exact: true }).click()
  const simulated = sum.locator('simulated-figure')
  await simulated.getByLabel('Tries').fill('1000')
  await simulated.getByLabel('Tries').fill('many')
  await simulated.getByText('The number of tries must be a whole number from 100 to 10 000 000.').waitFor()
  expect(await simulated.getByRole('button', { name: 'Simulate', exact: true }).isDisabled()).toBe(true)
  await simulated.getByLabel('Tries').fill('10000000')
  await simulated.getByRole('button', { name: 'Simulate', exact: true }).click()
  await simulated.getByRole('button', { name: 'Cancel' }).click()
  await simulated.getByRole('progressbar').waitFor({ state: 'detached' })
  expect(await simulated.getByText(/In .* tries/).count()).toBe(0)

  await page.getByRole('link', { name: 'Build', exact: true }).click()
  await page.locator('build-cell', { hasText: 'First side' }).first().locator('.call').click()
  await page.getByLabel('Distribution within its limits, for a simulation').selectOption('normal')
  await page.getByLabel('Limits in standard deviations (k)').fill('3')
  await expect
    .poll(async () => (await cellsOf(page)).find(({ id }) => id === 'a'))
    .toMatchObject({ distribution: 'normal', coverage: '3' })
  await page.getByLabel('Distribution within its limits, for a simulation').selectOption('rectangular')
  await expect.poll(async () => (await cellsOf(page)).find(({ id }) => id === 'a')).not.toHaveProperty('coverage')
})
