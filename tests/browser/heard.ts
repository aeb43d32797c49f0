import type { Page } from 'playwright-core'

/** Keeps a list of what is announced from now on. */
export const listen = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const { heard = [], seen = new WeakSet<Node>() } = globalThis as { heard?: string[]; seen?: WeakSet<Node> }
    Object.assign(globalThis, { heard, seen })
    const announced = (records: readonly MutationRecord[]): void => {
      const regions = new Set<Element>()
      for (const { target } of records) {
        const element = target instanceof Element ? target : target.parentElement
        const region = element?.closest('[role=status], [role=alert]')
        if (region) regions.add(region)
      }
      for (const { textContent } of regions) if (textContent?.trim()) heard.push(textContent.trim())
    }
    const watch = (root: Document | ShadowRoot): void => {
      if (!seen.has(root))
        new MutationObserver(announced).observe(root, { childList: true, subtree: true, characterData: true })
      seen.add(root)
      for (const { shadowRoot } of root.querySelectorAll('*')) if (shadowRoot) watch(shadowRoot)
    }
    watch(document)
  })
/** What was announced since it was asked last. */
export const heard = (page: Page): Promise<string[]> =>
  page.evaluate(() => (globalThis as unknown as { heard: string[] }).heard.splice(0))
