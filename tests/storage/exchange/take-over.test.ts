import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { carriedTexts } from '../../../src/storage/exchange/carried-texts.ts'
import { homeOf } from '../../../src/storage/exchange/home.ts'
import { originOf, withOrigin } from '../../../src/storage/exchange/origin.ts'
import { saveReceived } from '../../../src/storage/exchange/save-received.ts'
import { homecoming, takenOver } from '../../../src/storage/exchange/take-over.ts'
import { openMemory } from '../../../src/storage/store/memory-store.ts'
import type { Cell, Frame, Worksheet } from '../../../src/worksheet/schema/document.ts'
import { saveOver } from '../sheets.ts'

const sheet = (more: {
  value?: string
  measured?: string
  done?: boolean
  rows?: string[][]
  formula?: string
}): Worksheet => ({
  format: 'evenfield-worksheet',
  version: 2,
  title: 'A sheet',
  job: 'The client',
  cells: [
    { kind: 'given', id: 'g', name: 'height', label: 'Height', unit: 'mm', value: more.value ?? '500' },
    {
      kind: 'result',
      id: 'r',
      name: 'distance',
      label: 'Distance',
      formula: more.formula ?? '2 * height',
      ...(more.measured === undefined ? {} : { measured: more.measured }),
    },
    { kind: 'steps', id: 's', steps: [{ text: 'Level the stand', ...(more.done ? { done: true } : {}) }] },
    {
      kind: 'table',
      id: 't',
      name: 'readings',
      label: 'Readings',
      columns: [
        { name: 'place', entry: 'text' },
        { name: 'light', unit: 'mm' },
        { name: 'twice', formula: '2 * light' },
      ],
      rows: more.rows ?? [['corner', '1', '']],
    },
  ],
})

const withCells = (cells: Cell[]): Worksheet => ({ ...sheet({}), cells })

const pictureIn = ({ picture }: Partial<Frame>) => picture as NonNullable<Frame['picture']>

const all = (here: Worksheet, there: Worksheet, before?: Worksheet): Set<string> =>
  new Set(homecoming(here, there, before).differences.map(({ key }) => key))

describe('what comes home', () => {
  it('is each measurement and tick, beside what is here and was before', () => {
    const before = sheet({})
    const there = sheet({
      value: '510',
      measured: '1018 mm',
      done: true,
      rows: [
        ['corner', '2', ''],
        ['middle', '3', ''],
      ],
    })
    const { differences, stays, others } = homecoming(before, there, before)
    expect(differences.map(({ label, here, there, before }) => [label, here, there, before])).toEqual([
      ['Height', '500', '510', '500'],
      ['Distance, measured', '', '1018 mm', ''],
      ['Step 1: Level the stand', 'not ticked', 'ticked', 'not ticked'],
      ['Readings, row 1, light', '1', '2', '1'],
      ['Readings, row 2, place', '', 'middle', ''],
      ['Readings, row 2, light', '', '3', ''],
    ])
    expect([stays, others]).toEqual([0, 0])
  })

  it('leaves what was changed here alone, and marks what was changed in both', () => {
    const before = sheet({ value: '500', measured: '1000 mm' })
    const here = sheet({ value: '505', measured: '1001 mm', formula: '3 * height' })
    const there = sheet({ value: '500', measured: '1018 mm' })
    const { differences, stays, others } = homecoming(here, there, before)
    expect(differences.map(({ label, isClash }) => [label, isClash])).toEqual([['Distance, measured', true]])
    expect([stays, others]).toEqual([1, 1])
  })

  it('without the state that was sent, shows all that differs', () => {
    const { differences } = homecoming(sheet({ value: '505' }), sheet({}), undefined)
    expect(differences).toMatchObject([{ here: '505', there: '500', before: undefined, isClash: false }])
  })

  it('takes over what was chosen and nothing else', () => {
    const here = sheet({ formula: '3 * height' })
    const there = sheet({ value: '510', measured: '1018 mm', done: true })
    const merged = takenOver(here, there, new Set(['r measured']))
    expect(merged).toEqual(sheet({ measured: '1018 mm', formula: '3 * height' }))
  })

  it('brings a measurement with what it was measured under and by whom', () => {
    const under = (text: string, by: string) => ({ text, figures: { height: '500' }, when: '2026-03-02T14:02:00Z', by })
    const result = { kind: 'result' as const, id: 'r', name: 'distance', formula: '2 * height' }
    const reading = { kind: 'given' as const, id: 'l', name: 'light', read_under: ['height'] }
    const here = withCells([
      { ...result, measured: '1 m', measured_under: under('1 m', 'A.B.') },
      { ...reading, value: '90', measured_under: under('90', 'A.B.') },
    ])
    const there = withCells([
      { ...result, measured: '1018 mm', measured_under: under('1018 mm', 'R.S.') },
      { ...reading, value: '80', measured_under: under('80', 'R.S.') },
    ])
    expect(homecoming(here, there, here).others).toBe(0)
    expect(takenOver(here, there, all(here, there, here))).toEqual(there)
  })

  it('counts the frames taken at a step', () => {
    const withFrames = (taken: number, done = false): Worksheet =>
      withCells([{ kind: 'steps', id: 's', steps: [{ text: 'Expose', taken, ...(done ? { done } : {}) }] }])
    const [here, there] = [withFrames(3), withFrames(5)]
    expect(homecoming(here, there, here)).toMatchObject({
      differences: [{ label: 'Step 1: Expose', here: '3 frames taken', there: '5 frames taken' }],
      others: 0,
    })
    expect(takenOver(here, there, all(here, there))).toEqual(there)
    expect(takenOver(here, withFrames(6, true), all(here, withFrames(6, true)))).toEqual(withFrames(6, true))
  })

  it('differs in nothing else where only the order of keys differs, or a small copy of a picture stayed behind', () => {
    const pixels = { width: 600, height: 400, bits: 8, channels: 3, encoding: 'sRGB' }
    const picture = { name: 'card.tif', size: 9, digest: 'a', pixels, taken: null }
    const here = withCells([
      { kind: 'given', id: 'g', name: 'height', label: 'Height', value: '500' },
      {
        kind: 'frame',
        id: 'f',
        name: 'card',
        picture: { ...picture, preview: { image: 'data:image/jpeg;base64,AA' } },
      },
    ])
    const there = withCells([
      { value: '500', label: 'Height', name: 'height', id: 'g', kind: 'given' },
      { kind: 'frame', id: 'f', name: 'card', picture },
    ])
    expect(homecoming(here, there, here)).toEqual({ differences: [], stays: 0, others: 0 })
  })
})

