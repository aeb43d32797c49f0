import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { focused } from './focus.ts'
import { CLIPBOARD, test } from './harness.ts'
import { saved } from './head.ts'

/** A page driven by keys alone, each of them counted: a character typed is one, a combination is one. */
class Keyboard {
  count = 0

  constructor(private readonly page: Page) {}

  async press(key: string, times = 1): Promise<void> {
    for (let i = 0; i < times; i++) {
      this.count++
      await this.page.keyboard.press(key)
    }
  }

  async type(text: string): Promise<void> {
    this.count += [...text].length
    await this.page.keyboard.type(text)
  }

  /** Presses a key until what has the focus is called so. */
  async to(name: RegExp, key = 'Tab'): Promise<void> {
    for (let i = 0; i < 40; i++) {
      await this.press(key)
      if (name.test(await focused(this.page))) return
    }
    throw new Error(`${key} does not lead to ${name}.`)
  }

  /** Types the beginning of a name, and takes the whole of it from the list. */
  async complete(text: string, whole: string): Promise<void> {
    await this.type(text)
    const chosen = this.page.locator('.cm-tooltip-autocomplete [aria-selected=true]')
    await chosen.filter({ hasText: whole }).waitFor()
    await this.press('Enter')
  }

  /** Types the rest of a line and adds its cell. */
  async line(text = ''): Promise<void> {
    const rows = this.page.locator('build-cell')
    const before = await rows.count()
    await this.type(text)
    await this.press('Enter')
    await expect.poll(() => rows.count()).toBe(before + 1)
  }
}

const row = (page: Page, name: string): Locator =>
  page.locator('build-cell').filter({ has: page.getByRole('button', { name: new RegExp(`^\\w+: ${name}$`) }) })
const figure = (page: Page, name: string): Promise<string> =>
  row(page, name)
    .locator('.figure')
    .textContent()
    .then((text) => (text ?? '').replace(/[\s\u202f]/g, ''))

/** The thin lens: 1/u + 1/v = 1/f with m = v/u, and what follows from it; lengths in mm, in the textbooks’ symbols. */
const sides = { sensor: [53.4, 40], original: [610, 864], border: 10, pixels: 14204, f: 120, N: 11, p: 1.2 } as const
const framed = (width: number): number => {
  const [a, b] = [width + 2 * sides.border, sides.original[1] + 2 * sides.border]
  const [long, short] = sides.sensor
  return Math.max(Math.min(long / a, short / b), Math.min(long / b, short / a))
}
const pitch = sides.sensor[0] / sides.pixels
const ppi = (width: number): number => (framed(width) / pitch) * 25.4
const m = framed(sides.original[0])
const workingDistance = (f: number): number => f * (1 + 1 / m)

