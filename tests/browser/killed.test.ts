import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import type { Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { start } from './killed.ts'

/** `KILLS=100 npm test -- tests/browser/killed` for the full count. */
const KILLS = Number(process.env.KILLS ?? 20)

/** The longest one goes on typing after an edit is acknowledged. Keeping takes 300 ms and more, so that kills fall before, in and after it. */
const LONGEST_MS = 700

const ACKNOWLEDGED = 'kept: '

const job = (page: Page) => page.getByLabel('Job', { exact: true })
const lens = (page: Page) => page.getByLabel('Lens', { exact: true })

/** Has the page tell what stood in the job's field whenever its head says «Kept». */
const tellWhatIsKept = (page: Page): Promise<void> =>
  page.evaluate((acknowledged) => {
    const root = document
      .querySelector('evenfield-app')
      ?.shadowRoot?.querySelector('sheet-page')
      ?.shadowRoot?.querySelector('sheet-head')?.shadowRoot
    if (!root) throw new Error('There is no head to look at.')
    new MutationObserver(() => {
      const value = root.querySelector<HTMLInputElement>('#job')?.value
      if (/^Kept /.test(root.querySelector('.kept')?.textContent ?? '')) console.log(acknowledged + value)
    }).observe(root, { subtree: true, characterData: true, childList: true })
  }, ACKNOWLEDGED)

/** The number in what was typed. */
const count = (text: string | null): number => Number(/\d+/.exec(text ?? '')?.[0] ?? 0)

test(`Chromium killed ${KILLS} times in mid-edit loses nothing that was acknowledged, and opens a whole sheet each time`, {
  timeout: 30_000 + KILLS * 20_000,
}, async () => {
  const profile = mkdtempSync(join(tmpdir(), 'evenfield-killed-'))
  const site = inject('site')
  let address = `${site}#new/flat-sheet`
  let typed = 0
  let acknowledged = 0
  const tally = { lost: 0, torn: 0, acknowledged: 0, unacknowledgedButThere: 0, unacknowledgedAndGone: 0 }
  let cells = 0
  try {
    for (let kill = 0; kill <= KILLS; kill++) {
      const { page, kill: end } = await start(profile)
      page.on('console', (message) => {
        const text = message.text()
        if (!text.startsWith(ACKNOWLEDGED)) return
        acknowledged = Math.max(acknowledged, count(text))
        tally.acknowledged++
      })
      await page.goto(address)
      await lens(page).waitFor()
      const found = await page.evaluate(() => {
        const deep = (root: ParentNode): number =>
          [...root.querySelectorAll('*')].reduce(
            (sum, one) =>
              sum +
              (/^(given|result|check|drawing)-cell$/.test(one.localName) ? 1 : 0) +
              (one.shadowRoot ? deep(one.shadowRoot) : 0),
            0,
          )
        return deep(document)
      })
      if (kill === 0) cells = found
      else {
        const there = count(await job(page).inputValue())
        const pair = count(await lens(page).inputValue())
        if (there < acknowledged) tally.lost++
        // The lens is typed after the job: a whole sheet has both as they stood at one time.
        if (found !== cells || (pair !== there + 1000 && pair !== there + 999)) tally.torn++
        if (typed > acknowledged) tally[there > acknowledged ? 'unacknowledgedButThere' : 'unacknowledgedAndGone']++
        typed = there
        acknowledged = there
      }
      if (kill === KILLS) {
        await end()
        break
      }
      await tellWhatIsKept(page)
      const before = tally.acknowledged
      let dead = false
      const typing = (async () => {
        while (!dead) {
          typed++
          await job(page).fill(`edit ${typed}`)
          await lens(page).fill(`${1000 + typed}`)
          await pause(Math.random() < 0.5 ? 0 : 350)
        }
      })().catch(() => {})
      await expect.poll(() => tally.acknowledged, { timeout: 15_000, interval: 20 }).toBeGreaterThan(before)
      address = page.url()
      await pause(Math.random() * LONGEST_MS)
      dead = true
      await end()
      await typing
    }
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 })
  }
  console.log(`Killed ${KILLS} times: ${JSON.stringify(tally)}`)
  expect(tally).toMatchObject({ lost: 0, torn: 0 })
  expect(tally.acknowledged).toBeGreaterThanOrEqual(KILLS)
})
