import puppeteer from 'puppeteer-core'

const BINARY = process.env.FIREFOX ?? '/usr/bin/firefox-esr'

export const firefox = {
  name: 'Firefox',
  packages: ['firefox-esr'],
  needs: () => [BINARY],

  /** A window of Firefox, driven by WebDriver BiDi. */
  async open() {
    const browser = await puppeteer.launch({
      browser: 'firefox',
      protocol: 'webDriverBiDi',
      executablePath: BINARY,
      headless: true,
      timeout: 120_000,
      extraPrefsFirefox: {
        // A profile for tests asks for nothing on the network by itself.
        'app.normandy.enabled': false,
        'app.update.enabled': false,
        'browser.safebrowsing.malware.enabled': false,
        'browser.safebrowsing.phishing.enabled': false,
        'datareporting.policy.dataSubmissionEnabled': false,
        'network.captive-portal-service.enabled': false,
        'network.connectivity-service.enabled': false,
        'services.settings.server': 'data:,',
      },
    })
    const version = (await browser.version()).replace(/^\D+/, '')
    // The tab Firefox begins with never learns that it has the focus.
    const page = await browser.newPage()
    return {
      version,
      go: (url) => page.goto(url),
      reload: () => page.reload(),
      evaluate: (source, ...args) => page.evaluate(`(${source})(...${JSON.stringify(args)})`),
      press: (x, y) => page.mouse.click(x, y),
      type: (text) => page.keyboard.type(text),
      key: async (key, held) => {
        if (held) await page.keyboard.down(held)
        await page.keyboard.press(key)
        if (held) await page.keyboard.up(held)
      },
      resize: (width, height) =>
        page.setViewport({ width, height }).catch((error) => {
          // The size is set first; the orientation, asked for along with it, is unknown to Debian's Firefox.
          if (!String(error.message).includes('setScreenOrientationOverride')) throw error
        }),
      screenshot: (path) => page.screenshot({ path }),
      pdf: () => page.pdf({ format: 'a4' }),
      close: () => browser.close(),
    }
  },
}
