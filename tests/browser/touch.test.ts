import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { Cell } from '../../src/worksheet/index.ts'
import { check, given, result } from '../worksheet/make.ts'
import { test, violations } from './harness.ts'
import { cellsOf, openSheet } from './open-sheet.ts'

const CELLS: Cell[] = [
  { kind: 'note', id: 'frame', role: 'heading', text: 'Frame' },
  given('original', '420 × 297', { entry: 'size', unit: 'mm', label: 'Original' }),
  given('border', '10', { unit: 'mm', label: 'Border', from: { kind: 'example', text: '10' }, hint: 'On each side.' }),
  given('aperture', 'f/8', { unit: 'f/', label: 'Aperture' }),
  given('time', '1/125', { unit: '1/ s', label: 'Time' }),
  given('lens', '60', { unit: 'mm', label: 'Lens', from: { kind: 'example', text: '60' } }),
  result('area', '(original.width + 2 * border) * (original.height + 2 * border)', { unit: 'mm²', label: 'Area' }),
  result('reach', 'original.width + border', { unit: 'mm', label: 'Reach', stand: true }),
  check('small', 'reach <= 440 mm', { label: 'Small enough', message: 'It reaches {reach}, too far.' }),
  { kind: 'note', id: 'light', role: 'heading', text: 'Light' },
  given('lamp', '', { unit: 'mm', label: 'Lamp' }),
]
const PHONE = { width: 390, height: 844, context: { hasTouch: true, isMobile: true } } as const
const cellOf = async (page: Page, id: string): Promise<unknown> =>
  (await cellsOf(page)).find((cell) => cell.id === id && 'value' in cell)

test('on a touch screen a size is two boxes, and f/ and 1/ are before their fields, all with the keys for numbers', async ({
  open,
}) => {
  const { page } = await open(PHONE)
  await openSheet(page, CELLS)
  const width = page.getByLabel('Original, width')
  await expect.poll(() => width.inputValue()).toBe('420')
  await width.fill('500')
  await page.getByLabel('Original, height').fill('300')
  expect(await cellOf(page, 'original')).toMatchObject({ value: '500 × 300' })
  const aperture = page.getByLabel('Aperture', { exact: true })
  expect(await aperture.inputValue()).toBe('8')
  await aperture.fill('11')
  expect(await cellOf(page, 'aperture')).toMatchObject({ value: 'f/11' })
  const time = page.getByLabel('Time', { exact: true })
  await time.fill('60')
  expect(await cellOf(page, 'time')).toMatchObject({ value: '1/60' })
  for (const field of [width, aperture, time]) expect(await field.getAttribute('inputmode')).toBe('decimal')
  // What is not a bare figure is taken as it is typed.
  await time.fill('0.5 s')
  expect(await cellOf(page, 'time')).toMatchObject({ value: '0.5 s' })
})

test('the line above the keyboard has the key figure, the worst check and the signs', async ({ open }) => {
  const { page } = await open(PHONE)
  await openSheet(page, CELLS)
  const border = page.getByLabel('Border', { exact: true })
  await border.tap()
  const line = page.locator('typing-line')
  await line.getByText('430 mm').waitFor()
  await border.fill('30')
  await line.getByText('450 mm', { exact: true }).waitFor()
  await line.getByText('It reaches 450 mm, too far.').waitFor()
  await line.getByRole('button', { name: /^Insert ±/ }).tap()
  await expect.poll(() => border.inputValue()).toBe('30±')
  expect(await border.evaluate((field) => field.matches(':focus'))).toBe(true)
  await border.fill('30')
  await line.getByRole('button', { name: 'All keys' }).tap()
  await expect.poll(() => border.getAttribute('inputmode')).toBe('text')
  expect(await border.evaluate((field) => field.matches(':focus'))).toBe(true)
  await line.getByRole('button', { name: 'Fix' }).tap()
  await page.locator('check-cell:focus').waitFor()
  await line.waitFor({ state: 'hidden' })
})

test('the head of a phone is one row while one types, and the page below does not move', async ({ open }) => {
  const { page } = await open(PHONE)
  await openSheet(page, CELLS)
  const border = page.getByLabel('Border', { exact: true })
  const top = () => border.evaluate((field) => Math.round(field.getBoundingClientRect().top))
  const head = () => page.locator('sheet-head').evaluate((one) => one.getBoundingClientRect().height)
  const [before, high] = [await top(), await head()]
  await border.tap()
  await expect.poll(head).toBeLessThan(high - 40)
  expect(await top()).toBe(before)
})

