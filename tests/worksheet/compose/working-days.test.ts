import { describe, expect, it } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { type Answers, fromAnswers } from '../../../src/worksheet/compose/from-answers.ts'
import { offeredSetUp, withParts, withSetUp } from '../../../src/worksheet/compose/recompose.ts'
import type { Filled } from '../../../src/worksheet/compose/sections.ts'
import { type Given, isNamed, Sheet, type TableCell, type Worksheet } from '../../../src/worksheet/index.ts'
import { contradictionsIn } from './contradictions.ts'
import { errorsOf, namesOf, PARTS } from './sets.ts'

/** Three working days of an imaging technician: each job from a few answers, with sections added as the work goes on. */
const open = (worksheet: Worksheet): Sheet => new Sheet(worksheet, LIBRARY)
const typed = (texts: Readonly<Record<string, string>>): ReadonlyMap<string, Filled> =>
  new Map(Object.entries(texts).map(([name, value]) => [name, { value, from: 'typed' }]))

function begun(kind: string, texts: Readonly<Record<string, string>>, more: Partial<Answers> = {}): Sheet {
  return open(fromAnswers(PARTS, { kind, givens: typed(texts), ...more }, open).worksheet)
}

function add(sheet: Sheet, ...parts: readonly string[]): void {
  const { change } = withParts(
    PARTS,
    sheet.worksheet,
    parts.map((part) => ({ part, by: 'hand' })),
  )
  if (change) sheet.apply(change)
}

function fill(sheet: Sheet, texts: Readonly<Record<string, string>>): void {
  for (const [name, value] of Object.entries(texts)) {
    const cell = sheet.named(name)
    if (cell?.kind !== 'given') throw new Error(`The sheet does not ask for ${name}.`)
    sheet.apply({ do: 'replace', cell: { ...cell, value } })
  }
}

function figure(sheet: Sheet, name: string): number {
  const cell = sheet.named(name)
  const outcome = cell && sheet.outcome(cell.id)
  if (outcome?.state !== 'value' || typeof outcome.value !== 'number')
    throw new Error(`${name} is not known: ${JSON.stringify(outcome)}`)
  return outcome.value
}

const stateOf = (sheet: Sheet, name: string): string | undefined => {
  const cell = sheet.named(name)
  return cell?.kind === 'check' ? sheet.checkState(cell.id) : undefined
}

/** Nothing is entered twice, nothing is in error, and no two figures disagree. */
function isSound(sheet: Sheet): void {
  const { worksheet } = sheet
  const names = namesOf(worksheet.cells)
  expect(names).toEqual([...new Set(names)])
  expect(errorsOf(worksheet)).toEqual([])
  expect(contradictionsIn(worksheet)).toEqual([])
  const sections = worksheet.cells.reduce<{ section: string; labels: string[] }[]>((all, cell) => {
    if (cell.kind === 'note' && cell.role === 'heading') all.push({ section: cell.text, labels: [] })
    else if (cell.kind === 'given') all.at(-1)?.labels.push(cell.label || cell.name)
    return all
  }, [])
  for (const { section, labels } of sections) expect(labels, section).toEqual([...new Set(labels)])
  const examples = worksheet.cells.filter(
    (cell): cell is Given => cell.kind === 'given' && cell.from?.kind === 'example',
  )
  expect(examples.map(({ name }) => name)).toEqual([])
}

const MEDIUM = { sensor: '43.9 x 32.9', sensor_pixels: '11648 x 8736', focal: '80', lens_greatest: '1:2' }
const FULL_FRAME = { sensor: '36 x 24', sensor_pixels: '8256 x 5504', focal: '60', lens_greatest: '1:1' }

