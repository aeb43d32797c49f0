import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { frameCount } from '../../../src/app/stand/frame-count.ts'
import { drawingOf, standSteps } from '../../../src/app/stand/stand-steps.ts'
import { jobNames, readJob } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { compose } from '../../../src/worksheet/compose/compose.ts'
import { partsOfJob } from '../../../src/worksheet/compose/job.ts'
import { readBy } from '../../../src/worksheet/compose/join-names.ts'
import type { OfferedSetUp } from '../../../src/worksheet/compose/part-library.ts'
import { offeredSetUp, withParts, withSetUp } from '../../../src/worksheet/compose/recompose.ts'
import type { Filled } from '../../../src/worksheet/compose/sections.ts'
import { type Given, type Run, Sheet, type Worksheet } from '../../../src/worksheet/index.ts'
import { runOf } from '../../../src/worksheet/run/sheet-run.ts'
import { errorsOf, namesOf, PARTS, READ, set } from './sets.ts'

const typed = (texts: Readonly<Record<string, string>>): ReadonlyMap<string, Filled> =>
  new Map(Object.entries(texts).map(([name, value]) => [name, { value, from: 'typed' }]))

function figure(sheet: Sheet, name: string): number {
  const cell = sheet.named(name)
  const outcome = cell && sheet.outcome(cell.id)
  if (outcome?.state !== 'value' || typeof outcome.value !== 'number')
    throw new Error(`${name} is not known: ${JSON.stringify(outcome)}`)
  return outcome.value
}

interface SetUpCase {
  readonly framing: 'tiles' | 'one-frame' | undefined
  readonly border: number
  readonly overlap: number
}

const PIXELS = [8256, 5504] as const

/** How many frames of a length cover another, neighbours sharing at least an overlap: n f − (n − 1) o ≥ l. */
function along(length: number, frame: number, overlap: number): number {
  let count = 1
  while (count * frame - (count - 1) * overlap < length * (1 - 1e-9)) count++
  return count
}

/** The fewest frames at a sampling, the camera turned or not; what the planning of tiles is checked against. */
function framesOf(width: number, height: number, ppi: number, { border, overlap }: SetUpCase): number {
  const [across, down] = PIXELS.map((pixels) => (pixels / ppi) * 25.4) as [number, number]
  const [w, h] = [width + 2 * border, height + 2 * border]
  const shared = Math.min(overlap, Math.min(across, down) / 2)
  const lying = along(w, across, shared) * along(h, down, shared)
  const turned = along(w, down, shared) * along(h, across, shared)
  return Math.min(lying, turned)
}

const setUps = fc.record({
  framing: fc.constantFrom('tiles' as const, 'one-frame' as const, undefined),
  border: fc.integer({ min: 0, max: 30 }),
  overlap: fc.integer({ min: 10, max: 60 }),
})
const rows = fc.array(
  fc.record({
    width: fc.integer({ min: 60, max: 2000 }),
    height: fc.integer({ min: 60, max: 2000 }),
    ppi: fc.constantFrom(200, 300, 400),
    pieces: fc.integer({ min: 1, max: 9 }),
  }),
  { minLength: 1, maxLength: 4 },
)

/** A sheet of several set-ups, each with its border and overlap; those in one frame at a sampling every original allows. */
function sheetOf(
  parts: readonly string[],
  [first, ...later]: readonly [SetUpCase, ...SetUpCase[]],
  givens: Readonly<Record<string, string>>,
  table: readonly [string, readonly (readonly string[])[]],
): Sheet {
  const own = later.flatMap(({ border, overlap }, at) => [
    [`later${at}_border`, `${border}`],
    [`later${at}_overlap`, `${overlap}`],
    [`later${at}_one_frame_sampling`, '20'],
  ])
  const { worksheet } = compose(PARTS, {
    title: 'Several set-ups',
    parts: set(...parts, ...(first.framing ? [first.framing] : [])),
    setUps: later.map(({ framing }, at) => ({
      prefix: `later${at}`,
      title: `Later ${at}`,
      parts: framing ? [{ part: framing, by: 'hand' }] : [],
    })),
    givens: typed({
      ...givens,
      border: `${first.border}`,
      overlap: `${first.overlap}`,
      ...Object.fromEntries(own),
    }),
    rows: new Map([[table[0], { rows: table[1], from: 'typed' }]]),
    examples: false,
  })
  expect(errorsOf(worksheet)).toEqual([])
  return new Sheet(worksheet, LIBRARY)
}

