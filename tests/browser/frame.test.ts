import { expect } from 'vitest'
import type { Cell, Frame } from '../../src/worksheet/index.ts'
import { exifBlock, gama, make, png } from '../frame/files.ts'
import { test, violations } from './harness.ts'
import { saved } from './head.ts'
import { cellsOf, openSheet } from './open-sheet.ts'

/** A card whose light falls from left to right by one stop, with a rectangle of a third of it in the middle. */
const card = (stops: number): Buffer =>
  Buffer.from(
    png(
      make(
        300,
        200,
        1,
        16,
        (x, y) => 50000 * 2 ** ((-stops * x) / 299) * (x > 140 && x < 160 && y > 90 && y < 110 ? 0.5 : 1),
      ),
      {
        chunks: [
          gama(1),
          [
            'eXIf',
            exifBlock([
              [0x829d, 5, [56, 10]],
              [0x829a, 5, [1, 125]],
            ]),
          ],
        ],
      },
    ),
  )

const SHEET: Cell[] = [
  { kind: 'given', id: 'a', name: 'aperture', label: 'Aperture', unit: 'f/', value: 'f/8' },
  { kind: 'given', id: 't', name: 'time', label: 'Time', unit: '1/ s', value: '' },
  {
    kind: 'frame',
    id: 'f',
    name: 'plain_card',
    label: 'Plain card',
    areas: [{ kind: 'evenness', name: 'light', columns: 3, rows: 1 }],
    fills: { aperture: 'aperture', time: 'time' },
  },
  { kind: 'result', id: 'r', name: 'spread', label: 'Spread', unit: 'stop', formula: 'plain_card.light.spread' },
]

/** What was marked and measured is the same after a reload, on the page too. */
async function survivesReload(page: Parameters<typeof cellsOf>[0]): Promise<void> {
  const before = await frameOf(page)
  const figures = (): Promise<string[]> => page.locator('frame-cell .areas dd').allTextContents()
  const shown = await figures()
  expect(shown.length).toBeGreaterThan(2)
  await saved(page)
  await page.reload()
  await page.locator('frame-cell .areas dd').first().waitFor()
  expect(await frameOf(page)).toEqual(before)
  expect(await figures()).toEqual(shown)
}

const frameOf = async (page: Parameters<typeof cellsOf>[0]): Promise<Frame> =>
  (await cellsOf(page)).find(({ kind }) => kind === 'frame') as Frame

test('a picture is chosen, measured in a thread of its own, and its figures feed the sheet and survive a reload', async ({
  open,
}) => {
  const { page } = await open()
  await openSheet(page, SHEET)
  const frame = page.locator('frame-cell')
  await frame.getByText('Nothing measured yet').waitFor()
  await frame
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'card.png', mimeType: 'image/png', buffer: card(1) })
  await frame.getByText('card.png: 300 × 200 px, 16 bits, linear').waitFor()
  await frame.locator('frame-picture canvas').waitFor()
  // The outer thirds are 200 of 299 columns apart.
  await expect.poll(async () => (await frameOf(page)).readings?.light?.spread as number).toBeCloseTo(200 / 299, 2)
  await page.locator('result-cell').getByText('0.67').first().waitFor()
  // The blank given is filled, the other compared.
  await frame.getByText('Aperture: f/8 set, f/5.6 in the frame').waitFor()
  await expect.poll(async () => (await cellsOf(page)).find(({ id }) => id === 't')).toMatchObject({ value: '1/125 s' })
  expect(await violations(page)).toEqual([])

  const before = await frameOf(page)
  expect(JSON.stringify(before)).not.toMatch(/data:|blob:/)
  await saved(page)
  await page.reload()
  await page.locator('frame-cell').getByText('card.png: 300 × 200 px').waitFor()
  expect(await frameOf(page)).toEqual(before)
  await page.locator('result-cell').getByText('0.67').first().waitFor()

  // The same picture is known again; another says so.
  await frame
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'card.png', mimeType: 'image/png', buffer: card(1) })
  await frame.getByText('This is the picture measured before.').waitFor()
  await frame
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'other.png', mimeType: 'image/png', buffer: card(0.5) })
  await frame.getByText('This is a different picture from card.png').waitFor()
  await expect.poll(async () => (await frameOf(page)).readings?.light?.spread as number).toBeCloseTo(100 / 299, 2)
})