describe('three varnished maps of 980 × 730 mm at 300 ppi, on a column of 1,200 mm with fixed arms', () => {
  const sheet = begun('loose', {
    original: '980 x 730',
    wanted_sampling: '300',
    glossy: 'yes',
    ...MEDIUM,
    column_reach: '1200',
  })

  it('takes several frames: one would give 11648 px over 1000 mm, 296 ppi', () => {
    expect(figure(sheet, 'frames')).toBeGreaterThan(1)
    expect(figure(sheet, 'ppi') * 0.0254).toBeGreaterThanOrEqual(300)
    isSound(sheet)
  })

  it('is lit from the arms, quoted, measured and delivered in the one sheet', () => {
    add(sheet, 'arms', 'lots', 'quote', 'evenness', 'grey-card', 'master', 'hand-over', 'disks')
    isSound(sheet)
    expect(sheet.named('original')).toMatchObject({ value: '980 x 730' })
    // As many lamps and heights as there are: one place for the lamps, in one section.
    expect(sheet.cells.filter((cell) => cell.kind === 'given' && cell.name === 'lamp_out').length).toBe(1)
    fill(sheet, {
      lamp_out: '700',
      lamp_height: '650',
      lamp_aim: '200',
      lamp_spacing: '0',
      beam_angle: '40',
      lamp_radius: '50',
    })
    expect(figure(sheet, 'elevation')).toBeCloseTo(Math.atan2(650 + 50, 700), 6)
    expect(stateOf(sheet, 'column_reaches')).toMatch(/pass|marginal|fail/)
    isSound(sheet)
  })

  it('is measured at the stand: what follows uses the reading, and both are shown', () => {
    const before = figure(sheet, 'carriage')
    const cell = sheet.named('sensor_height')
    if (cell?.kind !== 'result') throw new Error('The height of the sensor is not computed.')
    sheet.apply({
      do: 'replace',
      cell: { ...cell, measured: `${Math.round(figure(sheet, 'sensor_height') * 1000) + 5} mm` },
    })
    const outcome = sheet.outcome(cell.id)
    expect(outcome).toMatchObject({ state: 'value', measured: { difference: expect.stringMatching(/over/) } })
    expect(figure(sheet, 'carriage') - before).toBeGreaterThan(0.004)
  })
})

describe('a stamp of 24 × 30 mm at 2400 ppi, with a tube of 20 mm', () => {
  const sheet = begun('loose', {
    original: '24 x 30',
    wanted_sampling: '2400',
    ...FULL_FRAME,
    focal: '60',
    lens_greatest: '1:3',
    tubes: '20',
  })

  it('takes the tube because the lens does not reach, and one frame', () => {
    expect(sheet.named('closer_by')).toMatchObject({ value: 'tubes' })
    // The long side of the frame over the long side of the stamp with its border: f m is what the lens has to come out by.
    const m = figure(sheet, 'magnification')
    expect(m).toBeGreaterThan(1 / 3)
    expect(figure(sheet, 'extension')).toBeCloseTo(0.06 * m, 6)
    expect(figure(sheet, 'ppi') * 0.0254).toBeGreaterThanOrEqual(2400)
    isSound(sheet)
  })
})

describe('340 originals from a list', () => {
  const rows = Array.from({ length: 340 }, (_, n) => [`Map ${n + 1}`, n % 2 ? '420' : '297', n % 2 ? '297' : '210'])
  const empty = begun('list', { ...FULL_FRAME, column_reach: '1200' })
  const table = empty.cells.find((cell): cell is TableCell => cell.kind === 'table')

  it('has a table to fill, without the rows of an example', () => {
    expect(table?.rows).toEqual([])
    // Nothing is in error: what needs the list waits for it.
    isSound(empty)
  })

  it('plans them in the fewest set-ups, and counts each once', () => {
    if (!table) throw new Error('There is no table.')
    const at = (name: string): number => table.columns.findIndex((column) => column.name === name)
    const filled = rows.map(([title, width, height]) =>
      table.columns.map((column, place) => {
        if (column.formula !== undefined) return ''
        if (place === at('title')) return title as string
        if (place === at('width')) return width as string
        if (place === at('height')) return height as string
        if (column.name === 'sampling') return '300'
        return column.default ?? column.options?.[0] ?? '1'
      }),
    )
    empty.apply({ do: 'replace', cell: { ...table, rows: filled } })
    // A map of 420 × 297 mm, the larger, fits one frame at 300 ppi: 5504 px are 466 mm.
    expect(figure(empty, 'frames_all')).toBe(340)
    // Two sizes: one set-up may take both, three would be one too many.
    expect(figure(empty, 'run_setups')).toBeLessThanOrEqual(2)
    isSound(empty)
  })
})

