import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { SIGNS } from '../../src/cells/shared/check-sign.ts'
import { foldedAsOthers } from './folds.ts'
import { test } from './harness.ts'
import { pressInHead } from './head.ts'
import { smallTargets } from './targets.ts'

const settled = async (page: Page): Promise<void> => {
  await page.locator('drawing-cell svg').first().waitFor()
  await page.evaluate(() => document.fonts.ready)
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
    await page.getByRole('button', { name: 'Given: Focal length', exact: true }).click()
    expect(await over()).toBe(0)
  })

test('what is pressed by touch is at least 36 px high and 24 px wide', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet', width: 390, context: { hasTouch: true, isMobile: true } })
  await settled(page)
  expect(await smallTargets(page, 36)).toEqual([])
})

test('the names in a list of originals are shown whole, and no heading of it breaks within a word', async ({
  open,
}) => {
  const { page } = await open({ path: '#new/collection-run' })
  for (const width of [1440, 1024]) {
    await page.setViewportSize({ width, height: 900 })
    await page.locator('table-cell input').first().waitFor()
    await page.evaluate(() => document.fonts.ready)
    const cut = await page.locator('table-cell').evaluate(({ shadowRoot }) => {
      const table = shadowRoot as ShadowRoot
      const names = [...table.querySelectorAll<HTMLInputElement>('tbody tr > td:nth-of-type(1) input')]
      const broken = [...table.querySelectorAll('thead button')].filter((button) =>
        [...button.childNodes].some((node) =>
          [...(node instanceof Text ? node.data : '').matchAll(/\S+/g)].some(({ 0: word, index }) => {
            const range = document.createRange()
            range.setStart(node, index)
            range.setEnd(node, index + word.length)
            return new Set([...range.getClientRects()].map(({ top }) => top)).size > 1
          }),
        ),
      )
      return {
        rows: names.length,
        names: names.filter((one) => one.scrollWidth > one.clientWidth).map(({ value }) => value),
        headings: broken.map(({ textContent }) => textContent),
      }
    })
    expect(cut).toMatchObject({ names: [], headings: [] })
    expect(cut.rows).toBeGreaterThan(10)
  }
})

test('the head of a sheet stays as high as it was when many checks are in error', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await settled(page)
  const head = page.locator('sheet-head')
  const high = (): Promise<number | undefined> => head.boundingBox().then((box) => box?.height)
  const before = await high()
  await page.getByLabel('Border around the original').fill('10 mmm')
  await page.getByLabel('Focal length', { exact: true }).fill('')
  await head.getByRole('button', { name: /errors/ }).waitFor()
  await head.getByRole('button', { name: /waiting/ }).waitFor()
  expect(await high()).toBe(before)
})

test('cells selected in Build differ from the others without colour', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  await page.locator('build-cell .grip').nth(1).click()
  const fills = await page
    .locator('build-cell .grip .sign rect')
    .evaluateAll((all) => [...new Set(all.map((one) => getComputedStyle(one).fill))])
  // A box filled in hides its tick.
  expect(fills).toEqual(['none'])
})

for (const template of ['flat-sheet', 'getting-closer', 'two-lamps', 'transparencies', 'accept-colour'])
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

test('a sign on the line of sections is beside the name of its own section', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.locator('section-line .tight a:not(:last-child) .state').first().waitFor()
  await page.evaluate(() => document.fonts.ready)
  const gaps = await page.locator('section-line .tight a:not(:last-child):has(.state)').evaluateAll((all) =>
    all.map((link) => {
      const nameOf = (one: Element): DOMRect => {
        const range = document.createRange()
        range.selectNode([...one.childNodes].find((node) => node instanceof Text && node.data.trim() !== '') as Text)
        return range.getBoundingClientRect()
      }
      const sign = link.querySelector('.state .sign')?.getBoundingClientRect() as DOMRect
      const next = nameOf(link.nextElementSibling as Element)
      return { own: sign.left - nameOf(link).right, next: next.left - sign.right }
    }),
  )
  for (const { own, next } of gaps) expect(own).toBeLessThan(next)
})

