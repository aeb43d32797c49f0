import { readFileSync } from 'node:fs'
import type { Download, Locator, Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { test, violations } from './harness.ts'

/** The given itself; a step may ask for the same. */
const given = (page: Page, label: string): Locator =>
  page.locator('fill-face given-cell[data-cell]').getByLabel(label, { exact: true })
const out = (page: Page): Locator => given(page, 'Lamps from the centre line')
const high = (page: Page): Locator => given(page, 'Lamps above the board')
const spread = (page: Page): Promise<string | null> =>
  page.locator('result-cell').filter({ hasText: 'Spread over the original' }).locator('.figure').textContent()
const handle = (page: Page, lamp: number, view = 'elevation'): Locator =>
  page.locator(`lamp-handles .handle[aria-label^="Lamp ${lamp} in ${view}"]`)

async function middleOf(lamp: Locator): Promise<{ x: number; y: number }> {
  await lamp.scrollIntoViewIfNeeded()
  const box = await lamp.boundingBox()
  if (!box) throw new Error('The lamp is not shown.')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** Takes hold of a lamp and moves it, without letting go. */
async function hold(page: Page, lamp: Locator, across: number, down: number): Promise<void> {
  const { x, y } = await middleOf(lamp)
  // Not its very middle: what is taken hold of stays under the pointer.
  await page.mouse.move(x + 6, y + 4)
  await page.mouse.down()
  await page.mouse.move(x + 6 + across / 2, y + 4 + down / 2, { steps: 4 })
  await page.mouse.move(x + 6 + across, y + 4 + down, { steps: 4 })
}

/** How far the middle of a lamp's handle is from a place, in px. */
async function offFrom(lamp: Locator, { x, y }: { x: number; y: number }): Promise<number> {
  const box = await lamp.boundingBox()
  return box ? Math.hypot(box.x + box.width / 2 - x, box.y + box.height / 2 - y) : Number.POSITIVE_INFINITY
}

const millimetres = async (field: Locator): Promise<number> => Number(await field.inputValue())

describe('a lamp dragged with the mouse', () => {
  test('takes the givens with it, and evenness follows; one undo puts all back', async ({ open }) => {
    const { page } = await open({ path: '#new/flat-sheet' })
    const lamp = handle(page, 2)
    await lamp.waitFor()
    const before = {
      out: await millimetres(out(page)),
      high: await millimetres(high(page)),
      spread: await spread(page),
    }
    await hold(page, lamp, -30, 18)
    await expect.poll(() => millimetres(out(page))).toBeLessThan(before.out - 50)
    await page.mouse.up()
    await expect.poll(() => millimetres(high(page))).toBeLessThan(before.high - 30)
    await expect.poll(() => spread(page)).not.toBe(before.spread)
    expect(await out(page).inputValue()).toMatch(/^\d+$/)
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(() => millimetres(out(page))).toBe(before.out)
    expect(await millimetres(high(page))).toBe(before.high)
    await expect.poll(() => spread(page)).toBe(before.spread)
    expect(await page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false)
  })

  test('stays under the pointer, and stays where it was let go', async ({ open }) => {
    const { page } = await open({ path: '#new/flat-sheet' })
    const lamp = handle(page, 1)
    await lamp.waitFor()
    const { x, y } = await middleOf(lamp)
    await hold(page, lamp, -40, -25)
    await expect.poll(() => offFrom(lamp, { x: x - 40, y: y - 25 })).toBeLessThan(1.5)
    await page.mouse.up()
  })

  test('is put back by Escape, leaving nothing to undo', async ({ open }) => {
    const { page } = await open({ path: '#new/flat-sheet' })
    const lamp = handle(page, 2)
    await lamp.waitFor()
    const before = await millimetres(out(page))
    await hold(page, lamp, 25, 0)
    await expect.poll(() => millimetres(out(page))).not.toBe(before)
    await page.keyboard.press('Escape')
    await expect.poll(() => millimetres(out(page))).toBe(before)
    await page.mouse.move(10, 10)
    await page.mouse.up()
    expect(await millimetres(out(page))).toBe(before)
    expect(await page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false)
  })
})

test('a lamp is dragged with a finger, and stays under it', async ({ open }) => {
  const { page, context } = await open({ path: '#new/flat-sheet', width: 390, context: { hasTouch: true } })
  const lamp = handle(page, 2)
  await lamp.waitFor()
  const before = await millimetres(out(page))
  const { x, y } = await middleOf(lamp)
  const finger = await context.newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: { x: number; y: number }) =>
    finger.send('Input.dispatchTouchEvent', { type, touchPoints: at ? [at] : [] })
  await touch('touchStart', { x, y })
  for (let step = 1; step <= 5; step++) await touch('touchMove', { x: x - 4 * step, y: y + 3 * step })
  await expect.poll(() => millimetres(out(page))).toBeLessThan(before - 50)
  // The page has not scrolled along with the finger, nor the drawing moved off from under it.
  await expect.poll(() => offFrom(lamp, { x: x - 20, y: y + 15 })).toBeLessThan(2)
  await touch('touchEnd')
  expect(await millimetres(out(page))).toBeLessThan(before - 50)
})

describe('a lamp moved by keys', () => {
  test('goes 10 mm at a press, 100 mm with shift, says where it is, and is put back by one undo', async ({ open }) => {
    const { page } = await open({ path: '#new/flat-sheet' })
    const lamp = handle(page, 1)
    await lamp.waitFor()
    const [before, height] = [await millimetres(out(page)), await millimetres(high(page))]
    await lamp.focus()
    await lamp.press('ArrowLeft')
    await expect.poll(() => millimetres(out(page))).toBe(before + 10)
    await lamp.press('Shift+ArrowRight')
    await expect.poll(() => millimetres(out(page))).toBe(before - 90)
    await lamp.press('ArrowUp')
    await expect.poll(() => millimetres(high(page))).toBe(height + 10)
    await expect.poll(() => lamp.getAttribute('aria-label')).toContain(`${before - 90} mm left of the centre line`)
    await page
      .locator('lamp-handles [role=status]')
      .filter({ hasText: `Lamp 1: ${before - 90} mm left` })
      .waitFor()
    expect(await lamp.evaluate((one) => one.matches(':focus'))).toBe(true)
    await page.keyboard.press('Control+z')
    await expect.poll(() => millimetres(out(page))).toBe(before)
    expect(await millimetres(high(page))).toBe(height)
  })

  test('is reported when nothing moves it that way', async ({ open }) => {
    const { page } = await open({ path: '#new/flat-sheet' })
    const lamp = handle(page, 1, 'plan')
    await lamp.waitFor()
    await lamp.press('ArrowUp')
    await page.locator('lamp-handles [role=status]').filter({ hasText: 'Lamp 1 cannot be moved that way.' }).waitFor()
  })
})

test('of two lamps placed apart each moves its own givens', async ({ open }) => {
  const { page } = await open({ path: '#new/two-lamps' })
  const lamp = handle(page, 1)
  await lamp.waitFor()
  const values = (): Promise<string[]> =>
    page
      .locator('given-cell[data-cell] input')
      .evaluateAll((fields) => fields.map((one) => (one as HTMLInputElement).value))
  const before = await values()
  await lamp.press('ArrowLeft')
  await expect.poll(async () => (await values()).filter((one, at) => one !== before[at]).length).toBe(1)
})

test('axe finds nothing serious in a drawing with lamps to take hold of, and each is 44 px', async ({ open }) => {
  const { page } = await open({ path: '#new/two-lamps', width: 390 })
  await handle(page, 1).waitFor()
  expect(await violations(page)).toEqual([])
  const { width, height } = (await handle(page, 1).boundingBox()) as { width: number; height: number }
  expect([width, height]).toEqual([44, 44])
})

async function saved(page: Page, what: string): Promise<Download> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.locator('drawing-cell').first().getByRole('button', { name: what }).click(),
  ])
  return download
}

