import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { test, type Visit, violations } from './harness.ts'
import { pressInHead, saved } from './head.ts'

const job = (page: Page): Locator => page.getByLabel('Job', { exact: true })
const says = (page: Page, words: RegExp): Promise<void> => page.getByRole('alert').filter({ hasText: words }).waitFor()

/** The same sheet in a window of its own: a tab behind another is drawn once a second, which a press waits for. */
async function again(first: Page): Promise<Page> {
  const opened = first.context().waitForEvent('page')
  await first.evaluate((address) => void open(address, '', 'popup,noopener'), first.url())
  const second = await opened
  await second.waitForLoadState()
  return second
}

/** The same sheet in a tab before the first, with a process of its own whatever the first does. */
async function before(first: Page): Promise<Page> {
  const second = await first.context().newPage()
  await second.goto(first.url())
  return second
}

/** A sheet saved from one tab, and the same opened in a second. */
async function twice(
  open: (options: { path: string }) => Promise<Visit>,
  another: (first: Page) => Promise<Page> = again,
): Promise<[Page, Page]> {
  const { page: first } = await open({ path: '#new/flat-sheet' })
  await job(first).fill('typed in the first')
  await saved(first)
  const second = await another(first)
  await says(second, /open in another tab or window/)
  return [first, second]
}

test('a second tab says so, shows the sheet, and follows what is typed in the first', async ({ open }) => {
  const [first, second] = await twice(open)
  expect(await job(second).inputValue()).toBe('typed in the first')
  await job(first).fill('typed later')
  await expect.poll(() => job(second).inputValue()).toBe('typed later')
  expect(await violations(second)).toEqual([])
})

test('a tab that only reads takes no typing, no choice and no press', async ({ open }) => {
  const [first, second] = await twice(open)
  await job(second).click()
  await second.keyboard.type('should not be here')
  const lens = second.getByLabel('Focal length', { exact: true })
  const before = await lens.inputValue()
  await lens.press('Backspace')
  await second.keyboard.press('Control+z')
  expect(await job(second).inputValue()).toBe('typed in the first')
  expect(await lens.inputValue()).toBe(before)
  // What comes past the keyboard, as from a filler of forms, is put back as well.
  await job(second).fill('should not stay here')
  await expect.poll(() => job(second).inputValue()).toBe('typed in the first')
  await first.reload()
  await expect.poll(() => job(first).inputValue()).toBe('typed in the first')
})

test('the second takes over with all that was typed; the first is notified, reads on, and takes it back', async ({
  open,
}) => {
  const [first, second] = await twice(open)
  await job(first).fill('typed at the last moment')
  await second.getByRole('button', { name: 'Take over' }).click()
  await expect.poll(() => job(second).inputValue()).toBe('typed at the last moment')
  await says(first, /has taken this sheet over/)
  await job(second).fill('typed in the second')
  await saved(second)
  await expect.poll(() => job(first).inputValue()).toBe('typed in the second')

  await first.getByRole('button', { name: 'Take it back' }).click()
  await says(second, /has taken this sheet over/)
  await first.locator('tab-lock-bar').waitFor({ state: 'detached' })
  await job(first).fill('typed in the first again')
  await expect.poll(() => job(second).inputValue()).toBe('typed in the first again')
})

test('the second keeps a copy; each is typed into apart', async ({ open }) => {
  const [first, second] = await twice(open)
  await second.getByRole('button', { name: 'Save a copy' }).click()
  await expect.poll(() => second.getByRole('heading', { level: 1 }).textContent()).toMatch(/, copy$/)
  await job(second).fill('typed in the copy')
  await saved(second)
  expect(second.url()).not.toBe(first.url())
  await first.reload()
  await expect.poll(() => job(first).inputValue()).toBe('typed in the first')
})

test('when the first closes, the second can be typed into', async ({ open }) => {
  const [first, second] = await twice(open)
  await first.close()
  await second.locator('tab-lock-bar').waitFor({ state: 'detached' })
  await job(second).fill('typed in the second')
  await saved(second)
})

