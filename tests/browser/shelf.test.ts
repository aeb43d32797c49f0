import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { check, given } from '../worksheet/make.ts'
import { test, violations } from './harness.ts'
import { openSheet } from './open-sheet.ts'

const search = (page: Page) => page.getByRole('searchbox', { name: 'Or search in your own words' })
const answers = (page: Page): Promise<string[]> => page.locator('shelf-page .answers .answer b').allInnerTexts()

test('asks what is photographed, by button or search, and lists the jobs in the order of the work', async ({
  open,
}) => {
  const { page } = await open()
  await page.getByRole('heading', { name: 'What are you photographing?' }).waitFor()
  const all = await answers(page)
  expect(all.length).toBeGreaterThanOrEqual(20)
  expect(await page.locator('shelf-page h2').allInnerTexts()).toEqual([
    'Receive and quote',
    'Frame',
    'Light',
    'Square and sharp',
    'Expose and accept',
    'Run and deliver',
  ])

  const book = page.getByRole('button', { name: 'A bound volume' })
  await book.press('Enter')
  await expect.poll(() => answers(page)).toContain('A bound volume')
  expect((await answers(page)).length).toBeLessThan(all.length)
  expect(await book.getAttribute('aria-pressed')).toBe('true')
  expect(await page.locator('shelf-page [role="status"]').last().textContent()).toMatch(/jobs? found/)
  await book.press('Enter')
  await expect.poll(() => answers(page)).toEqual(all)

  await search(page).fill('glare')
  await expect.poll(() => answers(page)).toContain('Glossy, varnished or under glass')
  await search(page).fill('slides')
  await expect.poll(() => answers(page)).toEqual(['Slides and negatives'])
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await page.locator('fill-face given-cell').first().waitFor()
  expect(page.url()).toMatch(/#new\/transparencies$/)
})

test('a job is started for the user’s own figures, or its example is seen', async ({ open }) => {
  const { page } = await open()
  await page.getByRole('link', { name: 'Start with your own figures: A flat sheet' }).click()
  const lens = page.getByLabel('Focal length', { exact: true })
  await lens.waitFor()
  expect(page.url()).toMatch(/#start\/flat-sheet$/)
  expect(await lens.inputValue()).toBe('')
  expect(await page.getByLabel('Border around the original').inputValue()).toBe('10 mm')
  expect(await page.locator('example-bar p').count()).toBe(0)
  await page.getByRole('link', { name: 'Evenfield' }).click()
  await page.getByRole('link', { name: 'See the example: A flat sheet' }).click()
  await expect.poll(() => page.getByLabel('Focal length', { exact: true }).inputValue()).toBe('60')
})

test('a search without a match says so, and offers an empty sheet', async ({ open }) => {
  const { page } = await open()
  await search(page).fill('xylophone')
  await page.getByText('No job matches “xylophone”.').waitFor()
  expect(await answers(page)).toEqual([])
  await search(page).fill('an old worm-eaten book')
  await page.getByText('No job matches all of “an old worm-eaten book”.').waitFor()
  expect(await answers(page)).toContain('A bound volume')
  await search(page).fill('xylophone')
  await page.getByRole('link', { name: 'an empty sheet', exact: true }).click()
  await page.locator('build-face .first').waitFor()
})

test('every answer has its figure, drawn without a script, and the same in words', async ({ open }) => {
  const { page } = await open()
  const scripts: string[] = []
  page.on('request', (request) => {
    if (request.resourceType() === 'script') scripts.push(request.url())
  })
  const images = page.locator('shelf-page .figure img')
  const count = (await answers(page)).length
  await expect.poll(() => images.count()).toBe(count)
  for (const image of await images.all()) {
    await image.scrollIntoViewIfNeeded()
    await expect.poll(() => image.evaluate((one: HTMLImageElement) => one.complete && one.naturalWidth)).toBeTruthy()
    // Beside its words it says nothing more to those who do not see it.
    expect(await image.getAttribute('alt')).toBe('')
  }
  expect(await page.locator('shelf-page .example').count()).toBe(count)
  expect(scripts).toEqual([])
})

for (const dim of [false, true])
  test(`on a phone nothing overflows and axe finds nothing, ${dim ? 'dim' : 'light'}`, async ({ open }) => {
    const { page } = await open({ width: 390, height: 844, dim })
    await search(page).fill('too big')
    await expect.poll(() => answers(page)).toContain('Too large for one frame')
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    expect(await violations(page)).toEqual([])
    const filter = await page
      .locator('.figure img')
      .first()
      .evaluate((one) => getComputedStyle(one).filter)
    expect(filter).toBe(dim ? 'invert(0.8)' : 'invert(0)')
  })

test('saved sheets lead with the job and how its checks are; they are found, sorted and archived', async ({ open }) => {
  const { page } = await open()
  const rows = page.locator('sheet-list [data-open]')
  for (const [job, size] of [
    ['Box 10', '420 x 297'],
    ['Box 9', '1300 x 900'],
  ] as const) {
    await page.goto(new URL('#start/flat-sheet', page.url()).href)
    await page.getByRole('textbox', { name: 'Job', exact: true }).fill(job)
    await page.getByRole('textbox', { name: 'Original', exact: true }).fill(size)
    await expect.poll(() => page.locator('sheet-head .saved').textContent()).toMatch(/Saved \d/)
    await page.getByRole('link', { name: 'Evenfield' }).click()
    await rows.first().waitFor()
  }
  await expect.poll(() => rows.count()).toBe(2)
  await expect
    .poll(() => rows.first().textContent())
    .toMatch(/Box 9\s*A flat sheet on a copy stand\s*1300 x 900 mm\s*Checks: .*waiting/)
  await search(page).fill('420')
  await expect.poll(() => rows.count()).toBe(1)
  await search(page).fill('')
  await expect.poll(() => rows.count()).toBe(2)
  expect(await violations(page)).toEqual([])

  await page.getByRole('button', { name: 'Archive Box 9, A flat sheet on a copy stand' }).click()
  await page.getByText('Archive (1)').waitFor()
  expect(await rows.first().textContent()).toMatch(/Box 10/)
  await page.getByText('Archive (1)').click()
  await page.getByRole('button', { name: /^Move out of the archive Box 9/ }).click()
  await expect.poll(() => page.getByText(/^Archive \(/).count()).toBe(0)
})

test('a sheet opened from a file says how its checks are, before anything in it is edited', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, [given('a', '5', { unit: 'mm' }), check('wide', 'a > 4 mm'), check('narrow', 'a < 3 mm')])
  await page.getByRole('link', { name: 'Evenfield' }).click()
  await expect
    .poll(async () => {
      // The list is read when the page is shown.
      await page.reload()
      return page.locator('sheet-list [data-open]').first().textContent()
    })
    .toMatch(/Checks: 1 fail.*1 pass/)
})