describe('a drawing is saved', () => {
  test('as SVG: a well-formed file, black, of its true size, named for the sheet and the drawing', async ({ open }) => {
    const { page } = await open({ path: '#new/square-and-level', dim: true })
    await page.locator('drawing-cell svg').first().waitFor()
    const download = await saved(page, 'Save as SVG')
    expect(download.suggestedFilename()).toMatch(/^Square-and-level-The-frame.*\.svg$/)
    const text = readFileSync(await download.path(), 'utf8')
    // The app's own policy takes no text as markup; a page without one parses it.
    const blank = await page.context().newPage()
    const read = await blank.evaluate((text) => {
      const parsed = new DOMParser().parseFromString(text, 'image/svg+xml')
      return {
        root: parsed.documentElement.localName,
        problem: parsed.querySelector('parsererror')?.textContent,
        width: parsed.documentElement.getAttribute('width'),
        texts: [...parsed.querySelectorAll('text')].map((one) => one.textContent),
      }
    }, text)
    expect(read.root).toBe('svg')
    expect(read.problem).toBeUndefined()
    expect(read.width).toMatch(/^\d+\.\d\dmm$/)
    expect(read.texts.some((one) => one?.startsWith('edges differ by'))).toBe(true)
  })

  test('as PNG: white ground, black ink, twice as sharp as shown', async ({ open }) => {
    const { page } = await open({ path: '#new/exposure-ledger', dim: true })
    const shown = page.locator('drawing-cell svg').first()
    await shown.waitFor()
    const download = await saved(page, 'Save as PNG')
    expect(download.suggestedFilename()).toMatch(/^The-exposure-ledger-From-the-reading.*\.png$/)
    const bytes = readFileSync(await download.path())
    expect([...bytes.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10])
    const box = (await shown.boundingBox()) as { width: number }
    expect(Math.abs(bytes.readUInt32BE(16) - 2 * box.width)).toBeLessThanOrEqual(4)
    const { corner, darkest } = await page.evaluate(async (base64) => {
      const image = new Image()
      image.src = `data:image/png;base64,${base64}`
      await image.decode()
      const canvas = document.createElement('canvas')
      canvas.width = image.width
      canvas.height = image.height
      const paper = canvas.getContext('2d') as CanvasRenderingContext2D
      paper.drawImage(image, 0, 0)
      const { data } = paper.getImageData(0, 0, image.width, image.height)
      let darkest = 255
      for (let at = 0; at < data.length; at += 4) darkest = Math.min(darkest, data[at] as number)
      return { corner: [...data.subarray(0, 4)], darkest }
    }, bytes.toString('base64'))
    expect(corner).toEqual([255, 255, 255, 255])
    expect(darkest).toBeLessThan(20)
  })
})