test.for([
  { width: 1440, height: 900 },
  { width: 820, height: 1180 },
  { width: 390, height: 700 },
])('areas are added, moved and removed by mouse and keyboard at $width × $height', async (layout, { open }) => {
  const { page } = await open(layout)
  await openSheet(page, SHEET)
  const frame = page.locator('frame-cell')
  await frame
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'card.png', mimeType: 'image/png', buffer: card(1) })
  await frame.locator('frame-picture canvas').waitFor()
  await frame.getByRole('button', { name: 'Patch', exact: true }).click()
  await expect.poll(async () => (await frameOf(page)).readings?.patch).toBeTruthy()
  const [, added] = (await frameOf(page)).areas ?? []
  expect(added).toMatchObject({ kind: 'patch', box: [100, 66.5, 100, 67] })

  // By keyboard: the area by ten pixels to the right, its first point by one down.
  await frame.getByRole('button', { name: 'Patch patch' }).focus()
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(async () => (await frameOf(page)).areas?.[1]?.box).toEqual([110, 66.5, 100, 67])
  await frame.getByRole('button', { name: 'patch, point 1' }).focus()
  await page.keyboard.press('ArrowDown')
  await expect.poll(async () => (await frameOf(page)).areas?.[1]?.box).toEqual([110, 67.5, 100, 66])

  // By mouse: dragged by its middle.
  await frame.locator('.stage').scrollIntoViewIfNeeded()
  const stage = (await frame.locator('.stage').boundingBox()) as { x: number; y: number; width: number; height: number }
  const scale = Math.min(stage.width / 300, stage.height / 200)
  const at = (x: number, y: number): [number, number] => [
    stage.x + (stage.width - 300 * scale) / 2 + x * scale,
    stage.y + (stage.height - 200 * scale) / 2 + y * scale,
  ]
  await page.mouse.move(...at(160, 100))
  await page.mouse.down()
  await page.mouse.move(...at(140, 110), { steps: 4 })
  await page.mouse.up()
  // Every step counts, to half a pixel: twenty to the left and ten down.
  await expect.poll(async () => (await frameOf(page)).areas?.[1]?.box).toEqual([90, 77.5, 100, 66])
  // The picture is measured after the area is saved.
  await expect
    .poll(async () => ((await frameOf(page)).readings?.patch as { light?: number[] } | undefined)?.light?.[0])
    .toBeGreaterThan(0.3)
  // The head of a narrow page has no space for when it was saved.
  if (layout.width > 400) {
    await survivesReload(page)
    await frame
      .locator('input[type=file]')
      .first()
      .setInputFiles({ name: 'card.png', mimeType: 'image/png', buffer: card(1) })
    await frame.getByText('This is the picture measured before.').waitFor()
  }

  await frame.getByRole('button', { name: 'Patch patch' }).focus()
  await page.keyboard.press('Delete')
  await expect.poll(async () => (await frameOf(page)).areas?.length).toBe(1)
  await expect.poll(async () => Object.keys((await frameOf(page)).readings ?? {})).toEqual(['light'])
})

test('an area under another name follows into the formula, and its areas are copied to the next frame', async ({
  open,
}) => {
  const { page } = await open()
  await openSheet(page, [...SHEET, { kind: 'frame', id: 'g', name: 'next_card', label: 'Next card' }])
  const frame = page.locator('frame-cell').first()
  await frame
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'card.png', mimeType: 'image/png', buffer: card(1) })
  await frame.locator('frame-picture canvas').waitFor()
  await frame.getByLabel('Name', { exact: true }).fill('field')
  await expect
    .poll(async () => (await cellsOf(page)).find(({ id }) => id === 'r'))
    .toMatchObject({ formula: 'plain_card.field.spread' })
  await page.locator('result-cell').getByText('0.67').first().waitFor()

  const next = page.locator('frame-cell').nth(1)
  await next.getByRole('button', { name: 'Copy the areas of Plain card' }).click()
  await expect
    .poll(async () => (await cellsOf(page)).find(({ id }) => id === 'g'))
    .toMatchObject({ areas: [{ kind: 'evenness', name: 'field', columns: 3, rows: 1 }] })
})

/** A grey card as taken at an hour of the day. */
const greyAt = (hour: number, light: number): { name: string; mimeType: string; buffer: Buffer } => ({
  name: `grey-${hour}.png`,
  mimeType: 'image/png',
  buffer: Buffer.from(
    png(
      make(60, 40, 1, 16, () => light),
      { chunks: [gama(1), ['eXIf', exifBlock([[0x9003, 2, `2026:03:04 ${String(hour).padStart(2, '0')}:00:00`]])]] },
    ),
  ),
})

