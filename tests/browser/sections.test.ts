import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { jobNames, readJob, readParts } from '../../src/cli/part-files.ts'
import { test, violations } from './harness.ts'
import { pressInHead } from './head.ts'

const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    let at = document.activeElement
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
    return at?.textContent?.trim().replace(/\s+/g, ' ') ?? ''
  })
/** Sections out of sight are not rendered: their inner text would be empty. */
const headings = async (page: Page): Promise<string[]> =>
  (await page.locator('fill-face h2').allTextContents()).map((text) => text.trim().replace(/\s+/g, ' '))
const fold = (page: Page, name: string) => page.locator('fill-face').getByRole('button', { name, exact: true })

async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 200; i++) {
    await page.keyboard.press('Tab')
    if (name.test(await focused(page))) return
  }
  throw new Error(`No Tab leads to ${name}.`)
}

/** A sheet of the user’s cells, pasted as a link would bring it: written in Build by hand it would be a test of Build. */
async function ownSheet(page: Page): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open a file' }).click()
  const cells = [
    { kind: 'given', id: 'o', name: 'mirror_offset', label: 'Off by', unit: 'mm', value: '7' },
    { kind: 'given', id: 'f', name: 'field', label: 'Which field', entry: 'text', value: 'the long meadow' },
    { kind: 'result', id: 't', name: 'twice', label: 'Twice', formula: '2 * mirror_offset' },
  ]
  const sheet = { format: 'evenfield-worksheet', version: 2, title: 'My own', cells }
  await (await chooser).setFiles({
    name: 'own.evenfield.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(sheet)),
  })
  await page.locator('fill-face given-cell').first().waitFor()
}

test('a second template is set in by keyboard: nothing is asked twice, and it is one step of undo', async ({
  open,
}) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.locator('fill-face given-cell').first().waitFor()
  const before = await headings(page)
  await page.getByRole('button', { name: 'Add a section' }).focus()
  await page.keyboard.press('Enter')
  await expect.poll(() => focused(page)).toBe('Add a section')
  await page.keyboard.press('Tab')
  await page.keyboard.type('fixed arms')
  await expect.poll(() => page.locator('join-panel .answer').count()).toBe(1)
  await tabTo(page, /^Lamps on fixed arms/)
  await page.keyboard.press('Enter')
  await expect.poll(() => focused(page)).toBe('Add: Lamps on fixed arms')
  // What is added asks only for what the sheet has not, and says which part it replaces.
  expect(await page.locator('join-panel .summary').textContent()).toMatch(
    /^\s*It asks for “From lamp to lamp on an arm”.*“Lamps on fixed arms” replaces “Two lamps alike”\./,
  )
  expect(await violations(page)).toEqual([])
  await tabTo(page, /^Add it$/)
  await page.keyboard.press('Enter')
  await expect.poll(() => focused(page)).toBe('Lamps on arms')
  expect(await page.locator('join-panel').count()).toBe(0)
  const after = await headings(page)
  // In the place of the light the sheet had; the other sections are where they were.
  expect(after.indexOf('Lamps on arms')).toBe(before.indexOf('Light'))
  expect(after.filter((one) => before.includes(one))).toEqual(before.filter((one) => one !== 'Light'))
  // What both have is asked once.
  expect(await page.getByRole('textbox', { name: 'Original', exact: true }).count()).toBe(1)
  await page.getByRole('textbox', { name: 'Original', exact: true }).fill('600 x 450')
  await expect.poll(() => page.locator('sheet-head .saved').textContent()).toMatch(/Saved \d/)

  await page.reload()
  await expect.poll(() => headings(page)).toEqual(after)
  expect(await page.getByRole('textbox', { name: 'Original', exact: true }).inputValue()).toBe('600 x 450')
})

test('undo takes a section out again as a whole, redo puts it back', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.locator('fill-face given-cell').first().waitFor()
  const before = await headings(page)
  await page.getByRole('button', { name: 'Add a section' }).click()
  await page.locator('join-panel .answer', { hasText: 'A camera to square' }).click()
  await page.getByRole('button', { name: 'Add it' }).click()
  await expect.poll(() => headings(page).then((all) => all.length)).toBeGreaterThan(before.length)
  const after = await headings(page)
  await page.keyboard.press('Control+z')
  await expect.poll(() => headings(page)).toEqual(before)
  await page.keyboard.press('Control+y')
  await expect.poll(() => headings(page)).toEqual(after)
})

