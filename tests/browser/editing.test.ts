import type { CDPSession, Locator, Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import type { Cell } from '../../src/worksheet/index.ts'
import { check, given, note, result } from '../worksheet/make.ts'
import { focused } from './focus.ts'
import { CLIPBOARD, test, violations } from './harness.ts'
import { pressInHead } from './head.ts'
import { cellsOf, openSheet } from './open-sheet.ts'

const heading = (text: string): Cell => ({ kind: 'note', id: text, role: 'heading', text })
const CELLS: Cell[] = [
  given('width', '600', { unit: 'mm', label: 'Width' }),
  given('border', '20', { unit: 'mm', label: 'Border' }),
  result('whole', 'width + 2 * border', { unit: 'mm', label: 'Whole width' }),
  check('fits', 'whole <= 700 mm', { label: 'Fits the board', message: 'It is {whole} wide.', passes: 'It fits.' }),
  note('n', 'Nothing is touched between sheets.'),
]
const MANY: Cell[] = Array.from({ length: 60 }, (_, i) => given(`g${i}`, `${i}`, { label: `Given ${i}` }))

const names = async (page: Page): Promise<string[]> => (await cellsOf(page)).map(({ id }) => id)
const nameOf = (cell: Cell): string => ('name' in cell && typeof cell.name === 'string' ? cell.name : cell.kind)
const grip = (page: Page, label: string): Locator => page.getByRole('button', { name: `Select ${label}`, exact: true })
const row = (page: Page, label: string): Locator =>
  page.getByRole('button', { name: new RegExp(`^(Given|Result|Check|Note): ${label}$`) })
const undo = (page: Page): Locator => page.getByRole('button', { name: 'Undo' })

async function build(page: Page, cells: readonly Cell[] = CELLS, title?: string): Promise<void> {
  await openSheet(page, cells, title)
  await pressInHead(page, 'Build')
  await page.locator('build-cell .grip').first().waitFor()
}

const middle = async (one: Locator): Promise<{ x: number; y: number }> => {
  const box = await one.boundingBox()
  if (!box) throw new Error('It is not shown.')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** A finger, as the browser hears of one. */
class Finger {
  private constructor(private readonly session: CDPSession) {}

  static async on(page: Page): Promise<Finger> {
    return new Finger(await page.context().newCDPSession(page))
  }

  private touch(type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]): Promise<unknown> {
    return this.session.send('Input.dispatchTouchEvent', { type, touchPoints: points })
  }

  async drag(from: { x: number; y: number }, by: number): Promise<void> {
    await this.touch('touchStart', [from])
    for (let step = 1; step <= 8; step++) await this.touch('touchMove', [{ x: from.x, y: from.y + (by * step) / 8 }])
  }

  async lift(): Promise<void> {
    await this.touch('touchEnd', [])
  }
}

describe('a cell dragged to its place', () => {
  test('by the mouse: a line shows where it would go, and one undo puts it back', async ({ open }) => {
    const { page } = await open()
    await build(page)
    const from = await middle(grip(page, 'Width'))
    const to = await middle(grip(page, 'Fits the board'))
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    await page.mouse.move(from.x, (from.y + to.y) / 2, { steps: 4 })
    await page.mouse.move(from.x, to.y - 4, { steps: 4 })
    await page.locator('.drop').waitFor({ state: 'visible' })
    await page.mouse.up()
    await expect.poll(() => names(page)).toEqual(['border', 'whole', 'width', 'fits', 'n'])
    await page.locator('.drop').waitFor({ state: 'hidden' })
    expect(await grip(page, 'Width').getAttribute('aria-pressed')).toBe('false')
    await page.getByText('Width: moved to 3 of 5, below Whole width.').waitFor({ state: 'attached' })
    await undo(page).click()
    await expect.poll(() => names(page)).toEqual(CELLS.map(({ id }) => id))
    expect(await undo(page).getAttribute('aria-disabled')).toBe('true')
  })

  test('is put back by Escape, and a press alone selects it', async ({ open }) => {
    const { page } = await open()
    await build(page)
    const from = await middle(grip(page, 'Width'))
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    await page.mouse.move(from.x, from.y + 150, { steps: 6 })
    await page.locator('.drop').waitFor({ state: 'visible' })
    await page.keyboard.press('Escape')
    await page.locator('.drop').waitFor({ state: 'hidden' })
    await page.mouse.up()
    expect(await names(page)).toEqual(CELLS.map(({ id }) => id))
    expect(await undo(page).getAttribute('aria-disabled')).toBe('true')
    await grip(page, 'Width').click()
    await page.getByText('1 cell selected').waitFor()
  })

  test('by a finger, on a telephone, by a target of 44 px', async ({ open }) => {
    const { page } = await open({ width: 390, height: 844, context: { hasTouch: true, isMobile: true } })
    await build(page)
    const one = grip(page, 'Border')
    await one.scrollIntoViewIfNeeded()
    const box = await one.boundingBox()
    expect(box?.width).toBeGreaterThanOrEqual(44)
    expect(box?.height).toBeGreaterThanOrEqual(44)
    const from = await middle(one)
    const { y } = await middle(grip(page, 'Fits the board'))
    const finger = await Finger.on(page)
    await finger.drag(from, y + 30 - from.y)
    await page.locator('.drop').waitFor({ state: 'visible' })
    await finger.lift()
    await expect.poll(() => names(page)).toEqual(['width', 'whole', 'fits', 'border', 'n'])
  })

  test('takes the page along at its edge', async ({ open }) => {
    const { page } = await open({ height: 700 })
    await build(page, MANY)
    const from = await middle(grip(page, 'Given 0'))
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    await page.mouse.move(from.x, 600, { steps: 4 })
    await page.mouse.move(from.x, 695, { steps: 4 })
    const scrolled = () => page.evaluate(() => scrollY)
    await expect.poll(scrolled).toBeGreaterThan(900)
    await page.mouse.move(from.x, 400, { steps: 4 })
    await page.mouse.up()
    await expect.poll(async () => (await names(page)).indexOf('g0')).toBeGreaterThan(10)
    expect((await names(page)).filter((name) => name !== 'g0')).toEqual(MANY.slice(1).map(({ id }) => id))
  })

  test('takes all that are selected with it', async ({ open }) => {
    const { page } = await open()
    await build(page)
    await grip(page, 'Width').click()
    await grip(page, 'Whole width').click()
    const from = await middle(grip(page, 'Width'))
    const to = await middle(grip(page, 'Nothing is touched between sheets.'))
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    await page.mouse.move(from.x, to.y + 25, { steps: 8 })
    await page.mouse.up()
    await expect.poll(() => names(page)).toEqual(['border', 'fits', 'n', 'width', 'whole'])
  })
})

test('by key, cells selected are moved together and removed together', async ({ open }) => {
  const { page } = await open()
  await build(page)
  await row(page, 'Border').focus()
  await page.keyboard.press('Shift+ArrowDown')
  await page.getByText('2 cells selected').waitFor()
  await page.keyboard.press('Alt+ArrowDown')
  await expect.poll(() => names(page)).toEqual(['width', 'fits', 'border', 'whole', 'n'])
  expect(await focused(page)).toMatch(/Whole width/)
  await page.keyboard.press('Alt+r')
  await expect.poll(() => names(page)).toEqual(['width', 'fits', 'n'])
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  await expect.poll(() => names(page)).toEqual(CELLS.map(({ id }) => id))
  await row(page, 'Border').focus()
  await page.keyboard.press('Control+a')
  await page.getByText('5 cells selected').waitFor()
  await page.keyboard.press('Alt+c')
  await page.getByText('5 cells selected').waitFor({ state: 'hidden' })
})

describe('cells copied as text', () => {
  test('go from one sheet to another by keyboard, under names that are free there', async ({ open }) => {
    const { page } = await open({ permissions: CLIPBOARD })
    await build(page, CELLS, 'The first')
    await row(page, 'Width').focus()
    for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowDown')
    await page.keyboard.press('Control+c')
    await page.getByText('4 cells copied.').waitFor()
    expect(JSON.parse(await page.evaluate(() => navigator.clipboard.readText()))).toMatchObject({
      format: 'evenfield-cells',
      cells: [{ name: 'width' }, { name: 'border' }, { name: 'whole' }, { name: 'fits' }],
    })
    expect(await names(page)).toEqual(CELLS.map(({ id }) => id))

    await page.getByRole('link', { name: 'Evenfield' }).click()
    await build(
      page,
      [given('width', '300', { unit: 'mm' }), result('half', 'width / 2', { unit: 'mm' })],
      'The second',
    )
    await row(page, 'width').focus()
    await page.keyboard.press('Control+v')
    await page.getByText('4 cells added. Names already in use were changed: “width” to “width_2”.').waitFor()
    const cells = await cellsOf(page)
    expect(cells.map(nameOf)).toEqual(['width', 'width_2', 'border', 'whole', 'fits', 'half'])
    expect(cells[3]).toMatchObject({ formula: 'width_2 + 2 * border' })
    await expect.poll(() => focused(page)).toMatch(/Width/)
    expect(await page.locator('build-cell').filter({ hasText: 'Whole width' }).locator('.figure').textContent()).toBe(
      '640',
    )
    await page.keyboard.press('Control+z')
    await expect.poll(async () => (await cellsOf(page)).map(nameOf)).toEqual(['width', 'half'])
    expect(await undo(page).getAttribute('aria-disabled')).toBe('true')
    await page.keyboard.press('Control+y')
    await expect.poll(async () => (await cellsOf(page)).length).toBe(6)
  })

  test('are cut and put in again by press', async ({ open }) => {
    const { page } = await open({ width: 390, height: 844, context: { hasTouch: true }, permissions: CLIPBOARD })
    await build(page)
    await grip(page, 'Width').tap()
    await grip(page, 'Border').tap()
    await page.getByRole('button', { name: 'Cut' }).tap()
    await page.getByText('2 cells cut.').waitFor()
    await expect.poll(async () => (await cellsOf(page)).map(nameOf)).toEqual(['whole', 'fits', 'note'])
    await grip(page, 'Fits the board').tap()
    await page.getByRole('button', { name: 'Paste below' }).tap()
    await expect
      .poll(async () => (await cellsOf(page)).map(nameOf))
      .toEqual(['whole', 'fits', 'width', 'border', 'note'])
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  })

  test('go through a field where the browser denies pages the clipboard', async ({ open }) => {
    const { page, context } = await open()
    await context.addInitScript(() => {
      Reflect.deleteProperty(Navigator.prototype, 'clipboard')
    })
    await page.reload()
    await build(page)
    await grip(page, 'Width').click()
    await page.getByRole('button', { name: 'Cut' }).click()
    const hand = page.locator('.by-hand textarea')
    const text = await hand.inputValue()
    expect(JSON.parse(text)).toMatchObject({ cells: [{ name: 'width' }] })
    // What cannot be put on the clipboard is not taken out.
    expect(await names(page)).toEqual(CELLS.map(({ id }) => id))
    await page.getByRole('button', { name: 'Done' }).click()
    await page.getByRole('button', { name: 'Paste cells' }).first().click()
    await hand.fill(text)
    await expect.poll(async () => (await cellsOf(page)).map(nameOf)).toContain('width_2')
  })

  test('may be lines as written on paper; rubbish is refused in words with nothing changed', async ({ open }) => {
    const { page } = await open({ permissions: CLIPBOARD })
    await build(page)
    const paste = async (text: string): Promise<void> => {
      await page.evaluate((words) => navigator.clipboard.writeText(words), text)
      await row(page, 'Width').focus()
      await page.keyboard.press('Control+v')
    }
    const said = page.locator('.clip [role=status]')
    for (const [text, words] of [
      ['<script>globalThis.ran = true</script>', 'This text contains no cells'],
      [
        '{"format":"evenfield-cells","version":1,"cells":[{"kind":"given","name":"a","value":7}]}',
        'At “cells[0].value”',
      ],
      ['{"format":"evenfield-cells","version":9,"cells":[]}', 'newer version'],
      [`${'['.repeat(90)}${']'.repeat(90)}`, 'nested too deep'],
    ] as const) {
      await paste(text)
      await expect.poll(() => said.textContent()).toContain(words)
      expect(await names(page)).toEqual(CELLS.map(({ id }) => id))
    }
    expect(await undo(page).getAttribute('aria-disabled')).toBe('true')
    // A line that cannot be read is named and left out; the others are added.
    await paste('spare = 1\nwords')
    await expect.poll(() => said.textContent()).toContain('Line 2')
    expect((await cellsOf(page)).map(nameOf)).toEqual(['width', 'spare', 'border', 'whole', 'fits', 'note'])
    await undo(page).click()
    await expect.poll(() => names(page)).toEqual(CELLS.map(({ id }) => id))
    await paste('depth [mm] = 40\nvolume = width * border * depth')
    await expect.poll(() => said.textContent()).toContain('2 cells added.')
    expect((await cellsOf(page)).map(nameOf)).toEqual(['width', 'depth', 'volume', 'border', 'whole', 'fits', 'note'])
    expect(await page.evaluate(() => 'ran' in globalThis)).toBe(false)
  })

  test('leave fields to themselves: what is pasted into a label goes there', async ({ open }) => {
    const { page } = await open({ permissions: CLIPBOARD })
    await build(page)
    await page.evaluate(() => navigator.clipboard.writeText('a = 1'))
    await row(page, 'Width').click()
    await page.getByLabel('Label').fill('')
    await page.keyboard.press('Control+v')
    await expect.poll(() => page.getByLabel('Label').inputValue()).toBe('a = 1')
    expect((await cellsOf(page)).length).toBe(CELLS.length)
  })
})

describe('finding', () => {
  const FOLDED: Cell[] = [
    heading('Frame'),
    ...CELLS,
    heading('Light'),
    given('lamp_out', '900', { unit: 'mm', label: 'Lamps out', hint: 'from the centre line' }),
    { ...given('gap', '0', { unit: 'mm', label: 'Principal gap' }), more_exact: true },
  ]
  const found = (page: Page): Promise<string | null> => page.locator('find-line [role=status]').textContent()
  const marked = (page: Page, face: string): Promise<string[]> =>
    page.locator(`${face} [data-found]`).evaluateAll((all) => all.map((one) => (one as HTMLElement).dataset.cell ?? ''))

  test('goes by keyboard from place to place, in labels, formulas, figures and notes, and opens what is folded', async ({
    open,
  }) => {
    const { page } = await open()
    await openSheet(page, FOLDED)
    await page.getByRole('button', { name: 'Light', exact: true }).last().click()
    await page.getByLabel('Lamps out').waitFor({ state: 'hidden' })
    await page.keyboard.press('Control+f')
    await expect.poll(() => focused(page)).toMatch(/^Find/)
    await page.keyboard.type('width')
    await expect.poll(() => found(page)).toBe('1 of 2: Width (label)')
    await expect.poll(() => marked(page, 'fill-face')).toEqual(['width'])
    await page.keyboard.press('Enter')
    await expect.poll(() => found(page)).toBe('2 of 2: Whole width (label)')
    await page.keyboard.press('Enter')
    await expect.poll(() => found(page)).toMatch(/^1 of 2/)
    await page.keyboard.press('Shift+Enter')
    await expect.poll(() => found(page)).toMatch(/^2 of 2/)
    await page.keyboard.press('Control+a')
    await page.keyboard.type('640')
    await expect.poll(() => found(page)).toBe('1 of 1: Whole width (figure)')
    await page.keyboard.press('Control+a')
    await page.keyboard.type('between SHEETS')
    await expect.poll(() => found(page)).toMatch(/\(text\)$/)
    await expect.poll(() => marked(page, 'fill-face')).toEqual(['n'])
    await page.keyboard.press('Control+a')
    await page.keyboard.type('centre line')
    await expect.poll(() => found(page)).toBe('1 of 1: Lamps out (hint)')
    await page.getByLabel('Lamps out').waitFor()
    await page.keyboard.press('Control+a')
    await page.keyboard.type('principal')
    await page.getByLabel('Principal gap').waitFor()
    await page.keyboard.press('Escape')
    await page.locator('find-line').waitFor({ state: 'detached' })
    await expect.poll(() => focused(page)).toMatch(/^Principal gap/)
    await expect.poll(() => marked(page, 'fill-face')).toEqual([])
  })

  test('is asked for by press in Build too; what is not there is reported', async ({ open }) => {
    const { page } = await open({ width: 390, height: 844, context: { hasTouch: true } })
    await build(page, FOLDED)
    await pressInHead(page, 'Find')
    const field = page.getByLabel('Find', { exact: true })
    await field.fill('2 * border')
    await expect.poll(() => found(page)).toBe('1 of 1: Whole width (formula)')
    await expect.poll(() => marked(page, 'build-face')).toEqual(['whole'])
    await field.fill('no such thing')
    await expect.poll(() => found(page)).toBe('Nothing found in this sheet.')
    await expect.poll(() => marked(page, 'build-face')).toEqual([])
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    expect(await violations(page)).toEqual([])
    await page.getByRole('button', { name: 'Close', exact: true }).tap()
    await expect.poll(() => focused(page)).toBe('Find')
  })
})

test('? opens the list of keys outside a field, and closes it again', async ({ open }) => {
  const { page } = await open()
  await build(page)
  await row(page, 'Border').focus()
  await page.keyboard.press('?')
  await page.getByText('selects cells from here on').waitFor()
  await expect.poll(() => focused(page)).toBe('Keys and signs')
  await page.keyboard.press('?')
  await page.getByText('selects cells from here on').waitFor({ state: 'hidden' })
  await expect.poll(() => focused(page)).toMatch(/Border/)
  await row(page, 'Border').click()
  await page.getByLabel('Label').fill('')
  await page.keyboard.type('Sure?')
  expect(await page.getByLabel('Label').inputValue()).toBe('Sure?')
})

test('a formula in error loses nothing of what was typed: not by leaving it, another face, undo or a fresh start', async ({
  open,
}) => {
  const { page } = await open()
  await build(page)
  const written = page.getByRole('button', { name: /^Edit the formula/ }).first()
  const TYPED = 'width + + (border mm'
  await written.click()
  await page.locator('.cm-content').waitFor()
  await page.keyboard.press('Control+a')
  await page.keyboard.type(TYPED)
  await page.locator('formula-field .problem').first().waitFor()
  await page.keyboard.press('Enter')
  await expect.poll(() => focused(page)).toMatch(/Whole width/)
  await page.keyboard.press('Alt+o')
  await expect.poll(() => written.textContent()).toContain(TYPED)
  for (const face of ['Fill in', 'At the stand', 'Functions', 'Build']) await pressInHead(page, face)
  await expect.poll(() => written.textContent()).toContain(TYPED)
  await page.getByText(/^Saved /).waitFor()
  await page.reload()
  await expect.poll(() => written.textContent()).toContain(TYPED)
  await row(page, 'Whole width').focus()
  await page.keyboard.press('Alt+ArrowUp')
  await page.keyboard.press('Control+z')
  await expect.poll(() => written.textContent()).toContain(TYPED)
})

test('axe finds nothing serious in Build with cells selected and keys listed, light and dim', async ({ open }) => {
  for (const dim of [false, true]) {
    const { page } = await open({ dim })
    await build(page)
    await grip(page, 'Width').click()
    await page.getByText('Keys and signs').click()
    expect(await violations(page)).toEqual([])
  }
})