describe('a picture that was measured in a copy', () => {
  const pixels = { width: 600, height: 400, bits: 8, channels: 3, encoding: 'sRGB' }
  const frame = (more: Partial<Frame> = {}): Worksheet =>
    withCells([
      {
        ...{ kind: 'frame', id: 'f', name: 'card', label: 'Plain card', read_under: ['height'] },
        areas: [{ kind: 'patch', name: 'grey' }],
        ...more,
      },
    ])
  const measured = (digest: string, light = 1): Partial<Frame> => ({
    picture: { name: 'card.tif', size: 9, digest, pixels, taken: null },
    areas: [{ kind: 'patch', name: 'grey', box: [light, 1, 9, 9] }],
    readings: { grey: { light } },
    measured_under: { text: digest, figures: { height: '500' }, when: '2026-03-02T14:02:00Z', by: 'R.S.' },
  })

  it('comes home with its areas, what it was measured under and by whom', () => {
    const [here, there] = [frame(), frame(measured('d'))]
    expect(homecoming(here, there, here)).toEqual({
      differences: [
        {
          key: 'f picture',
          label: 'Plain card, picture',
          here: '',
          there: 'card.tif, 1 area measured',
          before: '',
          isClash: false,
        },
      ],
      stays: 0,
      others: 0,
    })
    expect(takenOver(here, there, all(here, there))).toEqual(there)
    expect(homecoming(there, here, here)).toMatchObject({ differences: [], stays: 1 })
  })

  it('differs also where only what was read in it does', () => {
    const [here, there] = [frame(measured('d')), frame(measured('d', 2))]
    expect(homecoming(here, there, frame()).differences).toMatchObject([{ isClash: true }])
    expect(takenOver(here, there, all(here, there))).toEqual(there)
    expect(homecoming(here, here, frame())).toEqual({ differences: [], stays: 0, others: 0 })
  })

  it('leaves the small copy of the same picture, and not that of another', () => {
    const preview = { image: 'data:image/jpeg;base64,AA' }
    const here = frame({ ...measured('d'), picture: { ...pictureIn(measured('d')), preview } })
    const taken = (there: Worksheet): unknown =>
      (takenOver(here, there, all(here, there)).cells[0] as Frame).picture?.preview
    expect(taken(frame(measured('d', 2)))).toEqual(preview)
    expect(taken(frame(measured('e')))).toBeUndefined()
  })

  it('brings areas that were added, and is not taken without one the frame here has', () => {
    const more = [...(measured('d').areas ?? []), { kind: 'edge' as const, name: 'edge' }]
    const [here, there] = [frame(), frame({ ...measured('d'), areas: more })]
    expect(homecoming(here, there, here)).toMatchObject({ differences: [{ key: 'f picture' }], others: 0 })
    expect(takenOver(here, there, all(here, there))).toEqual(there)
    const without = frame({ ...measured('d'), areas: [{ kind: 'patch', name: 'white' }] })
    expect(homecoming(here, without, here)).toEqual({ differences: [], stays: 0, others: 1 })
    expect(takenOver(here, without, new Set(['f picture']))).toEqual(here)
  })
})