test('every section can be found and added by itself, also one that no job brings', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.locator('fill-face given-cell').first().waitFor()
  const panel = page.locator('join-panel')
  const parts = readParts()
  const jobs = jobNames().map((name) => readJob(name))
  const brought = new Set([...jobs.flatMap((job) => job?.parts ?? []), ...parts.setUps.flatMap((one) => one.parts)])
  const single = [...parts.parts.values()].filter(({ id }) => !brought.has(id)).map(({ offer }) => offer)
  expect(single.length).toBeGreaterThan(5)
  await page.getByRole('button', { name: 'Add a section' }).click()
  const shown = panel.locator('.answer b')
  await expect.poll(() => shown.allTextContents()).toEqual(expect.arrayContaining(single))
  // A section that a job brings as well is found by searching.
  await panel.getByLabel('Search for a section').fill('depth and diffraction')
  await expect.poll(() => shown.allTextContents()).toContain('Depth and diffraction')
  await panel.getByLabel('Search for a section').fill('heat')
  await panel.locator('.answer', { hasText: 'Heat on paper and slides' }).click()
  await panel.getByRole('button', { name: 'Add it' }).click()
  await expect.poll(() => headings(page)).toContain('Heat')
})

test('a quote for a sheet of one original counts pieces alike, and does not ask for sizes again', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.locator('fill-face given-cell').first().waitFor()
  const panel = page.locator('join-panel')
  await page.getByRole('button', { name: 'Add a section' }).click()
  await panel.locator('.answer', { hasText: 'A job to quote' }).click()
  await panel.getByText('instead of “Originals by lots”').waitFor()
  await panel.getByRole('button', { name: 'Add it' }).click()
  await expect.poll(() => headings(page)).toContain('Count and time')
  expect(await headings(page)).not.toContain('Lots')
  await page.getByRole('textbox', { name: 'Originals received', exact: true }).waitFor()
})

test('names that clash are asked about, and both answers do what they say', async ({ open }) => {
  const { page } = await open()
  await ownSheet(page)
  const panel = page.locator('join-panel')
  const choose = async (): Promise<void> => {
    await page.getByRole('button', { name: 'Add a section' }).click()
    await panel.locator('.answer', { hasText: 'A camera to square' }).click()
    await panel.getByRole('button', { name: 'Add it' }).waitFor()
  }
  const setIn = async (): Promise<void> => {
    await panel.getByRole('button', { name: 'Add it' }).click()
    await expect.poll(() => headings(page).then((all) => all.length)).toBeGreaterThan(2)
    expect(await page.locator('sheet-head .counts').textContent()).not.toMatch(/error/)
  }
  const offsets = page.locator('given-cell[data-cell]').getByLabel(/^(Off by|Lens off the middle of the frame)$/)

  await choose()
  // Of another kind: reported, with why. Of the same kind but not published: asked, and separate where nothing is said.
  await panel.getByText(/“Which field”: your sheet already has a cell named “field”\. They cannot be merged/).waitFor()
  const asked = panel.getByRole('group', { name: /“Off by”/ })
  const both = asked.getByLabel('Keep both: the new one is named “mirror_offset_2”')
  expect(await both.isChecked()).toBe(true)
  expect(await violations(page)).toEqual([])
  await setIn()
  expect(await offsets.count()).toBe(2)
  await page.keyboard.press('Control+z')
  await expect.poll(() => headings(page)).toEqual([])

  await choose()
  await both.focus()
  await page.keyboard.press('ArrowDown')
  await expect.poll(() => asked.getByLabel('They are the same: use yours').isChecked()).toBe(true)
  await setIn()
  expect(await offsets.count()).toBe(1)
  expect(await offsets.inputValue()).toBe('7')
  await pressInHead(page, 'Build')
  await page.locator('build-cell').filter({ hasText: 'mirror_tilt(mirror_offset, lens_height)' }).waitFor()
  await page.locator('build-cell').filter({ hasText: 'tilt_depth(allowed_tilt, field_2)' }).waitFor()
})