test('several pictures are compared over time, dropped together or one later, and still after a reload', async ({
  open,
}) => {
  const { page } = await open()
  await openSheet(page, [
    {
      kind: 'frame',
      id: 'f',
      name: 'card',
      label: 'Card',
      areas: [{ kind: 'patch', name: 'grey' }],
      series: [],
    },
    {
      kind: 'result',
      id: 'r',
      name: 'moved',
      label: 'Moved',
      unit: 'stop',
      formula: 'light_over_time(card.grey.series.time, card.grey.series.light).greatest',
    },
    {
      kind: 'drawing',
      id: 'd',
      drawing: 'over-time',
      from: {
        time: 'card.grey.series.time',
        changes: 'light_over_time(card.grey.series.time, card.grey.series.light).changes',
      },
    },
  ])
  const frame = page.locator('frame-cell')
  const input = frame.locator('input[type=file]').first()
  // The latest is not the last of them.
  await input.setInputFiles([greyAt(8, 40000), greyAt(16, 25000), greyAt(12, 30000)])
  await frame.getByText('3 pictures measured; the latest is open.').waitFor()
  await frame.getByText('grey-16.png: 60 × 40 px').waitFor()
  await page.locator('result-cell').getByText('−0.68').first().waitFor()
  await page.locator('drawing-cell svg').getByText('Hours since the first').waitFor()
  await input.setInputFiles(greyAt(18, 11000))
  await page.locator('result-cell').getByText('−1.86').first().waitFor()
  const names = async (): Promise<string[]> => ((await frameOf(page)).series ?? []).map(({ name }) => name)
  expect(await names()).toEqual(['grey-8.png', 'grey-12.png', 'grey-16.png', 'grey-18.png'])
  await saved(page)
  await page.reload()
  await page.locator('result-cell').getByText('−1.86').first().waitFor()
  await frame.getByRole('button', { name: 'Remove grey-18.png' }).click()
  await page.locator('result-cell').getByText('−0.68').first().waitFor()
  expect(await violations(page)).toEqual([])
})

/** A white card on a dark ground, its upper left corner there. */
const cardAt = (x: number, y: number): Buffer =>
  Buffer.from(png(make(300, 200, 1, 8, (u, v) => (u >= x && u < x + 160 && v >= y && v < y + 100 ? 220 : 30))))

test('the corners of a card are found in each picture; where that is not safe they stay, and it says so', async ({
  open,
}) => {
  const { page } = await open()
  await openSheet(page, [
    {
      kind: 'frame',
      id: 'f',
      name: 'sheet',
      label: 'Sheet',
      areas: [{ kind: 'square', name: 'outline', size: '160 x 100 mm' }],
    },
  ])
  const frame = page.locator('frame-cell')
  const drop = (name: string, buffer: Buffer): Promise<void> =>
    frame.locator('input[type=file]').first().setInputFiles({ name, mimeType: 'image/png', buffer })
  const corners = async (): Promise<number[][]> =>
    ((await frameOf(page)).areas?.[0]?.corners ?? []).map((one) => one.map(Math.round))
  const at = (x: number, y: number): number[][] => [
    [x, y],
    [x + 160, y],
    [x + 160, y + 100],
    [x, y + 100],
  ]
  await drop('one.png', cardAt(40, 30))
  await frame.getByText('The corners of outline were found').waitFor()
  expect(await corners()).toEqual(at(40, 30))
  await drop('two.png', cardAt(90, 60))
  await expect.poll(corners).toEqual(at(90, 60))
  // One pixel a millimetre.
  await expect
    .poll(async () => (await frameOf(page)).readings?.outline?.sampling_across as number)
    .toBeCloseTo(1000, -1)
  // A card that reaches out of the picture.
  await drop('three.png', cardAt(200, 60))
  await frame.getByText('The corners of outline cannot be found reliably').waitFor()
  expect(await corners()).toEqual(at(90, 60))
  // Marks moved by hand stay as long as the picture is the same.
  await drop('two.png', cardAt(90, 60))
  await expect.poll(corners).toEqual(at(90, 60))
  await frame.getByRole('button', { name: 'Outline outline' }).focus()
  await page.keyboard.press('ArrowRight')
  await expect.poll(corners).toEqual(at(91, 60))
  await drop('two.png', cardAt(90, 60))
  await frame.getByText('This is the picture measured before.').waitFor()
  expect(await corners()).toEqual(at(91, 60))
  await frame.getByRole('button', { name: 'Find its corners' }).click()
  await expect.poll(corners).toEqual(at(90, 60))
})