test('a whole chain is built from an empty sheet by keyboard alone, in under 400 keys', async ({ open }) => {
  const { page } = await open({ path: '#new/empty/build', background: true, permissions: CLIPBOARD })
  const keys = new Keyboard(page)
  const at = (name: RegExp) => expect.poll(() => focused(page)).toMatch(name)

  // A new sheet asks for its name; Enter goes on to the first cell.
  await at(/^Title of the worksheet/)
  await keys.type('Plan')
  await keys.press('Enter')
  await at(/^Type a cell/)
  await keys.line('w(a [mm]) [mm]=a*2|w(1 mm) gives 2 mm')
  await keys.line('sensor=53.4x40 mm')
  await keys.line('pixels=14204x10652 px')
  await keys.line('original=610x864 mm')
  await keys.line('border=w(5 mm)')
  await keys.line('focal=120 mm')
  await keys.line('pupil_ratio=1.2')
  await keys.line('aperture=f/11')
  // What a function takes comes from the cells named like it.
  await keys.complete('fit_', 'fit_magnification')
  await keys.line()
  await keys.complete('pixel_p', 'pixel_pitch')
  await keys.complete('pi', 'pixels')
  await keys.complete('.w', 'width')
  await keys.line()
  await keys.complete('ppi=fit_', 'fit_magnification')
  await keys.complete('/pi', 'pixel_pitch')
  await keys.line()
  await keys.complete('lens_to_o', 'lens_to_original')
  await keys.line('±2 mm')
  await keys.complete('extension_fo', 'extension_for')
  await keys.line()
  await keys.complete('extension_s', 'extension_shift')
  await keys.line()
  await keys.complete('blur_', 'blur_from_pixels')
  await keys.line()
  await keys.complete('depth_o', 'depth_of_field')
  await keys.line()
  await keys.line('? ok: ppi>300 ppi|Only {ppi}')

  // One key adds each further kind; a drawing takes what it shows from the sheet.
  await keys.press('Escape')
  await at(/Check: ok$/)
  await keys.press('d')
  await at(/^Title/)
  await page.locator('build-cell drawing-cell figure svg').waitFor()
  await keys.press('Alt+o')
  await at(/Drawing: Drawing$/)
  await keys.press('a')
  await at(/^Title/)
  await keys.press('Tab')
  await keys.type('o')
  await keys.to(/^From/)
  await keys.type('400')
  await keys.press('Tab')
  await keys.type('900')
  await keys.to(/^Result/)
  await keys.type('pp')
  await keys.press('Alt+o')
  await at(/Range: Range$/)
  await keys.press('v')
  await at(/^Title/)
  await keys.press('Tab')
  await keys.type('f')
  await keys.press('Tab')
  await keys.type('l')
  await keys.press('Alt+o')
  await at(/Variants: Variants$/)

  const days = Array.from({ length: 300 }, (_, i) => new Date(Date.UTC(2026, 0, 1 + ((i * 127) % 365))))
  const written = days.map((day) => day.toISOString().slice(0, 10))
  const rows = written.map((day, i) => `No ${i + 1}\t${day}\t${i % 3 === 0 ? 'plan' : 'map'}\t${1 + (i % 5)}`)
  await page.evaluate((text) => navigator.clipboard.writeText(text), ['Item\tDate\tKind\tSheets', ...rows].join('\n'))
  await keys.press('Control+v')
  await page.getByText('A table of 300 rows and 4 columns added.').waitFor()
  await at(/Table: table$/)

  expect(await figure(page, 'fit_magnification')).toBe(`1:${(1 / m).toFixed(1)}`)
  expect(await figure(page, 'ppi')).toBe(ppi(sides.original[0]).toFixed(0))
  expect(await figure(page, 'lens_to_original')).toBe(`${workingDistance(sides.f).toFixed(0)}±2`)
  expect(await figure(page, 'extension_for')).toBe((sides.f * m).toFixed(2))
  expect(await figure(page, 'extension_shift')).toBe((2 * Math.log2(1 + m / sides.p)).toFixed(2))
  const blur = 2 * pitch
  expect(await figure(page, 'blur_from_pixels')).toBe((1000 * blur).toFixed(2))
  const k = (sides.N * blur) / (m * sides.f)
  const total = (2 * sides.f * (1 / m + 1 / sides.p) * k) / (1 - k * k)
  expect(await figure(page, 'depth_of_field')).toContain(`total${total.toFixed(1)}mm`)
  expect(await figure(page, 'border')).toBe('10')

  // The same cell in the other face: there the dates are sorted, and the rows summed by their kind.
  await keys.press('Shift+Alt+F')
  await at(/^Item, row 1/)
  await keys.press('Tab')
  await at(/^Date, row 1/)
  await keys.press('Alt+s')
  const dates = page.locator('table-cell tbody input[aria-label^="Date, row"]')
  const shown = () => dates.evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value))
  await expect.poll(async () => (await shown()).slice(0, 5)).toEqual([...written].sort().slice(0, 5))
  await keys.to(/^Totals by/, 'Shift+Tab')
  await keys.type('k')
  const sums = (plan: boolean): number =>
    rows.reduce((sum, _, i) => ((i % 3 === 0) === plan ? sum + 1 + (i % 5) : sum), 0)
  const groups = page.locator('table-cell .groups')
  await expect.poll(() => groups.textContent()).toMatch(new RegExp(`plan\\s*100\\D*${sums(true)}`))
  await expect.poll(() => groups.textContent()).toMatch(new RegExp(`map\\s*200\\D*${sums(false)}`))

  await keys.to(/^focal, Variant 1/, 'Shift+Tab')
  await keys.type('90')
  await expect.poll(() => page.locator('variants-cell tbody').textContent()).toContain(workingDistance(90).toFixed(0))

  await keys.press('Control+f')
  await at(/^Find/)
  await keys.type('lens')
  await page.getByText(/^1 of \d+: lens_to_original/).waitFor()
  await keys.press('Escape')
  await at(/^lens_to_original$/)
  await keys.press('Enter')
  await page.locator('result-more').waitFor()
  await keys.to(/^Target value/)
  await keys.type('1500 mm')
  const suggestion = page.locator('suggestion-list button').first()
  await suggestion.filter({ hasText: 'focal' }).waitFor()
  const suggested = ((await suggestion.textContent()) ?? '').replace(/[\s\u202f]+/g, ' ')
  const focal = Number(/focal\D*?([\d.]+) ?mm/.exec(suggested)?.[1])
  expect(workingDistance(focal) / 1500).toBeGreaterThan(0.98)
  expect(workingDistance(focal) / 1500).toBeLessThan(1.02)
  expect(suggested).toContain(`It gives ${workingDistance(focal).toFixed(0)} ± 2 mm`)

  // The range over the width, each figure from the same formulas.
  const plotted = await page.locator('range-cell tbody tr').allTextContents()
  expect(plotted).toHaveLength(9)
  for (const [i, text] of plotted.entries())
    expect(text.replace(/[\s\u202f]/g, '')).toContain(`${ppi(400 + (i * 500) / 8).toFixed(0)}ppi`)
  await page.locator('range-cell figure svg').waitFor()
  await page.getByText('1 check passes').waitFor()
  await page.locator('function-cell').getByText('right').waitFor()

  await saved(page)
  console.log(`${keys.count} keys`)
  expect(keys.count).toBeLessThan(400)
}, 120_000)
