import { readFile } from 'node:fs/promises'
import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import type { Given, TableCell, Worksheet } from '../../src/worksheet/index.ts'
import { test } from './harness.ts'
import { pressInHead } from './head.ts'

interface OpenNow {
  readonly worksheet: Worksheet
  readonly undo: number
  readonly redo: number
}

/** The document of the open sheet and how many steps lead back and forth. */
const openNow = (page: Page): Promise<OpenNow> =>
  page.evaluate(() => {
    const element = document.querySelector('evenfield-app')?.shadowRoot?.querySelector('sheet-page')
    const { session } = element as unknown as {
      session: { open: { sheet: { worksheet: Worksheet; steps: { undo: unknown[]; redo: unknown[] } } } }
    }
    const { worksheet, steps } = session.open.sheet
    return { worksheet, undo: steps.undo.length, redo: steps.redo.length }
  })

const given = (page: Page, label: string): Locator => page.getByLabel(label, { exact: true })
const saved = (page: Page): Promise<void> =>
  page
    .locator('sheet-head')
    .filter({ hasText: /Saved \d\d:\d\d/ })
    .waitFor()

/** Does something that changes the sheet: it is one step, which one undo takes back and one redo does again. */
async function isOneStep(page: Page, act: () => Promise<void>): Promise<void> {
  const before = await openNow(page)
  await act()
  await expect.poll(async () => (await openNow(page)).undo).toBe(before.undo + 1)
  const after = await openNow(page)
  expect(after.worksheet).not.toEqual(before.worksheet)
  await page.keyboard.press('Control+z')
  await expect.poll(() => openNow(page)).toEqual({ ...before, redo: 1 })
  await page.keyboard.press('Control+Shift+z')
  await expect.poll(() => openNow(page)).toEqual(after)
}

const LIST: TableCell = {
  kind: 'table',
  id: 't',
  name: 'originals',
  columns: [
    { name: 'mark', label: 'Mark', entry: 'text' },
    { name: 'width', label: 'Width', unit: 'mm' },
  ],
  rows: [['A 1', '10']],
}
const width: Given = { kind: 'given', id: 'w', name: 'border', label: 'Border', unit: 'mm', value: '10' }

const asFile = (worksheet: object, name = 'sheet.evenfield.json') => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify(worksheet)),
})

test('the import of a table is one step of undo', async ({ open }) => {
  const { page } = await open()
  const sheet = { format: 'evenfield-worksheet', version: 2, title: 'List', cells: [width, LIST] }
  await page.locator('#file').setInputFiles(asFile(sheet))
  await page.locator('table-cell').waitFor()
  await isOneStep(page, async () => {
    await page.getByRole('button', { name: 'Paste or open a table' }).click()
    const panel = page.locator('table-import')
    const csv = 'Mark;Width;Colour\r\nB 1;20;red\r\nB 2;30;blue\r\n'
    await panel
      .locator('input[type=file]')
      .setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) })
    await panel.getByRole('button', { name: 'Import 2 rows' }).click()
  })
})

test('confirming all example figures is one step of undo', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.getByRole('button', { name: 'Use all example figures' }).waitFor()
  await isOneStep(page, async () => {
    await page.getByRole('button', { name: 'Use all example figures' }).click()
    await page.getByRole('button', { name: 'Use them' }).click()
  })
})

test('applying a suggestion is one step of undo', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await given(page, 'The column reaches').fill('900')
  const check = page.locator('check-cell').filter({ hasText: 'the column stops' })
  await check.getByRole('button', { name: /^The column reaches/ }).waitFor()
  await isOneStep(page, () => check.getByRole('button', { name: /^The column reaches/ }).click())
})

test('taking over what a copy measured is one step of undo', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  // The picker is the system's own and cannot be driven; without it the file is a download.
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  await given(page, 'Job').fill('sent to the stand')
  await saved(page)
  await pressInHead(page, 'Share')
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save as a file' }).click()
  const copy = JSON.parse(await readFile(await (await downloading).path(), 'utf8')) as Worksheet
  const filled = copy.cells.map((cell) => {
    if (cell.kind === 'given' && cell.label === 'Lens') return { ...cell, value: '80' }
    return cell.kind === 'result' && cell.label === 'Original to sensor' ? { ...cell, measured: '921' } : cell
  })
  const before = await openNow(page)
  await page.locator('#file').setInputFiles(asFile({ ...copy, cells: filled }))
  await page.getByRole('button', { name: 'Take over 2' }).click()
  await expect.poll(() => given(page, 'Lens').inputValue()).toBe('80')
  const after = await openNow(page)
  expect(after.undo).toBe(before.undo + 1)
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await openNow(page)).worksheet).toEqual(before.worksheet)
  await page.keyboard.press('Control+Shift+z')
  await expect.poll(() => openNow(page)).toEqual(after)
})

test('undo and redo are there when a sheet is left and opened again', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await given(page, 'Job').fill('one')
  await given(page, 'Lens').fill('80')
  await given(page, 'Job').fill('two')
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  await expect.poll(() => given(page, 'Job').inputValue()).toBe('one')
  await saved(page)
  const before = await openNow(page)
  expect([before.undo, before.redo]).toEqual([1, 2])
  await page.reload()
  await expect.poll(() => openNow(page)).toEqual(before)
  await page.keyboard.press('Control+Shift+z')
  await page.keyboard.press('Control+Shift+z')
  await expect.poll(() => given(page, 'Job').inputValue()).toBe('two')
  await expect.poll(() => given(page, 'Lens').inputValue()).toBe('80')
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  await expect.poll(() => given(page, 'Job').inputValue()).not.toBe('one')
})
