import type { Page } from 'playwright-core'

/**
 * What is pressed and is less than 24 px wide, or less than so many px high. A tick or a radio button is pressed by its
 * label; a link within a sentence is as high as its line.
 */
export const smallTargets = (page: Page, least: number): Promise<string[]> =>
  page.evaluate((least) => {
    const found: string[] = []
    const inSentence = (element: Element): boolean => getComputedStyle(element).display === 'inline'
    const target = (element: Element): Element =>
      element.matches('[type="radio"], [type="checkbox"]') ? (element.closest('label') ?? element) : element
    const look = (root: ParentNode): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) look(element.shadowRoot)
        if (!element.matches('a, button, summary, select, textarea, input:not([type="file"])') || inSentence(element))
          continue
        const { width, height } = target(element).getBoundingClientRect()
        if (width > 0 && (width < 24 || height < least))
          found.push(`${element.outerHTML.slice(0, 80)} ${width} × ${height}`)
      }
    }
    look(document.body)
    return found
  }, least)
