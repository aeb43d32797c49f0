import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { test, violations } from './harness.ts'
import { given, pressInHead, saved } from './head.ts'
import { spoil } from './spoil.ts'
import { smallTargets } from './targets.ts'

/** Turns to a place of the app. */
const go = (page: Page, hash: string): Promise<void> =>
  page.evaluate((to) => {
    location.hash = to
  }, hash)

const shelf = async (page: Page): Promise<void> => {
  await go(page, '')
  await page.getByRole('heading', { name: 'What are you photographing?' }).waitFor()
}

/** A sheet of the version after this one. */
const NEWER = {
  format: 'evenfield-worksheet',
  version: 3,
  title: 'From tomorrow',
  cells: [
    { kind: 'note', id: 'h', role: 'heading', text: 'Frame' },
    { kind: 'given', id: 'a', name: 'a', label: 'Width', unit: 'mm', value: '210' },
    { kind: 'result', id: 'b', name: 'b', label: 'Twice', unit: 'mm', formula: '2 * a' },
    { kind: 'hologram', id: 'x', depth: 3 },
  ],
}

const ready = (page: Page, selector: string): Promise<void> => page.locator(selector).first().waitFor()

/** Every face, each reached from the one before. */
const FACES: readonly (readonly [face: string, turn: (page: Page) => Promise<void>])[] = [
  ['shelf', (page) => page.getByRole('heading', { name: 'What are you photographing?' }).waitFor()],
  [
    'kit',
    async (page) => {
      await go(page, 'kit')
      await ready(page, 'kit-page h1')
    },
  ],
  [
    'answers',
    async (page) => {
      await go(page, 'answers')
      await ready(page, 'answers-page h1')
    },
  ],
  [
    'fill in, with an error and a figure that is missing',
    async (page) => {
      await go(page, 'new/flat-sheet')
      await ready(page, 'drawing-cell svg')
      await page.getByLabel('Border around the original').fill('10 mmm')
      await page.getByLabel('Focal length', { exact: true }).fill('')
      for (const folded of await page.locator('fill-face .fold-line > summary').all()) await folded.click()
    },
  ],
  [
    'share and revisions',
    async (page) => {
      await pressInHead(page, 'Share')
      await page.getByLabel('Link to a copy of this sheet').waitFor()
      await pressInHead(page, 'Revisions')
      await ready(page, 'revisions-panel h2')
    },
  ],
  [
    'build, with a formula open',
    async (page) => {
      await pressInHead(page, 'Share')
      await pressInHead(page, 'Revisions')
      await pressInHead(page, 'Build')
      await page
        .locator('build-cell')
        .filter({ hasText: 'Original to sensor' })
        .first()
        .locator('button.formula-text')
        .click()
      await ready(page, '.cm-content')
    },
  ],
  [
    'functions',
    async (page) => {
      await pressInHead(page, 'Functions')
      await ready(page, 'function-guide h2')
    },
  ],
  [
    'check before you shoot',
    async (page) => {
      await pressInHead(page, 'At the stand')
      await ready(page, 'check-first h2')
    },
  ],
  [
    'a step',
    async (page) => {
      await page
        .getByRole('radio', { name: 'One step' })
        .or(page.getByRole('button', { name: 'One step' }))
        .click()
      await ready(page, 'stand-step')
    },
  ],
  [
    'all figures',
    async (page) => {
      await page
        .getByRole('radio', { name: 'All figures' })
        .or(page.getByRole('button', { name: 'All figures' }))
        .click()
      await ready(page, 'stand-overview .row')
    },
  ],
  [
    'table and run',
    async (page) => {
      await shelf(page)
      await go(page, 'new/collection-run')
      await ready(page, 'table-cell .f')
      await page.locator('run-cell').scrollIntoViewIfNeeded()
      await ready(page, 'run-cell .setup')
    },
  ],
  [
    'received as a link',
    async (page) => {
      await shelf(page)
      await go(page, 'new/flat-sheet')
      await pressInHead(page, 'Share')
      const link = page.getByLabel('Link to a copy of this sheet')
      await expect.poll(() => link.inputValue()).toContain('#s=')
      await go(page, new URL(await link.inputValue()).hash.slice(1))
      await ready(page, 'copy-page h1')
    },
  ],
  [
    'of a newer version',
    async (page) => {
      await shelf(page)
      const buffer = Buffer.from(JSON.stringify(NEWER))
      await page.locator('#file').setInputFiles({ name: 'newer.json', mimeType: 'application/json', buffer })
      await ready(page, 'newer-page result-cell .figure')
    },
  ],
  [
    'not to be read',
    async (page) => {
      await shelf(page)
      await go(page, 'new/flat-sheet')
      await given(page, 'Job').fill('as agreed')
      await saved(page)
      await shelf(page)
      await ready(page, 'shelf-page [data-open]')
      await spoil(page)
      await page.locator('shelf-page [data-open]').first().click()
      await ready(page, 'unreadable-page h1')
    },
  ],
]

test('on every face axe finds nothing, light or dim, and whatever is pressed is at least 24 px wide and high', async ({
  open,
}) => {
  const { page } = await open()
  const found: Record<string, unknown> = {}
  for (const [face, turn] of FACES) {
    await turn(page)
    for (const scheme of ['light', 'dim']) {
      await page.evaluate((scheme) => {
        document.documentElement.dataset.face = scheme
      }, scheme)
      // In the other scheme only the colours differ.
      const wrong = await violations(
        page,
        ['minor', 'moderate', 'serious', 'critical'],
        scheme === 'dim' ? ['color-contrast'] : undefined,
      )
      if (wrong.length > 0) found[`${face}, ${scheme}`] = wrong
    }
    const small = await smallTargets(page, 24)
    if (small.length > 0) found[`${face}, targets`] = small
  }
  expect(found).toEqual({})
}, 240_000)
