import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import { CHROMIUM, CHROMIUM_ARGS } from './chromium.mjs'
import { ROOT } from './install.mjs'

// Draws the icons in public/ from src/app/icon.svg: node scripts/icons.mjs, after a change of that.

/** Each icon's size, and how much of it the sign fills: systems cut a maskable one to a circle of 80 %. */
const ICONS = [
  { name: 'icon-180.png', size: 180, fills: 0.72 },
  { name: 'icon-192.png', size: 192, fills: 1 },
  { name: 'icon-512.png', size: 512, fills: 1 },
  { name: 'icon-maskable-512.png', size: 512, fills: 0.52 },
]

const sign = readFileSync(join(ROOT, 'src/app/icon.svg')).toString('base64')
const browser = await chromium.launch({
  executablePath: CHROMIUM,
  args: CHROMIUM_ARGS,
})
for (const { name, size, fills } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } })
  const margin = (size * (1 - fills)) / 2
  await page.setContent(
    `<body style="margin:0;background:${fills < 1 ? '#c4c4c4' : 'transparent'}"><img style="display:block;margin:${margin}px;width:${size * fills}px" src="data:image/svg+xml;base64,${sign}">`,
  )
  await page.locator('img').evaluate((image) => image.decode())
  await page.screenshot({ path: join(ROOT, 'public', name), omitBackground: fills === 1 })
  await page.close()
}
await browser.close()