test('what describes a drawing unfolds below the line that is pressed, which stays where it is', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await settled(page)
  const notes = page.locator('drawing-notes').first()
  const summary = notes.locator('summary')
  const places = async (): Promise<unknown> => [
    await summary.boundingBox(),
    await notes.getByRole('button', { name: 'Save as SVG' }).boundingBox(),
  ]
  const before = await places()
  await summary.click()
  await notes.locator('details p').waitFor()
  expect(await places()).toEqual(before)
})

test('figures stay in one line with their unit: in messages of checks, and in a table of lamps', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.getByText('More results').nth(1).click()
  await page.locator('records-table td').first().waitFor()
  await page.locator('check-cell .unbroken').first().waitFor()
  const broken = await page.locator('records-table td, check-cell .unbroken').evaluateAll((all) =>
    all
      .filter((one) => {
        const range = document.createRange()
        range.selectNodeContents(one)
        return new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size > 1
      })
      .map(({ textContent }) => textContent),
  )
  expect(broken).toEqual([])
  const hidden = await page.locator('records-table .scrolled').evaluate((one) => one.scrollWidth - one.clientWidth)
  expect(hidden).toBe(0)
  const [message] = await page.locator('check-cell .fail .unbroken').allTextContents()
  expect(message).toBe('321 ppi')
})

test('what a section is about is shown whole, also beside the count of example figures', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await settled(page)
  await page.locator('section-examples .sample').first().waitFor()
  const cut = await page
    .locator('fill-face .heading p')
    .evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth).map(({ textContent }) => textContent))
  expect(cut).toEqual([])
})

test('the signs of checks are explained, drawn as beside the checks', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.getByText('Keys and signs').click()
  for (const [word, [sign]] of [
    ['Fail', SIGNS.fail],
    ['Marginal', SIGNS.marginal],
    ['Pass', SIGNS.pass],
    ['Waiting', SIGNS.waiting],
    ['Error', SIGNS.error],
  ] as const) {
    const term = page.locator('keys-list dt').filter({ hasText: word })
    expect(await term.locator('path').first().getAttribute('d')).toBe(sign?.d)
  }
})

test('a text has a line of its own, however short it is', async ({ open }) => {
  const { page } = await open({ path: '#new/accept-colour' })
  const text = page.locator('given-cell:has(input.entry[type=text]:not([inputmode]))').first()
  const places = () =>
    text.evaluate((one) => {
      const [row, field, label] = ['.row', '.entry', '.what'].map((name) =>
        ((one.shadowRoot as ShadowRoot).querySelector(name) as HTMLElement).getBoundingClientRect(),
      ) as [DOMRect, DOMRect, DOMRect]
      return { share: field.width / row.width, below: field.top >= label.bottom - 1, height: row.height }
    })
  const long = await places()
  expect(long.below).toBe(true)
  expect(long.share).toBeGreaterThan(0.7)
  await text.locator('input').fill('T')
  expect(await places()).toEqual(long)
})

test('what is folded in Build is pressed like any other fold', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  await page.getByRole('button', { name: 'Given: Focal length', exact: true }).click()
  await page.getByText('More options').waitFor()
  expect(await foldedAsOthers(page, 'build-cell')).toBe(true)
})

test('a table of originals ends where the rules around it do', async ({ open }) => {
  const { page } = await open({ path: '#new/collection-run', width: 1440 })
  const box = page.locator('table-cell .box').first()
  await box.locator('tbody tr').first().waitFor()
  expect(await box.evaluate((one) => one.clientWidth - (one.querySelector('table') as HTMLElement).offsetWidth)).toBe(0)
  expect(await box.evaluate((one: HTMLElement) => one.offsetWidth - one.clientWidth)).toBe(0)
})

test('the frame of what is found is whole, also where it ends a section', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet', width: 390 })
  await settled(page)
  await page.keyboard.press('Control+f')
  await page.locator('find-line input').fill('lamp')
  const found = page.locator('fill-face drawing-cell[data-found]')
  await found.waitFor()
  const room = await found.evaluate((one) => {
    const { outlineWidth, outlineOffset } = getComputedStyle(one)
    const band = one.closest('.band') as HTMLElement
    const reach = Number.parseFloat(outlineWidth) + Number.parseFloat(outlineOffset)
    return band.getBoundingClientRect().bottom - one.getBoundingClientRect().bottom - reach
  })
  // What reaches beyond the box of a section is not painted.
  expect(room).toBeGreaterThanOrEqual(0)
})
