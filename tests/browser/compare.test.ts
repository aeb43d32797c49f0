import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import type { Cell } from '../../src/worksheet/index.ts'
import { test, violations } from './harness.ts'
import { pressInHead } from './head.ts'
import { openSheet } from './open-sheet.ts'

const CELLS = [
  {
    kind: 'given',
    id: 'k',
    name: 'lens',
    label: 'The lens',
    entry: 'kit',
    sort: 'lens',
    value: '',
    fills: { focal: 'focal' },
  },
  { kind: 'given', id: 'f', name: 'focal', label: 'Focal length', unit: 'mm', value: '60' },
  { kind: 'given', id: 'm', name: 'magnification', label: 'Magnification', unit: '1:', value: '1:12', fixed: true },
  { kind: 'result', id: 'e', name: 'extension', label: 'Extension', unit: 'mm', formula: 'focal * magnification' },
  {
    kind: 'result',
    id: 'd',
    name: 'distance',
    label: 'Distance',
    unit: 'mm',
    formula: 'focal * (1 + 1/magnification)',
  },
  { kind: 'check', id: 'c', name: 'far', label: 'Far enough', condition: 'distance >= 1000 mm', message: 'Too near.' },
  {
    kind: 'range',
    id: 'r',
    title: 'Lenses',
    of: 'focal',
    from: '30',
    to: '90',
    count: 2,
    results: ['distance', 'extension'],
  },
  {
    kind: 'variants',
    id: 'v',
    title: 'Two lenses',
    sets: [{ title: 'Long', values: { focal: '90' } }],
    results: ['distance', 'far'],
  },
] as unknown as Cell[]

async function bring(page: Page): Promise<void> {
  const worksheet = { format: 'evenfield-worksheet', version: 2, title: 'Compared', cells: CELLS }
  await page.locator('shelf-page input#file').setInputFiles({
    name: 'compared.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(worksheet)),
  })
  await page.locator('fill-face').waitFor()
}

const focal = (page: Page): Locator => page.getByLabel('Focal length', { exact: true })
const rowTexts = (cell: Locator): Promise<string[]> =>
  cell.locator('tbody tr').evaluateAll((rows) => rows.map((row) => (row.textContent ?? '').replace(/\s+/g, ' ').trim()))

test('a range follows what is typed, and a value of it is taken over with one press', async ({ open }) => {
  const { page } = await open()
  await bring(page)
  const range = page.locator('range-cell')
  await expect
    .poll(() => rowTexts(range))
    .toEqual(['Use 30 mm 390 mm2.5 mm', '◆ 60 mm, now 780 mm5 mm', 'Use 90 mm 1170 mm7.5 mm'])
  // The two results are plotted side by side, as there is room.
  await expect.poll(() => range.locator('svg.drawing').count()).toBe(2)
  await range.getByRole('button', { name: 'Use 90 mm' }).press('Enter')
  await expect.poll(() => focal(page).inputValue()).toBe('90')
  await expect.poll(() => rowTexts(range).then((rows) => rows[2])).toBe('◆ 90 mm, now 1170 mm7.5 mm')
  await page.keyboard.press('Control+z')
  await expect.poll(() => focal(page).inputValue()).toBe('60')
  await range.getByLabel('To', { exact: true }).fill('rubbish')
  await range.filter({ hasText: 'Where the range ends cannot be read' }).waitFor()
  await range.getByLabel('To', { exact: true }).fill('50')
  await expect.poll(() => rowTexts(range).then((rows) => rows.length)).toBe(3)

  // Where computing takes long it follows once typing pauses: a clock that runs fast makes every figure slow.
  await page.evaluate(() => {
    let now = 0
    performance.now = () => {
      now += 100
      return now
    }
  })
  await focal(page).fill('50')
  await focal(page).fill('40')
  await expect.poll(() => rowTexts(range).then((rows) => rows.find((row) => row.startsWith('◆')))).toMatch(/^◆ 40 mm/)
  await focal(page).fill('30')
  await expect.poll(() => rowTexts(range).then((rows) => rows.find((row) => row.startsWith('◆')))).toMatch(/^◆ 30 mm/)
})

test('variants are beside the sheet, are typed into, and taken over', async ({ open }) => {
  const { page } = await open({ width: 1024, dim: true })
  await bring(page)
  const variants = page.locator('variants-cell')
  await expect
    .poll(() => rowTexts(variants))
    .toEqual(['Focal length mm 60 mm', 'Distance 780 mm 1170 mm 390 mm over', 'Far enough Fail Pass'])
  await variants.getByLabel('Focal length, Long').fill('75')
  await expect.poll(() => rowTexts(variants).then((rows) => rows[1])).toBe('Distance 780 mm 975 mm 195 mm over')
  await variants.getByRole('button', { name: 'Use Long' }).click()
  await expect.poll(() => focal(page).inputValue()).toBe('75')
  await expect.poll(() => rowTexts(variants).then((rows) => rows[1])).toBe('Distance 975 mm 975 mm')
  await variants.getByRole('button', { name: 'Add a variant' }).click()
  await variants.getByLabel('Title of variant 2').fill('Short')
  await variants.getByLabel('Focal length, Short').fill('35')
  await expect.poll(() => rowTexts(variants).then((rows) => rows[1])).toContain('455 mm 520 mm under')
  expect(await violations(page)).toEqual([])
})

