import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { focused } from './focus.ts'
import { test } from './harness.ts'
import { heard, listen } from './heard.ts'
import { cellsOf, openSheet } from './open-sheet.ts'

const CELLS = [
  { kind: 'note', id: 'h', role: 'heading', text: 'Page' },
  { kind: 'given', id: 'a', name: 'width', label: 'Width', value: '420 mm', unit: 'mm' },
  { kind: 'given', id: 'b', name: 'border', label: 'Border', value: '10 mm', unit: 'mm' },
  { kind: 'result', id: 'c', name: 'whole', label: 'Whole width', formula: 'width + 2 * border', unit: 'mm' },
  { kind: 'check', id: 'd', name: 'fits', label: 'Fits', condition: 'whole <= 400 mm', message: 'Too wide.' },
  {
    kind: 'table',
    id: 't',
    name: 'list',
    label: 'List',
    columns: [{ name: 'height', label: 'Height', unit: 'mm' }],
    rows: [['1'], ['2']],
  },
] as const

const onBody = (page: Page): Promise<boolean> => page.evaluate(() => document.activeElement === document.body)

test('the focus is never lost: folding, adding, removing and undoing, each announced once', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, CELLS as never)
  await listen(page)

  // Folding, and unfolding.
  const heading = page.getByRole('button', { name: 'Page', exact: true })
  await heading.focus()
  await page.keyboard.press('Enter')
  await expect.poll(() => heading.getAttribute('aria-expanded')).toBe('false')
  expect(await focused(page)).toBe('Page')
  await page.keyboard.press('Enter')
  await expect.poll(() => heading.getAttribute('aria-expanded')).toBe('true')
  expect(await focused(page)).toBe('Page')

  // Typing, and undoing it in the field.
  await page.getByLabel('Width', { exact: true }).fill('300 mm')
  await expect.poll(() => heard(page)).toEqual(['The check passes.'])
  await page.keyboard.press('Control+z')
  await expect.poll(() => heard(page)).toEqual(['Undone. 1 check fails.'])
  expect(await focused(page)).toMatch(/Width/)

  // Removing a row of a table, and the last one.
  await page.getByLabel('Height, row 2').focus()
  await page.getByRole('button', { name: 'Remove' }).click()
  await expect.poll(() => focused(page)).toMatch(/Height/)
  await page.getByRole('button', { name: 'Remove' }).click()
  await expect.poll(() => focused(page)).toBe('Add a row')

  // Adding a cell in Build, and undoing that with the focus in its field.
  await page.getByRole('link', { name: 'Build' }).click()
  const row = page.getByRole('button', { name: 'Given: Border', exact: true })
  await row.focus()
  await page.keyboard.press('Alt+n')
  await expect.poll(() => focused(page)).toMatch(/Label/)
  const count = (await cellsOf(page)).length
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await cellsOf(page)).length).toBe(count - 1)
  await expect.poll(() => onBody(page)).toBe(false)
  expect(await focused(page)).toMatch(/Whole width/)

  // Removing one, and bringing it back.
  await listen(page)
  await heard(page)
  await row.focus()
  await page.keyboard.press('Alt+r')
  await expect.poll(() => focused(page)).toMatch(/Whole width/)
  await expect.poll(() => heard(page)).toContain('Border: removed.')
  await page.keyboard.press('Control+z')
  await row.waitFor()
  expect(await onBody(page)).toBe(false)
}, 60_000)

/** The elements that have the focus, from the outermost. */
const path = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const names: string[] = []
    for (let at = document.activeElement; at; at = at.shadowRoot?.activeElement ?? null) names.push(at.localName)
    return names
  })

test('a suggestion that is taken leaves the focus at its check, and another face begins at its top', async ({
  open,
}) => {
  const { page } = await open({ background: true })
  await openSheet(page, CELLS as never)
  const suggestion = page.locator('suggestion-list button').first()
  await suggestion.focus()
  await page.keyboard.press('Enter')
  await suggestion.waitFor({ state: 'detached' })
  await expect.poll(() => path(page)).toContain('check-list')

  // The link pressed is not in the head at the stand, and neither is the one that leads back.
  for (const [link, main] of [
    ['At the stand', 'stand-view'],
    ['Fill in', 'fill-face'],
  ] as const) {
    await page.locator('sheet-head').getByRole('link', { name: link, exact: true }).focus()
    await page.keyboard.press('Enter')
    await page.locator(main).waitFor()
    await expect.poll(() => path(page)).toContain('main')
    await page.keyboard.press('Tab')
    expect(await path(page)).toContain(main)
  }
})
