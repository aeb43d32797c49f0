import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import type { Cell } from '../../src/worksheet/index.ts'
import { check, given, result } from '../worksheet/make.ts'
import { test, violations } from './harness.ts'
import { pressInHead } from './head.ts'
import { cellsOf, openSheet } from './open-sheet.ts'

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
    steps: [
      { text: 'Level the camera' },
      { text: 'Measure the distance', reading: 'far' },
      { text: 'Read the left edge', reading: 'left' },
    ],
  },
]
const unmarked = (cells: readonly Cell[]): Cell[] => cells.map((cell) => ({ ...cell, stand: false }))

const toStand = async (page: Page): Promise<void> => {
  await pressInHead(page, 'At the stand')
  await page.locator('stand-view .foot').waitFor()
}
const show = (page: Page, mode: 'Check first' | 'One step' | 'All figures') =>
  page.locator('stand-switch').getByRole('button', { name: mode }).click()
const row = (page: Page, label: string) => page.locator('stand-overview li').filter({ hasText: label })
const faceOf = (page: Page) =>
  page.evaluate(() => [document.documentElement.dataset.face, localStorage.getItem('evenfield-face')])

test('all figures are large, marks as on the equipment, and nothing else', async ({ open }) => {
  const { page } = await open({ width: 1024, height: 768 })
  await openSheet(page, CELLS)
  await toStand(page)
  await show(page, 'All figures')
  await expect.poll(() => row(page, 'Board to sensor').locator('.big').textContent()).toBe('900mm')
  expect(await row(page, 'Aperture').locator('.big').textContent()).toBe('f/10')
  await row(page, 'Aperture').getByText('nearest mark; exactly f/10.4').waitFor()
  expect(await row(page, 'Exposure time').locator('.big').textContent()).toBe('1/125s')
  // Those marked and what the steps read.
  expect(await page.locator('stand-overview li').count()).toBe(5)
  await page.locator('stand-view check-cell').filter({ hasText: 'Pass: It fits.' }).waitFor()
})

test('one step at a time: its reading is typed, ticked, and followed by the next', async ({ open }) => {
  const { page } = await open({ width: 1024, height: 768 })
  await openSheet(page, CELLS)
  await toStand(page)
  const step = page.locator('stand-step')
  await step.getByRole('heading', { name: 'Level the camera' }).waitFor()
  await page.getByText('0 of 3 done').waitFor()
  await page.getByText('Next, step 2: Measure the distance').waitFor()
  await page.getByRole('button', { name: 'Done, next step' }).click()
  await page.getByText('1 of 3 done').waitFor()
  // The sentence of the next step has the focus, so that it is read out.
  await page.locator('stand-step h2:focus', { hasText: 'Measure the distance' }).waitFor()
  await expect.poll(() => step.locator('.half .big').textContent()).toBe('900mm')
  await step.getByLabel('Board to sensor, your reading').fill('904')
  await step.getByText('4 mm over').waitFor()
  await step.getByText('or continue with 904 mm').waitFor()
  // Locked, it is shown without a field until it is unlocked.
  await step.getByRole('button', { name: 'Lock Board to sensor' }).click()
  await step.getByText('locked: unlock it to change it').waitFor()
  expect(await step.getByLabel('Board to sensor, your reading').count()).toBe(0)
  await expect.poll(() => step.locator('.target .big').textContent()).toBe('904mm')
  await step.getByRole('button', { name: 'Unlock Board to sensor' }).click()
  await expect.poll(() => step.getByLabel('Board to sensor, your reading').inputValue()).toBe('904')
  await step.getByLabel('Board to sensor, your reading').press('Enter')
  await page.getByRole('button', { name: 'Done, next step' }).press('Enter')
  await step.getByRole('heading', { name: 'Read the left edge' }).waitFor()
  await step.getByLabel('Left edge, your reading').fill('870')
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await page.getByText('All 3 steps done.').waitFor()
  await row(page, 'Board to sensor').getByText('904 mm').waitFor()
  const left = (await cellsOf(page)).find((cell) => cell.id === 'left')
  expect(left).toMatchObject({ value: '870', from: { kind: 'measured' } })
  await row(page, 'Left edge').getByRole('button').click()
  await step.getByRole('heading', { name: 'Read the left edge' }).waitFor()
  await page.getByRole('button', { name: 'Mark as not done' }).click()
  await page.getByText('2 of 3 done').waitFor()
})