test('a piece of the kit is chosen, fills in what goes with it, and is offered as a suggestion', async ({ open }) => {
  const { page, site } = await open({ background: true })
  await bring(page)
  const address = page.url()
  await page.getByRole('button', { name: 'Choose: The lens' }).press('Enter')
  await page.getByLabel('The lens', { exact: true }).selectOption('60 mm macro lens')
  const check = page.locator('check-cell')
  await check
    .getByRole('button', { name: /^Choose 90 mm macro lens as The lens\./ })
    .first()
    .click()
  await expect.poll(() => focal(page).inputValue()).toBe('90 mm')
  await page.keyboard.press('Control+z')
  await expect.poll(() => focal(page).inputValue()).toBe('60 mm')

  await page.goto(`${site}#kit`)
  await page.getByRole('button', { name: 'Add the generic kit' }).click()
  await page.getByRole('button', { name: 'Edit 90 mm macro lens' }).click()
  await page.getByLabel('Name', { exact: true }).fill('The long one')
  await page.getByLabel('Focal length, mm').fill('105')
  await page.getByRole('button', { name: 'Done' }).click()
  await page.getByText('105 mm').waitFor()
  expect(await violations(page)).toEqual([])
  await page.getByRole('button', { name: 'Remove Tube, 12 mm' }).click()
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.getByRole('button', { name: 'Edit Tube, 12 mm' }).waitFor()

  await page.goto(address)
  // What is saved is the studio’s own now; the sheet still has its copy of what was chosen.
  await page.locator('given-cell').filter({ hasText: '60 mm macro lens' }).waitFor()
  await page.getByRole('button', { name: 'Change: The lens' }).click()
  await expect.poll(() => page.getByLabel('The lens', { exact: true }).inputValue()).toBe('lens-60')
  await page.getByLabel('The lens', { exact: true }).selectOption('The long one')
  await expect.poll(() => focal(page).inputValue()).toBe('105')
})

test('a kit goes out as a file and comes in in another browser; what is no kit is refused', async ({ open }) => {
  const { page } = await open({ path: '#kit', width: 390 })
  await page.getByRole('button', { name: 'Add a lamp' }).click()
  await page.getByLabel('Name', { exact: true }).fill('Lamp <img src=x onerror=alert(1)>')
  await page.getByLabel('Intensity, cd').fill('much')
  await page
    .locator('kit-page')
    .filter({ hasText: 'cannot be read' })
    .or(page.locator('[aria-invalid="true"]'))
    .first()
    .waitFor()
  await page.getByLabel('Intensity, cd').fill('900 cd')
  await page.getByRole('button', { name: 'Done' }).click()
  // Without the picker of files, which no test can answer, the file is downloaded.
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  const saving = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save the kit as a file' }).click()
  const file = await (await saving).path()

  const other = (await open({ path: '#kit' })).page
  await other
    .locator('#kit-file')
    .setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('{}') })
  await other.getByText('x.json: This is not a kit').waitFor()
  await other.locator('#kit-file').setInputFiles(file)
  await other.getByText('Lamp <img src=x onerror=alert(1)>').waitFor()
  await other.getByText('1 piece added').waitFor()
})

test('columns of a table are plotted, and a given runs through the values of one', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, [
    { kind: 'given', id: 'f', name: 'focal', label: 'Focal length', unit: 'mm', value: '60' },
    { kind: 'result', id: 'e', name: 'double', label: 'Double', unit: 'mm', formula: 'focal * 2' },
    {
      kind: 'table',
      id: 't',
      name: 'readings',
      label: 'Readings',
      columns: [
        { name: 'day', label: 'Read on', entry: 'date' },
        { name: 'lens', label: 'Lens', unit: 'mm' },
      ],
      rows: [
        ['2026-03-01', '90'],
        ['2026-04-01', '35'],
      ],
    },
    { kind: 'range', id: 'r', results: ['double'] },
  ] as unknown as Cell[])
  const buildRange = async (): Promise<void> => {
    await pressInHead(page, 'Build')
    await page
      .locator('build-cell')
      .getByRole('button', { name: /^Range/ })
      .click()
  }
  await buildRange()
  const varied = page.getByLabel('Given to vary, or column to plot over')
  await varied.selectOption({ label: 'Focal length (focal)' })
  // The label of a list has its choices in it.
  await page.getByLabel(/^\s*Steps/).selectOption({ label: 'Through the values of Readings, Lens (readings.lens)' })
  await pressInHead(page, 'Fill in')
  await expect.poll(() => rowTexts(page.locator('range-cell'))).toEqual(['Use 35 mm 70 mm', 'Use 90 mm 180 mm'])
  await buildRange()
  await varied.selectOption({ label: 'Readings, Read on (readings.day)' })
  await page.getByLabel(/^\s*Column/).selectOption({ label: 'Lens (lens)' })
  await pressInHead(page, 'Fill in')
  await expect.poll(() => page.locator('range-cell svg').textContent()).toContain('Mar')
  expect(await page.locator('range-cell tbody').count()).toBe(0)
})