/** The frames of a row over all set-ups: a later one that chose one frame takes one. */
const summed = (
  { width, height, ppi }: { width: number; height: number; ppi: number },
  cases: readonly SetUpCase[],
): number =>
  cases.reduce(
    (sum, one, at) => sum + (at > 0 && one.framing === 'one-frame' ? 1 : framesOf(width, height, ppi, one)),
    0,
  )

const CAMERA = { sensor: '36 x 24', sensor_pixels: PIXELS.join(' x '), pitch: '4.36' }

describe('what is counted is added up over the set-ups of a sheet', () => {
  it('by lots: frames, pictures and hours', () => {
    fc.assert(
      fc.property(fc.tuple(setUps, setUps, setUps), rows, (cases, lots) => {
        const sheet = sheetOf(
          ['sheet', 'camera', 'lots'],
          cases,
          { ...CAMERA, per_frame: '30', retakes: '0', setups: '0', setup_takes: '0' },
          [
            'came_in',
            lots.map(({ width, height, ppi, pieces }) => {
              const typed = ['A lot', `${pieces}`, '1', `${width}`, `${height}`, `${ppi}`, '2']
              return [...typed, '', '', '', '', '']
            }),
          ],
        )
        const pieces = lots.reduce((sum, lot) => sum + lot.pieces, 0)
        const frames = lots.reduce((sum, lot) => sum + lot.pieces * summed(lot, cases), 0)
        expect(figure(sheet, 'frames_all')).toBe(frames)
        expect(figure(sheet, 'pictures')).toBe(cases.length * pieces)
        // Each piece is handled once in each set-up.
        expect(figure(sheet, 'hours')).toBeCloseTo(frames * 30 + cases.length * pieces * 120, 6)
      }),
      { numRuns: 30 },
    )
  })

  it('by a list of originals: the run plans as many frames as the sheet counts, and each original once', () => {
    fc.assert(
      fc.property(fc.tuple(setUps, setUps), rows, (cases, originals) => {
        const sheet = sheetOf(
          ['camera', 'run'],
          cases,
          { ...CAMERA, focal: '60', column_reach: '20000', per_frame: '30', per_original: '60', setup_takes: '0' },
          [
            'originals',
            originals.map(({ width, height, ppi, pieces }, at) => {
              const typed = [`Map ${at}`, `${width}`, `${height}`, '0', 'matt', `${ppi}`, `${pieces}`]
              return [...typed, '', '', '', '', '', '', '', '']
            }),
          ],
        )
        const frames = originals.reduce((sum, one) => sum + one.pieces * summed(one, cases), 0)
        expect(figure(sheet, 'frames_all')).toBe(frames)
        const run = sheet.cells.find((cell): cell is Run => cell.kind === 'run')
        const { plan, feed } = runOf(sheet, run as Run)
        expect(feed.missing).toEqual([])
        expect(plan?.unplanned).toEqual([])
        expect(plan?.total.frames).toBe(frames)
        expect(plan?.total.count).toBe(originals.length)
        expect((plan?.total.time ?? 0) / 3600).toBeCloseTo(figure(sheet, 'run_work') / 3600, 6)
      }),
      { numRuns: 20 },
    )
  })
})

function addSetUp(sheet: Sheet, prefix: string): void {
  const offered = PARTS.setUps.find((one) => one.prefix === prefix)
  if (!offered) throw new Error(`No set-up is offered as ${prefix}.`)
  const { change } = withSetUp(PARTS, sheet.worksheet, offeredSetUp(sheet.worksheet, offered))
  if (change) sheet.apply(change)
}

