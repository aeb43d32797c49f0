import type { Page } from 'playwright-core'

/** Whether the fold in an element is underlined, without the browser's own triangle. */
export const foldedAsOthers = (page: Page, element: string): Promise<boolean> =>
  page
    .locator(`${element} summary`)
    .first()
    .evaluate((one) => {
      const { display, textDecorationLine } = getComputedStyle(one)
      // Only a list item has the triangle.
      return display !== 'list-item' && textDecorationLine === 'underline'
    })
