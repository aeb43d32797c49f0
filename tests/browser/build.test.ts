import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { test } from './harness.ts'

const row = (page: Page, label: string) => page.locator('build-cell').filter({ hasText: label })
const names = (page: Page) => page.locator('build-cell .call').allInnerTexts()
const focusedLabel = (page: Page) =>
  page.evaluate(() => {
    let at = document.activeElement
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
    return at?.textContent?.trim().replace(/\s+/g, ' ') ?? ''
  })

/** Presses Tab until what has the focus is called so. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press('Tab')
    const called = await page.evaluate(() => {
      let at = document.activeElement
      while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
      const field = at as HTMLInputElement | null
      return [field?.getAttribute('aria-label'), field?.labels?.[0]?.textContent, field?.textContent]
        .filter(Boolean)
        .join(' ')
        .trim()
        .replace(/\s+/g, ' ')
    })
    if (name.test(called)) return
  }
  throw new Error(`No Tab leads to ${name}.`)
}

test('a chain of cells is built from an empty sheet by keyboard alone', async ({ open }) => {
  const { page } = await open()
  await page.getByRole('heading', { name: 'What have you got?' }).waitFor()
  await tabTo(page, /Something else/)
  await page.keyboard.press('Enter')
  await page.locator('build-face .first').waitFor()

  await tabTo(page, /A given/)
  await page.keyboard.press('Enter')
  await page.locator('build-cell').waitFor()
  await page.keyboard.type('Width of the page')
  await tabTo(page, /^Unit/)
  await page.keyboard.type('mm')
  await tabTo(page, /^Value now/)
  await page.keyboard.type('210')

  await page.keyboard.press('Alt+Enter')
  await expect.poll(() => page.locator('build-cell').count()).toBe(2)
  await expect.poll(() => page.getByLabel('Label').evaluate((one) => one.matches(':focus'))).toBe(true)
  await page.keyboard.type('Gutter')
  await tabTo(page, /^Unit/)
  await page.keyboard.type('mm')
  await tabTo(page, /^Value now/)
  await page.keyboard.type('15')

  await tabTo(page, /Add below/)
  await page.keyboard.press('Enter')
  await page.locator('.chosen').waitFor()
  await tabTo(page, /A result/)
  await page.keyboard.press('Enter')
  await expect.poll(() => page.locator('build-cell').count()).toBe(3)
  await page.keyboard.type('Opening')
  await tabTo(page, /^Unit/)
  await page.keyboard.type('mm')
  await tabTo(page, /^Formula/)
  await page.locator('.cm-content').waitFor()
  await page.keyboard.type('2 * width_of_the_page + gutter')
  await page.keyboard.press('Enter')
  await expect.poll(() => focusedLabel(page)).toMatch(/Opening/)
  await expect.poll(() => row(page, 'Opening').locator('.figure').textContent()).toBe('435')

  await tabTo(page, /^Add A check|^A check/)
  await page.keyboard.press('Enter')
  await expect.poll(() => page.locator('build-cell').count()).toBe(4)
  await page.keyboard.type('Fits the board')
  await tabTo(page, /^Holds when/)
  await page.keyboard.type('opening <= 400 mm')
  await page.keyboard.press('Enter')
  await row(page, 'Fits the board')
    .filter({ hasText: /Does not hold/ })
    .first()
    .waitFor()

  await page.keyboard.press('Alt+ArrowUp')
  await expect.poll(async () => (await names(page)).at(-1)).toMatch(/Opening/)
  await expect.poll(() => focusedLabel(page)).toMatch(/Fits the board/)
  await page.keyboard.press('Alt+Delete')
  await expect.poll(() => page.locator('build-cell').count()).toBe(3)
  await expect.poll(() => focusedLabel(page)).toMatch(/Opening/)
  await page.keyboard.press('Control+z')
  await expect.poll(() => page.locator('build-cell').count()).toBe(4)
})

test('renaming a cell follows into the formulas that use it', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  await page.getByRole('button', { name: 'Given: Lens', exact: true }).click()
  const name = page.locator('name-field').getByLabel('Name')
  await expect.poll(() => name.inputValue()).toBe('focal')
  await name.fill('lens_length')
  await name.press('Enter')
  await expect.poll(() => row(page, 'Original to sensor').locator('.formula-text').textContent()).toMatch(/lens_length/)
  expect(
    await page
      .locator('.formula-text')
      .filter({ hasText: /= .*\bfocal\b/ })
      .count(),
  ).toBe(0)
})

test('a name that is taken or cannot be one is told plainly, and what was typed stays', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  await page.getByRole('button', { name: 'Given: Lens', exact: true }).click()
  const name = page.locator('name-field').getByLabel('Name')
  await name.fill('border')
  await name.press('Enter')
  await page
    .locator('name-field')
    .filter({ hasText: /already named «border»/ })
    .first()
    .waitFor()
  await expect.poll(() => name.inputValue()).toBe('border')
  await name.fill('2nd lens')
  await name.press('Enter')
  await page
    .locator('name-field')
    .filter({ hasText: /cannot be a name/ })
    .first()
    .waitFor()
  await name.press('Escape')
  await expect.poll(() => name.inputValue()).toBe('focal')
})

test('a broken formula keeps its text, shows what is wrong, and a mend puts it right', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  await row(page, 'Original to sensor')
    .first()
    .getByRole('button', { name: /^Edit the formula/ })
    .click()
  const editor = page.locator('.cm-content')
  await editor.waitFor()
  await page.keyboard.press('Control+a')
  await page.keyboard.type('5 ft 3 in')
  const field = page.locator('formula-field')
  await field.locator('.trouble').first().waitFor()
  await page.keyboard.press('Enter')
  await page.getByRole('link', { name: 'Fill in' }).click()
  await page
    .locator('result-cell')
    .filter({ hasText: 'Original to sensor' })
    .filter({ hasText: /Not computed/ })
    .first()
    .waitFor()
  await page.getByRole('link', { name: 'Build' }).click()
  await row(page, 'Original to sensor')
    .first()
    .filter({ hasText: /5 ft 3 in/ })
    .first()
    .waitFor()
  await row(page, 'Original to sensor')
    .first()
    .getByRole('button', { name: /^Edit the formula/ })
    .click()
  await field.locator('.trouble').getByRole('button').first().click()
  await expect.poll(() => row(page, 'Original to sensor').first().locator('.figure').textContent()).toBe('1600')
})

test('Escape in a formula puts back what was there', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  await row(page, 'Original to sensor')
    .first()
    .getByRole('button', { name: /^Edit the formula/ })
    .click()
  const editor = page.locator('.cm-content')
  await editor.waitFor()
  const before = await editor.textContent()
  await page.keyboard.press('Control+a')
  await page.keyboard.type('1 + ')
  await expect.poll(() => editor.textContent()).toBe('1 + ')
  await page.keyboard.press('Escape')
  await expect.poll(() => editor.textContent()).toBe(before)
})

test('the editor completes names, functions and units, and shows a function’s record', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  await row(page, 'Original to sensor')
    .first()
    .getByRole('button', { name: /^Edit the formula/ })
    .click()
  await page.locator('.cm-content').waitFor()
  const options = page.locator('.cm-tooltip-autocomplete')
  await page.keyboard.press('Control+a')
  await page.keyboard.type('depth_of')
  await options.getByText('depth_of_field').first().waitFor()
  await page.locator('.cm-completionInfo').getByText('Source:').waitFor()
  await page.keyboard.press('Escape')
  await page.keyboard.press('Control+a')
  await page.keyboard.type('bord')
  await options.getByText('border').first().waitFor()
  await page.keyboard.press('Escape')
  await page.keyboard.press('Control+a')
  await page.keyboard.type('12 m')
  await options.getByText('mm', { exact: true }).waitFor()
  await page.keyboard.press('Escape')
  await page.keyboard.press('Control+a')
  await page.keyboard.type('original_to_sensor(focal, 1)')
  await page.locator('.cm-line span', { hasText: 'original_to_sensor' }).first().hover()
  await page.locator('.cm-tooltip-hover').getByText('Source:').waitFor()
})

test('undo and redo go through typing, moving and removing, and the sheet stands as before', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  await page.locator('build-cell').first().waitFor()
  const before = await names(page)
  await page.getByRole('button', { name: 'Given: Lens', exact: true }).click()
  await page.getByLabel('Label').fill('The lens in hand')
  await page.getByRole('button', { name: 'Later' }).click()
  await page.getByRole('button', { name: 'Duplicate' }).click()
  await expect.poll(async () => (await names(page)).length).toBe(before.length + 1)
  await page.getByRole('button', { name: 'Remove' }).click()
  const after = await names(page)
  const undo = page.getByRole('button', { name: 'Undo' })
  while ((await undo.getAttribute('aria-disabled')) === 'false') await undo.click()
  await expect.poll(() => names(page)).toEqual(before)
  const redo = page.getByRole('button', { name: 'Redo' })
  while ((await redo.getAttribute('aria-disabled')) === 'false') await redo.click()
  await expect.poll(() => names(page)).toEqual(after)
})
