import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { Column, TableCell } from '../../src/worksheet/index.ts'
import { readTable } from '../../src/worksheet/table/csv.ts'
import { focused, tabTo } from './focus.ts'
import { test, violations } from './harness.ts'
import { pressInHead, saved } from './head.ts'
import { cellsOf } from './open-sheet.ts'

const at = (page: Page, name: RegExp) => expect.poll(() => focused(page)).toMatch(name)
const foot = async (page: Page): Promise<string> => (await page.locator('table-cell tfoot').textContent()) ?? ''
const rowsSaid = (page: Page, text: string): Promise<void> =>
  page.locator('table-cell .head').filter({ hasText: text }).waitFor()

/** Lets a text be pasted where the focus is, as from a spreadsheet. */
const paste = (page: Page, text: string): Promise<void> =>
  page.evaluate((text) => {
    let at = document.activeElement
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', text)
    at?.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, composed: true, cancelable: true }))
  }, text)

const COLUMNS: Column[] = [
  { name: 'mark', label: 'Shelf mark', entry: 'text' },
  { name: 'width', label: 'Width', unit: 'mm' },
  { name: 'bound', label: 'Bound', entry: 'tick', foot: [{ figure: 'count', where: 'bound' }] },
  { name: 'sort', label: 'Sort', entry: 'choice', options: ['map', 'chart'] },
  { name: 'seen', label: 'Seen', entry: 'date and time', may_be_empty: true },
  { name: 'outer', label: 'Outer', unit: 'mm', formula: 'width + 2 * border', foot: [{ figure: 'sum' }] },
]

const sheetWith = (rows: number, columns = COLUMNS): object => ({
  format: 'evenfield-worksheet',
  version: 2,
  title: 'Harbour office',
  cells: [
    { kind: 'given', id: 'b', name: 'border', label: 'Border', unit: 'mm', value: '10' },
    {
      kind: 'table',
      id: 's',
      name: 'originals',
      label: 'Originals',
      columns,
      rows: Array.from({ length: rows }, (_, i) => [
        `HO ${i + 1}`,
        `${100 + (i % 50)}`,
        i % 2 ? 'yes' : '',
        'map',
        '',
        '',
      ]),
    } satisfies TableCell,
    { kind: 'result', id: 'r', name: 'all', label: 'In all', unit: 'mm', formula: 'sum(originals.outer)' },
  ],
})

async function opened(page: Page, sheet: object): Promise<void> {
  await page.locator('#file').setInputFiles({
    name: 'harbour.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(sheet)),
  })
  await page.locator('table-cell table').waitFor()
}

