import { type ChildProcess, spawn } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { type Browser, chromium, type Page } from 'playwright-core'
import { CHROMIUM, CHROMIUM_ARGS } from '../../scripts/chromium.mjs'

/** A Chromium of our own on a profile that outlives it, to be killed by its process's id. */
export interface Mortal {
  readonly page: Page
  /** SIGKILL to the browser's process, then to those it started; resolves once it is gone. */
  kill(): Promise<void>
}

/** What Playwright would add. */
const OWN = ['--headless', '--disable-extensions', '--remote-debugging-port=0']

/** Ends what a browser that is gone had started: for a moment it would go on writing into the profile. */
function endGroup({ pid }: ChildProcess): void {
  try {
    if (pid) process.kill(-pid, 'SIGKILL')
  } catch {
    // None of them is left.
  }
}

async function port(profile: string, child: ChildProcess): Promise<string> {
  for (;;) {
    if (child.exitCode !== null) throw new Error('Chromium ended before it was there.')
    try {
      const [found] = readFileSync(join(profile, 'DevToolsActivePort'), 'utf8').split('\n')
      if (found) return found
    } catch {
      // Not written yet.
    }
    await pause(20)
  }
}

/** Starts Chromium on a profile, with one page of an address in it. */
export async function start(profile: string): Promise<Mortal> {
  // What a killed Chromium leaves behind would be read in place of the new one's.
  rmSync(join(profile, 'DevToolsActivePort'), { force: true })
  // The launcher replaces itself: the child's id is the browser's.
  const child = spawn(CHROMIUM, [...CHROMIUM_ARGS, ...OWN, `--user-data-dir=${profile}`, 'about:blank'], {
    stdio: 'ignore',
    // A group of its own, so that the processes it started can be ended with it.
    detached: true,
  })
  const gone = new Promise<void>((settle) => child.once('exit', () => settle()))
  let browser: Browser | undefined
  try {
    browser = await chromium.connectOverCDP(`http://127.0.0.1:${await port(profile, child)}`)
    const [context] = browser.contexts()
    const page = context?.pages()[0] ?? (await context?.newPage())
    if (!page) throw new Error('Chromium has no page.')
    return {
      page,
      async kill() {
        child.kill('SIGKILL')
        await gone
        endGroup(child)
        await browser?.close().catch(() => {})
      },
    }
  } catch (error) {
    child.kill('SIGKILL')
    endGroup(child)
    throw error
  }
}