test('frames are counted, each with its move, and the step goes on after the last', async ({ open }) => {
  const { page } = await open({ width: 1024, height: 768 })
  await openSheet(page, [
    {
      kind: 'drawing',
      id: 'tiles',
      drawing: 'tiles',
      from: { original_width: '500 mm', original_height: '200 mm', field_width: '300 mm', field_height: '250 mm' },
    },
    { kind: 'steps', id: 's', steps: [{ text: 'Take the frames', phase: 'frames' }, { text: 'Pack up' }] },
  ])
  await toStand(page)
  await page.locator('stand-drawing .tile-1.is-emphasis').waitFor()
  await page.getByText('Then move the camera 200 mm to the right.').waitFor()
  await page.getByRole('button', { name: 'Frame 1 taken' }).click()
  await page.locator('stand-drawing .tile-2.is-emphasis').waitFor()
  await page.getByText('This is the last frame.').waitFor()
  await page.getByRole('button', { name: 'Frame 2 taken' }).click()
  await page.getByText('All 2 frames taken.').waitFor()
  await page.getByRole('button', { name: 'Undo the last frame' }).click()
  await page.getByRole('button', { name: 'Frame 2 taken' }).click()
  await page.getByRole('button', { name: 'Done, next step' }).click()
  await page.getByRole('heading', { name: 'Pack up' }).waitFor()
})

test('before the first step it says what is open, each with a way to change it', async ({ open }) => {
  const { page } = await open({ width: 1024, height: 768 })
  const example = given('border', '10', { unit: 'mm', label: 'Border', from: { kind: 'example', text: '10' } })
  const needs = check('needs', 'left > 1 lx', { label: 'Enough light' })
  await openSheet(page, [...CELLS, example, needs, check('fails', '1 > 2', { message: 'measured, it fails.' })])
  await toStand(page)
  const first = page.locator('check-first')
  await first.getByRole('heading', { name: 'Check before you shoot' }).waitFor()
  await first.getByText('Enough light: needs Left edge').waitFor()
  await first.getByText('Measured, it fails.', { exact: true }).waitFor()
  await first.getByRole('button', { name: 'Use 10 mm for Border' }).click()
  await first.getByText('1 figure is still the example’s').waitFor({ state: 'detached' })
  await first.getByRole('button', { name: 'Change Enough light' }).click()
  await page.locator('fill-face').getByLabel('Left edge').and(page.locator(':focus')).waitFor()
  await page.goBack()
  await page.getByRole('button', { name: 'Start at step 1' }).click()
  await page.getByRole('heading', { name: 'Level the camera' }).waitFor()
})

test('figures are large, never overflow, and what is pressed is 60 px high', async ({ open }) => {
  const { page } = await open({ width: 1024, height: 768 })
  const long = result('long', '12345.678 mm', { unit: 'mm', label: 'A long one', stand: true })
  const read = { kind: 'steps', id: 't', steps: [{ text: 'Read the long one', reading: 'long' }] } as const
  await openSheet(page, [long, read as unknown as Cell, ...CELLS])
  await toStand(page)
  await page.locator('stand-step .big').first().waitFor()
  const figures = () =>
    page.locator('stand-view .big').evaluateAll((all) =>
      all.map((one) => ({
        px: Number.parseFloat(getComputedStyle(one).fontSize),
        over: one.getBoundingClientRect().width - (one.parentElement as HTMLElement).clientWidth,
      })),
    )
  const low = () =>
    page.locator('stand-view, stand-switch').evaluateAll((roots) => {
      const found: string[] = []
      const look = (root: ParentNode): void => {
        for (const one of root.querySelectorAll('*')) {
          if (one.shadowRoot) look(one.shadowRoot)
          if (!one.matches('button:not(.word, .to-check), input, a')) continue
          const { width, height } = one.getBoundingClientRect()
          if (width > 0 && height < 57.5) found.push(`${one.outerHTML.slice(0, 60)} ${height}`)
        }
      }
      for (const { shadowRoot } of roots) if (shadowRoot) look(shadowRoot)
      return found
    })
  for (const [width, height] of [
    [1024, 768],
    [768, 1024],
    [1440, 900],
    [390, 844],
    [360, 740],
  ] as const) {
    await page.setViewportSize({ width, height })
    for (const mode of ['One step', 'All figures', 'Check first'] as const) {
      await show(page, mode)
      await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
      for (const { over } of await figures()) expect(over).toBeLessThanOrEqual(0.5)
      expect(await low()).toEqual([])
    }
    const room = await page.locator('stand-switch').evaluate((one) => {
      const row = one.assignedSlot?.closest('.first, .second') as HTMLElement
      const [inner, outer] = [one.getBoundingClientRect(), row.getBoundingClientRect()]
      return Math.min(inner.top - outer.top, outer.bottom - inner.bottom)
    })
    expect(room).toBeGreaterThanOrEqual(4)
  }
  await page.setViewportSize({ width: 1024, height: 768 })
  await show(page, 'One step')
  await page.locator('stand-view nav button').nth(2).click()
  await expect.poll(async () => (await figures())[0]?.px).toBeGreaterThanOrEqual(84)
  // A zero with a stroke could be taken for a diameter sign.
  await expect.poll(() => page.evaluate(() => document.fonts.check('700 84px "Stand Zero"', '0'))).toBe(true)
})

