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

  it('asks for it in the set-up that first needs it, with the step at which it is read, and in no other', () => {
    const { cells } = compose(PARTS, {
      title: 'A painting',
      parts: set('sheet', 'camera', 'one-frame', 'lens-alone', 'column', 'pair', 'lux'),
      setUps: ['raking', 'raking2'].map((prefix) => ({
        prefix,
        title: `Raking ${prefix}`,
        parts: ['one-lamp', 'raking', 'easel'].map((part) => ({ part, by: 'hand' })),
      })),
    }).worksheet
    const ofSteps = cells.flatMap((cell) => (cell.kind === 'steps' ? cell.steps.map(({ reading }) => reading) : []))
    for (const name of ['lean', 'centre_height', 'relief_height', 'tripod_least']) {
      expect(namesOf(cells).filter((one) => one.endsWith(name))).toEqual([name])
      const at = cells.findIndex((cell) => 'name' in cell && cell.name === name)
      const heading = cells.slice(0, at).findLast((cell) => cell.kind === 'note' && cell.role === 'heading')
      expect(heading, name).toMatchObject({ set_up: 'raking' })
    }
    expect(ofSteps.filter((reading) => reading === 'lean')).toEqual(['lean'])
    // The step that is taken in the first of them is not said again in the other.
    const texts = cells.flatMap((cell) => (cell.kind === 'steps' ? cell.steps.map(({ text }) => text) : []))
    expect(texts.filter((text) => text.includes('inclinometer'))).toHaveLength(1)
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

describe('what each set-up is judged by', () => {
  const isOwn = (role: string): boolean =>
    PARTS.roles.some((one) => one.role === role && (one.over_set_ups || one.in_set_up) === true)
  const roleOf = (cells: Worksheet['cells'], at: number): string => {
    const heading = cells.slice(0, at).findLast((cell) => cell.kind === 'note' && cell.fills_role !== undefined)
    return heading?.kind === 'note' ? String(heading.fills_role) : ''
  }
  const sheets = [
    ...jobNames().map((name) => [name, partsOfJob(readJob(name) as never)] as const),
    ['a framed picture', set('framed', 'camera', 'one-frame', 'lens-alone', 'easel', 'pair', 'room', 'depth', 'lux')],
    [
      'with every section of its own',
      set(
        'sheet',
        'camera',
        'one-frame',
        'lens-alone',
        'column',
        'pair',
        'lux',
        'heat',
        'lit-backdrop',
        'start-of-day',
        'care',
        'master',
        'hand-over',
      ),
    ],
  ] as const

  it.each(sheets)('%s: a check that depends on what a set-up has for itself is there for each', (name, parts) => {
    for (const offered of PARTS.setUps) {
      const { prefix } = offered
      const own = offered.parts.map((part) => ({ part, by: 'hand' as const }))
      const { worksheet } = compose(PARTS, { title: name, parts, setUps: [{ ...offered, parts: own }], givens: READ })
      expect(errorsOf(worksheet), prefix).toEqual([])
      const { cells } = worksheet
      const names = new Set(namesOf(cells))
      const byName = new Map(cells.flatMap((cell) => ('name' in cell ? [[cell.name as string, cell] as const] : [])))
      const twin = (one: string): string => `${prefix}_${one}`
      // All that a cell reads in turn, up to what is put together over the set-ups.
      const under = (of: string, seen = new Set<string>()): Set<string> => {
        const cell = byName.get(of)
        for (const one of cell && cell.kind !== 'table' ? readBy(cell) : [])
          if (!seen.has(one) && !one.startsWith('all_')) under(one, seen.add(one))
        return seen
      }
      const first = cells.findIndex((cell) => cell.kind === 'note' && cell.set_up !== undefined)
      for (const [at, cell] of cells.slice(0, first).entries()) {
        if (cell.kind !== 'check' || isOwn(roleOf(cells, at))) continue
        const read = [...under(cell.name)]
        const hangs = read.some((one) => names.has(twin(one)))
        const lacks = read.some(
          (one) =>
            !names.has(twin(one)) &&
            PARTS.roles.some(({ role, in_set_up }) => in_set_up && role === (PARTS.names.get(one)?.role ?? '')) &&
            PARTS.names.get(one)?.in_every_set_up !== true,
        )
        if (hangs && !lacks) expect(names, `${prefix}: ${cell.name}`).toContain(twin(cell.name))
      }
    }
  })

  const painting = (...more: readonly string[]): Sheet => {
    const offered = ['raking', 'uv'].map((prefix) => PARTS.setUps.find((one) => one.prefix === prefix) as OfferedSetUp)
    const { worksheet } = compose(PARTS, {
      title: 'A painting',
      parts: set('framed', 'camera', 'one-frame', 'lens-alone', 'easel', 'pair', 'depth', 'lux', ...more),
      setUps: offered.map((one) => ({ ...one, parts: one.parts.map((part) => ({ part, by: 'hand' as const })) })),
      givens: typed({
        original: '400 x 300',
        frame_depth: '20',
        frame_gap: '10',
        lamp_out: '1200',
        lamp_height: '1000',
        relief_height: '0.2',
        raking_relief_angle: '10',
        raking_relief_lamp: '1000',
        illuminance: '1000',
        minutes: '10',
        raking_illuminance: '4000',
        raking_minutes: '5',
        lamp_efficacy: '300',
        raking_lamp_efficacy: '20',
        heat_absorbed: '50 %',
        sheet_mass: '100',
        heat_limit: '3',
        uv_uv_irradiance: '4 W/m²',
        uv_uv_session: '6',
      }),
    })
    expect(errorsOf(worksheet)).toEqual([])
    return new Sheet(worksheet, LIBRARY)
  }
  const state = (sheet: Sheet, name: string): string => {
    const cell = sheet.named(name)
    return cell?.kind === 'check' ? sheet.checkState(cell.id) : 'none'
  }

  it('a frame shades the picture in raking light, and not in normal light', () => {
    const sheet = painting()
    // 20 mm of frame under a lamp 1000 mm up and 990 mm past its edge: 20 · 990/980; raking, 176 mm up and as far: 20 · 990/156.
    expect(figure(sheet, 'frame_shadow')).toBeCloseTo((0.02 * 0.99) / 0.98, 6)
    const up = 1 * Math.tan((10 * Math.PI) / 180)
    expect(figure(sheet, 'raking_frame_shadow')).toBeCloseTo((0.02 * 0.99) / (up - 0.02), 6)
    expect([state(sheet, 'frame_clear'), state(sheet, 'raking_frame_clear')]).toEqual(['fail', 'fail'])
    give(sheet, { frame_gap: '21' })
    expect([state(sheet, 'frame_clear'), state(sheet, 'raking_frame_clear')]).toEqual([
      expect.stringMatching(/pass|marginal/),
      'fail',
    ])
  })

  it('the heat of each by its own light, lamps and time; of ultraviolet by its irradiance', () => {
    const sheet = painting('heat')
    expect(figure(sheet, 'heat_irradiance')).toBeCloseTo(1000 / 300, 9)
    expect(figure(sheet, 'raking_heat_irradiance')).toBeCloseTo(4000 / 20, 9)
    expect(figure(sheet, 'uv_heat_irradiance')).toBeCloseTo(4, 9)
    // What is absorbed in the time: irradiance by half by seconds.
    expect(figure(sheet, 'heat_energy')).toBeCloseTo((1000 / 300) * 0.5 * 600, 6)
    expect(figure(sheet, 'raking_heat_energy')).toBeCloseTo(200 * 0.5 * 300, 6)
    expect(figure(sheet, 'uv_heat_energy')).toBeCloseTo(4 * 0.5 * 360, 6)
    expect([state(sheet, 'heat_low'), state(sheet, 'raking_heat_low')]).toEqual(['pass', 'fail'])
    // Of the original there is one: what it absorbs, and how warm it may become.
    for (const shared of ['heat_absorbed', 'sheet_mass', 'heat_limit'])
      expect(namesOf(sheet.cells).filter((name) => name.endsWith(shared))).toEqual([shared])
  })

  it('the day’s target in each; the longest time in light by the brightest; a backdrop nowhere in ultraviolet', () => {
    const sheet = painting('start-of-day', 'lit-backdrop', 'care')
    const names = namesOf(sheet.cells)
    for (const of of ['day_frame', 'raking_day_frame', 'uv_day_frame', 'day_light', 'raking_day_light', 'uv_day_light'])
      expect(names).toContain(of)
    expect(names).toContain('raking_backdrop_fills')
    expect(names.filter((name) => /^uv_(back|seen|tone)/.test(name))).toEqual([])
    expect(figure(sheet, 'all_illuminance')).toBe(4000)
    expect(names).not.toContain('uv_illuminance')
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

  it('is converted as well where it is measured for a result, by the constant as it is now', () => {
    const read = new Set<string>()
    for (const name of jobNames()) {
      const { worksheet } = compose(PARTS, {
        title: name,
        parts: partsOfJob(readJob(name) as never),
        givens: READ,
      })
      const sheet = new Sheet(worksheet, LIBRARY)
      for (const cell of worksheet.cells) {
        if (cell.kind !== 'result' || cell.constants === undefined) continue
        const [first, ofFirst] = SIGNS[cell.unit ?? ''] as readonly ['C' | 'K', string]
        // An exposure value may be light on the original or off it.
        const sign = cell.constants[first] === undefined ? 'K' : first
        const typed = sign === first ? ofFirst : 'cd/m²'
        const constant = sheet.named(cell.constants[sign] ?? '')
        if (constant?.kind !== 'given') throw new Error(`${cell.name} has no constant.`)
        sheet.apply({ do: 'replace', cell: { ...cell, measured: `9 ${typed}` } })
        const expected = (c: number): number => (typed === 'EV' ? (c / 100) * 2 ** 9 : Math.log2((100 * 9) / c))
        for (const [text, c] of [
          ['320', 320],
          ['11', 11],
        ] as const) {
          // Each constant has a range of its own.
          if ((sign === 'C') !== (c === 320)) continue
          sheet.apply({ do: 'replace', cell: { ...constant, value: text } })
          expect(figure(sheet, cell.name), cell.name).toBeCloseTo(expected(c), 9)
          expect(sheet.outcome(cell.id)).toMatchObject({
            by: `${sign} = ${c}`,
            measured: { difference: expect.any(String) },
          })
        }
        read.add(cell.name)
      }
    }
    expect([...read]).toContain('light_value')
  })
})