test('on a phone the first field of a job is within 260 px of the top', async ({ open }) => {
  const { page } = await open({ ...PHONE, path: '#new/flat-sheet' })
  const first = page.getByLabel('Original, width')
  await page.locator('example-bar').getByText('still the example’s').waitFor()
  expect(await first.evaluate((field) => field.getBoundingClientRect().top)).toBeLessThan(260)
})

test('nothing is clipped at 390 and 360 px, and axe finds nothing while one types', async ({ open }) => {
  const { page } = await open(PHONE)
  await openSheet(page, CELLS)
  for (const width of [390, 360]) {
    await page.setViewportSize({ width, height: 740 })
    await page.getByLabel('Original, width').tap()
    await page.locator('typing-line').waitFor()
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
    const over = await page.locator('typing-line').evaluate((line) => {
      const inside = [...(line.shadowRoot?.querySelectorAll('button, .key, .worst') ?? [])]
      return inside.filter((one) => one.getBoundingClientRect().right > innerWidth).map((one) => one.textContent)
    })
    expect(over).toEqual([])
  }
  expect(await violations(page)).toEqual([])
})

test('an example’s figure is taken by Enter or by a button, and the next example follows', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, CELLS)
  await page.getByText('2 figures are still the example’s.').waitFor()
  await page.getByLabel('Border', { exact: true }).focus()
  await page.locator('.hint-line').getByText('On each side.').waitFor()
  await page.getByRole('button', { name: 'Use 10 mm' }).click()
  await page.getByText('1 figure is still the example’s.').waitFor()
  const lens = page.getByLabel('Lens', { exact: true })
  await expect.poll(() => lens.evaluate((field) => field.matches(':focus'))).toBe(true)
  await lens.press('Enter')
  await page.locator('example-bar').getByText('still the example’s').waitFor({ state: 'detached' })
  await page.keyboard.press('Control+z')
  await page.getByText('1 figure is still the example’s.').waitFor()
})

test('a tap below a row whose hint then goes is not lost', async ({ open }) => {
  const { page } = await open(PHONE)
  await openSheet(page, [
    given('border', '10', { unit: 'mm', label: 'Border', hint: 'On each side, as far as the board shows round it.' }),
    given('glossy', '', { entry: 'yes or no', label: 'Glossy' }),
  ])
  const answer = page.locator('given-cell').filter({ hasText: 'Glossy' }).getByText('No', { exact: true })
  const top = () => answer.evaluate((one) => one.getBoundingClientRect().top)
  const before = await top()
  await page.getByLabel('Border', { exact: true }).tap()
  await expect.poll(top).toBeGreaterThan(before)
  await answer.tap()
  expect(await cellOf(page, 'glossy')).toMatchObject({ value: 'no' })
  await expect.poll(top).toBe(before)
})

test('half of a size is no mistake while it is typed', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet', ...PHONE })
  const [width, height] = [page.getByLabel('Original, width'), page.getByLabel('Original, height')]
  await height.fill('')
  const problem = page.locator('given-cell').filter({ hasText: 'A size is width × height' }).locator('#problem')
  await problem.waitFor({ state: 'attached' })
  expect(await problem.isVisible()).toBe(false)
  expect(await height.getAttribute('aria-invalid')).toBe('false')
  await width.tap()
  expect(await problem.isVisible()).toBe(false)
  await page.getByLabel('Sampling required', { exact: true }).tap()
  await problem.waitFor()
})

test('a size with a side of five digits is seen whole', async ({ open }) => {
  const { page } = await open(PHONE)
  await openSheet(page, [
    given('pixels', '11648 × 8736', { entry: 'size', unit: 'px', label: 'Pixels' }),
    result('all', 'pixels.width * pixels.height', { unit: 'px²' }),
  ])
  await page.evaluate(() => document.fonts.ready)
  const hidden = await page.getByLabel('Pixels, width').evaluate((one) => one.scrollWidth - one.clientWidth)
  expect(hidden).toBe(0)
})
