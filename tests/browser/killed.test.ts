import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import type { Locator, Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { asked, report } from '../endurance/report.ts'
import { silenceWorkers } from './harness.ts'
import { start } from './killed.ts'

/** More: `npm run endurance -- kills`. */
const KILLS = asked('KILLS', 3)

/** The longest one goes on typing after an edit is acknowledged. Saving takes 300 ms and more, so that kills fall before, in and after it. */
const LONGEST_MS = 700

const ACKNOWLEDGED = 'kept: '

const job = (page: Page) => page.getByLabel('Job', { exact: true })
const lens = (page: Page) => page.getByLabel('Focal length', { exact: true })

/** Has the page tell what was in the job's field whenever its head says “Saved”. */
const tellWhatIsKept = (page: Page): Promise<void> =>
  page.evaluate((acknowledged) => {
    const root = document
      .querySelector('evenfield-app')
      ?.shadowRoot?.querySelector('sheet-page')
      ?.shadowRoot?.querySelector('sheet-head')?.shadowRoot
    if (!root) throw new Error('There is no head to look at.')
    new MutationObserver(() => {
      const value = root.querySelector<HTMLInputElement>('#job')?.value
      if (/^Saved /.test(root.querySelector('.saved')?.textContent ?? '')) console.log(acknowledged + value)
    }).observe(root, { subtree: true, characterData: true, childList: true })
  }, ACKNOWLEDGED)

/** The number in what was typed. */
const count = (text: string | null): number => Number(/\d+/.exec(text ?? '')?.[0] ?? 0)

const shown = (page: Page): Promise<number> => page.locator('given-cell, result-cell, check-cell, drawing-cell').count()

async function settledCells(page: Page): Promise<number> {
  const drawing = page.locator('drawing-cell').first()
  await drawing.scrollIntoViewIfNeeded()
  await drawing.locator('svg').first().waitFor()
  return shown(page)
}

const cellsShown = (page: Page, cells: number): Promise<boolean> =>
  expect
    .poll(() => shown(page), { timeout: 10_000, interval: 50 })
    .toBe(cells)
    .then(
      () => true,
      () => false,
    )

test(`Chromium killed ${KILLS} times in mid-edit loses nothing that was acknowledged, and opens a whole sheet each time`, {
  timeout: 30_000 + KILLS * 20_000,
}, async () => {
  const profile = mkdtempSync(join(tmpdir(), 'evenfield-killed-'))
  const site = inject('site')
  let address = `${site}#new/flat-sheet`
  let typed = 0
  let acknowledged = 0
  const tally = { acknowledged: 0, unacknowledgedButThere: 0, unacknowledgedAndGone: 0 }
  const lost: string[] = []
  const torn: string[] = []
  /** Every state the sheet went through: the job's field is typed into, then the lens's. */
  const states = new Set<string>()
  let [inJob, inLens] = ['', '']
  const type = async (field: Locator, text: string): Promise<void> => {
    states.add(`${inJob}, ${inLens}`)
    await field.fill(text)
  }
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
      // Suggestions take longer to compute than the page lives here, and are not saved.
      await page.addInitScript(silenceWorkers)
      await page.goto(address)
      await lens(page).waitFor()
      if (kill === 0) cells = await settledCells(page)
      else {
        const found = `${await job(page).inputValue()}, ${await lens(page).inputValue()}`
        const there = count(found)
        if (there < acknowledged) lost.push(`kill ${kill}: “${found}” after “edit ${acknowledged}” was kept`)
        const isWhole = await cellsShown(page, cells)
        if (!isWhole || !states.has(found))
          torn.push(`kill ${kill}: “${found}”, ${isWhole ? 'whole' : 'cells missing'}`)
        if (typed > acknowledged) tally[there > acknowledged ? 'unacknowledgedButThere' : 'unacknowledgedAndGone']++
        typed = there
        acknowledged = there
      }
      if (kill > 0 && kill % 20 === 0) console.log(`${kill} kills: ${JSON.stringify({ ...tally, lost, torn })}`)
      if (kill === KILLS) {
        await end()
        break
      }
      await tellWhatIsKept(page)
      inJob = await job(page).inputValue()
      inLens = await lens(page).inputValue()
      states.clear()
      const before = tally.acknowledged
      let dead = false
      const typing = (async () => {
        while (!dead) {
          typed++
          inJob = `edit ${typed}`
          await type(job(page), inJob)
          inLens = `${1000 + typed}`
          await type(lens(page), inLens)
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
  report('kills', {
    kills: KILLS,
    acknowledged: tally.acknowledged,
    unacknowledged_but_there: tally.unacknowledgedButThere,
    unacknowledged_and_gone: tally.unacknowledgedAndGone,
    lost: lost.length,
    torn: torn.length,
  })
  expect({ lost, torn }).toEqual({ lost: [], torn: [] })
  expect(tally.acknowledged).toBeGreaterThanOrEqual(KILLS)
})
