import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import { build } from './build.mjs'
import { CHROMIUM, CHROMIUM_ARGS } from './chromium.mjs'
import { install, ROOT } from './install.mjs'
import { serve } from './serve.mjs'

// What the page costs in Chromium: from key to paint, and to open, as ratios of a long sheet over a short one.
//   npm run bench:page                 prints the figures and whether each reaches its goal
//   npm run bench:page -- --json       the figures as one line of JSON besides
//   npm run bench:page -- --no-build   on dist as it is
//   npm run bench:page -- --only keys  one of: keys, open, build, tasks

const SHORT = 100
const LONG = 5000
const MOST = 10_000
const KEYS = 40
const VISITS = 5
const LONG_TASK = 50
const PER_SECTION = 20
const FORMAT = 'evenfield-worksheet'

install()
const asked = process.argv.slice(2)
const only = asked.includes('--only') ? asked[asked.indexOf('--only') + 1] : undefined
if (!asked.includes('--no-build') || !existsSync(join(ROOT, 'dist/index.html'))) await build({ root: ROOT })
const site = await serve({ root: join(ROOT, 'dist') })
const browser = await chromium.launch({
  executablePath: CHROMIUM,
  args: CHROMIUM_ARGS,
})

const median = (numbers) => {
  const sorted = [...numbers].sort((a, b) => a - b)
  return (sorted[(sorted.length - 1) >> 1] + sorted[sorted.length >> 1]) / 2
}

/** A sheet of results in sections, all of which follow from the one given that is typed into. */
function sheetOf(results) {
  const cells = []
  for (let i = 0; i < results; i++) {
    const section = Math.floor(i / PER_SECTION)
    if (i % PER_SECTION === 0) {
      cells.push({ kind: 'note', id: `n${section}`, role: 'heading', text: `Section ${section + 1}` })
      cells.push({
        kind: 'given',
        id: `g${section}`,
        name: `g${section}`,
        label: `Given ${section + 1}`,
        unit: 'mm',
        value: '100',
      })
    }
    cells.push({
      kind: 'result',
      id: `r${i}`,
      name: `r${i}`,
      label: `Result ${i + 1}`,
      unit: 'mm',
      formula: `g0 + g${section} * ${(i % 7) + 1}`,
    })
  }
  return { format: FORMAT, version: 2, title: `${results} results`, cells }
}

/** In the page, before its own scripts: what looks into every shadow root, and waits for a frame to be painted. */
function prepare() {
  const find = (selector, root = document) => {
    const own = root.querySelector(selector)
    if (own) return own
    for (const one of root.querySelectorAll('*')) {
      const inner = one.shadowRoot && find(selector, one.shadowRoot)
      if (inner) return inner
    }
    return null
  }
  const painted = () =>
    new Promise((settle) => {
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = () => settle(performance.now())
        port2.postMessage(undefined)
      })
    })
  const shown = new Promise((settle) => {
    const look = async () => {
      if (document.body && find('result-cell')?.shadowRoot?.querySelector('.figure')) settle(await painted())
      else requestAnimationFrame(look)
    }
    look()
  })
  globalThis.bench = { find, painted, shown, keys: [] }
  addEventListener(
    'keydown',
    async ({ timeStamp }) => {
      bench.keys.push((await painted()) - timeStamp)
    },
    { capture: true },
  )
}

/** A sheet saved in a profile of its own, with its page open on it. */
async function saved(results) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' })
  await context.addInitScript(prepare)
  const page = await context.newPage()
  await page.goto(site.url)
  const buffer = Buffer.from(JSON.stringify(sheetOf(results)))
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'sheet.json', mimeType: 'application/json', buffer })
  await page.locator('result-cell .figure').first().waitFor()
  await page.getByLabel('Given 1', { exact: true }).fill('101', { timeout: 120_000 })
  await page
    .locator('sheet-head')
    .filter({ hasText: /Saved \d\d:\d\d/ })
    .waitFor({ timeout: 60_000 })
  return { page, close: () => context.close() }
}

async function timeToOpen(page) {
  const times = []
  for (let i = 0; i < VISITS; i++) {
    await page.reload()
    times.push(await page.evaluate(() => bench.shown))
  }
  return median(times)
}

async function timePerKey(page) {
  const field = page.getByLabel('Given 1', { exact: true })
  await field.click()
  await rested(page)
  await page.evaluate(() => {
    bench.keys.length = 0
  })
  for (let i = 0; i < KEYS; i++) await page.keyboard.press(i % 2 === 0 ? '7' : 'Backspace')
  return median(await page.evaluate(() => bench.painted().then(() => bench.keys)))
}

const rested = (page) => page.evaluate(() => new Promise((settle) => requestIdleCallback(settle, { timeout: 5000 })))