test('a tab that sleeps is taken over from; what it had not saved is among the revisions', async ({ open }) => {
  const [first, second] = await twice(open, before)
  // Stopped in the debugger its timers and messages are still, as in a tab the browser has put aside.
  const cdp = await first.context().newCDPSession(first)
  await cdp.send('Debugger.enable')
  await job(first).fill('typed before it slept')
  await cdp.send('Debugger.pause')
  const asleep = first.evaluate(() => 1).catch(() => {})
  try {
    await second.getByRole('button', { name: 'Take over' }).click()
    await second.locator('tab-lock-bar').waitFor({ state: 'detached' })
    await job(second).fill('typed in the second')
    await saved(second)
  } finally {
    await cdp.send('Debugger.resume').catch(() => {})
    await cdp.send('Debugger.disable')
  }
  await asleep
  await says(first, /changed this sheet meanwhile/)
  await pressInHead(first, 'Revisions')
  await first.locator('revisions-panel').filter({ hasText: 'Typed in another tab, not saved in the sheet' }).waitFor()
  expect(await job(second).inputValue()).toBe('typed in the second')
  await second.reload()
  await expect.poll(() => job(second).inputValue()).toBe('typed in the second')
})

test('without locks and messages the store itself refuses the second save, which is reported, and nothing is lost', async ({
  open,
}) => {
  const visit = await open()
  const { page: first, context } = visit
  await context.addInitScript(() => {
    Reflect.deleteProperty(Navigator.prototype, 'locks')
    Reflect.deleteProperty(globalThis, 'BroadcastChannel')
  })
  await first.goto(`${visit.site}#new/flat-sheet`)
  await first.reload()
  await job(first).fill('typed in the first')
  await saved(first)
  const second = await again(first)
  await expect.poll(() => job(second).inputValue()).toBe('typed in the first')
  await job(first).fill('typed later in the first')
  await saved(first)
  await job(second).fill('typed in the second')
  await says(second, /changed this sheet meanwhile/)
  await first.reload()
  await expect.poll(() => job(first).inputValue()).toBe('typed later in the first')

  // What the second had typed is lost to nobody.
  await pressInHead(first, 'Revisions')
  await first.locator('revisions-panel').filter({ hasText: 'Typed in another tab, not saved in the sheet' }).waitFor()
  await second.getByRole('button', { name: 'Take it back' }).click()
  await expect.poll(() => job(second).inputValue()).toBe('typed later in the first')
})

test('what was refused is never written over the other tab, also after a visit to the shelf and back', async ({
  open,
}) => {
  const visit = await open()
  const { page: first, context } = visit
  await context.addInitScript(() => {
    Reflect.deleteProperty(Navigator.prototype, 'locks')
    Reflect.deleteProperty(globalThis, 'BroadcastChannel')
  })
  await first.goto(`${visit.site}#new/flat-sheet`)
  await first.reload()
  await job(first).fill('typed in the first')
  await saved(first)
  const second = await again(first)
  await expect.poll(() => job(second).inputValue()).toBe('typed in the first')
  await job(first).fill('typed later in the first')
  await saved(first)
  await job(second).fill('typed in the second')
  await says(second, /changed this sheet meanwhile.*saved among the revisions/)
  await second.getByRole('link', { name: 'Evenfield' }).click()
  await second
    .locator('unsaved-bar')
    .filter({ hasText: /saved among the revisions/ })
    .waitFor()
  await second.locator('unsaved-bar').getByRole('link', { name: 'Open the sheet' }).click()
  await expect.poll(() => job(second).inputValue()).toBe('typed later in the first')
  await says(second, /saved among the revisions/)
  await second.getByRole('button', { name: 'Show revisions' }).click()
  await second.locator('revisions-panel').filter({ hasText: 'Typed in another tab, not saved in the sheet' }).waitFor()
  await job(second).fill('typed in the second again')
  await saved(second)
  const seenByFirst = async (): Promise<string> => {
    await first.reload()
    return job(first).inputValue()
  }
  await expect.poll(seenByFirst, { timeout: 20_000 }).toBe('typed in the second again')
})

test('with three tabs, Take over gives the sheet to the one that asked', async ({ open }) => {
  const [first, second] = await twice(open)
  const third = await again(first)
  await says(third, /open in another tab or window/)
  // The second has waited longer, but the third asks.
  await third.getByRole('button', { name: 'Take over' }).click()
  await third.locator('tab-lock-bar').waitFor({ state: 'detached' })
  await says(first, /has taken this sheet over/)
  await says(second, /open in another tab or window/)
  await job(third).fill('typed in the third')
  await saved(third)
  for (const page of [first, second])
    await expect.poll(() => job(page).inputValue(), { timeout: 20_000 }).toBe('typed in the third')
})
