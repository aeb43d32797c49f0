import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { test } from './harness.ts'

const JOBS = readdirSync(join(fileURLToPath(new URL('../..', import.meta.url)), 'templates'))
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.slice(0, -'.json'.length))

/** The height of the sheet with every part of it drawn, also what is out of sight. */
async function heightOf(page: Page, job: string): Promise<number> {
  await page.evaluate((to) => {
    location.hash = to
  }, `#new/${job}`)
  await page.locator('fill-face .band').first().waitFor()
  return page.evaluate(async () => {
    const frame = (): Promise<unknown> => new Promise(requestAnimationFrame)
    const face = document
      .querySelector('evenfield-app')
      ?.shadowRoot?.querySelector('sheet-page')
      ?.shadowRoot?.querySelector('fill-face')?.shadowRoot as ShadowRoot
    const style = new CSSStyleSheet()
    style.replaceSync('.band { content-visibility: visible !important }')
    face.adoptedStyleSheets = [...face.adoptedStyleSheets, style]
    const open = (): Element | undefined =>
      [...face.querySelectorAll('drawing-cell')].find((one) => !one.shadowRoot?.querySelector('svg'))
    for (let drawing = open(); drawing; drawing = open()) {
      drawing.scrollIntoView()
      await frame()
    }
    // Steady over ten frames: parts of it are fetched.
    let height = 0
    for (let steady = 0; steady < 10; steady++) {
      await frame()
      const now = document.documentElement.scrollHeight
      if (now !== height) steady = 0
      height = now
    }
    return height
  })
}

test('at 1440 px a flat sheet is at most 2,600 px tall, and so are the jobs on average', async ({ open }) => {
  const { page } = await open()
  await page.getByRole('heading', { name: 'What are you photographing?' }).waitFor()
  expect(await heightOf(page, 'flat-sheet')).toBeLessThanOrEqual(2600)
  const heights: number[] = []
  for (const job of JOBS) {
    // The shelf between, so that the next sheet is opened anew.
    await page.evaluate(() => {
      location.hash = ''
    })
    await page.locator('fill-face').waitFor({ state: 'detached' })
    heights.push(await heightOf(page, job))
  }
  expect(heights.reduce((sum, one) => sum + one, 0) / heights.length).toBeLessThanOrEqual(2600)
}, 300_000)