test('a table is built from nothing by keyboard, filled from a spreadsheet, saved, and saved as CSV', async ({
  open,
}) => {
  const { page } = await open()
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  await page.getByRole('heading', { name: 'What are you photographing?' }).waitFor()
  await tabTo(page, /Something else/)
  await page.keyboard.press('Enter')
  await page.locator('build-face .first').waitFor()

  await tabTo(page, /A given/)
  await page.keyboard.press('Enter')
  await at(page, /^Label/)
  await page.keyboard.type('Border')
  await tabTo(page, /Add A table/)
  await page.keyboard.press('Enter')
  await at(page, /^Label/)
  await page.keyboard.type('The originals')
  await tabTo(page, /Add a column/)
  await page.keyboard.press('Enter')
  await at(page, /^Heading/)
  await page.keyboard.type('Title')
  await tabTo(page, /^Filled in with/)
  await page.keyboard.press('t')
  await tabTo(page, /Add a column/)
  await page.keyboard.press('Enter')
  await at(page, /^Heading/)
  await page.keyboard.type('Width')
  await tabTo(page, /^Unit/)
  await page.keyboard.type('mm')
  await tabTo(page, /Add a footer/)
  await page.keyboard.press('Enter')
  await page.getByLabel('Footer').waitFor()
  await tabTo(page, /Add a column/)
  await page.keyboard.press('Enter')
  await at(page, /^Heading/)
  await page.keyboard.type('Frames')
  await tabTo(page, /^Filled in with/)
  await page.keyboard.press('End')
  await tabTo(page, /^Formula/)
  await page.locator('table-form .cm-content').waitFor()
  await page.keyboard.type('when(width > 300 mm, 2, 1)')
  await expect
    .poll(() => page.locator('table-form .call .mono').allInnerTexts())
    .toEqual(['title', 'width [mm]', 'frames = when(width > 300 mm, 2, 1)'])

  await page.getByRole('link', { name: 'Fill in' }).press('Enter')
  await page.locator('table-cell table').waitFor()
  await page.getByRole('button', { name: 'Add a row' }).focus()
  await page.keyboard.press('Enter')
  await at(page, /^Title, row 1/)
  await page.keyboard.type('Town plan')
  await page.keyboard.press('Tab')
  await page.keyboard.type('42 cm')
  // On the last row Enter opens the next, in the column the row was begun in.
  await page.keyboard.press('Enter')
  await at(page, /^Title, row 2/)
  await expect.poll(() => page.locator('.worked').first().textContent()).toBe('2')

  const lines = Array.from({ length: 300 }, (_, i) => `Sheet ${i + 1}\t${i === 99 ? '2o0' : `${200 + i},5`}`)
  await paste(page, `${lines.join('\r\n')}\r\n`)
  await rowsSaid(page, '300 of 301 rows')
  await page.getByRole('button', { name: /^Row 101, Width: / }).press('Enter')
  await at(page, /^Width, row 101/)
  const bad = page.getByLabel('Width, row 101')
  expect(await bad.getAttribute('aria-invalid')).toBe('true')
  expect(await bad.inputValue()).toBe('2o0')
  await page.locator('#problem').filter({ hasText: 'Row 101: ' }).waitFor()
  const sum = 420 + Array.from({ length: 300 }, (_, i) => (i === 99 ? 0 : 200.5 + i)).reduce((a, b) => a + b, 0)
  expect((await foot(page)).replace(/[^\d.]/g, '')).toBe(`${Math.round(sum)}`)

  await page.keyboard.type('299,5')
  await rowsSaid(page, '301 rows')
  await saved(page)
  await page.reload()
  await rowsSaid(page, '301 rows')
  expect((await foot(page)).replace(/[^\d.]/g, '')).toBe(`${Math.round(sum + 299.5)}`)

  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as CSV' }).click(),
  ])
  const { rows } = readTable(await readFile(await download.path(), 'utf8'))
  expect(rows).toHaveLength(302)
  expect(rows[0]).toEqual(['Title', 'Width [mm]', 'Frames'])
  expect(rows[1]).toEqual(['Town plan', '420', '2'])
  expect(rows[2]).toEqual(['Sheet 1', '200.5', '1'])
  expect(rows[101]).toEqual(['Sheet 100', '299.5', '1'])
})

test('two thousand rows: few are drawn, every one is reached, and typing recomputes only what it must', async ({
  open,
}) => {
  const { page } = await open()
  await opened(page, sheetWith(2000))
  const table = page.getByRole('table', { name: 'Originals' })
  expect(await table.getAttribute('aria-rowcount')).toBe('2001')
  expect(await page.locator('tbody tr:not(.pad)').count()).toBeLessThan(60)

  await page.getByLabel('Width, row 1', { exact: true }).focus()
  await page.keyboard.press('Control+End')
  await at(page, /^Width, row 2000/)
  await page.keyboard.press('ArrowUp')
  await at(page, /^Width, row 1999/)
  expect(await page.locator('tbody tr:not(.pad)').count()).toBeLessThan(60)
  expect(
    await page
      .locator('tr')
      .filter({ has: page.getByLabel('Width, row 1999') })
      .getAttribute('aria-rowindex'),
  ).toBe('2000')
  const before = await page.locator('result-cell .figure').textContent()
  const took = await page.evaluate(async () => {
    let at = document.activeElement
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
    const field = at as HTMLInputElement
    const times: number[] = []
    for (let i = 0; i < 15; i++) {
      const start = performance.now()
      field.value = `${500 + i}`
      field.dispatchEvent(new Event('input', { bubbles: true, composed: true }))
      await Promise.resolve()
      await new Promise((drawn) => requestAnimationFrame(drawn))
      times.push(performance.now() - start)
    }
    return times.sort((a, b) => a - b)[7] as number
  })
  console.log(`A key in row 1999 of 2000, drawn: ${took.toFixed(0)} ms`)
  expect(await page.locator('result-cell .figure').textContent()).not.toBe(before)
  // The row in hand stays while others are scrolled past.
  await page.locator('.box').evaluate((box) => box.scrollTo(0, 0))
  await page.getByLabel('Width, row 3', { exact: true }).waitFor()
  await at(page, /^Width, row 1999/)
  await page.keyboard.press('Control+z')
  await expect.poll(() => page.getByLabel('Width, row 1999').inputValue()).toBe('148')
})