test('on a phone a step that is done can be marked as not done, whatever the next one says', async ({ open }) => {
  const { page } = await open({ width: 390, height: 844 })
  const far = { text: 'Read the pointer on the column, with the picture framed and sharp in all four corners.' }
  const steps = [{ text: 'Level the camera', done: true }, far]
  await openSheet(page, [{ kind: 'steps', id: 's', steps }])
  await toStand(page)
  await show(page, 'One step')
  await page.getByRole('button', { name: /^Step 1/ }).click()
  const undo = page.getByRole('button', { name: 'Mark as not done' })
  const isOnTop = (one: Element): boolean => {
    const { x, y, width, height } = one.getBoundingClientRect()
    return (one.getRootNode() as ShadowRoot).elementFromPoint(x + width / 2, y + height / 2) === one
  }
  await expect.poll(() => undo.evaluate(isOnTop)).toBe(true)
  await undo.click()
  await page.getByText('0 of 2 done').waitFor()
})

test('what opens above the stand keeps clear of the edges of the screen', async ({ open }) => {
  const { page } = await open({ width: 390, height: 844 })
  await openSheet(page, CELLS)
  await toStand(page)
  await pressInHead(page, 'Share')
  const { x = 0, width = 0 } = (await page.locator('share-panel h2').first().boundingBox()) ?? {}
  expect(x).toBeGreaterThanOrEqual(16)
  expect(x + width).toBeLessThanOrEqual(390 - 16)
})

test('it begins at its top, however far the sheet was scrolled', async ({ open }) => {
  const { page } = await open({ width: 390, height: 500 })
  await openSheet(page, [...CELLS, check('fails', '1 > 2', { message: 'It fails.' })])
  await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight))
  await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(100)
  await toStand(page)
  await page.getByRole('heading', { name: 'Check before you shoot' }).waitFor()
  await expect.poll(() => page.evaluate(() => scrollY)).toBe(0)
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
  const cells = unmarked(CELLS).filter(({ kind }) => kind !== 'steps')
  await openSheet(page, [...cells, result('lamp', '1 m', { label: 'Lamp to board' })])
  await toStand(page)
  await page.getByText('No figure is marked for the stand yet.').waitFor()
  await row(page, 'Not for the stand').waitFor()
  await page.locator('stand-view').getByRole('button', { name: 'Light', exact: true }).click()
  await row(page, 'Lamp to board').waitFor()
  expect(await page.locator('stand-overview li').count()).toBe(1)
  await page.locator('stand-view').getByRole('link', { name: 'Build' }).click()
  await page.getByRole('button', { name: 'Result: Board to sensor' }).click()
  await page.getByRole('checkbox', { name: /Show at the stand/ }).check()
  await toStand(page)
  await row(page, 'Board to sensor').waitFor()
  expect(await page.locator('stand-overview li').count()).toBe(1)
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
    await page.getByRole('button', { name: 'Done, next step' }).click()
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
  await show(page, 'All figures')
  await page.getByRole('button', { name: /1 check fails/ }).click()
  await page.locator('fill-face check-cell:focus').waitFor()
})

for (const face of ['dim', 'light'] as const)
  for (const width of [1024, 390])
    test(`axe finds nothing serious at the stand, ${face}, ${width} px`, async ({ open }) => {
      const { page } = await open({ width })
      await openSheet(page, [...CELLS, check('fails', '1 > 2', { message: 'It fails.' })])
      await toStand(page)
      if (face === 'light') await pressInHead(page, 'Light')
      for (const [mode, shown] of [
        ['Check first', 'check-first'],
        ['One step', 'stand-step'],
        ['All figures', 'stand-overview'],
      ] as const) {
        await show(page, mode)
        await page.locator(shown).waitFor()
        expect(await violations(page)).toEqual([])
      }
    })
