import axe from 'axe-core'
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { test as base, expect, inject } from 'vitest'

const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium'

const launch = (): Promise<Browser> =>
  chromium.launch({
    executablePath: CHROMIUM,
    headless: true,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  })

/** Something the page should not have done: an error on the console, one thrown, or the policy broken. */
export interface Problem {
  readonly kind: 'console' | 'thrown' | 'policy' | 'request'
  readonly text: string
}

/** An empty profile with one page of the built app open in it. */
export interface Visit {
  readonly page: Page
  readonly context: BrowserContext
  /** The app's own address, without query or fragment. */
  readonly site: string
  /** What went wrong so far. The test fails at its end if there is any it did not provoke. */
  readonly problems: Problem[]
  /** What the test itself brings about, and so allows. */
  readonly provoked: RegExp[]
}

export interface VisitOptions {
  /** Behind the app's address: `#…` or `?…`. */
  readonly path?: string
  readonly width?: number
  readonly height?: number
  readonly dim?: boolean
  /** Where the app is, if not where all tests have it. */
  readonly site?: string
  readonly context?: BrowserContextOptions
  /**
   * Whether suggestions and simulations are computed. A page that has just opened computes both for as long as many a test
   * takes, so a test that looks at neither gets workers that never answer.
   */
  readonly background?: boolean
}

/** Runs in the page, before its own scripts: workers that compute beside the sheet never answer. */
function silenceWorkers(): void {
  globalThis.Worker = new Proxy(Worker, {
    construct(target, [address, options]) {
      if (!/\b(advice|simulation)-worker/.test(String(address))) return new target(address, options)
      return Object.assign(new EventTarget(), { postMessage: () => {}, terminate: () => {} })
    },
  })
}

function watch(page: Page, site: string, problems: Problem[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error') problems.push({ kind: 'console', text: message.text() })
  })
  page.on('pageerror', (error) => problems.push({ kind: 'thrown', text: String(error) }))
  page.on('request', (request) => {
    if (/^(https?|wss?):/.test(request.url()) && !request.url().startsWith(new URL(site).origin))
      problems.push({ kind: 'request', text: `asked ${request.url()}` })
  })
}

/** A browser profile that holds nothing: fresh, or emptied after the visit before. */
interface Profile {
  readonly context: BrowserContext
  /** A page that keeps the window open from visit to visit. */
  readonly blank: Page
  /** Where problems go: the list of the visit that is open. */
  problems: Problem[]
  /** A test that takes hold of the context may change it for good. */
  altered: boolean
  readonly background: boolean
}

async function newProfile(
  browser: Browser,
  site: string,
  background: boolean,
  options: BrowserContextOptions,
): Promise<Profile> {
  const context = await browser.newContext({
    reducedMotion: 'reduce',
    // With one, a second visit would come out of its cache, past what a test puts in the way.
    serviceWorkers: 'block',
    ...options,
  })
  const blank = await context.newPage()
  const profile: Profile = { context, blank, problems: [], altered: false, background }
  if (!background) await context.addInitScript(silenceWorkers)
  await context.exposeBinding('evenfieldTestsBroken', (_, text: string) =>
    profile.problems.push({ kind: 'policy', text }),
  )
  await context.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const tell = (globalThis as unknown as { evenfieldTestsBroken: (text: string) => void }).evenfieldTestsBroken
      tell(`${event.effectiveDirective} ${event.blockedURI} ${event.sample} ${event.sourceFile}:${event.lineNumber}`)
    })
  })
  context.on('page', (page) => watch(page, site, profile.problems))
  return profile
}

/** Profiles for visits that ask for nothing special, used again and again: a new window takes as long as a short test. */
const idle: Profile[] = []

async function giveBack(profile: Profile, site: string): Promise<void> {
  const { context, blank, altered } = profile
  if (altered) return context.close()
  for (const page of context.pages()) if (page !== blank) await page.close()
  const session = await context.newCDPSession(blank)
  await session.send('Storage.clearDataForOrigin', { origin: new URL(site).origin, storageTypes: 'all' })
  await session.detach()
  profile.problems = []
  idle.push(profile)
}