test('rows are added, moved and taken out by key and by word, each a step of undo', async ({ open }) => {
  const { page } = await open()
  await opened(page, sheetWith(3))
  const marks = () =>
    page
      .locator('tbody input[aria-label^="Shelf mark"]')
      .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value))
  await page.getByLabel('Shelf mark, row 1').focus()
  await page.keyboard.press('Alt+ArrowDown')
  await expect.poll(marks).toEqual(['HO 2', 'HO 1', 'HO 3'])
  await at(page, /^Shelf mark, row 2/)
  await page.keyboard.press('Alt+n')
  await at(page, /^Shelf mark, row 3/)
  await page.keyboard.type('between')
  await expect.poll(marks).toEqual(['HO 2', 'HO 1', 'between', 'HO 3'])
  await page.getByRole('group', { name: 'Row 3' }).getByRole('button', { name: 'Move up row 3' }).click()
  await expect.poll(marks).toEqual(['HO 2', 'between', 'HO 1', 'HO 3'])
  await page.keyboard.press('Alt+r')
  await expect.poll(marks).toEqual(['HO 2', 'HO 1', 'HO 3'])
  for (let i = 0; i < 5; i++) await page.keyboard.press('Control+z')
  await expect.poll(marks).toEqual(['HO 1', 'HO 2', 'HO 3'])
})

test('a choice, a tick and a date are filled in by key', async ({ open }) => {
  const { page } = await open()
  await opened(page, sheetWith(2))
  await page.getByLabel('Bound, row 1').focus()
  await page.keyboard.press('Space')
  await expect.poll(() => foot(page)).toMatch(/Count\s+2/)
  await page.keyboard.press('Tab')
  await at(page, /^Sort, row 1/)
  await page.keyboard.press('c')
  expect(await page.getByLabel('Sort, row 1').inputValue()).toBe('chart')
  await page.keyboard.press('Tab')
  await page.keyboard.type('03/04/2026')
  await page.locator('#problem').filter({ hasText: '2026-04-03 or 2026-03-04' }).waitFor()
  await page.getByRole('button', { name: 'Write 2026-04-03' }).click()
  await at(page, /^Seen, row 1/)
  await rowsSaid(page, '2 rows')
})

test('the choice of an empty row is the one that was chosen', async ({ open }) => {
  const { page } = await open()
  await opened(page, sheetWith(1))
  await page.getByLabel('Shelf mark, row 1').focus()
  await page.keyboard.press('Alt+n')
  await at(page, /^Shelf mark, row 2/)
  const sort = page.getByLabel('Sort, row 2')
  await sort.selectOption('map')
  const rows = async () => (await cellsOf(page)).flatMap((cell) => (cell.kind === 'table' ? cell.rows : []))
  await expect.poll(async () => (await rows())[1]?.[3]).toBe('map')
  expect(await sort.inputValue()).toBe('map')
})

