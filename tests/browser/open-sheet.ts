import type { Page } from 'playwright-core'
import { type Cell, FORMAT } from '../../src/worksheet/index.ts'

/** Opens a sheet of these cells as one opens a file. */
export async function openSheet(page: Page, cells: readonly Cell[], title = 'Invented maps'): Promise<void> {
  await page.getByRole('heading', { name: 'What are you photographing?' }).waitFor()
  const buffer = Buffer.from(JSON.stringify({ format: FORMAT, version: 2, title, cells }))
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'sheet.json', mimeType: 'application/json', buffer })
  await page.locator('sheet-page').waitFor()
  await page.getByRole('heading', { name: title }).waitFor()
}

/** The cells of the sheet that is open, as they are. */
export const cellsOf = (page: Page): Promise<readonly Cell[]> =>
  page.evaluate(() => {
    const app = document.querySelector('evenfield-app') as unknown as { shadowRoot: ShadowRoot }
    const sheet = app.shadowRoot.querySelector('sheet-page') as unknown as {
      session: { open: { sheet: { cells: readonly Cell[] } } }
    }
    return JSON.parse(JSON.stringify(sheet.session.open.sheet.cells)) as Cell[]
  })