function give(sheet: Sheet, texts: Readonly<Record<string, string>>): void {
  for (const [name, value] of Object.entries(texts)) {
    const cell = sheet.named(name)
    if (cell?.kind !== 'given') throw new Error(`The sheet does not ask for ${name}.`)
    sheet.apply({ do: 'replace', cell: { ...cell, value } })
  }
}

describe('a map in four tiles, and in raking light in one frame', () => {
  const parts = ['sheet', 'camera', 'tiles', 'lens-alone', 'column', 'pair', 'depth', 'lux', 'lots']
  const map = {
    ...CAMERA,
    original: '1200 x 800',
    wanted_sampling: '300',
    focal: '60',
    border: '10',
    overlap: '60',
    per_frame: '30',
  }
  const base: Worksheet = compose(PARTS, {
    title: 'A map',
    parts: set(...parts),
    givens: typed(map),
    rows: new Map([
      ['came_in', { rows: [['Map', '1', '1', '1200', '800', '300', '5', '', '', '', '', '']], from: 'typed' }],
    ]),
    examples: false,
  }).worksheet
  const sheet = new Sheet(base, LIBRARY)

  it('takes five frames, not eight', () => {
    expect(figure(sheet, 'frames')).toBe(4)
    expect(figure(sheet, 'frames_all')).toBe(4)
    addSetUp(sheet, 'raking')
    expect(figure(sheet, 'frames_all')).toBe(8)
    const { change } = withParts(PARTS, sheet.worksheet, [{ part: 'one-frame', by: 'hand' }], 'raking')
    if (!change) throw new Error('Nothing changes.')
    sheet.apply(change)
    give(sheet, { raking_one_frame_sampling: '150' })
    expect(figure(sheet, 'all_picture_frames')).toBe(5)
    expect(figure(sheet, 'frames_all')).toBe(5)
    expect(figure(sheet, 'pictures')).toBe(2)
    expect(errorsOf(sheet.worksheet)).toEqual([])
  })

  it('judges the one frame by what is agreed for it, and computes its own finest pattern', () => {
    // 1220 mm on 8256 px: 172 ppi.
    const check = sheet.named('raking_sharp_enough')
    if (check?.kind !== 'check') throw new Error('The sampling of the set-up is not judged.')
    expect(sheet.check(check.id).state).toMatch(/pass|marginal/)
    give(sheet, { raking_one_frame_sampling: '200' })
    expect(sheet.check(check.id).state).toBe('fail')
    give(sheet, { raking_one_frame_sampling: '150' })
    // Half the sampling carried to the sensor: 150 ppi are 2.95 line pairs per millimetre of the original.
    expect(figure(sheet, 'raking_finest')).toBeCloseTo(150 / 25.4e-3 / 2 / figure(sheet, 'raking_magnification'), 3)
    expect(figure(sheet, 'finest')).toBeCloseTo(300 / 25.4e-3 / 2 / figure(sheet, 'magnification'), 3)
  })

  it('counts at the stand the frames of the set-up that a step belongs to', () => {
    const counts = standSteps(sheet).flatMap((step) =>
      step.countsFrames ? [[step.list.id, frameCount(sheet, step, drawingOf(sheet, step)?.cell)?.of] as const] : [],
    )
    expect(counts).toContainEqual(['steps_work', 4])
    // A single frame needs no counting.
    expect(counts).toContainEqual(['raking_steps_work', undefined])
  })

  it('stands in each name once, and is four frames again without the set-up', () => {
    expect(namesOf(sheet.cells)).toEqual([...new Set(namesOf(sheet.cells))])
    sheet.undo()
    while (sheet.worksheet.setups?.length) sheet.undo()
    expect(figure(sheet, 'frames_all')).toBe(4)
  })
})