test('a file with headings of its own is looked over, matched and taken in', async ({ open }) => {
  const { page } = await open()
  await opened(page, sheetWith(2))
  await page.getByRole('button', { name: 'Paste or open a table' }).click()
  const panel = page.locator('table-import')
  for (const [name, bytes, said] of [
    ['list.xlsx', 'PK\x03\x04', /workbook/],
    ['empty.csv', '\ufeff', /There is no table/],
  ] as const) {
    await panel.locator('input[type=file]').setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(bytes) })
    await panel.getByText(`${name}; choose another file`).waitFor()
    await panel.getByRole('alert').filter({ hasText: said }).waitFor()
  }
  await panel.locator('input[type=file]').setInputFiles({
    name: 'list.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('\ufeffShelf mark;Width [cm];Sort;Ink;\r\nX 1;42,5;Chart;red;\r\nX 2;wide;map;blue;\r\n'),
  })
  await panel.getByRole('button', { name: 'Import 2 rows' }).waitFor()
  await expect
    .poll(() =>
      panel
        .locator('.match select')
        .evaluateAll((all) => all.map((one) => (one as HTMLSelectElement).selectedOptions[0]?.text)),
    )
    .toEqual(['Shelf mark', 'Width', 'Sort', 'A new column: text', 'Do not import'])
  expect(await violations(page)).toEqual([])
  await panel.getByRole('button', { name: 'Import 2 rows' }).click()
  await rowsSaid(page, '3 of 4 rows')
  expect(await page.getByLabel('Width, row 3').inputValue()).toBe('42,5 cm')
  expect(await page.getByLabel('Width, row 4').inputValue()).toBe('wide')
  expect(await page.getByLabel('Ink, row 4').inputValue()).toBe('blue')
  await page.keyboard.press('Control+z')
  await rowsSaid(page, '2 rows')

  await page.getByRole('button', { name: 'Paste or open a table' }).click()
  await panel.getByLabel('Paste the table here').fill('x'.repeat(30_000))
  await panel.getByRole('button', { name: 'Import 1 row' }).click()
  await panel
    .getByRole('alert')
    .filter({ hasText: /one field has 30\D000 characters/ })
    .waitFor()
  await panel.getByRole('button', { name: 'Cancel' }).click()
  await at(page, /Paste or open a table/)
})

for (const dim of [false, true])
  test(`axe finds nothing serious in a table, ${dim ? 'dim' : 'light'}, filled in and built`, async ({ open }) => {
    const { page } = await open({ dim, width: 390, height: 844 })
    await opened(page, sheetWith(40))
    await page.getByLabel('Width, row 2', { exact: true }).fill('torn')
    await page.locator('#problem').waitFor()
    expect(await violations(page)).toEqual([])
    await pressInHead(page, 'Build')
    await page.getByRole('button', { name: 'Table: Originals' }).click()
    await page.getByRole('button', { name: /Column: Outer/ }).click()
    await page.getByLabel('Footer').waitFor()
    expect(await violations(page)).toEqual([])
  })

test('on a phone the mark of a row left out is whole beside its number', async ({ open }) => {
  const { page } = await open({ width: 390, height: 844 })
  await opened(page, sheetWith(3))
  await page.getByLabel('Width, row 2', { exact: true }).fill('torn')
  const number = page.locator('th.out').first()
  await number.waitFor()
  const starts = await number.evaluate((cell) => {
    const range = document.createRange()
    range.selectNodeContents(cell.querySelector('.word-out') as Element)
    return range.getBoundingClientRect().left - cell.getBoundingClientRect().left
  })
  expect(starts).toBeGreaterThanOrEqual(0)
})

test('columns are renamed, moved and removed, and the rows go with them', async ({ open }) => {
  const { page } = await open()
  await opened(page, sheetWith(2))
  await pressInHead(page, 'Build')
  await page.getByRole('button', { name: 'Table: Originals' }).click()
  await page.getByRole('button', { name: /Column: Width/ }).click()
  const name = page.locator('table-form name-field').getByLabel('Name')
  await name.fill('count')
  await name.press('Enter')
  await page.locator('table-form name-field').filter({ hasText: '“count” is the number of rows' }).waitFor()
  await name.fill('breadth')
  await name.press('Enter')
  await expect
    .poll(() => page.locator('table-form .call .mono').allInnerTexts())
    .toContain('outer [mm] = breadth + 2 * border')
  await page.locator('table-form .up').click()
  await page.getByRole('button', { name: /Column: Sort/ }).click()
  await page.getByRole('button', { name: 'Remove the column' }).click()
  await pressInHead(page, 'Fill in')
  await page.locator('table-cell table').waitFor()
  // A table that has just come into view has its texts in the next frame.
  await expect
    .poll(() => page.locator('table-cell thead th').allInnerTexts())
    .toEqual(
      ['Row', 'Width mm', 'Shelf mark', 'Bound', 'Seen', 'Outer mm'].map((text) =>
        expect.stringContaining(text.split(' ')[0] as string),
      ),
    )
  expect(await page.getByLabel('Width, row 2').inputValue()).toBe('101')
  expect(await page.getByLabel('Shelf mark, row 2').inputValue()).toBe('HO 2')
})
