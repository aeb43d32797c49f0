import { readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { test } from './harness.ts'
import { pressInHead } from './head.ts'

async function share(page: Page): Promise<void> {
  await pressInHead(page, 'Share')
  await page.locator('share-panel h2').waitFor()
}

/** The dialogue is the browser's own and cannot be driven; what it would print stays laid out. */
const withoutDialogue = (page: Page): Promise<void> =>
  page.evaluate(() => {
    window.print = () => {
      document.documentElement.dataset.printed = 'yes'
    }
  })
const printed = (page: Page): Promise<void> => page.locator('html[data-printed]').waitFor()

/** The pages of a PDF, counted by its own tree. */
const pages = (pdf: Buffer): number => Number(/\/Type \/Pages\s[^>]*?\/Count (\d+)/.exec(pdf.toString('latin1'))?.[1])

test('Print lays out a job sheet, black on white in the dim face too, and takes it away again', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet', dim: true })
  await share(page)
  await withoutDialogue(page)
  await page.getByRole('button', { name: 'Print' }).click()
  await printed(page)
  const sheet = page.locator('body > .job-sheet')
  expect(await sheet.isVisible()).toBe(false)
  await page.emulateMedia({ media: 'print' })
  expect(await sheet.isVisible()).toBe(true)
  expect(await page.locator('evenfield-app').isVisible()).toBe(false)
  // biome-ignore lint/performance/useDomNodeTextContent: the words as they are laid out, with spaces between them.
  const text = (await sheet.innerText()).replace(/\s+/g, ' ')
  expect(text).toMatch(/A flat sheet on a copy stand Job Ferry Lane/)
  expect(text).toMatch(/Revision not saved yet/)
  expect(text).toMatch(/Set the column to 917 mm/)
  expect(text).toMatch(/Set the time to nearest mark; exactly 1\/4\.70 s 1\/5 s/)
  expect(text).toMatch(/Fail: 321 ppi of the 400 ppi required/)
  expect(text).toMatch(/Caution: Hot lamps/)
  expect(text).not.toMatch(/fit_magnification/)
  expect(await sheet.locator('.qr').count()).toBe(1)
  expect(await sheet.locator('button, input, select, textarea').count()).toBe(0)
  const ground = await sheet.evaluate((one) => [getComputedStyle(one).color, getComputedStyle(one).backgroundColor])
  expect(ground).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)'])
  // Figures of the example are marked, each drawing is in the section of the figures it shows, and columns are aligned.
  expect(text).toMatch(/22 figures are still the example’s/)
  expect(text).toMatch(/Focal length example 60 mm/)
  expect(await sheet.locator('section:has(h2:text-is("Column")) svg:not(.sign)').count()).toBe(1)
  const rights = await sheet.locator('.flow td.figure').evaluateAll((all) => {
    const left = all[0]?.closest('.flow')?.getBoundingClientRect().left ?? 0
    return all.map((one) => Math.round(one.getBoundingClientRect().right - left))
  })
  expect(new Set(rights).size).toBe(2)
  // Printing ends with the event that takes the sheet away again.
  expect(pages(await page.pdf({ format: 'A4' }))).toBe(2)
  await sheet.waitFor({ state: 'detached' })
})

test('the working is printed when asked for, the figures put in', async ({ open }) => {
  const { page } = await open({ path: '#new/two-lamps' })
  await share(page)
  await withoutDialogue(page)
  await page.getByLabel(/Include the working/).check()
  await page.getByRole('button', { name: 'Print' }).click()
  await printed(page)
  expect(await page.locator('.job-sheet code').allTextContents()).toEqual(
    expect.arrayContaining([
      '= lamp_elevation(left_height + lamp_radius, left_out)',
      '= lamp_elevation(1400 mm + 100 mm, 1500 mm)',
    ]),
  )
})

test('Ctrl P prints the job sheet as well', async ({ open }) => {
  const { page } = await open({ path: '#new/accept-colour' })
  await page.locator('fill-face result-cell').first().waitFor()
  await withoutDialogue(page)
  await page.keyboard.press('Control+p')
  await printed(page)
  expect(await page.locator('body > .job-sheet h1').textContent()).toBe('Acceptance: colour patches')
})

