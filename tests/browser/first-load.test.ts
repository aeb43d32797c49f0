import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { ANY_LIMIT, type FirstLoad, LIMIT, SHEET, SHEET_LIMIT } from '../../scripts/build.mjs'
import { gzipped } from '../../scripts/first-load.mjs'
import { test } from './harness.ts'

const DIST = fileURLToPath(new URL('../../dist', import.meta.url))
const LISTED: FirstLoad = JSON.parse(readFileSync(join(DIST, '.vite/first-load.json'), 'utf8'))

/** Every script the page has fetched so far, as the browser itself keeps count. */
const fetched = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .map(({ name }) => new URL(name).pathname)
      .filter((path) => path.endsWith('.js'))
      .map((path) => path.slice(path.lastIndexOf('assets/')))
      .sort(),
  )

const size = (names: readonly string[]): number => names.reduce((sum, name) => sum + gzipped(join(DIST, name)), 0)

test('the shelf, then a flat sheet filled in with its drawing, fetch what the build says and no more', async ({
  open,
}) => {
  const { page } = await open()
  await page.getByRole('link', { name: /^A flat sheet/ }).waitFor()
  expect(await fetched(page)).toEqual([...LISTED.page].sort())
  expect(size(LISTED.page)).toBeLessThanOrEqual(LIMIT)

  await page.getByRole('link', { name: /^A flat sheet/ }).click()
  await page.locator('drawing-cell svg').first().waitFor()
  const width = page.getByRole('textbox', { name: 'Original', exact: true })
  await width.fill('420 x 297')
  const needed = LISTED.sheets[SHEET] ?? []
  const unasked = async () => {
    const scripts = await fetched(page)
    return needed.filter((script) => !scripts.includes(script))
  }
  await expect.poll(unasked).toEqual([])
  // On a slow machine the page may have rested by now, and fetched its other drawings.
  const known = [...needed, ...(LISTED.later[SHEET] ?? [])]
  // A check that fails asks a worker for advice; it runs beside the page, which never waits for it.
  const asked = (await fetched(page)).filter((script) => !script.includes('advice-worker'))
  expect(asked.filter((script) => !known.includes(script))).toEqual([])
  expect(size(needed)).toBeLessThanOrEqual(SHEET_LIMIT)
})

/** Every third, and the one that asks for most; the build itself looks at all. */
const NAMES = Object.keys(LISTED.sheets)
const MOST = NAMES.toSorted((a, b) => size(LISTED.sheets[b] ?? []) - size(LISTED.sheets[a] ?? []))[0]

for (const name of NAMES.filter((one, at) => at % 3 === 0 || one === MOST))
  test(`${name} opens with every function it calls, and without editor, parser and checker`, async ({ open }) => {
    const { page } = await open({ path: `#new/${name}` })
    await page.locator('fill-face').waitFor()
    const scripts = (await fetched(page)).filter((script) => !script.includes('advice-worker'))
    const listed = [...(LISTED.sheets[name] ?? []), ...(LISTED.later[name] ?? [])]
    expect(scripts.filter((script) => !listed.includes(script))).toEqual([])
    expect(scripts.join()).not.toMatch(/editor|guide|formulas|knowing/)
    expect(size(LISTED.sheets[name] ?? [])).toBeLessThanOrEqual(ANY_LIMIT)
    expect(await page.locator('fill-face').textContent()).not.toMatch(/no function/i)
  })

test('the libraries are those for use, not for developing', () => {
  for (const name of LISTED.sheets[SHEET] ?? [])
    expect(readFileSync(join(DIST, name), 'utf8'), name).not.toMatch(/dev mode/i)
})

test('the editor and the guide come when a formula is opened', async ({ open }) => {
  const { page } = await open({ path: `#new/${SHEET}/build` })
  await page
    .getByRole('button', { name: /^Edit the formula/ })
    .first()
    .click()
  await page.locator('.cm-content').waitFor()
  expect((await fetched(page)).join()).toMatch(/editor/)
})

test('a function of a subject the sheet did not call is known once the sheet is being built', async ({ open }) => {
  const { page } = await open({ path: '#new/empty/build' })
  await page
    .getByRole('button', { name: /^A result/ })
    .first()
    .click()
  await page
    .getByLabel(/^Formula/)
    .first()
    .click()
  await page.locator('.cm-content').waitFor()
  await page.keyboard.type('delta_e_76(50, 0, 0, 53, 4, 0)')
  await page.keyboard.press('Enter')
  await expect.poll(() => page.locator('build-cell .figure').first().textContent()).toBe('5')
})

test('a formula of the user fetches the checker, and is understood', async ({ open }) => {
  const { page } = await open({ path: '#new/empty/build' })
  await page
    .getByRole('button', { name: /^A result/ })
    .first()
    .click()
  await page
    .getByLabel(/^Formula/)
    .first()
    .click()
  await page.locator('.cm-content').waitFor()
  await page.keyboard.type('2 * 3 mm')
  await page.keyboard.press('Enter')
  await expect.poll(() => page.locator('build-cell .figure').first().textContent()).toBe('6')
  expect((await fetched(page)).join()).toMatch(/formulas/)
})
