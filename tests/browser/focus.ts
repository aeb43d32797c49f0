import type { Page } from 'playwright-core'

/** The focused element’s own words, through every shadow root. */
export const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    let at = document.activeElement
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
    const field = at as HTMLInputElement | null
    return [field?.getAttribute('aria-label'), field?.labels?.[0]?.textContent, field?.textContent]
      .filter(Boolean)
      .join(' ')
      .trim()
      .replace(/\s+/g, ' ')
  })

/** Far more than any page here has to be tabbed through. */
const MOST_TABS = 200

/** Presses Tab until what has the focus is called so. */
export async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < MOST_TABS; i++) {
    await page.keyboard.press('Tab')
    if (name.test(await focused(page))) return
  }
  throw new Error(`No Tab leads to ${name}.`)
}
