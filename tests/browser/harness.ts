import axe from 'axe-core'
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { test as base, expect, inject } from 'vitest'
import { CHROMIUM, CHROMIUM_ARGS } from '../../scripts/chromium.mjs'

const launch = (): Promise<Browser> =>
  chromium.launch({ executablePath: CHROMIUM, headless: true, args: CHROMIUM_ARGS })

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

export const CLIPBOARD = ['clipboard-read', 'clipboard-write']

export interface VisitOptions {
  /** Behind the app's address: `#…` or `?…`. */
  readonly path?: string
  readonly width?: number
  readonly height?: number
  readonly dim?: boolean
  /** Where the app is, if not where all tests have it. */
  readonly site?: string
  readonly context?: BrowserContextOptions
  /** What the browser lets the page do without asking. */
  readonly permissions?: readonly string[]
  /**
   * Whether suggestions and simulations are computed. A page that has just opened computes both for as long as many a test
   * takes, so a test that looks at neither gets workers that never answer.
   */
  readonly background?: boolean
}

/** Runs in the page, before its own scripts: workers that compute beside the sheet never answer. */
export function silenceWorkers(): void {
  globalThis.Worker = new Proxy(Worker, {
    construct(target, [address, options]) {
      if (!/\b(advice|simulation)-worker/.test(String(address))) return new target(address, options)
      return Object.assign(new EventTarget(), { postMessage: () => {}, terminate: () => {} })
    },
  })
}

function watch(page: Page, site: string, profile: Profile): void {
  page.on('console', (message) => {
    if (message.type() === 'error') profile.problems.push({ kind: 'console', text: message.text() })
  })
  page.on('pageerror', (error) => profile.problems.push({ kind: 'thrown', text: String(error) }))
  page.on('request', (request) => {
    if (/^(https?|wss?):/.test(request.url()) && !request.url().startsWith(new URL(site).origin))
      profile.problems.push({ kind: 'request', text: `asked ${request.url()}` })
  })
}

/** A browser profile with one page, which holds nothing: fresh, or emptied after the visit before. */
interface Profile {
  readonly context: BrowserContext
  /** The page of every visit: a new one takes twice as long to open the app, since its process has none of the app's code. */
  readonly page: Page
  /** Where problems go: the list of the visit that is open. */
  problems: Problem[]
  /** How to take back what a test changed in the page or its context. */
  readonly undo: (() => Promise<unknown>)[]
  /** Whether a test changed something that cannot be taken back. */
  altered: boolean
  /** Which visits it serves: those that ask for the same. */
  readonly kind: string
}

const kindOf = ({ site, background, context }: VisitOptions): string => JSON.stringify([site, background, context])

async function newProfile(browser: Browser, site: string, visit: VisitOptions): Promise<Profile> {
  const context = await browser.newContext({
    reducedMotion: 'reduce',
    // With one, a second visit would come out of its cache, past what a test puts in the way.
    serviceWorkers: 'block',
    ...visit.context,
  })
  // With a single page in its window, Chromium under the debugger at times never activates a newer service worker.
  if (visit.context?.serviceWorkers === 'allow') await context.newPage()
  const page = await context.newPage()
  const profile: Profile = { context, page, problems: [], undo: [], altered: false, kind: kindOf(visit) }
  watch(page, site, profile)
  context.on('page', (page) => watch(page, site, profile))
  if (!visit.background) await context.addInitScript(silenceWorkers)
  await context.exposeBinding('evenfieldTestsBroken', (_, text: string) =>
    profile.problems.push({ kind: 'policy', text }),
  )
  await context.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const tell = (globalThis as unknown as { evenfieldTestsBroken: (text: string) => void }).evenfieldTestsBroken
      tell(`${event.effectiveDirective} ${event.blockedURI} ${event.sample} ${event.sourceFile}:${event.lineNumber}`)
    })
  })
  takeBackChanges(profile)
  return profile
}

/** Has the profile remember what a test changes in the page or its context, so that the next test finds neither changed. */
function takeBackChanges(profile: Profile): void {
  for (const target of [profile.page, profile.context]) {
    const after =
      <Arguments extends unknown[], Given>(
        call: (...values: Arguments) => Promise<Given>,
        undo: (given: Given) => Promise<unknown>,
      ) =>
      async (...values: Arguments): Promise<Given> => {
        const given = await call(...values)
        profile.undo.push(() => undo(given))
        return given
      }
    target.addInitScript = after(target.addInitScript.bind(target), (script) => script.dispose())
    target.route = after(target.route.bind(target), () => target.unrouteAll({ behavior: 'ignoreErrors' }))
  }
  const { context } = profile
  const newSession = context.newCDPSession.bind(context)
  context.newCDPSession = async (page) => {
    const session = await newSession(page)
    // What a session emulates ends with it.
    profile.undo.push(() => session.detach().catch(() => {}))
    return session
  }
  for (const name of ['setOffline', 'exposeBinding', 'exposeFunction', 'addCookies', 'setExtraHTTPHeaders'] as const) {
    const change = context[name].bind(context) as (...values: unknown[]) => unknown
    Object.assign(context, {
      [name]: (...values: unknown[]) => {
        profile.altered = true
        return change(...values)
      },
    })
  }
  for (const target of [profile.page, context]) {
    const { clock } = target
    Object.defineProperty(target, 'clock', {
      get: () => {
        profile.altered = true
        return clock
      },
    })
  }
}

/** Profiles used again and again: a new window takes as long as a short test. */
const idle: Profile[] = []

async function giveBack(profile: Profile, site: string): Promise<void> {
  const { context, page } = profile
  if (profile.altered || page.isClosed()) return context.close()
  // What leaving the app brings about belongs to no visit.
  profile.problems = []
  for (const other of context.pages()) if (other !== page) await other.close()
  for (const undo of profile.undo.splice(0)) await undo()
  // A document of the same origin, so that the process stays, in which no script runs.
  await page.goto(`${site}icon-192.png`)
  await page.mouse.move(0, 0)
  const session = await context.newCDPSession(page)
  await session.send('Storage.clearDataForOrigin', { origin: new URL(site).origin, storageTypes: 'all' })
  for (const undo of profile.undo.splice(0)) await undo()
  await page.evaluate(() => sessionStorage.clear())
  await context.clearPermissions()
  profile.problems = []
  idle.push(profile)
}

const BUSY = ['evenfield-app', 'fill-face', 'build-face'].flatMap((name) => [
  `${name}[aria-busy]`,
  `${name}:not(:defined)`,
])

/** Waits until the page is drawn whole: a face draws what is seen first, and the rest in tasks that follow. */
export const whole = (page: Page): Promise<void> => page.locator(BUSY.join()).first().waitFor({ state: 'detached' })

/** Opens the app in an empty profile. */
async function visit(browser: Browser, options: VisitOptions): Promise<Visit & { close: () => Promise<void> }> {
  const { width = 1440, height = 900, dim = false, site = inject('site') } = options
  const kind = kindOf(options)
  const reusable = idle.findLastIndex((one) => one.kind === kind)
  const [reused] = reusable < 0 ? [] : idle.splice(reusable, 1)
  const profile = reused ?? (await newProfile(browser, site, options))
  const { page } = profile
  if (options.site) profile.altered = true
  if (options.permissions) await profile.context.grantPermissions([...options.permissions])
  await page.setViewportSize({ width, height })
  await page.emulateMedia({ colorScheme: dim ? 'dark' : 'light', media: null })
  await page.goto(site + (options.path ?? ''))
  await whole(page)
  return {
    page,
    context: profile.context,
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
function assertClean({ problems, provoked }: Visit): void {
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
