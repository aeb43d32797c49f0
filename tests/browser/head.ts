import type { Locator, Page } from 'playwright-core'

/** Presses a link or a button in the head of a sheet, by mouse; opens the menu first where it is in there. */
export async function pressInHead(page: Page, name: string): Promise<void> {
  const menu = page.locator('sheet-head .menu > summary')
  await menu.waitFor()
  const item = page
    .locator('sheet-head')
    .locator('a, button')
    .filter({ hasText: new RegExp(`^\\s*${name}\\s*$`) })
    .first()
  if (!(await item.isVisible())) await menu.click()
  await item.click()
}

/** Waits until the head says that the sheet is saved. */
export const saved = (page: Page): Promise<void> =>
  page
    .locator('sheet-head')
    .filter({ hasText: /Saved \d\d:\d\d/ })
    .waitFor()

/** A field by its label, to the letter. */
export const given = (page: Page, label: string): Locator => page.getByLabel(label, { exact: true })