test('a page handed over opens from a file, with its drawings, asks for nothing and runs nothing', async ({ open }) => {
  const { page, context } = await open({ path: '#new/two-lamps' })
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  await share(page)
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save as a web page' }).click()
  const download = await downloading
  expect(download.suggestedFilename()).toMatch(/^Two-lamps.*\.html$/)
  const path = join(tmpdir(), `evenfield-${process.pid}.html`)
  await download.saveAs(path)
  expect(await readFile(path, 'utf8')).toContain(`content="default-src 'none'; style-src 'unsafe-inline'`)

  const reader = await context.newPage()
  const asked: string[] = []
  reader.on('request', (request) => asked.push(request.url()))
  await reader.goto(pathToFileURL(path).href)
  await reader.locator('figure svg').first().waitFor()
  expect(asked).toEqual([pathToFileURL(path).href])
  expect(await reader.locator('script').count()).toBe(0)
  expect(await reader.locator('.check').first().textContent()).toMatch(/^(Pass|Marginal|Fail):/)
  await reader.setViewportSize({ width: 390, height: 800 })
  expect(await reader.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
})

test('a link of givens and results only opens as such, with the same figures', async ({ open }) => {
  const first = await open({ path: '#new/flat-sheet' })
  await share(first.page)
  const link = first.page.getByLabel('Link to a copy of this sheet')
  await expect.poll(() => link.inputValue()).toMatch(/#s=[12]\./)
  const whole = await link.inputValue()
  await first.page.getByLabel(/Givens and results only/).check()
  await expect.poll(() => link.inputValue()).not.toBe(whole)
  // Without checks and drawings the sheet is laid out in another order.
  const figures = async (page: Page): Promise<string[]> =>
    (await page.locator('result-cell .figure').allTextContents())
      // A record, which no formula can write, is a text there.
      .filter((text) => !text.includes('in front'))
      .sort()
  const second = await open({ path: (await link.inputValue()).slice(first.site.length) })
  await second.page
    .locator('copy-page')
    .filter({ hasText: /givens and results only/ })
    .waitFor()
  await second.page.getByRole('button', { name: 'Save a copy' }).click()
  await second.page.getByText(/These are figures as they were on/).waitFor()
  await expect.poll(() => figures(second.page)).toEqual(await figures(first.page))
})

test('a QR code is shown when asked for, and says what it holds', async ({ open }) => {
  const { page } = await open({ path: '#new/load-and-stand' })
  await share(page)
  await page.getByRole('button', { name: 'QR code for a tablet' }).click()
  await page.locator('share-panel svg.qr path').waitFor()
  await page.getByText('The whole sheet, with its formulas.').waitFor()
  await page.getByLabel(/Givens and results only/).check()
  await page.getByText('Givens and results only.', { exact: true }).waitFor()
})

/** What precedes a print begun from the browser's own menu. */
const BEFORE_THE_MENU = { 'the pointer leaves for its menu': 'pointerleave', 'a key is pressed': 'keydown' }

for (const [when, event] of Object.entries(BEFORE_THE_MENU))
  test(`once ${when}, the browser’s own Print gives the job sheet as well, and the page afterwards is as it was`, async ({
    open,
  }) => {
    const { page } = await open({ path: '#new/flat-sheet' })
    await page.locator('fill-face result-cell').first().waitFor()
    const sheet = page.locator('body > .job-sheet')
    await expect
      .poll(async () => {
        // Again and again, since the sheet is shown before the page listens.
        await page.evaluate((event) => {
          document.documentElement.dispatchEvent(new Event(event))
          dispatchEvent(new Event('beforeprint'))
        }, event)
        return sheet.count()
      })
      .toBe(1)
    await page.emulateMedia({ media: 'print' })
    expect(await sheet.isVisible()).toBe(true)
    expect(await sheet.locator('svg').count()).toBeGreaterThan(1)
    const fromMenu = await sheet.innerHTML()
    await page.evaluate(() => dispatchEvent(new Event('afterprint')))
    await sheet.waitFor({ state: 'detached' })
    await page.emulateMedia({ media: 'screen' })
    await share(page)
    await withoutDialogue(page)
    await page.getByRole('button', { name: 'Print' }).click()
    await printed(page)
    expect(await sheet.innerHTML()).toBe(fromMenu)
  })

test('printed as it is, the page keeps its drawings and shows what is chosen', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  const drawings = page.locator('fill-face drawing-cell:has(svg)')
  await drawings.first().waitFor()
  await drawings.first().evaluate((one) => one.setAttribute('data-kept', ''))
  await page.emulateMedia({ media: 'print' })
  await page.setViewportSize({ width: 794, height: 1123 })
  // What is laid out anew as it is printed is on fewer pages than were counted: the last are blank.
  await page.evaluate(() => new Promise((settle) => requestAnimationFrame(() => requestAnimationFrame(settle))))
  expect(await page.locator('fill-face drawing-cell[data-kept] svg').first().isVisible()).toBe(true)
  const chosen = page.locator('given-cell .yes-no label:has(:checked)').first()
  expect(await chosen.evaluate((one) => getComputedStyle(one).getPropertyValue('print-color-adjust'))).toBe('exact')
})

test.for(['flat-sheet', 'collection-run'])(
  'printed as it is, the page of %s has nothing left to press',
  async (job, { open }) => {
    const { page } = await open({ path: `#new/${job}` })
    await page.locator('fill-face drawing-cell svg, fill-face run-cell .setup').first().waitFor()
    const pressed = () =>
      page.locator('fill-face').evaluate((face) => {
        const found: string[] = []
        const look = (root: ParentNode): void => {
          for (const one of root.querySelectorAll('*')) {
            if (one.shadowRoot) look(one.shadowRoot)
            const isPressed = one.matches('button:is(.word, .press), label.press') && !one.matches('.says')
            if (isPressed && one.getBoundingClientRect().width > 0) found.push(one.textContent.trim())
          }
        }
        look(face.shadowRoot as ShadowRoot)
        return found
      })
    expect(await pressed()).not.toEqual([])
    await page.emulateMedia({ media: 'print' })
    expect(await pressed()).toEqual([])
    // What sorts a table says what its column is.
    if (job === 'collection-run') expect(await page.locator('table-cell .sort').first().isVisible()).toBe(true)
  },
)