it('a slide of 6 × 7 lies on a panel, is exposed by its clear base, and asks for no lamps', () => {
  const sheet = begun('film', { film_format: '6x7', film_kind: 'slide', wanted_sampling: '1500', ...FULL_FRAME })
  // The gate of 6 × 7 is 56 mm high, not 60: the size of the picture, common practice.
  expect(figure(sheet, 'ppi') * 0.0254).toBeGreaterThanOrEqual(1500)
  expect(namesOf(sheet.cells)).not.toContain('lamp_out')
  fill(sheet, { panel_luminance: '900', base_density: '0.1', aperture: 'f/8', speed: '100' })
  expect(figure(sheet, 'light_value')).toBeLessThan(Math.log2((100 * 900) / 12.5))
  isSound(sheet)
})

it('a volume of 600 pages is counted, lit along its gutter, and its cradle raised as it sinks', () => {
  const sheet = begun('bound', {
    original: '210 x 297',
    wanted_sampling: '300',
    taken: 'one page at a time',
    leaves: '300',
    block_thickness: '45',
    unevenness: '2',
    ...FULL_FRAME,
  })
  fill(sheet, { pages: '600', page_arc: '210.5', aperture: 'f/16', opened_to: '120' })
  expect(figure(sheet, 'frames_all')).toBe(600)
  expect(figure(sheet, 'raise_by')).toBeGreaterThan(0)
  isSound(sheet)
})

it('a painting in normal, raking and ultraviolet light: what is shared is asked once, counts add up', () => {
  const sheet = begun('framed', { original: '600 x 450', wanted_sampling: '300', glossy: 'yes', ...MEDIUM })
  add(sheet, 'received', 'care')
  fill(sheet, { aperture: 'f/8', speed: '100', illuminance: '800' })
  for (const prefix of ['raking', 'uv']) {
    const offered = PARTS.setUps.find((one) => one.prefix === prefix)
    if (!offered) throw new Error(`No set-up is offered as ${prefix}.`)
    const { change } = withSetUp(PARTS, sheet.worksheet, offeredSetUp(sheet.worksheet, offered))
    if (change) sheet.apply(change)
  }
  isSound(sheet)
  const names = sheet.cells.filter(isNamed).map(({ name }) => name)
  for (const shared of ['original', 'focal', 'sensor', 'wanted_sampling'])
    expect(
      names.filter((name) => name === shared || name.endsWith(`_${shared}`)),
      shared,
    ).toEqual([shared])
  for (const own of ['raking_aperture', 'uv_aperture', 'raking_illuminance']) expect(names).toContain(own)
  // Under ultraviolet a lux meter has nothing to read: the exposure is metered, the dose recorded as irradiance.
  for (const asked of ['uv_illuminance', 'uv_minutes', 'uv_receptor']) expect(names).not.toContain(asked)
  // The raking lamp is one lamp, with one elevation and one place.
  for (const asked of ['raking_key_elevation', 'raking_lamp_over']) expect(names).not.toContain(asked)
  fill(sheet, { raking_relief_angle: '12', raking_relief_lamp: '1500', lean: '5' })
  expect(figure(sheet, 'raking_lamp_level')).toBeCloseTo(
    1500e-3 * Math.tan((12 * Math.PI) / 180) * Math.cos((5 * Math.PI) / 180),
    2,
  )
  // Each starts from the first, and may differ.
  expect(sheet.named('raking_aperture')).toMatchObject({ value: 'f/8' })
  fill(sheet, { raking_aperture: 'f/11', raking_illuminance: '200' })
  expect(figure(sheet, 'aperture')).toBe(8)
  expect(figure(sheet, 'raking_aperture')).toBe(11)
  fill(sheet, { minutes: '4', raking_minutes: '6' })
  // Light on an original adds up: lux times hours, over the two with visible light.
  expect(figure(sheet, 'session_dose') / 3600).toBeCloseTo((800 * 4 + 200 * 6) / 60, 6)
  isSound(sheet)
})
