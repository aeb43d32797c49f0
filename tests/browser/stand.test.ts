import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import type { Cell } from '../../src/worksheet/index.ts'
import { check, given, result } from '../worksheet/make.ts'
import { test, violations } from './harness.ts'
import { pressInHead } from './head.ts'
import { openSheet } from './open-sheet.ts'

const heading = (text: string): Cell => ({ kind: 'note', id: text, role: 'heading', text })
const CELLS: Cell[] = [
  heading('Frame'),
  given('width', '600', { unit: 'mm', label: 'Width', stand: true }),
  result('far', 'width * 1.5', { unit: 'mm', label: 'Board to sensor', stand: true }),
  result('stop', '10.4', { unit: 'f/', label: 'Aperture', stand: true }),
  result('time', '1/118 s', { unit: '1/ s', label: 'Exposure time', stand: true }),
  result('hidden', 'far * 2', { label: 'Not for the stand' }),
  check('fits', 'far <= 1040 mm', { message: 'It is {far} high.', passes: 'It fits.', stand: true }),
  heading('Light'),
  given('left', '', { unit: 'lx', label: 'Left edge' }),
  {
    kind: 'steps',
    id: 's',
    title: 'In order',
    steps: [{ text: 'Level the camera' }, { text: 'Read the left edge', reading: 'left' }],
  },
]
const unmarked = (cells: readonly Cell[]): Cell[] => cells.map((cell) => ({ ...cell, stand: false }))

/** A digit is so high in the type we ship, in em, as its letters are drawn. */
const DIGIT = 0.69

const figure = (page: Page, label: string) => page.locator('stand-figure').filter({ hasText: label })
const toStand = async (page: Page): Promise<void> => {
  await pressInHead(page, 'At the stand')
  await page.locator('stand-view').waitFor()
}
const faceOf = (page: Page) =>
  page.evaluate(() => [document.documentElement.dataset.face, localStorage.getItem('evenfield-face')])

test('what is marked is shown large, marks as on the equipment, and nothing else', async ({ open }) => {
  const { page } = await open({ width: 1024, height: 768 })
  await openSheet(page, CELLS)
  await toStand(page)
  await expect.poll(() => figure(page, 'Board to sensor').locator('.figure').textContent()).toBe('900mm')
  expect(await figure(page, 'Aperture').locator('.figure').textContent()).toBe('f/10')
  await figure(page, 'Aperture').getByText('nearest mark; exactly f/10.4').waitFor()
  expect(await figure(page, 'Exposure time').locator('.figure').textContent()).toBe('1/125s')
  expect(await page.locator('stand-figure').count()).toBe(3)
  await page.locator('stand-view check-cell').filter({ hasText: 'Pass: It fits.' }).waitFor()
  await page.locator('stand-view').getByLabel('Width', { exact: true }).fill('700')
  await expect.poll(() => figure(page, 'Board to sensor').locator('.figure').textContent()).toBe('1050mm')
  await page.locator('stand-view check-cell').filter({ hasText: 'Fail: It is 1050 mm high.' }).waitFor()
  await page.getByRole('checkbox', { name: /Level the camera/ }).check()
  await page.getByText('1 of 2 done').waitFor()
})

test('digits are 12 mm high on a tablet of 150 px to the inch, and figures never overflow', async ({ open }) => {
  const { page } = await open({ width: 1024, height: 768 })
  const long = result('long', '12345.678 mm', { unit: 'mm', label: 'A long one', stand: true })
  await openSheet(page, [...CELLS, long])
  await toStand(page)
  await figure(page, 'A long one').waitFor()
  const sizes = async () =>
    page.locator('stand-figure .figure').evaluateAll((all) =>
      all.map((one) => {
        const room = one.parentElement as HTMLElement
        return {
          digits: Number.parseFloat(getComputedStyle(one).fontSize),
          over: one.getBoundingClientRect().width - room.clientWidth,
        }
      }),
    )
  for (const [width, height] of [
    [1024, 768],
    [768, 1024],
    [1440, 900],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height })
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
    const found = await sizes()
    for (const { over } of found) expect(over).toBeLessThanOrEqual(0.5)
    if (width >= 768)
      for (const { digits } of found.slice(0, 3)) expect((digits * DIGIT * 25.4) / 150).toBeGreaterThanOrEqual(12)
  }
})

test('it is dim there and the face chosen elsewhere stays; a face chosen there is its own', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, CELLS)
  expect(await faceOf(page)).toEqual(['light', null])
  await toStand(page)
  await expect.poll(() => faceOf(page)).toEqual(['dim', null])
  await pressInHead(page, 'Light')
  expect(await faceOf(page)).toEqual(['light', null])
  await pressInHead(page, 'Dim')
  await pressInHead(page, 'Fill in')
  await expect.poll(() => faceOf(page)).toEqual(['light', null])
  await page.goBack()
  await expect.poll(() => faceOf(page)).toEqual(['dim', null])
})