/** Opens the app in an empty profile. */
async function visit(browser: Browser, options: VisitOptions): Promise<Visit & { close: () => Promise<void> }> {
  const { width = 1440, height = 900, dim = false, site = inject('site'), background = false } = options
  const viewport = { width, height }
  const reusable = options.context || options.site ? -1 : idle.findLastIndex((one) => one.background === background)
  const [reused] = reusable < 0 ? [] : idle.splice(reusable, 1)
  const profile = reused ?? (await newProfile(browser, site, background, { viewport, ...options.context }))
  if (options.context || options.site) profile.altered = true
  const page = await profile.context.newPage()
  if (!options.context) await page.setViewportSize(viewport)
  await page.emulateMedia({ colorScheme: dim ? 'dark' : 'light' })
  await page.goto(site + (options.path ?? ''))
  await page.locator('evenfield-app').waitFor({ state: 'attached' })
  return {
    page,
    get context() {
      profile.altered = true
      return profile.context
    },
    site,
    problems: profile.problems,
    provoked: [],
    close: async () => {
      // Reports cross from the page to here; those on their way count.
      for (const one of profile.context.pages()) await one.evaluate(() => new Promise((settle) => setTimeout(settle)))
      await giveBack(profile, site)
    },
  }
}

/** A test with `browser`, one for all files, and `open`, which opens the app in an empty profile and at the end asserts that nothing went wrong. */
export const test = base.extend<{ open: (options?: VisitOptions) => Promise<Visit>; browser: Browser }>({
  browser: [
    // biome-ignore lint/correctness/noEmptyPattern: vitest reads what a fixture needs from its pattern.
    async ({}, use) => {
      const browser = await launch()
      await use(browser)
      idle.length = 0
      await browser.close()
    },
    { scope: 'worker' },
  ],
  open: async ({ browser }, use) => {
    const visits: (Visit & { close: () => Promise<void> })[] = []
    await use(async (options = {}) => {
      const opened = await visit(browser, options)
      visits.push(opened)
      return opened
    })
    for (const opened of visits) await opened.close()
    for (const opened of visits) assertClean(opened)
  },
})

/** Fails if the page wrote an error to the console, threw one, broke the policy or asked another origin for anything. */
export function assertClean({ problems, provoked }: Visit): void {
  expect(problems.map(written).filter((text) => !provoked.some((pattern) => pattern.test(text)))).toEqual([])
}

const written = ({ kind, text }: Problem): string => `${kind}: ${text}`

/** Waits for a problem the test brings about (`policy: script-src…`), and allows it and others like it. */
export async function provoked(visit: Visit, pattern: RegExp): Promise<void> {
  await expect.poll(() => visit.problems.map(written).some((text) => pattern.test(text))).toBe(true)
  visit.provoked.push(pattern)
}

export interface Violation {
  readonly id: string
  readonly impact: string
  readonly help: string
  readonly where: readonly string[]
}

/** What axe finds on the page as it is, by all its rules or these: the serious and critical unless asked otherwise. */
export async function violations(
  page: Page,
  impacts = ['serious', 'critical'],
  rules?: readonly string[],
): Promise<Violation[]> {
  // Playwright evaluates through the debugger, past the page's policy, which stays in force for the page itself.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source)
  const found = await page.evaluate(
    (rules) =>
      // What passes need not be described, which takes as long again.
      (globalThis as unknown as { axe: typeof axe }).axe.run(document, {
        resultTypes: ['violations'],
        ...(rules ? { runOnly: [...rules] } : {}),
      }),
    rules,
  )
  return found.violations
    .filter(({ impact }) => impacts.includes(impact ?? ''))
    .map(({ id, impact, help, nodes }) => ({
      id,
      impact: impact ?? '',
      help,
      where: nodes.map(({ target }) => target.flat().join(' ')),
    }))
}
