import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { Cell, Steps } from '../../src/worksheet/index.ts'
import { given, result } from '../worksheet/make.ts'
import { focused } from './focus.ts'
import { CLIPBOARD, test } from './harness.ts'
import { pressInHead } from './head.ts'
import { cellsOf, openSheet } from './open-sheet.ts'

const CELLS: Cell[] = [
  given('left', '', { unit: 'lx', label: 'Left edge' }),
  given('right', '400 lx', { unit: 'lx', label: 'Right edge' }),
  result('ratio', 'left / right', { label: 'Left to right' }),
  result('far', '600 mm', { unit: 'mm', label: 'Board to sensor' }),
  result('twice', 'far * 2', { unit: 'mm', label: 'Twice as far' }),
  {
    kind: 'steps',
    id: 's',
    title: 'In order',
    steps: [
      { text: 'Level the camera' },
      { text: 'Read the left edge', reading: 'left' },
      { text: 'Measure the distance', reading: 'far' },
      { text: 'Read the other meter', reading: 'gone' },
    ],
  },
]

const reported = (page: Page) => page.locator('steps-cell [role=status]').textContent()
const figure = (page: Page, label: string) =>
  page.locator('result-cell').filter({ hasText: label }).locator('.figure').textContent()
const stepsOf = async (page: Page): Promise<Steps['steps']> =>
  ((await cellsOf(page)).find(({ kind }) => kind === 'steps') as Steps).steps

test('steps are ticked by keyboard, reported in words, and begun anew in one step of undo', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, CELLS)
  const first = page.getByRole('checkbox', { name: /Level the camera/ })
  await first.focus()
  await page.keyboard.press('Space')
  await expect.poll(() => reported(page)).toBe('1 of 4 done')
  await page.keyboard.press('Tab')
  expect(await focused(page)).toMatch(/Read the left edge/)
  await page.keyboard.press('Space')
  await expect.poll(() => reported(page)).toBe('2 of 4 done')
  await page.keyboard.press('Control+z')
  await expect.poll(() => reported(page)).toBe('1 of 4 done')
  await page.keyboard.press('Control+y')
  await expect.poll(() => reported(page)).toBe('2 of 4 done')
  await page.getByLabel('Left edge', { exact: true }).last().fill('380')
  await page.getByRole('button', { name: 'Start over' }).click()
  await expect.poll(() => reported(page)).toBe('0 of 4 done')
  expect(await page.getByLabel('Left edge', { exact: true }).last().inputValue()).toBe('380')
  await page.keyboard.press('Control+z')
  await expect.poll(() => reported(page)).toBe('2 of 4 done')
})

test('a reading typed at its step feeds the cell it is of, and is cleared only when asked', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, CELLS)
  const steps = page.locator('steps-cell')
  await steps.getByLabel('Left edge', { exact: true }).fill('380')
  await expect.poll(() => figure(page, 'Left to right')).toBe('0.95')
  expect(await page.getByLabel('Left edge', { exact: true }).first().inputValue()).toBe('380')
  await steps.getByLabel('Board to sensor, measured').fill('604')
  await expect.poll(() => figure(page, 'Twice as far')).toBe('1208')
  await steps.getByText('computed 600 mm; measured 4 mm over').waitFor()
  await steps.getByLabel('Left edge', { exact: true }).fill('380 mm')
  await steps.locator('.problem').first().waitFor()
  await steps.getByLabel('Left edge', { exact: true }).fill('390')
  await steps.getByText('The reading “gone” is no longer in the sheet').waitFor()

  await page.getByRole('checkbox', { name: /Level the camera/ }).check()
  await page.getByRole('button', { name: 'Start over' }).click()
  await page.getByRole('button', { name: 'Clear the readings too' }).click()
  await expect.poll(() => steps.getByLabel('Left edge', { exact: true }).inputValue()).toBe('')
  await expect.poll(() => figure(page, 'Twice as far')).toBe('1200')
  expect(await focused(page)).toMatch(/Level the camera/)
  await page.keyboard.press('Control+z')
  await expect.poll(() => figure(page, 'Twice as far')).toBe('1208')
})

test('steps are ticked by touch, each target a finger wide', async ({ open }) => {
  const { page } = await open({ width: 390, height: 844, context: { hasTouch: true } })
  await openSheet(page, CELLS)
  const label = page.locator('steps-cell label').filter({ hasText: 'Level the camera' })
  await label.scrollIntoViewIfNeeded()
  const box = await label.boundingBox()
  expect(box?.height).toBeGreaterThanOrEqual(44)
  await page.touchscreen.tap((box?.x ?? 0) + (box?.width ?? 0) - 20, (box?.y ?? 0) + 10)
  await expect.poll(() => reported(page)).toBe('1 of 4 done')
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
})

test('steps are written by keyboard alone: added, moved, removed, and given a reading by name', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, CELLS.slice(0, 4))
  await pressInHead(page, 'Build')
  await page.getByRole('group', { name: 'Add a cell' }).getByRole('button', { name: 'Steps' }).click()
  await expect.poll(() => focused(page)).toMatch(/^Title/)
  await page.keyboard.type('By hand')
  await page.getByLabel(/Step 1: Task/).focus()
  await page.keyboard.type('Lamps on')
  await page.keyboard.press('Enter')
  await expect.poll(() => focused(page)).toMatch(/^Step 2/)
  await page.keyboard.type('Read the right')
  await page.getByLabel('Reading').nth(1).selectOption({ label: 'Right edge (right)' })
  await page.getByRole('button', { name: 'Move up, step 2' }).press('Enter')
  await expect.poll(() => focused(page)).toMatch(/^Move up, step 1/)
  await expect.poll(() => stepsOf(page)).toEqual([{ text: 'Read the right', reading: 'right' }, { text: 'Lamps on' }])
  await page.getByRole('button', { name: 'Remove step 2' }).press('Enter')
  await expect.poll(() => stepsOf(page)).toEqual([{ text: 'Read the right', reading: 'right' }])
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await stepsOf(page)).length).toBe(2)

  const name = page.locator('name-field').getByLabel('Name')
  await page.getByRole('button', { name: 'Given: Right edge', exact: true }).click()
  await name.fill('right_lx')
  await name.press('Enter')
  await expect.poll(async () => (await stepsOf(page))[0]?.reading).toBe('right_lx')
})

test('a list pasted into a step makes a step of each line', async ({ open }) => {
  const { page } = await open({ permissions: CLIPBOARD })
  await openSheet(page, CELLS)
  await pressInHead(page, 'Build')
  await page.getByRole('button', { name: 'Steps: In order' }).click()
  await page.getByRole('button', { name: 'Add a step' }).click()
  await expect.poll(() => focused(page)).toMatch(/^Step 5/)
  await page.evaluate(() => navigator.clipboard.writeText('Cover the original\n\n Lamps off \r\nLens cap on'))
  await page.keyboard.press('Control+v')
  await expect
    .poll(async () => (await stepsOf(page)).slice(4).map(({ text }) => text))
    .toEqual(['Cover the original', 'Lamps off', 'Lens cap on'])
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await stepsOf(page)).length).toBe(5)
})