const found = []
function note(name, value, goal, unit = '') {
  found.push({ name, value, goal })
  const shown = unit === ' s' ? value.toFixed(1) : unit === '' ? value.toFixed(2) : String(value)
  console.log(`${value <= goal ? 'reached' : 'MISSED '}  ${name}: ${shown}${unit} (goal: at most ${goal}${unit})`)
}

async function keysAndOpening() {
  const [short, long] = [await saved(SHORT), await saved(LONG)]
  if (!only || only === 'keys') {
    const [few, many] = [await timePerKey(short.page), await timePerKey(long.page)]
    console.log(`  from key to paint: ${few.toFixed(1)} ms with ${SHORT} results, ${many.toFixed(1)} ms with ${LONG}`)
    note(`key to paint, ${LONG} results over ${SHORT}`, many / few, 1.5)
  }
  if (!only || only === 'open') {
    const [few, many] = [await timeToOpen(short.page), await timeToOpen(long.page)]
    console.log(`  to open: ${few.toFixed(0)} ms with ${SHORT} results, ${many.toFixed(0)} ms with ${LONG}`)
    note(`opening, ${LONG} results over ${SHORT}`, many / few, 3)
  }
  await short.close()
  await long.close()
}

/** From pressing Build until a cell that was pressed is open there. */
async function opensBuild() {
  const { page, close } = await saved(MOST)
  const time = await page.evaluate(async () => {
    const start = performance.now()
    location.hash = `${location.hash}/build`
    const look = async (found) => {
      for (;;) {
        const one = found()
        if (one) return one
        await new Promise(requestAnimationFrame)
      }
    }
    const row = await look(() => bench.find('build-cell')?.shadowRoot?.querySelector('.call'))
    row.click()
    await look(() => bench.find('build-cell')?.shadowRoot?.querySelector('input'))
    return (await bench.painted()) - start
  })
  note(`Build of ${MOST} results, until a cell is open`, time / 1000, 2, ' s')
  await close()
}

/**
 * How long each task of the page's own thread takes while something is done, in milliseconds: the time the thread itself
 * works, which is the same whatever else the machine does meanwhile, and the time that passes.
 */
async function tasksDuring(page, act) {
  await browser.startTracing(page, { categories: ['disabled-by-default-devtools.timeline'] })
  await act()
  const { traceEvents } = JSON.parse(await browser.stopTracing())
  const threadOf = ({ pid, tid }) => `${pid} ${tid}`
  const own = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain')
      .map((one) => threadOf(one)),
  )
  return traceEvents
    .filter((one) => one.name === 'RunTask' && own.has(threadOf(one)))
    .map(({ tdur = 0, dur = 0 }) => ({ works: tdur / 1000, passes: dur / 1000 }))
}

/** Long tasks while one types into a flat sheet whose checks fail, with limits, a result unfolded and simulated. */
async function longTasks() {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' })
  await context.addInitScript(prepare)
  const page = await context.newPage()
  await page.goto(`${site.url}#new/flat-sheet`)
  const lens = page.getByLabel('Focal length', { exact: true })
  await lens.fill('60 ± 1')
  await page.locator('suggestion-list button').first().waitFor()
  await page
    .locator('result-cell', { hasText: 'Original to sensor' })
    .getByRole('button', { name: 'Original to sensor', exact: true })
    .click()
  await page.locator('simulated-figure').getByRole('button', { name: 'Simulate', exact: true }).click()
  await page.locator('simulated-figure').getByText(/tries/).first().waitFor()
  await lens.fill('60 ± 1')
  await lens.click()
  await rested(page)
  const keys = Array.from({ length: 24 }, (_, i) => (i % 2 === 0 ? 'Backspace' : String((i % 8) + 1)))
  const tasks = await tasksDuring(page, async () => {
    for (const key of keys) {
      await page.keyboard.press(key)
      // As fast as one types, so that suggestions and simulations begin and are overtaken.
      await page.waitForTimeout(400)
    }
    // What the last key has begun; asking the page whether it rests would be a task of its own.
    await page.waitForTimeout(1000)
  })
  if (tasks.length === 0) throw new Error('No task of the page was traced.')
  const long = (times) => times.filter((time) => time > LONG_TASK).length
  note(
    `long tasks (over ${LONG_TASK} ms) in ${keys.length} keys with suggestions, limits and simulation`,
    long(tasks.map(({ works }) => works)),
    0,
    ' tasks',
  )
  const longest = Math.max(...tasks.map(({ works }) => works))
  console.log(
    `  the longest works for ${longest.toFixed(0)} ms; by the clock ${long(tasks.map(({ passes }) => passes))} are long, with all that this machine does`,
  )
  await context.close()
}

if (!only || only === 'keys' || only === 'open') await keysAndOpening()
if (!only || only === 'build') await opensBuild()
if (!only || only === 'tasks') await longTasks()
await browser.close()
await site.close()
if (asked.includes('--json'))
  console.log(JSON.stringify(Object.fromEntries(found.map(({ name, value }) => [name, Number(value.toPrecision(4))]))))