test('where nothing is marked it says how, and shows the results of one section; a tick in Build marks', async ({
  open,
}) => {
  const { page } = await open()
  await openSheet(page, [...unmarked(CELLS), result('lamp', '1 m', { label: 'Lamp to board' })])
  await toStand(page)
  await page.getByText('No figure is marked for the stand yet.').waitFor()
  await figure(page, 'Not for the stand').waitFor()
  await page.locator('stand-view').getByRole('button', { name: 'Light', exact: true }).click()
  await figure(page, 'Lamp to board').waitFor()
  expect(await page.locator('stand-figure').count()).toBe(1)
  await page.locator('stand-view').getByRole('link', { name: 'Build' }).click()
  await page.getByRole('button', { name: 'Result: Board to sensor' }).click()
  await page.getByRole('checkbox', { name: /Show at the stand/ }).check()
  await toStand(page)
  await expect.poll(() => page.locator('stand-figure').allInnerTexts()).toHaveLength(1)
  await figure(page, 'Board to sensor').waitFor()
})

describe('the screen', () => {
  /** The browser's own lock, with what becomes of it in view. */
  const watched = () => {
    const seen = { asked: 0, locks: [] as WakeLockSentinel[] }
    Object.assign(globalThis, { seen })
    const { wakeLock } = navigator
    const request = wakeLock.request.bind(wakeLock)
    wakeLock.request = async (type) => {
      seen.asked++
      const lock = await request(type)
      seen.locks.push(lock)
      return lock
    }
  }
  const seen = (page: Page) =>
    page.evaluate(() => {
      const { asked, locks } = (globalThis as unknown as { seen: { asked: number; locks: WakeLockSentinel[] } }).seen
      return { asked, released: locks.map(({ released }) => released) }
    })

  test('stays awake there, again after the page was hidden, and is let go on leaving', async ({ open }) => {
    const { page, context } = await open()
    await context.addInitScript(watched)
    await page.reload()
    await openSheet(page, CELLS)
    expect(await seen(page)).toEqual({ asked: 0, released: [] })
    await toStand(page)
    await page.getByText('The screen stays on.').waitFor()
    expect(await seen(page)).toEqual({ asked: 1, released: [false] })
    // What the browser does when another tab is looked at.
    await page.evaluate(async () => {
      Object.defineProperty(document, 'visibilityState', { value: 'hidden', configurable: true })
      await (globalThis as unknown as { seen: { locks: WakeLockSentinel[] } }).seen.locks[0]?.release()
    })
    await page.getByText(/The screen may turn off/).waitFor()
    await page.evaluate(() => {
      Reflect.deleteProperty(document, 'visibilityState')
      document.dispatchEvent(new Event('visibilitychange'))
    })
    await page.getByText('The screen stays on.').waitFor()
    expect(await seen(page)).toEqual({ asked: 2, released: [true, false] })
    await pressInHead(page, 'Fill in')
    await expect.poll(() => seen(page)).toEqual({ asked: 2, released: [true, true] })
  })

  test('may go dark where the browser refuses, which is reported; a touch asks again', async ({ open }) => {
    const { page, context } = await open()
    await context.addInitScript(() => {
      const { wakeLock } = navigator
      const request = wakeLock.request.bind(wakeLock)
      wakeLock.request = (type) => {
        if (!Object.hasOwn(globalThis, 'charged')) return Promise.reject(new DOMException('', 'NotAllowedError'))
        return request(type)
      }
    })
    await page.reload()
    await openSheet(page, CELLS)
    await toStand(page)
    await page.getByText('The screen may turn off: the browser refuses to keep it on').waitFor()
    await page.evaluate(() => Object.assign(globalThis, { charged: true }))
    await page.getByRole('checkbox', { name: /Level the camera/ }).check()
    await page.getByText('The screen stays on.').waitFor()
  })

  test('may go dark where the browser has no such thing, which is reported', async ({ open }) => {
    const { page, context } = await open()
    await context.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, 'wakeLock'))
    await page.reload()
    await openSheet(page, CELLS)
    await toStand(page)
    await page.getByText('The screen may turn off: this browser cannot keep it on.').waitFor()
  })
})

test('the state of a check leads from the stand to where it is filled in', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, [given('width', '1100', { unit: 'mm' }), ...CELLS.slice(2)])
  await toStand(page)
  await page.getByRole('button', { name: /1 fail/ }).click()
  await page.locator('fill-face check-cell:focus').waitFor()
})

for (const face of ['dim', 'light'] as const)
  for (const width of [1024, 390])
    test(`axe finds nothing serious at the stand, ${face}, ${width} px`, async ({ open }) => {
      const { page } = await open({ width })
      await openSheet(page, CELLS)
      await toStand(page)
      if (face === 'light') await pressInHead(page, 'Light')
      await page.locator('steps-cell').waitFor()
      expect(await violations(page)).toEqual([])
    })