describe('another set-up of any job', () => {
  const pairs = jobNames().flatMap((job, at) =>
    // Each job with one of them, so that every one comes with several jobs.
    [PARTS.setUps[at % PARTS.setUps.length] as OfferedSetUp].map((setUp) => [job, setUp.prefix, setUp] as const),
  )

  it.each(pairs)('%s, %s: nothing is in error, asked in vain, or alone under a heading', (name, prefix, offered) => {
    const job = readJob(name)
    if (!job) throw new Error(`There is no job ${name}.`)
    const { worksheet } = compose(PARTS, {
      title: name,
      parts: partsOfJob(job),
      setUps: [{ prefix, title: offered.title, parts: offered.parts.map((part) => ({ part, by: 'hand' })) }],
      givens: READ,
    })
    expect(errorsOf(worksheet)).toEqual([])
    const { cells } = worksheet
    expect(namesOf(cells)).toEqual([...new Set(namesOf(cells))])
    const from = cells.findIndex((cell) => cell.kind === 'note' && cell.set_up === prefix)
    expect(from).toBeGreaterThan(0)
    const read = new Set(cells.flatMap((cell) => [...readBy(cell)]))
    const steps = new Set(
      cells.flatMap((cell) => (cell.kind === 'steps' ? cell.steps.map(({ reading }) => reading) : [])),
    )
    const own = cells.slice(from).filter((cell): cell is Given => cell.kind === 'given' && cell.entry !== 'kit')
    const inFirst = new Set(cells.slice(0, from).flatMap((cell) => (cell.kind === 'given' ? [cell.name] : [])))
    const inVain = own.filter((cell) => !read.has(cell.name) && !steps.has(cell.name)).map((cell) => cell.name)
    // What the first asks without reading it, such as a note for the record, the other may ask as well.
    expect(inVain.filter((one) => !inFirst.has(one.slice(prefix.length + 1)))).toEqual([])
    for (const [at, cell] of cells.entries()) {
      if (at < from || cell.kind !== 'note' || cell.role !== 'heading' || cell.part !== undefined) continue
      const next = cells.findIndex((one, place) => place > at && one.kind === 'note' && one.role === 'heading')
      const section = cells.slice(at + 1, next < 0 ? undefined : next).filter(({ kind }) => kind !== 'steps')
      if (section.length === 0 || !section.every(({ kind }) => kind === 'given')) continue
      // It stays alone only where nothing of the set-up reads it: the list that all set-ups share does.
      const readers = cells.slice(from).filter((one) => section.some((given) => readBy(one).has(given.id)))
      expect(
        readers.map(({ id }) => id),
        cell.text,
      ).toEqual([])
    }
  })
})

