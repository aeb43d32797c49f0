import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { given, result } from '../worksheet/make.ts'
import { tabTo } from './focus.ts'
import { test } from './harness.ts'
import { pressInHead } from './head.ts'
import { cellsOf, openSheet } from './open-sheet.ts'

const row = (page: Page, label: string) => page.locator('build-cell').filter({ hasText: label })
const names = (page: Page) => page.locator('build-cell .call').allInnerTexts()
const focusedLabel = (page: Page) =>
  page.evaluate(() => {
    let at = document.activeElement
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
    return at?.textContent?.trim().replace(/\s+/g, ' ') ?? ''
  })

test('the fields for label, name and unit of a cell are level', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, [given('width', '210 mm', { label: 'Width' })])
  await pressInHead(page, 'Build')
  await page.getByRole('button', { name: 'Given: Width' }).click()
  const tops = async () =>
    Promise.all(['Label', 'Name', 'Unit'].map(async (label) => (await page.getByLabel(label).first().boundingBox())?.y))
  await expect.poll(async () => new Set(await tops()).size).toBe(1)
})

test('a chain of cells is built from an empty sheet by keyboard alone', async ({ open }) => {
  const { page } = await open()
  await page.getByRole('heading', { name: 'What are you photographing?' }).waitFor()
  await tabTo(page, /Something else/)
  await page.keyboard.press('Enter')
  await page.locator('build-face .first').waitFor()

  await tabTo(page, /A given/)
  await page.keyboard.press('Enter')
  const isInLabel = () => page.getByLabel('Label').evaluate((one) => one.matches(':focus'))
  await expect.poll(isInLabel).toBe(true)
  await page.keyboard.type('Width of the page')
  await tabTo(page, /^Unit/)
  await page.keyboard.type('mm')
  await tabTo(page, /^Value/)
  await page.keyboard.type('210')

  await page.keyboard.press('Alt+n')
  await expect.poll(() => page.locator('build-cell').count()).toBe(2)
  await expect.poll(isInLabel).toBe(true)
  await page.keyboard.type('Gutter')
  await tabTo(page, /^Unit/)
  await page.keyboard.type('mm')
  await tabTo(page, /^Value/)
  await page.keyboard.type('15')

  await tabTo(page, /Add below/)
  await page.keyboard.press('Enter')
  await page.locator('.chosen').waitFor()
  await tabTo(page, /A result/)
  await page.keyboard.press('Enter')
  await expect.poll(() => page.locator('build-cell').count()).toBe(3)
  await expect.poll(isInLabel).toBe(true)
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
  await tabTo(page, /^Passes when/)
  await page.keyboard.type('opening <= 400 mm')
  await page.keyboard.press('Enter')
  await row(page, 'Fits the board').filter({ hasText: /Fail/ }).first().waitFor()

  await page.keyboard.press('Alt+ArrowUp')
  await expect.poll(async () => (await names(page)).at(-1)).toMatch(/Opening/)
  await expect.poll(() => focusedLabel(page)).toMatch(/Fits the board/)
  await page.keyboard.press('Alt+r')
  await expect.poll(() => page.locator('build-cell').count()).toBe(3)
  await expect.poll(() => focusedLabel(page)).toMatch(/Opening/)
  await page.keyboard.press('Control+z')
  await expect.poll(() => page.locator('build-cell').count()).toBe(4)
})

test('renaming a cell follows into the formulas that use it', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  await page.getByRole('button', { name: 'Given: Focal length', exact: true }).click()
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

test('a name that is taken or cannot be one is reported, and what was typed stays', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  await page.getByRole('button', { name: 'Given: Focal length', exact: true }).click()
  const name = page.locator('name-field').getByLabel('Name')
  await name.fill('border')
  await name.press('Enter')
  await page
    .locator('name-field')
    .filter({ hasText: /already named “border”/ })
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

test('a broken formula keeps its text, shows what is wrong, and a fix puts it right', async ({ open }) => {
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
  await field.locator('.problem').first().waitFor()
  await page.keyboard.press('Enter')
  await pressInHead(page, 'Fill in')
  await page
    .locator('result-cell')
    .filter({ hasText: 'Original to sensor' })
    .filter({ hasText: /Not computed/ })
    .first()
    .waitFor()
  await pressInHead(page, 'Build')
  await row(page, 'Original to sensor')
    .first()
    .filter({ hasText: /5 ft 3 in/ })
    .first()
    .waitFor()
  await row(page, 'Original to sensor')
    .first()
    .getByRole('button', { name: /^Edit the formula/ })
    .click()
  await field.locator('.problem').getByRole('button').first().click()
  await expect.poll(() => row(page, 'Original to sensor').first().locator('.figure').textContent()).toBe('1600')
})

test('what is selected while the editor is still fetched is replaced by what is typed', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, [
    given('border', '10 mm', { unit: 'mm', label: 'Border' }),
    result('twice', '2 * border', { unit: 'mm', label: 'Both borders' }),
  ])
  await pressInHead(page, 'Build')
  let release = (): void => {}
  const held = new Promise<void>((settle) => {
    release = settle
  })
  await page.route('**/*guide-*.js', async (route) => {
    await held
    await route.continue()
  })
  await row(page, 'Both borders')
    .getByRole('button', { name: /^Edit the formula/ })
    .click()
  const plain = page.getByRole('textbox', { name: 'Formula' })
  await plain.focus()
  await page.keyboard.press('Control+a')
  release()
  await page.locator('.cm-content:focus').waitFor()
  await page.keyboard.type('3 * border')
  await expect.poll(() => row(page, 'Both borders').locator('.figure').textContent()).toBe('30')
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

test('the formula box shows arguments and values, and undo brings back what Escape put away', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, [
    given('sheet_size', '420 x 297', { entry: 'size', unit: 'mm', label: 'The sheet' }),
    given('focal', '60', { unit: 'mm', label: 'Lens' }),
    result('away', 'focal * 2', { unit: 'mm', label: 'Away' }),
  ])
  await pressInHead(page, 'Build')
  await row(page, 'Away')
    .getByRole('button', { name: /^Edit the formula/ })
    .click()
  const editor = page.locator('.cm-content')
  await editor.waitFor()
  await page.keyboard.press('Control+a')
  await page.keyboard.type('lens_to_original(focal, 1:4')
  const list = page.locator('.record.arguments')
  await expect.poll(() => list.locator('[aria-current=true]').textContent()).toBe('magnification')
  // The bracket that closes by itself is never what is wrong.
  await expect.poll(() => page.locator('formula-field .problem').count()).toBe(0)
  await page.keyboard.press('Home')
  for (let i = 0; i < 'lens_to_original('.length; i++) await page.keyboard.press('ArrowRight')
  await expect.poll(() => list.locator('[aria-current=true]').textContent()).toBe('focal')

  await page.keyboard.press('Control+a')
  await page.keyboard.type('sheet_size.width')
  // The first closes the list of what is offered.
  const offered = page.locator('.cm-tooltip-autocomplete')
  await offered.getByText('width').first().waitFor()
  await page.keyboard.press('Escape')
  await offered.waitFor({ state: 'detached' })
  await page.keyboard.press('Escape')
  await expect
    .poll(async () => (await cellsOf(page)).find(({ id }) => id === 'away'))
    .toMatchObject({ formula: 'focal * 2' })
  await page.keyboard.press('Control+z')
  await expect
    .poll(async () => (await cellsOf(page)).find(({ id }) => id === 'away'))
    .toMatchObject({ formula: 'sheet_size.width' })

  // What a name is now, with its parts.
  await row(page, 'Away')
    .getByRole('button', { name: /^Edit the formula/ })
    .click()
  await editor.waitFor()
  await editor
    .getByText('sheet_size', { exact: false })
    .first()
    .hover({ position: { x: 20, y: 8 } })
  await expect.poll(() => page.locator('.cm-tooltip-hover .record').textContent()).toMatch(/The sheet.*420 × 297 mm/)
})

