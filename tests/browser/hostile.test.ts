import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { handOverPage } from '../../src/app/paper/hand-over.ts'
import { LIBRARY } from '../../src/functions/index.ts'
import { DocumentError, readDocument, Sheet } from '../../src/worksheet/index.ts'
import { asLink, soundDocuments } from '../hostile/generate.ts'
import { test } from './harness.ts'
import { pressInHead } from './head.ts'

const CASES = 200
const SEED = Number(process.env.HOSTILE_SEED ?? 42)
const DOCUMENTS = fc.sample(soundDocuments, { numRuns: CASES, seed: SEED })
const CORPUS = new URL('../hostile/corpus/', import.meta.url)

const prototypes = (page: Page): Promise<string> =>
  page.evaluate(() =>
    [Object, Array, Function, String, Promise]
      .map(({ prototype }) => Object.getOwnPropertyNames(prototype).join())
      .join(';'),
  )
const ran = (page: Page): Promise<boolean> => page.evaluate(() => 'ran' in globalThis || 'polluted' in {})

/** Goes to a link and waits until it is shown for what it is, or refused in words. */
async function arrive(page: Page, fragment: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash
  }, fragment)
  await page.locator('copy-page h1, newer-page h1, shelf-page [role="alert"]').first().waitFor()
}

async function away(page: Page): Promise<void> {
  await page.evaluate(() => {
    location.hash = ''
  })
  await page.locator('copy-page, newer-page').waitFor({ state: 'detached' })
  await page.locator('shelf-page').waitFor()
}

const opened = (document: string): Sheet[] => {
  try {
    return [new Sheet(readDocument(document), LIBRARY)]
  } catch (error) {
    if (error instanceof DocumentError) return []
    throw error
  }
}

test('hostile links are shown for what they are, and run nothing', { timeout: 300_000 }, async ({ open }) => {
  const { page } = await open()
  const before = await prototypes(page)
  const corpus = readdirSync(CORPUS).map((file) => readFileSync(new URL(file, CORPUS)))
  for (const document of [...DOCUMENTS.slice(0, CASES / 2), ...corpus]) {
    await arrive(page, asLink(document))
    await away(page)
  }
  expect(await ran(page)).toBe(false)
  expect(await prototypes(page)).toBe(before)
})

test('a sheet with script in every text is saved, filled in and built, and runs nothing', async ({ open }) => {
  const { page } = await open()
  await arrive(page, asLink(readFileSync(new URL('script-in-every-text.json', CORPUS))))
  await page.getByRole('button', { name: 'Save a copy' }).click()
  await page.locator('fill-face result-cell').first().waitFor()
  await pressInHead(page, 'Build')
  await page.locator('build-cell').first().waitFor()
  await pressInHead(page, 'Share')
  await page.locator('share-panel h2').waitFor()
  await page.evaluate(() => {
    window.print = () => {
      document.documentElement.dataset.printed = 'yes'
    }
  })
  await page.getByRole('button', { name: 'Print' }).click()
  await page.locator('html[data-printed]').waitFor()
  expect(await page.locator('body > .job-sheet').textContent()).toContain('<script>')
  expect(await ran(page)).toBe(false)
})

test('pages handed over, of hostile sheets, hold no element of theirs and ask for nothing', {
  timeout: 300_000,
}, async ({ open }) => {
  const { context } = await open()
  const page = await context.newPage()
  const asked: string[] = []
  page.on('request', (request) => asked.push(request.url()))
  page.on('dialog', (dialog) => void dialog.dismiss())
  const documents = [...DOCUMENTS.slice(CASES / 2), readFileSync(new URL('style-and-css.json', CORPUS), 'utf8')]
  const sheets = documents.flatMap(opened)
  expect(sheets.length).toBeGreaterThan(CASES / 4)
  for (const sheet of sheets) {
    await page.setContent(
      await handOverPage(sheet, { at: new Date(0), working: true, revision: sheet.worksheet.title }),
    )
    expect(await page.locator('script, img, iframe, a, link, form, object, [onload], [onerror]').count()).toBe(0)
    expect(await page.locator('style').count()).toBe(1)
    expect(await ran(page)).toBe(false)
  }
  expect(asked).toEqual([])
})
