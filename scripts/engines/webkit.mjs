import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { encode } from 'fast-png'
import { Builder, Capabilities, Key } from 'selenium-webdriver'
import { freePort } from '../free-port.mjs'

const DRIVER = process.env.WEBKIT_DRIVER ?? '/usr/bin/WebKitWebDriver'
const XVFB = '/usr/bin/Xvfb'
const LIBRARIES = '/usr/lib'
const FOLDERS = ['webkit2gtk-4.1', 'webkit2gtk-4.0', 'webkitgtk-6.0']

/** MiniBrowser is in the folder of its processor, outside the path of programs. */
const browserOf = () =>
  process.env.MINIBROWSER ??
  (existsSync(LIBRARIES) ? readdirSync(LIBRARIES) : [])
    .flatMap((machine) => FOLDERS.map((folder) => `${LIBRARIES}/${machine}/${folder}/MiniBrowser`))
    .find((path) => existsSync(path))

const KEYS = {
  Enter: Key.ENTER,
  Tab: Key.TAB,
  Escape: Key.ESCAPE,
  ArrowDown: Key.ARROW_DOWN,
  ArrowUp: Key.ARROW_UP,
  Control: Key.CONTROL,
  Alt: Key.ALT,
  Shift: Key.SHIFT,
  End: Key.END,
  Backspace: Key.BACK_SPACE,
  Space: ' ',
}

/** A screen nobody looks at. Resolves to its name once it can be drawn on. */
function screen() {
  const folder = mkdtempSync(join(tmpdir(), 'evenfield-screen-'))
  // Without this the toolbar keeps the window wider than a phone.
  mkdirSync(join(folder, 'gtk-3.0'))
  writeFileSync(join(folder, 'gtk-3.0/gtk.css'), '* { min-width: 0; padding: 0; margin: 0; border-width: 0; }')
  const server = spawn(
    XVFB,
    ['-displayfd', '3', '-screen', '0', '1600x1500x24', '-nolisten', 'tcp', '-fbdir', folder],
    {
      stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
    },
  )
  return new Promise((settle, reject) => {
    server.once('error', reject)
    server.once('exit', (code) => reject(new Error(`Xvfb ended with ${code}.`)))
    server.stdio[3].once('data', (number) => settle({ server, folder, display: `:${String(number).trim()}` }))
  })
}

/** The page on the screen, below the toolbar, as a PNG: Xvfb writes it in the format of xwd, 32 bits a pixel, blue first. */
function shown(path, [top, width, height]) {
  const dump = readFileSync(path)
  const at = (word) => dump.readUInt32BE(word * 4)
  const [header, line, colours] = [at(0), at(12), at(19)]
  const start = header + colours * 12 + top * line
  const data = new Uint8Array(width * height * 3)
  for (let y = 0, to = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const from = start + y * line + x * 4
      data[to++] = dump[from + 2]
      data[to++] = dump[from + 1]
      data[to++] = dump[from]
    }
  return encode({ width, height, data, channels: 3, depth: 8 })
}

/** Resolves once a server answers; rejects after ten seconds. */
async function answering(url) {
  const end = Date.now() + 10_000
  for (;;) {
    const answered = await fetch(url).catch(() => undefined)
    if (answered) return
    if (Date.now() > end) throw new Error(`${url} does not answer.`)
    await new Promise((settle) => setTimeout(settle, 50))
  }
}

export const webkit = {
  name: 'WebKit',
  packages: ['webkit2gtk-driver', 'xvfb'],
  needs: () => [DRIVER, XVFB, browserOf() ?? 'MiniBrowser'],

  /** A window of WebKitGTK's MiniBrowser on a virtual screen, driven by WebDriver. */
  async open() {
    const { server, folder, display } = await screen()
    const port = await freePort()
    const driving = spawn(DRIVER, [`--port=${port}`, '--host=127.0.0.1'], {
      stdio: 'ignore',
      env: {
        ...process.env,
        DISPLAY: display,
        XDG_CONFIG_HOME: folder,
        GDK_BACKEND: 'x11',
        GSETTINGS_BACKEND: 'memory',
        NO_AT_BRIDGE: '1',
        LIBGL_ALWAYS_SOFTWARE: '1',
        WEBKIT_DISABLE_DMABUF_RENDERER: '1',
      },
    })
    await answering(`http://127.0.0.1:${port}/status`)
    const capabilities = new Capabilities({
      browserName: 'MiniBrowser',
      'webkitgtk:browserOptions': { binary: browserOf(), args: ['--automation'] },
    })
    const driver = await new Builder().usingServer(`http://127.0.0.1:${port}`).withCapabilities(capabilities).build()
    const version = (await driver.getCapabilities()).get('browserVersion')
    return {
      version,
      go: (url) => driver.get(url),
      reload: () => driver.navigate().refresh(),
      evaluate: (source, ...args) => driver.executeScript(`return (${source})(...arguments)`, ...args),
      press: (x, y) =>
        driver
          .actions()
          .move({ x: Math.round(x), y: Math.round(y) })
          .click()
          .perform(),
      type: (text) => driver.actions().sendKeys(text).perform(),
      key: (key, held) => {
        const actions = driver.actions()
        const code = KEYS[key] ?? key
        return (held ? actions.keyDown(KEYS[held]).sendKeys(code).keyUp(KEYS[held]) : actions.sendKeys(code)).perform()
      },
      resize: async (width, height) => {
        await driver.manage().window().setRect({ width, height, x: 0, y: 0 })
        const [w, h] = await driver.executeScript('return [innerWidth, innerHeight]')
        // The window has edges and a toolbar.
        if (w !== width || h !== height)
          await driver
            .manage()
            .window()
            .setRect({ width: 2 * width - w, height: 2 * height - h, x: 0, y: 0 })
      },
      screenshot: async (path) =>
        writeFileSync(
          path,
          shown(
            join(folder, 'Xvfb_screen0'),
            await driver.executeScript('return [outerHeight - innerHeight, innerWidth, innerHeight]'),
          ),
        ),
      close: async () => {
        await driver.quit().catch(() => {})
        driving.kill()
        server.kill()
        rmSync(folder, { recursive: true, force: true })
      },
    }
  },
}