const state = fc.record(
  {
    value: fc.constantFrom('500', '510', '520'),
    measured: fc.constantFrom('1018 mm', '1 m'),
    done: fc.boolean(),
    rows: fc.array(fc.tuple(fc.constantFrom('a', 'b'), fc.constantFrom('1', '2'), fc.constant('')), { maxLength: 3 }),
    formula: fc.constantFrom('2 * height', '3 * height'),
  },
  { requiredKeys: [] },
)

test('all taken over, nothing of the copy is missing, and nothing is offered a second time', () => {
  fc.assert(
    fc.property(state, state, (a, b) => {
      const [here, there] = [sheet(a), sheet(b)]
      const merged = takenOver(here, there, all(here, there))
      const left = homecoming(merged, there, undefined)
      // A row here that the copy lacks stays.
      expect(left.differences.filter(({ there }) => there !== '')).toEqual([])
      const frame = (worksheet: Worksheet): (string | undefined)[] =>
        worksheet.cells.map((cell: Cell) => (cell.kind === 'result' ? cell.formula : undefined))
      expect(frame(merged)).toEqual(frame(here))
      expect(takenOver(here, there, new Set())).toEqual(here)
    }),
  )
})

describe('a copy finds the sheet it was sent from', () => {
  it('by its origin, with the state that was sent', async () => {
    const store = openMemory(undefined)
    await store.save('home', sheet({}))
    await store.importRevisions('home', [{ at: 5, shared: true, worksheet: sheet({}) }])
    await saveOver(store, 'home', sheet({ value: '505' }))
    const copy = withOrigin(sheet({ measured: '1 m' }), { sheet: 'home', at: 5 })
    const home = await homeOf(store, copy)
    expect(home).toMatchObject({ id: 'home', before: sheet({}), worksheet: sheet({ value: '505' }) })
    expect(await homeOf(store, sheet({}))).toBeUndefined()
  })

  it('also where that browser has but a copy of it', async () => {
    const tablet = openMemory(undefined)
    const copy = withOrigin(sheet({}), { sheet: 'home', at: 5 })
    const id = await saveReceived(tablet, copy)
    const again = withOrigin(sheet({ done: true }), { sheet: 'home', at: 5 })
    expect(await homeOf(tablet, again)).toMatchObject({ id, before: copy })
  })

  test.each([[{ sheet: '../x', at: 1 }], [{ sheet: 'a', at: Number.NaN }], [{ sheet: 'a', at: 1e300 }], ['a'], [null]])(
    'an origin that is none is not believed: %j',
    (origin) => {
      expect(originOf({ ...sheet({}), origin } as never)).toBeUndefined()
    },
  )
})

test('the texts a copy carries are named', () => {
  expect(
    carriedTexts(
      sheet({
        rows: [
          ['corner', '1', ''],
          ['middle', '2', ''],
        ],
      }),
    ),
  ).toEqual([
    { label: 'Title', text: 'A sheet' },
    { label: 'Job', text: 'The client' },
    { label: 'Readings, place', text: 'corner and 1 more text' },
  ])
})

test('initials and the names of picture files are among the texts a copy carries, each once', () => {
  const measured = { text: '917 mm', figures: {}, when: '2026-03-02T14:02:00Z', by: 'R.S.' }
  const result = (name: string): Cell => ({
    kind: 'result',
    id: name,
    name,
    formula: '1 m',
    measured: '917 mm',
    measured_under: measured,
  })
  const pixels = { width: 6000, height: 4000, bits: 8, channels: 3, encoding: 'sRGB' }
  const picture = { name: 'ferry-lane-card.tif', size: 9, digest: 'a', pixels, taken: null }
  const card: Cell = { kind: 'frame', id: 'card', name: 'card', label: 'Card', picture }
  const by = { text: '90', figures: {}, by: 'A.B.' }
  const reading: Cell = { kind: 'given', id: 'light', name: 'light', value: '90', measured_under: by }
  const carried = carriedTexts({ ...sheet({}), cells: [result('near'), result('far'), reading, card] })
  expect(carried).toContainEqual({ label: 'Initials of the person who measured', text: 'R.S. and 1 more text' })
  expect(carried).toContainEqual({ label: 'Card, names of files', text: 'ferry-lane-card.tif' })
})