describe('what set-ups share', () => {
  it('asks for equipment and room once, in every job and with every set-up', () => {
    const shared = [...PARTS.names].flatMap(([name, known]) => (known.in_every_set_up ? [name] : []))
    expect(shared.length).toBeGreaterThan(0)
    for (const [at, name] of jobNames().entries()) {
      const offered = PARTS.setUps[(at + 1) % PARTS.setUps.length] as OfferedSetUp
      const job = readJob(name)
      if (!job) throw new Error(`There is no job ${name}.`)
      const { cells } = compose(PARTS, {
        title: name,
        parts: partsOfJob(job),
        setUps: [{ ...offered, parts: offered.parts.map((part) => ({ part, by: 'hand' })) }],
      }).worksheet
      const names = namesOf(cells)
      for (const one of shared) expect(names, `${name}: ${one}`).not.toContain(`${offered.prefix}_${one}`)
      // What a formula of any set-up reads of them is there.
      const read = new Set(cells.flatMap((cell) => [...readBy(cell)]))
      for (const one of shared) if (read.has(one)) expect(names, name).toContain(one)
    }
  })

  it('has no name that a set-up could give to one of its own', () => {
    const inSetUp = new Set(PARTS.roles.flatMap(({ role, in_set_up }) => (in_set_up ? role : [])))
    const computed = [...PARTS.parts.values()].flatMap(({ role, cells }) =>
      cells.flatMap((cell) => ('name' in cell && typeof cell.name === 'string' ? [{ name: cell.name, role }] : [])),
    )
    const names = [...computed, ...[...PARTS.names].map(([name, { role }]) => ({ name, role }))]
    const all = new Set(names.map(({ name }) => name))
    const own = names.filter(({ role }) => inSetUp.has(role)).map(({ name }) => name)
    for (const { prefix } of PARTS.setUps)
      for (const name of own) expect(all, `${prefix}: ${name}`).not.toContain(`${prefix}_${name}`)
  })

  it('loads the circuit with the lamps of the set-up that has most, as they are not on at the same time', () => {
    const prefixes = ['raking', 'uv'] as const
    const offered = prefixes.map((prefix) => PARTS.setUps.find((one) => one.prefix === prefix) as OfferedSetUp)
    const { worksheet } = compose(PARTS, {
      title: 'A painting',
      parts: [...set('sheet', 'camera', 'one-frame', 'lens-alone', 'column', 'arms', 'lux', 'mains-load')],
      setUps: offered.map(({ prefix, title, parts }) => ({
        prefix,
        title,
        parts: parts.map((part) => ({ part, by: 'hand' as const })),
      })),
      givens: typed({ lamp_power: '500 W', other_power: '100 W', voltage: '230 V', lamp_spacing: '400' }),
    })
    const sheet = new Sheet(worksheet, LIBRARY)
    // Two arms with two lamps each, one raking lamp, four again under ultraviolet.
    expect(figure(sheet, 'lamp_count')).toBe(4)
    expect(figure(sheet, 'raking_lamp_count')).toBe(1)
    expect(figure(sheet, 'all_lamp_count')).toBe(4)
    expect(figure(sheet, 'heat')).toBeCloseTo(4 * 500 + 100, 9)
  })
})

describe('light typed in another unit', () => {
  const SIGNS: Readonly<Record<string, readonly ['C' | 'K', string]>> = {
    lx: ['C', 'EV'],
    'cd/m²': ['K', 'EV'],
    EV: ['C', 'lx'],
  }

  it('is converted by the constant of the sheet’s meter, in every job and every set-up', () => {
    const read = new Set<string>()
    for (const name of jobNames()) {
      const job = readJob(name)
      if (!job) throw new Error(`There is no job ${name}.`)
      const { worksheet } = compose(PARTS, {
        title: name,
        parts: partsOfJob(job),
        setUps: [{ prefix: 'raking', title: 'Raking light', parts: [{ part: 'one-lamp', by: 'hand' }] }],
      })
      const givens = worksheet.cells.filter((cell): cell is Given => cell.kind === 'given')
      const names = new Set(givens.map((cell) => cell.name))
      const texts = new Map([
        ['flat_constant', '320'],
        ['spot_constant', '11'],
      ])
      const filled = givens.map((cell): Given => ({ ...cell, value: texts.get(cell.name) ?? cell.value }))
      for (const cell of filled) {
        const [sign, typed] = SIGNS[cell.unit ?? ''] ?? []
        if (!sign || !typed || (cell.entry ?? 'quantity') !== 'quantity') continue
        // The meter is the same in every set-up.
        const own = `${sign === 'C' ? 'flat' : 'spot'}_constant`
        if (!names.has(own)) continue
        expect(cell.constants?.[sign], cell.name).toBe(own)
        const sheet = new Sheet(
          { ...worksheet, cells: filled.map((one) => (one === cell ? { ...one, value: `9 ${typed}` } : one)) },
          LIBRARY,
        )
        const constant = Number(texts.get(own))
        const expected = typed === 'EV' ? (constant / 100) * 2 ** 9 : Math.log2((100 * 9) / constant)
        expect(figure(sheet, cell.name), cell.name).toBeCloseTo(expected, 9)
        read.add(cell.name)
      }
    }
    expect([...read]).toEqual(expect.arrayContaining(['illuminance', 'raking_illuminance', 'panel_luminance']))
  })
})
