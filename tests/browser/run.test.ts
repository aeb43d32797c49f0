import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { FORMAT } from '../../src/worksheet/index.ts'
import { mapCells, mapRows } from '../worksheet/maps.ts'
import { test, violations } from './harness.ts'
import { pressInHead } from './head.ts'

/** 340 invented maps, opened from a file as a person would. */
async function openMaps(page: Page, rows = mapRows(340)): Promise<Locator> {
  const sheet = { format: FORMAT, version: 2, title: 'Maps', cells: mapCells(rows) }
  await page.locator('#file').setInputFiles({
    name: 'maps.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(sheet)),
  })
  const run = page.locator('run-cell')
  await run.scrollIntoViewIfNeeded()
  await planned(run)
  return run
}

const planned = (run: Locator): Promise<void> => run.locator('section[aria-busy="false"]').waitFor()

/** A figure of the foot: `Total`, `Originals`. */
const figure = (run: Locator, group: string, label: string): Locator =>
  run
    .locator('.group')
    .filter({ has: run.page().getByRole('heading', { name: group, exact: true }) })
    .locator('div')
    .filter({ has: run.page().getByText(label, { exact: true }) })
    .locator('dd')

const typed = (page: Page): Promise<unknown> =>
  page.evaluate(() => {
    let at: Element | null = document.activeElement
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
    return at instanceof HTMLInputElement ? at.dataset.row : undefined
  })

test('340 maps are planned, some ticked, and what is left is planned again', async ({ open }) => {
  const { page } = await open()
  const run = await openMaps(page)
  await expect.poll(() => figure(run, 'Total', 'Originals').textContent()).toBe('340')
  const setups = run.locator('.setup')
  const before = await setups.count()
  await expect.poll(() => figure(run, 'Total', 'Set-ups').textContent()).toBe(`${before}`)
  await run.getByText(/^Too large for one frame: \d+ originals$/).waitFor()

  await setups.first().locator('summary').click()
  const boxes = setups.first().getByRole('checkbox')
  const names = await boxes.evaluateAll((all) => all.slice(0, 6).map((box) => box.closest('label')?.textContent ?? ''))
  for (let at = 0; at < 6; at++) await boxes.nth(at).check()
  await expect.poll(() => figure(run, 'So far', 'Done').textContent()).toBe('6 of 340')

  // Each tick is one step of undo.
  await page.keyboard.press('Control+z')
  await expect.poll(() => figure(run, 'So far', 'Done').textContent()).toBe('5 of 340')
  await expect.poll(() => boxes.nth(5).isChecked()).toBe(false)
  await page.keyboard.press('Control+y')
  await expect.poll(() => figure(run, 'So far', 'Done').textContent()).toBe('6 of 340')

  const left = run.getByRole('button', { name: 'Plan what is left' })
  await left.click()
  await expect.poll(() => figure(run, 'Total of what is left', 'Originals').textContent()).toBe('334')
  const listed = await setups.first().locator('label').allTextContents()
  for (const name of names) expect(listed).not.toContain(name)

  // By keyboard: the ticked one leaves the list, the next one has the focus.
  await boxes.nth(2).focus()
  const [, , , next] = await boxes.evaluateAll((all) => all.map((box) => (box as HTMLElement).dataset.row))
  await page.keyboard.press('Space')
  await expect.poll(() => figure(run, 'Total of what is left', 'Originals').textContent()).toBe('333')
  await expect.poll(() => typed(page)).toBe(next)

  await left.click()
  await expect.poll(() => figure(run, 'Total', 'Originals').textContent()).toBe('340')
  await expect.poll(() => figure(run, 'So far', 'Done').textContent()).toBe('7 of 340')
})

test('the plan follows what is typed, and says what it waits for', async ({ open }) => {
  const { page } = await open()
  const run = await openMaps(page)
  const frames = await figure(run, 'Total', 'Frames').textContent()
  const sampling = page.getByLabel('Required sampling', { exact: true })
  await sampling.fill('600')
  await expect.poll(() => figure(run, 'Total', 'Frames').textContent()).not.toBe(frames)
  await sampling.fill('')
  await run.getByText('Nothing is planned yet. These are required').waitFor()
  await run.getByText('needs Required sampling').waitFor()
  await sampling.fill('300')
  await expect.poll(() => figure(run, 'Total', 'Frames').textContent()).toBe(frames)
})

test('rows that cannot be planned are named with why, and the rest is planned', async ({ open }) => {
  const { page } = await open()
  const rows = mapRows(20).with(4, ['Odd', 'wide', '200', 'matt', '', '', ''])
  const run = await openMaps(page, rows)
  await run.getByText('Cannot be planned: 1 original').waitFor()
  await run.getByText('“wide” is not a number').waitFor()
  await expect.poll(() => figure(run, 'Total', 'Originals').textContent()).toBe('19')
})

test('what feeds the plan is written on the Build face', async ({ open }) => {
  const { page } = await open()
  const run = await openMaps(page)
  const disk = async (): Promise<number> => Number.parseFloat((await figure(run, 'Total', 'Data').textContent()) ?? '')
  const before = await disk()
  await pressInHead(page, 'Build')
  await page.locator('build-cell .call', { hasText: 'The run' }).click()
  const copies = page.locator('formula-field').filter({ hasText: 'Copies of each frame' })
  await copies.locator('textarea, [contenteditable="true"]').first().click()
  await page.keyboard.press('Control+a')
  await page.keyboard.type('1')
  await pressInHead(page, 'Fill in')
  await planned(run)
  // Shown to three figures.
  await expect.poll(async () => (await disk()) / before).toBeCloseTo(0.5, 2)
})

test.for([
  { width: 1440, dim: false },
  { width: 390, dim: true },
])('the plan at $width px is accessible', async ({ width, dim }, { open }) => {
  const { page } = await open({ width, dim })
  const run = await openMaps(page)
  await run.locator('summary').first().click()
  expect(await violations(page)).toEqual([])
  const wide = await run.evaluate((cell) => cell.scrollWidth > cell.clientWidth)
  expect(wide).toBe(false)
})

test('in a wide window the figures of the set-ups are below each other', async ({ open }) => {
  const { page } = await open({ path: '#new/collection-run' })
  const run = page.locator('run-cell')
  await run.scrollIntoViewIfNeeded()
  await planned(run)
  await page.evaluate(() => document.fonts.ready)
  for (const which of ['first', 'last']) {
    const ends = await run.locator(`.set dl > div:${which}-child dd`).evaluateAll((all) =>
      all.map((one) => {
        const figure = document.createRange()
        figure.selectNodeContents(one)
        return Math.round(figure.getBoundingClientRect().right)
      }),
    )
    expect(ends.length).toBeGreaterThan(2)
    expect(new Set(ends).size).toBe(1)
  }
})
