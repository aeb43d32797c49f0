import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { focused, tabTo } from './focus.ts'
import { test } from './harness.ts'

interface Built {
  readonly kind: RegExp
  readonly label: string
  readonly entry?: string
  readonly unit?: string
  readonly value?: string
  readonly formula?: string
  readonly condition?: string
}

/** Adds a cell below the one in hand and fills it in, with no key but those of the keyboard. */
async function build(page: Page, { kind, label, entry, unit, value, formula, condition }: Built): Promise<void> {
  const before = await page.locator('build-cell').count()
  if (before > 0) {
    await tabTo(page, /^Add below/)
    await page.keyboard.press('Enter')
    await page.locator('.chosen').waitFor()
  }
  await tabTo(page, kind)
  await page.keyboard.press('Enter')
  await expect.poll(() => page.locator('build-cell').count()).toBe(before + 1)
  await expect.poll(() => focused(page)).toMatch(/^Label/)
  await page.keyboard.type(label)
  if (unit) {
    await tabTo(page, /^Unit/)
    await page.keyboard.type(unit)
  }
  if (entry) {
    await tabTo(page, /^Filled in with/)
    await page.keyboard.type(entry)
  }
  if (value) {
    await tabTo(page, /^Value/)
    await page.keyboard.type(value)
  }
  if (formula || condition) {
    await tabTo(page, formula ? /^Formula/ : /^Passes when/)
    await page.locator('build-cell .cm-content').waitFor()
    await page.keyboard.type((formula ?? condition) as string)
    // Leaves the formula for its row, the cell still open.
    await page.keyboard.press('Enter')
    await expect.poll(() => focused(page)).toContain(label)
  }
}

const GIVEN = /(Add )?A given/
const RESULT = /(Add )?A result/

test('three tubes, two lenses: which covers a label at 600 ppi, at which aperture, with what exposure shift; built from an empty sheet by keyboard alone', async ({
  open,
}) => {
  const { page } = await open({ path: '#new/empty/build' })
  await page.locator('build-face .first').waitFor()
  const cells: Built[] = [
    { kind: GIVEN, label: 'Sensor', unit: 'mm', entry: 'A size', value: '36 x 24' },
    { kind: GIVEN, label: 'Pixels', unit: 'px', entry: 'A size', value: '6000 x 4000' },
    { kind: GIVEN, label: 'Original', unit: 'mm', entry: 'A size', value: '90 x 60' },
    { kind: GIVEN, label: 'Wanted', unit: 'ppi', value: '600' },
    { kind: GIVEN, label: 'Tubes', unit: 'mm', entry: 'Several', value: '12, 20, 36' },
    { kind: GIVEN, label: 'Lens', unit: 'mm', value: '55' },
    { kind: RESULT, label: 'Needed', unit: '1:', formula: 'wanted * sensor.width / pixels.width' },
    {
      kind: RESULT,
      label: 'Fills',
      unit: '1:',
      formula: 'fit_magnification(original.width, original.height, sensor.width, sensor.height)',
    },
    { kind: RESULT, label: 'Choices', formula: 'tube_choices(tubes, lens, fills, greatest: 1:7)' },
    { kind: RESULT, label: 'Taken', unit: 'mm', formula: 'best_tubes(choices).extension' },
    { kind: RESULT, label: 'Marked', unit: 'f/', formula: 'best_aperture(1 mm, fills)' },
    { kind: RESULT, label: 'Shift', unit: 'stop', formula: 'extension_shift(fills)' },
    { kind: /(Add )?A check/, label: 'Sharp enough', condition: 'fills >= needed' },
  ]
  for (const cell of cells) await build(page, cell)

  const figure = (label: string) =>
    page
      .locator('build-cell')
      .filter({ hasText: new RegExp(`Result: ${label}`) })
      .locator('.figure')
      .textContent()
  // 36 mm over 90 mm is 1:2.5; 600 px an inch at 6 µm are 1:7.06.
  await expect.poll(() => figure('Fills')).toBe('1:2.5')
  await expect.poll(() => figure('Needed')).toBe('1:7.06')
  // 1/2.5 − 1/7 of 55 mm is 14.1 mm at the least, 22 mm at the most: of the three only the 20 mm tube lies there.
  await expect.poll(() => figure('Taken')).toBe('20')
  // N = m √(depth/(2 · 2.44 λ))/(1 + m) with 1 mm, 550 nm: f/5.5.
  await expect.poll(() => figure('Marked')).toMatch(/^f\/5\.51/)
  // 2 log2(1 + 1/2.5)
  await expect.poll(() => figure('Shift')).toBe('0.97')
  await page
    .locator('build-cell')
    .filter({ hasText: /Sharp enough/ })
    .filter({ hasText: /Pass/ })
    .waitFor()

  // The other lens: 1/2.5 − 1/7 of 90 mm is 23.1 mm at the least, so 12 and 20 mm together, 32 mm.
  await page.goto(page.url().replace(/\/build$/, ''))
  await page.getByLabel('Lens', { exact: true }).focus()
  await page.keyboard.press('Control+a')
  await page.keyboard.type('90')
  await expect
    .poll(() => page.locator('result-cell').filter({ hasText: 'Taken' }).locator('.figure').textContent())
    .toBe('32')
})