test('a given becomes a result and back, each one step of undo', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, [
    given('focal', '60', { unit: 'mm', label: 'Lens' }),
    result('away', 'focal * 2', { unit: 'mm', label: 'Away' }),
  ])
  await pressInHead(page, 'Build')
  const cell = async (id: string) => (await cellsOf(page)).find((one) => one.id === id)
  await page.getByRole('button', { name: 'Given: Lens', exact: true }).click()
  await page.getByRole('button', { name: 'Make it a result' }).click()
  await expect.poll(() => cell('focal')).toMatchObject({ kind: 'result', formula: '60 mm', unit: 'mm' })
  await page.getByRole('button', { name: 'Make it a given with this figure' }).click()
  await expect.poll(() => cell('focal')).toMatchObject({ kind: 'given', value: '60 mm' })
  await expect.poll(() => row(page, 'Away').locator('.figure').textContent()).toBe('120')
  await page.keyboard.press('Control+z')
  await expect.poll(() => cell('focal')).toMatchObject({ kind: 'result' })
  await page.keyboard.press('Control+z')
  await expect.poll(() => cell('focal')).toMatchObject({ kind: 'given', value: '60' })
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

test('Escape closes the list of the editor also while it is made anew, and only then the formula is put back', async ({
  open,
}) => {
  const { page } = await open()
  await openSheet(page, [
    given('border', '5 mm', { label: 'Border' }),
    result('twice', 'border * 2', { label: 'Twice' }),
  ])
  await pressInHead(page, 'Build')
  await row(page, 'Twice')
    .getByRole('button', { name: /^Edit the formula/ })
    .click()
  const formula = page.locator('.cm-content')
  await formula.waitFor()
  await page.keyboard.press('Control+a')
  await page.keyboard.type('b')
  const list = page.locator('.cm-tooltip-autocomplete')
  await list.getByText('border').first().waitFor()
  await page.keyboard.press('o')
  await page.keyboard.press('Escape')
  await list.waitFor({ state: 'detached' })
  await expect.poll(() => formula.allInnerTexts()).toEqual(['bo'])
  await page.keyboard.press('Escape')
  await expect.poll(() => formula.allInnerTexts()).toEqual(['border * 2'])
})

test('undo and redo go through typing, moving and removing, and the sheet is as before', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  await page.locator('build-cell').first().waitFor()
  const before = await names(page)
  await page.getByRole('button', { name: 'Given: Focal length', exact: true }).click()
  await page.getByLabel('Label').fill('The lens in hand')
  await page.getByRole('button', { name: 'Move down' }).click()
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

test('what adds a cell stays in its place while the field for cells typed as lines is fetched', async ({ open }) => {
  const { page } = await open()
  let fetch: () => void = () => {}
  const held = new Promise<void>((settle) => {
    fetch = settle
  })
  await page.route('**/line-entry-*.js', async (route) => {
    await held
    await route.continue()
  })
  await page.evaluate(() => {
    location.hash = '#new/flat-sheet/build'
  })
  const press = page.locator('build-face .add.last button').first()
  await press.waitFor()
  await page.locator('build-face[aria-busy]').waitFor({ state: 'detached' })
  const place = (): Promise<number> => press.evaluate((one) => one.getBoundingClientRect().top + scrollY)
  const before = await place()
  fetch()
  await page.locator('line-entry formula-field').waitFor()
  expect(Math.abs((await place()) - before)).toBeLessThanOrEqual(2)
})