test('a small copy of the picture is saved where it is wanted, and shown once the picture is closed', async ({
  open,
}) => {
  const { page } = await open()
  await openSheet(page, SHEET)
  const frame = page.locator('frame-cell')
  await frame
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'card.png', mimeType: 'image/png', buffer: card(1) })
  await frame.getByLabel('Save a small copy of the picture in this sheet').check()
  await expect
    .poll(async () => (await frameOf(page)).picture?.preview?.image)
    .toMatch(/^data:image\/jpeg;base64,.{100,20000}$/)
  await saved(page)
  await page.reload()
  await frame.locator('image.copy').waitFor({ state: 'attached' })
  await frame.getByLabel('Send the small copy along in links, files and backups').check()
  await expect.poll(async () => (await frameOf(page)).picture?.preview?.travels).toBe(true)
  await frame.getByLabel('Save a small copy of the picture in this sheet').click()
  await expect.poll(async () => (await frameOf(page)).picture?.preview).toBeUndefined()
  expect(await violations(page)).toEqual([])
})

test('two fingers zoom, one moves an area', async ({ open }) => {
  const { page, context } = await open({ context: { hasTouch: true } })
  await openSheet(page, SHEET)
  const frame = page.locator('frame-cell')
  await frame
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'card.png', mimeType: 'image/png', buffer: card(1) })
  await frame.locator('frame-picture canvas').waitFor()
  await frame.getByRole('button', { name: 'Ruler', exact: true }).click()
  await expect.poll(async () => (await frameOf(page)).readings?.rule).toBeTruthy()
  await frame.locator('.stage').scrollIntoViewIfNeeded()
  const session = await context.newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: [number, number][]): Promise<unknown> =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) })
  const handle = (await frame.locator('.point circle').first().boundingBox()) as {
    x: number
    y: number
    width: number
    height: number
  }
  const [x, y] = [handle.x + handle.width / 2, handle.y + handle.height / 2]
  const from = (await frameOf(page)).areas?.[1]?.from as number[]
  await touch('touchStart', [[x, y]])
  await touch('touchMove', [[x - 40, y]])
  await touch('touchEnd', [])
  await expect
    .poll(async () => ((await frameOf(page)).areas?.[1]?.from?.[0] as number) < (from[0] as number))
    .toBe(true)
  await expect
    .poll(async () => {
      const { areas, readings } = await frameOf(page)
      const [[x, y], [u, v]] = [areas?.[1]?.from, areas?.[1]?.to] as [[number, number], [number, number]]
      return Math.hypot(u - x, v - y) / ((readings?.rule?.sampling as number) * 0.1)
    })
    .toBeCloseTo(1, 6)
  const marked = await frameOf(page)
  const wide = async (): Promise<number> =>
    ((await frame.locator('.under').first().boundingBox()) as { width: number }).width
  const before = await wide()
  await frame.locator('.stage').scrollIntoViewIfNeeded()
  const stage = (await frame.locator('.stage').boundingBox()) as { x: number; y: number; width: number; height: number }
  const [u, v] = [stage.x + stage.width / 2, stage.y + stage.height - 30]
  await touch('touchStart', [
    [u - 20, v],
    [u + 20, v],
  ])
  await touch('touchMove', [
    [u - 60, v],
    [u + 60, v],
  ])
  await touch('touchMove', [
    [u - 90, v],
    [u + 90, v],
  ])
  await touch('touchEnd', [])
  await expect.poll(wide).toBeGreaterThan(before * 1.5)
  expect(await frameOf(page)).toEqual(marked)
  await survivesReload(page)
})

test('what is no picture is refused in plain words, and the sheet stays as it was', async ({ open }) => {
  const { page } = await open()
  await openSheet(page, SHEET)
  const frame = page.locator('frame-cell')
  await frame
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('hello') })
  await frame.getByText('notes.txt: this is not a picture that can be measured; choose a JPEG, PNG or TIFF.').waitFor()
  await frame
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'cut.png', mimeType: 'image/png', buffer: card(1).subarray(0, 200) })
  await frame.getByText(/cut\.png: the PNG is cut short/).waitFor()
  expect((await frameOf(page)).picture).toBeUndefined()
})