test('a section folds by keyboard, says the state of its checks, and stays so after a reload', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.locator('fill-face given-cell').first().waitFor()
  const lampFields = page.getByRole('textbox', { name: 'Lamps above the board', exact: true })
  await lampFields.first().waitFor()
  const shown = await lampFields.count()
  await fold(page, 'Light').focus()
  await page.keyboard.press('Enter')
  await expect.poll(() => fold(page, 'Light').getAttribute('aria-expanded')).toBe('false')
  const state = page.locator('section-summary p')
  await expect.poll(() => state.textContent()).toMatch(/^Checks: 1 marginal\.$/)
  // A step of another section still has a field of that name.
  await expect.poll(() => lampFields.count()).toBe(shown - 1)
  expect(await violations(page)).toEqual([])

  // It follows what is typed elsewhere.
  await page.getByRole('textbox', { name: 'Original', exact: true }).fill('900 x 700')
  await expect.poll(() => state.textContent()).not.toMatch(/^Checks: 1 marginal\.$/)
  await expect.poll(() => page.locator('sheet-head .saved').textContent()).toMatch(/Saved \d/)
  // Folding is no step of undo, nor does undo unfold.
  await page.keyboard.press('Control+z')
  await expect.poll(() => state.textContent()).toMatch(/^Checks: 1 marginal\.$/)
  expect(await fold(page, 'Light').getAttribute('aria-expanded')).toBe('false')

  await page.reload()
  await expect.poll(() => fold(page, 'Light').getAttribute('aria-expanded')).toBe('false')

  // The head leads into it, and so unfolds it.
  await page.locator('section-line').getByRole('link', { name: 'Light' }).click()
  await expect.poll(() => fold(page, 'Light').getAttribute('aria-expanded')).toBe('true')
  await expect.poll(() => focused(page)).toBe('Light')
})

test('a sheet turned to from another begins with its own first section', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  const current = page.locator('section-line [aria-current=location]')
  await expect.poll(() => current.textContent()).toMatch(/^Original/)
  await page.goto(new URL('#start/intake-quote', page.url()).href)
  await page.getByRole('heading', { level: 1, name: 'Intake and quote' }).waitFor()
  await expect.poll(() => current.allTextContents()).toEqual([expect.stringMatching(/^Camera and lens/)])
})

test('at the top of a sheet its first section is the current one, also where two share a heading', async ({ open }) => {
  const { page } = await open({ path: '#new/bound-volume' })
  const current = page.locator('section-line [aria-current=location]')
  await expect.poll(() => current.textContent()).toMatch(/^Volume/)
  // The other one is where it was asked for.
  await page.locator('section-line').getByRole('link', { name: 'Cradle' }).click()
  await expect.poll(() => current.textContent()).toMatch(/^Cradle/)
})

test('a section is moved as a whole in Build, by keys and by its words', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet/build' })
  const calls = page.locator('build-cell .call.heading')
  const order = async (): Promise<string[]> =>
    (await calls.allInnerTexts()).map((one) => one.replace(/^Heading:\s*/, '').trim())
  await calls.first().waitFor()
  const before = await order()
  await calls.nth(1).focus()
  await page.keyboard.press('Alt+Shift+ArrowUp')
  const moved = [before[1], before[0], ...before.slice(2)]
  await expect.poll(order).toEqual(moved)
  await expect.poll(() => focused(page)).toMatch(new RegExp(before[1] as string))
  await calls.first().click()
  await page.getByRole('button', { name: 'Move section down' }).click()
  await expect.poll(order).toEqual(before)
})

test('an empty sheet begins with a section as well', async ({ open }) => {
  const { page } = await open({ path: '#new/empty' })
  await page.getByText('This sheet is empty.').waitFor()
  await page.getByRole('button', { name: 'Add a section' }).click()
  await page.locator('join-panel .answer', { hasText: 'A camera to square' }).click()
  await page.getByRole('button', { name: 'Add it' }).click()
  await expect.poll(() => headings(page).then((all) => all.length)).toBeGreaterThan(2)
  expect(await page.locator('sheet-head .counts').textContent()).not.toMatch(/error/)
})

test('another set-up starts from the first, is one step of undo, and can be removed', async ({ open }) => {
  const { page } = await open({ path: '#new/flat-sheet' })
  await page.locator('fill-face given-cell').first().waitFor()
  const before = await headings(page)
  await page.getByRole('button', { name: 'Add a section' }).click()
  await page
    .locator('set-up-choice')
    .getByRole('button', { name: /Raking light/ })
    .click()
  await page.getByRole('heading', { name: 'Add: Raking light' }).waitFor()
  expect(await page.locator('join-panel .summary').textContent()).toMatch(/It asks for .*Height of the relief/)
  expect(await violations(page)).toEqual([])
  await page.getByRole('button', { name: 'Add it' }).click()
  await expect.poll(() => headings(page)).toContain('Raking light: Light')
  expect((await headings(page)).slice(0, before.length)).toEqual(before)
  // What belongs to the original and the kit is asked once; the rest for each set-up.
  expect(await page.getByRole('textbox', { name: 'Original', exact: true }).count()).toBe(1)

  await page.getByRole('button', { name: 'Add a section' }).click()
  await page.getByRole('button', { name: 'Remove “Raking light”' }).click()
  await page.getByRole('button', { name: 'Remove this set-up' }).click()
  await expect.poll(() => headings(page)).toEqual(before)
  await page.keyboard.press('Control+z')
  await expect.poll(() => headings(page)).toContain('Raking light: Light')
})
