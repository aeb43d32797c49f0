import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { test } from './harness.ts'
import { ringsOverText } from './rings.ts'

/** Numbers every control in reach of the keyboard in the order of the document, through every shadow root. */
const number = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: HTMLElement[] = []
    const look = (element: Element): void => {
      if (element instanceof HTMLElement) {
        const isControl = element.matches('a[href], button, summary, select, input, textarea, [tabindex="0"]')
        const isShown = element.checkVisibility({ visibilityProperty: true })
        if (isControl && isShown && element.tabIndex >= 0 && !element.matches(':disabled')) {
          // Of radio buttons in a group one is in reach, and the arrows lead to the others.
          const group =
            element instanceof HTMLInputElement && element.type === 'radio' ? element.closest('fieldset') : null
          const isOther = group && [...group.querySelectorAll('input')].some((one) => one !== element && one.checked)
          if (!isOther) found.push(element)
        }
      }
      const assigned = element instanceof HTMLSlotElement ? element.assignedElements() : []
      for (const child of element.shadowRoot?.children ?? (assigned.length > 0 ? assigned : element.children))
        look(child)
    }
    look(document.body)
    Object.assign(globalThis, { controls: found })
    return found.map(
      (one) => `${one.localName} ${one.getAttribute('aria-label') ?? one.textContent?.trim().slice(0, 40) ?? ''}`,
    )
  })

/** Notes the place of each control that gets the focus from now on; of those that are not numbered nothing. */
const noteFocus = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const { controls } = globalThis as unknown as { controls: HTMLElement[] }
    const reached: number[] = []
    for (const [at, control] of controls.entries())
      control.addEventListener('focus', () => {
        if (!reached.includes(at)) reached.push(at)
      })
    Object.assign(globalThis, { reached })
  })

const reachedSoFar = (page: Page): Promise<number[]> =>
  page.evaluate(() => (globalThis as unknown as { reached: number[] }).reached)

/** How often Tab is pressed before the page is asked what was reached. */
const TABS = 20

for (const [face, shown] of [
  ['', 'fill-face .band'],
  ['/build', 'build-cell'],
  ['/stand', 'stand-view'],
] as const)
  test(`Tab reaches every control in the order of the page, and no ring covers text, ${face || 'filling in'}`, async ({
    open,
  }) => {
    const { page } = await open({ path: `#new/flat-sheet${face}` })
    await page.locator(shown).first().waitFor()
    await page.locator('example-bar button, build-face .add button, stand-view button').first().waitFor()
    const controls = await number(page)
    await noteFocus(page)
    let reached: number[] = []
    // Drawings that come into view bring further controls, which are not numbered.
    for (let pressed = 0; pressed < 2 * controls.length && reached.length < controls.length; pressed += TABS) {
      for (let tab = 0; tab < TABS; tab++) await page.keyboard.press('Tab')
      reached = await reachedSoFar(page)
    }
    const missed = controls.filter((_, at) => !reached.includes(at))
    expect(missed).toEqual([])
    // From where the focus began, once round the page.
    const first = reached.indexOf(0)
    const order = [...reached.slice(first), ...reached.slice(0, first)]
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(await ringsOverText(page)).toEqual([])
  }, 120_000)
