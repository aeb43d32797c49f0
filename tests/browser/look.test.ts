import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { test, violations } from './harness.ts'
import { pressInHead } from './head.ts'

const settled = async (page: Page): Promise<void> => {
  await page.locator('drawing-cell svg').first().waitFor()
  await page.evaluate(() => document.fonts.ready)
}

for (const dim of [false, true]) {
  const face = dim ? 'dim' : 'light'
  test(`axe finds nothing serious on the shelf, ${face}`, async ({ open }) => {
    const { page } = await open({ dim })
    await page.getByRole('heading', { name: 'What are you photographing?' }).waitFor()
    expect(await violations(page)).toEqual([])
  })

  test(`axe finds nothing serious on an open worksheet, filled in and built, ${face}`, async ({ open }) => {
    const { page } = await open({ path: '#new/flat-sheet', dim })
    await settled(page)
    await page.getByLabel('Border around the original').fill('10 mmm')
    await page.getByLabel('Lens', { exact: true }).fill('')
    await pressInHead(page, 'Share')
    await page.getByLabel('Link to a copy of this sheet').waitFor()
    for (const folded of await page.locator('fill-face summary').all()) await folded.click()
    expect(await violations(page)).toEqual([])
    await pressInHead(page, 'Build')
    await page
      .locator('build-cell')
      .filter({ hasText: 'Original to sensor' })
      .first()
      .locator('button.formula-text')
      .click()
    await page.locator('.cm-content').waitFor()
    expect(await violations(page)).toEqual([])
  })
}

test('the face is remembered', async ({ open }) => {
  const { page } = await open()
  await page.getByRole('button', { name: 'Dim' }).click()
  await page.reload()
  await page.getByRole('button', { name: 'Light' }).waitFor()
  expect(await page.evaluate(() => document.documentElement.dataset.face)).toBe('dim')
})

test('every colour but the ring of the focus is a neutral grey', async ({ open }) => {
  for (const dim of [false, true]) {
    const { page } = await open({ path: '#new/flat-sheet', dim })
    await settled(page)
    const coloured = await page.evaluate(() => {
      const found = new Set<string>()
      const look = (root: ParentNode): void => {
        for (const element of root.querySelectorAll('*')) {
          const style = getComputedStyle(element)
          for (const colour of [style.color, style.backgroundColor, style.borderTopColor, style.stroke, style.fill]) {
            const [r, g, b] = (/^rgba?\((\d+), (\d+), (\d+)/.exec(colour) ?? []).slice(1)
            if (r !== g || g !== b) found.add(`${element.localName} ${colour}`)
          }
          if (element.shadowRoot) look(element.shadowRoot)
        }
      }
      look(document.body)
      return [...found]
    })
    expect(coloured).toEqual([])
  }
})

for (const [what, width, size] of [
  ['320 px wide', 320, undefined],
  ['390 px wide', 390, undefined],
  ['with text at 200 %', 640, '200%'],
  ['with text at 200 % and room to spare', 1280, '225%'],
] as const)
  test(`nothing runs out of the page ${what}`, async ({ open }) => {
    const { page } = await open({ path: '#new/flat-sheet', width })
    await settled(page)
    if (size)
      await page.evaluate((size) => {
        document.documentElement.style.setProperty('font-size', size)
      }, size)
    const over = (): Promise<number> =>
      page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    expect(await over()).toBe(0)
    await pressInHead(page, 'Build')
    await page.getByRole('button', { name: 'Given: Lens', exact: true }).click()
    expect(await over()).toBe(0)
  })

for (const [pointer, least] of [
  ['mouse', 24],
  ['touch', 36],
] as const)
  test(`what is pressed by ${pointer} is at least ${least} px high and 24 px wide`, async ({ open }) => {
    const touch = pointer === 'touch'
    const { page } = await open({ path: '#new/flat-sheet', width: 390, context: { hasTouch: touch, isMobile: touch } })
    await settled(page)
    const small = await page.evaluate((least) => {
      const found: string[] = []
      const look = (root: ParentNode): void => {
        for (const element of root.querySelectorAll('*')) {
          if (element.shadowRoot) look(element.shadowRoot)
          if (
            !element.matches('a, button, summary, select, input:not([type="radio"], [type="checkbox"], [type="file"])')
          )
            continue
          const { width, height } = element.getBoundingClientRect()
          if (width > 0 && (width < 24 || height < least))
            found.push(`${element.outerHTML.slice(0, 80)} ${width} × ${height}`)
        }
      }
      look(document.body)
      return found
    }, least)
    expect(small).toEqual([])
  })

for (const template of ['flat-sheet', 'getting-closer', 'two-lamps'])
  test(`labels never take three lines, ${template}`, async ({ open }) => {
    const { page } = await open({ path: `#new/${template}` })
    for (const width of [1440, 1024, 390]) {
      await page.setViewportSize({ width, height: 900 })
      await settled(page)
      const tall = await page.evaluate(() => {
        const found: string[] = []
        const faces = document.querySelector('evenfield-app')?.shadowRoot?.querySelector('sheet-page')?.shadowRoot
        const cells = faces?.querySelector('fill-face')?.shadowRoot?.querySelectorAll('given-cell, result-cell') ?? []
        for (const cell of cells) {
          const label = cell.shadowRoot?.querySelector<HTMLElement>('label, #label, .label')
          if (!label) continue
          const range = document.createRange()
          range.selectNodeContents(label)
          const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)))
          if (lines.size > 2) found.push(label.textContent ?? '')
        }
        return found
      })
      expect(tall).toEqual([])
    }
  })
